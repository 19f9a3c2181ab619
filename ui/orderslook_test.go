package ui

import (
	"slices"
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"

	"headland/pagemodel"
	"headland/typeset/order"
)

// lookKey lays the sheet for looking for an order.
var lookKey = key(ctrlShift, fyne.KeyF)

// walkListed goes to a row of a list by what it begins with, by keys.
func (tb *table) walkListed(l *listing, words string) {
	tb.t.Helper()
	to := slices.IndexFunc(l.rows, func(r listRow) bool { return strings.HasPrefix(r.words, words) })
	if to < 0 {
		tb.t.Fatalf("no row begins with %q", words)
	}
	for l.chosen < to {
		tb.onTop(fyne.KeyDown)
	}
	for l.chosen > to {
		tb.onTop(fyne.KeyUp)
	}
}

// askFor asks something of an order on the sheet, of poems by a word of each.
func (tb *table) askFor(l *listing, what string, poems ...string) {
	tb.t.Helper()
	tb.walkListed(l, "Ask: "+what)
	tb.onTop(fyne.KeyReturn)
	for _, p := range poems {
		tb.writeIn(p, fyne.KeyReturn)
	}
}

// look lays the sheet and gives its list.
func (tb *table) look() *listing {
	tb.t.Helper()
	tb.chord(lookKey)
	return laid[*listing](tb)
}

// TestAnOrderIsLookedForAndTaken by keys: what is asked is met, each better order
// is shown beside the present, nothing is changed until one is taken, and that is
// one step of the history.
func TestAnOrderIsLookedForAndTaken(t *testing.T) {
	tb := setTable(t, ovens())
	before := tb.names()
	l := tb.look()
	tb.askFor(l, "this one first", "window")
	tb.askFor(l, "these together", "salt", "receipt", "")
	var asked []string
	for _, r := range l.rows {
		if r.aside == "asked" {
			asked = append(asked, r.words)
		}
	}
	if got := strings.Join(asked, "; "); got != "“Window” first; “Salt” and “Receipt” together" {
		t.Fatalf("asked is %q", got)
	}
	tb.walkListed(l, "Look for it now")
	tb.onTop(fyne.KeyReturn)
	tb.settle()
	tb.frame()
	found := tb.listed()
	if len(found.rows) < 2 || found.rows[1].aside != "the best" || !strings.Contains(found.rows[1].under, "moved: ") {
		t.Fatalf("found is %+v", found.rows)
	}
	if tb.names() != before || !strings.Contains(tb.d.said, "Nothing better") {
		t.Errorf("before one is pointed at the book is %s, and the foot says %q", tb.names(), tb.d.said)
	}
	tb.onTop(fyne.KeyDown)
	tried := tb.names()
	if at := strings.Index(tried, "Salt, Receipt") + strings.Index(tried, "Receipt, Salt"); !strings.HasPrefix(tried, "Window, ") || at < 0 {
		t.Errorf("the pages show %s", tried)
	}
	tb.onTop(fyne.KeyReturn)
	if tb.names() != tried || tb.w.session.Previewing() || tb.overlay() != nil || !strings.Contains(tb.d.said, "“Window” from ") {
		t.Errorf("taken, the book is %s, and the foot says %q", tb.names(), tb.d.said)
	}
	tb.d.undo()
	if tb.names() != before {
		t.Errorf("undone, the book is %s", tb.names())
	}
}

// TestAnOrderThatIsFoundIsKept under a name while the book keeps its own; then
// nothing is taken.
func TestAnOrderThatIsFoundIsKept(t *testing.T) {
	tb := setTable(t, ovens())
	before := tb.names()
	l := tb.look()
	tb.askFor(l, "this one last", "first tray")
	tb.walkListed(l, "Look for it now")
	tb.onTop(fyne.KeyReturn)
	tb.settle()
	tb.onTop(fyne.KeyDown)
	tb.writeIn("tray last", fyne.KeyReturn)
	if !strings.Contains(tb.d.said, "Kept as “tray last”") {
		t.Errorf("the foot says %q", tb.d.said)
	}
	tb.onTop(fyne.KeyEscape)
	orders := tb.w.session.Collection().Orders()
	if tb.names() != before || tb.overlay() != nil || len(orders) != 1 {
		t.Fatalf("the book is %s, and kept is %v", tb.names(), orders)
	}
	tb.edited(pagemodel.UseOrder{Name: "tray last"})
	if !strings.HasSuffix(tb.names(), "First Tray") {
		t.Errorf("used, the book is %s", tb.names())
	}
}

