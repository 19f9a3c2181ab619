package typeset

import (
	"slices"
	"strings"
	"testing"

	"headland/pagemodel"
)

// TestTitleStays: a title is never parted from its lines, whatever the sink.
func TestTitleStays(t *testing.T) {
	d := testDesign()
	stanza := strings.Repeat("a line of verse\n", d.Rows()-1)
	s := setOf(poemOf(d, "A Title", stanza+"the last"))
	for n := 1; n <= s.Extent(); n++ {
		rows := s.Page(n).Rows
		if len(rows) > 1 && rows[0].Role == RoleTitle && rows[1].Line == 0 {
			t.Errorf("page %d has a title and no lines", n)
		}
		for _, r := range rows {
			if r.Line != 0 && r.Grid > d.Rows() {
				t.Errorf("page %d: a line on row %d of %d", n, r.Grid, d.Rows())
			}
		}
	}
	if s.Extent() != 2 {
		t.Errorf("%d pages, want 2", s.Extent())
	}
}

// TestSectionsOpenOnRectos: a section's page is a recto, backed by a blank.
func TestSectionsOpenOnRectos(t *testing.T) {
	b := pagemodel.NewBuilder(pagemodel.About{}, testDesign())
	poem := func() {
		b.Poem(pagemodel.PoemHead{Title: "Poem"}, []pagemodel.Part{pagemodel.NewPart("", []pagemodel.Stanza{pagemodel.NewStanza(pagemodel.Verse, []pagemodel.Line{b.Line("a line")})})})
	}
	b.Section("One", nil)
	poem()
	b.Section("Two", nil)
	poem()
	s := setOf(b.Collection())
	var pages []int
	for _, e := range s.Contents() {
		pages = append(pages, e.Page)
	}
	if !slices.Equal(pages, []int{1, 3, 5, 7}) {
		t.Errorf("section, poem, section, poem on pages %v, want 1, 3, 5, 7", pages)
	}
	if p := s.Page(3); p.Side != pagemodel.Recto || p.Text.X != testDesign().Margins.Inner {
		t.Errorf("a recto's left margin is %v, want its inner one", p.Text.X)
	}
	if len(s.Page(2).Rows) != 0 || s.Page(1).Folio != "" {
		t.Errorf("a section's page and its back are blind")
	}
}

// TestPagesMoveOn: where an edit makes a poem a page longer, all that follows
// moves on in a warm set as in a cold one, and back again when it is undone.
func TestPagesMoveOn(t *testing.T) {
	d := testDesign()
	b := pagemodel.NewBuilder(pagemodel.About{}, d)
	for range 3 {
		var lines []pagemodel.Line
		for range d.Rows() - d.PoemRow + 1 { // to the last row of the first page
			lines = append(lines, b.Line("a line of verse"))
		}
		b.Poem(pagemodel.PoemHead{Title: "Full"}, []pagemodel.Part{pagemodel.NewPart("", []pagemodel.Stanza{pagemodel.NewStanza(pagemodel.Verse, lines)})})
	}
	c := b.Collection()
	setter := NewSetter(Bundled())
	short := setter.Set(nil, c)
	longer := mustApply(t, c, pagemodel.Break{LineRef: firstLine(c), At: 2})
	for _, step := range [...]struct {
		from  *Setting
		to    *pagemodel.Collection
		pages []int
	}{
		{short, longer, []int{1, 3, 4}},
		{setter.Set(nil, longer), c, []int{1, 2, 3}},
	} {
		var pages []int
		warm := setter.Set(step.from, step.to)
		for _, e := range warm.Contents() {
			pages = append(pages, e.Page)
		}
		if cold := setter.Set(nil, step.to); !slices.Equal(pages, step.pages) || warm.Extent() != cold.Extent() {
			t.Errorf("poems begin on pages %v of %d, want %v of %d", pages, warm.Extent(), step.pages, cold.Extent())
		}
	}
}

// TestFolios: a folio stands at the outer edge of the text, below it and within
// the trim.
func TestFolios(t *testing.T) {
	d := testDesign()
	s := setOf(poemOf(d, "Long", strings.Repeat("a line of verse\n", 3*d.Rows())+"the last"))
	for n := 1; n <= s.Extent(); n++ {
		p := s.Page(n)
		f := p.Rows[len(p.Rows)-1]
		edge, at := p.Text.X, f.X
		if p.Side == pagemodel.Recto {
			edge, at = p.Text.X+p.Text.W, f.X+f.Width
		}
		if f.Role != RoleFolio || at != edge || f.Baseline <= p.Text.Y+p.Text.H || f.Baseline >= p.Trim.Height {
			t.Errorf("page %d, a %v: the folio's edge is at %v, want %v; its baseline at %v", n, p.Side, at, edge, f.Baseline)
		}
	}
}
