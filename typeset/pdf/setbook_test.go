package pdf

import (
	"fmt"
	"strings"
	"testing"

	"headland/pagemodel"
	"headland/typeset"
)

// bookSet is a book of n poems, each with a title, accents, ligatures, and a
// line too long for the measure; set by typeset.
func bookSet(n int) *typeset.Setting {
	b := pagemodel.NewBuilder(pagemodel.About{Title: "Turning"}, pagemodel.DefaultDesign())
	for i := range n {
		stanza := []pagemodel.Line{
			b.Line(fmt.Sprintf("final affinities %d of the office", i)),
			b.Line("a line so long that it can’t be set in the measure of the page and has to turn over at some word of it"),
			b.Line("crème, naïve, żurek; e\u0301te\u0301"),
		}
		b.Poem(pagemodel.PoemHead{Title: fmt.Sprint("Field ", i+1)},
			[]pagemodel.Part{pagemodel.NewPart("", []pagemodel.Stanza{pagemodel.NewStanza(pagemodel.Verse, stanza)})})
	}
	return typeset.NewSetter(typeset.Bundled()).Set(nil, b.Collection())
}

// pagesOf are all pages of a setting.
func pagesOf(s *typeset.Setting) []*typeset.Page {
	pages := make([]*typeset.Page, s.Extent())
	for i := range pages {
		pages[i] = s.Page(i + 1)
	}
	return pages
}

// words are the words of a page's rows in the order in which they stand.
func words(p *typeset.Page) string {
	var b strings.Builder
	for _, row := range p.Rows {
		for _, run := range row.Runs {
			b.WriteString(run.Text)
		}
		b.WriteByte(' ')
	}
	return strings.Join(strings.Fields(b.String()), " ")
}

// A book that typeset has set copies out page by page, word by word, titles,
// turnovers and folios included (pdftotext).
func TestSetBookCopiesOut(t *testing.T) {
	pages := pagesOf(bookSet(12))
	path := saved(t, Document{Title: "Turning", Pages: pages})
	got := strings.Split(tool(t, "pdftotext", "-raw", path, "-"), "\f")
	if len(got) != len(pages)+1 {
		t.Fatalf("%d pages, want %d", len(got)-1, len(pages))
	}
	for i, p := range pages {
		if text := strings.Join(strings.Fields(got[i]), " "); text != words(p) {
			t.Errorf("page %d:\n got %q\nwant %q", p.Number, text, words(p))
		}
	}
	if !strings.Contains(strings.Join(got, ""), "turn over") {
		t.Error("the long lines are gone")
	}
}

// Words of a script that is written from right to left copy out as written
// (pdftotext puts them into the order of reading), and the file is sound.
func TestRightToLeftCopiesOut(t *testing.T) {
	b := pagemodel.NewBuilder(pagemodel.About{Title: "Bread"}, pagemodel.DefaultDesign())
	words := []string{"לחם", "خبز", "שלום עולם"}
	var lines []pagemodel.Line
	for _, w := range words {
		lines = append(lines, b.Line(w))
	}
	b.Poem(pagemodel.PoemHead{}, []pagemodel.Part{pagemodel.NewPart("", []pagemodel.Stanza{pagemodel.NewStanza(pagemodel.Verse, lines)})})
	path := saved(t, Document{Title: "Bread", Pages: pagesOf(typeset.NewSetter(typeset.Bundled()).Set(nil, b.Collection()))})
	got := tool(t, "pdftotext", path, "-")
	for _, w := range words {
		if !strings.Contains(got, w) {
			t.Errorf("%q is not in %q", w, got)
		}
	}
	tool(t, "qpdf", "--check", path)
}
