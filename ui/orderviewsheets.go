package ui

import (
	"image"
	"image/color"

	"headland/pagemodel"
	"headland/typeset"
)

// signatureLetters are the letters by which signatures are known, of the alphabet
// that printers sign with: without J, V and W (common practice, from memory).
const signatureLetters = "ABCDEFGHIKLMNOPQRSTUXYZ"

// signatureName is the letter of a signature, counted from 0; past Z they are
// doubled: AA, BB …
func signatureName(n int) string {
	name, letter := "", signatureLetters[n%len(signatureLetters)]
	for range n/len(signatureLetters) + 1 {
		name += string(letter)
	}
	return name
}

// drawBack draws the back of a signature's fold beside its row, its letter and
// its collating mark, which steps down from one signature to the next so that one
// that lies in the wrong place is seen on the backs.
func (v *orderView) drawBack(s *slate, row *orderRow) {
	p, colors := &v.plan, v.d.light.palette()
	if !row.begins {
		return
	}
	top := p.units(orderAbove)
	right := p.left - p.units(orderAir)
	back := image.Rect(right-p.units(9), top, right, top+p.page.Y)
	s.fill(back, colors.edge)
	frame(s.img, back, max(1, p.units(1)), colors.hairline)
	mark := max(p.units(9), p.page.Y/9)
	steps := max(1, p.page.Y/mark)
	y := top + row.signature%steps*mark
	s.fill(image.Rect(back.Min.X, y, back.Max.X, min(y+mark, back.Max.Y)), palettes[day].ink)
	letter := v.run(orderWords{text: signatureName(row.signature), size: 21})
	s.write(letter, back.Min.X-p.units(12)-s.px(letter.Width), top+p.page.Y/2+p.units(7), colors.quiet)
}

// drawSheets draws the sheets of a signature folded one in another, each from its
// one leaf to its other, and the thread through their fold. Where a signature lies
// in more rows than one, a sheet runs on at the row's end.
func (v *orderView) drawSheets(s *slate, row *orderRow) {
	p := &v.plan
	leaves := p.each / 2
	base := p.units(orderAbove) + p.page.Y + p.units(orderBelow)
	for sheet := range leaves / 2 {
		deep := base + (leaves/2-sheet)*p.units(orderSheet)
		from, begins := p.leafAt(row, sheet)
		to, ends := p.leafAt(row, leaves-1-sheet)
		if from < to {
			v.drawSheet(s, from, to, base-p.units(2), deep, begins, ends)
		}
	}
	v.drawThread(s, row, base)
}

// leafAt is the x at which a leaf of a signature stands between its two pages;
// where another row has it, the row's nearer end, and false.
func (p *orderPlan) leafAt(row *orderRow, leaf int) (x int, here bool) {
	recto := 2*leaf - row.offset
	first, last := row.cells[0], row.cells[len(row.cells)-1]
	switch {
	case recto < 0:
		return first.x - p.units(orderAir), false
	case recto >= len(row.cells):
		return last.x + p.page.X + p.units(orderAir), false
	}
	return row.cells[recto].x + p.page.X + p.units(orderAir)/2, true
}

// sheetInk is the colour of lines that only say how things hang together.
func (v *orderView) sheetInk() color.RGBA {
	colors := v.d.light.palette()
	return blend(colors.quiet, colors.desk, 0.25)
}

// drawSheet draws a sheet seen edge on: down from the one leaf, along under the
// others, and up to the other leaf, its corners round.
func (v *orderView) drawSheet(s *slate, from, to, top, deep int, begins, ends bool) {
	ink := v.sheetInk()
	thick := float64(v.plan.density)
	round := min(v.plan.units(7), deep-top, (to-from)/2)
	at := func(x, y int) typeset.Point {
		return typeset.Point{X: s.unit(x), Y: s.unit(y)}
	}
	line := func(a, b image.Point) { s.pen.Stroke(at(a.X, a.Y), at(b.X, b.Y), thick, ink) }
	left, right := from, to
	if begins {
		line(image.Pt(from, top), image.Pt(from, deep-round))
		v.drawCorner(s, image.Pt(from+round, deep-round), -round, round, ink)
		left += round
	}
	if ends {
		line(image.Pt(to, top), image.Pt(to, deep-round))
		v.drawCorner(s, image.Pt(to-round, deep-round), round, round, ink)
		right -= round
	}
	line(image.Pt(left, deep), image.Pt(right, deep))
}

// cornerArc is a quarter of a circle, by its sines.
var cornerArc = [...]float64{0, 0.259, 0.5, 0.707, 0.866, 0.966, 1}

// drawCorner draws a quarter of a circle about a point, from beside it to below.
func (v *orderView) drawCorner(s *slate, about image.Point, wide, deep int, ink color.RGBA) {
	px := func(n float64) typeset.Length { return pagemodel.Pt(n / s.density) }
	var last typeset.Point
	for i, sine := range cornerArc {
		across := cornerArc[len(cornerArc)-1-i]
		to := typeset.Point{X: px(float64(about.X) + across*float64(wide)), Y: px(float64(about.Y) + sine*float64(deep))}
		if i > 0 {
			s.pen.Stroke(last, to, v.plan.density, ink)
		}
		last = to
	}
}

// drawThread draws the thread through the fold of a signature, in the middle of
// its pages: stitches, from within the innermost sheet to without the outermost.
func (v *orderView) drawThread(s *slate, row *orderRow, base int) {
	p := &v.plan
	fold := p.each/2 - row.offset
	if fold <= 0 || fold >= len(row.cells) {
		return
	}
	x, wide := row.cells[fold].x, max(2, p.units(2))
	r := image.Rect(x-wide/2, base+p.units(1), x-wide/2+wide, base+p.units(orderSheet)*(p.each/4+1))
	s.dashes(r, max(2, p.units(4)), v.d.light.palette().deskMark)
}
