package ui

import (
	"image"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/widget"
)

// aloudSpotKind is what the hand is over.
type aloudSpotKind int

const (
	onAloudSheet aloudSpotKind = iota
	onAloudWords
	onAloudItem
	onAloudLead
	onAloudPlot
	onAloudWay // the word for another way to hold the book
)

// aloudSpot is a kind, and which of its kind.
type aloudSpot struct {
	kind aloudSpotKind
	i    int
}

// under finds what lies under a device pixel of the picture.
func (a *aloudView) under(at image.Point) aloudSpot {
	p := &a.place
	if other := a.w.desk.wayUnder(at.Add(p.at.Min)); other != noWay && other != aloudWay {
		return aloudSpot{onAloudWay, int(other)}
	}
	if i := p.wordsUnder(at); i >= 0 {
		return aloudSpot{onAloudWords, i}
	}
	switch a.face {
	case timeFace:
		return a.times.under(a, at)
	case linesFace:
		return a.lines.under(at)
	}
	for _, r := range p.rows {
		if at.In(r.at) && at.In(p.list) {
			return aloudSpot{onAloudItem, r.item}
		}
	}
	if i := nearestOf(p.leads, at, p.units(aloudReach)); i >= 0 {
		return aloudSpot{onAloudLead, i}
	}
	return aloudSpot{}
}

// aloudReach is from how far a lead or a bar is taken that is too thin to press, in
// the toolkit's units.
const aloudReach = 12

// nearestOf is which rectangle lies nearest to a place, -1 where none is within reach.
func nearestOf(all []image.Rectangle, at image.Point, reach int) int {
	best, far := -1, reach+1
	for i, r := range all {
		off := max(r.Min.X-at.X, at.X-r.Max.X+1, r.Min.Y-at.Y, at.Y-r.Max.Y+1, 0)
		if !r.Empty() && off < far {
			best, far = i, off
		}
	}
	return best
}

// MouseDown presses words, or takes an item by the hand; the other button lays out
// what can be done with one.
func (a *aloudView) MouseDown(e *desktop.MouseEvent) {
	a.w.win.Canvas().Focus(a)
	on := a.under(a.place.pixel(e.Position))
	switch on.kind {
	case onAloudWords:
		if e.Button == desktop.MouseButtonPrimary {
			a.place.words[on.i].act()
		}
	case onAloudWay:
		a.leaveFor(way(on.i))
	case onAloudPlot:
		a.pressPlot(on.i)
	case onAloudItem, onAloudLead:
		a.at = on.i
		if a.walk(on.i); e.Button == desktop.MouseButtonSecondary {
			a.layItemMenu(e.AbsolutePosition)
			return
		}
		a.pressed = on.kind == onAloudItem
	}
}

// pressPlot puts what is pressed on a plot at hand.
func (a *aloudView) pressPlot(i int) {
	if a.face == timeFace {
		a.walk(i)
		return
	}
	a.lines.walk(a, i)
}

// MouseIn begins to follow the hand.
func (a *aloudView) MouseIn(e *desktop.MouseEvent) { a.MouseMoved(e) }

// MouseMoved notes what is under the hand.
func (a *aloudView) MouseMoved(e *desktop.MouseEvent) { a.hover(a.under(a.place.pixel(e.Position))) }

// MouseOut says that the hand has left.
func (a *aloudView) MouseOut() { a.hover(aloudSpot{}) }

func (a *aloudView) hover(on aloudSpot) {
	if on != a.over && !a.moving {
		a.over = on
		a.head.Refresh()
		a.picture.Refresh()
	}
}

// Cursor says what can be pressed.
func (a *aloudView) Cursor() desktop.Cursor {
	if a.over.kind != onAloudSheet {
		return desktop.PointerCursor
	}
	return desktop.DefaultCursor
}

// Scrolled moves the list, or the plot.
func (a *aloudView) Scrolled(e *fyne.ScrollEvent) {
	if a.face == linesFace {
		a.lines.scroll(a, -steps(e.Scrolled.DY))
		return
	}
	if by := -steps(e.Scrolled.DY); a.face == orderFace && (by < 0 || !a.seen(len(a.reading.Items)-1)) {
		a.scroll(by)
	}
}

// layItemMenu lays out what can be done with the item at hand.
func (a *aloudView) layItemMenu(at fyne.Position) {
	item, ok := a.item()
	if !ok {
		return
	}
	drop := "Drop it if short"
	if item.Drop {
		drop = "Read it even if short"
	}
	items := []aloudPress{{words: "Read from here", act: func() { a.begin(a.at) }}, {words: "What is said before…", act: a.askSaid}, {words: drop, act: a.flipDrop}}
	if item.Poem != 0 {
		items = append(items, aloudPress{words: "Read lines of it only…", act: a.askExtract})
	}
	if !isTalk(&item) {
		items = append(items, aloudPress{words: "Say a word otherwise…", act: a.askSaidAs})
	}
	items = append(items, aloudPress{words: "Take it out", act: a.takeOut})
	pop := widget.NewPopUpMenu(fyne.NewMenu("", menuItems(items)...), a.w.win.Canvas())
	pop.ShowAtPosition(at)
	a.w.win.Canvas().Focus(pop)
}
