package typeset

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"headland/pagemodel"
)

// shape is a poem to build: the lengths of its stanzas.
type shape struct {
	head    pagemodel.PoemHead
	stanzas []int
}

// bookShaped is a book of poems of those shapes. Each line names its poem,
// stanza and line.
func bookShaped(d pagemodel.Design, poems ...shape) *pagemodel.Collection {
	b := pagemodel.NewBuilder(pagemodel.About{Title: "Shapes"}, d)
	for n, p := range poems {
		var stanzas []pagemodel.Stanza
		for i, length := range p.stanzas {
			var lines []pagemodel.Line
			for j := range length {
				lines = append(lines, b.Line(fmt.Sprintf("poem %d stanza %d line %d", n+1, i+1, j+1)))
			}
			stanzas = append(stanzas, pagemodel.NewStanza(pagemodel.Verse, lines))
		}
		b.Poem(p.head, []pagemodel.Part{pagemodel.NewPart("", stanzas)})
	}
	return b.Collection()
}

// gridOf is where the lines of a page stand, by their words.
func gridOf(p *Page) map[string]int {
	grid := map[string]int{}
	for i := range p.Rows {
		if p.Rows[i].Line != 0 {
			grid[rowText(&p.Rows[i])] = p.Rows[i].Grid
		}
	}
	return grid
}

// TestTranslationFaces: original on the verso, translation on the recto, first
// lines level and spreads in step, the shorter side padded, each pair opening on
// a verso (two accounts of bilingual editions; the padding is common practice).
func TestTranslationFaces(t *testing.T) {
	d := testDesign()
	s := setOf(bookShaped(d,
		shape{pagemodel.PoemHead{Title: "Before"}, []int{4}},
		shape{pagemodel.PoemHead{Title: "Pain"}, []int{4, 5, 20, 6}},
		shape{pagemodel.PoemHead{Title: "Bread", Start: pagemodel.FacingPage}, []int{4, 4, 20, 6}},
		shape{pagemodel.PoemHead{Title: "After"}, []int{4}},
	))
	contents := s.Contents()
	if contents[1].Page%2 != 0 || contents[2].Page != contents[1].Page+1 {
		t.Fatalf("the original begins on page %d and its translation on %d", contents[1].Page, contents[2].Page)
	}
	seen := 0
	for n := contents[1].Page; n < contents[3].Page; n += 2 {
		verso, recto := gridOf(s.Page(n)), gridOf(s.Page(n+1))
		for stanza, lines := range []int{4, 4, 20, 6} {
			for line := range lines {
				name := fmt.Sprintf(" stanza %d line %d", stanza+1, line+1)
				a, b := verso["poem 2"+name], recto["poem 3"+name]
				if a != b {
					t.Errorf("page %d: line%s stands on row %d, its translation on %d", n, name, a, b)
				}
				if a > 0 {
					seen++
				}
			}
		}
	}
	if seen != 34 {
		t.Errorf("%d of 34 pairs of lines stand level", seen)
	}
	if got := contents[3].Page; got%2 != 0 {
		t.Errorf("the poem after the pair is on page %d, want the verso behind the recto", got)
	}
}

// TestTranslationWithATurnover: where a line turns on one side, the line below it
// stands level on both all the same.
func TestTranslationWithATurnover(t *testing.T) {
	b := pagemodel.NewBuilder(pagemodel.About{}, testDesign())
	poem := func(start pagemodel.Start, lines ...string) {
		var stanza []pagemodel.Line
		for _, l := range lines {
			stanza = append(stanza, b.Line(l))
		}
		b.Poem(pagemodel.PoemHead{Title: "Pain", Start: start}, []pagemodel.Part{pagemodel.NewPart("", []pagemodel.Stanza{pagemodel.NewStanza(pagemodel.Verse, stanza)})})
	}
	poem(pagemodel.FreshPage, "le pain", "et le sel")
	poem(pagemodel.FacingPage, strings.Repeat("bread and more bread ", 6), "and salt")
	s := setOf(b.Collection())
	verso, recto := gridOf(s.Page(2)), gridOf(s.Page(3))
	if verso["et le sel"] != recto["and salt"] || recto["and salt"] < testDesign().PoemRow+2 {
		t.Errorf("the second lines stand on rows %d and %d", verso["et le sel"], recto["and salt"])
	}
}

// TestRunningHeadsLeaveOpeningsAlone: none stands over either page of the spread
// on which a poem across it opens; one does over the spread after.
func TestRunningHeadsLeaveOpeningsAlone(t *testing.T) {
	d := testDesign()
	d.Running = pagemodel.PoetAndBook
	c := bookShaped(d, shape{pagemodel.PoemHead{Title: "Wide", Lie: pagemodel.Across}, []int{20, 20}})
	about := c.About()
	about.Poet = "A. Poet"
	s := setOf(mustApply(t, c, pagemodel.SetAbout{About: about}))
	for n := 2; n <= 5; n++ {
		has := slices.ContainsFunc(s.Page(n).Rows, func(r Row) bool { return r.Role == RoleRunning })
		if want := n > 3; has != want {
			t.Errorf("page %d has a running head: %v", n, has)
		}
	}
}

