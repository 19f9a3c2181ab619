package ui

import (
	"slices"
	"strings"
	"testing"

	"fyne.io/fyne/v2"

	"headland/pagemodel"
)

// night is a poem of two stanzas, for versions.
const night = "The ovens wait all night\nfor someone to come down.\nNobody comes.\n\nA van turns in the yard,\nits lamps on the wet wall."

// versioned is a book with a variant "long" kept of its one poem; since then the
// first line was broken and the last retyped.
func versioned(t *testing.T) *table {
	t.Helper()
	tb := setTable(t, verses(night))
	tb.keys(fyne.KeyDown)
	tb.chord(key(ctrlShift, fyne.KeyA))
	tb.writeIn("long", fyne.KeyReturn)
	tb.edited(pagemodel.Break{LineRef: tb.versionLineRef("The ovens"), At: len("The ovens "), In: pagemodel.InPoem})
	tb.edited(pagemodel.Retype{LineRef: tb.versionLineRef("its lamps"), Text: "its lamps along the wet wall."})
	return tb
}

const nightNow = "The ovens\nwait all night\nfor someone to come down.\nNobody comes.\n\nA van turns in the yard,\nits lamps along the wet wall."

// edited does an edit.
func (tb *table) edited(e pagemodel.Edit) {
	tb.t.Helper()
	if err := tb.w.session.Do(e); err != nil {
		tb.t.Fatal(err)
	}
	tb.frame()
}

// versionLineRef is the line that begins with the words.
func (tb *table) versionLineRef(words string) pagemodel.LineRef {
	tb.t.Helper()
	for _, p := range tb.w.session.Collection().Poems() {
		for _, l := range p.Lines() {
			if strings.HasPrefix(l.Text(), words) {
				return pagemodel.LineRef{Poem: p.ID(), Line: l.ID()}
			}
		}
	}
	tb.t.Fatalf("no line begins %q", words)
	return pagemodel.LineRef{}
}

