package ui

import (
	"testing"

	"fyne.io/fyne/v2"
)

// TestGoingToAPoemPutsItAtHand: the first line of the poem that was gone to is at
// hand, whichever poem faces it.
func TestGoingToAPoemPutsItAtHand(t *testing.T) {
	tb := setDemo(t)
	tb.chord(key(ctrl, fyne.KeyG))
	tb.typeOnTop("Foil")
	tb.onTop(fyne.KeyReturn)
	ref, ok := tb.w.session.Focus()
	p, _, found := tb.w.session.Collection().Poem(ref.Poem)
	if !ok || !found || p.Name() != "Foil" || !tb.d.inSight(ref) {
		t.Errorf("line %v is at hand", ref)
	}
	if at, _ := p.Find(ref.Line); at.Stanza != 0 || at.Line != 0 {
		t.Errorf("it is line %v of the poem", at)
	}
}
