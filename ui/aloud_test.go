package ui

import (
	"fmt"
	"strings"
	"testing"

	"fyne.io/fyne/v2"

	"headland/pagemodel"
	"headland/ui/session"
)

// aloudOn is the running orders that lie over the desk.
func (tb *table) aloudOn() *aloudView {
	tb.t.Helper()
	a, ok := tb.overlay().(*aloudView)
	if !ok {
		tb.t.Fatalf("%T lies over the desk, want the running orders", tb.overlay())
	}
	if img := a.draw(a.place.at.Dx(), a.place.at.Dy()); img.Bounds().Size() != a.place.at.Size() {
		tb.t.Errorf("they are drawn as %v", img.Bounds().Size())
	}
	return a
}

// inOrder are the poems of the running order in the file that was made last, by
// their names; what is marked to be dropped has a star.
func (tb *table) inOrder() string {
	tb.t.Helper()
	all := tb.w.session.Collection().Readings()
	if len(all) == 0 {
		return "none"
	}
	var names []string
	for _, item := range tb.w.session.Plan(all[len(all)-1]).Items {
		name := item.Title
		if item.Item.Drop {
			name += "*"
		}
		names = append(names, name)
	}
	return strings.Join(names, ", ")
}

// wantsOrder says whether the running order is that one, in the file and at hand.
func (tb *table) wantsOrder(want string) {
	tb.t.Helper()
	if got := tb.inOrder(); got != want {
		tb.t.Errorf("the running order is %s; want %s", got, want)
	}
}

// readsPoems makes a running order of poems of the demo, and lays it.
func (tb *table) readsPoems(slot int, names ...string) *aloudView {
	tb.t.Helper()
	r := pagemodel.Reading{Name: "At the Bridge", Slot: slot}
	for _, name := range names {
		p, err := tb.w.session.Collection().PoemCalled(name)
		if err != nil {
			tb.t.Fatal(err)
		}
		r.Items = append(r.Items, pagemodel.Item{Poem: p.ID()})
	}
	tb.edited(pagemodel.SetReading{Reading: r})
	tb.chord(key(ctrl, fyne.Key3))
	return tb.aloudOn()
}

// TestARunningOrderIsMadeByKeys from nothing: poems found by typing, what is said
// between, the slot, one moved, one dropped if short, one taken out and all undone.
func TestARunningOrderIsMadeByKeys(t *testing.T) {
	tb := setDemo(t)
	tb.chord(key(ctrl, fyne.Key3))
	tb.aloudOn()
	for _, name := range []string{"Sign", "Windowpane", "Toast", "Committal"} {
		tb.typeOnTop(name)
		tb.typed(fyne.KeyReturn)
	}
	tb.wantsOrder("Sign, Windowpane, Toast, Committal")
	tb.typed(fyne.KeyReturn)
	tb.writeIn("This one is for the oven")
	tb.nextField()
	tb.writeIn("45", fyne.KeyReturn)
	a := tb.aloudOn()
	if item := a.reading.Items[3]; item.Before != "This one is for the oven" || item.Talk != 45 || a.plan.Items[3].Talk != 45 {
		t.Errorf("before the last is said %q for %d s", item.Before, item.Talk)
	}
	tb.typed(fyne.KeyF2)
	tb.writeIn("At the Bridge")
	tb.nextField()
	tb.writeIn("for the launch")
	tb.nextField()
	tb.writeIn("28 November 2026")
	tb.nextField()
	tb.writeIn("4:30", fyne.KeyReturn)
	r := tb.aloudOn().reading
	if r.Name != "At the Bridge" || r.Occasion != "for the launch" || r.On != "2026-11-28" || r.Slot != 4*60+30 {
		t.Errorf("it is %q, %q, on %s, for %d s", r.Name, r.Occasion, r.On, r.Slot)
	}
	over := fmt.Sprintf("%s of 4:30 · %s over", clock(a.plan.Whole), clock(a.plan.Whole-4*60-30))
	if got := againstSlot(&a.plan); got != over {
		t.Errorf("it takes %q, want %q", got, over)
	}
	tb.chordOnTop(key(alt, fyne.KeyUp))
	tb.wantsOrder("Sign, Windowpane, Committal, Toast")
	tb.typed(fyne.KeyDown)
	tb.typeOnTop(" ")
	tb.wantsOrder("Sign, Windowpane, Committal, Toast*")
	if words := a.dropWords(); !a.plan.Items[3].Dropped || !strings.HasPrefix(words, "without “Toast”: ") || a.plan.Total >= a.plan.Whole {
		t.Errorf("over its slot, the foot says %q", words)
	}
	tb.typed(fyne.KeyUp, fyne.KeyDelete)
	tb.wantsOrder("Sign, Windowpane, Toast*")
	for _, want := range []string{
		"Sign, Windowpane, Committal, Toast*", "Sign, Windowpane, Committal, Toast", "Sign, Windowpane, Toast, Committal",
	} {
		tb.chordOnTop(&fyne.ShortcutUndo{})
		tb.wantsOrder(want)
	}
	tb.chordOnTop(&fyne.ShortcutRedo{})
	tb.wantsOrder("Sign, Windowpane, Committal, Toast")
	tb.typed(fyne.KeyEscape)
	if tb.overlay() != nil || tb.d.said != "" || tb.w.win.Canvas().Focused() != fyne.Focusable(tb.d) {
		t.Errorf("lifted, %T lies there", tb.overlay())
	}
	tb.wantsInFile("At the Bridge", 4)
}

