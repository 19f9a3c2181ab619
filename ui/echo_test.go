package ui

import (
	"image"
	"regexp"
	"slices"
	"strings"
	"testing"

	"fyne.io/fyne/v2"

	"headland/pagemodel"
	"headland/typeset/echoes"
)

// laidEchoes lays the echoes and gives them.
func (tb *table) laidEchoes() *echoView {
	tb.t.Helper()
	tb.chord(echoesKey)
	v, ok := tb.overlay().(*echoView)
	if !ok {
		tb.t.Fatalf("%T lies over the desk, and the foot says %q", tb.overlay(), tb.d.said)
	}
	return v
}

// markedOven is a book with the word oven marked, by keys.
func markedOven(t *testing.T) *table {
	t.Helper()
	tb := setTable(t, ovens())
	tb.w.session.SetFocus(tb.refOf("The oven hums."))
	tb.d.goTo(tb.refOf("The oven hums."))
	tb.keys(fyne.KeyRight)
	for tb.d.wordAtCaret(tb.line("The oven hums.")) != "oven" {
		tb.keys(fyne.KeyRight)
	}
	tb.chord(key(ctrl, fyne.KeyB))
	return tb
}

// TestAWordIsMarked by a key, and by it again no longer; both are undone.
func TestAWordIsMarked(t *testing.T) {
	tb := markedOven(t)
	marked := func() []pagemodel.Echo { return tb.w.session.Collection().Echoes() }
	if got := marked(); len(got) != 1 || got[0].Name != "oven" || !slices.Equal(got[0].Words, []string{"oven"}) {
		t.Fatalf("marked is %v", got)
	}
	if !strings.Contains(tb.d.said, "“oven” is marked") {
		t.Errorf("the foot says %q", tb.d.said)
	}
	tb.chord(key(ctrl, fyne.KeyB))
	if len(marked()) != 0 || !strings.Contains(tb.d.said, "no longer marked") {
		t.Errorf("marked is %v, and the foot says %q", marked(), tb.d.said)
	}
	tb.d.undo()
	if len(marked()) != 1 {
		t.Error("it is not marked again")
	}
	tb.keys(fyne.KeyEscape)
	tb.d.word = -1
	tb.chord(key(ctrl, fyne.KeyB))
	if len(marked()) != 1 {
		t.Error("without a word at hand the mark changes")
	}
}

// TestEchoesStandWhereTheirWordsDo: each place on its page and in its line, found
// again by reading the poems for the word.
func TestEchoesStandWhereTheirWordsDo(t *testing.T) {
	tb := markedOven(t)
	v := tb.laidEchoes()
	var want []pagemodel.LineRef
	word := regexp.MustCompile(`\bovens?\b`)
	for _, p := range tb.w.session.Collection().Poems() {
		for _, l := range p.Lines() {
			if word.MatchString(strings.ToLower(l.Text())) {
				want = append(want, pagemodel.LineRef{Poem: p.ID(), Line: l.ID()})
			}
		}
	}
	e := &v.all[0]
	if e.Name != "oven" || !e.Marked || len(e.Found) != len(want) || len(want) != 3 {
		t.Fatalf("%s stands at %v, want %v", e.Name, e.Found, want)
	}
	from, to := v.ends()
	for n, o := range e.Found {
		if page, _ := tb.d.of.PageOfLine(want[n]); o.Ref != want[n] || o.Page != page {
			t.Errorf("place %d is %v on page %d", n, o.Ref, o.Page)
		}
		if x := v.x(0, n); x < v.pageX(o.Page, 0) || x > v.pageX(o.Page, 1) || x < from || x > to {
			t.Errorf("the tick of page %d stands at %d", o.Page, x)
		}
	}
}

