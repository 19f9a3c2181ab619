package typeset

import (
	"slices"
	"testing"

	"pgregory.net/rapid"

	"headland/pagemodel"
)

// rowsFrom are rows of verse by their X and width.
func rowsFrom(at ...[2]Length) []Row {
	var rows []Row
	for _, xw := range at {
		rows = append(rows, Row{X: xw[0], Width: xw[1], Room: 240 - xw[0]})
	}
	return rows
}

func xsOf(rows []Row) []Length {
	var xs []Length
	for i := range rows {
		xs = append(xs, rows[i].X)
	}
	return xs
}

// TestEdgeOfAPage: the verse of a page is centred on its longest line, or
// optically where that line is disproportionately long (New Hart's Rules
// 9.4.2). All widths are of a measure of 240; an em is 12.
func TestEdgeOfAPage(t *testing.T) {
	for _, tc := range []struct {
		name string
		edge pagemodel.Edge
		rows []Row
		want []Length
	}{
		{"left", pagemodel.EdgeLeft, rowsFrom([2]Length{0, 100}, [2]Length{12, 60}), []Length{0, 12}},
		{"by the longest line", pagemodel.EdgeCentre, rowsFrom([2]Length{0, 100}, [2]Length{12, 60}), []Length{70, 82}},
		{"by the line that ends farthest right", pagemodel.EdgeCentre, rowsFrom([2]Length{0, 100}, [2]Length{48, 92}), []Length{50, 98}},
		{"all indented", pagemodel.EdgeCentre, rowsFrom([2]Length{100, 100}, [2]Length{112, 100}), []Length{64, 76}},
		{"a hanging mark", pagemodel.EdgeCentre, rowsFrom([2]Length{-6, 106}, [2]Length{0, 80}), []Length{64, 70}},
		{"a turned line keeps its turnover", pagemodel.EdgeCentre, rowsFrom([2]Length{0, 230}, [2]Length{12, 40}), []Length{5, 17}},
		{"run out into the margin", pagemodel.EdgeCentre, rowsFrom([2]Length{0, 250}, [2]Length{0, 40}), []Length{0, 0}},
		{"optical, no line freakish", pagemodel.EdgeOptic, rowsFrom([2]Length{0, 120}, [2]Length{0, 90}), []Length{60, 60}},
		{"optical, a line over a third longer", pagemodel.EdgeOptic, rowsFrom([2]Length{0, 160}, [2]Length{0, 100}, [2]Length{0, 90}), []Length{70, 70, 70}},
		{"optical, two long lines", pagemodel.EdgeOptic, rowsFrom([2]Length{0, 160}, [2]Length{0, 150}, [2]Length{0, 40}), []Length{40, 40, 40}},
		{"optical, as far as the measure goes", pagemodel.EdgeOptic, rowsFrom([2]Length{0, 200}, [2]Length{0, 100}), []Length{40, 40}},
		{"one line", pagemodel.EdgeOptic, rowsFrom([2]Length{0, 100}), []Length{70}},
		{"none", pagemodel.EdgeCentre, nil, nil},
	} {
		shiftToEdge(tc.rows, tc.edge, 240)
		if got := xsOf(tc.rows); !slices.Equal(got, tc.want) {
			t.Errorf("%s: rows begin at %v, want %v", tc.name, got, tc.want)
		}
	}
}

// TestEmAtTheLeft: where a line far longer than the rest leaves but an em of the
// measure, the em goes at its left and it runs fully to the right (Brossard, Le
// Correcteur typographe, 1934, 68).
func TestEmAtTheLeft(t *testing.T) {
	const measure, em = 240, 12
	rows := rowsFrom([2]Length{0, 90}, [2]Length{0, measure - em}, [2]Length{0, 110})
	shiftToEdge(rows, pagemodel.EdgeOptic, measure)
	if rows[1].X != em || rows[1].X+rows[1].Width != measure {
		t.Errorf("the long line runs from %d to %d, want from %d to %d", rows[1].X, rows[1].X+rows[1].Width, em, measure)
	}
}

// drawRows are rows of all that a page can hold.
func drawRows(t *rapid.T) []Row {
	roles := []Role{RoleVerse, RoleVerse, RoleVerse, RoleProse, RoleTitle, RoleHeading, RolePlace}
	return rapid.SliceOfN(rapid.Custom(func(t *rapid.T) Row {
		x := Length(rapid.IntRange(-6, 200).Draw(t, "x"))
		return Row{
			Role: rapid.SampledFrom(roles).Draw(t, "role"), ranged: rapid.IntRange(0, 5).Draw(t, "range") == 0,
			X: x, Width: Length(rapid.IntRange(0, 260).Draw(t, "width")), Room: 240 - x,
		}
	}), 0, 12).Draw(t, "rows")
}

