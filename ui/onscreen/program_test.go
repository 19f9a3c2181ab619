package onscreen

import (
	"bytes"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"sync"
	"syscall"
	"testing"
)

// builds are the programs built for these tests, each once.
var builds struct {
	sync.Mutex
	folder string
	paths  map[string]string
}

// TestMain clears away what was built.
func TestMain(m *testing.M) {
	status := m.Run()
	if builds.folder != "" {
		os.RemoveAll(builds.folder)
	}
	os.Exit(status)
}

// build builds a package's program, with the flags that follow its name, and gives
// its path.
func build(t testing.TB, pkg string) string {
	t.Helper()
	builds.Lock()
	defer builds.Unlock()
	if path, ok := builds.paths[pkg]; ok {
		return path
	}
	if builds.folder == "" {
		folder, err := os.MkdirTemp("", "headland-onscreen")
		if err != nil {
			t.Fatal(err)
		}
		builds.folder, builds.paths = folder, map[string]string{}
	}
	words := strings.Fields(pkg)
	path := filepath.Join(builds.folder, fmt.Sprintf("%s%d.program", filepath.Base(words[0]), len(words)))
	args := append(append([]string{"build", "-o", path}, words[1:]...), words[0])
	if out, err := exec.Command("go", args...).CombinedOutput(); err != nil {
		t.Fatalf("go build %s: %v\n%s", pkg, err, out)
	}
	builds.paths[pkg] = path
	return path
}

// The programs.
const (
	headland = "headland"
	bare     = "headland/ui/onscreen/bare"

	heldHeadland = "headland -tags=heldclock" // its clock is the file "clock" at home
)

// program is a running program and its window.
type program struct {
	*screen
	cmd    *exec.Cmd
	errors *bytes.Buffer
}

// run starts a program at home in a folder. Its window may not be there yet.
func run(t testing.TB, s *screen, home, pkg string, args ...string) *program {
	t.Helper()
	p := &program{screen: s, cmd: exec.Command(build(t, pkg), args...), errors: &bytes.Buffer{}}
	p.cmd.Env = append(os.Environ(), "HOME="+home, "XDG_CONFIG_HOME="+home+"/config", "XDG_DATA_HOME="+home+"/data",
		"XDG_CACHE_HOME="+home+"/cache", "FYNE_SCALE=1", "LANG=C.UTF-8", "HEADLAND_CLOCK="+home+"/clock")
	p.cmd.Stderr = p.errors
	if err := p.cmd.Start(); err != nil {
		t.Fatal(err)
	}
	return p
}

// start starts a program and waits for its window.
func start(t testing.TB, s *screen, home, pkg string, args ...string) *program {
	t.Helper()
	p := run(t, s, home, pkg, args...)
	t.Cleanup(p.kill)
	s.keepOnFailure(t)
	s.findWindow(t, p.cmd.Process.Pid)
	return p
}

// kill ends the program at once, as a crash would.
func (p *program) kill() {
	if p.cmd.ProcessState == nil {
		_ = p.cmd.Process.Signal(syscall.SIGKILL)
		_ = p.cmd.Wait()
	}
}

// quit closes the window and waits until the program has ended well, having
// said nothing: the toolkit complains on its standard error of calls made on a
// wrong thread.
func (p *program) quit(t testing.TB) {
	t.Helper()
	p.closeWindow(t)
	if err := p.cmd.Wait(); err != nil {
		t.Errorf("the program ended with %v", err)
	}
	if said := p.errors.String(); said != "" {
		t.Errorf("the program said:\n%s", said)
	}
}

func describe(edits []edit) string {
	var b strings.Builder
	for _, e := range edits {
		fmt.Fprintf(&b, "%d (after %d) %s %s\n", e.id, e.parent, e.kind, e.args)
	}
	return b.String()
}
