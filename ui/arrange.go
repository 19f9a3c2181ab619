package ui

import (
	"image"
	"math"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"

	"headland/pagemodel"
)

// arrange lays everything on the desk anew, on whole device pixels.
func (d *desk) arrange() {
	size := d.Size()
	if size.Width < 1 || size.Height < 1 {
		return
	}
	density := d.density()
	in := planning{
		size:    image.Pt(round(size.Width, density), round(size.Height, density)),
		density: density, zoom: d.zoom, moved: d.moved, working: d.working, trim: pagemodel.DefaultDesign().Trim,
	}
	if d.session != nil {
		in.trim, in.spread, in.extent = d.of.Collection().Design().Trim, d.spread, d.of.Extent()
		in.sliver = d.round.there()
	}
	d.plan = newPlan(in)
	d.moved = image.Pt(between(d.moved.X, d.plan.farthest.X), between(d.moved.Y, d.plan.farthest.Y))
	d.placed = d.plan.placeTicks(d.ticks)
	d.placePictures()
}

func round(units float32, density float64) int { return int(math.Round(float64(units) * density)) }

// density is how many device pixels a unit of the toolkit has, both factors of
// the toolkit's scale included.
func (d *desk) density() float64 {
	const far = 10000
	c := fyne.CurrentApp().Driver().CanvasForObject(d)
	if c == nil {
		return 1
	}
	px, _ := c.PixelCoordinateForPosition(fyne.NewPos(far, 0))
	return max(0.1, float64(px)/far)
}

func (d *desk) placePictures() {
	p, at := &d.pictures, &d.plan
	for side := range p.ground {
		d.place(p.ground[side], at.ground(pagemodel.Side(side), d.session == nil))
	}
	d.place(p.head, at.headBand())
	d.place(p.foot, at.footBand())
	d.place(d.round.picture, at.sliver)
	for side, s := range at.sheets {
		d.place(p.pages[side], s.seen)
	}
	d.placePeek()
}

// place puts a picture on the device pixels of a rectangle; an empty one is
// put where nobody sees it.
func (d *desk) place(r *canvas.Raster, at image.Rectangle) {
	if at.Empty() {
		at = image.Rect(-8, -8, -4, -4)
	}
	unit := func(px int) float32 { return float32(float64(px) / d.plan.density) }
	r.Resize(fyne.NewSize(unit(at.Dx()), unit(at.Dy())))
	r.Move(fyne.NewPos(unit(at.Min.X), unit(at.Min.Y)))
}

// pixelAt is the device pixel of the desk at a position.
func (d *desk) pixelAt(p fyne.Position) image.Point {
	return image.Pt(int(math.Floor(float64(p.X)*d.plan.density)), int(math.Floor(float64(p.Y)*d.plan.density)))
}
