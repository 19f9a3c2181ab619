package ui

import (
	"strings"
	"testing"

	"fyne.io/fyne/v2"
)

// settledOne is a book with one line kept, and at hand.
func settledOne(t *testing.T) *table {
	t.Helper()
	tb := setTable(t, verses("The ovens wait.\n"+long))
	tb.chord(key(ctrl, fyne.KeyDown))
	tb.chord(key(ctrl, fyne.KeyK))
	return tb
}

// TestAReasonIsPrivateUnlessShown: by keys alone.
func TestAReasonIsPrivateUnlessShown(t *testing.T) {
	tb := settledOne(t)
	tb.chord(key(ctrlShift, fyne.KeyN))
	tb.writeIn("  the grave wants air ", fyne.KeyReturn)
	if l := tb.line("as if"); l.Reason() != "the grave wants air" || l.Shown() || !l.Kept() {
		t.Errorf("the reason is %q, shown %v", l.Reason(), l.Shown())
	}
	if help := tb.d.help(); !strings.Contains(help, "reason, private: “the grave wants air”") {
		t.Errorf("the foot says %q", help)
	}
	tb.chord(key(ctrlShift, fyne.KeyN))
	tb.typed(fyne.KeyTab, fyne.KeyReturn)
	if l := tb.line("as if"); l.Reason() != "the grave wants air" || !l.Shown() {
		t.Errorf("the reason is %q, shown %v", l.Reason(), l.Shown())
	}
	if help := tb.d.help(); !strings.Contains(help, "reason, shown: “the grave wants air”") {
		t.Errorf("the foot says %q", help)
	}
	tb.d.undo()
	if l := tb.line("as if"); l.Shown() || l.Reason() == "" {
		t.Errorf("undone once, the reason is %q, shown %v", l.Reason(), l.Shown())
	}
	tb.d.undo()
	if got := tb.line("as if").Reason(); got != "" {
		t.Errorf("undone twice, the reason is %q", got)
	}
}

// TestAReasonIsLeft, or kept as it was: then nothing is done.
func TestAReasonIsLeft(t *testing.T) {
	tb := settledOne(t)
	before := tb.w.session.Collection()
	for _, end := range []fyne.KeyName{fyne.KeyEscape, fyne.KeyReturn} {
		tb.chord(key(ctrlShift, fyne.KeyN))
		text := "never mind"
		if end == fyne.KeyReturn {
			text = ""
		}
		tb.writeIn(text, end)
		if tb.w.session.Collection() != before || tb.overlay() != nil {
			t.Errorf("%s leaves %q", end, tb.line("as if").Reason())
		}
	}
	tb.w.session.ClearFocus()
	tb.chord(key(ctrlShift, fyne.KeyN))
	if tb.overlay() != nil || tb.d.said != noLineWords {
		t.Errorf("without a line, the foot says %q", tb.d.said)
	}
}

// TestTurningElsewhereKeepsTheReason: and whether it may go out.
func TestTurningElsewhereKeepsTheReason(t *testing.T) {
	tb := settledOne(t)
	tb.chord(key(ctrlShift, fyne.KeyN))
	goes := laid[*wordRow](tb)
	clickIn(goes, fyne.NewPos(goes.places()[1][0]+5, 12))
	tb.writeIn("it must fall there", fyne.KeyReturn)
	for range 5 {
		tb.keys(fyne.KeyRight)
	}
	tb.chord(key(ctrl, fyne.KeyT))
	if l := tb.line("as if"); len(l.Turns()) != 1 || l.Reason() != "it must fall there" || !l.Shown() {
		t.Errorf("turning at %v, the reason is %q, shown %v", l.Turns(), l.Reason(), l.Shown())
	}
	tb.chord(key(ctrl, fyne.KeyK))
	if l := tb.line("as if"); len(l.Turns()) != 0 || !l.Shown() {
		t.Errorf("let turn anywhere, the reason is shown %v", l.Shown())
	}
	tb.press(tb.ruleAt("grave"))
	tb.held = fyne.KeyModifierShortcutDefault
	tb.move(tb.endOf("as if", "telling"))
	tb.release()
	if l := tb.line("as if"); len(l.Turns()) != 1 || l.Reason() != "it must fall there" || !l.Shown() {
		t.Errorf("turned by hand at %v, the reason is %q, shown %v", l.Turns(), l.Reason(), l.Shown())
	}
}
