package ui

import (
	"image"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"

	"headland/pagemodel"
)

// laidOver is what the views that lie over the whole book have in common: where
// they lie, their picture, and how they come and go. The widget itself is as
// large as the window, so that nothing else can be done while it lies there.
type laidOver struct {
	w       *Window
	self    fyne.CanvasObject
	view    image.Rectangle // in device pixels of the desk
	origin  fyne.Position   // of the desk, on the window
	density float64         // device pixels to a unit of the toolkit
	picture *canvas.Raster
	ink     buffers
	lifted  bool
}

// takesKeys is a widget that can have the keys.
type takesKeys interface {
	fyne.CanvasObject
	fyne.Focusable
}

// lay lays a view over the book and gives it the keys.
func (v *laidOver) lay(self takesKeys) {
	v.self = self
	c := v.w.win.Canvas()
	c.Overlays().Add(self)
	self.Resize(c.Size())
	c.Focus(self)
}

// lift takes the view away; the book lies as it lay.
func (v *laidOver) lift() {
	if v.lifted {
		return
	}
	v.lifted = true
	v.w.win.Canvas().Overlays().Remove(v.self)
	v.w.desk.tell("")
	v.w.desk.takeKeys()
	v.w.desk.refresh(allParts)
}

// arrange lays the picture over the book.
func (v *laidOver) arrange() {
	d := v.w.desk
	v.view, v.density = d.plan.view, d.plan.density
	v.origin = fyne.CurrentApp().Driver().AbsolutePositionForObject(d)
	unit := func(px int) float32 { return float32(float64(px) / v.density) }
	v.picture.Resize(fyne.NewSize(unit(v.view.Dx()), unit(v.view.Dy())))
	v.picture.Move(v.origin.AddXY(unit(v.view.Min.X), unit(v.view.Min.Y)))
	v.picture.Refresh()
}

// units is a distance in the toolkit's units in device pixels.
func (v *laidOver) units(n float64) int { return int(n*v.density + 0.5) }

// pixel is the device pixel of the picture at a position on the window.
func (v *laidOver) pixel(at fyne.Position) image.Point {
	x, y := float64(at.X-v.origin.X)*v.density, float64(at.Y-v.origin.Y)*v.density
	return image.Pt(int(x), int(y)).Sub(v.view.Min)
}

// scale is how many device pixels a point has, so that a spread that is so many
// points wide fits the view: a little larger than on the desk, so that single
// lines can be read, or as large as there is room for.
func (v *laidOver) scale(points float64) float64 {
	free := float64(v.view.Dx() - 2*v.units(overMargin))
	return min(v.w.desk.plan.scale/v.w.desk.zoom*overLarger, free/points)
}

// overLarger is how much larger than on the desk lines are shown.
const overLarger = 1.25

// overMargin is the white at either side of such a view, in the toolkit's units.
const overMargin = 24

// openAt opens the book at a page, with a line at hand where there is one, and
// takes the view away.
func (v *laidOver) openAt(page int, line pagemodel.LineRef) {
	d := v.w.desk
	v.lift()
	d.leaveOrder()
	d.showPage(page)
	if line.Line != 0 {
		d.goTo(line)
	}
}

// showTried shows what an order changes while it is tried out: on the pages, with
// the scrap beside them; where the book is held by its order, that shows it, and
// the scrap stays.
func (d *desk) showTried(s *scrap, page int) {
	if d.order == nil {
		d.showPage(page)
		s.lieOver(pagemodel.SideOf(page).Facing())
	}
}

// fit makes a list on the scrap as deep as its rows need, or as the book's part of
// the window has room for beside what else lies on the scrap.
func (s *scrap) fit(l *listing) {
	p := &s.w.desk.plan
	room := float32(float64(p.foot-p.view.Min.Y) / p.density)
	l.fit(room - (s.MinSize(s.over.Objects).Height - l.MinSize().Height))
	s.lieOver(s.side)
}
