package ui

import (
	"image"

	"headland/typeset"
)

// peekWidth is the width of one page of a lifted leaf's picture, in the
// toolkit's units.
const peekWidth = 150

// placePeek puts the picture of what would open beside the fore-edge, clear of
// the hand.
func (d *desk) placePeek() {
	d.place(d.pictures.peek, d.peekAt())
}

func (d *desk) peekAt() image.Rectangle {
	if !onEdge(d.over) || d.session == nil {
		return image.Rectangle{}
	}
	p := &d.plan
	trim := d.of.Collection().Design().Trim
	wide := p.units(peekWidth)
	deep := wide * int(trim.Height) / int(trim.Width)
	e := &p.edges[d.over.side]
	margin := p.units(sideMargin)
	x := e.box.Max.X + p.units(tickRoom)
	if e.outward < 0 {
		x = e.box.Min.X - p.units(tickRoom) - 2*wide
	}
	x = max(margin, min(x, p.size.X-margin-2*wide))
	y := p.view.Min.Y + (p.view.Dy()-deep)/2
	return image.Rect(x, y, x+2*wide, y+deep)
}

// drawPeek draws the two pages that would lie open, small, in ink.
func (d *desk) drawPeek(w, h int) image.Image {
	colors := d.light.palette()
	s := d.k.slate(d.pictures.peekInk.next(w, h), d.plan.density, colors.desk)
	if !onEdge(d.over) || d.session == nil {
		return s.img
	}
	trim := d.of.Collection().Design().Trim
	wide := w / 2
	scale := float64(wide) / trim.Width.Points()
	for i, number := range [...]int{d.over.spread.Verso, d.over.spread.Recto} {
		if number > 0 {
			d.drawSmall(s, d.page(number), image.Rect(i*wide, 0, (i+1)*wide, h), scale)
		}
	}
	return s.img
}

// drawSmall draws a small page in a rectangle of the slate.
func (d *desk) drawSmall(s *slate, page *typeset.Page, r image.Rectangle, scale float64) {
	colors := d.light.palette()
	s.fill(r, colors.paper)
	frame(s.img, r, max(1, d.plan.units(1)), colors.hairline)
	pen := d.k.masks.On(s.img, scale, r.Min)
	pen.Page(page, colors.ink)
	for _, mark := range strokesOf(d.of, page) {
		if mark.state == 0 {
			row := &page.Rows[mark.row]
			x, y := pen.X(strokeX(page)), pen.Y(row.Baseline)
			s.fill(image.Rect(x, y-d.plan.units(5), x+max(2, d.plan.units(2)), y+d.plan.units(1)), colors.mark)
		}
	}
}
