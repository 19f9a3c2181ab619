package ui

import (
	"fmt"
	"image"
	"slices"
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"

	"headland/pagemodel"
	"headland/typeset"
)

// loaves is a book of two sections of four poems each, of one page each, but for
// "Crust" and "Ash", which have two.
func loaves() *pagemodel.Collection {
	b := pagemodel.NewBuilder(pagemodel.About{Title: "Loaves", Poet: "Nobody"}, pagemodel.DefaultDesign())
	for i, title := range []string{"Rye", "Salt", "Crust", "Foil", "Peel", "Ash", "Lots", "Proof"} {
		if i%4 == 0 {
			b.Section([]string{"Night", "Morning"}[i/4], nil)
		}
		var stanzas []pagemodel.Stanza
		for s := range 3 + 6*(i%3/2) {
			lines := []pagemodel.Line{b.Line(fmt.Sprintf("the ovens keep their counsel, %d", s)), b.Line("and " + title + " is in the tray,"), b.Line("warm, and nobody counts.")}
			stanzas = append(stanzas, pagemodel.NewStanza(pagemodel.Verse, lines))
		}
		b.Poem(pagemodel.PoemHead{Title: title}, []pagemodel.Part{pagemodel.NewPart("", stanzas)})
	}
	return b.Collection()
}

// orderTable is a table on which the book is held by its order.
type orderTable struct {
	*table
	v *orderView
}

func setOrder(t *testing.T) *orderTable {
	t.Helper()
	tb := setTable(t, loaves())
	tb.w.askOrder()
	ot := &orderTable{tb, tb.d.order}
	ot.frame()
	return ot
}

// frame draws everything, as the toolkit does between two events.
func (ot *orderTable) frame() {
	for _, b := range ot.v.bands {
		b.draw(ot.v.plan.size.X, ot.v.plan.depth)
	}
	p := &ot.v.plan
	ot.v.drawHead(p.size.X, p.view.Min.Y)
	ot.v.drawFoot(p.size.X, p.size.Y-p.view.Max.Y+ot.v.strip().Dy())
	ot.v.drawSlip(200, 30)
}

// page is the middle of the nth page of a piece, from 0, on the desk.
func (ot *orderTable) page(title string, n int) image.Point {
	ot.t.Helper()
	p := &ot.v.plan
	for r := range p.rows {
		for _, b := range p.rows[r].bars {
			if b.piece.title == title && b.opens && n < len(b.cells) {
				at := p.pageRect(p.rows[r].cells[b.cells[n]])
				return at.Min.Add(at.Max).Div(2).Add(image.Pt(0, p.view.Min.Y+r*p.depth-ot.v.top))
			}
		}
	}
	ot.t.Fatalf("no row has %q", title)
	return image.Point{}
}

func (ot *orderTable) press(at image.Point, mod fyne.KeyModifier) {
	ot.v.MouseMoved(&desktop.MouseEvent{PointEvent: ot.at(at)})
	ot.v.MouseDown(&desktop.MouseEvent{PointEvent: ot.at(at), Button: desktop.MouseButtonPrimary, Modifier: mod})
}

func (ot *orderTable) click(at image.Point, mod fyne.KeyModifier) {
	ot.press(at, mod)
	ot.v.MouseUp(&desktop.MouseEvent{PointEvent: ot.at(at), Button: desktop.MouseButtonPrimary, Modifier: mod})
	ot.frame()
	ot.v.hand = orderHand{}
}

// drag moves the hand, with the button down, by way of a few places.
func (ot *orderTable) drag(from, to image.Point) {
	for i := 1; i <= 4; i++ {
		ot.v.Dragged(&fyne.DragEvent{PointEvent: ot.at(from.Add(to.Sub(from).Mul(i).Div(4)))})
		ot.frame()
	}
}

func (ot *orderTable) keys(names ...fyne.KeyName) {
	for _, n := range names {
		ot.v.TypedKey(&fyne.KeyEvent{Name: n})
		ot.frame()
	}
}

// order is the book as it is shown: its titles, a section's in capitals, and after
// a bar those that are left out.
func (ot *orderTable) order() string {
	var words []string
	for i := range ot.v.book.pieces {
		p := &ot.v.book.pieces[i]
		if words = append(words, p.title); p.head() {
			words[i] = strings.ToUpper(p.title)
		}
	}
	if len(ot.v.book.out) > 0 {
		words = append(words, "|")
	}
	for i := range ot.v.book.out {
		words = append(words, ot.v.book.out[i].title)
	}
	return strings.Join(words, " ")
}

func (ot *orderTable) wantOrder(want string) {
	ot.t.Helper()
	if got := ot.order(); got != want {
		ot.t.Errorf("the order shown is\n%s, want\n%s", got, want)
	}
}