// TestTranslationWithoutAnOriginal: a poem that is to face one that is not there
// opens on a fresh page like any other.
func TestTranslationWithoutAnOriginal(t *testing.T) {
	s := setOf(bookShaped(testDesign(), shape{pagemodel.PoemHead{Title: "Alone", Start: pagemodel.FacingPage}, []int{4}}))
	if s.Extent() != 1 || s.Contents()[0].Page != 1 {
		t.Errorf("it begins on page %d of %d", s.Contents()[0].Page, s.Extent())
	}
}

// TestPoemAcrossTheSpread: it opens on a verso and takes the recto too; a long
// line is on both pages, its halves meeting at the spine.
func TestPoemAcrossTheSpread(t *testing.T) {
	d := testDesign()
	b := pagemodel.NewBuilder(pagemodel.About{}, d)
	long := "a line so long that no page of this book could hold the whole of it and that goes over the gutter"
	lines := []pagemodel.Line{b.Line(long), b.Line("a short one"), b.Line("on the recto").WithIndent(pagemodel.Ems(30))}
	b.Poem(pagemodel.PoemHead{Title: "Wide", Lie: pagemodel.Across}, []pagemodel.Part{pagemodel.NewPart("", []pagemodel.Stanza{pagemodel.NewStanza(pagemodel.Verse, lines)})})
	s := setOf(b.Collection())
	if len(s.Turnovers()) != 0 {
		t.Errorf("%d lines turn, though the spread holds them", len(s.Turnovers()))
	}
	if s.Extent() != 3 {
		t.Fatalf("%d pages, want a blank and a spread", s.Extent())
	}
	verso, recto := s.Page(2), s.Page(3)
	var left, right *Row
	for i := range verso.Rows {
		if rowText(&verso.Rows[i]) == long {
			left = &verso.Rows[i]
		}
		if verso.Rows[i].Line == lines[2].ID() {
			t.Error("a line that begins on the recto stands on the verso too")
		}
	}
	for i := range recto.Rows {
		switch recto.Rows[i].Line {
		case lines[0].ID():
			right = &recto.Rows[i]
		case lines[1].ID():
			t.Error("a line that ends on the verso stands on the recto too")
		}
	}
	if left == nil || right == nil || right.X != left.X-d.Trim.Width || right.Baseline != left.Baseline {
		t.Fatalf("the long line stands at %v and %v", left, right)
	}
	if left.Number != 1 || right.Number != 0 {
		t.Errorf("it is counted as row %d on the verso and %d on the recto, want 1 and none", left.Number, right.Number)
	}
}

// TestWordsInTheGutter: of a poem across the spread the words that the binding
// takes are named, once, and a gap there mends it.
func TestWordsInTheGutter(t *testing.T) {
	d := testDesign()
	b := pagemodel.NewBuilder(pagemodel.About{}, d)
	text := "a line so long that no page of this book could hold the whole of it and that goes over the gutter"
	b.Poem(pagemodel.PoemHead{Title: "Wide", Lie: pagemodel.Across}, []pagemodel.Part{pagemodel.NewPart("", []pagemodel.Stanza{pagemodel.NewStanza(pagemodel.Verse, []pagemodel.Line{b.Line(text), b.Line("short")})})})
	c := b.Collection()
	s := setOf(c)
	faults := s.Faults()
	if len(faults) != 1 || faults[0].Kind != NearGutter || faults[0].Page != 2 || !strings.Contains(faults[0].Text, "falls into the gutter") {
		t.Fatalf("faults %v", faults)
	}
	words, _, _ := strings.Cut(strings.TrimPrefix(faults[0].Text, "“"), "”")
	at := strings.Index(text, words)
	if at < 0 {
		t.Fatalf("%q is not in the line", words)
	}
	c = mustApply(t, c, pagemodel.SetGap{LineRef: firstLine(c), At: at, Width: pagemodel.Ems(8)})
	if faults := setOf(c).Faults(); len(faults) != 0 {
		t.Errorf("with a gap at the spine: %v", faults)
	}
}

// TestPoemTurned: its pages are as deep as the measure is wide, and all its rows
// lie on their side within the text.
func TestPoemTurned(t *testing.T) {
	d := testDesign()
	s := setOf(bookShaped(d, shape{pagemodel.PoemHead{Title: "Side", Lie: pagemodel.Turned}, []int{4, 4, 4, 4, 4}}))
	lines := 0
	for n := 1; n <= s.Extent(); n++ {
		p := s.Page(n)
		for i := range p.Rows {
			r := &p.Rows[i]
			if r.Role == RoleFolio {
				continue
			}
			if !r.Turned || r.X < d.Margins.Foot || r.X+r.Width > d.Trim.Height-d.Margins.Head || r.Baseline < p.Text.X || r.Baseline > p.Text.X+p.Text.W {
				t.Errorf("page %d: “%s” at %v from the foot, %v from the left", n, rowText(r), r.X, r.Baseline)
			}
			if r.Line != 0 {
				lines++
			}
		}
	}
	if lines != 20 || s.Extent() < 2 {
		t.Errorf("%d of 20 lines on %d pages", lines, s.Extent())
	}
}
