package ui

import (
	"slices"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/widget"

	"headland/pagemodel"
	"headland/typeset/aloud"
)

// aloudView lies over the desk: a running order, what it takes against its slot,
// and where the time goes. As a widget it is as large as the window, so that
// nothing else can be done while it lies there.
type aloudView struct {
	widget.BaseWidget
	hasKeys
	w       *Window
	reading pagemodel.Reading // at hand, as it is being made; its ID is 0 where the file has none
	plan    aloud.Plan        // of it
	face    aloudFace
	at      int // the item at hand
	top     int // the first item in sight
	moving  bool
	pressed bool      // the button is down on an item
	over    aloudSpot // under the hand
	lines   linesPlot
	times   timePlot
	lifted  bool

	place         aloudPlan
	head, picture *canvas.Raster
	headInk, ink  buffers
}

// aloudFace is what the view shows.
type aloudFace int

const (
	orderFace aloudFace = iota // the running order as a list
	timeFace                   // where the time goes, planned and taken
	linesFace                  // the lengths of the lines, along the book

	aloudFaces
)

var aloudFaceWords = [aloudFaces]string{"The order", "The time", "The lines"}

// askAloud lays the running orders over the desk, the one looked at last at hand.
func (w *Window) askAloud() { w.layAloud() }

// layAloud lays the view, or gives the one that lies there.
func (w *Window) layAloud() *aloudView {
	w.desk.settleHand()
	a := &aloudView{w: w}
	a.reading.ID = w.reading
	a.head, a.picture = pixels(a.drawHead), pixels(a.draw)
	a.ExtendBaseWidget(a)
	c := w.win.Canvas()
	c.Overlays().Add(a)
	a.Resize(c.Size())
	c.Focus(a)
	a.read()
	a.tell()
	return a
}

// lift takes the view away: the book lies open where it was.
func (a *aloudView) lift() {
	if a.lifted {
		return
	}
	a.lifted = true
	a.w.desk.said = ""
	a.w.win.Canvas().Overlays().Remove(a)
	a.w.desk.takeKeys()
	a.w.desk.refresh(allParts)
}

// read takes the running order at hand from the file again; where it is no longer
// there, the one made last.
func (a *aloudView) read() {
	c := a.w.session.Collection()
	r, ok := c.Reading(a.reading.ID)
	if all := c.Readings(); !ok && len(all) > 0 {
		r = all[len(all)-1]
	}
	a.w.reading = r.ID
	a.show(r)
}

// show has a running order reckoned and drawn, in the file or not.
func (a *aloudView) show(r pagemodel.Reading) {
	if a.reading.ID != r.ID {
		a.at, a.top = 0, 0
	}
	a.reading = r
	a.plan = a.w.session.Plan(r)
	a.at = max(0, min(a.at, len(r.Items)-1))
	a.times.read(a)
	a.arrange()
}

// item is the item at hand.
func (a *aloudView) item() (pagemodel.Item, bool) {
	if a.at >= len(a.reading.Items) {
		return pagemodel.Item{}, false
	}
	return a.reading.Items[a.at], true
}

// walk puts another item at hand and brings it into sight.
func (a *aloudView) walk(to int) {
	a.at = max(0, min(len(a.reading.Items)-1, to))
	a.scroll(0)
	a.tell()
}

// scroll has the list begin so many items on; the item at hand stays in sight
// where it is not scrolled by hand.
func (a *aloudView) scroll(by int) {
	a.top = max(0, min(a.top+by, len(a.reading.Items)-1))
	if by == 0 {
		a.top = min(a.top, a.at)
		for a.arrange(); a.top < a.at && !a.seen(a.at); a.arrange() {
			a.top++
		}
	}
	a.arrange()
}

// seen says that an item is in sight, the whole of it.
func (a *aloudView) seen(item int) bool {
	return slices.ContainsFunc(a.place.rows, func(r itemPlace) bool {
		return r.item == item && r.at.Max.Y <= a.place.list.Max.Y
	})
}

// turnTo shows another face.
func (a *aloudView) turnTo(f aloudFace) {
	a.face, a.over = f, aloudSpot{}
	a.times.read(a)
	a.lines.read(a)
	a.arrange()
	a.tell()
}

// another puts the running order so many places on at hand.
func (a *aloudView) another(by int) {
	all := a.w.session.Collection().Readings()
	i := slices.IndexFunc(all, func(r pagemodel.Reading) bool { return r.ID == a.reading.ID }) + by
	if i >= 0 && i < len(all) {
		a.take(all[i])
	}
}

// take puts a running order at hand.
func (a *aloudView) take(r pagemodel.Reading) {
	a.w.reading = r.ID
	a.show(r)
	a.tell()
}

// CreateRenderer hands the toolkit the pictures.
func (a *aloudView) CreateRenderer() fyne.WidgetRenderer {
	return &layOver{a.arrange, []fyne.CanvasObject{a.head, a.picture}}
}
