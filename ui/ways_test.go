package ui

import (
	"image"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"
)

// TestTheWaysToHoldTheBookArePressed at the head: from the order to the running
// orders, back, and to the open pages; each word deep and wide enough for a hand.
func TestTheWaysToHoldTheBookArePressed(t *testing.T) {
	ot := setOrder(t)
	for i, at := range ot.d.wayPlaces() {
		if at.Dx() < 24 || at.Dy() < 24 || i > 0 && at.Overlaps(ot.d.wayPlaces()[i-1]) {
			t.Errorf("%q is pressed on %v", wayWords[i], at)
		}
	}
	in := func(to way) image.Point { return middle(ot.d.wayPlaces()[to]) }
	ot.press(in(orderWay), 0)
	if ot.d.order == nil || ot.overlay() != nil {
		t.Fatal("the way that is in use leads elsewhere")
	}
	ot.press(in(aloudWay), 0)
	a := ot.aloudOn()
	press := func(to way) {
		a.pressAt(in(to).Sub(a.place.at.Min), desktop.MouseButtonPrimary)
	}
	if press(aloudWay); ot.overlay() != fyne.CanvasObject(a) {
		t.Fatal("the way that is in use lifts the running orders")
	}
	if press(orderWay); ot.overlay() != nil || ot.d.order == nil {
		t.Fatal("the running orders do not lead to the order")
	}
	ot.v = ot.d.order
	ot.press(in(aloudWay), 0)
	a = ot.aloudOn()
	if press(spreadWay); ot.overlay() != nil || ot.d.order != nil {
		t.Error("the running orders do not lead to the open pages")
	}
}
