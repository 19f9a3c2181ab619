package ui

import (
	"strings"
	"testing"

	"fyne.io/fyne/v2"

	"headland/pagemodel"
)

// threeStanzas is a poem of short stanzas that stands on one page.
const threeStanzas = "one\ntwo\nthree\n\nfour\nfive\n\nsix"

// stanzas is a text of so many stanzas of so many lines each.
func stanzas(lengths ...int) string {
	var text []string
	for _, n := range lengths {
		text = append(text, strings.TrimSuffix(strings.Repeat("a line of verse\n", n), "\n"))
	}
	return strings.Join(text, "\n\n")
}

// ties are the lines of the book that are kept with the one below.
func (tb *table) ties() string {
	var tied []string
	for _, p := range tb.w.session.Collection().Poems() {
		for _, l := range p.Lines() {
			if l.Tied() {
				tied = append(tied, l.Text())
			}
		}
	}
	return strings.Join(tied, " ")
}

// head is the head of the book's first poem.
func (tb *table) head() pagemodel.PoemHead {
	for _, p := range tb.w.session.Collection().Poems() {
		return p.Head()
	}
	return pagemodel.PoemHead{}
}

func TestKeepingLinesTogether(t *testing.T) {
	tb := setTable(t, verses(threeStanzas))
	stanza, below := key(ctrlShift, fyne.KeyW), key(ctrlShift, fyne.KeyK)
	tb.keys(fyne.KeyDown, fyne.KeyDown)
	for _, try := range []struct {
		press fyne.Shortcut
		want  string
	}{
		{below, "two"}, {stanza, "one two"}, {stanza, ""}, {stanza, "one two"}, {below, "one"},
	} {
		tb.chord(try.press)
		if got := tb.ties(); got != try.want {
			t.Fatalf("kept with the line below: %q, want %q", got, try.want)
		}
	}
	tb.d.undo()
	if got := tb.ties(); got != "one two" {
		t.Errorf("undo gives %q", got)
	}
	tb.keys(fyne.KeyDown)
	tb.chord(below) // over the stanza break
	if got := tb.ties(); got != "one two three" {
		t.Errorf("kept with the line below: %q", got)
	}
}

func TestWhatCantBeKeptTogetherIsSaid(t *testing.T) {
	tb := setTable(t, verses(threeStanzas))
	for range 6 {
		tb.keys(fyne.KeyDown)
	}
	tb.chord(key(ctrlShift, fyne.KeyK))
	if !strings.Contains(tb.d.said, "no line below") {
		t.Errorf("the foot says %q", tb.d.said)
	}
	tb.chord(key(ctrlShift, fyne.KeyW))
	if !strings.Contains(tb.d.said, "one line") || tb.ties() != "" {
		t.Errorf("the foot says %q, kept %q", tb.d.said, tb.ties())
	}
	tb.keys(fyne.KeyEscape)
	tb.chord(key(ctrlShift, fyne.KeyB))
	if tb.d.said != noLineWords {
		t.Errorf("the foot says %q", tb.d.said)
	}
}

// TestAPageBegunWithALine: the book opens where the line has gone, and the same
// key takes it back.
func TestAPageBegunWithALine(t *testing.T) {
	tb := setTable(t, verses(threeStanzas))
	tb.keys(fyne.KeyDown, fyne.KeyDown)
	tb.chord(key(ctrlShift, fyne.KeyB))
	ref, _ := tb.w.session.Focus()
	if page, _ := tb.d.of.PageOfLine(ref); page != 2 || tb.d.spread.Verso != 2 {
		t.Errorf("the line is on page %d, and the book lies open at %v", page, tb.d.spread)
	}
	if got := tb.d.signs(tb.d.page(2)).begins; len(got) != 1 || rowWords(&tb.d.page(2).Rows[got[0]]) != "two" {
		t.Errorf("the page begins with rows %v", got)
	}
	if got := tb.d.signs(tb.d.page(1)).end; got != "stanza goes on" {
		t.Errorf("page 1 says %q at its foot", got)
	}
	tb.chord(key(ctrlShift, fyne.KeyB))
	if tb.d.of.Extent() != 1 {
		t.Errorf("taken back, the book has %d pages", tb.d.of.Extent())
	}
	tb.keys(fyne.KeyUp)
	tb.chord(key(ctrlShift, fyne.KeyB)) // its first line: how the poem opens is another matter
	if !strings.Contains(tb.d.said, "begins its poem") {
		t.Errorf("the foot says %q", tb.d.said)
	}
}

