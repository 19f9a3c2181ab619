package ui

import (
	"image"
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"

	"headland/pagemodel"
	"headland/typeset"
)

// design lays the sheet of the design and gives it.
func (tb *table) design() *designSheet {
	tb.t.Helper()
	tb.w.askDesign()
	l, ok := tb.overlay().(*leaf)
	if !ok {
		tb.t.Fatalf("%T lies over the desk, want a leaf", tb.overlay())
	}
	return l.hand.(*designSheet)
}

// onTop presses keys on whatever has them.
func (tb *table) onTop(keys ...fyne.KeyName) {
	tb.t.Helper()
	for _, name := range keys {
		tb.w.win.Canvas().Focused().TypedKey(&fyne.KeyEvent{Name: name})
		tb.frame()
	}
}

// typeOnTop types into whatever has the keys.
func (tb *table) typeOnTop(text string) {
	for _, r := range text {
		tb.w.win.Canvas().Focused().TypedRune(r)
	}
}

// walkTo goes to a row of a leaf by its name, by keys.
func (tb *table) walkTo(l *leaf, name string) {
	tb.t.Helper()
	tb.onTop(fyne.KeyHome)
	for i := 0; l.rows[l.at].name != name; i++ {
		if i > len(l.rows) {
			tb.t.Fatalf("no row is called %q", name)
		}
		tb.onTop(fyne.KeyDown)
	}
}

// clickRow presses a row of a leaf: its − (-1), its + (1), or its words (0).
func (tb *table) clickRow(l *leaf, name string, by int) {
	tb.t.Helper()
	for i, row := range l.rows {
		if row.name != name || i < l.top || i >= l.top+l.plan.seen {
			continue
		}
		band := l.plan.row(i - l.top)
		at := image.Pt(l.plan.units(l.plan.values)+4, (band.Min.Y+band.Max.Y)/2)
		if by != 0 {
			step := l.plan.stepAt(band, by)
			at = step.Min.Add(step.Max).Div(2)
		}
		at = at.Add(l.plan.at.Min)
		pos := l.plan.origin.AddXY(float32(float64(at.X)/l.plan.density), float32(float64(at.Y)/l.plan.density))
		l.MouseMoved(&desktop.MouseEvent{PointEvent: fyne.PointEvent{Position: pos}})
		l.MouseDown(&desktop.MouseEvent{PointEvent: fyne.PointEvent{Position: pos}, Button: desktop.MouseButtonPrimary})
		tb.frame()
		return
	}
	tb.t.Fatalf("no row in sight is called %q", name)
}

// setBeside waits for what is being set beside the window, and shows it.
func (tb *table) setBeside(b *settingBeside) {
	b.worker.done.Wait()
	tb.settle()
	tb.frame()
}

// sizeOn is the size of the first line of verse on the open pages.
func (tb *table) sizeOn() pagemodel.Length {
	tb.t.Helper()
	for _, s := range tb.d.plan.sheets {
		for _, r := range tb.d.page(s.number).Rows {
			if r.Role == typeset.RoleVerse {
				return r.Runs[0].Size
			}
		}
	}
	tb.t.Fatal("no verse lies open")
	return 0
}

func foots(l *leaf) string {
	var b strings.Builder
	for _, f := range l.foot {
		b.WriteString(f.left + " | " + f.right + "\n")
	}
	return b.String()
}

// TestDesignByKeys steps a value: the open page answers at once, the rest of the
// book follows, and Escape puts all back.
func TestDesignByKeys(t *testing.T) {
	tb := setDemo(t)
	page, was := tb.w.session.Page(), tb.sizeOn()
	s := tb.design()
	tb.walkTo(s.leaf, "size")
	tb.onTop(fyne.KeyRight)
	if got := tb.sizeOn(); got != was+pagemodel.Pt(0.25) {
		t.Errorf("the open page is set in %v before the book is, want %v", got, was+pagemodel.Pt(0.25))
	}
	if !s.leaf.stale || tb.w.session.Previewing() || !strings.Contains(foots(s.leaf), "setting…") || tb.d.said != staleHelp {
		t.Errorf("the other pages are not said to be stale: %q", foots(s.leaf))
	}
	if v := s.leaf.veils[pagemodel.Recto]; v.Position().X < 0 {
		t.Error("the leaves that are stale are not dimmed")
	}
	tb.setBeside(&s.beside)
	if s.leaf.stale || tb.d.of.Collection().Design().Size != was+pagemodel.Pt(0.25) || tb.sizeOn() != was+pagemodel.Pt(0.25) {
		t.Error("the book did not follow")
	}
	if foot := foots(s.leaf); strings.Contains(foot, "setting…") || !strings.Contains(foot, "(was ") {
		t.Errorf("the sheet does not say what the design gives: %q", foot)
	}
	tb.onTop(fyne.KeyEscape)
	if tb.overlay() != nil || tb.w.session.Previewing() || tb.sizeOn() != was || tb.w.session.Page() != page {
		t.Error("Escape did not put all back")
	}
	if _, undo := tb.w.session.UndoLabel(); undo {
		t.Error("what was only tried is in the history")
	}
}

