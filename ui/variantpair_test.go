package ui

import (
	"image"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"
)

// TestVersionsByMouse: over a row its version is on the page, a press puts it
// into the book, the other button asks what is to be done.
func TestVersionsByMouse(t *testing.T) {
	tb := versioned(t)
	tb.chord(key(ctrlShift, fyne.KeyV))
	list := tb.versionsListed()
	list.Resize(fyne.NewSize(400, 300))
	over := func(row int, button desktop.MouseButton) *desktop.MouseEvent {
		y := float32(4)
		for i := range row {
			y += list.deep(&list.rows[i])
		}
		return &desktop.MouseEvent{PointEvent: fyne.PointEvent{Position: fyne.NewPos(20, y)}, Button: button}
	}
	list.MouseMoved(over(0, 0))
	if tb.shownText() != nightNow {
		t.Errorf("over the book’s own the page shows %q", tb.shownText())
	}
	list.MouseMoved(over(1, 0))
	if tb.shownText() != night {
		t.Errorf("over the variant the page shows %q", tb.shownText())
	}
	list.MouseDown(over(1, desktop.MouseButtonSecondary))
	list.MouseUp(over(1, desktop.MouseButtonSecondary))
	if n := len(tb.w.win.Canvas().Overlays().List()); n != 2 {
		t.Errorf("%d things lie on the desk, want the list and what can be done", n)
	}
	tb.wants(nightNow)
	tb.w.win.Canvas().Overlays().Remove(tb.overlay())
	list.MouseDown(over(1, desktop.MouseButtonPrimary))
	list.MouseUp(over(1, desktop.MouseButtonPrimary))
	tb.wants(night)
}

// TestTwoVersionsAsSpreads: another version on a side, from difference to
// difference, and one of them into the book, by keys and by mouse.
func TestTwoVersionsAsSpreads(t *testing.T) {
	tb := versioned(t)
	tb.layLines()
	tb.typed(fyne.KeyTab, fyne.KeyPageDown, fyne.KeyPageDown)
	p := tb.versionPair()
	if p.diff != 1 || p.side != 1 {
		t.Errorf("difference %d is at hand, side %d chosen", p.diff, p.side)
	}
	img := p.draw(p.plan.at.Dx(), p.plan.at.Dy()).(*image.RGBA)
	if n := inked(img, tb.d.light.palette().mark); n < 40 {
		t.Errorf("%d pixels mark what differs", n)
	}
	press := func(r image.Rectangle) {
		at := r.Min.Add(image.Pt(5, r.Dy()/2)).Add(p.plan.at.Min)
		pos := p.plan.origin.AddXY(float32(float64(at.X)/p.plan.density), float32(float64(at.Y)/p.plan.density))
		p.MouseDown(&desktop.MouseEvent{PointEvent: fyne.PointEvent{Position: pos}, Button: desktop.MouseButtonPrimary})
	}
	press(p.plan.halves[0].page)
	press(p.plan.halves[0].name)
	if p.side != 0 || p.shown != [2]int{1, 1} || len(p.compared()) != 0 {
		t.Errorf("side %d is chosen, shown are %v", p.side, p.shown)
	}
	p.draw(p.plan.at.Dx(), p.plan.at.Dy())
	press(p.plan.halves[1].take)
	tb.versionLeaf()
	tb.typed(fyne.KeyTab)
	p = tb.versionPair()
	press(p.plan.halves[1].take)
	tb.wants(night)
	if tb.overlay() != nil {
		t.Error("the spreads still lie there")
	}
}
