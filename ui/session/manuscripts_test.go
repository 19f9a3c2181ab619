package session

import (
	"os"
	"path/filepath"
	"strings"
	"testing"
)

func TestImport(t *testing.T) {
	out := filepath.Join(t.TempDir(), "book.headland")
	one, two := write(t, "one.md", verse), write(t, "two.txt", "# More\n\nA line of *verse*.\n")
	s, _, err := Import(out, []string{one, two})
	must(t, err)
	defer closed(t, s)
	if got := text(s.Collection()); !strings.HasSuffix(got, "So that was that.\n\n# More\nA line of *verse*.\n\n") {
		t.Errorf("the book has\n%s", got)
	}
	if about := s.Collection().About(); about.Title != "Three Poems" || about.Poet != "A. N. Other" {
		t.Errorf("the book is %+v", about)
	}
}

// TestImportRefused sees that nothing is made where something is wrong.
func TestImportRefused(t *testing.T) {
	there := write(t, "there.headland", "something")
	good, word := write(t, "good.md", verse), write(t, "letter.docx", "PK\x03\x04")
	tests := []struct {
		name, out string
		from      []string
		want      []string
	}{
		{"no manuscript", "", nil, []string{"at least one"}},
		{"not there", "", []string{"nowhere.md"}, []string{"nowhere.md", "no such file"}},
		{"a folder", "", []string{filepath.Dir(good)}, []string{filepath.Dir(good), "directory"}},
		{"a word processor's", "", []string{good, word}, []string{"letter.docx", "save it as"}},
		{"the name is taken", there, []string{good}, []string{"there.headland", "already", "another name"}},
	}
	for _, test := range tests {
		t.Run(test.name, func(t *testing.T) {
			out := test.out
			if out == "" {
				out = filepath.Join(t.TempDir(), "book.headland")
			}
			_, _, err := Import(out, test.from)
			refused(t, err, test.want...)
			if _, err := os.Stat(out); test.out == "" && err == nil {
				t.Error("yet there is a file")
			}
		})
	}
	if data, err := os.ReadFile(there); err != nil || string(data) != "something" {
		t.Errorf("what was there is now %q, %v", data, err)
	}
}

// TestAdd sees that manuscripts come in at the end, as one step of the history.
func TestAdd(t *testing.T) {
	s := imported(t)
	before := text(s.Collection())
	_, err := s.Add([]string{write(t, "a.md", "# A\n\nOne.\n"), write(t, "b.md", "# B\n\nTwo.\n")})
	must(t, err)
	if got := text(s.Collection()); got != before+"# A\nOne.\n\n# B\nTwo.\n\n" {
		t.Errorf("the book has\n%s", got)
	}
	if label, _ := s.UndoLabel(); label != "add a.md, b.md" {
		t.Errorf("undo would take back %q", label)
	}
	must(t, s.Undo())
	if got := text(s.Collection()); got != before {
		t.Errorf("after undo the book has\n%s", got)
	}
	_, err = s.Add([]string{"nowhere.md"})
	refused(t, err, "nowhere.md")
}

// TestDemo sees that the demo is made once, and kept.
func TestDemo(t *testing.T) {
	path := filepath.Join(t.TempDir(), "made", "demo.headland")
	s, err := Demo(path)
	must(t, err)
	if n := len(s.Committed().Turnovers()); n < 8 || n > 10 {
		t.Errorf("the demo has %d overlong lines, want eight to ten (common practice: about that many in a whole book)", n)
	}
	ref, _ := lineOf(t, s, 1, 1, 1)
	ours := s.Collection().About().Title
	must(t, s.Do(retyped(ref)))
	closed(t, s)
	s, err = Demo(path)
	must(t, err)
	defer closed(t, s)
	if _, line := lineOf(t, s, 1, 1, 1); line.Text() != "Ours" || s.Collection().About().Title != ours {
		t.Errorf("opened again, the demo begins with %q", line.Text())
	}
}

// TestOpenOrImport sees that a manuscript is imported beside itself, once.
func TestOpenOrImport(t *testing.T) {
	path := write(t, "poems.md", verse)
	s, _, err := OpenOrImport(path)
	must(t, err)
	if want := strings.TrimSuffix(path, ".md") + ".headland"; s.Path() != want {
		t.Errorf("it is in %s, want %s", s.Path(), want)
	}
	ref, _ := lineOf(t, s, 1, 1, 1)
	must(t, s.Do(retyped(ref)))
	closed(t, s)
	for _, name := range []string{path, s.Path()} {
		s, _, err := OpenOrImport(name)
		must(t, err)
		if _, line := lineOf(t, s, 1, 1, 1); line.Text() != "Ours" {
			t.Errorf("%s opens what begins with %q", name, line.Text())
		}
		closed(t, s)
	}
	_, _, err = OpenOrImport(filepath.Join(t.TempDir(), "nowhere.headland"))
	refused(t, err, "nowhere.headland", "not there")
}

// TestSaveCopyOver sees that only it replaces what is there.
func TestSaveCopyOver(t *testing.T) {
	s := imported(t)
	other := filepath.Join(t.TempDir(), "other.headland")
	must(t, s.SaveCopy(other))
	ref, _ := lineOf(t, s, 1, 1, 1)
	must(t, s.Do(retyped(ref)))
	refused(t, s.SaveCopy(other), other, "another name")
	must(t, s.SaveCopyOver(other))
	if got := inFile(t, other); got != text(s.Collection()) {
		t.Errorf("the copy has\n%s", got)
	}
}

func TestDemoPath(t *testing.T) {
	t.Setenv("HOME", "/home/poet")
	t.Setenv("AppData", `C:\Users\poet\AppData\Roaming`)
	for _, data := range []string{"", "/data", "not/absolute"} {
		t.Setenv("XDG_DATA_HOME", data)
		got, err := DemoPath()
		must(t, err)
		if !filepath.IsAbs(got) || filepath.Base(got) != "demo.headland" {
			t.Errorf("with XDG_DATA_HOME=%q it is %s", data, got)
		}
	}
}
