package ui

import (
	"strings"
	"testing"

	"fyne.io/fyne/v2"
)

// chord presses a shortcut, as the menu hears it.
func (tb *table) chord(s fyne.Shortcut) {
	tb.t.Helper()
	for _, c := range tb.w.menus.commands {
		if c.key != nil && c.key.ShortcutName() == s.ShortcutName() {
			c.item.Action()
			tb.frame()
			return
		}
	}
	tb.t.Fatalf("no item of the menu has %s", s.ShortcutName())
}

const alt = fyne.KeyModifierAlt

func TestTheKeysDoWhatTheRuleDoes(t *testing.T) {
	tb := setTable(t, verses(two))
	tb.keys(fyne.KeyDown)
	tb.chord(key(alt, fyne.KeyLeft))
	tb.chord(key(alt, fyne.KeyLeft))
	if got := textOf(tb.d.of.Collection()); got != "I was\ncold once.\nYou will not believe it." {
		t.Errorf("the page shows %q", got)
	}
	tb.chord(key(alt, fyne.KeyDown))
	if got := textOf(tb.d.of.Collection()); got != "I was\ncold once. You will not believe it." {
		t.Errorf("the page shows %q", got)
	}
	tb.chord(key(alt, fyne.KeyUp))
	tb.wants(two)
	tb.keys(fyne.KeyReturn)
	tb.wants("I was\ncold once.\nYou will not believe it.")
	tb.chord(key(alt, fyne.KeyRight))
	tb.keys(fyne.KeyEscape)
	tb.wants("I was\ncold once.\nYou will not believe it.")
	tb.chord(key(alt, fyne.KeyRight))
	tb.keys(fyne.KeyReturn)
	tb.wants("I was cold\nonce.\nYou will not believe it.")
}

func TestBreaksAtTheCaret(t *testing.T) {
	tb := setTable(t, verses(two))
	tb.keys(fyne.KeyDown, fyne.KeyRight, fyne.KeyRight, fyne.KeyRight)
	tb.chord(key(ctrlShift, fyne.KeyReturn))
	tb.wants(two)
	if got := tb.line("I was").Breaks(); len(got) != 1 || got[0] != len("I was ") {
		t.Errorf("breaks %v", got)
	}
	tb.chord(key(ctrl, fyne.KeyJ))
	if got := tb.line("I was").Breaks(); len(got) != 0 {
		t.Errorf("breaks %v after joining", got)
	}
	tb.chord(key(ctrl, fyne.KeyReturn))
	tb.wants("I was\ncold once.\nYou will not believe it.")
	tb.chord(key(ctrl, fyne.KeyJ))
	tb.wants(two)
	tb.chord(key(ctrlShift, fyne.KeyJ))
	tb.wants("I was cold once.\n\nYou will not believe it.")
	tb.chord(key(ctrlShift, fyne.KeyJ))
	tb.wants(two)
}

func TestABreakWithoutACaretSaysWhatToDo(t *testing.T) {
	tb := setTable(t, verses(two))
	tb.chord(key(ctrl, fyne.KeyReturn))
	if !strings.Contains(tb.d.said, "No line is at hand") {
		t.Errorf("the foot says %q", tb.d.said)
	}
	tb.keys(fyne.KeyDown)
	tb.chord(key(ctrl, fyne.KeyReturn))
	if !strings.Contains(tb.d.said, "Set the caret") {
		t.Errorf("the foot says %q", tb.d.said)
	}
	tb.wants(two)
}

func TestSettlingByKeys(t *testing.T) {
	tb := setTable(t, verses(two+"\n"+long))
	if got := tb.w.win.Title(); got != "Trial — 1 line unsettled" {
		t.Errorf("the title is %q", got)
	}
	tb.chord(key(ctrl, fyne.KeyDown))
	tb.chord(key(ctrl, fyne.KeyK))
	if !tb.line("as if").Kept() || tb.w.win.Title() != "Trial — every line settled" {
		t.Errorf("kept %v, title %q", tb.line("as if").Kept(), tb.w.win.Title())
	}
	tb.chord(key(ctrl, fyne.KeyU))
	if tb.line("as if").Kept() {
		t.Error("still kept")
	}
	tb.keys(fyne.KeyRight, fyne.KeyRight, fyne.KeyRight)
	tb.chord(key(ctrl, fyne.KeyT))
	if turns := tb.line("as if").Turns(); len(turns) != 1 || turns[0] != len("as if ") {
		t.Errorf("turns %v", turns)
	}
}

func TestGapsAndIndentsByKeys(t *testing.T) {
	tb := setTable(t, verses(two))
	tb.keys(fyne.KeyDown)
	wider, narrower := key(ctrlShift, fyne.KeyRight), key(ctrlShift, fyne.KeyLeft)
	tb.chord(wider)
	tb.chord(wider)
	tb.chord(narrower)
	if got := tb.line("I was").Indent(); got != gapStep {
		t.Errorf("indent %v", got)
	}
	tb.keys(fyne.KeyRight, fyne.KeyRight)
	tb.chord(wider)
	if gaps := tb.line("I was").Gaps(); len(gaps) != 1 || gaps[0].At != 2 || gaps[0].Width != gapStep {
		t.Errorf("gaps %v", gaps)
	}
}

