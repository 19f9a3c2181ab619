package ui

import (
	"testing"

	"fyne.io/fyne/v2"

	"headland/pagemodel"
)

// TestAnEmptyBook: everything that can be laid over the book can be asked for where
// there is no poem, and left again.
func TestAnEmptyBook(t *testing.T) {
	tb := setTable(t, pagemodel.NewCollection(pagemodel.About{Title: "Nothing Yet"}, pagemodel.DefaultDesign()))
	for _, c := range tb.w.menus.commands {
		if !c.book {
			continue
		}
		tb.w.run(c)
		tb.frame()
		for range 4 {
			if over := tb.w.win.Canvas().Overlays().List(); len(over) == 0 {
				break
			}
			tb.onTop(fyne.KeyEscape)
		}
		if n := len(tb.w.win.Canvas().Overlays().List()); n > 0 {
			t.Errorf("%s: %d things still lie over the book after Escape", c.words, n)
		}
		tb.d.leaveOrder()
	}
	if label, ok := tb.w.session.UndoLabel(); ok {
		t.Errorf("something was done to the empty book: %s", label)
	}
}
