package ui

import (
	"slices"
	"strings"
	"testing"

	"fyne.io/fyne/v2"

	"headland/pagemodel"
	"headland/typeset"
	"headland/ui/session"
)

// overlong is a book whose second line is longer than the measure.
func overlong(t *testing.T) *table {
	t.Helper()
	tb := setTable(t, verses("The ovens wait.\n"+long+"\nand nobody asked.\n\n"+two))
	tb.chord(key(ctrl, fyne.KeyDown))
	return tb
}

// layChoices lays the leaf for the line at hand.
func (tb *table) layChoices() *choiceLeaf {
	tb.t.Helper()
	tb.chord(key(ctrlShift, fyne.KeyC))
	return tb.choiceLeaf()
}

func (tb *table) choiceLeaf() *choiceLeaf {
	tb.t.Helper()
	l, ok := tb.overlay().(*choiceLeaf)
	if !ok {
		tb.t.Fatalf("%T lies over the desk, want the choices", tb.overlay())
	}
	return l
}

// chordOnTop presses a shortcut that whatever has the keys is to hear.
func (tb *table) chordOnTop(s fyne.Shortcut) {
	tb.t.Helper()
	tb.w.win.Canvas().Focused().(fyne.Shortcutable).TypedShortcut(s)
	tb.frame()
}

// onPages is the text of the rows of a line as the desk shows them.
func (tb *table) onPages(ref pagemodel.LineRef) []string {
	var rows []string
	for _, number := range [...]int{tb.d.spread.Verso, tb.d.spread.Recto} {
		page := tb.d.page(number)
		for _, i := range rowsOf(page, ref) {
			rows = append(rows, rowText(&page.Rows[i]))
		}
	}
	return rows
}

func rowText(r *typeset.Row) string {
	var b strings.Builder
	for _, run := range r.Runs {
		b.WriteString(run.Text)
	}
	return b.String()
}

// TestEveryChoiceIsTriedAndNothingStays walks down all choices by keys: each is
// on the page as it is on the leaf, and Escape leaves nothing of them.
func TestEveryChoiceIsTriedAndNothingStays(t *testing.T) {
	tb := overlong(t)
	ref, _ := tb.w.session.Focus()
	committed, open := tb.w.session.Collection(), tb.d.spread
	l := tb.layChoices()
	if l.at != -1 || tb.w.session.Previewing() {
		t.Fatal("a choice is tried out before one is pointed at")
	}
	if p, ok := tb.w.session.Committed().PageOfLine(ref); !ok || l.side != pagemodel.SideOf(p).Facing() {
		t.Errorf("the leaf lies over side %v, and so does the line of page %d", l.side, p)
	}
	for i := range l.all {
		tb.onTop(fyne.KeyDown)
		if l.at != i || !tb.w.session.Previewing() {
			t.Fatalf("after %d keys down choice %d is pointed at, tried out: %v", i+1, l.at, tb.w.session.Previewing())
		}
		shown, first := tb.onPages(ref), l.all[i].Rows[0]
		if len(shown) == 0 || shown[0] != rowText(&first) {
			t.Errorf("%s, %s: the page shows %q, the leaf %q", l.all[i].Head, l.all[i].Title, shown, rowText(&first))
		}
		if !slices.ContainsFunc(l.seen(), func(s seenChoice) bool { return s.choice == i }) {
			t.Errorf("choice %d is pointed at and out of sight", i)
		}
	}
	tb.onTop(fyne.KeyHome, fyne.KeyUp)
	if l.at != -1 || tb.w.session.Previewing() {
		t.Error("above the first choice one is still tried out")
	}
	tb.onTop(fyne.KeyDown, fyne.KeyEscape)
	if tb.overlay() != nil || tb.w.session.Previewing() || tb.w.session.Collection() != committed || tb.d.spread != open {
		t.Error("lifted, the leaf leaves something of what it tried out")
	}
	if tb.w.win.Canvas().Focused() != fyne.Focusable(tb.d) {
		t.Error("the desk does not have the keys again")
	}
}

// TestAChoiceIsOneStep: Enter takes what is pointed at, and one undo is enough.
func TestAChoiceIsOneStep(t *testing.T) {
	tb := overlong(t)
	before := tb.text()
	l := tb.layChoices()
	tb.onTop(fyne.KeyReturn)
	if tb.overlay() == nil {
		t.Fatal("Enter lifts the leaf though nothing is pointed at")
	}
	tb.onTop(fyne.KeyDown, fyne.KeyDown)
	want, err := l.all[1].Edit.Apply(tb.w.session.Collection())
	if err != nil {
		t.Fatal(err)
	}
	tb.onTop(fyne.KeyReturn)
	if tb.overlay() != nil || tb.w.session.Previewing() {
		t.Error("the leaf still lies there, or what was taken is only tried out")
	}
	if tb.text() == before || tb.text() != textOf(want) {
		t.Errorf("after the choice the poem is %q, want %q", tb.text(), textOf(want))
	}
	if !strings.Contains(tb.d.said, l.all[1].Title) {
		t.Errorf("the foot says %q, without what was done", tb.d.said)
	}
	tb.chord(&fyne.ShortcutUndo{})
	tb.wants(before)
}

// TestChoicesAreRefusedInWords: with no line at hand, and in a book that can only
// be read.
func TestChoicesAreRefusedInWords(t *testing.T) {
	tb := overlong(t)
	tb.d.session.ClearFocus()
	tb.chord(key(ctrlShift, fyne.KeyC))
	if tb.overlay() != nil || tb.d.said != noLineWords {
		t.Errorf("with no line at hand %T lies there, and the foot says %q", tb.overlay(), tb.d.said)
	}
	tb.chord(key(ctrl, fyne.KeyDown))
	s, err := session.Open(tb.path)
	if err != nil {
		t.Fatal(err)
	}
	second := tableFor(t, s)
	second.chord(key(ctrl, fyne.KeyDown))
	second.chord(key(ctrlShift, fyne.KeyC))
	if second.overlay() != nil || second.d.said != readOnlyWords {
		t.Errorf("in a book that can only be read %T lies there, and the foot says %q", second.overlay(), second.d.said)
	}
}

// TestFromLeafToLeaf: the key for the next unsettled line lays its choices.
func TestFromLeafToLeaf(t *testing.T) {
	tb := setDemo(t)
	tb.chord(key(ctrl, fyne.KeyDown))
	one := tb.layChoices()
	tb.onTop(fyne.KeyDown)
	tb.chord(key(ctrl, fyne.KeyDown))
	if other := tb.choiceLeaf(); other.ref == one.ref || tb.w.session.Previewing() {
		t.Errorf("the next leaf is for %v, as the one before; tried out: %v", other.ref, tb.w.session.Previewing())
	}
	if n := len(tb.w.win.Canvas().Overlays().List()); n != 1 {
		t.Errorf("%d leaves lie there", n)
	}
}
