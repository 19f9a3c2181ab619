package ui

import (
	"image"
	"slices"
	"strings"
	"testing"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/test"

	"headland/pagemodel"
)

// laid is the first thing of a kind that lies over the desk.
func laid[T fyne.CanvasObject](tb *table) T {
	tb.t.Helper()
	for _, o := range test.LaidOutObjects(tb.overlay()) {
		if found, ok := o.(T); ok {
			return found
		}
	}
	var none T
	tb.t.Fatalf("no %T lies over the desk", none)
	return none
}

// clickIn presses a widget at a place within it and lets go.
func clickIn(w interface {
	MouseDown(*desktop.MouseEvent)
	MouseUp(*desktop.MouseEvent)
}, at fyne.Position) {
	e := &desktop.MouseEvent{PointEvent: fyne.PointEvent{Position: at}, Button: desktop.MouseButtonPrimary}
	w.MouseDown(e)
	w.MouseUp(e)
}

// Five lines that are longer than the measure, each in a stanza of its own.
var longLines = [...]string{
	"At four the street is nothing but the smell of what the rest of it will have for breakfast, warm",
	"and somebody is always at the shutter with a coin, and somebody is always only passing, only passing",
	"My hands are older than the rest of me by all the ovens they have reached into and taken something from",
	"Rye for the tall house, seven seeds for the widow, and for the night bus drivers anything that’s hot",
	"The last tray out is never quite the colour of the first, and no one who gets up at six can tell you why",
}

// decided is a book with a line unsettled, one kept and awake, one kept and
// asleep, one broken in the poem and one in this edition, done by keys.
func decided(t *testing.T) *table {
	t.Helper()
	tb := setTable(t, verses("The ovens wait.\n\n"+strings.Join(longLines[:], "\n\n")))
	for i, act := range []func(){
		func() {},
		func() { tb.chord(key(ctrl, fyne.KeyK)) },
		func() {
			tb.chord(key(ctrl, fyne.KeyK))
			tb.keys(fyne.KeyReturn)
			for range len(longLines[2]) - len("My hands are older") {
				tb.keys(fyne.KeyBackspace)
			}
			tb.keys(fyne.KeyReturn)
		},
		func() { tb.breakBefore(10, key(ctrl, fyne.KeyReturn)) },
		func() { tb.breakBefore(13, key(ctrlShift, fyne.KeyReturn)) },
	} {
		tb.d.goTo(tb.refOf(longLines[i]))
		act()
	}
	return tb
}

// breakBefore breaks the line at hand before a word, counted from 1.
func (tb *table) breakBefore(word int, chord fyne.Shortcut) {
	for range word {
		tb.keys(fyne.KeyRight)
	}
	tb.chord(chord)
}

// refOf is where the line with those words is.
func (tb *table) refOf(words string) pagemodel.LineRef {
	for _, p := range tb.w.session.Collection().Poems() {
		for _, l := range p.Lines() {
			if l.Text() == words {
				return pagemodel.LineRef{Poem: p.ID(), Line: l.ID()}
			}
		}
	}
	tb.t.Fatalf("no line says %q", words)
	return pagemodel.LineRef{}
}

// rowsListed are the words of the rows of the list that lies over the desk.
func (tb *table) rowsListed() []string {
	tb.t.Helper()
	var rows []string
	for _, r := range laid[*listing](tb).rows {
		rows = append(rows, r.words+" | "+r.under)
	}
	return rows
}

