package ui

import (
	"image"
	"slices"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"
)

// orderSpotKind is what the hand is over.
type orderSpotKind int

const (
	overDesk   orderSpotKind = iota
	overPiece                // a poem or a section's head: its title, its bar or one of its pages
	overWay                  // the word for another way to hold the book
	overBeyond               // while something is held: the strip that is out of the book
)

// orderSpot is what the hand is over, and which piece or way.
type orderSpot struct {
	kind orderSpotKind
	id   int64
}

// orderHand is the hand on the order. As on the desk its motions are followed
// once a frame, when the rows are drawn.
type orderHand struct {
	state     handState
	on        orderSpot
	from      image.Point // where the button went down
	at        image.Point // where the hand is
	pressed   time.Time   // when it went down last
	move      *orderMove  // what is held
	stirred   bool        // what is held is to stand elsewhere, and that is not followed yet
	following bool        // it is being followed, within a frame
}

// twice is how soon a second press opens what is pressed.
const twice = 400 * time.Millisecond

// under is what lies under a device pixel of the desk.
func (v *orderView) under(at image.Point) orderSpot {
	p, other := &v.plan, v.d.wayUnder(at)
	switch {
	case other != noWay && other != orderWay:
		return orderSpot{overWay, int64(other)}
	case at.In(v.strip()):
		return orderSpot{kind: overBeyond}
	case !at.In(p.view):
		return orderSpot{}
	}
	y := at.Y - p.view.Min.Y + v.top
	if y < 0 || y >= p.tall() {
		return orderSpot{}
	}
	row := p.rowAt(y)
	if b := p.barAt(&p.rows[row], image.Pt(at.X, y-row*p.depth)); b != nil {
		return orderSpot{overPiece, b.piece.id}
	}
	return orderSpot{}
}

// MouseDown puts at hand what is pressed.
func (v *orderView) MouseDown(e *desktop.MouseEvent) {
	v.d.keys.come()
	v.d.takeKeys()
	if e.Button != desktop.MouseButtonPrimary || v.hand.state == dragging || v.hand.state == cancelled {
		return
	}
	v.putBack()
	v.said = ""
	at := v.plan.pixel(e.Position)
	was, on := v.hand, v.under(at)
	v.hand = orderHand{state: pressed, on: on, from: at, at: at, pressed: time.Now()}
	switch {
	case on.kind == overWay:
		v.hand, v.over = orderHand{}, orderSpot{}
		v.w.hold(way(on.id))
		return
	case on.kind != overPiece:
	case on == was.on && v.hand.pressed.Sub(was.pressed) < twice:
		v.open()
		return
	case e.Modifier&fyne.KeyModifierShift != 0:
		v.extend(on.id)
	case !slices.Contains(v.chosen, on.id) || v.chosen[0] < 0:
		v.choose(on.id) // a poem of the section that is at hand is taken by itself
	}
	v.refreshRows()
}

// MouseUp ends a press that moved nothing: of a run, the one pressed stays at
// hand.
func (v *orderView) MouseUp(e *desktop.MouseEvent) {
	if v.hand.state == pressed && v.hand.on.kind == overPiece && e.Modifier&fyne.KeyModifierShift == 0 {
		v.choose(v.hand.on.id)
	}
	if v.hand.state == pressed || v.hand.state == cancelled {
		v.hand = orderHand{on: v.hand.on, pressed: v.hand.pressed}
		v.refreshRows()
	}
}

// Dragged moves what is held.
func (v *orderView) Dragged(e *fyne.DragEvent) { v.drag(v.plan.pixel(e.Position)) }

func (v *orderView) drag(at image.Point) {
	switch {
	case v.hand.state == pressed && v.hand.on.kind == overPiece && v.hand.from != at:
		if far := at.Sub(v.hand.from); abs(far.X)+abs(far.Y) < v.plan.units(dragFrom) {
			return
		}
		v.hold(dragging)
	case v.hand.state != dragging:
		return
	}
	v.hand.at = at
	v.placeSlip()
	v.reachTo()
	v.creep()
}

// hold takes hold of what is at hand.
func (v *orderView) hold(how handState) {
	plan := v.plan
	v.hand.move, v.hand.state = newOrderMove(v.book, &plan, slices.Clone(v.chosen)), how
	v.said, v.over = "", orderSpot{}
	v.hand.move.toll = v.toll
	v.hand.move.grasp(v.inRows(v.hand.from))
	v.placeFoot()
	v.slip.Refresh()
	v.refreshRows()
}

