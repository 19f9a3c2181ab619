package command

import (
	"bytes"
	"errors"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
)

// program builds the program itself.
func program(t *testing.T) string {
	t.Helper()
	path := filepath.Join(t.TempDir(), "headland.exe")
	output(t, "go", "build", "-o", path, "headland")
	return path
}

// TestProgram runs the program where there is no display, in the locale that
// the toolkit can't read: nothing is printed that was not asked for, the demo is
// set without a window, and a file that can't be shown is answered in words.
func TestProgram(t *testing.T) {
	path, folder := program(t), t.TempDir()
	try := func(args ...string) ran {
		var out, errs bytes.Buffer
		c := exec.Command(path, args...)
		c.Dir, c.Stdout, c.Stderr = folder, &out, &errs
		c.Env = []string{"HOME=" + folder, "LANG=C.UTF-8", "PATH=" + os.Getenv("PATH")}
		err := c.Run()
		var exit *exec.ExitError
		if err != nil && !errors.As(err, &exit) {
			t.Fatal(err)
		}
		return ran{c.ProcessState.ExitCode(), out.String(), errs.String()}
	}
	if got := try("--version"); got != (ran{Done, "headland " + Version + "\n", ""}) {
		t.Errorf("--version: %+v", got)
	}
	if got := try("report", "nowhere.headland"); got.status != CouldNot || !strings.HasPrefix(got.errs, "headland: ") {
		t.Errorf("report: %+v", got)
	}
	if got := try("verse"); got.status != Misuse {
		t.Errorf("no verb: %+v", got)
	}
	for _, args := range [][]string{nil, {"book.headland"}} {
		got := try(args...)
		if got.status != CouldNot || !strings.Contains(got.errs, "no display") || !strings.Contains(got.errs, "headland report") {
			t.Errorf("headland %q: %+v", args, got)
		}
	}
	checkDemo(t, folder, try("--demo"))
	checkDemo(t, folder, try("--demo")) // opened this time, not made
}

// checkDemo sees that the demo was reported on and written, and that it was said
// where.
func checkDemo(t *testing.T, folder string, r ran) {
	t.Helper()
	if r.status != Done || r.errs != "" {
		t.Fatalf("--demo: %+v", r)
	}
	for _, want := range []string{"Too long for the measure", "Contents", "demo.headland", filepath.Join("out", "spread-*.png"), filepath.Join("out", "demo.pdf")} {
		if !strings.Contains(r.out, want) {
			t.Errorf("--demo does not say %q:\n%s", want, r.out)
		}
	}
	output(t, "qpdf", "--check", filepath.Join(folder, "out", "demo.pdf"))
	pictures, err := filepath.Glob(filepath.Join(folder, "out", "spread-*.png"))
	if err != nil || len(pictures) < 20 {
		t.Errorf("the demo has %d pictures, %v", len(pictures), err)
	}
	if made, err := filepath.Glob(filepath.Join(folder, "*", "*", "headland", "demo.headland")); err != nil || len(made) != 1 {
		t.Errorf("the demo collection is kept in %q, %v", made, err)
	}
}

// TestOpenForWindow sees what a window begins with.
func TestOpenForWindow(t *testing.T) {
	t.Setenv("HOME", t.TempDir())
	t.Setenv("XDG_DATA_HOME", "")
	if s, err := OpenForWindow(nil, os.Stderr); s != nil || err != nil {
		t.Errorf("nothing named: %v, %v", s, err)
	}
	manuscript := write(t, t.TempDir(), "poems.md", verse)
	for _, arg := range []string{"--demo", manuscript, book(t)} {
		var errs bytes.Buffer
		s, err := OpenForWindow([]string{arg}, &errs)
		if err != nil || errs.Len() > 0 {
			t.Fatalf("%s: %v, %s", arg, err, errs.String())
		}
		if s.Committed().Extent() == 0 {
			t.Errorf("%s opens a book without pages", arg)
		}
		if err := s.Close(); err != nil {
			t.Error(err)
		}
	}
	if _, err := OpenForWindow([]string{"nowhere.headland"}, os.Stderr); err == nil {
		t.Error("a file that is not there was opened")
	}
}