func TestTheDecisionsAreCountedAndListed(t *testing.T) {
	tb := decided(t)
	tb.chord(key(ctrlShift, fyne.KeyL))
	want := []string{"1 unsettled", "2 kept, 1 of them asleep", "1 broken in the poem", "1 in this edition"}
	if got := laid[*wordRow](tb).words; !slices.Equal(got, want) {
		t.Errorf("the counts are %q, want %q", got, want)
	}
	today := time.Now().Format("2 January 2006")
	rows := tb.rowsListed()
	for i, want := range []string{
		longLines[0] + " | Unsettled, ",
		longLines[1] + " | Kept · Trial, stanza 3, line 1, row ",
		"My hands are older | Kept, asleep: it does not turn now · Trial, stanza 4, line 1, row ",
		"Rye for the tall house, seven seeds for the / widow, and for the night bus drivers anything that’s hot | Broken in the poem · Trial, stanza 5, line 1, row ",
		longLines[4] + " | Broken in this edition · Trial, stanza 6, line 1, row ",
	} {
		if i >= len(rows) || !strings.HasPrefix(rows[i], want) {
			t.Fatalf("row %d of %q is not %q", i+1, rows, want)
		}
		if dated := strings.Contains(rows[i], today); dated != (i > 0) {
			t.Errorf("row %q has today’s date %v", rows[i], dated)
		}
	}
}

// TestTheDecisionsAreNarrowed by a state and by what is typed, each by itself and
// both together; Tab goes round.
func TestTheDecisionsAreNarrowed(t *testing.T) {
	tb := decided(t)
	tb.chord(key(ctrlShift, fyne.KeyL))
	for _, want := range []int{1, 2, 1, 1, 5} {
		tb.typed(fyne.KeyTab)
		if got := tb.rowsListed(); len(got) != want {
			t.Errorf("Tab lists %d of %q, want %d", len(got), got, want)
		}
	}
	tb.writeIn("trial line OLDER")
	if got := tb.rowsListed(); len(got) != 1 || !strings.HasPrefix(got[0], "My hands") {
		t.Errorf("the words typed list %q", got)
	}
	tb.typed(fyne.KeyTab)
	if got := tb.rowsListed(); len(got) != 0 {
		t.Errorf("of the unsettled, the words typed list %q", got)
	}
	tb.typed(fyne.KeyTab)
	if got := tb.rowsListed(); len(got) != 1 {
		t.Errorf("of the kept, the words typed list %q", got)
	}
}

// TestACountIsPressed: it narrows the list, and pressed again it lets all through.
// It is at least 24 units each way.
func TestACountIsPressed(t *testing.T) {
	tb := decided(t)
	tb.chord(key(ctrlShift, fyne.KeyL))
	counts := laid[*wordRow](tb)
	if counts.Size().Height < 24 {
		t.Errorf("a count is %v units deep", counts.Size().Height)
	}
	for i, p := range counts.places() {
		if wide := p[1] - p[0] + countGap; wide < 24 {
			t.Errorf("%q is %v units wide", counts.words[i], wide)
		}
	}
	middle := fyne.NewPos((counts.places()[1][0]+counts.places()[1][1])/2, 12)
	plain := slices.Clone(counts.draw(680, wordRowDepth).(*image.RGBA).Pix)
	clickIn(counts, middle)
	if got := tb.rowsListed(); len(got) != 2 {
		t.Errorf("the count of the kept lists %q", got)
	}
	if slices.Equal(plain, counts.draw(680, wordRowDepth).(*image.RGBA).Pix) {
		t.Error("the count in use looks as it did")
	}
	if _, typing := tb.w.win.Canvas().Focused().(*field); !typing {
		t.Error("what is typed then goes nowhere")
	}
	clickIn(counts, middle)
	if got := tb.rowsListed(); len(got) != 5 {
		t.Errorf("pressed again, it lists %q", got)
	}
}

func TestGoingToADecision(t *testing.T) {
	tb := decided(t)
	for _, going := range []func(){
		func() { tb.writeIn("edition", fyne.KeyReturn) },
		func() { clickIn(laid[*listing](tb), fyne.NewPos(40, 4*52+10)) },
	} {
		tb.keys(fyne.KeyHome)
		tb.w.session.ClearFocus()
		tb.chord(key(ctrlShift, fyne.KeyL))
		going()
		tb.frame()
		line, ok := tb.d.lineAtHand()
		if !ok || line.Text() != longLines[4] || tb.overlay() != nil {
			t.Errorf("%q is at hand, %v", line.Text(), ok)
		}
	}
}

