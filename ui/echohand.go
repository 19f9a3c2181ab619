package ui

import (
	"image"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"
)

// TypedKey is a key: everything that the hand can do.
func (v *echoView) TypedKey(e *fyne.KeyEvent) {
	switch e.Name {
	case fyne.KeyDown:
		v.choose(v.at + 1)
	case fyne.KeyUp:
		v.choose(v.at - 1)
	case fyne.KeyPageDown:
		v.choose(v.at + v.rowsSeen())
	case fyne.KeyPageUp:
		v.choose(v.at - v.rowsSeen())
	case fyne.KeyRight:
		v.step(1)
	case fyne.KeyLeft:
		v.step(-1)
	case fyne.KeyHome:
		v.goToPlace(v.at, 0)
	case fyne.KeyEnd:
		v.goToPlace(v.at, len(v.all[v.at].Found)-1)
	case fyne.KeyReturn, fyne.KeyEnter:
		v.open()
	case fyne.KeyInsert:
		v.mark()
	case fyne.KeyDelete:
		v.unmark()
	case fyne.KeyEscape:
		v.lift()
	}
}

// TypedShortcut lifts the echoes by the key that laid them.
func (v *echoView) TypedShortcut(k fyne.Shortcut) {
	if k.ShortcutName() == echoesKey.ShortcutName() {
		v.lift()
	}
}

// under is what lies under a device pixel of the picture.
func (v *echoView) under(p image.Point) echoSpot {
	switch {
	case p.In(v.markAt()):
		return echoSpot{overEchoMark, v.at, 0}
	case p.In(v.lineAt()):
		return echoSpot{overEchoLine, v.at, v.place(v.at)}
	}
	i, ok := v.rowAt(p.Y)
	if !ok {
		return echoSpot{}
	}
	near, best := v.units(echoReach), -1
	for n := range v.all[i].Found {
		if far := abs(v.x(i, n) - p.X); far <= near {
			near, best = far, n
		}
	}
	if best >= 0 {
		return echoSpot{overEchoTick, i, best}
	}
	return echoSpot{overEchoRow, i, 0}
}

// echoReach is how far from a tick it can be pressed, in the toolkit's units.
const echoReach = 12

// MouseIn begins to follow the hand.
func (v *echoView) MouseIn(e *desktop.MouseEvent) { v.MouseMoved(e) }

// MouseMoved says what is under the hand.
func (v *echoView) MouseMoved(e *desktop.MouseEvent) { v.hover(v.under(v.pixel(e.Position))) }

// MouseOut says that the hand has left.
func (v *echoView) MouseOut() { v.hover(echoSpot{}) }

func (v *echoView) hover(now echoSpot) {
	if now == v.over || v.lifted {
		return
	}
	v.over = now
	v.picture.Refresh()
	v.tell()
}

// MouseDown puts an echo or a place of it at hand, opens the book at the line, or
// marks and unmarks.
func (v *echoView) MouseDown(e *desktop.MouseEvent) {
	v.w.win.Canvas().Focus(v)
	if e.Button != desktop.MouseButtonPrimary {
		return
	}
	switch on := v.under(v.pixel(e.Position)); on.kind {
	case overEchoRow:
		v.choose(on.echo)
	case overEchoTick:
		v.goToPlace(on.echo, on.place)
	case overEchoLine:
		v.open()
	case overEchoMark:
		if v.all[v.at].Marked {
			v.unmark()
		} else {
			v.mark()
		}
	}
}

// MouseUp does nothing: it acts on the press.
func (v *echoView) MouseUp(*desktop.MouseEvent) {}

// Cursor says what can be pressed.
func (v *echoView) Cursor() desktop.Cursor {
	if v.over.kind != overNoEcho {
		return desktop.PointerCursor
	}
	return desktop.DefaultCursor
}

// Scrolled goes on or back through the echoes.
func (v *echoView) Scrolled(e *fyne.ScrollEvent) {
	v.first = max(0, min(v.first-steps(e.Scrolled.DY), len(v.all)-v.rowsSeen()))
	v.picture.Refresh()
}
