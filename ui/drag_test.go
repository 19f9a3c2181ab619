package ui

import (
	"image"
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"

	"headland/pagemodel"
	"headland/typeset"
	"headland/ui/session"
)

const two = "I was cold once.\nYou will not believe it."

func down(n int) image.Point { return image.Pt(0, n) }

// leading is a line's depth in device pixels.
func (tb *table) leading() int {
	return tb.d.plan.pixels(tb.d.of.Collection().Design().Leading)
}

func TestDragLeftShedsWordsIntoALineOfTheirOwn(t *testing.T) {
	tb := setTable(t, verses(two))
	tb.press(tb.ruleAt("I was"))
	tb.move(tb.endOf("I was", "was"))
	tb.wants(two) // nothing is committed while it is held
	if got := textOf(tb.d.of.Collection()); got != "I was\ncold once.\nYou will not believe it." {
		t.Errorf("the page shows %q", got)
	}
	if help := tb.d.help(); !strings.Contains(help, "I was / cold once.") || !strings.Contains(help, "in the poem") {
		t.Errorf("the foot says %q", help)
	}
	tb.release()
	tb.wants("I was\ncold once.\nYou will not believe it.")
	if again := reopened(t, tb); again != "I was\ncold once.\nYou will not believe it." {
		t.Errorf("the file holds %q", again)
	}
}

// reopened is the text of the file, opened beside the window.
func reopened(t *testing.T, tb *table) string {
	t.Helper()
	s, err := session.Open(tb.path)
	if err != nil {
		t.Fatal(err)
	}
	defer s.Close()
	return textOf(s.Collection())
}

func TestDragDownJoinsTheNextLine(t *testing.T) {
	tb := setTable(t, verses(two))
	tb.press(tb.ruleAt("I was"))
	tb.move(tb.endOf("I was", "was"))
	tb.move(tb.endOf("I was", "was").Add(down(tb.leading())))
	if !strings.Contains(tb.d.help(), "join") {
		t.Errorf("the foot says %q", tb.d.help())
	}
	tb.release()
	tb.wants("I was\ncold once. You will not believe it.")
}

// TestAWholeTailJoinsTheNextLine: with the hand on the line below, before where
// the turned tail begins, all of the tail goes down.
func TestAWholeTailJoinsTheNextLine(t *testing.T) {
	tb := setTable(t, verses(long+"\n"+two))
	side, tail := tb.row("grave")
	tb.press(tb.ruleAt("grave"))
	_, below := tb.row("I was")
	tb.move(tb.d.plan.fromPage(side, typeset.Point{X: tail.X - tail.Runs[0].Size/2, Y: below.Baseline}))
	tb.release()
	at := strings.Index(long, rowWords(tail))
	tb.wants(strings.TrimSpace(long[:at]) + "\n" + long[at:] + " " + two)
}

func TestDragRightGathersAndJoins(t *testing.T) {
	tb := setTable(t, verses(two))
	tb.press(tb.ruleAt("I was"))
	tb.move(tb.ruleAt("I was").Add(image.Pt(tb.d.plan.pixels(pagemodel.Pt(26)), 0)))
	tb.release()
	tb.wants("I was cold once. You\nwill not believe it.")
	tb.press(tb.ruleAt("I was"))
	tb.move(tb.ruleAt("I was").Add(image.Pt(900, 0)))
	tb.release()
	tb.wants("I was cold once. You will not believe it.")
}

func TestShiftBreaksInThisEdition(t *testing.T) {
	tb := setTable(t, verses(two))
	tb.press(tb.ruleAt("I was"))
	tb.held = fyne.KeyModifierShift
	tb.move(tb.endOf("I was", "cold"))
	if !strings.Contains(tb.d.help(), "in this edition") {
		t.Errorf("the foot says %q", tb.d.help())
	}
	tb.release()
	tb.wants(two)
	if got := tb.line("I was").Breaks(); len(got) != 1 || got[0] != len("I was cold ") {
		t.Errorf("breaks in this edition: %v", got)
	}
}

