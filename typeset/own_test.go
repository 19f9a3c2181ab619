package typeset

import (
	"testing"

	"headland/pagemodel"
)

// TestMeasures: a poem on its side has the depth for its measure; one across the
// spread has all from the left edge of the verso's text, an outer margin in, to
// the right edge of the recto's.
func TestMeasures(t *testing.T) {
	d := testDesign()
	for lie, want := range map[pagemodel.Lie]Length{
		pagemodel.Upright: d.Trim.Width - d.Margins.Inner - d.Margins.Outer,
		pagemodel.Turned:  d.Trim.Height - d.Margins.Head - d.Margins.Foot,
		pagemodel.Across:  2*d.Trim.Width - 2*d.Margins.Outer,
	} {
		if got := measureOf(&d, lie); got != want {
			t.Errorf("%v: a measure of %v, want %v", lie, got, want)
		}
	}
}

// TestLieDecidesTurns: a line too long for the page but not for its depth, or
// for the spread, turns only where the poem stands upright.
func TestLieDecidesTurns(t *testing.T) {
	line := "a line of words that goes on a little too long for the measure it has"
	for lie, rows := range map[pagemodel.Lie]int{pagemodel.Upright: 2, pagemodel.Turned: 1, pagemodel.Across: 1} {
		b := testBlocks(0)
		d := testDesign()
		b.design = &d
		p := poemOf(d, "", line).Order()[0].Poem
		b.setPoem(pagemodel.NewPoem(p.ID(), pagemodel.PoemHead{Lie: lie}, p.Parts()))
		if got := len(b.units[0].rows); got != rows {
			t.Errorf("%v: %d rows, want %d", lie, got, rows)
		}
	}
}

// TestHeadAcrossKeepsToTheVerso: the centred title of a poem across the spread
// stands in the middle of the verso's text, not in the gutter.
func TestHeadAcrossKeepsToTheVerso(t *testing.T) {
	b := testBlocks(0)
	b.design.TitleCentred = true
	b.setPoem(pagemodel.NewPoem(1, pagemodel.PoemHead{Title: "Night", Lie: pagemodel.Across}, nil))
	r := &b.units[0].rows[0]
	if want := (b.design.Measure() - r.Width) / 2; r.X != want {
		t.Errorf("the title begins at %v, want %v", r.X, want)
	}
}

// TestOneSmallerPoem: a poem's own size is that of its lines and, in
// proportion, of its head, on the same grid; the poems after it have the
// design's again. A size that can't be set is the design's.
func TestOneSmallerPoem(t *testing.T) {
	d := testDesign()
	d.TitleSize = pagemodel.Pt(22)
	b := pagemodel.NewBuilder(pagemodel.About{}, d)
	for _, size := range []Length{pagemodel.Pt(8), 0, -pagemodel.Pt(8), pagemodel.Pt(72) + 1, 1, pagemodel.Pt(16)} {
		b.Poem(pagemodel.PoemHead{Title: "Loaf", Size: size}, []pagemodel.Part{pagemodel.NewPart("", []pagemodel.Stanza{
			pagemodel.NewStanza(pagemodel.Verse, []pagemodel.Line{b.Line("a line"), b.Line("another").WithIndent(pagemodel.OneEm)}),
		})})
	}
	s := setOf(b.Collection())
	for i, want := range []Length{pagemodel.Pt(8), d.Size, d.Size, d.Size, d.Size, pagemodel.Pt(16)} {
		p := s.Page(i + 1)
		title, first, second := &p.Rows[0], &p.Rows[1], &p.Rows[2]
		if first.Runs[0].Size != want || title.Runs[0].Size != 2*want || second.X-first.X != want {
			t.Errorf("page %d: verse of %v, a title of %v, an em of %v; want %v", i+1, first.Runs[0].Size, title.Runs[0].Size, second.X-first.X, want)
		}
		if first.Grid != d.PoemRow || second.Grid != d.PoemRow+1 || second.Baseline-first.Baseline != d.Leading {
			t.Errorf("page %d: lines on rows %d and %d", i+1, first.Grid, second.Grid)
		}
	}
}