// wantsInFile says whether the file, opened again, has a running order.
func (tb *table) wantsInFile(name string, items int) {
	tb.t.Helper()
	tb.w.show(nil)
	s, err := session.Open(tb.path)
	if err != nil {
		tb.t.Fatal(err)
	}
	defer func() { tb.w.show(s) }()
	if r, err := s.Collection().ReadingCalled(name); err != nil || len(r.Items) != items {
		tb.t.Errorf("the file has %v, %v", r, err)
	}
}

// TestLinesOfAPoemAreChosen, and a word of them is said otherwise, for reading only.
func TestLinesOfAPoemAreChosen(t *testing.T) {
	tb := setTable(t, verses(two))
	was := textOf(tb.w.session.Collection())
	tb.edited(pagemodel.SetReading{Reading: pagemodel.Reading{Name: "One", Items: []pagemodel.Item{{Poem: tb.poem().ID()}}}})
	tb.chord(key(ctrl, fyne.Key3))
	a := tb.aloudOn()
	whole := a.plan.Whole
	tb.chordOnTop(key(ctrl, fyne.KeyF))
	tb.writeIn("believe", fyne.KeyReturn)
	tb.typed(fyne.KeyReturn)
	if got := a.underItem(0); got != "line 2 of 2 only" || a.plan.Whole >= whole {
		t.Errorf("of the poem is read %q, in %s", got, clock(a.plan.Whole))
	}
	tb.chordOnTop(key(ctrl, fyne.KeyH))
	tb.writeIn("believe", fyne.KeyReturn)
	tb.writeIn("credit", fyne.KeyReturn)
	said := a.reading.Items[0].Said
	if len(said) != 1 || said[0].Word != "believe" || said[0].As != "credit" || !strings.Contains(a.underItem(0), "“believe” said as “credit”") {
		t.Errorf("said otherwise: %+v, %q", said, a.underItem(0))
	}
	line := tb.line("You will")
	if at := said[0].At; said[0].Line != line.ID() || !strings.HasPrefix(line.Text()[at:], "believe") {
		t.Errorf("it is noted at %d of line %d", at, said[0].Line)
	}
	if got := textOf(tb.w.session.Collection()); got != was {
		t.Errorf("the poem is now\n%s", got)
	}
	tb.chordOnTop(key(ctrl, fyne.KeyH))
	tb.writeIn("believe", fyne.KeyReturn)
	tb.writeIn("", fyne.KeyReturn)
	if got := a.reading.Items[0].Said; got != nil {
		t.Errorf("taken back, there are %v", got)
	}
}