// TestEdgeHolds: whatever stands on a page, the rows that move do so by one
// amount; none leaves the measure that stood in it; their room ends where it
// did; titles, prose and ranged lines stay.
func TestEdgeHolds(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		before := drawRows(t)
		rows := slices.Clone(before)
		shiftToEdge(rows, rapid.SampledFrom([]pagemodel.Edge{pagemodel.EdgeCentre, pagemodel.EdgeOptic}).Draw(t, "edge"), 240)
		shift, known := Length(0), false
		for i, r := range rows {
			was := before[i]
			if r.ranged && r.Role == RoleVerse || r.Role == RoleTitle || r.Role == RoleProse {
				if r.X != was.X {
					t.Fatalf("row %d, a %v, moved by %v", i, r.Role, r.X-was.X)
				}
				continue
			}
			if known && r.X-was.X != shift {
				t.Fatalf("row %d moved by %v, another by %v", i, r.X-was.X, shift)
			}
			shift, known = r.X-was.X, true
			if r.X < min(0, was.X) || r.X+r.Width > max(240, was.X+was.Width) || r.X+r.Room != was.X+was.Room {
				t.Fatalf("row %d went from %v to %v, %v wide with room for %v", i, was.X, r.X, r.Width, r.Room)
			}
		}
	})
}

// TestEdgeIsCheap: a page is moved without asking for memory.
func TestEdgeIsCheap(t *testing.T) {
	rows := rowsFrom([2]Length{0, 100}, [2]Length{12, 60})
	if n := testing.AllocsPerRun(10, func() { shiftToEdge(rows, pagemodel.EdgeOptic, 240) }); n != 0 {
		t.Errorf("%v allocations", n)
	}
}

// TestEdgeOf: a poem's own edge goes before the book's; a book without one has
// its poems at the left.
func TestEdgeOf(t *testing.T) {
	for _, tc := range [][3]pagemodel.Edge{
		{pagemodel.EdgeOfBook, pagemodel.EdgeOfBook, pagemodel.EdgeLeft},
		{pagemodel.EdgeOptic, pagemodel.EdgeOfBook, pagemodel.EdgeOptic},
		{pagemodel.EdgeOptic, pagemodel.EdgeLeft, pagemodel.EdgeLeft},
		{pagemodel.EdgeLeft, pagemodel.EdgeCentre, pagemodel.EdgeCentre},
	} {
		d := pagemodel.Design{Edge: tc[0]}
		if got := edgeOf(&d, pagemodel.PoemHead{Edge: tc[1]}); got != tc[2] {
			t.Errorf("design %v, poem %v: %v, want %v", tc[0], tc[1], got, tc[2])
		}
	}
}

// TestCentredOnEachPage: a poem of two pages is centred on the longest line of
// each, its title staying at the left; a centred line of it is not moved from
// the middle of the measure.
func TestCentredOnEachPage(t *testing.T) {
	d := testDesign()
	d.Edge = pagemodel.EdgeCentre
	text := "the flour on the sill\n"
	for range d.Rows() {
		text += "a loaf\n"
	}
	text += "and far the longest line on the second page"
	c := poemOf(d, "Loaves", text)
	ref := firstLine(c)
	p, _, _ := c.Poem(ref.Poem)
	ref.Line = p.Line(pagemodel.Place{Line: 1}).ID()
	s := setOf(mustApply(t, c, pagemodel.SetRange{LineRef: ref, To: pagemodel.RangeCentre}))
	for n := 1; n <= s.Extent(); n++ {
		page := s.Page(n)
		longest := Length(0)
		for _, r := range page.Rows {
			if r.Role == RoleVerse {
				longest = max(longest, r.Width)
			}
		}
		for _, r := range page.Rows {
			want := page.Text.X + (page.Text.W-longest)/2
			switch {
			case r.Role == RoleTitle:
				want = page.Text.X
			case r.Line == ref.Line:
				want = page.Text.X + (page.Text.W-r.Width)/2
			case r.Role != RoleVerse:
				continue
			}
			if r.X != want {
				t.Errorf("page %d: %v %q begins at %v, want %v", n, r.Role, rowText(&r), r.X, want)
			}
		}
	}
	if s.Extent() != 2 {
		t.Errorf("%d pages, want 2", s.Extent())
	}
}
