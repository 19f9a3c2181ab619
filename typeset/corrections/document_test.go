package corrections

import (
	"bytes"
	"io"
	"math/rand/v2"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"headland/pagemodel/document"
)

// pandoc is what pandoc makes of a list's document. It fails where pandoc is missing
// (on Debian it is in the package pandoc; .ci/setup test installs it).
func pandoc(t testing.TB, d document.Document, ending, to string) string {
	t.Helper()
	write := map[string]func(io.Writer) error{"docx": d.WriteDOCX, "odt": d.WriteODT}[ending]
	var b, complaints bytes.Buffer
	if err := write(&b); err != nil {
		t.Fatal(err)
	}
	path := filepath.Join(t.TempDir(), "list."+ending)
	if err := os.WriteFile(path, b.Bytes(), 0o600); err != nil {
		t.Fatal(err)
	}
	command := exec.Command("pandoc", "--standalone", "--metadata=pagetitle=list", "--wrap=none", "--to="+to, path)
	command.Stderr = &complaints
	out, err := command.Output()
	if err != nil || complaints.Len() > 0 {
		t.Fatalf("pandoc: %v\n%s\nIs it installed? .ci/setup test sees to it.", err, complaints.String())
	}
	return string(out)
}

// TestDocument: all that the list says is in the file, in its order, as pandoc reads
// it.
func TestDocument(t *testing.T) {
	lists := []*List{sample()}
	r := rand.New(rand.NewPCG(8, 8))
	for range 6 {
		lists = append(lists, randomList(r))
	}
	for _, l := range lists {
		for _, ending := range []string{"docx", "odt"} {
			text := bare(pandoc(t, l.Document(), ending, "html"))
			from := 0
			find := func(what string) {
				t.Helper()
				at := strings.Index(text[from:], bare(escaped.Replace(what)))
				if at < 0 {
					t.Fatalf("%s: %q is not where it should be in\n%s", ending, what, text[from:])
				}
				from += at
			}
			find(l.heading())
			find(l.span())
			find(ruleHeading + plain(l.Rule))
			for i := range l.All {
				c := &l.All[i]
				find(c.where())
				find(string(c.Change.Kind))
				for _, s := range c.says()[:2] {
					find(s.label + ":")
					find(s.text)
				}
				find(c.whose())
				find(c.State.String())
			}
		}
	}
}

var escaped = strings.NewReplacer("&", "&amp;", "<", "&lt;", ">", "&gt;")

// bare is a page of HTML without its tags, its white and what pandoc writes
// otherwise.
func bare(html string) string {
	var b strings.Builder
	inside := false
	for _, r := range strings.ReplaceAll(html, "\u00a0", " ") {
		switch {
		case r == '<':
			inside = true
		case r == '>':
			inside = false
		case !inside:
			b.WriteRune(r)
		}
	}
	return closed(b.String())
}
