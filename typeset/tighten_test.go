package typeset

import (
	"reflect"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"headland/pagemodel"
)

// tightBlocks is a fitter with a word-space limit.
func tightBlocks(measure Length, tighten int) *blocks {
	b := testBlocks(measure)
	b.design.Tighten = tighten
	return b
}

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
	lines := lineList(60)
	narrowed := 0
	rapid.Check(t, func(t *rapid.T) {
		text := rapid.SampledFrom(lines).Draw(t, "line")
		l := pagemodel.NewLine(1, text)
		if words := pagemodel.Words(text); rapid.Bool().Draw(t, "italic") {
			l = l.WithSpans([]pagemodel.Span{{Start: words[1].Start, End: words[1].End + 1, Style: pagemodel.Italic}})
		}
		natural := testBlocks(1000 * pagemodel.Point).fit(&l).rows[0]
		measure := natural.Width - Length(rapid.IntRange(-10, 1200).Draw(t, "too long by"))
		limit := rapid.IntRange(1, 40).Draw(t, "limit")
		got := tightBlocks(measure, limit).fit(&l)
		spaces, letters := wordSpaces(&got.rows[0])
		full, where := wordSpaces(&natural)
		switch {
		case natural.Width <= measure || got.turned || len(got.rows) > 1 || got.rows[0].Width > measure:
			if want := testBlocks(measure).fit(&l); !reflect.DeepEqual(got, want) {
				t.Fatalf("not narrowed, and yet not as without a limit:\n%+v\n%+v", got, want)
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
	natural := testBlocks(1000 * pagemodel.Point).fit(&l).rows[0]
	spaces, _ := wordSpaces(&natural)
	least := spaces[0]
	for _, s := range spaces {
		least = min(least, s)
	}
	most := Length(len(spaces)) * (least * 20 / 100)
	if got := tightBlocks(natural.Width-most, 20).fit(&l); got.turned || got.overrun != 0 {
		t.Errorf("a line too long by %v turns, though its spaces can give that", most)
	}
	if got := tightBlocks(natural.Width-most-1, 20).fit(&l); !got.turned || got.overrun != most+1 {
		t.Errorf("a line too long by %v does not turn, over by %v", most+1, got.overrun)
	}
}

// TestTightenedPieces: each piece of a line that this edition breaks is narrowed
// by itself; no-break spaces, gaps and what stands before a tab stop keep their
// width.
func TestTightenedPieces(t *testing.T) {
	text := "a tray of loaves and\u00a0rolls for the hospital at the end of the road"
	at := strings.Index(text, "for")
	l := pagemodel.NewLine(1, text)
	wide := testBlocks(1000 * pagemodel.Point)
	first := wide.compose(&l, 0, at).width
	c := poemOf(testDesign(), "", text)
	broken := mustApply(t, c, pagemodel.Break{LineRef: firstLine(c), At: at, In: pagemodel.InEdition})
	p := broken.Order()[0].Poem.Line(pagemodel.Place{})
	got := tightBlocks(first-60, 30).fit(&p)
	if len(got.rows) < 2 || got.rows[0].Width != first-60 || got.rows[1].Turn != EditionBreak {
		t.Fatalf("the first piece is %v wide, want %v", got.rows[0].Width, first-60)
	}
	for _, g := range got.rows[0].Runs[0].Glyphs {
		face := got.rows[0].Runs[0].Face
		if got.rows[0].Runs[0].Text[g.Cluster:][:1] == "\u00a0"[:1] && g.Advance != face.at(wide.size, wide.shaper.shape(face, plainCase, "\u00a0").width) {
			t.Errorf("the no-break space is %v wide", g.Advance)
		}
	}
	tab := pagemodel.NewLine(2, "a tray of loaves for the road").WithTab(strings.Index("a tray of loaves for the road", "for"), pagemodel.Ems(10))
	natural := wide.fit(&tab).rows[0]
	row := tightBlocks(natural.Width-20, 30).fit(&tab).rows[0]
	full, _ := wordSpaces(&natural)
	spaces, _ := wordSpaces(&row)
	if row.XAt(17) != pagemodel.Ems(10).At(wide.size) || row.Width != natural.Width-20 || !reflect.DeepEqual(full[:4], spaces[:4]) {
		t.Errorf("with a tab stop: spaces %v of %v, the stop at %v", spaces, full, row.XAt(17))
	}
}