// TestLookingIsStopped: in a book that could be searched for long, Escape stops
// it, what was found stays, and Escape again leaves all as it was.
func TestLookingIsStopped(t *testing.T) {
	tb := setDemo(t)
	before := tb.names()
	tb.look()
	tb.onTop(fyne.KeyReturn)
	tb.onTop(fyne.KeyEscape)
	tb.settle()
	if tb.overlay() == nil || !strings.Contains(tb.d.said, "Stopped") {
		t.Fatalf("%T lies over the desk, and the foot says %q", tb.overlay(), tb.d.said)
	}
	tb.onTop(fyne.KeyEscape)
	if tb.overlay() != nil || tb.names() != before || tb.w.session.Previewing() {
		t.Errorf("left, the book is %s", tb.names())
	}
}

// TestOrdersComeWhileOneIsPointedAt: it stays so when better ones come above it.
func TestOrdersComeWhileOneIsPointedAt(t *testing.T) {
	tb := setTable(t, ovens())
	var first pagemodel.PoemID
	for _, p := range tb.w.session.Collection().Poems() {
		first = p.ID()
		break
	}
	f := newFoundOrders(tb.w)
	f.begin([]order.Condition{order.Last(first)})
	tb.settle()
	tb.onTop(fyne.KeyDown)
	shown := tb.names()
	one := order.Found{Arrangement: tb.w.session.Collection().Arrangement(), Says: []string{"nothing is moved"}}
	f.hear(one)
	f.hear(one)
	tb.settle()
	if f.list.chosen != 3 || tb.names() != shown || f.list.rows[1].under != "nothing is moved" {
		t.Errorf("row %d is chosen, and the pages show %s", f.list.chosen, tb.names())
	}
}

// TestWhatContradictsIsSaid, and the sheet still asks it when it is laid again.
func TestWhatContradictsIsSaid(t *testing.T) {
	tb := setTable(t, ovens())
	l := tb.look()
	tb.askFor(l, "this one first", "window")
	tb.askFor(l, "this one first", "salt")
	tb.walkListed(l, "Look for it now")
	tb.onTop(fyne.KeyReturn)
	tb.settle()
	if len(tb.listed().rows) != 1 || !strings.Contains(tb.d.said, "Salt") {
		t.Errorf("found is %+v, and the foot says %q", tb.listed().rows, tb.d.said)
	}
	tb.onTop(fyne.KeyEscape)
	l = tb.look()
	tb.walkListed(l, "“Salt” first")
	tb.onTop(fyne.KeyDelete)
	if got := tb.w.orders.asked; len(got) != 1 || len(got[0].poems) != 1 {
		t.Errorf("asked is %v", got)
	}
}

// TestTheLookSheetByMouse: sections stay by one press, and no longer by another; a
// finder left comes back to the sheet.
func TestTheLookSheetByMouse(t *testing.T) {
	tb := setTable(t, ovens())
	l := tb.look()
	press := func(words string) {
		t.Helper()
		y := float32(0)
		for i := range l.rows {
			if strings.HasPrefix(l.rows[i].words, words) {
				at := fyne.PointEvent{Position: fyne.NewPos(20, y+5)}
				l.MouseDown(&desktop.MouseEvent{PointEvent: at})
				l.MouseUp(&desktop.MouseEvent{PointEvent: at})
				return
			}
			y += l.deep(&l.rows[i])
		}
		t.Fatalf("no row begins with %q", words)
	}
	press("Ask: sections as they are")
	if got := tb.w.orders.asked; len(got) != 1 || got[0].is().Words(tb.w.session.Collection()) != "sections as they are" {
		t.Fatalf("asked is %v", got)
	}
	press("Sections as they are")
	press("Ask: these two never side by side")
	tb.onTop(fyne.KeyEscape)
	if len(tb.w.orders.asked) != 0 || laid[*listing](tb) != l {
		t.Errorf("asked is %v", tb.w.orders.asked)
	}
	tb.onTop(fyne.KeyEscape)
	if tb.overlay() != nil || tb.w.win.Canvas().Focused() != fyne.Focusable(tb.d) {
		t.Error("the sheet is not left")
	}
}

// TestEveryWishIsACondition of its own words.
func TestEveryWishIsACondition(t *testing.T) {
	c := ovens()
	var ids []pagemodel.PoemID
	for _, p := range c.Poems() {
		ids = append(ids, p.ID())
	}
	said := map[string]bool{}
	for i := range wishKinds {
		a := wish{&wishKinds[i], ids[:min(2, wishKinds[i].most)]}
		said[a.is().Words(c)] = true
	}
	if len(said) != len(wishKinds) {
		t.Errorf("they say %v", said)
	}
}

// TestTollInWords says what an order costs, none of something too.
func TestTollInWords(t *testing.T) {
	toll := order.Toll{Blanks: 1, Unfaced: 0, Parted: 3, Extent: 84, Signatures: 6}
	if got := tollWords(toll); got != "84 pages in 6 signatures · 1 blank · no poem unfaced · 3 stanzas parted" {
		t.Errorf("it is said %q", got)
	}
}
