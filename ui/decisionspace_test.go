package ui

import (
	"testing"

	"fyne.io/fyne/v2"

	"headland/pagemodel"
)

// TestSpaceByKeys: each key is one step of history.
func TestSpaceByKeys(t *testing.T) {
	tb := setTable(t, verses(two))
	tb.keys(fyne.KeyDown, fyne.KeyDown, fyne.KeyRight, fyne.KeyRight)
	const words = "You will"
	indent := func(l pagemodel.Line) int { return int(l.Indent()) }
	above := pagemodel.Line.Above
	dropped := func(l pagemodel.Line) int {
		if l.Dropped() {
			return 1
		}
		return 0
	}
	em := int(pagemodel.OneEm)
	for _, step := range []struct {
		chord  fyne.Shortcut
		of     func(pagemodel.Line) int
		before int
		after  int
	}{
		{key(ctrl, fyne.KeyRight), indent, 0, em},
		{key(ctrl, fyne.KeyRight), indent, em, 2 * em},
		{key(ctrl, fyne.KeyLeft), indent, 2 * em, em},
		{key(ctrl, fyne.KeyEnd), dropped, 0, 1},
		{key(ctrl, fyne.KeyEnd), dropped, 1, 0},
		{key(ctrl, fyne.KeyPageDown), above, 0, 1},
		{key(ctrl, fyne.KeyPageDown), above, 1, 2},
		{key(ctrl, fyne.KeyPageUp), above, 2, 1},
	} {
		if got := step.of(tb.line(words)); got != step.before {
			t.Fatalf("before %s it is %d, want %d", step.chord.ShortcutName(), got, step.before)
		}
		tb.chord(step.chord)
		got := step.of(tb.line(words))
		tb.d.undo()
		if back := step.of(tb.line(words)); got != step.after || back != step.before {
			t.Errorf("%s makes it %d, want %d; undone it is %d", step.chord.ShortcutName(), got, step.after, back)
		}
		tb.d.redo()
	}
}

// TestSpaceThatCannotBeIsSaid at the foot, and nothing is done.
func TestSpaceThatCannotBeIsSaid(t *testing.T) {
	tb := setTable(t, verses(two))
	tb.keys(fyne.KeyDown)
	before := tb.w.session.Collection()
	for _, chord := range []fyne.Shortcut{key(ctrl, fyne.KeyPageUp), key(ctrl, fyne.KeyEnd)} {
		tb.d.said = ""
		tb.chord(chord)
		if tb.d.said == "" || tb.w.session.Collection() != before {
			t.Errorf("%s says %q", chord.ShortcutName(), tb.d.said)
		}
	}
	tb.chord(key(ctrl, fyne.KeyLeft))
	if tb.w.session.Collection() != before {
		t.Error("a line at the left edge goes on to the left")
	}
}

// TestSpaceFromALinesMenu: by mouse alone, and each item shows only where it does
// something.
func TestSpaceFromALinesMenu(t *testing.T) {
	tb := setTable(t, verses(two))
	var asked lineMenu
	tb.d.ask = func(m lineMenu) { asked = m }
	choose := func(words string) {
		t.Helper()
		tb.d.MouseDown(rightButton(tb.at(tb.onWord("You will", "believe"))))
		for _, item := range asked.items {
			if item.words == words {
				item.act()
				tb.frame()
				return
			}
		}
		t.Fatalf("no item says %q in %v", words, asked.items)
	}
	choose("White above it: a line more")
	choose("Begin it where the line above ended")
	if l := tb.line("You will"); l.Above() != 1 || !l.Dropped() {
		t.Errorf("white above %d, dropped %v", l.Above(), l.Dropped())
	}
	choose("White above it: a line less")
	choose("Begin it at its indent again")
	if l := tb.line("You will"); l.Above() != 0 || l.Dropped() {
		t.Errorf("white above %d, dropped %v", l.Above(), l.Dropped())
	}
}