// committed is how many steps the history has taken, by the label of the last.
func (ot *orderTable) undoLabel() string {
	label, _ := ot.w.session.UndoLabel()
	return label
}

const asMade = "NIGHT Rye Salt Crust Foil MORNING Peel Ash Lots Proof"

// TestAPoemIsMovedAcrossASectionByMouse: the pages follow before it is let go of,
// nothing is committed until then, and it is one step of the history.
func TestAPoemIsMovedAcrossASectionByMouse(t *testing.T) {
	ot := setOrder(t)
	ot.wantOrder(asMade)
	before := ot.w.session.Collection()
	from := ot.page("Foil", 0)
	ot.press(from, 0)
	ot.drag(from, ot.page("Ash", 1))
	const moved = "NIGHT Rye Salt Crust MORNING Peel Ash Foil Lots Proof"
	ot.wantOrder(moved)
	if !ot.w.session.Previewing() || ot.w.session.Collection() != before {
		t.Error("it is in the file before it is let go of")
	}
	upper, _ := ot.v.says()
	if !strings.HasPrefix(upper, "Move “Foil” before “Lots” · ") || !strings.Contains(upper, "page") {
		t.Errorf("the foot says %q", upper)
	}
	if row, _, ok := ot.v.stood(); !ok || row != 0 {
		t.Error("there is no slot where it stood")
	}
	ot.v.DragEnd()
	ot.frame()
	ot.wantOrder(moved)
	if got := ot.undoLabel(); got != "move “Foil” before “Lots”" || ot.w.session.Previewing() {
		t.Errorf("the last step is %q", got)
	}
	ot.v.hears(&fyne.ShortcutUndo{})
	ot.wantOrder(asMade)
	ot.v.hears(&fyne.ShortcutRedo{})
	ot.wantOrder(moved)
}

// TestEscapePutsWhatIsHeldBack, and the button that is still down does no more.
func TestEscapePutsWhatIsHeldBack(t *testing.T) {
	ot := setOrder(t)
	from := ot.page("Rye", 0)
	ot.press(from, 0)
	ot.drag(from, ot.page("Ash", 1))
	if ot.order() == asMade {
		t.Fatal("nothing was moved")
	}
	ot.keys(fyne.KeyEscape)
	ot.wantOrder(asMade)
	ot.drag(from, ot.page("Proof", 0))
	ot.v.DragEnd()
	ot.wantOrder(asMade)
	if ot.undoLabel() != "" || ot.d.order == nil {
		t.Errorf("the history has %q, or the order was left", ot.undoLabel())
	}
}

// TestTheSamePlacesByKeys moves the same poem by keys, into the same place.
func TestTheSamePlacesByKeys(t *testing.T) {
	ot := setOrder(t)
	ot.keys(fyne.KeyHome, fyne.KeyRight, fyne.KeyRight, fyne.KeyRight, fyne.KeyRight)
	if p, _ := ot.v.book.piece(ot.v.chosen[0]); p.title != "Foil" {
		t.Fatalf("%q is at hand", p.title)
	}
	right := key(ctrl, fyne.KeyRight)
	for range 3 {
		ot.w.run(&command{key: right, act: func() { t.Error("the menu's own command was done") }})
		ot.frame()
	}
	ot.wantOrder("NIGHT Rye Salt Crust MORNING Peel Ash Foil Lots Proof")
	ot.keys(fyne.KeyRight, fyne.KeyLeft, fyne.KeyReturn)
	if got := ot.undoLabel(); got != "move “Foil” before “Lots”" {
		t.Errorf("the last step is %q", got)
	}
	ot.v.moveBy(image.Pt(-1, 0))
	ot.keys(fyne.KeyEscape)
	ot.wantOrder("NIGHT Rye Salt Crust MORNING Peel Ash Foil Lots Proof")
}

// TestARunIsMoved: Shift takes more poems, and they move as one.
func TestARunIsMoved(t *testing.T) {
	ot := setOrder(t)
	ot.click(ot.page("Salt", 0), 0)
	ot.click(ot.page("Foil", 0), fyne.KeyModifierShift)
	if len(ot.v.chosen) != 3 {
		t.Fatalf("%d are at hand", len(ot.v.chosen))
	}
	from := ot.page("Salt", 0)
	ot.press(from, 0)
	ot.drag(from, ot.page("Proof", 0).Add(image.Pt(400, 0)))
	ot.v.DragEnd()
	ot.wantOrder("NIGHT Rye MORNING Peel Ash Lots Proof Salt Crust Foil")
	if got := ot.undoLabel(); got != "move 3 poems, “Salt” to “Foil”, to the end of the book" {
		t.Errorf("the last step is %q", got)
	}
	ot.keys(fyne.KeyHome, fyne.KeyRight, fyne.KeyRight, fyne.KeyRight)
	ot.held = fyne.KeyModifierShift
	ot.keys(fyne.KeyRight, fyne.KeyRight, fyne.KeyLeft)
	ot.held = 0
	if got := ot.v.book.name(ot.v.chosen); !strings.Contains(got, "2 poems, “Peel” to “Ash”") {
		t.Errorf("at hand are %s", got)
	}
}

