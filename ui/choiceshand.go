package ui

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"
)

// choiceSpot is what can be under the hand.
type choiceSpot struct {
	kind   choiceSpotKind
	choice int // -1 where it is none
}

type choiceSpotKind int

const (
	offPaper   choiceSpotKind = iota // the paper
	onPaper                          // or on it, but on nothing
	onChoice                         // a choice
	onMore                           // the words that say how many follow
	onOrder                          // the words that say the order
	onPrevious                       // the words that say how many stand before
)

// offChoices is beside the paper.
var offChoices = choiceSpot{offPaper, -1}

// MouseDown takes the choice under the hand, or lays it on the flap with the
// other button. Beside the paper it lifts the leaf, and the press is for what
// lies there.
func (l *choiceLeaf) MouseDown(e *desktop.MouseEvent) {
	l.byMouse = true
	l.w.win.Canvas().Focus(l)
	spot := l.under(e.Position)
	switch {
	case spot.kind == offPaper:
		l.lift()
		l.pressDesk(e)
	case spot.kind == onChoice && e.Button == desktop.MouseButtonSecondary:
		l.point(spot.choice)
		l.layOnFlap()
	case e.Button != desktop.MouseButtonPrimary:
	case spot.kind == onChoice:
		l.take(spot.choice)
	case spot.kind == onMore:
		l.scroll(max(1, len(l.seen())-1))
	case spot.kind == onPrevious:
		l.scroll(-max(1, len(l.seen())-1))
	case spot.kind == onOrder:
		l.turnOrder()
	}
}

// pressDesk hands a press on to the desk.
func (l *choiceLeaf) pressDesk(e *desktop.MouseEvent) {
	on := *e
	on.Position = e.Position.Subtract(l.plan.origin)
	l.w.desk.MouseDown(&on)
}

// MouseUp does nothing: the leaf acts on the press.
func (l *choiceLeaf) MouseUp(*desktop.MouseEvent) {}

// MouseIn begins to follow the hand.
func (l *choiceLeaf) MouseIn(e *desktop.MouseEvent) { l.MouseMoved(e) }

// MouseMoved points at the choice under the hand.
func (l *choiceLeaf) MouseMoved(e *desktop.MouseEvent) {
	l.hand = e.Position
	l.hover(l.under(e.Position))
}

// MouseOut says that the hand has left.
func (l *choiceLeaf) MouseOut() { l.hover(offChoices) }

// hover points at what the hand has come to, or at nothing where it has come
// off the choices.
func (l *choiceLeaf) hover(on choiceSpot) {
	if on == l.over {
		return
	}
	l.over, l.byMouse = on, true
	if on.kind != onMore && on.kind != onPrevious && on.kind != onOrder {
		l.point(on.choice)
	}
	l.picture.Refresh()
}

// Cursor says what can be pressed.
func (l *choiceLeaf) Cursor() desktop.Cursor {
	if l.over.kind > onPaper {
		return desktop.PointerCursor
	}
	return desktop.DefaultCursor
}

// Scrolled moves the choices along under the hand.
func (l *choiceLeaf) Scrolled(e *fyne.ScrollEvent) { l.scroll(-steps(e.Scrolled.DY)) }

// scroll moves the choices by so many.
func (l *choiceLeaf) scroll(by int) {
	l.top = max(0, min(l.top+by, l.lowest()))
	l.picture.Refresh()
	if l.byMouse {
		l.hover(l.under(l.hand))
	}
}
