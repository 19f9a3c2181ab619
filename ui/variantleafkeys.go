package ui

import (
	"image"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"
)

// leafSpot is what of the leaf lies under the hand.
type leafSpot struct {
	kind leafSpotKind
	diff int // of a difference
}

type leafSpotKind int

const (
	offTheLeaf leafSpotKind = iota
	onTheLeaf               // but on nothing that can be pressed
	onDiff                  // a difference
	onName                  // the name of B
	onFurther               // the words that say how many follow
	onEarlier               // the words that say how many stand before
	onSpreads               // the words that lead to the spreads
)

// AcceptsTab keeps the tab key.
func (l *versionLeaf) AcceptsTab() bool { return true }

// TypedKey is a key: everything that the hand can do.
func (l *versionLeaf) TypedKey(e *fyne.KeyEvent) {
	switch e.Name {
	case fyne.KeyEscape:
		l.lift()
	case fyne.KeyReturn, fyne.KeyEnter:
		l.take()
	case fyne.KeyTab:
		l.asSpreads()
	case fyne.KeySpace:
		l.turn()
	case fyne.KeyRight:
		l.otherB(1)
	case fyne.KeyLeft:
		l.otherB(-1)
	default:
		l.walkKey(e.Name)
	}
}

// walkKey goes from difference to difference.
func (l *versionLeaf) walkKey(key fyne.KeyName) {
	to, ok := map[fyne.KeyName]int{
		fyne.KeyDown: l.diff + 1, fyne.KeyUp: l.diff - 1, fyne.KeyHome: 0, fyne.KeyEnd: len(l.compared()) - 1,
		fyne.KeyPageDown: l.diff + max(1, len(l.seen())-1), fyne.KeyPageUp: l.diff - max(1, len(l.seen())-1),
	}[key]
	if ok {
		l.goTo(to)
	}
}

// under is what lies under a position on the window.
func (l *versionLeaf) under(at fyne.Position) leafSpot {
	p := image.Pt(int(float64(at.X-l.plan.origin.X)*l.plan.density), int(float64(at.Y-l.plan.origin.Y)*l.plan.density)).Sub(l.plan.at.Min)
	if !p.In(image.Rectangle{Max: l.plan.at.Size()}) {
		return leafSpot{}
	}
	for _, w := range l.pressed() {
		if p.In(w.near(&l.plan)) {
			return leafSpot{kind: w.kind}
		}
	}
	for _, s := range l.seen() {
		if y := float64(p.Y); y >= s.from && y < s.to {
			return leafSpot{onDiff, s.diff}
		}
	}
	return leafSpot{kind: onTheLeaf}
}

// MouseDown goes to the difference that is pressed, or does what the words say.
// Beside the paper it lifts the leaf, and the press is for what lies there.
func (l *versionLeaf) MouseDown(e *desktop.MouseEvent) {
	l.w.win.Canvas().Focus(l)
	switch spot := l.under(e.Position); spot.kind {
	case offTheLeaf:
		l.lift()
		on := *e
		on.Position = e.Position.Subtract(l.plan.origin)
		l.w.desk.MouseDown(&on)
	case onDiff:
		if spot.diff == l.diff {
			l.turn()
			return
		}
		l.goTo(spot.diff)
	case onName:
		l.otherB(1)
	case onFurther:
		l.goTo(l.top + len(l.seen()))
	case onEarlier:
		l.goTo(l.top - 1)
	case onSpreads:
		l.asSpreads()
	}
}

// MouseUp does nothing: the leaf acts on the press.
func (l *versionLeaf) MouseUp(*desktop.MouseEvent) {}

// MouseIn begins to follow the hand.
func (l *versionLeaf) MouseIn(e *desktop.MouseEvent) { l.MouseMoved(e) }

// MouseMoved shows what can be pressed.
func (l *versionLeaf) MouseMoved(e *desktop.MouseEvent) { l.hover(l.under(e.Position)) }

// MouseOut says that the hand has left.
func (l *versionLeaf) MouseOut() { l.hover(leafSpot{}) }

func (l *versionLeaf) hover(on leafSpot) {
	if on != l.over {
		l.over = on
		l.picture.Refresh()
	}
}

// Cursor says what can be pressed.
func (l *versionLeaf) Cursor() desktop.Cursor {
	if l.over.kind > onTheLeaf {
		return desktop.PointerCursor
	}
	return desktop.DefaultCursor
}

// Scrolled goes from difference to difference.
func (l *versionLeaf) Scrolled(e *fyne.ScrollEvent) { l.goTo(l.diff - steps(e.Scrolled.DY)) }
