package ui

import (
	"image"
	"image/color"

	"headland/pagemodel"
	"headland/typeset"
)

// drawBefore draws what lies to the left of the open pages.
func (d *desk) drawBefore(w, h int) image.Image { return d.drawGround(pagemodel.Verso, w, h) }

// drawAfter draws what lies to the right of them.
func (d *desk) drawAfter(w, h int) image.Image { return d.drawGround(pagemodel.Recto, w, h) }

// drawGround draws the ground of a side: the fore-edge there with its ticks, or
// on an empty desk the words that say so. All else of the desk is the window's
// own ground, which costs nothing to draw.
func (d *desk) drawGround(side pagemodel.Side, w, h int) image.Image {
	img := d.pictures.groundInk[side].next(w, h)
	at := d.plan.ground(side, d.session == nil)
	s := d.k.slateAt(img, at.Min, d.plan.density, d.light.palette().desk)
	if d.session == nil {
		d.drawBare(s)
		return img
	}
	d.drawEdge(s, &d.plan.edges[side], int(side))
	for _, t := range d.placed {
		if t.edge == int(side) {
			d.drawTick(s, t)
		}
	}
	return img
}

// ground is the part of the desk that a side's ground is drawn on: the
// fore-edge and as far as its ticks stand out, or on an empty desk the whole
// view for the one side and nothing for the other.
func (p *plan) ground(side pagemodel.Side, empty bool) image.Rectangle {
	e := &p.edges[side]
	switch {
	case empty && side == pagemodel.Verso:
		return p.view
	case empty || p.sheets[side].number == 0:
		return image.Rectangle{}
	case side == pagemodel.Verso:
		return image.Rect(e.box.Min.X-p.units(tickRoom), p.view.Min.Y, e.box.Max.X, p.view.Max.Y).Intersect(p.view)
	}
	return image.Rect(e.box.Min.X, p.view.Min.Y, e.box.Max.X+p.units(tickRoom), p.view.Max.Y).Intersect(p.view)
}

// bareWords are what the desk says when nothing lies on it.
var bareWords = []struct {
	words  string
	size   float64
	italic bool
	drop   float64 // below the words before
}{
	{"Nothing lies on the desk.", 30, false, 0},
	{"Open a collection with Ctrl O, or begin a new one with Ctrl N.", wordSize, false, 44},
	{"A manuscript can be dropped here: Markdown or plain text.", wordSize, false, 27},
}

// drawBare draws an empty desk's words, centred.
func (d *desk) drawBare(s *slate) {
	colors := d.light.palette()
	y := d.plan.view.Min.Y + d.plan.view.Dy()*2/5
	for i, line := range bareWords {
		run := d.k.words(line.words, line.size, line.italic)
		y += d.plan.units(line.drop)
		ink := colors.words
		if i > 0 {
			ink = colors.quiet
		}
		s.write(run, (d.plan.size.X-s.px(run.Width))/2, y, ink)
	}
}

// drawEdge draws one fore-edge, leaf by leaf. The leaves stand back a little
// from the page, the more the farther out.
func (d *desk) drawEdge(s *slate, e *foreEdge, side int) {
	colors := d.light.palette()
	lifted := -1
	if d.over.kind == overEdge && int(d.over.side) == side {
		lifted = e.line(d.over.leaf)
	}
	for line := range e.lines {
		x := e.box.Min.X + line*e.pitch
		if e.outward < 0 {
			x = e.box.Max.X - (line+1)*e.pitch
		}
		back := d.back(e, line)
		leaf := image.Rect(x, e.box.Min.Y+back, x+e.pitch, e.box.Max.Y-back)
		between := colors.edgeLine
		if line == lifted {
			leaf.Min.Y -= d.plan.units(7)
			between = colors.words
		}
		s.drawLeaf(leaf, e.outward, colors.edge, between)
	}
	d.drawMoving(s, e)
}

// back is how far the line of a fore-edge stands back from the page, above and
// below.
func (d *desk) back(e *foreEdge, line int) int {
	return d.plan.units(2) + line*d.plan.units(8)/max(1, d.plan.units(edgeRoom)/e.pitch)
}

// drawMoving lets the leaves where poems begin that what is tried out would
// move stand out a little at the foot of the fore-edge.
func (d *desk) drawMoving(s *slate, e *foreEdge) {
	for _, page := range d.moving {
		if i, ok := e.place(pagemodel.Leaf(page)); ok {
			x, y := e.x(i), e.box.Max.Y-d.back(e, e.line(i))
			s.fill(image.Rect(x, y, x+max(1, e.pitch/2), y+d.plan.units(7)), d.light.palette().words)
		}
	}
}

// drawLeaf draws a leaf seen edge on, with the dark that parts it from the
// next on its outer side.
func (s *slate) drawLeaf(r image.Rectangle, outward int, paper, between color.RGBA) {
	s.fill(r, paper)
	gap := max(1, r.Dx()/3)
	if outward < 0 {
		s.fill(image.Rect(r.Min.X, r.Min.Y, r.Min.X+gap, r.Max.Y), between)
		return
	}
	s.fill(image.Rect(r.Max.X-gap, r.Min.Y, r.Max.X, r.Max.Y), between)
}

// drawTick draws a tick: a hairline from its leaf out over the edge, and at its
// end a bar for what is unsettled, a ring for what is faulty.
func (d *desk) drawTick(s *slate, t placedTick) {
	colors := d.light.palette()
	hair := max(1, d.plan.units(1))
	e := &d.plan.edges[t.edge]
	out := e.outward
	inside := image.Rect(t.root.X, t.end.Y, e.box.Max.X, t.end.Y+hair)
	if out < 0 {
		inside = image.Rect(e.box.Min.X, t.end.Y, t.root.X+e.pitch, t.end.Y+hair)
	}
	ink := colors.deskMark
	s.fill(inside, palettes[day].mark)
	s.fill(image.Rect(min(outerX(e), t.end.X), t.end.Y, max(outerX(e), t.end.X)+hair, t.end.Y+hair), ink)
	if d.over.kind == overTick && d.over.page == t.page {
		ink = colors.words
	}
	if t.faulty {
		s.ring(image.Pt(t.end.X+out*d.plan.units(4), t.end.Y), float64(d.plan.units(4)), float64(hair)*1.5, ink)
		return
	}
	bar := d.plan.units(5)
	s.fill(image.Rect(t.end.X, t.end.Y-bar, t.end.X+2*hair, t.end.Y+bar+hair), ink)
}

// outerX is the outer edge of a fore-edge.
func outerX(e *foreEdge) int {
	if e.outward < 0 {
		return e.box.Min.X
	}
	return e.box.Max.X
}

// ring draws a circle's outline about a device pixel.
func (s *slate) ring(centre image.Point, radius, thick float64, ink color.RGBA) {
	at := func(px float64) typeset.Length { return pagemodel.Pt(px / s.density) }
	ring(s.pen, typeset.Point{X: at(float64(centre.X) + 0.5), Y: at(float64(centre.Y) + 0.5)}, at(radius), thick, ink)
}