// TestASectionIsMovedWithItsPoems, and lands between sections only.
func TestASectionIsMovedWithItsPoems(t *testing.T) {
	ot := setOrder(t)
	from := ot.page("Morning", 0)
	ot.press(from, 0)
	ot.drag(from, ot.page("Night", 0))
	ot.v.DragEnd()
	ot.wantOrder("MORNING Peel Ash Lots Proof NIGHT Rye Salt Crust Foil")
	if got := ot.undoLabel(); got != "move the section “Morning” before the section “Night”" {
		t.Errorf("the last step is %q", got)
	}
	m := newOrderMove(ot.v.book, &ot.v.plan, ot.v.book.ofSection(ot.v.book.pieces[0].id))
	if len(m.slots) != 2 {
		t.Errorf("a section can stand in %d places", len(m.slots))
	}
}

// TestLeftOutAndBack by mouse and by keys.
func TestLeftOutAndBack(t *testing.T) {
	ot := setOrder(t)
	from := ot.page("Ash", 0)
	ot.press(from, 0)
	ot.drag(from, image.Pt(700, ot.v.plan.view.Max.Y-10))
	const without = "NIGHT Rye Salt Crust Foil MORNING Peel Lots Proof | Ash"
	ot.wantOrder(without)
	ot.v.DragEnd()
	if got := ot.undoLabel(); got != "leave out “Ash”" {
		t.Errorf("the last step is %q", got)
	}
	ot.click(ot.page("Ash", 0), 0)
	ot.v.open()
	if ot.d.order == nil || !strings.Contains(ot.v.said, "has no page") {
		t.Errorf("a poem that is left out was opened, or %q is said", ot.v.said)
	}
	from = ot.page("Ash", 0)
	ot.press(from, 0)
	ot.drag(from, ot.page("Salt", 0).Sub(image.Pt(20, 0)))
	ot.v.DragEnd()
	ot.wantOrder("NIGHT Rye Ash Salt Crust Foil MORNING Peel Lots Proof")
	if got := ot.undoLabel(); got != "put “Ash” into the book before “Salt”" {
		t.Errorf("the last step is %q", got)
	}
	ot.keys(fyne.KeyDelete)
	ot.wantOrder("NIGHT Rye Salt Crust Foil MORNING Peel Lots Proof | Ash")
	if p, _ := ot.v.book.piece(ot.v.chosen[0]); p.title != "Salt" {
		t.Errorf("%q is at hand now", p.title)
	}
	ot.keys(fyne.KeyEnd)
	ot.v.moveBy(image.Pt(0, -1))
	ot.keys(fyne.KeyReturn)
	if len(ot.v.book.out) > 0 {
		t.Errorf("it is not taken back by keys: %s", ot.order())
	}
}

// TestOpeningAndLeaving: Enter opens the pages at what is at hand, a second press
// too; Escape leaves them as they lay.
func TestOpeningAndLeaving(t *testing.T) {
	ot := setOrder(t)
	lay := ot.w.session.Page()
	ot.keys(fyne.KeyEnd, fyne.KeyEscape)
	if ot.d.order != nil || ot.w.session.Page() != lay {
		t.Fatalf("Escape opens page %d", ot.w.session.Page())
	}
	if ot.w.win.Canvas().Focused() != fyne.Focusable(ot.d) {
		t.Error("the desk has not the keys")
	}
	ot.w.run(&command{act: ot.w.askOrder, book: true})
	ot.v = ot.d.order
	if ot.w.win.Canvas().Focused() != fyne.Focusable(ot.v) {
		t.Error("the order has not the keys")
	}
	ot.keys(fyne.KeyEnd, fyne.KeyReturn)
	last, _ := ot.w.session.Committed().PageOfPoem(pagemodel.PoemID(ot.v.chosen[0]))
	if ot.d.order != nil || ot.w.session.Page() != last {
		t.Errorf("Enter opens page %d, want %d", ot.w.session.Page(), last)
	}
	ot.w.askOrder()
	ot.v = ot.d.order
	at := ot.page("Crust", 1)
	ot.press(at, 0)
	ot.v.MouseUp(&desktop.MouseEvent{PointEvent: ot.at(at), Button: desktop.MouseButtonPrimary})
	ot.press(at, 0)
	if p, _ := ot.w.session.Committed().PageOfPoem(pagemodel.PoemID(ot.v.chosen[0])); ot.d.order != nil || ot.w.session.Page() != p {
		t.Errorf("a second press opens page %d", ot.w.session.Page())
	}
}

