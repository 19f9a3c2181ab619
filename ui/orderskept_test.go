package ui

import (
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"

	"headland/pagemodel"
)

// keptKey lays the list of the kept orders.
var keptKey = key(ctrlShift, fyne.KeyO)

// names are the titles of the book's poems in order, as it is shown.
func (tb *table) names() string { return namesOf(tb.d.of.Collection()) }

func namesOf(c *pagemodel.Collection) string {
	var all []string
	for _, p := range c.Poems() {
		all = append(all, p.Name())
	}
	return strings.Join(all, ", ")
}

// kept lays the list of the kept orders, all of them counted.
func (tb *table) kept() *listing {
	tb.t.Helper()
	tb.chord(keptKey)
	tb.settle()
	tb.frame()
	return tb.listed()
}

// swap puts the first poem of the book behind its second one, in one edit.
func (tb *table) swap() {
	tb.t.Helper()
	a := tb.w.session.Collection().Arrangement()
	order := slices.Clone(a.Order)
	at := slices.IndexFunc(order, func(id int64) bool { return id > 0 })
	order[at], order[at+1] = order[at+1], order[at]
	tb.edited(pagemodel.Rearrange{Arrangement: pagemodel.Arrangement{Order: order, LeftOut: a.LeftOut}})
}

// TestOrdersAreKeptAndUsed by keys: kept under a name, shown on the pages while it
// is pointed at, left, and used as one step of the history.
func TestOrdersAreKeptAndUsed(t *testing.T) {
	tb := setTable(t, ovens())
	before := tb.names()
	tb.chord(keptKey)
	tb.writeIn("as submitted", fyne.KeyReturn)
	tb.settle()
	if got := tb.w.session.Collection().Orders(); len(got) != 1 || got[0].Name != "as submitted" || got[0].On == "" {
		t.Fatalf("kept is %v", got)
	}
	if row := tb.listed().rows[1]; row.words != "as submitted" || row.aside != "the book’s order" {
		t.Errorf("it is listed as %+v", row)
	}
	tb.onTop(fyne.KeyEscape)
	tb.swap()
	swapped := tb.names()
	l := tb.kept()
	if row := l.rows[1]; row.aside != "" || !strings.Contains(row.under, "1 poem stands elsewhere") {
		t.Errorf("it is listed as %+v", row)
	}
	if !strings.Contains(l.rows[0].under, " pages in ") || !strings.Contains(l.rows[0].under, "unfaced") {
		t.Errorf("the book's order is listed as %+v", l.rows[0])
	}
	tb.onTop(fyne.KeyDown)
	if tb.names() != before || !tb.w.session.Previewing() || !strings.Contains(tb.d.said, "Enter uses it") {
		t.Errorf("pointed at, the pages show %s, and the foot says %q", tb.names(), tb.d.said)
	}
	tb.onTop(fyne.KeyEscape)
	if tb.names() != swapped || tb.overlay() != nil {
		t.Errorf("left, the book is %s", tb.names())
	}
	tb.kept()
	tb.onTop(fyne.KeyDown, fyne.KeyReturn)
	if tb.names() != before || tb.w.session.Previewing() || tb.overlay() != nil || !strings.Contains(tb.d.said, "as submitted") {
		t.Errorf("used, the book is %s, and the foot says %q", tb.names(), tb.d.said)
	}
	tb.d.undo()
	if tb.names() != swapped {
		t.Errorf("undone, the book is %s", tb.names())
	}
}

// TestKeptOrdersByMouse: one is pointed at and then pressed.
func TestKeptOrdersByMouse(t *testing.T) {
	tb := setTable(t, ovens())
	before := tb.names()
	tb.edited(pagemodel.KeepOrder{Name: "as submitted"})
	tb.swap()
	l := tb.kept()
	at := fyne.PointEvent{Position: fyne.NewPos(20, l.deep(&l.rows[0])+5)}
	l.MouseMoved(&desktop.MouseEvent{PointEvent: at})
	if tb.names() != before || !tb.w.session.Previewing() {
		t.Errorf("pointed at, the pages show %s", tb.names())
	}
	l.MouseDown(&desktop.MouseEvent{PointEvent: at})
	l.MouseUp(&desktop.MouseEvent{PointEvent: at})
	if tb.names() != before || tb.w.session.Previewing() || tb.overlay() != nil {
		t.Errorf("pressed, the book is %s", tb.names())
	}
}

// TestPoemsThatCameInSince are named before the order is used, and are left out by
// it.
func TestPoemsThatCameInSince(t *testing.T) {
	tb := setTable(t, ovens())
	tb.edited(pagemodel.KeepOrder{Name: "early"})
	tb.w.addManuscripts([]string{manuscriptIn(t, "more.md", "# More\n\n## Lease\n\nThe lease is up.\n\n## Flue\n\nThe flue draws.\n")})
	for tb.overlay() != nil {
		tb.onTop(fyne.KeyEscape)
	}
	if !strings.Contains(tb.names(), "Lease") || !strings.Contains(tb.names(), "Flue") {
		t.Fatalf("the book is %s", tb.names())
	}
	l := tb.kept()
	if under := l.rows[1].under; !strings.Contains(under, "“Lease” and 1 other came in since and are left out") {
		t.Errorf("it is listed with %q", under)
	}
	tb.onTop(fyne.KeyDown, fyne.KeyReturn)
	if strings.Contains(tb.names(), "Lease") || !strings.Contains(tb.d.said, "“Lease” and 1 other") {
		t.Errorf("the book is %s, and the foot says %q", tb.names(), tb.d.said)
	}
}

