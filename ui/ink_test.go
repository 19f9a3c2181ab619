package ui

import (
	"image"
	"image/color"
	"testing"

	"fyne.io/fyne/v2"

	"headland/pagemodel"
	"headland/typeset"
)

// inkAt is the colour at a place of a page as it is drawn now.
func (tb *table) inkAt(side pagemodel.Side, at typeset.Point) color.RGBA {
	seen := tb.d.plan.sheets[side].seen
	img := tb.d.drawPage(side, seen.Dx(), seen.Dy()).(*image.RGBA)
	p := tb.d.plan.fromPage(side, at).Sub(seen.Min)
	return img.RGBAAt(p.X, p.Y)
}

// TestMarksStandInTheOuterMargin: the stroke of an unsettled line is in the
// mark's ink, that of one settled in another, and thinner.
func TestMarksStandInTheOuterMargin(t *testing.T) {
	tb := setTable(t, verses("first\n"+long))
	side, r := tb.row("as if")
	page := tb.d.page(tb.d.plan.sheets[side].number)
	if x := strokeX(page); x <= page.Text.X+page.Text.W {
		t.Errorf("on a recto the strokes are at %v, within the text", x)
	}
	tb.d.session.ClearFocus()
	at := typeset.Point{X: strokeX(page), Y: r.Baseline - sizeOf(r)/4}
	colors := tb.d.light.palette()
	if got := tb.inkAt(side, at); got != colors.mark {
		t.Errorf("the stroke is %v, want %v", got, colors.mark)
	}
	tb.keys(fyne.KeyDown, fyne.KeyDown)
	tb.chord(key(ctrl, fyne.KeyK))
	if got := tb.inkAt(side, at); got != colors.aside {
		t.Errorf("kept, the stroke is %v, want %v", got, colors.aside)
	}
}

// TestARuleDarkensAtHand: faint at rest, ink where the line is at hand.
func TestARuleDarkensAtHand(t *testing.T) {
	tb := setTable(t, verses(two))
	colors := tb.d.light.palette()
	side, r := tb.row("I was")
	gap := tb.d.plan.length(tb.d.plan.units(ruleGap))
	at := typeset.Point{X: r.X + r.Width + gap, Y: r.Baseline - sizeOf(r)/5}
	tb.d.session.ClearFocus()
	if got := tb.inkAt(side, at); got != colors.hairline {
		t.Errorf("at rest the rule is %v, want %v", got, colors.hairline)
	}
	tb.d.session.SetFocus(r.Ref())
	if got := tb.inkAt(side, at); got != colors.ink {
		t.Errorf("at hand the rule is %v, want %v", got, colors.ink)
	}
}

// TestARuleCanBeTakenBesideItsLine: by an area 24 units wide and a line high,
// and never by the neighbour's.
func TestARuleCanBeTakenBesideItsLine(t *testing.T) {
	tb := setTable(t, verses(two))
	for _, words := range []string{"I was", "You will"} {
		side, r := tb.row(words)
		page := tb.d.page(tb.d.plan.sheets[side].number)
		leading := tb.d.of.Collection().Design().Leading
		for dx := -12; dx <= 12; dx += 6 {
			for _, dy := range []typeset.Length{-leading*45/100 - sizeOf(r)/4, -sizeOf(r) / 4, leading*45/100 - sizeOf(r)/4} {
				x := r.X + r.Width + tb.d.plan.length(tb.d.plan.units(ruleGap+2)+dx)
				if ref, ok := ruleUnder(&tb.d.plan, page, typeset.Point{X: x, Y: r.Baseline + dy}); !ok || ref != r.Ref() {
					t.Errorf("%q: the hand %d beside and %v below takes %v", words, dx, dy, ref)
				}
			}
		}
	}
}

func TestStrokesOfALinesStates(t *testing.T) {
	for _, try := range []struct {
		edit pagemodel.Edit
		want string
	}{
		{nil, "t"},
		{pagemodel.Keep{}, "k"},
		{pagemodel.Break{At: 20, In: pagemodel.InEdition}, "e"},
		{pagemodel.Break{At: 40, In: pagemodel.InPoem}, ""},
	} {
		tb := setTable(t, verses(long))
		ref, _ := tb.d.lineInSight(false)
		switch e := try.edit.(type) {
		case pagemodel.Keep:
			e.LineRef = ref
			tb.d.do(e)
		case pagemodel.Break:
			e.LineRef = ref
			tb.d.do(e)
		}
		got := ""
		for _, s := range strokesOf(tb.d.of, tb.d.page(1)) {
			got += s.letter()
		}
		if got != try.want {
			t.Errorf("after %v the letters are %q, want %q", try.edit, got, try.want)
		}
	}
}
