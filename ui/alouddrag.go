package ui

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"

	"headland/pagemodel"
)

// Dragged has the item that the hand holds lie where the hand is, and the others
// close up; the times follow before it is let go of.
func (a *aloudView) Dragged(e *fyne.DragEvent) {
	if !a.pressed {
		return
	}
	if !a.moving {
		a.moving = true
		a.tell()
	}
	at := a.place.pixel(e.Position)
	a.edge(at.Y)
	for _, r := range a.place.rows {
		if r.item != a.at && at.Y >= r.at.Min.Y && at.Y < r.at.Max.Y && a.past(at.Y, r) {
			a.carry(r.item)
			return
		}
	}
}

// past says that the hand is so far over another item that the one it holds, laid
// there, would lie under it.
func (a *aloudView) past(y int, r itemPlace) bool {
	held := 0
	for _, own := range a.place.rows {
		if own.item == a.at {
			held = own.at.Dy()
		}
	}
	if r.item < a.at {
		return y < r.at.Min.Y+held
	}
	return y >= r.at.Max.Y-held
}

// carry lays the held item in another place, not yet in the file.
func (a *aloudView) carry(to int) {
	r := a.reading
	r.Items = append(r.Items[:0:0], r.Items...)
	shiftItem(&r, a.at, to)
	a.at = to
	a.show(r)
}

// edge scrolls the list where the hand is at its end.
func (a *aloudView) edge(y int) {
	near := a.place.units(20)
	switch {
	case y < a.place.list.Min.Y+near && a.top > 0:
		a.scroll(-1)
	case y > a.place.list.Max.Y-near && !a.seen(len(a.reading.Items)-1):
		a.scroll(1)
	}
}

// DragEnd lets the item go.
func (a *aloudView) DragEnd() { a.letGo() }

// MouseUp lets the item go that was only pressed, or carried.
func (a *aloudView) MouseUp(*desktop.MouseEvent) { a.letGo() }

// letGo makes the order in which the items lie now the running order's.
func (a *aloudView) letGo() {
	a.pressed = false
	if !a.moving {
		return
	}
	a.moving = false
	held := a.at
	if a.make(func(*pagemodel.Reading) {}) { // as it lies now
		a.walk(held)
	}
}

// putBack lays the held item where it was.
func (a *aloudView) putBack() {
	a.moving, a.pressed = false, false
	held, _ := a.item()
	a.read()
	for i := range a.reading.Items {
		if a.reading.Items[i].ID == held.ID {
			a.at = i
		}
	}
	a.arrange()
	a.tell()
}
