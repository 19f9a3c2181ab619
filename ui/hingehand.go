package ui

import (
	"image"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"

	"headland/pagemodel"
)

// TypedKey is a key: everything that the hand can do.
func (v *hingeView) TypedKey(e *fyne.KeyEvent) {
	switch e.Name {
	case fyne.KeyDown:
		v.choose(v.at+1, v.edge)
	case fyne.KeyUp:
		v.choose(v.at-1, v.edge)
	case fyne.KeyPageDown:
		v.choose(v.at+v.page(), v.edge)
	case fyne.KeyPageUp:
		v.choose(v.at-v.page(), v.edge)
	case fyne.KeyHome:
		v.choose(0, v.edge)
	case fyne.KeyEnd:
		v.choose(len(v.all)-1, v.edge)
	case fyne.KeyLeft:
		v.choose(v.at, v.other(-1))
	case fyne.KeyRight:
		v.choose(v.at, v.other(1))
	case fyne.KeyReturn, fyne.KeyEnter:
		v.open()
	case fyne.KeyEscape:
		v.lift()
	}
}

// other is the edge that a key goes to: of edges over a gutter the one on that
// side, else the one after or before in the book.
func (v *hingeView) other(by int) int {
	h := &v.all[v.at]
	onLeft := 0
	if pagemodel.SideOf(h.edges[0].page) > pagemodel.SideOf(h.edges[1].page) && v.level(h) {
		onLeft = 1
	}
	if by < 0 {
		return onLeft
	}
	return 1 - onLeft
}

// TypedShortcut lifts the hinges by the key that laid them.
func (v *hingeView) TypedShortcut(k fyne.Shortcut) {
	if k.ShortcutName() == hingesKey.ShortcutName() {
		v.lift()
	}
}

// under is the edge that lies under a device pixel of the picture.
func (v *hingeView) under(p image.Point) hingeSpot {
	for i, s := range v.strips() {
		for e := range s.edges {
			if p.In(s.edges[e]) {
				return hingeSpot{i, e}
			}
		}
	}
	return hingeSpot{-1, 0}
}

// MouseIn begins to follow the hand.
func (v *hingeView) MouseIn(e *desktop.MouseEvent) { v.MouseMoved(e) }

// MouseMoved says what is under the hand.
func (v *hingeView) MouseMoved(e *desktop.MouseEvent) { v.hover(v.under(v.pixel(e.Position))) }

// MouseOut says that the hand has left.
func (v *hingeView) MouseOut() { v.hover(hingeSpot{-1, 0}) }

func (v *hingeView) hover(now hingeSpot) {
	if now == v.over || v.lifted {
		return
	}
	v.over = now
	v.picture.Refresh()
	v.tell()
}

// MouseDown opens the book at the edge that is pressed.
func (v *hingeView) MouseDown(e *desktop.MouseEvent) {
	v.w.win.Canvas().Focus(v)
	if on := v.under(v.pixel(e.Position)); on.hinge >= 0 && e.Button == desktop.MouseButtonPrimary {
		v.choose(on.hinge, on.edge)
		v.open()
	}
}

// MouseUp does nothing: it acts on the press.
func (v *hingeView) MouseUp(*desktop.MouseEvent) {}

// Cursor says what can be pressed.
func (v *hingeView) Cursor() desktop.Cursor {
	if v.over.hinge >= 0 {
		return desktop.PointerCursor
	}
	return desktop.DefaultCursor
}

// Scrolled goes on or back through the hinges.
func (v *hingeView) Scrolled(e *fyne.ScrollEvent) {
	v.first = max(0, min(v.first-steps(e.Scrolled.DY), len(v.all)-1))
	v.picture.Refresh()
}
