package session

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"headland/pagemodel"
	"headland/typeset/sheet"
)

// readDemo is a session on the demonstration with its twelve first poems in a running
// order, that is in the file.
func readDemo(t *testing.T) (*Session, pagemodel.Reading) {
	t.Helper()
	s, err := Demo(filepath.Join(t.TempDir(), "demo"+Extension))
	must(t, err)
	t.Cleanup(func() { closed(t, s) })
	r := s.BookReading()
	r.Name, r.Slot, r.Items = "At the mill", 1200, r.Items[:12]
	r.Items[1].Before = "The next is about my first week on nights."
	must(t, s.Do(pagemodel.SetReading{Reading: r}))
	r, err = s.Collection().ReadingCalled("At the mill")
	must(t, err)
	return s, r
}

// squeezed is a text's words with one space between.
func squeezed(text string) string { return strings.Join(strings.Fields(text), " ") }

// TestReadingCopy writes the whole demonstration in large type on every paper: qpdf
// finds no fault in the files, and pdftotext every line of every poem, in order and
// with the poet's own breaks; what is turned over has the sign before it.
func TestReadingCopy(t *testing.T) {
	s, _ := readDemo(t)
	r := s.BookReading()
	for _, paper := range sheet.Papers {
		c, err := s.ReadingCopy(r, paper)
		must(t, err)
		path := filepath.Join(t.TempDir(), paper+".pdf")
		must(t, c.PDF(path, nil))
		output(t, "qpdf", "--check", path)
		rows := strings.Split(output(t, "pdftotext", "-layout", path, "-"), "\n")
		at, turned := 0, 0
		for _, p := range s.Collection().Poems() {
			for place, l := range p.Lines() {
				if p.Stanza(place).Kind() == pagemodel.Prose {
					continue
				}
				n, over := findLine(rows[at:], squeezed(l.Text()))
				if n == 0 {
					t.Fatalf("%s: after %q there is no line %q of %q", paper, rows[max(0, at-1)], l.Text(), p.Name())
				}
				at, turned = at+n, turned+over
			}
		}
		if paper == "A5" && turned == 0 {
			t.Error("no line is turned over on A5")
		}
	}
}

// findLine is how many rows go by up to the end of a line of verse, 0 where it is
// not among them, and in how many rows more than one it stands.
func findLine(rows []string, line string) (n, turned int) {
	for i := range rows {
		got := squeezed(rows[i])
		if got == "" || !strings.HasPrefix(line, got) {
			continue
		}
		for j := i + 1; ; j++ {
			if got == line {
				return j, j - i - 1
			}
			if j == len(rows) || !strings.HasPrefix(squeezed(rows[j]), "[") {
				break
			}
			got = squeezed(got + " " + strings.TrimPrefix(squeezed(rows[j]), "["))
		}
	}
	return 0, 0
}

// TestReadingCopyIsRefused where the paper is none, or there is nothing to read.
func TestReadingCopyIsRefused(t *testing.T) {
	s, r := readDemo(t)
	_, err := s.ReadingCopy(r, "A3")
	refused(t, err, "A3", "A4")
	r.Items = nil
	_, err = s.ReadingCopy(r, "A4")
	refused(t, err, "nothing to read", r.Name)
	refused(t, s.ExportCard(filepath.Join(t.TempDir(), "card.pdf"), r), "nothing to read")
	r.Items = []pagemodel.Item{{Poem: 1}}
	refused(t, s.ExportCard(s.Path(), r), "choose another name")
}

// TestCard writes a card: one side of A6 with the pages to turn to, first words and
// times.
func TestCard(t *testing.T) {
	s, r := readDemo(t)
	path := filepath.Join(t.TempDir(), "card.pdf")
	must(t, s.ExportCard(path, r))
	output(t, "qpdf", "--check", path)
	info := output(t, "pdfinfo", path)
	for _, want := range []string{"At the mill", "297.6", "419.5"} {
		if !strings.Contains(info, want) {
			t.Errorf("pdfinfo does not say %q:\n%s", want, info)
		}
	}
	text := squeezed(output(t, "pdftotext", "-layout", path, "-"))
	for i, item := range r.Items {
		p, _, _ := s.Collection().Poem(item.Poem)
		page, _ := s.Setting().PageOfPoem(item.Poem)
		if want := s.Setting().FolioOf(page) + " " + p.Head().Title; !strings.Contains(text, want) {
			t.Errorf("item %d: the card does not say %q", i, want)
		}
	}
	if want := "my first week on nights."; !strings.Contains(text, want) {
		t.Errorf("the card does not say %q", want)
	}
}

// TestHeldRun: a run that is held is kept in the file once, and no other window's.
func TestHeldRun(t *testing.T) {
	s, r := readDemo(t)
	run := Run{Reading: r.ID, At: s.now(), Timings: []Timing{{Item: r.Items[0].ID, Poem: r.Items[0].Poem, Ms: 41_003, Stumbles: []int64{7, 900}}}}
	must(t, s.HoldRun(run))
	other, err := Open(s.Path())
	must(t, err)
	defer closed(t, other)
	if there, err := other.KeepHeldRun(); there || err != nil {
		t.Errorf("read only, it is kept: %v, %v", there, err)
	}
	refused(t, other.HoldRun(run), "only be read")
	for n := range 2 {
		if there, err := s.KeepHeldRun(); there != (n == 0) || err != nil {
			t.Errorf("the run is there: %v, %v", there, err)
		}
		must(t, s.HoldRun(run))
	}
	must(t, s.KeepRun(Run{At: run.At}))
	if _, err := os.Stat(s.Path() + heldSuffix); !os.IsNotExist(err) {
		t.Errorf("it is still held: %v", err)
	}
	runs, err := s.Runs()
	must(t, err)
	if len(runs) != 1 || runs[0].Timings[0].Ms != 41_003 || len(runs[0].Timings[0].Stumbles) != 2 {
		t.Errorf("kept: %v", runs)
	}
	must(t, os.WriteFile(s.Path()+heldSuffix, []byte("{"), 0o644))
	_, err = s.KeepHeldRun()
	refused(t, err, heldSuffix, "move it away")
}