// TestAKeptOrderIsDropped by a key, once its name is begun to be typed.
func TestAKeptOrderIsDropped(t *testing.T) {
	tb := setTable(t, ovens())
	tb.edited(pagemodel.KeepOrder{Name: "early"})
	tb.swap()
	tb.kept()
	tb.typeOnTop("ear")
	if l := tb.listed(); l.chosen != 1 || !tb.w.session.Previewing() {
		t.Errorf("typed, row %d is chosen", l.chosen)
	}
	tb.onTop(fyne.KeyDelete)
	tb.settle()
	if len(tb.w.session.Collection().Orders()) != 0 || tb.w.session.Previewing() {
		t.Error("it is still kept, or shown")
	}
	if l := tb.listed(); len(l.rows) != 1 {
		t.Errorf("%d orders are listed", len(l.rows))
	}
}

// TestFewestMoved against every way of taking poems out, for orders of up to seven.
func TestFewestMoved(t *testing.T) {
	rnd := rand.New(rand.NewPCG(4, 9))
	for range 200 {
		n := 2 + rnd.IntN(6)
		before, after := make([]int64, n), make([]int64, n)
		for i, at := range rnd.Perm(n) {
			before[i], after[i] = int64(i+1), int64(at+1)
		}
		best := n
		for set := range 1 << n {
			in := func(id int64) bool { return set>>(id-1)&1 == 1 }
			kept := slices.DeleteFunc(slices.Clone(after), func(id int64) bool { return !in(id) })
			if slices.IsSorted(kept) {
				best = min(best, n-len(kept))
			}
		}
		if got := fewestMoved(before, after); got != best {
			t.Fatalf("from %v to %v it takes %d, want %d", before, after, got, best)
		}
	}
	if got := fewestMoved([]int64{-1, 2, 3, -4, 5}, []int64{-4, 5, 3, 9}); got != 1 {
		t.Errorf("sections and strangers count: %d", got)
	}
}

// TestHeldByItsOrder: where the book is held by its order, a kept order is shown
// there and left there, and hinges and echoes go from there to the pages.
func TestHeldByItsOrder(t *testing.T) {
	tb := setTable(t, ovens())
	before := tb.names()
	tb.edited(pagemodel.KeepOrder{Name: "as submitted"})
	tb.swap()
	tb.chord(key(ctrl, fyne.Key2))
	held := tb.d.order
	if held == nil {
		t.Fatal("the book is not held by its order")
	}
	tb.kept()
	tb.onTop(fyne.KeyDown)
	if got := held.book.set.Collection(); namesOf(got) != before || tb.d.order != held {
		t.Errorf("shown is %s", namesOf(got))
	}
	tb.onTop(fyne.KeyEscape)
	if got := held.book.set.Collection(); namesOf(got) == before || tb.w.win.Canvas().Focused() != fyne.Focusable(held) {
		t.Errorf("left, shown is %s, and %T has the keys", namesOf(got), tb.w.win.Canvas().Focused())
	}
	for _, k := range []fyne.Shortcut{hingesKey, echoesKey} {
		tb.chord(key(ctrl, fyne.Key2))
		tb.chord(k)
		tb.onTop(fyne.KeyEscape)
		if tb.d.order == nil || tb.overlay() != nil {
			t.Error("Escape does not come back to the order")
		}
		tb.chord(k)
		tb.onTop(fyne.KeyReturn)
		if ref, ok := tb.w.session.Focus(); tb.d.order != nil || !ok || !tb.d.inSight(ref) {
			t.Error("Enter does not open the pages")
		}
	}
}

// TestKeptOrdersHaveTheRoomThereIs in a small window: all of a few in sight, once
// they are counted, and many no deeper than between the head and the foot.
func TestKeptOrdersHaveTheRoomThereIs(t *testing.T) {
	tb := setTable(t, ovens())
	tb.w.win.Resize(fyne.NewSize(900, 700))
	for i := range 4 {
		tb.edited(pagemodel.KeepOrder{Name: string(rune('a' + i))})
	}
	l := tb.kept()
	if got := l.seen(); got != 5 {
		t.Errorf("%d of 5 are in sight in %v", got, l.Size())
	}
	tb.typed(fyne.KeyEscape)
	for i := range 20 {
		tb.edited(pagemodel.KeepOrder{Name: string(rune('e' + i))})
	}
	l = tb.kept()
	if room := float32(tb.d.plan.foot - tb.d.plan.view.Min.Y); l.Size().Height > room || l.Size().Height < room/2 {
		t.Errorf("many are %v deep where there is room for %v", l.Size().Height, room)
	}
}
