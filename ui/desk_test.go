package ui

import (
	"image"
	"path/filepath"
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"

	"headland/pagemodel"
	"headland/ui/session"
)

func setDemo(t *testing.T) *table {
	t.Helper()
	s, err := session.Demo(filepath.Join(t.TempDir(), "demo.headland"))
	if err != nil {
		t.Fatal(err)
	}
	return tableFor(t, s)
}

func rightButton(at fyne.PointEvent) *desktop.MouseEvent {
	return &desktop.MouseEvent{PointEvent: at, Button: desktop.MouseButtonSecondary}
}

func TestAPageIsDrawnAgainOnlyWhenItLooksOtherwise(t *testing.T) {
	tb := setDemo(t)
	tb.d.nextLeaf()
	size := tb.d.plan.sheets[pagemodel.Recto].seen.Size()
	first := tb.d.drawRecto(size.X, size.Y)
	if tb.d.drawRecto(size.X, size.Y) != first {
		t.Error("drawn again though nothing has changed")
	}
	ref, ok := tb.d.lineInSight(true)
	if !ok {
		t.Fatal("no line is in sight")
	}
	tb.w.session.SetFocus(ref)
	if tb.d.drawRecto(size.X, size.Y) == first {
		t.Error("not drawn again though a line is at hand")
	}
}

// TestADragLeavesTheOtherPageAlone: the page that an edit does not reach is the
// same picture from frame to frame.
func TestADragLeavesTheOtherPageAlone(t *testing.T) {
	tb := setTable(t, verses(strings.TrimSuffix(strings.Repeat("a line of verse\n", 80), "\n")))
	tb.d.showPage(3)
	ref, ok := tb.d.lineInSight(true)
	if !ok || len(rowsOf(tb.d.page(3), ref)) == 0 {
		t.Fatal("page 3 has no line")
	}
	tb.w.session.SetFocus(ref)
	size := tb.d.plan.sheets[pagemodel.Verso].seen.Size()
	before := tb.d.drawVerso(size.X, size.Y)
	tb.chord(key(alt, fyne.KeyLeft))
	if tb.d.drawVerso(size.X, size.Y) != before {
		t.Error("the verso was drawn again")
	}
	if !tb.w.session.Previewing() {
		t.Error("nothing is tried out")
	}
}

func TestALeafOfAForeEdgeOpensTheBookThere(t *testing.T) {
	tb := setDemo(t)
	e := &tb.d.plan.edges[pagemodel.Recto]
	at := image.Pt(e.x(e.leaves/2)+1, e.box.Min.Y+e.box.Dy()/2)
	want := e.spread(e.leaves/2, tb.d.of.Extent())
	tb.d.MouseMoved(&desktop.MouseEvent{PointEvent: tb.at(at)})
	tb.frame()
	if tb.d.over.kind != overEdge || !strings.Contains(tb.d.help(), tb.d.pageWords(want)) {
		t.Errorf("over %v, the foot says %q", tb.d.over.kind, tb.d.help())
	}
	if got := tb.d.peekAt(); got.Empty() || !got.In(image.Rectangle{Max: tb.d.plan.size}) {
		t.Errorf("the lifted leaf is shown at %v", got)
	}
	tb.click(at)
	if tb.d.spread != want {
		t.Errorf("the book lies open at %v, want %v", tb.d.spread, want)
	}
}

func TestATickOpensItsPage(t *testing.T) {
	tb := setDemo(t)
	if len(tb.d.placed) == 0 {
		t.Fatal("the demo has no ticks")
	}
	tick := tb.d.placed[0]
	tb.click(tick.end)
	if s := tb.d.spread; s.Verso != tick.page && s.Recto != tick.page {
		t.Errorf("the book lies open at %v, want page %d", s, tick.page)
	}
}

func TestTheUnsettledWordsLeadRoundTheBook(t *testing.T) {
	tb := setDemo(t)
	n := tb.d.of.Unsettled()
	at := image.Pt(tb.d.plan.units(sideMargin+20), tb.d.plan.size.Y-tb.d.plan.units(footDepth/2))
	seen := map[pagemodel.LineRef]bool{}
	for range n {
		tb.click(at)
		ref, ok := tb.w.session.Focus()
		if !ok || !tb.d.inSight(ref) {
			t.Fatal("no line at hand in sight")
		}
		seen[ref] = true
	}
	if len(seen) != n {
		t.Errorf("%d presses led to %d lines", n, len(seen))
	}
}