func TestShiftIsHeardWithoutMotion(t *testing.T) {
	tb := setTable(t, verses(two))
	tb.press(tb.ruleAt("I was"))
	tb.move(tb.endOf("I was", "cold"))
	tb.held = fyne.KeyModifierShift
	tb.d.KeyDown(&fyne.KeyEvent{Name: desktop.KeyShiftLeft})
	tb.frame()
	if !strings.Contains(tb.d.help(), "in this edition") {
		t.Errorf("the foot says %q", tb.d.help())
	}
	tb.d.FocusLost() // and a window that loses the keys lets go of all
	tb.frame()
	if !strings.Contains(tb.d.help(), "in the poem ·") {
		t.Errorf("the foot says %q", tb.d.help())
	}
}

func TestCtrlTurnsAnOverlongLineHere(t *testing.T) {
	tb := setTable(t, verses(long+"\n"+two))
	tb.press(tb.ruleAt("grave"))
	tb.held = fyne.KeyModifierShortcutDefault
	tb.move(tb.endOf("as if", "telling"))
	tb.release()
	tb.wants(long + "\n" + two)
	l := tb.line("as if")
	if turns := l.Turns(); !l.Kept() || len(turns) != 1 || !strings.HasPrefix(long[turns[0]:], "you the truth") {
		t.Errorf("kept %v, turns %v", l.Kept(), turns)
	}
}

func TestEscapePutsAllBack(t *testing.T) {
	tb := setTable(t, verses(two))
	before := tb.w.session.Committed()
	tb.press(tb.ruleAt("I was"))
	tb.move(tb.endOf("I was", "was"))
	tb.keys(fyne.KeyEscape)
	if tb.d.of != before {
		t.Error("the page is not as it was")
	}
	tb.move(tb.ruleAt("I was").Add(image.Pt(-60, 0)))
	if tb.w.session.Previewing() {
		t.Error("a motion after Escape is followed")
	}
	tb.release()
	tb.wants(two)
	if _, can := tb.w.session.UndoLabel(); can {
		t.Error("Escape left something to undo")
	}
	tb.press(tb.ruleAt("I was")) // and the hand works again
	tb.move(tb.endOf("I was", "was"))
	tb.release()
	tb.wants("I was\ncold once.\nYou will not believe it.")
}

func TestManyMotionsAreSetOnce(t *testing.T) {
	tb := setTable(t, verses(two))
	tb.press(tb.ruleAt("I was"))
	for _, word := range []string{"cold", "was", "I"} {
		tb.d.Dragged(&fyne.DragEvent{PointEvent: tb.at(tb.endOf("I was", word))})
	}
	if tb.w.session.Previewing() {
		t.Error("the page was set before the frame")
	}
	tb.release()
	tb.wants("I\nwas cold once.\nYou will not believe it.")
}

func TestTheRuleStandsStillWhenTaken(t *testing.T) {
	tb := setTable(t, verses(two))
	tb.press(tb.ruleAt("I was").Add(image.Pt(9, 3)))
	tb.move(tb.ruleAt("I was").Add(image.Pt(11, 3)))
	tb.release()
	tb.wants(two)
}

func TestUndoAndRedo(t *testing.T) {
	tb := setTable(t, verses(two))
	tb.press(tb.ruleAt("I was"))
	tb.move(tb.endOf("I was", "was"))
	tb.release()
	if got := tb.w.menus.undo.Label; got != "Undo break a line" {
		t.Errorf("the menu says %q", got)
	}
	tb.d.undo()
	tb.wants(two)
	tb.d.redo()
	tb.wants("I was\ncold once.\nYou will not believe it.")
}

