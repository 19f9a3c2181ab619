package typeset

import (
	"reflect"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"headland/pagemodel"
)

// tightly fits lines at any measure and word-space limit, all in the same faces.
func tightly() func(l *pagemodel.Line, measure Length, limit int) fitted {
	b := testBlocks(0)
	return func(l *pagemodel.Line, measure Length, limit int) fitted {
		b.measure, b.design.Tighten, b.prevEnd = measure, limit, 0
		return b.fit(l)
	}
}

// unbounded is a measure that every line here fits.
const unbounded = 1000 * pagemodel.Point

// wordSpaces are the widths of a row's word spaces, and x is where each letter
// stands without them.
func wordSpaces(r *Row) (spaces, x []Length) {
	taken := Length(0)
	for _, run := range r.Runs {
		for _, g := range run.Glyphs {
			if run.Text[g.Cluster] == ' ' {
				spaces = append(spaces, g.Advance)
				taken += g.Advance
				continue
			}
			x = append(x, run.X+g.X-taken)
		}
	}
	return spaces, x
}

// TestTightened: at any measure and limit a line is set in one of three ways: as
// it is where it fits; in one row with its spaces narrowed evenly, to no less
// than the limit and no more than is needed; or turned, just as where there is
// no limit.
func TestTightened(t *testing.T) {
	lines, fit := lineList(60), tightly()
	narrowed := 0
	rapid.Check(t, func(t *rapid.T) {
		text := rapid.SampledFrom(lines).Draw(t, "line")
		l := pagemodel.NewLine(1, text)
		if words := pagemodel.Words(text); rapid.Bool().Draw(t, "italic") {
			l = l.WithSpans([]pagemodel.Span{{Start: words[1].Start, End: words[1].End + 1, Style: pagemodel.Italic}})
		}
		natural := fit(&l, unbounded, 0).rows[0]
		measure := natural.Width - Length(rapid.IntRange(-10, 1200).Draw(t, "too long by"))
		limit := rapid.IntRange(1, 40).Draw(t, "limit")
		got := fit(&l, measure, limit)
		spaces, letters := wordSpaces(&got.rows[0])
		full, where := wordSpaces(&natural)
		switch {
		case natural.Width <= measure || got.turned || len(got.rows) > 1 || got.rows[0].Width > measure:
			if want := fit(&l, measure, 0); !reflect.DeepEqual(got, want) {
				t.Fatalf("not narrowed, and yet not as without a limit: %d rows, want %d", len(got.rows), len(want.rows))
			}
		default:
			narrowed++
			if got.rows[0].Width != measure || got.overrun != 0 || !reflect.DeepEqual(letters, where) {
				t.Fatalf("%v wide in %v, over by %v; letters at %v, want %v", got.rows[0].Width, measure, got.overrun, letters, where)
			}
			evenly(t, full, spaces, limit)
		}
	})
	if narrowed == 0 {
		t.Error("no line was narrowed")
	}
}

// evenly holds that spaces have become narrower by one amount, to 1/64 pt and
// the greater first, and by no more than the limit.
func evenly(t *rapid.T, full, spaces []Length, limit int) {
	first := full[0] - spaces[0]
	before := first
	for i := range spaces {
		by := full[i] - spaces[i]
		if 100*by > full[i]*Length(limit) || by > before || by < first-1 {
			t.Fatalf("spaces of %v became %v at a limit of %d per cent", full, spaces, limit)
		}
		before = by
	}
}

// TestTightenedToTheLimit: a line is narrowed to just the limit, and turns when
// it is 1/64 pt longer. The limit is reckoned from the space's own width in the
// face, cut down to whole 1/64 pt.
func TestTightenedToTheLimit(t *testing.T) {
	l := pagemodel.NewLine(1, "four loaves and a fifth for the road")
	fit := tightly()
	natural := fit(&l, unbounded, 0).rows[0]
	spaces, _ := wordSpaces(&natural)
	least := spaces[0]
	for _, s := range spaces {
		least = min(least, s)
	}
	most := Length(len(spaces)) * (least * 20 / 100)
	if got := fit(&l, natural.Width-most, 20); got.turned || got.overrun != 0 {
		t.Errorf("a line too long by %v turns, though its spaces can give that", most)
	}
	if got := fit(&l, natural.Width-most-1, 20); !got.turned || got.overrun != most+1 {
		t.Errorf("a line too long by %v does not turn, over by %v", most+1, got.overrun)
	}
}

// TestTightenedPieces: each piece of a line that this edition breaks is narrowed
// by itself.
func TestTightenedPieces(t *testing.T) {
	text := "a tray of loaves and rolls for the hospital at the end of the road"
	at := strings.Index(text, "for")
	c := poemOf(testDesign(), "", text)
	c = mustApply(t, c, pagemodel.Break{LineRef: firstLine(c), At: at, In: pagemodel.InEdition})
	l, fit := c.Order()[0].Poem.Line(pagemodel.Place{}), tightly()
	natural := fit(&l, unbounded, 0).rows
	measure := max(natural[0].Width, natural[1].Width) - 20
	got := fit(&l, measure, 30)
	if len(got.rows) != 2 || got.turned || got.rows[1].Turn != EditionBreak {
		t.Fatalf("%d rows, turned: %v", len(got.rows), got.turned)
	}
	for i := range got.rows {
		if want := min(natural[i].Width, measure); got.rows[i].Width != want {
			t.Errorf("piece %d is %v wide, want %v", i, got.rows[i].Width, want)
		}
	}
}

// TestSpacesThatStay: no-break spaces, gaps, and the word spaces before a tab
// stop keep their width while others are narrowed.
func TestSpacesThatStay(t *testing.T) {
	text := "a tray of white\u00a0loaves for the long road"
	at := strings.Index(text, "for")
	fit, em := tightly(), pagemodel.DefaultDesign().Size
	l := pagemodel.NewLine(1, text).WithGap(at, pagemodel.Ems(2))
	natural := fit(&l, unbounded, 0).rows[0]
	row := fit(&l, natural.Width-40, 30).rows[0]
	hard := strings.Index(text, "\u00a0")
	white := func(r *Row) Length { return r.XAt(hard+2) - r.XAt(hard) }
	if row.Width != natural.Width-40 || white(&row) != white(&natural) {
		t.Errorf("%v wide, the no-break space %v, want %v and %v", row.Width, white(&row), natural.Width-40, white(&natural))
	}
	gap := func(r *Row) Length { return r.Runs[1].X - r.Runs[0].X - r.Runs[0].Width }
	if gap(&row) != 2*em {
		t.Errorf("the gap is %v wide, want %v", gap(&row), 2*em)
	}
	l = pagemodel.NewLine(1, text).WithTab(at, pagemodel.Ems(14))
	natural = fit(&l, unbounded, 0).rows[0]
	row = fit(&l, natural.Width-40, 30).rows[0]
	full, _ := wordSpaces(&natural)
	spaces, _ := wordSpaces(&row)
	before := strings.Count(text[:at], " ")
	if row.Width != natural.Width-40 || row.XAt(at) != 14*em || !slices.Equal(full[:before], spaces[:before]) {
		t.Errorf("%v wide, what is at the stop at %v; spaces before it %v, want %v", row.Width, row.XAt(at), spaces[:before], full[:before])
	}
}
