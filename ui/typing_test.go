package ui

import (
	"testing"

	"fyne.io/fyne/v2"

	"headland/pagemodel"
)

func TestTypingGoesByCharactersAsReadersSeeThem(t *testing.T) {
	text := "ae\u0301👩‍🌾z" // e with a combining acute, a farmer of three code points
	ty := newTyping(pagemodel.LineRef{}, text, len(text))
	for _, want := range []string{"ae\u0301👩‍🌾", "ae\u0301", "a", "", ""} {
		ty.backspace()
		if ty.text != want || ty.caret != len(want) {
			t.Fatalf("after a backspace %q at %d, want %q", ty.text, ty.caret, want)
		}
	}
	for ty.undo() {
	}
	if ty.text != text {
		t.Errorf("undone to %q", ty.text)
	}
	for ty.redo() {
	}
	if ty.text != "" {
		t.Errorf("done again to %q", ty.text)
	}
}

func TestTypingTakesOneLine(t *testing.T) {
	ty := newTyping(pagemodel.LineRef{}, "ab", 1)
	ty.insert("x\ty\x07z\nand more")
	if ty.text != "ax yzb" || ty.caret != 5 {
		t.Errorf("%q at %d", ty.text, ty.caret)
	}
	ty.caret = 0
	ty.remove()
	ty.step(1)
	ty.insert("\n")
	if ty.text != "x yzb" || ty.caret != 1 {
		t.Errorf("%q at %d", ty.text, ty.caret)
	}
}

func TestRetypingALineInPlace(t *testing.T) {
	tb := setTable(t, verses(two))
	tb.click(tb.onWord("I was", "cold"))
	tb.keys(fyne.KeyReturn)
	tb.write("so ")
	if got := textOf(tb.d.of.Collection()); got != "I was so cold once.\nYou will not believe it." {
		t.Errorf("the page shows %q", got)
	}
	tb.wants(two)
	tb.d.undo() // the field's own
	tb.d.undo()
	tb.frame()
	if got := tb.d.typing.text; got != "I was scold once." {
		t.Errorf("after taking back two characters %q", got)
	}
	tb.keys(fyne.KeyEnd)
	tb.d.paste("!\nno more")
	tb.keys(fyne.KeyReturn)
	tb.wants("I was scold once.!\nYou will not believe it.")
	tb.d.undo()
	tb.wants(two)
}

func TestEscapeDropsWhatWasTyped(t *testing.T) {
	tb := setTable(t, verses(two))
	tb.keys(fyne.KeyDown, fyne.KeyReturn, fyne.KeyBackspace, fyne.KeyEscape)
	tb.wants(two)
	if _, can := tb.w.session.UndoLabel(); can || tb.d.typing != nil {
		t.Error("something is left of it")
	}
}

func TestAClickElsewhereKeepsWhatWasTyped(t *testing.T) {
	tb := setTable(t, verses(two))
	tb.keys(fyne.KeyDown, fyne.KeyReturn)
	tb.write("?")
	tb.click(tb.onWord("You will", "believe"))
	tb.wants("I was cold once.?\nYou will not believe it.")
}

func TestALineCanBeEmptiedAndFilledAgain(t *testing.T) {
	tb := setTable(t, verses("ab\nsecond"))
	tb.keys(fyne.KeyDown, fyne.KeyReturn, fyne.KeyBackspace, fyne.KeyBackspace, fyne.KeyReturn)
	tb.wants("\nsecond")
	tb.keys(fyne.KeyReturn)
	tb.write("cd ")
	tb.keys(fyne.KeyReturn)
	tb.wants("cd \nsecond")
}