// TestDesignIsSetByEnter: Enter sets the book so, though it be stale, in one
// step.
func TestDesignIsSetByEnter(t *testing.T) {
	tb := setDemo(t)
	was := tb.w.session.Collection().Design()
	s := tb.design()
	tb.walkTo(s.leaf, "leading")
	tb.onTop(fyne.KeyRight, fyne.KeyRight)
	tb.walkTo(s.leaf, "gap")
	tb.onTop(fyne.KeyRight, fyne.KeyReturn)
	now := tb.w.session.Collection().Design()
	if tb.overlay() != nil || now.Leading != was.Leading+pagemodel.Pt(0.5) || now.StanzaGap != 2 {
		t.Errorf("the book is set with a leading of %v and gaps of %d", now.Leading, now.StanzaGap)
	}
	tb.setBeside(&s.beside)
	tb.d.undo()
	if tb.w.session.Collection().Design() != was {
		t.Error("one step back is not the design before")
	}
}

// TestDesignTyped types values, possible ones and others.
func TestDesignTyped(t *testing.T) {
	tb := setDemo(t)
	s := tb.design()
	tb.walkTo(s.leaf, "outer")
	tb.typeOnTop("22,5")
	tb.onTop(fyne.KeyReturn)
	if got := s.tries.Tried().Margins.Outer; got != pagemodel.MM(22.5) {
		t.Errorf("the outer margin is %v", got)
	}
	tb.typeOnTop("120")
	tb.onTop(fyne.KeyReturn)
	if got := s.tries.Tried().Margins.Outer; got != pagemodel.MM(22.5) || !strings.Contains(s.leaf.said, "make them narrower") {
		t.Errorf("an impossible margin: it is %v, and the sheet says %q", got, s.leaf.said)
	}
	tb.onTop(fyne.KeyEscape)
	if s.typed != nil || s.leaf.said != "" || tb.overlay() == nil {
		t.Error("Escape, while a value was typed, did more than leave the value")
	}
	tb.walkTo(s.leaf, "trim")
	tb.typeOnTop("150")
	tb.typeOnTop("x220")
	tb.onTop(fyne.KeyDown)
	if got := s.tries.Tried().Trim; got != (pagemodel.Trim{Width: pagemodel.MM(150), Height: pagemodel.MM(220)}) || s.leaf.said != "" {
		t.Errorf("the trim typed is %v, and the sheet says %q", got, s.leaf.said)
	}
	if got := s.leaf.rows[s.leaf.at].name; got != "margins" {
		t.Errorf("↓ goes to %q", got)
	}
	if w, h := tb.d.plan.sheets[0].page.Dx(), tb.d.plan.sheets[0].page.Dy(); w*220/150-h > 2 || h-w*220/150 > 2 {
		t.Errorf("the page lies there as %d by %d", w, h)
	}
}

// TestDesignByMouse presses − and +, and values themselves.
func TestDesignByMouse(t *testing.T) {
	tb := setDemo(t)
	s := tb.design()
	side := s.leaf.side
	tb.clickRow(s.leaf, "inner", 1)
	tb.clickRow(s.leaf, "inner", 1)
	tb.clickRow(s.leaf, "inner", -1)
	if got := s.tries.Tried().Margins.Inner; got != pagemodel.MM(16.5) {
		t.Errorf("the inner margin is %v", got)
	}
	tb.clickRow(s.leaf, "binding", 0)
	if got := s.tries.Tried().Binding; got != pagemodel.Stapled {
		t.Errorf("the binding is %v", got)
	}
	tb.clickRow(s.leaf, "size", 0)
	tb.typeOnTop("9.5")
	tb.onTop(fyne.KeyReturn)
	tb.clickRow(s.leaf, "size", 1)
	tb.setBeside(&s.beside)
	if got := tb.sizeOn(); got != pagemodel.Pt(9.75) {
		t.Errorf("the page is set in %v", got)
	}
	if s.leaf.side != side {
		t.Error("the leaf went from under the hand")
	}
}