func TestABookWithoutDecisionsSaysSo(t *testing.T) {
	tb := setTable(t, verses(two))
	tb.chord(key(ctrlShift, fyne.KeyL))
	if tb.overlay() != nil || !strings.Contains(tb.d.said, "nothing was decided") {
		t.Errorf("the foot says %q", tb.d.said)
	}
}

// TestAKeptLineThatTurnsElsewhereSaysWhy: it is unsettled again, at the foot, in
// the margin, in the list and in its menu, and can be let turn anew.
func TestAKeptLineThatTurnsElsewhereSaysWhy(t *testing.T) {
	tb := setTable(t, verses("The ovens wait.\n"+longLines[0]))
	tb.chord(key(ctrl, fyne.KeyDown))
	ref, _ := tb.w.session.Focus()
	tb.chord(key(ctrl, fyne.KeyK))
	was := tb.d.of.TurnWords(ref)
	if help := tb.d.help(); !strings.HasPrefix(help, "Kept · ") {
		t.Errorf("kept, the foot says %q", help)
	}
	tb.keys(fyne.KeyReturn, fyne.KeyHome)
	tb.write("Again, a")
	tb.keys(fyne.KeyDelete, fyne.KeyReturn)
	now := tb.d.of.TurnWords(ref)
	if was == now || tb.d.of.Unsettled() != 1 {
		t.Fatalf("it turned at %q and turns at %q", was, now)
	}
	why := "nsettled again: it turned at “" + was + "” when you let it turn; now it turns at “" + now + "” · "
	if help := tb.d.help(); !strings.HasPrefix(help, "U"+why) {
		t.Errorf("the foot says %q", help)
	}
	if marks := tb.d.signs(tb.d.page(1)).strokes; len(marks) != 1 || marks[0].letter() != "t" {
		t.Errorf("the margin has %v", marks)
	}
	var items []string
	for _, item := range tb.d.lineItems() {
		items = append(items, item.words)
	}
	if !slices.Contains(items, "Let the line turn: it is settled") {
		t.Errorf("its menu has %q", items)
	}
	tb.chord(key(ctrlShift, fyne.KeyL))
	if got := tb.rowsListed(); len(got) != 1 || !strings.Contains(got[0], why[:20]) {
		t.Errorf("the list has %q", got)
	}
	tb.typed(fyne.KeyEscape)
	tb.chord(key(ctrl, fyne.KeyK))
	if tb.d.of.Unsettled() != 0 || tb.line("Again").Turned() != now {
		t.Errorf("let turn anew, it is kept at %q", tb.line("Again").Turned())
	}
}

// TestASleepingLineSaysSo at the foot while it is at hand, and wakes with its
// turnover.
func TestASleepingLineSaysSo(t *testing.T) {
	tb := setTable(t, verses("The ovens wait.\n"+longLines[0]))
	tb.chord(key(ctrl, fyne.KeyDown))
	tb.chord(key(ctrl, fyne.KeyK))
	before := tb.d.help()
	d := tb.w.session.Collection().Design()
	d.Size, d.Leading = 7*pagemodel.Point, 9*pagemodel.Point
	tb.d.do(pagemodel.SetDesign{Design: d})
	if help := tb.d.help(); !strings.HasPrefix(help, "Kept, asleep: it does not turn now · ") {
		t.Errorf("the foot says %q", help)
	}
	tb.d.undo()
	if help := tb.d.help(); help != before {
		t.Errorf("awake again, the foot says %q, want %q", help, before)
	}
}

// TestTheSettledBookListsItsDecisions: the words at the foot that say that every
// line is settled are pressed, and a decision in the list after them.
func TestTheSettledBookListsItsDecisions(t *testing.T) {
	tb := setTable(t, verses("The ovens wait.\n"+long))
	tb.chord(key(ctrl, fyne.KeyDown))
	tb.chord(key(ctrl, fyne.KeyK))
	foot := tb.d.plan.footBand()
	tb.click(image.Pt(tb.d.plan.units(sideMargin+10), (foot.Min.Y+foot.Max.Y)/2))
	if got := tb.rowsListed(); len(got) != 1 || !strings.HasPrefix(got[0], long) {
		t.Errorf("the list has %q", got)
	}
}
