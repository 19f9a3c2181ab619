package session

import (
	"fmt"
	"html"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"
)

// demoSession is the demo collection, in a file of its own.
func demoSession(t *testing.T) *Session {
	t.Helper()
	s, err := Demo(filepath.Join(t.TempDir(), "demo"+Extension))
	must(t, err)
	t.Cleanup(func() { must(t, s.Close()) })
	return s
}

var (
	sideStart = regexp.MustCompile(`<page width="([0-9.]+)"`)
	wordAt    = regexp.MustCompile(`xMin="([0-9.]+)" yMin="([0-9.]+)" xMax="([0-9.]+)" yMax="([0-9.]+)">([^<]+)<`)
)

// halves are the words on the left and the right half of every side of a
// printed dummy, as poppler reads them back, without the labels left of the
// pages' edge.
func halves(t *testing.T, path string, edge float64) (all [][2][]string) {
	t.Helper()
	middle := 0.0
	for _, line := range strings.Split(output(t, "pdftotext", "-raw", "-bbox", path, "-"), "\n") {
		if m := sideStart.FindStringSubmatch(line); m != nil {
			width, err := strconv.ParseFloat(m[1], 64)
			must(t, err)
			middle, all = width/2, append(all, [2][]string{})
		}
		m := wordAt.FindStringSubmatch(line)
		if m == nil {
			continue
		}
		x, err := strconv.ParseFloat(m[1], 64)
		must(t, err)
		if x < edge {
			continue // the label beside the pages
		}
		half := 0
		if x > middle {
			half = 1
		}
		side := &all[len(all)-1]
		side[half] = append(side[half], html.UnescapeString(m[5]))
	}
	return all
}

// TestDummyFoldsIntoTheBook prints the demo as a dummy, folds it sheet by sheet
// as paper would be, and reads the leaves in order: they must be the pages of the
// book. Each sheet is folded down its middle, the sheets of a section lie one in
// another, and the sections one behind another.
func TestDummyFoldsIntoTheBook(t *testing.T) {
	s := demoSession(t)
	x, err := s.Export()
	must(t, err)
	for _, o := range []DummyOptions{{"A4", 16}, {"Letter", 0}, {"A4", 8}} {
		d, err := s.Dummy(o)
		must(t, err)
		path := filepath.Join(t.TempDir(), "dummy.pdf")
		must(t, d.Write(path, nil))
		output(t, "qpdf", "--check", path)
		book := foldedTogether(halves(t, path, d.plan.Area().X.Points()), o.Section)
		for n, page := range x.pages {
			var want []string
			for i := range page.Rows {
				for _, run := range page.Rows[i].Runs {
					want = append(want, strings.Fields(run.Text)...)
				}
			}
			if got := strings.Join(book[n], ""); got != strings.Join(want, "") {
				t.Fatalf("%v: leaf by leaf, page %d reads %q, want %q", o, n+1, got, strings.Join(want, ""))
			}
		}
		for n := len(x.pages); n < len(book); n++ {
			if len(book[n]) > 0 {
				t.Errorf("%v: behind the book stands %q", o, book[n])
			}
		}
	}
}

// foldedTogether folds sides, front and back in turn, into sections of so many
// pages (0: all in one) and gives what is on each page of the folded book.
func foldedTogether(sides [][2][]string, section int) [][]string {
	if section == 0 {
		section = 2 * len(sides)
	}
	var book [][]string
	for len(sides) > 0 {
		n := min(len(sides), section/2)
		book = append(book, foldedSection(sides[:n])...)
		sides = sides[n:]
	}
	return book
}

// foldedSection lays sheets one in another, the first outermost, and folds them:
// the right half of a front is the recto of a leaf whose verso is the left half of
// the back behind it; the other half of the sheet is a leaf as far from the end.
func foldedSection(sides [][2][]string) [][]string {
	var first, last [][]string
	for i := 0; i < len(sides); i += 2 {
		front, back := sides[i], sides[i+1]
		first = append(first, front[1], back[0])
		last = append([][]string{back[1], front[0]}, last...)
	}
	return append(first, last...)
}

func TestDummySaysHowItIsPrinted(t *testing.T) {
	s := demoSession(t)
	d, err := s.Dummy(DummyOptions{Paper: "A4", Section: 16})
	must(t, err)
	extent := s.Committed().Extent()
	said := d.Instructions()
	for _, want := range []string{fmt.Sprintf("%d sheets of A4", (extent+3)/4), "of 4 sheets", "short edge", "per cent"} {
		if !strings.Contains(said, want) {
			t.Errorf("%q does not say %q", said, want)
		}
	}
	if _, err := s.Dummy(DummyOptions{Paper: "A4", Section: 12}); err == nil || !strings.Contains(err.Error(), "16") {
		t.Errorf("a section of 12 pages: %v", err)
	}
}

// TestPageLabels has qpdf read back what readers call the pages: the prelims in
// roman, the poems from 1.
func TestPageLabels(t *testing.T) {
	s := demoSession(t)
	path := filepath.Join(t.TempDir(), "book.pdf")
	must(t, s.ExportPDF(path, PDFOptions{Marks: true}, nil))
	first, _ := s.Committed().Body()
	said := strings.Join(strings.Fields(output(t, "qpdf", "--json", "--json-key=pagelabels", path)), "")
	want := fmt.Sprintf(`[{"index":0,"label":{"/S":"/r","/St":1}},{"index":%d,"label":{"/S":"/D","/St":1}}]`, first-1)
	if !strings.Contains(said, want) {
		t.Errorf("the labels are %s, want %s", said, want)
	}
	if info := output(t, "pdfinfo", "-box", path); !strings.Contains(info, "TrimBox:            22.67    22.67   388.34   583.94") {
		t.Errorf("the trim of B-format inside its marks: pdfinfo says\n%s", info)
	}
}
