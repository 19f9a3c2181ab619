package ui

import (
	"image"
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"
)

// aloudAt is the place on the window of a device pixel of the picture.
func (a *aloudView) aloudAt(at image.Point) fyne.PointEvent {
	at = at.Add(a.place.at.Min)
	pos := a.place.origin.AddXY(float32(float64(at.X)/a.place.density), float32(float64(at.Y)/a.place.density))
	return fyne.PointEvent{Position: pos, AbsolutePosition: pos}
}

func (a *aloudView) pressAt(at image.Point, button desktop.MouseButton) {
	a.MouseMoved(&desktop.MouseEvent{PointEvent: a.aloudAt(at)})
	a.MouseDown(&desktop.MouseEvent{PointEvent: a.aloudAt(at), Button: button})
}

// itemAt is the middle of an item in the list.
func (a *aloudView) itemAt(item int) image.Point {
	for _, r := range a.place.rows {
		if r.item == item {
			return middle(r.at)
		}
	}
	return image.Point{}
}

// pressWords presses words on the sheet.
func (tb *table) pressWords(a *aloudView, words string) {
	tb.t.Helper()
	for _, w := range a.place.words {
		if w.words == words {
			a.pressAt(middle(w.at), desktop.MouseButtonPrimary)
			return
		}
	}
	tb.t.Fatalf("nothing on the sheet says %q", words)
}

// TestAnItemIsCarriedByTheHand: the times follow before it is let go of; Escape puts
// it back; let go of, it is one step of the history.
func TestAnItemIsCarriedByTheHand(t *testing.T) {
	tb := setDemo(t)
	a := tb.readsPoems(600, "Sign", "Windowpane", "Toast")
	last := a.plan.Items[2].Starts
	from, to := a.itemAt(2), a.itemAt(0)
	carry := func() {
		a.pressAt(from, desktop.MouseButtonPrimary)
		for y := from.Y; y >= to.Y-4; y -= 4 {
			a.Dragged(&fyne.DragEvent{PointEvent: a.aloudAt(image.Pt(from.X, y))})
		}
	}
	carry()
	if got := a.titleOf(0); got != "Toast" || a.plan.Items[2].Starts == last || !strings.Contains(tb.d.said, "Esc puts it back") {
		t.Errorf("carried to the head, %s is there, and the foot says %q", got, tb.d.said)
	}
	tb.wantsOrder("Sign, Windowpane, Toast")
	tb.typed(fyne.KeyEscape)
	a.DragEnd()
	tb.wantsOrder("Sign, Windowpane, Toast")
	if got := a.titleOf(a.at); got != "Toast" || a.at != 2 {
		t.Errorf("put back, %s is at hand", got)
	}
	carry()
	a.MouseUp(&desktop.MouseEvent{})
	a.DragEnd()
	tb.wantsOrder("Toast, Sign, Windowpane")
	tb.chordOnTop(&fyne.ShortcutUndo{})
	tb.wantsOrder("Sign, Windowpane, Toast")
	a.pressAt(middle(a.place.leads[1]), desktop.MouseButtonPrimary)
	if a.at != 1 {
		t.Errorf("its lead pressed, item %d is at hand", a.at)
	}
}

// TestWhatTheHandCanDo: the words on the sheet are pressed, and an item's menu is
// laid out.
func TestWhatTheHandCanDo(t *testing.T) {
	tb := setDemo(t)
	a := tb.readsPoems(0, "Sign", "Windowpane")
	tb.pressWords(a, "add a poem")
	tb.writeIn("Toast", fyne.KeyReturn)
	tb.wantsOrder("Sign, Toast, Windowpane")
	tb.pressWords(a, "from elsewhere")
	tb.writeIn("Pied Beauty")
	tb.nextField()
	text := tb.w.win.Canvas().Focused().(*field)
	text.SetText("Glory be to God for dappled things –\nFor skies of couple-colour as a brinded cow;") // Hopkins, from memory
	tb.nextField()
	tb.writeIn("And one by somebody else", fyne.KeyReturn)
	tb.wantsOrder("Sign, Toast, Pied Beauty, Windowpane")
	if item := a.plan.Items[2]; item.Lines != 2 || item.Talk == 0 || item.Number != 0 || a.folioOf(2) != "" {
		t.Errorf("the poem from elsewhere has %d lines and page %q", item.Lines, a.folioOf(2))
	}
	tb.pressWords(a, "The time")
	if a.face != timeFace {
		t.Errorf("face %d is shown", a.face)
	}
	tb.pressWords(a, "The order")
	a.pressAt(a.itemAt(1), desktop.MouseButtonSecondary)
	if tb.overlay() == fyne.CanvasObject(a) || a.at != 1 {
		t.Error("no menu is laid out")
	}
}