// TestAnyNumberOfRunningOrders: one begins as the book in its order; Page Up and Page
// Down and the list go from one to another; one is thrown away and comes back.
func TestAnyNumberOfRunningOrders(t *testing.T) {
	tb := setDemo(t)
	a := tb.readsPoems(0, "Sign", "Toast")
	tb.chordOnTop(key(ctrl, fyne.KeyN))
	tb.writeIn("The book", fyne.KeyDown, fyne.KeyReturn)
	poems := 0
	for range tb.w.session.Collection().Poems() {
		poems++
	}
	if a.reading.Name != "The book" || len(a.reading.Items) != poems {
		t.Errorf("%q has %d items of %d", a.reading.Name, len(a.reading.Items), poems)
	}
	tb.typed(fyne.KeyEnd)
	if !a.seen(poems - 1) {
		t.Error("the last item is out of sight")
	}
	tb.typed(fyne.KeyPageUp)
	if a.reading.Name != "At the Bridge" || a.at != 0 {
		t.Errorf("Page Up goes to %q", a.reading.Name)
	}
	tb.chordOnTop(key(ctrl, fyne.KeyG))
	tb.writeIn("book", fyne.KeyReturn)
	if a.reading.Name != "The book" {
		t.Errorf("the list goes to %q", a.reading.Name)
	}
	tb.chordOnTop(key(ctrl, fyne.KeyDelete))
	if a.reading.Name != "At the Bridge" || len(tb.w.session.Collection().Readings()) != 1 {
		t.Errorf("thrown away, %q is at hand", a.reading.Name)
	}
	tb.chordOnTop(&fyne.ShortcutUndo{})
	if len(tb.w.session.Collection().Readings()) != 2 {
		t.Error("it did not come back")
	}
}

// TestARunningOrderIsReadFrom its beginning or from the poem at hand, and is had on
// paper; what lay there before has the keys again.
func TestARunningOrderIsReadFrom(t *testing.T) {
	tb := setDemo(t)
	a := tb.readsPoems(600, "Sign", "Windowpane")
	tb.typed(fyne.KeyDown)
	tb.chordOnTop(key(ctrlShift, fyne.KeyReturn))
	s, ok := tb.overlay().(*readingSheet)
	if !ok || s.item() != 1 {
		t.Fatalf("%T lies over the window", tb.overlay())
	}
	tb.typed(fyne.KeyEscape)
	if tb.overlay() != fyne.CanvasObject(a) || tb.w.win.Canvas().Focused() != fyne.Focusable(a) {
		t.Errorf("after it, %T lies there", tb.overlay())
	}
	tb.chordOnTop(key(ctrl, fyne.KeyP))
	if rows := tb.rowsListed(); len(rows) != 2 || !strings.HasPrefix(rows[1], "A card") {
		t.Errorf("on paper there are %q", rows)
	}
	tb.typed(fyne.KeyEscape)
	tb.aloudOn()
}

// TestWhatCanBeDoneStaysOnTheSheet in a narrow window too, in as many rows as it
// needs, below the leads.
func TestWhatCanBeDoneStaysOnTheSheet(t *testing.T) {
	tb := setDemo(t)
	a := tb.readsPoems(60, "Sign", "Toast")
	for _, size := range []fyne.Size{{Width: 1400, Height: 900}, {Width: 700, Height: 700}, {Width: 560, Height: 700}} {
		tb.w.win.Resize(size)
		a.arrange()
		for _, w := range a.place.words {
			end := w.x + a.px(tb.d.k.words(w.words, w.size, false).Width)
			if end > a.place.sheet.Max.X || w.base+a.place.units(5) > a.place.sheet.Max.Y {
				t.Errorf("at %v %q ends at %d, %d, the sheet at %v", size, w.words, end, w.base, a.place.sheet.Max)
			}
			if in := w.base - a.place.units(aloudWord-8); w.size == underSize && in < a.place.leads[0].Max.Y {
				t.Errorf("at %v %q begins at %d, over the leads", size, w.words, in)
			}
		}
	}
}

// TestASlotIsSaidAsPeopleSayIt, in seconds below a minute.
func TestASlotIsSaidAsPeopleSayIt(t *testing.T) {
	for seconds, want := range map[int]string{0: "no limit", 1: "1 second", 10: "10 seconds", 60: "1 minute", 90: "1:30 minutes", 1200: "20 minutes"} {
		if got := slotWords(seconds); got != want {
			t.Errorf("%d s are %q, want %q", seconds, got, want)
		}
	}
}