// TestLineToLine goes through the whole book and back.
func TestLineToLine(t *testing.T) {
	text := strings.TrimSuffix(strings.Repeat("a line of verse\n", 90), "\n")
	tb := setTable(t, verses(text))
	lines := 0
	for last := -1; ; lines++ {
		tb.keys(fyne.KeyDown)
		ref, ok := tb.w.session.Focus()
		if !ok || !tb.d.inSight(ref) {
			t.Fatalf("line %d is at hand %v and not in sight", lines, ok)
		}
		if int(ref.Line) == last {
			break
		}
		last = int(ref.Line)
	}
	if lines != 90 || tb.w.session.Page() != tb.d.of.Extent() {
		t.Errorf("%d lines, ending on page %d of %d", lines, tb.w.session.Page(), tb.d.of.Extent())
	}
	tb.keys(fyne.KeyUp)
	tb.keys(fyne.KeyHome)
	if tb.w.session.Page() != 1 {
		t.Errorf("Home opens page %d", tb.w.session.Page())
	}
	tb.keys(fyne.KeyPageDown)
	if got := tb.w.session.Spread(); got.Verso != 2 {
		t.Errorf("Page Down opens %v", got)
	}
	tb.keys(fyne.KeyPageUp, fyne.KeyPageUp)
	if tb.w.session.Page() != 1 {
		t.Errorf("Page Up opens page %d", tb.w.session.Page())
	}
	tb.keys(fyne.KeyEnd)
	if tb.w.session.Page() != tb.d.of.Extent() {
		t.Errorf("End opens page %d", tb.w.session.Page())
	}
}

func TestZoomByKeys(t *testing.T) {
	tb := setTable(t, verses(two))
	fit := tb.d.plan.scale
	tb.chord(key(ctrl, fyne.KeyEqual))
	if tb.d.plan.scale <= fit {
		t.Error("not nearer")
	}
	tb.chord(key(ctrl, fyne.KeyMinus))
	tb.chord(key(ctrl, fyne.KeyMinus))
	if tb.d.plan.scale >= fit {
		t.Error("not farther")
	}
	tb.chord(key(ctrl, fyne.Key0))
	if tb.d.plan.scale != fit {
		t.Error("does not fit again")
	}
}

// TestEveryMenuItemHasItsOwnKey: no two commands share a shortcut, and none is
// a key without a modifier, which the toolkit would never send.
func TestEveryMenuItemHasItsOwnKey(t *testing.T) {
	tb := setTable(t, verses(two))
	seen := map[string]string{}
	for _, c := range tb.w.menus.commands {
		if c.key == nil {
			continue
		}
		name := c.key.ShortcutName()
		if seen[name] != "" {
			t.Errorf("%q and %q share %s", seen[name], c.words, name)
		}
		seen[name] = c.words
		if k, ok := c.key.(fyne.KeyboardShortcut); !ok || k.Mod()&(ctrl|alt) == 0 {
			t.Errorf("%q has a key without a modifier", c.words)
		}
	}
}

// TestUndoShowsWhatItChanged, and a line that is out of sight is not at hand.
func TestUndoShowsWhatItChanged(t *testing.T) {
	tb := setDemo(t)
	before := tb.text()
	where := tb.d.spread
	tb.chord(key(ctrl, fyne.KeyK))
	tb.keys(fyne.KeyEnd)
	tb.chord(key(ctrl, fyne.KeyJ))
	tb.chord(key(alt, fyne.KeyLeft))
	tb.keys(fyne.KeyReturn)
	tb.wants(before)
	if tb.d.typing != nil || !strings.Contains(tb.d.said, "No line is at hand") {
		t.Errorf("typing %v, the foot says %q", tb.d.typing != nil, tb.d.said)
	}
	tb.d.undo()
	if tb.d.spread != where {
		t.Errorf("undo shows %v, want %v", tb.d.spread, where)
	}
}

// TestLineToLineFromAPageWithoutVerse goes on from a section's page, which has
// none, to the first line after it, and back from the next to the last before.
func TestLineToLineFromAPageWithoutVerse(t *testing.T) {
	tb := setDemo(t)
	contents := tb.d.of.Contents()
	tb.d.showPage(contents[0].Page)
	tb.w.session.ClearFocus()
	tb.keys(fyne.KeyDown)
	ref, ok := tb.w.session.Focus()
	if page, _ := tb.d.of.PageOfLine(ref); !ok || page != contents[1].Page {
		t.Errorf("down from page %d leads to page %d, %v; want %d", contents[0].Page, page, ok, contents[1].Page)
	}
	for i, e := range contents {
		if e.Section && i > 0 {
			tb.d.showPage(e.Page)
			tb.w.session.ClearFocus()
			tb.keys(fyne.KeyUp)
			if ref, ok = tb.w.session.Focus(); !ok || ref.Poem != contents[i-1].Poem {
				t.Errorf("up from section %q leads to poem %d, want %d", e.Title, ref.Poem, contents[i-1].Poem)
			}
		}
	}
}