func TestTheSlipIsSwapped(t *testing.T) {
	tb := setDemo(t)
	tb.w.win.Resize(fyne.NewSize(800, 900))
	tb.d.nextLeaf()
	tb.frame()
	was := tb.d.working
	facing := tb.d.plan.sheets[was.Facing()].seen
	tb.click(facing.Min.Add(facing.Size().Div(2)))
	if tb.d.working == was {
		t.Error("the same page is worked on")
	}
	if s := tb.d.plan.sheets[tb.d.working]; s.seen != s.page {
		t.Error("it is not whole")
	}
}

func TestALargeBookIsMovedByTheHand(t *testing.T) {
	tb := setDemo(t)
	tb.d.zoomTo(6)
	tb.frame()
	was := tb.d.plan.book
	at := was.Min.Add(image.Pt(was.Dx()/2+40, was.Dy()/2)) // in the gutter's white
	tb.press(at)
	tb.move(at.Add(image.Pt(-50, 70)))
	tb.release()
	if got := tb.d.plan.book.Min.Sub(was.Min); got != image.Pt(-50, 70) {
		t.Errorf("moved by %v", got)
	}
	tb.d.Scrolled(&fyne.ScrollEvent{Scrolled: fyne.NewDelta(0, -30)})
	if got := tb.d.plan.book.Min.Y - was.Min.Y; got != 40 {
		t.Errorf("after the wheel moved by %d", got)
	}
}

func TestNearAndFarByTheWheel(t *testing.T) {
	tb := setDemo(t)
	fit := tb.d.plan.scale
	tb.held = fyne.KeyModifierShortcutDefault
	tb.d.Scrolled(&fyne.ScrollEvent{Scrolled: fyne.NewDelta(0, 10)})
	if tb.d.plan.scale <= fit {
		t.Error("not nearer")
	}
}

// TestTheWholeDemoCanBeDrawn leafs through it in both lights at every scale.
func TestTheWholeDemoCanBeDrawn(t *testing.T) {
	tb := setDemo(t)
	for {
		at := tb.d.spread
		tb.frame()
		tb.d.nextLeaf()
		if tb.d.spread == at {
			break
		}
	}
	tb.w.otherLight()
	tb.frame()
}

func TestFootWordsAreShortenedNotCut(t *testing.T) {
	tb := setTable(t, verses(two))
	s := tb.d.k.slate(image.NewRGBA(image.Rect(0, 0, 10, 10)), 1, tb.d.light.palette().desk)
	words := "first of all · then some · and then more · last"
	if got := tb.d.fitting(s, words, 2000); got != words {
		t.Errorf("with room enough %q", got)
	}
	if got := tb.d.fitting(s, words, 140); got != "first of all · last" {
		t.Errorf("with little room %q", got)
	}
	if got := tb.d.fitting(s, words, 60); !strings.HasSuffix(got, "…") {
		t.Errorf("with hardly any room %q", got)
	}
}

// TestWhatMovesElsewhereIsShown: where a poem fills its pages, one line more
// moves every poem behind it.
func TestWhatMovesElsewhereIsShown(t *testing.T) {
	design := pagemodel.DefaultDesign()
	full := design.Rows() - design.PoemRow + 1
	b := pagemodel.NewBuilder(pagemodel.About{}, design)
	for range 20 {
		var lines []pagemodel.Line
		for range full {
			lines = append(lines, b.Line("one line of many lines"))
		}
		b.Poem(pagemodel.PoemHead{}, []pagemodel.Part{pagemodel.NewPart("", []pagemodel.Stanza{pagemodel.NewStanza(pagemodel.Verse, lines)})})
	}
	tb := setTable(t, b.Collection())
	tb.keys(fyne.KeyDown)
	tb.chord(key(alt, fyne.KeyLeft))
	if got := len(tb.d.moving); got != 19 || !strings.Contains(tb.d.help(), "19 poems move") {
		t.Errorf("%d poems are shown to move, and the foot says %q", got, tb.d.help())
	}
	tb.keys(fyne.KeyEscape)
	if len(tb.d.moving) != 0 {
		t.Error("they are still shown to move")
	}
}

// TestSentences: errors begin with a capital where they are shown.
func TestSentences(t *testing.T) {
	for in, want := range map[string]string{"": "", "élan": "Élan", "“x” ends": "“x” ends"} {
		if got := sentence(in); got != want {
			t.Errorf("sentence(%q) = %q", in, got)
		}
	}
}