// versionsListed is the list of versions that lies on the desk.
func (tb *table) versionsListed() *versionRows {
	tb.t.Helper()
	var found *versionRows
	var look func(o fyne.CanvasObject)
	look = func(o fyne.CanvasObject) {
		if l, ok := o.(*versionRows); ok {
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
		tb.t.Fatalf("%T lies on the desk, no list of versions", tb.overlay())
	}
	return found
}

// names are the rows of a list.
func (r *versionRows) names() []string {
	var names []string
	for _, row := range r.rows {
		names = append(names, row.words)
	}
	return names
}

// poem is the book's only poem, as the file has it.
func (tb *table) poem() *pagemodel.Poem {
	tb.t.Helper()
	for _, p := range tb.w.session.Collection().Poems() {
		return p
	}
	tb.t.Fatal("the book has no poem")
	return nil
}

// shownText is the text as the pages show it.
func (tb *table) shownText() string { return textOf(tb.d.of.Collection()) }

// TestAVariantIsSeenAndUsed by keys: pointed at it stands on the page; Escape
// leaves nothing of it; Enter puts it into the book and keeps what was there; one
// undo is enough.
func TestAVariantIsSeenAndUsed(t *testing.T) {
	tb := versioned(t)
	tb.wants(nightNow)
	committed, open := tb.w.session.Collection(), tb.d.spread
	tb.chord(key(ctrlShift, fyne.KeyV))
	if got := tb.versionsListed().names(); !slices.Equal(got, []string{inBookWords, "long"}) {
		t.Fatalf("listed are %q", got)
	}
	if got := tb.shownText(); got != night || !tb.w.session.Previewing() {
		t.Errorf("the page shows %q", got)
	}
	if under := tb.versionsListed().rows[1].under; under != "2 lines differ" {
		t.Errorf("of the variant is said %q", under)
	}
	tb.typed(fyne.KeyUp)
	if got := tb.shownText(); got != nightNow || tb.w.session.Previewing() {
		t.Errorf("with the book’s own chosen, the page shows %q", got)
	}
	tb.typed(fyne.KeyDown, fyne.KeyEscape)
	if tb.overlay() != nil || tb.w.session.Previewing() || tb.w.session.Collection() != committed || tb.d.spread != open {
		t.Error("left, the list leaves something of what it showed")
	}
	tb.chord(key(ctrlShift, fyne.KeyV))
	tb.typed(fyne.KeyReturn)
	tb.wants(night)
	if tb.overlay() != nil || !strings.Contains(tb.d.said, "long") {
		t.Errorf("used, %T lies there, and the foot says %q", tb.overlay(), tb.d.said)
	}
	c, id := tb.w.session.Collection(), tb.poem().ID()
	if kept := c.Variants(id); c.VariantName(id) != "long" || len(kept) != 1 || kept[0].Name != "as it stood" {
		t.Errorf("in the book is %q, kept are %v", c.VariantName(id), kept)
	}
	tb.chord(&fyne.ShortcutUndo{})
	tb.wants(nightNow)
	if tb.w.session.Collection().VariantName(id) != "" {
		t.Error("undone, the book’s version still has the name")
	}
}

// TestAVariantIsNamedAndDropped, each a step of history.
func TestAVariantIsNamedAndDropped(t *testing.T) {
	tb := versioned(t)
	id := tb.poem().ID()
	tb.chord(key(ctrlShift, fyne.KeyV))
	tb.typed(fyne.KeyF2)
	tb.writeIn("in one breath", fyne.KeyReturn)
	if got := tb.versionsListed().names(); !slices.Equal(got, []string{inBookWords, "in one breath"}) {
		t.Errorf("named, the list has %q", got)
	}
	tb.typed(fyne.KeyUp, fyne.KeyF2)
	tb.writeIn("in one BREATH", fyne.KeyReturn)
	if tb.w.session.Collection().VariantName(id) != "" {
		t.Error("two versions have one name")
	}
	tb.writeIn("broken", fyne.KeyReturn)
	if got := tb.versionsListed().names(); !slices.Equal(got, []string{"broken", "in one breath"}) {
		t.Errorf("named, the list has %q", got)
	}
	tb.typed(fyne.KeyDelete)
	if len(tb.w.session.Collection().Variants(id)) != 1 {
		t.Error("the version in the book was dropped")
	}
	tb.typed(fyne.KeyDown, fyne.KeyDelete)
	if len(tb.w.session.Collection().Variants(id)) != 0 || tb.overlay() != nil || !strings.Contains(tb.d.said, "in one breath") {
		t.Errorf("dropped, %T lies there, and the foot says %q", tb.overlay(), tb.d.said)
	}
	for range 3 {
		tb.chord(&fyne.ShortcutUndo{})
	}
	c := tb.w.session.Collection()
	if kept := c.Variants(id); len(kept) != 1 || kept[0].Name != "long" || c.VariantName(id) != "" {
		t.Errorf("undone three times, kept are %v, in the book is %q", kept, c.VariantName(id))
	}
}

// TestANameIsAskedUntilItWillDo: a taken name is refused in words, and nothing is
// kept when the question is left.
func TestANameIsAskedUntilItWillDo(t *testing.T) {
	tb := versioned(t)
	id := tb.poem().ID()
	tb.chord(key(ctrlShift, fyne.KeyA))
	tb.writeIn("LONG", fyne.KeyReturn)
	tb.writeIn("", fyne.KeyReturn)
	if tb.overlay() == nil || len(tb.w.session.Collection().Variants(id)) != 1 {
		t.Error("a name that is taken, or none, is kept")
	}
	tb.writeIn("longer", fyne.KeyEscape)
	if tb.overlay() != nil || len(tb.w.session.Collection().Variants(id)) != 1 {
		t.Error("the question is left, and a variant is kept")
	}
}

// TestEveryStateIsThere, latest first, what was undone too; one is brought back
// as a step of history.
func TestEveryStateIsThere(t *testing.T) {
	tb := versioned(t)
	tb.chord(&fyne.ShortcutUndo{})
	tb.chord(key(ctrlShift, fyne.KeyE))
	list := tb.versionsListed()
	if n := len(list.rows); n != 3 {
		t.Fatalf("%d states are listed: %q", n, list.names())
	}
	for i, want := range []string{"undone", inBookWords, "as it came in"} {
		if row := list.rows[i]; !strings.Contains(row.under, want) || row.aside == "" {
			t.Errorf("state %d: %+v, want %q", i, row, want)
		}
	}
	if list.chosen != 1 || tb.w.session.Previewing() {
		t.Errorf("at first state %d is chosen", list.chosen)
	}
	tb.typed(fyne.KeyUp)
	if got := tb.shownText(); got != nightNow {
		t.Errorf("the page shows %q", got)
	}
	tb.typed(fyne.KeyDown, fyne.KeyDown)
	if got := tb.shownText(); got != night {
		t.Errorf("the page shows %q", got)
	}
	before := tb.text()
	tb.typed(fyne.KeyReturn)
	tb.wants(night)
	tb.chord(&fyne.ShortcutUndo{})
	tb.wants(before)
}

// TestVersionsAreRefusedInWords: none kept, nothing but what came in, no poem at
// hand.
func TestVersionsAreRefusedInWords(t *testing.T) {
	tb := setTable(t, verses(night))
	for _, name := range [...]fyne.KeyName{fyne.KeyV, fyne.KeyE} {
		tb.keys(fyne.KeyDown)
		tb.chord(key(ctrlShift, name))
		if tb.overlay() != nil || tb.d.said == "" {
			t.Errorf("%s: %T lies there, and the foot says %q", name, tb.overlay(), tb.d.said)
		}
	}
	empty := setTable(t, pagemodel.NewBuilder(pagemodel.About{}, pagemodel.DefaultDesign()).Collection())
	for _, name := range [...]fyne.KeyName{fyne.KeyV, fyne.KeyE, fyne.KeyA} {
		empty.chord(key(ctrlShift, name))
		if empty.overlay() != nil || empty.d.said != noPoemWords {
			t.Errorf("%s: %T lies there, and the foot says %q", name, empty.overlay(), empty.d.said)
		}
	}
}
