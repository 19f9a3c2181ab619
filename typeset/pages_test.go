package typeset

import (
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"headland/pagemodel"
)

// stanzasOf is the units of stanzas with so many lines each, one row a line
// and one blank row between stanzas.
func stanzasOf(lengths ...int) []unit {
	var units []unit
	for group, n := range lengths {
		for i := range n {
			u := unit{rows: make([]Row, 1), group: group, at: i, of: n}
			if i == 0 && group > 0 {
				u.before = 1
			}
			units = append(units, u)
		}
	}
	return units
}

// TestFitFormula: q stanzas of s lines with one blank between fit a page of A
// lines where q = floor((A+1)/(s+1)); for A = 24: couplets 8, tercets 6,
// quatrains 5, sestets 3, octaves 2, sonnets 1 (arithmetic, no source needed).
func TestFitFormula(t *testing.T) {
	for s, q := range map[int]int{2: 8, 3: 6, 4: 5, 6: 3, 8: 2, 14: 1} {
		units := stanzasOf(slices.Repeat([]int{s}, 12)...)
		cuts := cutPages(units, 24, 24)
		if len(cuts) == 0 || cuts[0] != q*s {
			t.Errorf("stanzas of %d: the page ends before line %v, want %d", s, cuts, q*s)
		}
	}
}

// TestPageEnds goes through the trade's rules for parting stanzas.
func TestPageEnds(t *testing.T) {
	for _, tc := range []struct {
		name    string
		stanzas []int
		rows    int
		want    []int
	}{
		{"a stanza that fits a page stays whole", []int{6, 8}, 12, []int{6}},
		{"a tercet is never split", []int{3, 3, 3}, 10, []int{6}},
		{"a longer stanza than a page is parted", []int{30}, 24, []int{24}},
		{"leaving no piece of one line", []int{25}, 24, []int{23}},
		{"a couplet is never split", []int{2, 2, 2}, 7, []int{4}},
	} {
		if got := cutPages(stanzasOf(tc.stanzas...), tc.rows, tc.rows); !slices.Equal(got, tc.want) {
			t.Errorf("%s: cuts %v, want %v", tc.name, got, tc.want)
		}
	}
}

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

// TestPagesHoldEverything: whatever the stanzas and the page, every line
// stands once, in order, on the grid, and no turned line is parted.
func TestPagesHoldEverything(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		units := stanzasOf(rapid.SliceOfN(rapid.IntRange(1, 40), 1, 8).Draw(t, "stanzas")...)
		for i := range units {
			units[i].rows = make([]Row, rapid.IntRange(1, 4).Draw(t, "rows"))
			for j := range units[i].rows {
				units[i].rows[j] = Row{Line: pagemodel.LineID(i + 1), Start: j}
			}
		}
		rows := rapid.IntRange(5, 30).Draw(t, "depth")
		first := rapid.IntRange(4, rows).Draw(t, "first")
		cuts := cutPages(units, first, rows)
		pages := place(units, cuts, func(int) int { return 1 })
		next := Row{Line: 1}
		for i, page := range pages {
			depth := rows
			if i == 0 {
				depth = first
			}
			for _, r := range page {
				if r.Line != next.Line || r.Start != next.Start {
					t.Fatalf("line %d row %d stands where line %d row %d should", r.Line, r.Start, next.Line, next.Start)
				}
				if r.Grid > depth {
					t.Fatalf("page %d: row %d of %d", i, r.Grid, depth)
				}
				if next.Start++; next.Start == len(units[r.Line-1].rows) {
					next = Row{Line: r.Line + 1}
				}
			}
			if next.Start != 0 {
				t.Fatalf("page %d parts line %d from its turnover", i, next.Line)
			}
		}
		if int(next.Line) != len(units)+1 {
			t.Fatalf("%d of %d lines stand", next.Line-1, len(units))
		}
	})
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
