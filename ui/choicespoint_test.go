package ui

import (
	"slices"
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"

	"headland/typeset/choices"
)

// TestHeadToHead: left and right go from head to head.
func TestHeadToHead(t *testing.T) {
	tb := overlong(t)
	l := tb.layChoices()
	var heads []choices.Head
	for range 6 {
		tb.onTop(fyne.KeyRight)
		if n := len(heads); n == 0 || heads[n-1] != l.all[l.at].Head {
			heads = append(heads, l.all[l.at].Head)
		}
		if l.at > 0 && l.all[l.at-1].Head == l.all[l.at].Head {
			t.Errorf("choice %d is not the first under its head", l.at)
		}
	}
	want := []choices.Head{choices.InPoem, choices.InEdition, choices.LetTurn, choices.Space}
	if !slices.Equal(heads, want) {
		t.Errorf("right goes to %v, want %v", heads, want)
	}
	for range 6 {
		tb.onTop(fyne.KeyLeft)
	}
	if l.at != 0 {
		t.Errorf("left ends at choice %d, want the first", l.at)
	}
}

// TestPoemOrEditionIsOneTouch: Tab goes to the same place under the other head,
// and the next leaf begins under it; the window remembers it.
func TestPoemOrEditionIsOneTouch(t *testing.T) {
	tb := overlong(t)
	l := tb.layChoices()
	tb.onTop(fyne.KeyDown, fyne.KeyDown, fyne.KeyDown)
	inPoem := l.all[l.at]
	tb.onTop(fyne.KeyTab)
	inEdition := l.all[l.at]
	if inPoem.Head != choices.InPoem || inEdition.Head != choices.InEdition || !slices.Equal(inPoem.At, inEdition.At) {
		t.Fatalf("Tab goes from %s %v to %s %v", inPoem.Head, inPoem.At, inEdition.Head, inEdition.At)
	}
	tb.onTop(fyne.KeyEscape)
	l = tb.layChoices()
	tb.onTop(fyne.KeyDown)
	if got := l.all[l.at].Head; got != choices.InEdition {
		t.Errorf("the next leaf begins under %q", got)
	}
	if s := readSettings(strings.TrimSuffix(tb.w.settings.path, "/window.json")); s.breakHead() != choices.InEdition {
		t.Error("the window’s settings do not have it")
	}
	tb.onTop(fyne.KeyHome, fyne.KeyReturn)
	if tb.w.settings.breakHead() != choices.InPoem {
		t.Error("a break taken in the poem is not remembered")
	}
}

// TestTheCaretsWordComesFirst: the leaf begins at the word that the caret is
// before.
func TestTheCaretsWordComesFirst(t *testing.T) {
	tb := overlong(t)
	tb.keys(fyne.KeyRight, fyne.KeyRight, fyne.KeyRight, fyne.KeyRight)
	word := tb.d.word
	l := tb.layChoices()
	tb.onTop(fyne.KeyDown)
	if c := l.all[l.at]; len(c.At) != 1 || c.At[0] != word {
		t.Errorf("the caret is before byte %d, and the leaf begins at %v", word, c.At)
	}
}

// TestTwoChoicesOnAFlap: turned, the page shows the one or the other.
func TestTwoChoicesOnAFlap(t *testing.T) {
	tb := overlong(t)
	ref, _ := tb.w.session.Focus()
	before := tb.text()
	l := tb.layChoices()
	tb.onTop(fyne.KeySpace)
	if !strings.Contains(tb.d.said, "flap") || l.at != -1 {
		t.Errorf("with nothing on the flap the foot says %q", tb.d.said)
	}
	tb.onTop(fyne.KeyDown)
	tb.chord(key(ctrl, fyne.KeyReturn)) // the toolkit tries the menu first
	one := tb.onPages(ref)
	tb.onTop(fyne.KeyDown, fyne.KeyDown)
	l.MouseDown(l.eventAt(tb.middleOf(l, l.at), desktop.MouseButtonSecondary))
	tb.frame()
	other := tb.onPages(ref)
	for i, want := range [][]string{one, other, one} {
		tb.onTop(fyne.KeySpace)
		if got := tb.onPages(ref); !slices.Equal(got, want) {
			t.Errorf("turned %d times the flap shows %q, want %q", i+1, got, want)
		}
	}
	if slices.Equal(one, other) || !strings.Contains(tb.d.said, "Space turns the flap") {
		t.Errorf("both sides show %q; the foot says %q", one, tb.d.said)
	}
	tb.chord(key(ctrl, fyne.KeyReturn))
	if len(l.flap) != 1 {
		t.Errorf("%d choices lie on the flap after one was taken off", len(l.flap))
	}
	if tb.text() != before {
		t.Errorf("laying on the flap changes the poem to %q", tb.text())
	}
}

// TestTheOrderIsTurned: the choices stay under their heads, and the one pointed
// at stays at hand.
func TestTheOrderIsTurned(t *testing.T) {
	tb := overlong(t)
	l := tb.layChoices()
	tb.onTop(fyne.KeyDown, fyne.KeyDown)
	at, first := l.nameOf(l.at), l.order
	var names []string
	for {
		tb.chordOnTop(key(ctrlShift, fyne.KeyO))
		if l.order == first {
			break
		}
		names = append(names, l.order.String())
		if l.nameOf(l.at) != at {
			t.Errorf("in the order of %s %v is pointed at, want %v", l.order, l.nameOf(l.at), at)
		}
		if !slices.IsSortedFunc(l.all, func(a, b choices.Choice) int { return int(a.Head - b.Head) }) {
			t.Errorf("in the order of %s the heads are mixed", l.order)
		}
		feet := l.footWords()
		if said := feet[len(feet)-1].run.Text; !strings.Contains(said, l.order.String()) {
			t.Errorf("the leaf’s foot says %q in the order of %s", said, l.order)
		}
	}
	if len(names) == 0 {
		t.Error("there is only one order")
	}
}

// TestAnOrderBeginsAtItsFirst: where nothing is pointed at, ↓ goes to the choice that
// the new order has first.
func TestAnOrderBeginsAtItsFirst(t *testing.T) {
	tb := overlong(t)
	l := tb.layChoices()
	was := l.nameOf(0)
	tb.chordOnTop(key(ctrlShift, fyne.KeyO))
	if l.nameOf(0) == was {
		t.Fatal("the order has the same choice first: try another line")
	}
	tb.onTop(fyne.KeyDown)
	if l.at != 0 {
		t.Errorf("choice %d is pointed at, want the first", l.at)
	}
}
