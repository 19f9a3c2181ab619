package ui

import (
	"slices"
	"strings"
	"testing"

	"fyne.io/fyne/v2"

	"headland/pagemodel"
)

// matterOn lays the sheet of the prelims and end matter.
func (tb *table) matterOn() *matterSheet {
	tb.t.Helper()
	tb.w.askMatter()
	l, ok := tb.overlay().(*leaf)
	if !ok {
		tb.t.Fatalf("%T lies over the desk, want a leaf", tb.overlay())
	}
	return l.hand.(*matterSheet)
}

// page is a page of the book's prelims or end matter.
func (tb *table) matterPage(kind pagemodel.MatterKind) (pagemodel.MatterPage, bool) {
	return tb.w.session.Collection().Matter().Page(kind)
}

// openWords are the words on the open pages.
func (tb *table) openWords() string {
	var words strings.Builder
	for _, s := range tb.d.plan.sheets {
		page := tb.d.page(s.number)
		for i := range page.Rows {
			words.WriteString(rowWords(&page.Rows[i]) + "\n")
		}
	}
	return words.String()
}

// TestMatterByKeys puts a title page in, writes a dedication line by line, and
// takes it out again: every step is one of the history, and the page shows it.
func TestMatterByKeys(t *testing.T) {
	tb := setTable(t, verses("one loaf\ntwo loaves"))
	s := tb.matterOn()
	tb.walkTo(s.leaf, string(pagemodel.DedicationPage))
	tb.onTop(fyne.KeyRight, fyne.KeyDown, fyne.KeyDown)
	tb.typeOnTop("for the early")
	if words := tb.openWords(); !strings.Contains(words, "for the early") {
		t.Errorf("while it is typed the page shows %q", words)
	}
	if page, _ := tb.matterPage(pagemodel.DedicationPage); len(page.Text) > 0 {
		t.Error("what is only typed is in the book")
	}
	tb.onTop(fyne.KeyReturn)
	tb.typeOnTop("and the late")
	tb.onTop(fyne.KeyReturn, fyne.KeyReturn, fyne.KeyUp)
	page, _ := tb.matterPage(pagemodel.DedicationPage)
	if want := []string{"for the early", "and the late"}; !slices.Equal(page.Text, want) {
		t.Errorf("the dedication is %q", page.Text)
	}
	tb.walkTo(s.leaf, string(pagemodel.DedicationPage))
	tb.onTop(fyne.KeyLeft)
	if _, in := tb.matterPage(pagemodel.DedicationPage); in {
		t.Error("the dedication is still in the book")
	}
	tb.onTop(fyne.KeyEscape)
	if tb.overlay() != nil {
		t.Error("the sheet still lies there")
	}
	tb.d.undo()
	if page, _ := tb.matterPage(pagemodel.DedicationPage); len(page.Text) != 2 {
		t.Errorf("undone, the dedication is %q", page.Text)
	}
}

// TestMatterLinesPartAndJoin parts a line at the caret, joins it again, and
// puts one back with Escape.
func TestMatterLinesPartAndJoin(t *testing.T) {
	tb := setTable(t, verses("one loaf"))
	edit := pagemodel.SetMatter{Matter: pagemodel.Matter{}.With(pagemodel.MatterPage{Kind: pagemodel.Imprint, Text: []string{"set by night"}})}
	if err := tb.w.session.Do(edit); err != nil {
		t.Fatal(err)
	}
	wants := func(lines ...string) {
		t.Helper()
		if page, _ := tb.matterPage(pagemodel.Imprint); !slices.Equal(page.Text, lines) {
			t.Errorf("the imprint is %q, want %q", page.Text, lines)
		}
	}
	s := tb.matterOn()
	tb.walkTo(s.leaf, string(pagemodel.Imprint))
	tb.onTop(fyne.KeyDown, fyne.KeyDown, fyne.KeyReturn, fyne.KeyHome, fyne.KeyRight, fyne.KeyRight, fyne.KeyRight, fyne.KeyReturn)
	wants("set", " by night")
	tb.onTop(fyne.KeyBackspace)
	wants("set by night")
	tb.typeOnTop("!")
	tb.onTop(fyne.KeyEscape)
	wants("set by night")
	tb.onTop(fyne.KeyDelete)
	wants()
}