// TestWhatIsSaidOfAPoem: each item of the menu is one step of history, ticked
// while it is so, and undo takes it back.
func TestWhatIsSaidOfAPoem(t *testing.T) {
	tb := setTable(t, verses(threeStanzas))
	tb.keys(fyne.KeyDown)
	said := 0
	for _, words := range [][]poemWord{startWords(), {blankWord()}, runWords(), formWords(), lieWords(), edgeWords()} {
		for _, w := range words {
			was := tb.head()
			if w.is(was) {
				continue
			}
			item := tb.command(w.menu).item
			item.Action()
			tb.frame()
			if !w.is(tb.head()) || !item.Checked {
				t.Errorf("%q: the head is %+v, ticked %v", w.menu, tb.head(), item.Checked)
			}
			tb.d.undo()
			if now := tb.head(); openingWords(now) != openingWords(was) || item.Checked {
				t.Errorf("%q undone: the head is %+v, ticked %v", w.menu, now, item.Checked)
			}
			said++
		}
	}
	if said != 17 {
		t.Errorf("%d things were said of the poem", said)
	}
}

// command is the menu's item of those words.
func (tb *table) command(words string) *command {
	tb.t.Helper()
	for _, c := range tb.w.menus.commands {
		if c.words == words {
			return c
		}
	}
	tb.t.Fatalf("the menu has no %q", words)
	return nil
}

func TestTheProposedFormSaysSo(t *testing.T) {
	tb := setTable(t, verses(stanzas(3, 3, 3)))
	tb.keys(fyne.KeyDown)
	tercets := tb.command("Tercets")
	if got := tercets.item.Label; !strings.Contains(got, "Shape Proposes") {
		t.Errorf("the menu says %q", got)
	}
	if tb.head().Form != pagemodel.NoForm {
		t.Error("it is declared unasked")
	}
	tercets.item.Action()
	if got := tercets.item.Label; got != "Tercets" || tb.head().Form != pagemodel.Tercets {
		t.Errorf("declared, the menu says %q", got)
	}
}

func TestAPoemSmallerAndBack(t *testing.T) {
	tb := setTable(t, verses(threeStanzas))
	tb.keys(fyne.KeyDown)
	smaller, larger := key(ctrlShift, fyne.KeyMinus), key(ctrlShift, fyne.KeyEqual)
	tb.chord(larger)
	if !strings.Contains(tb.d.said, "already") {
		t.Errorf("the foot says %q", tb.d.said)
	}
	tb.chord(smaller)
	tb.chord(smaller)
	if got := openingWords(tb.head()); got != "10 pt" {
		t.Errorf("twice smaller than 11 pt the poem is %q", got)
	}
	tb.chord(larger)
	if got := openingWords(tb.head()); got != "10½ pt" {
		t.Errorf("once larger it is %q", got)
	}
	tb.chord(larger)
	if tb.head().Size != 0 {
		t.Errorf("back at the book’s size, it has a size of its own: %v", tb.head().Size)
	}
	for range 9 {
		tb.chord(smaller)
	}
	if tb.head().Size != smallestPoem || !strings.Contains(tb.d.said, "no smaller") {
		t.Errorf("at its smallest it is %v, and the foot says %q", tb.head().Size, tb.d.said)
	}
}

// TestWithoutAPoemAtHand: nothing is said of a poem that could be another.
func TestWithoutAPoemAtHand(t *testing.T) {
	b := pagemodel.NewBuilder(pagemodel.About{}, pagemodel.DefaultDesign())
	for range 3 {
		b.Poem(pagemodel.PoemHead{}, []pagemodel.Part{pagemodel.NewPart("", []pagemodel.Stanza{
			pagemodel.NewStanza(pagemodel.Verse, []pagemodel.Line{b.Line("a line of verse")}),
		})})
	}
	tb := setTable(t, b.Collection())
	tb.chord(key(altOnly, fyne.Key2)) // alone on its spread
	if tb.head().Start != pagemodel.OnVerso {
		t.Error("the only poem on the open pages is not the one at hand")
	}
	tb.d.undo()
	tb.d.showPage(2)
	tb.chord(key(altOnly, fyne.Key3))
	if tb.d.said != noPoemWords {
		t.Errorf("the foot says %q", tb.d.said)
	}
}

// TestRefusedOverruleStays: where no line is at hand on the open pages, the book
// stays where it is open.
func TestRefusedOverruleStays(t *testing.T) {
	tb := setTable(t, verses(strings.TrimSpace(strings.Repeat("a loaf\n", 200))))
	tb.keys(fyne.KeyHome, fyne.KeyDown)
	if _, ok := tb.w.session.Focus(); !ok {
		t.Fatal("no line is at hand")
	}
	tb.keys(fyne.KeyEnd)
	open := tb.d.spread
	if _, in := tb.d.lineAtHand(); in {
		t.Fatal("the line at hand is on the last pages too")
	}
	tb.d.beginPage()
	if tb.d.spread != open {
		t.Errorf("refused, it opens the book at %v, not %v", tb.d.spread, open)
	}
}
