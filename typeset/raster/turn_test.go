package raster

import (
	"image"
	"testing"

	"headland/pagemodel"
	"headland/typeset"
)

// quarterTurn is an image turned a quarter anticlockwise, pixel by pixel.
func quarterTurn(img *image.RGBA) *image.RGBA {
	w, h := img.Rect.Dx(), img.Rect.Dy()
	turned := image.NewRGBA(image.Rect(0, 0, h, w))
	for y := range h {
		for x := range w {
			turned.SetRGBA(y, w-1-x, img.RGBAAt(x, y))
		}
	}
	return turned
}

// lying is a page of 200 by 260 points whose rows lie on their sides, and the
// same rows upright on a page of 260 by 200.
func lying(t *testing.T, rows ...typeset.Row) (turned, upright *typeset.Page) {
	t.Helper()
	turned = &typeset.Page{Number: 1, Trim: pagemodel.Trim{Width: pt(200), Height: pt(260)}}
	upright = &typeset.Page{Number: 1, Trim: pagemodel.Trim{Width: pt(260), Height: pt(200)}}
	for _, row := range rows {
		upright.Rows = append(upright.Rows, row)
		row.Turned = true
		turned.Rows = append(turned.Rows, row)
	}
	return turned, upright
}

// A page of turned rows is, pixel for pixel, the quarter turn of the page with
// the rows upright: at whole scales and others, for masks that are kept, for
// glyphs too great to keep, and for what runs over the edges.
func TestTurnedIsTheQuarterTurn(t *testing.T) {
	accents := garamond(t).run("Żuraw, e\u0301te\u0301 fjord", pt(17))
	accents.X = pt(3.3)
	great := gentium(t).run("Q&j", pt(150))
	for i := range great.Glyphs {
		great.Glyphs[i].Y = pt(float64(i))
	}
	turned, upright := lying(t,
		typeset.Row{X: pt(20.4), Baseline: pt(40.7), Runs: []typeset.Run{accents, garamond(t).run("and on", pt(9))}},
		typeset.Row{X: pt(-30), Baseline: pt(3), Runs: []typeset.Run{garamond(t).run("over the foot and the edge, and over the head of it too", pt(21))}},
		typeset.Row{X: pt(10.2), Baseline: pt(160), Runs: []typeset.Run{great}},
	)
	for _, scale := range []float64{1, 2, 4, 0.75, 1.37} {
		m := NewMasks(1 << 22)
		got, want := Image(turned, scale, m, paper, ink), quarterTurn(Image(upright, scale, m, paper, ink))
		if got.Rect != want.Rect {
			t.Fatalf("at %v the images are %v and %v", scale, got.Rect, want.Rect)
		}
		for again := range 2 { // the second time from masks that were kept
			if string(got.Pix) != string(want.Pix) {
				t.Errorf("at %v, drawn %d times, the turned page is not the quarter turn of the upright one", scale, again+1)
			}
			got = Image(turned, scale, m, paper, ink)
		}
	}
}

// Upright and turned glyphs of one size don't take each other's masks.
func TestTurnedMasksAreKeptApart(t *testing.T) {
	m := NewMasks(1 << 20)
	run := garamond(t).run("gently", pt(14))
	row := typeset.Row{X: pt(20), Baseline: pt(40), Runs: []typeset.Run{run}}
	turned, upright := lying(t, row)
	alone := Image(upright, 2, NewMasks(1<<20), paper, ink)
	Image(turned, 2, m, paper, ink)
	if got := Image(upright, 2, m, paper, ink); string(got.Pix) != string(alone.Pix) {
		t.Error("after a turned page the upright one is drawn otherwise")
	}
}

// A window on the page shows the same pixels of turned rows as the whole does.
func TestEdgesCutTurnedRows(t *testing.T) {
	turned, _ := lying(t,
		typeset.Row{X: pt(20), Baseline: pt(40), Runs: []typeset.Run{garamond(t).run("cut at the edges", pt(30))}},
		typeset.Row{X: pt(-20), Baseline: pt(150), Runs: []typeset.Run{garamond(t).run("Q&A", pt(300))}},
	)
	m := NewMasks(1 << 20)
	whole := Image(turned, 2, m, paper, ink)
	for _, w := range []image.Rectangle{image.Rect(50, 60, 90, 400), image.Rect(250, 100, 400, 101), image.Rect(399, 519, 400, 520)} {
		small := sheet(image.Rectangle{Max: w.Size()}, paper)
		m.On(small, 2, image.Point{}.Sub(w.Min)).Page(turned, ink)
		compare(t, small.Rect, small, whole, image.Point{}.Sub(w.Min), rounding)
	}
}

// A line across a spread whose pages are whole pixels wide is drawn whole: as on
// one page of twice the width. A row may reach as far as it likes.
func TestSpreadShowsALineAcrossWhole(t *testing.T) {
	c := garamond(t)
	verso, recto := c.page(pt(11), pt(14)), c.page(pt(11), pt(14))
	for _, pg := range []*typeset.Page{verso, recto} {
		pg.Trim = pagemodel.Trim{Width: pt(200), Height: pt(100)}
	}
	row := typeset.Row{X: pt(-25), Baseline: pt(40), Runs: []typeset.Run{c.run("Over and over the fold of the white field, and over it again, to the hedge", pt(14))}}
	verso.Rows = []typeset.Row{row}
	wide := *verso
	wide.Trim.Width *= 2
	row.X -= verso.Trim.Width
	recto.Rows = []typeset.Row{row}
	m := NewMasks(1 << 20)
	got, want := Spread(verso, recto, 2, m, paper, ink), Image(&wide, 2, m, paper, ink)
	if got.Rect != want.Rect || string(got.Pix) != string(want.Pix) {
		t.Error("the spread is not drawn as one wide page is")
	}
}