// TestWhatIsDoneOnThePagesGoesBackToThem, and what is not stays.
func TestWhatIsDoneOnThePagesGoesBackToThem(t *testing.T) {
	ot := setOrder(t)
	ot.w.run(&command{key: key(ctrl, fyne.KeyL), act: ot.w.otherLight, order: true})
	if ot.d.order == nil || ot.v.d.light != lamp {
		t.Error("the lamp was not lit over the order")
	}
	done := false
	ot.w.run(&command{key: key(ctrl, fyne.KeyG), act: func() { done = true }, book: true})
	if ot.d.order != nil || !done {
		t.Error("a command of the pages was not done on them")
	}
}

// TestRowsOfSignatures: every page of every signature lies in one place, in a
// window of any width, and leaves part between recto and verso.
func TestRowsOfSignatures(t *testing.T) {
	ot := setOrder(t)
	for _, width := range []float32{1400, 900, 640, 480} {
		ot.w.win.Resize(fyne.NewSize(width, 900))
		ot.v.arrange()
		ot.frame()
		p := &ot.v.plan
		next := 1
		for _, row := range p.rows[:p.books] {
			for i, c := range row.cells {
				if c.page != next || c.x+p.page.X > p.size.X {
					t.Errorf("%v wide, page %d lies at %d where %d was to", width, c.page, c.x, next)
				}
				next++
				if i == 0 {
					continue
				}
				apart := c.x - row.cells[i-1].x - p.page.X
				if (apart > 0) != (pagemodel.SideOf(c.page) == pagemodel.Verso) {
					t.Errorf("%v wide, page %d lies %d from the one before", width, c.page, apart)
				}
			}
		}
		if p.units(orderTake) < 24 || p.page.X < 24 {
			t.Errorf("%v wide, a poem is only %d wide to the hand", width, p.page.X)
		}
	}
}

// TestPiecesOfTheDemo: every poem of the demo has the pages that it stands on, and
// what wants the poet in it.
func TestPiecesOfTheDemo(t *testing.T) {
	tb := setDemo(t)
	set := tb.w.session.Committed()
	b := newOrderBook(set, nil)
	unsettled, turns := 0, 0
	for i := range b.pieces {
		p := &b.pieces[i]
		unsettled += p.unsettled
		if p.turns {
			turns++
		}
		for n := p.first; n <= p.last && !p.head(); n += p.step {
			rows := set.Page(n).Rows
			if !slices.ContainsFunc(rows, func(r typeset.Row) bool { return int64(r.Poem) == p.id }) {
				t.Errorf("%q is said to stand on page %d", p.title, n)
			}
		}
	}
	if unsettled != set.Unsettled() || turns == 0 {
		t.Errorf("%d lines are unsettled, want %d; %d poems turn the leaf", unsettled, set.Unsettled(), turns)
	}
}

// TestSmallPagesFillIn: at first paper, then ink; and a poem that moves keeps its
// pictures.
func TestSmallPagesFillIn(t *testing.T) {
	ot := setOrder(t)
	wanted := len(ot.v.pages.wanted)
	if wanted == 0 {
		t.Fatal("no small page is wanted")
	}
	for ot.v.pages.fill(ot.d.k, ot.v.plan.scale) {
	}
	ot.frame()
	if len(ot.v.pages.wanted) != 0 {
		t.Fatalf("%d small pages are still wanted", len(ot.v.pages.wanted))
	}
	ot.click(ot.page("Rye", 0), 0)
	ot.v.moveBy(image.Pt(1, 0))
	ot.frame()
	if n := len(ot.v.pages.wanted); n != 0 {
		t.Errorf("%d pages are drawn again for a poem that only moved", n)
	}
}

// TestSignatureNames go through the alphabet that printers sign with.
func TestSignatureNames(t *testing.T) {
	for n, want := range map[int]string{0: "A", 8: "I", 9: "K", 22: "Z", 23: "AA", 24: "BB"} {
		if got := signatureName(n); got != want {
			t.Errorf("signature %d is called %q, want %q", n, got, want)
		}
	}
}

// TestLinesOfTheOrderCanBeSeen on the desk in both lights (WCAG 2.2, 1.4.11: 3:1).
func TestLinesOfTheOrderCanBeSeen(t *testing.T) {
	ot := setOrder(t)
	for _, l := range []light{day, lamp} {
		ot.d.light = l
		if c := contrast(ot.v.sheetInk(), l.palette().desk); c < 3 {
			t.Errorf("by %v the sheets have a contrast of %.2f", l, c)
		}
	}
}