func TestPullingAWordOpensAGap(t *testing.T) {
	tb := setTable(t, verses(two))
	half := tb.d.plan.pixels(gapStep.At(tb.d.of.Collection().Design().Size))
	tb.press(tb.onWord("I was", "cold"))
	tb.move(tb.hand.Add(image.Pt(3*half, 0)))
	if !strings.Contains(tb.d.help(), "1½ em") {
		t.Errorf("the foot says %q", tb.d.help())
	}
	tb.release()
	if gaps := tb.line("I was").Gaps(); len(gaps) != 1 || gaps[0] != (pagemodel.Gap{At: 6, Width: 3 * gapStep}) {
		t.Errorf("gaps %v", gaps)
	}
	tb.press(tb.onWord("I was", "cold"))
	tb.move(tb.hand.Add(image.Pt(-5*half, 0)))
	tb.release()
	if gaps := tb.line("I was").Gaps(); len(gaps) != 0 {
		t.Errorf("gaps %v after closing", gaps)
	}
}

func TestPullingTheFirstWordIndents(t *testing.T) {
	tb := setTable(t, verses(two))
	em := tb.d.plan.pixels(pagemodel.OneEm.At(tb.d.of.Collection().Design().Size))
	tb.press(tb.onWord("You will", "You"))
	tb.move(tb.hand.Add(image.Pt(2*em, 0)))
	tb.release()
	if got := tb.line("You will").Indent(); got != 2*pagemodel.OneEm {
		t.Errorf("indent %v", got)
	}
}

func TestAClickIsAClickThoughTheHandTrembles(t *testing.T) {
	tb := setTable(t, verses(two))
	tb.press(tb.onWord("I was", "cold"))
	tb.move(tb.hand.Add(image.Pt(3, 1)))
	tb.release()
	if gaps := tb.line("I was").Gaps(); len(gaps) != 0 {
		t.Errorf("gaps %v", gaps)
	}
	if ref, ok := tb.w.session.Focus(); !ok || ref.Line != tb.line("I was").ID() {
		t.Error("the line is not at hand")
	}
	if tb.d.word != len("I was ") {
		t.Errorf("the caret is at %d", tb.d.word)
	}
}

func TestStopsAfterADashWithinAWord(t *testing.T) {
	text := "a well-kept thing—then none"
	set := typeset.NewSetter(typeset.Bundled()).Set(nil, verses(text))
	page := set.Page(1)
	h, ok := takeRule(set, page, page.Rows[len(page.Rows)-2].Ref())
	if !ok {
		t.Fatal("the rule can't be taken")
	}
	var ends []string
	for _, s := range h.stops {
		ends = append(ends, text[:s.at])
	}
	want := "a|a well-|a well-kept|a well-kept thing—|a well-kept thing—then|" + text
	if got := strings.Join(ends, "|"); got != want {
		t.Errorf("stops %q, want %q", got, want)
	}
}

func TestEveryStopOfAnOverlongLineCanBeReached(t *testing.T) {
	tb := setTable(t, verses(long+"\n"+two))
	page := tb.d.page(1)
	_, row := tb.row("as if")
	h, ok := takeRule(tb.d.of, page, row.Ref())
	if !ok {
		t.Fatal("the rule can't be taken")
	}
	for i, s := range h.stops {
		r := &page.Rows[s.row]
		h.move(typeset.Point{X: s.x, Y: r.Baseline - sizeOf(r)/3}, keysDown{})
		if h.now != i {
			t.Errorf("the hand at stop %d (%q) takes stop %d", i, long[:s.at], h.now)
		}
		if e := h.edit(); e != nil {
			if _, err := e.Apply(tb.d.of.Collection()); err != nil {
				t.Errorf("stop %d: %v", i, err)
			}
		}
	}
}

func TestAReadOnlyBookSaysSo(t *testing.T) {
	tb := setTable(t, verses(two))
	s, err := session.Open(tb.path)
	if err != nil {
		t.Fatal(err)
	}
	second := tableFor(t, s)
	if _, only := s.ReadOnly(); !only {
		t.Fatal("a second window may write")
	}
	second.press(second.ruleAt("I was"))
	second.move(second.endOf("I was", "was"))
	if help := second.d.help(); !strings.Contains(help, "only be read") {
		t.Errorf("the foot says %q", help)
	}
	second.release()
	if help := second.d.help(); !strings.Contains(help, "only be read") {
		t.Errorf("after letting go the foot says %q", help)
	}
	second.wants(two)
}