// TestEchoesByKeys: the places are walked, and the book is opened with the line at
// hand.
func TestEchoesByKeys(t *testing.T) {
	tb := markedOven(t)
	was := tb.d.spread
	v := tb.laidEchoes()
	tb.onTop(fyne.KeyEnd)
	if v.place(0) != len(v.all[0].Found)-1 {
		t.Errorf("place %d is at hand", v.place(0))
	}
	tb.onTop(fyne.KeyRight, fyne.KeyLeft)
	o, _ := v.occurrence()
	if v.place(0) != len(v.all[0].Found)-2 || !strings.Contains(v.placeTitle(), "Peel, page ") {
		t.Errorf("place %d is at hand, %q", v.place(0), v.placeTitle())
	}
	tb.onTop(fyne.KeyReturn)
	if ref, ok := tb.w.session.Focus(); !ok || ref != o.Ref || !tb.d.inSight(ref) || tb.overlay() != nil {
		t.Errorf("opened, %v is at hand", ref)
	}
	tb.d.showPage(max(was.Recto, was.Verso))
	tb.laidEchoes()
	tb.onTop(fyne.KeyDown, fyne.KeyPageDown, fyne.KeyUp, fyne.KeyHome)
	tb.chordOnTop(echoesKey)
	if tb.overlay() != nil || tb.d.spread != was || tb.d.said != "" {
		t.Errorf("left, the book lies open at %v", tb.d.spread)
	}
}

// TestEchoesByMouse: a tick is pressed, then the line below; the words beside it
// take the mark off.
func TestEchoesByMouse(t *testing.T) {
	tb := markedOven(t)
	v := tb.laidEchoes()
	at := image.Pt(v.x(0, 2), v.rowTop(0)+v.units(echoRow/2))
	pressOver(&v.laidOver, v, at)
	if v.place(0) != 2 || !strings.HasPrefix(tb.d.said, "Page ") {
		t.Errorf("place %d is at hand, and the foot says %q", v.place(0), tb.d.said)
	}
	o, _ := v.occurrence()
	pressOver(&v.laidOver, v, middle(v.lineAt()))
	if ref, ok := tb.w.session.Focus(); !ok || ref != o.Ref || tb.overlay() != nil {
		t.Errorf("opened, %v is at hand", ref)
	}
	v = tb.laidEchoes()
	pressOver(&v.laidOver, v, middle(v.markAt()))
	if got := tb.w.session.Collection().Echoes(); len(got) != 0 {
		t.Errorf("marked is %v", got)
	}
}

// TestAnEchoThatWasFoundIsMarked in the view, and unmarked there.
func TestAnEchoThatWasFoundIsMarked(t *testing.T) {
	tb := setDemo(t)
	v := tb.laidEchoes()
	tb.onTop(fyne.KeyDown, fyne.KeyDown)
	name, places := v.all[v.at].Name, len(v.all[v.at].Found)
	if v.all[v.at].Marked {
		t.Fatalf("%s is marked", name)
	}
	tb.onTop(fyne.KeyInsert)
	e := &v.all[v.at]
	if e.Name != name || !e.Marked || len(e.Found) != places || len(tb.w.session.Collection().Echoes()) != 1 {
		t.Errorf("at hand is %s, marked %v, at %d places, want %d", e.Name, e.Marked, len(e.Found), places)
	}
	tb.onTop(fyne.KeyDelete)
	if e := &v.all[v.at]; e.Name != name || e.Marked || len(tb.w.session.Collection().Echoes()) != 0 {
		t.Errorf("at hand is %s, marked %v", e.Name, e.Marked)
	}
}

// TestALineIsMarkedUnderAName: the line, then its poem; the view shows both as
// places of their own kind.
func TestALineIsMarkedUnderAName(t *testing.T) {
	tb := setTable(t, ovens())
	ref := tb.refOf("A pinch of it.")
	tb.d.goTo(ref)
	ask := key(ctrlShift, fyne.KeyI)
	tb.chord(ask)
	tb.writeIn("white", fyne.KeyReturn)
	tb.chord(ask)
	tb.writeIn("wh", fyne.KeyTab, fyne.KeyDown, fyne.KeyReturn)
	got := tb.w.session.Collection().Echoes()
	if len(got) != 1 || got[0].Name != "white" || !slices.Equal(got[0].Lines, []pagemodel.LineRef{ref}) || !slices.Equal(got[0].Poems, []pagemodel.PoemID{ref.Poem}) {
		t.Fatalf("marked is %v", got)
	}
	v := tb.laidEchoes()
	if n := len(v.all[0].Found); n != 2 || !v.whole(0, 0) || !v.whole(0, 1) {
		t.Errorf("it has %d places", n)
	}
	tb.onTop(fyne.KeyEscape)
	tb.chord(ask)
	if rows := laid[*listing](tb); len(rows.rows) == 0 {
		t.Error("nothing is listed")
	}
	tb.writeIn("white", fyne.KeyReturn)
	if got := tb.w.session.Collection().Echoes(); len(got) != 1 || len(got[0].Lines) != 0 || !strings.Contains(tb.d.said, "no longer") {
		t.Errorf("taken off, marked is %v", got)
	}
}