// TestMatterByMouse presses pages in and out and writes the book's title.
func TestMatterByMouse(t *testing.T) {
	tb := setTable(t, verses("one loaf"))
	s := tb.matterOn()
	tb.clickRow(s.leaf, "half-title", 1)
	tb.clickRow(s.leaf, string(pagemodel.ContentsPage), 0)
	for _, kind := range []pagemodel.MatterKind{pagemodel.HalfTitle, pagemodel.ContentsPage} {
		if _, in := tb.matterPage(kind); !in {
			t.Errorf("there is no %s", kind)
		}
	}
	if words := tb.openWords(); !strings.Contains(words, "Contents") {
		t.Errorf("the book does not lie open at the contents, but at %q", words)
	}
	tb.clickRow(s.leaf, "prelims’ folios", 1)
	tb.clickRow(s.leaf, "in the contents", 1)
	if m := tb.w.session.Collection().Matter(); !m.Roman || !m.Parts {
		t.Errorf("the matter is %v", m)
	}
	tb.clickRow(s.leaf, "poet", 0)
	tb.onTop(fyne.KeyEnd)
	tb.typeOnTop(" at All")
	tb.clickRow(s.leaf, "half-title", 0)
	if about := tb.w.session.Collection().About(); about.Poet != "Nobody at All" {
		t.Errorf("the poet is %q", about.Poet)
	}
	if _, in := tb.matterPage(pagemodel.HalfTitle); in {
		t.Error("the half-title is still in the book")
	}
}

// TestMatterPaste pastes several lines into a page.
func TestMatterPaste(t *testing.T) {
	tb := setTable(t, verses("one loaf"))
	s := tb.matterOn()
	tb.walkTo(s.leaf, string(pagemodel.Acknowledgements))
	tb.onTop(fyne.KeyRight, fyne.KeyDown, fyne.KeyDown)
	tb.w.app.Clipboard().SetContent("to the ovens\n\nand the street\n")
	tb.w.run(tb.w.menus.commands[slices.IndexFunc(tb.w.menus.commands, func(c *command) bool { return c.words == "Paste" })])
	tb.onTop(fyne.KeyReturn, fyne.KeyReturn, fyne.KeyDown)
	if page, _ := tb.matterPage(pagemodel.Acknowledgements); !slices.Equal(page.Text, []string{"to the ovens", "", "and the street"}) {
		t.Errorf("the acknowledgements are %q", page.Text)
	}
}

// TestPageOfMatter finds each piece of the book's prelims and end matter on a
// page of its own, in their order.
func TestPageOfMatter(t *testing.T) {
	tb := setTable(t, verses("one loaf\ntwo loaves"))
	var m pagemodel.Matter
	for _, kind := range pagemodel.MatterKinds {
		m = m.With(pagemodel.MatterPage{Kind: kind, Text: []string{"words of the " + string(kind)}})
	}
	if err := tb.w.session.Do(pagemodel.SetMatter{Matter: m}); err != nil {
		t.Fatal(err)
	}
	for _, kind := range pagemodel.MatterKinds {
		page, ok := tb.w.session.Setting().PageOfMatter(kind)
		if !ok {
			t.Errorf("the %s is nowhere", kind)
			continue
		}
		tb.d.showPage(page)
		var words strings.Builder
		for _, r := range tb.d.page(page).Rows {
			words.WriteString(rowWords(&r) + "\n")
		}
		if !strings.Contains(words.String(), "words of the "+string(kind)) {
			t.Errorf("the %s is said to be on page %d, which shows %q", kind, page, words.String())
		}
	}
}