// inRows is a device pixel of the desk as a point of the rows, y counted from the
// first.
func (v *orderView) inRows(at image.Point) image.Point {
	return image.Pt(at.X, at.Y-v.plan.view.Min.Y+v.top)
}

// reachTo has what is held stand in the slot that the hand is nearest to.
func (v *orderView) reachTo() {
	m := v.hand.move
	slot := m.reach(v.inRows(v.hand.at))
	if out := m.outmost(); out >= 0 && v.hand.at.In(v.strip()) {
		slot = out
	}
	if slot != m.at {
		m.at, v.hand.stirred = slot, true
		v.refreshRows()
	}
}

// follow shows what the hand has done since the last frame.
func (v *orderView) follow() {
	if !v.hand.stirred {
		return
	}
	v.hand.stirred, v.hand.following = false, true
	v.tryOut()
	v.hand.following = false
}

// tryOut shows the book as letting go would leave it.
func (v *orderView) tryOut() {
	edit, ok := v.hand.move.edit()
	if !ok {
		v.d.session.Drop()
		return
	}
	if err := v.d.session.Preview(edit); err != nil {
		v.d.session.Drop()
		v.hand.move.at = v.hand.move.home
		v.said = errorWords(err)
	}
}

// DragEnd lets go.
func (v *orderView) DragEnd() {
	switch v.hand.state {
	case dragging:
		v.letGo()
	case cancelled:
		v.hand = orderHand{}
	}
	v.d.takeKeys()
}

// letGo does what is tried out, in one step of the history.
func (v *orderView) letGo() {
	v.follow()
	v.hand = orderHand{}
	if err := v.d.session.Release(); err != nil {
		v.tell(errorWords(err))
	}
	v.arrange()
	v.again()
}

// putBack puts what is held back where it stood. A button that is down stays out
// of play until it is up.
func (v *orderView) putBack() {
	if v.hand.move == nil {
		return
	}
	next := idle
	if v.hand.state == dragging {
		next = cancelled
	}
	v.hand = orderHand{state: next}
	v.d.session.Drop()
	v.arrange()
	v.again()
}

// MouseIn begins to follow the hand.
func (v *orderView) MouseIn(e *desktop.MouseEvent) { v.MouseMoved(e) }

// MouseMoved shows what the hand would take.
func (v *orderView) MouseMoved(e *desktop.MouseEvent) { v.hover(v.under(v.plan.pixel(e.Position))) }

// MouseOut says that the hand has left.
func (v *orderView) MouseOut() { v.hover(orderSpot{}) }

func (v *orderView) hover(on orderSpot) {
	if on == v.over || v.hand.move != nil {
		return
	}
	v.over = on
	v.head.Refresh()
	v.refreshRows()
}

// Cursor says what can be pressed.
func (v *orderView) Cursor() desktop.Cursor {
	if v.over.kind != overDesk || v.hand.state == dragging {
		return desktop.PointerCursor
	}
	return desktop.DefaultCursor
}

// Scrolled moves the rows.
func (v *orderView) Scrolled(e *fyne.ScrollEvent) {
	v.scroll(v.top - int(float64(e.Scrolled.DY)*v.plan.density*2))
	if v.hand.state == dragging {
		v.reachTo()
	}
}

// creepRoom is how near to the first and last rows in sight a hand moves them.
const creepRoom = 44

// creep moves the rows on while the hand holds something at their edge.
func (v *orderView) creep() {
	if v.creeping || v.hand.state != dragging || v.left {
		return
	}
	room, y := v.plan.units(creepRoom), v.hand.at.Y
	last := v.plan.view.Max.Y - v.strip().Dy()
	by := max(0, y-(last-room)) - max(0, v.plan.view.Min.Y+room-y)
	if v.hand.at.In(v.strip()) || y >= v.plan.view.Max.Y || by < 0 && v.top == 0 || by > 0 && v.top == v.plan.farthest() || by == 0 {
		return
	}
	v.creeping = true
	v.w.worker.after(smallEvery, func() {
		v.creeping = false
		if v.hand.state != dragging || v.left {
			return
		}
		v.scroll(v.top + by/3)
		v.reachTo()
		v.creep()
	})
}
