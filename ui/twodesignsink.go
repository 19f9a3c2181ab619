package ui

import (
	"image"
	"image/color"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"

	"headland/pagemodel"
	"headland/typeset"
	"headland/typeset/raster"
)

// Sizes of two designs side by side, in the toolkit's units.
const (
	pairNameDepth = 40 // over a page: the design's name
	pairFootDepth = 56 // below it: what it gives, and how to take it
	pairApart     = 45 // from a page to the middle
)

// pairPlan is where two designs lie on the window.
type pairPlan struct {
	at      image.Rectangle // in device pixels of the desk
	origin  fyne.Position   // of the desk, on the window
	density float64
	scale   float64 // device pixels to a point, the same for both pages
	halves  [2]halfPlan
}

// halfPlan is where one design lies, in device pixels of the picture.
type halfPlan struct{ name, page, foot, take image.Rectangle }

func (p *pairPlan) units(n float64) int { return int(n*p.density + 0.5) }

// lay puts the picture of a pair where it lies.
func (p *pairPlan) lay(picture *canvas.Raster) {
	unit := func(px int) float32 { return float32(float64(px) / p.density) }
	picture.Resize(fyne.NewSize(unit(p.at.Dx()), unit(p.at.Dy())))
	picture.Move(p.origin.AddXY(unit(p.at.Min.X), unit(p.at.Min.Y)))
	picture.Refresh()
}

// name writes what a side is called, as write does it from an edge and a baseline in
// an ink, and rules beneath it where the side is the chosen one.
func (p *pairPlan) name(s *slate, side int, chosen bool, colors *palette, write func(x, base int, ink color.RGBA) int) {
	box, ink := p.halves[side].name, colors.quiet
	if chosen {
		ink = colors.words
	}
	base := box.Max.Y - p.units(10)
	end := write(box.Min.X, base, ink)
	if chosen {
		y := base + p.units(6)
		s.fill(image.Rect(box.Min.X, y, end, y+max(1, p.units(1.5))), colors.words)
	}
}

// pixel is the device pixel of the picture at a position on the window.
func (p *pairPlan) pixel(at fyne.Position) image.Point {
	x, y := float64(at.X-p.origin.X)*p.density, float64(at.Y-p.origin.Y)*p.density
	return image.Pt(int(x), int(y)).Sub(p.at.Min)
}

// newPairPlan lays two pages of these trims out over the whole view, on one
// scale, level at the head and near each other.
func newPairPlan(p *plan, origin fyne.Position, trims [2]pagemodel.Trim) pairPlan {
	pp := pairPlan{at: p.view, origin: origin, density: p.density}
	half := p.view.Dx() / 2
	deep := p.view.Dy() - pp.units(pairNameDepth+pairFootDepth)
	pp.scale = 1e9
	for _, t := range trims {
		pp.scale = min(pp.scale, float64(half-pp.units(pairApart+20))/t.Width.Points(), float64(deep)/t.Height.Points())
	}
	for side, t := range trims {
		w, h := int(t.Width.Points()*pp.scale), int(t.Height.Points()*pp.scale)
		x, y := max(pp.units(20), half-pp.units(pairApart)-w), pp.units(pairNameDepth)
		if side == 1 {
			x = half + pp.units(pairApart)
		}
		page := image.Rect(x, y, x+w, y+h)
		name := image.Rect(x, y-pp.units(pairNameDepth), x+w, y-pp.units(6))
		foot := image.Rect(x, page.Max.Y, x+w, page.Max.Y+pp.units(28))
		pp.halves[side] = halfPlan{name, page, foot, foot.Add(image.Pt(0, foot.Dy()))}
	}
	return pp
}

// arrange lays the picture over the book.
func (t *twoDesigns) arrange() {
	d := t.w.desk
	var trims [2]pagemodel.Trim
	for side := range trims {
		trims[side] = t.choices[t.shown[side]].design.Trim
	}
	t.plan = newPairPlan(&d.plan, fyne.CurrentApp().Driver().AbsolutePositionForObject(d), trims)
	t.plan.lay(t.picture)
}

// draw draws both halves.
func (t *twoDesigns) draw(w, h int) image.Image {
	s := t.w.desk.k.slate(t.ink.next(w, h), t.plan.density, t.w.desk.light.palette().desk)
	for side := range t.plan.halves {
		t.drawHalf(s, side)
	}
	return s.img
}

// drawHalf draws a design's name, its page and what it gives.
func (t *twoDesigns) drawHalf(s *slate, side int) {
	d, h, choice := t.w.desk, &t.plan.halves[side], t.choices[t.shown[side]]
	colors := d.light.palette()
	t.drawName(s, side)
	s.fill(h.page, colors.paper)
	frame(s.img, h.page, max(1, t.plan.units(1)), colors.hairline)
	if page := t.page(side); page != nil {
		pen := d.k.masks.On(s.img, t.plan.scale, h.page.Min)
		pen.Page(page, colors.ink)
		t.drawStrokes(s, page, pen)
	}
	gives := d.k.words(choice.words(t.set(side)), leafType, false)
	s.write(gives, h.foot.Min.X, h.foot.Min.Y+t.plan.units(20), colors.words)
	if side == t.side {
		s.write(d.k.words("Set the book so (Enter)", leafType, true), h.take.Min.X, h.take.Min.Y+t.plan.units(16), colors.words)
	}
}

// drawName writes a design's name, ruled beneath where it is the chosen one.
func (t *twoDesigns) drawName(s *slate, side int) {
	d, choice := t.w.desk, t.choices[t.shown[side]]
	t.plan.name(s, side, side == t.side, d.light.palette(), func(x, base int, ink color.RGBA) int {
		return s.write(d.k.words(choice.name, titleSize-2, !choice.kept), x, base, ink)
	})
}

// drawStrokes marks the overlong lines of a page in its outer margin.
func (t *twoDesigns) drawStrokes(s *slate, page *typeset.Page, pen *raster.Pen) {
	for _, mark := range strokesOf(t.w.desk.of, page) {
		row := &page.Rows[mark.row]
		x, y := pen.X(strokeX(page)), pen.Y(row.Baseline)
		s.fill(image.Rect(x, y-t.plan.units(11), x+max(2, t.plan.units(2)), y+t.plan.units(3)), t.w.desk.light.palette().mark)
	}
}
