package ui

import (
	"image/color"
	"math"

	"headland/assets"
	"headland/pagemodel"
	"headland/typeset"
	"headland/typeset/raster"
)

// faultSign marks the faults of a row: a stroke with a ring on it, as on the
// fore-edge, and a letter for each. Where the line turns too, the letters follow
// that one's.
func (d *drawing) faultSign(f faultSign, strokes []stroke) {
	row, past := f.row, 0
	for _, s := range strokes {
		if s.row == f.row {
			row, past = d.strokeRow(s), 1
		}
	}
	r := &d.page.Rows[row]
	d.marginStroke(r, 2*d.hair, d.colors.mark)
	if !r.Turned {
		at := typeset.Point{X: strokeX(d.page) + d.px(d.hair), Y: r.Baseline - sizeOf(r)*4/5 - d.px(d.units(3))}
		ring(d.pen, at, d.px(d.units(3)), float64(d.hair)*1.5, d.colors.mark)
	}
	d.marginLetter(r, f.letters, past, d.colors.mark)
}

// ring draws a circle's outline by short strokes, so many device pixels thick.
func ring(pen *raster.Pen, centre typeset.Point, radius typeset.Length, thick float64, ink color.RGBA) {
	const steps = 24
	var last typeset.Point
	for i := range steps + 1 {
		a := 2 * math.Pi * float64(i) / steps
		at := typeset.Point{
			X: centre.X + typeset.Length(math.Round(float64(radius)*math.Cos(a))),
			Y: centre.Y + typeset.Length(math.Round(float64(radius)*math.Sin(a))),
		}
		if i > 0 {
			pen.Stroke(last, at, thick, ink)
		}
		last = at
	}
}

// endY is the baseline of the words at the foot of a page, near its lower edge,
// clear of the folio.
func endY(page *typeset.Page) typeset.Length {
	foot := page.Trim.Height - page.Text.Y - page.Text.H
	return page.Trim.Height - foot/5
}

// pageEnd says at the foot, at the text's inner edge, what the page end falls
// on.
func (d *drawing) pageEnd(words string) {
	if !d.hasRoom() {
		return
	}
	run := d.k.setter.Words(words, typeset.WordStyle{Family: assets.EBGaramond, Size: d.signLength(), Italic: true})
	d.pen.Run(&run, endX(d.page, run.Width), endY(d.page), d.colors.aside)
}

// endX is where those words begin.
func endX(page *typeset.Page, width typeset.Length) typeset.Length {
	if page.Side == pagemodel.Verso {
		return page.Text.X + page.Text.W - width
	}
	return page.Text.X
}

// underSigns finds the mark of a fault, or the words at the page's end.
func (d *desk) underSigns(side pagemodel.Side, page *typeset.Page, p typeset.Point) (target, bool) {
	marks := d.signs(page)
	if marks.end != "" && p.Y > page.Text.Y+page.Text.H && distance(p.Y, endY(page)) < d.plan.length(d.plan.units(12)) {
		return target{kind: overEnd, side: side, page: page.Number}, true
	}
	beyond := p.X - outward(page, tieAt)
	if side == pagemodel.Verso {
		beyond = -beyond
	}
	if beyond < 0 {
		return target{}, false
	}
	for _, f := range d.faults {
		if f.Page != page.Number {
			continue
		}
		row := faultRow(page, f)
		if row < 0 {
			continue
		}
		if r := &page.Rows[row]; !r.Turned && distance(p.Y, r.Baseline-sizeOf(r)/3) <= sizeOf(r)*13/20 {
			return target{kind: overFault, side: side, row: row, fault: f}, true
		}
	}
	return target{}, false
}
