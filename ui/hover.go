package ui

import (
	"image"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"
)

// MouseIn begins to follow the hand.
func (d *desk) MouseIn(e *desktop.MouseEvent) { d.hover(d.pixelAt(e.Position)) }

// MouseMoved follows the hand.
func (d *desk) MouseMoved(e *desktop.MouseEvent) { d.hover(d.pixelAt(e.Position)) }

// MouseOut says that the hand has left.
func (d *desk) MouseOut() { d.hoverOver(target{}) }

func (d *desk) hover(at image.Point) {
	if d.session == nil || d.hand.state != idle && d.hand.state != keyed {
		return
	}
	d.hoverOver(d.under(at))
}

// hoverOver draws again what looks otherwise now that the hand is elsewhere.
func (d *desk) hoverOver(now target) {
	was := d.over
	if now == was {
		return
	}
	d.over = now
	parts := footPart
	if now.ref != was.ref {
		parts |= pageParts
	}
	if onEdge(now) || onEdge(was) {
		parts |= groundPart | peekPart
		d.placePeek()
	}
	if now.kind == overSent || was.kind == overSent {
		d.round.picture.Refresh()
	}
	d.refresh(parts)
}

func onEdge(t target) bool { return t.kind == overEdge || t.kind == overTick }

// Cursor is the pointer's shape: it says what the hand would take.
func (d *desk) Cursor() desktop.Cursor {
	if _, ok := d.hand.grip.(*hold); ok {
		return desktop.HResizeCursor
	}
	switch d.over.kind {
	case overRule:
		return desktop.HResizeCursor
	case overEdge, overTick, overUnsettled, overSlip, overFaults, overFault, overStroke, overSent, overSettled:
		return desktop.PointerCursor
	}
	return desktop.DefaultCursor
}

// Scrolled moves a book that is larger than the window, or with the shortcut
// key held lays it nearer or farther.
func (d *desk) Scrolled(e *fyne.ScrollEvent) {
	if d.session == nil || d.hand.state != idle {
		return
	}
	switch {
	case d.keys.held().ctrl:
		d.zoomBy(steps(e.Scrolled.DY))
	case d.plan.farthest != (image.Point{}):
		d.moved = d.moved.Add(image.Pt(round(e.Scrolled.DX, d.plan.density), round(e.Scrolled.DY, d.plan.density)))
		d.arrange()
		d.refresh(allParts)
	}
}

func steps(dy float32) int {
	switch {
	case dy > 0:
		return 1
	case dy < 0:
		return -1
	}
	return 0
}