// TestLatestDesignIsShown: of several values one soon after another the last is
// what is shown, and nothing in between comes late.
func TestLatestDesignIsShown(t *testing.T) {
	tb := setDemo(t)
	s := tb.design()
	tb.walkTo(s.leaf, "size")
	tb.onTop(fyne.KeyRight, fyne.KeyRight, fyne.KeyRight, fyne.KeyLeft)
	for s.latest != nil {
		tb.setBeside(&s.beside)
	}
	if got := tb.d.of.Collection().Design().Size; got != pagemodel.Pt(11.5) || tb.sizeOn() != got {
		t.Errorf("the book is shown in %v", got)
	}
	tb.onTop(fyne.KeyLeft, fyne.KeyLeft)
	tb.setBeside(&s.beside)
	if tb.w.session.Previewing() || tb.sizeOn() != pagemodel.Pt(11) || s.leaf.stale {
		t.Error("back at its own design the book is not as it was")
	}
}

// TestDesignTurnsLeaves: while the book is stale another spread can be opened,
// and is set in the design tried too.
func TestDesignTurnsLeaves(t *testing.T) {
	tb := setDemo(t)
	s := tb.design()
	tb.walkTo(s.leaf, "size")
	tb.onTop(fyne.KeyRight, fyne.KeyPageDown)
	if !s.leaf.stale || tb.sizeOn() != pagemodel.Pt(11.25) {
		t.Errorf("the next leaf is set in %v", tb.sizeOn())
	}
	page := tb.w.session.Page()
	anchor := tb.d.anchor()
	tb.setBeside(&s.beside)
	if now, _ := tb.d.of.PageOfLine(anchor); pagemodel.Leaf(now) == 0 || tb.d.spread != pagemodel.SpreadOf(now, tb.d.of.Extent()) {
		t.Errorf("page %d lay open, and then pages %v, its first line on %d", page, tb.d.spread, now)
	}
}

// TestLeafLeavesThePageWorkedOn: in windows that are no smaller than two leaves
// the leaf leaves the page that is worked on, and it is never out of the window.
func TestLeafLeavesThePageWorkedOn(t *testing.T) {
	for _, size := range []fyne.Size{{Width: 1400, Height: 900}, {Width: 1000, Height: 700}, {Width: 700, Height: 480}, {Width: 720, Height: 860}} {
		tb := setDemo(t)
		tb.w.win.Resize(size)
		s := tb.design()
		tb.walkTo(s.leaf, "running heads")
		at := s.leaf.plan.at
		window := image.Rectangle{Max: tb.d.plan.size}
		if !at.In(window) || s.leaf.plan.seen < 3 {
			t.Errorf("%v: the leaf lies at %v of %v, with %d rows", size, at, window, s.leaf.plan.seen)
		}
		if s.leaf.at < s.leaf.top || s.leaf.at >= s.leaf.top+s.leaf.plan.seen {
			t.Errorf("%v: the row at hand, %d, is out of sight", size, s.leaf.at)
		}
		if working := tb.d.plan.sheets[s.leaf.side.Facing()].page; !tb.d.plan.narrow && at.Overlaps(working) {
			t.Errorf("%v: the leaf at %v covers the page that is worked on, %v", size, at, working)
		}
		if img := s.leaf.draw(at.Dx(), at.Dy()); img.Bounds().Size() != at.Size() {
			t.Errorf("%v: the leaf is drawn as %v, want %v", size, img.Bounds().Size(), at.Size())
		}
	}
}

// TestContrastOnALeaf holds what is written on a leaf to the contrast of words,
// and its hairlines to that of hairlines.
func TestContrastOnALeaf(t *testing.T) {
	for _, l := range []light{day, lamp} {
		p := l.palette()
		for _, pair := range []pairing{
			{"values", p.ink, p.leaf(), 4.5}, {"names", p.aside, p.leaf(), 4.5}, {"what is refused", p.mark, p.leaf(), 4.5},
			{"values at hand", p.ink, p.leafWash(), 4.5}, {"names at hand", p.aside, p.leafWash(), 4.5},
			{"hairlines", p.leafLine(), p.leaf(), 3},
		} {
			if got := contrast(pair.over, pair.on); got < pair.least {
				t.Errorf("%v: %s: contrast %.2f, want at least %.1f", l, pair.name, got, pair.least)
			}
		}
	}
}