// TestAWordIsMarkedUnderANameOfItsOwn: an image in several words, all named where
// it is shown.
func TestAWordIsMarkedUnderANameOfItsOwn(t *testing.T) {
	tb := setTable(t, ovens())
	for _, at := range [...]struct{ line, word string }{{"The oven is a mouth.", "mouth"}, {"The peel goes in.", "peel"}} {
		tb.d.goTo(tb.refOf(at.line))
		for tb.keys(fyne.KeyRight); tb.d.wordAtCaret(tb.line(at.line)) != at.word; {
			tb.keys(fyne.KeyRight)
		}
		tb.chord(key(ctrlShift, fyne.KeyI))
		tb.writeIn("the fire", fyne.KeyTab, fyne.KeyTab, fyne.KeyReturn)
	}
	if got := tb.w.session.Collection().Echoes(); len(got) != 1 || !slices.Equal(got[0].Words, []string{"mouth", "peel"}) {
		t.Fatalf("marked is %v", got)
	}
	v := tb.laidEchoes()
	if words := v.markedWords(&v.all[0]); words != "2 words: mouth, peel" || len(v.all[0].Found) != 2 {
		t.Errorf("it is said %q, at %d places", words, len(v.all[0].Found))
	}
}

// TestEchoesAreDrawn in both lights and windows of every width: the rows do not
// lie over the line, whose words are inked on its page's side.
func TestEchoesAreDrawn(t *testing.T) {
	tb := setDemo(t)
	for _, size := range []image.Point{{1400, 900}, {1000, 700}, {560, 800}} {
		tb.w.win.Resize(fyne.NewSize(float32(size.X), float32(size.Y)))
		tb.frame()
		v := tb.laidEchoes()
		tb.onTop(fyne.KeyPageDown, fyne.KeyPageDown)
		img := v.draw(v.view.Dx(), v.view.Dy()).(*image.RGBA)
		colors, on := tb.d.light.palette(), v.lineAt()
		if inkedIn(img, on, colors.ink) == 0 || inkedIn(img, on, colors.mark) == 0 || !on.In(img.Rect) {
			t.Errorf("%v: the line at %v is not inked and under-ruled", size, on)
		}
		last := v.first + v.rowsSeen() - 1
		if end := v.rowTop(last) + v.units(echoRow); v.at < v.first || v.at > last || end > v.markAt().Min.Y {
			t.Errorf("%v: the rows end at %d, and echo %d of %d to %d is at hand", size, end, v.at, v.first, last)
		}
		tb.onTop(fyne.KeyEscape)
		tb.w.otherLight()
	}
}

// TestSpacingInWords: how near an echo comes, and how often it would be expected.
func TestSpacingInWords(t *testing.T) {
	e := echoes.Echo{Found: make([]echoes.Occurrence, 4), Poems: 3, Expected: 1.2, Nearest: echoes.Gap{Poems: 2, Pages: 3}}
	if got := spacingWords(&e); got != "in 3 poems · nearest: 2 poems apart, 3 pages on · the language would have it about once" {
		t.Errorf("it is said %q", got)
	}
	e.Nearest, e.Expected = echoes.Gap{Poems: 1}, 0
	if got := spacingWords(&e); got != "in 3 poems · nearest: in the next poem, on one page" {
		t.Errorf("it is said %q", got)
	}
}
