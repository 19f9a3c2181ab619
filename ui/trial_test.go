package ui

import (
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"

	"headland/pagemodel"
)

// typed presses a key wherever the keys go.
func (tb *table) typed(names ...fyne.KeyName) {
	tb.t.Helper()
	for _, name := range names {
		k := tb.w.win.Canvas().Focused()
		if k == nil {
			tb.t.Fatal("nothing has the keys")
		}
		k.TypedKey(&fyne.KeyEvent{Name: name})
		tb.frame()
	}
}

// faulty is a book with an unfaced poem: a blank before it mends that.
func faulty(t *testing.T) *table {
	t.Helper()
	tb := setTable(t, verses(stanzas(14, 14, 10)))
	tb.chord(key(ctrlShift, fyne.KeyDown))
	if _, ok := tb.d.faultAtHand(); !ok {
		t.Fatal("no fault is at hand")
	}
	return tb
}

// TestARemedyIsTriedAndLeft: what is pointed at is seen on the page, and nothing
// of it stays.
func TestARemedyIsTriedAndLeft(t *testing.T) {
	tb := faulty(t)
	before, committed := tb.d.spread, tb.w.session.Collection()
	tb.chord(key(ctrl, fyne.KeyM))
	if tb.overlay() == nil || tb.w.session.Previewing() {
		t.Fatal("no remedies lie on the desk, or one is tried out unasked")
	}
	tb.typed(fyne.KeyDown)
	if !tb.w.session.Previewing() {
		t.Error("the one pointed at is not tried out")
	}
	tb.chord(&fyne.ShortcutUndo{}) // the toolkit tries the menu first
	tb.typed(fyne.KeyUp)
	if tb.w.session.Previewing() {
		t.Error("back at leaving all as it is, one is still tried out")
	}
	tb.typed(fyne.KeyDown, fyne.KeyEscape)
	if tb.overlay() != nil || tb.w.session.Previewing() || tb.w.session.Collection() != committed || tb.d.spread != before {
		t.Errorf("left, something stays: overlay %v, open at %v, was %v", tb.overlay(), tb.d.spread, before)
	}
	if tb.w.win.Canvas().Focused() != fyne.Focusable(tb.d) {
		t.Error("the desk does not have the keys again")
	}
}

// TestARemedyIsTaken: it is one step of history, and the fault is gone.
func TestARemedyIsTaken(t *testing.T) {
	tb := faulty(t)
	f, _ := tb.d.faultAtHand()
	remedies := tb.d.of.Remedies(f)
	if len(remedies) == 0 {
		t.Fatalf("nothing mends %+v", f)
	}
	committed := tb.w.session.Collection()
	tb.chord(key(ctrl, fyne.KeyM))
	tb.typed(fyne.KeyDown, fyne.KeyReturn)
	if tb.overlay() != nil || tb.w.session.Previewing() {
		t.Error("the remedies still lie on the desk")
	}
	for _, g := range tb.d.faults {
		if g.Kind == f.Kind && g.Line == f.Line {
			t.Errorf("still there: %+v", g)
		}
	}
	if label, ok := tb.w.session.UndoLabel(); !ok || label != remedies[0].Edit.Label() {
		t.Errorf("what can be undone is %q", label)
	}
	tb.d.undo()
	if tb.w.session.Collection() != committed && textOf(tb.w.session.Collection()) != textOf(committed) {
		t.Error("one undo does not take it back")
	}
}

// TestAPoemsPagesAreTriedByTheHand: a row under the mouse is tried out, pressed
// it is taken.
func TestAPoemsPagesAreTriedByTheHand(t *testing.T) {
	tb := setTable(t, verses(stanzas(14, 14, 10)))
	tb.keys(fyne.KeyDown)
	tb.chord(key(ctrlShift, fyne.KeyP))
	list := tb.listed()
	row := -1
	for i, r := range list.rows {
		if r.words == "Open on a verso" {
			row = i
		}
	}
	if row < 0 {
		t.Fatalf("the list has %v", list.rows)
	}
	over := &desktop.MouseEvent{PointEvent: fyne.PointEvent{Position: fyne.NewPos(20, float32(row)*rowDepth+5)}}
	list.MouseMoved(over)
	tb.frame()
	if !tb.w.session.Previewing() || tb.d.spread.Verso != 2 {
		t.Errorf("tried out %v, open at %v", tb.w.session.Previewing(), tb.d.spread)
	}
	if got := tb.d.signs(tb.d.page(2)).openings; len(got) != 1 || got[0].words != "verso" {
		t.Errorf("the margin says %v", got)
	}
	list.MouseDown(over)
	list.MouseUp(over)
	if tb.head().Start != pagemodel.OnVerso || tb.overlay() != nil {
		t.Errorf("taken, the poem opens on a %v", tb.head().Start)
	}
}

// listed is the listing on the scrap that lies on the desk.
func (tb *table) listed() *listing {
	tb.t.Helper()
	var found *listing
	var look func(o fyne.CanvasObject)
	look = func(o fyne.CanvasObject) {
		if l, ok := o.(*listing); ok {
			found = l
		}
		if c, ok := o.(*fyne.Container); ok {
			for _, o := range c.Objects {
				look(o)
			}
		}
	}
	look(tb.overlay())
	if found == nil {
		tb.t.Fatal("no list lies on the desk")
	}
	return found
}

// TestAScrapLeavesThePageAtHandInSight: it lies over the other one.
func TestAScrapLeavesThePageAtHandInSight(t *testing.T) {
	tb := faulty(t)
	tb.chord(key(ctrl, fyne.KeyM))
	box := tb.listed()
	page := tb.d.plan.sheets[pagemodel.Recto].page
	at := fyne.CurrentApp().Driver().AbsolutePositionForObject(box)
	if int(at.X+box.Size().Width) > page.Min.X {
		t.Errorf("the scrap reaches to %v, over page 1 that begins at %d", at.X+box.Size().Width, page.Min.X)
	}
}

// TestTheLongRowsOfAList: rows are as deep as their words need, and the chosen
// one is always in sight.
func TestTheLongRowsOfAList(t *testing.T) {
	tb := setTable(t, verses(two))
	l := newListing(tb.d.k, tb.d.light.palette(), fyne.NewSize(300, 200), func(int) {})
	l.Resize(fyne.NewSize(300, 200))
	var rows []listRow
	for i := range 12 {
		under := ""
		if i%2 == 1 {
			under = "a good many words, more than one row of them can hold at a width of three hundred"
		}
		rows = append(rows, listRow{words: "a row", under: under})
	}
	l.set(rows, 0)
	if words, under := l.wrapped(&rows[1]); len(words) != 1 || len(under) != 2 {
		t.Errorf("at a width of 300 they are %q and %q", words, under)
	}
	for _, by := range []int{1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1, -1, -1, -1, -1, -1, -1, -1, -1, -1, -1, -1} {
		l.step(by)
		y := float32(0)
		for i := l.top; i < l.chosen; i++ {
			y += l.deep(&l.rows[i])
		}
		if at, ok := l.rowAt(y + 1); !ok || at != l.chosen || l.chosen < l.top || y+l.deep(&l.rows[l.chosen]) > 200 {
			t.Errorf("row %d is chosen, and rows from %d are seen", l.chosen, l.top)
		}
	}
}
