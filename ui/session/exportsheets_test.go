package session

import (
	"encoding/json"
	"fmt"
	"path/filepath"
	"strings"
	"testing"

	"headland/pagemodel"
)

// outlined is what qpdf says of a PDF's outline.
type outlined struct {
	Title string
	Page  int `json:"destpageposfrom1"`
	Kids  []outlined
}

// TestOutline has qpdf read back the outline: prelims, poems and end matter, each
// on the page where it opens, in single pages and in a dummy.
func TestOutline(t *testing.T) {
	s := imported(t)
	matter := pagemodel.UsualMatter().With(pagemodel.MatterPage{Kind: pagemodel.Acknowledgements, Title: "Thanks", Text: []string{"To the night shift."}})
	must(t, s.Do(pagemodel.SetMatter{Matter: matter}))
	d, err := s.Dummy(DummyOptions{Paper: "A4"})
	must(t, err)
	book, dummy := filepath.Join(t.TempDir(), "book.pdf"), filepath.Join(t.TempDir(), "dummy.pdf")
	must(t, s.ExportPDF(book, PDFOptions{}, nil))
	must(t, d.Write(dummy, nil))
	const want = "[{Half-title 1 []} {Title 3 []} {Contents 5 []} {Bread 7 []} {Weights 8 []} {Last 9 []} {Thanks 11 []}]"
	if got := fmt.Sprint(outlineIn(t, book)); got != want {
		t.Errorf("the outline is\n%s, want\n%s", got, want)
	}
	// Eleven pages take three sheets: page 1 is on the first side, 7 on the side
	// of 6 and 7, the back of the third sheet.
	const folded = "[{Half-title 1 []} {Title 3 []} {Contents 5 []} {Bread 6 []} {Weights 5 []} {Last 4 []} {Thanks 2 []}]"
	if got := fmt.Sprint(outlineIn(t, dummy)); got != folded {
		t.Errorf("the dummy's outline is\n%s, want\n%s", got, folded)
	}
}

func outlineIn(t *testing.T, path string) []outlined {
	t.Helper()
	var read struct{ Outlines []outlined }
	must(t, json.Unmarshal([]byte(output(t, "qpdf", "--json=2", "--json-key=outlines", path)), &read))
	return read.Outlines
}

// laid gives the second poem another way to lie.
func laid(t *testing.T, s *Session, lie pagemodel.Lie) {
	t.Helper()
	p, err := s.Collection().PoemCalled("#2")
	must(t, err)
	head := p.Head()
	head.Lie = lie
	must(t, s.Do(pagemodel.SetHead{Poem: p.ID(), Head: head}))
}

// TestPoemAcrossTheSpread sees that in spreads the long line stands once, whole,
// that single pages have it in two pieces and no bleed for it, and that a dummy
// says where its halves are on two sheets.
func TestPoemAcrossTheSpread(t *testing.T) {
	s := imported(t)
	laid(t, s, pagemodel.Across)
	path := filepath.Join(t.TempDir(), "book.pdf")
	must(t, s.ExportPDF(path, PDFOptions{Spreads: true}, nil))
	if got := readWhole(t, path); strings.Count(got, long) != 1 {
		t.Errorf("the spreads read %q", got)
	}
	must(t, s.ExportPDF(path, PDFOptions{}, nil))
	info := output(t, "pdfinfo", "-box", path)
	if !strings.Contains(info, "Page size:       365.672 x 561.266") {
		t.Errorf("single pages have a bleed for what crosses the spine:\n%s", info)
	}
	const parted = "lines cross the gutter on 1 spread whose halves are on different sheets"
	for _, c := range []struct {
		matter pagemodel.Matter
		want   bool
	}{
		{pagemodel.Matter{}, false},     // pages 2 and 3 of 4 are the middle of one sheet
		{pagemodel.UsualMatter(), true}, // 8 and 9 of 12 are not
	} {
		must(t, s.Do(pagemodel.SetMatter{Matter: c.matter}))
		d, err := s.Dummy(DummyOptions{Paper: "A4", Section: 16})
		must(t, err)
		if said := d.Instructions(); strings.Contains(said, parted) != c.want {
			t.Errorf("of %d pages it says %q", s.Committed().Extent(), said)
		}
	}
}

// TestTurnedPoem sees that a poem turned on its page reads as any other, also in
// a dummy.
func TestTurnedPoem(t *testing.T) {
	s := imported(t)
	laid(t, s, pagemodel.Turned)
	d, err := s.Dummy(DummyOptions{Paper: "Letter"})
	must(t, err)
	book, dummy := filepath.Join(t.TempDir(), "book.pdf"), filepath.Join(t.TempDir(), "dummy.pdf")
	must(t, s.ExportPDF(book, PDFOptions{}, nil))
	must(t, d.Write(dummy, nil))
	for _, path := range []string{book, dummy} {
		if got := readWhole(t, path); !strings.Contains(got, long) {
			t.Errorf("it reads %q", got)
		}
	}
}

// readWhole is all that a PDF reads, with one space between words.
func readWhole(t *testing.T, path string) string {
	t.Helper()
	return strings.Join(strings.Fields(output(t, "pdftotext", "-raw", path, "-")), " ")
}
