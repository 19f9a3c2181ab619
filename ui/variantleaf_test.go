package ui

import (
	"image"
	"image/color"
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"

	"headland/pagemodel"
	"headland/ui/session"
)

// layLines lays what differs line by line.
func (tb *table) layLines() *versionLeaf {
	tb.t.Helper()
	tb.chord(key(ctrlShift, fyne.KeyV))
	tb.typed(fyne.KeyTab)
	return tb.versionLeaf()
}

func (tb *table) versionLeaf() *versionLeaf {
	tb.t.Helper()
	l, ok := tb.overlay().(*versionLeaf)
	if !ok {
		tb.t.Fatalf("%T lies over the desk, want the lines", tb.overlay())
	}
	return l
}

func (tb *table) versionPair() *versionPair {
	tb.t.Helper()
	p, ok := tb.overlay().(*versionPair)
	if !ok {
		tb.t.Fatalf("%T lies over the desk, want the spreads", tb.overlay())
	}
	return p
}

// eventAt is the hand at a device pixel of the leaf.
func (l *versionLeaf) eventAt(p image.Point) *desktop.MouseEvent {
	p = p.Add(l.plan.at.Min)
	at := l.plan.origin.AddXY(float32(float64(p.X)/l.plan.density), float32(float64(p.Y)/l.plan.density))
	return &desktop.MouseEvent{PointEvent: fyne.PointEvent{Position: at, AbsolutePosition: at}, Button: desktop.MouseButtonPrimary}
}

// press presses words on the leaf.
func (l *versionLeaf) press(t *testing.T, kind leafSpotKind) {
	t.Helper()
	for _, w := range l.pressed() {
		if w.kind == kind {
			if near := w.near(&l.plan); near.Dy() < l.plan.units(24) || near.Dx() < l.plan.units(24) {
				t.Errorf("what can be pressed is %v", near.Size())
			}
			l.MouseDown(l.eventAt(image.Pt(w.x+w.wide/2, w.y-3)))
			return
		}
	}
	t.Fatalf("the leaf has no such words: %v", l.pressed())
}

// TestLinesSpreadsAndBack by keys: walk through what differs, show either on the
// page, go to the spreads and back, and leave nothing.
func TestLinesSpreadsAndBack(t *testing.T) {
	tb := versioned(t)
	committed, open := tb.w.session.Collection(), tb.d.spread
	l := tb.layLines()
	if tb.shownText() != nightNow || l.diff != 0 || len(l.blocks) != 2 {
		t.Fatalf("difference %d of %d, and the page shows %q", l.diff, len(l.blocks), tb.shownText())
	}
	if page, _ := tb.w.session.Committed().PageOfLine(tb.versionLineRef("The ovens")); l.side != pagemodel.SideOf(page).Facing() {
		t.Errorf("the leaf lies on the page of the line")
	}
	tb.typed(fyne.KeySpace)
	if tb.shownText() != night || !strings.Contains(tb.d.said, "The page shows B") {
		t.Errorf("turned, the page shows %q, and the foot says %q", tb.shownText(), tb.d.said)
	}
	tb.typed(fyne.KeySpace, fyne.KeyDown, fyne.KeyDown)
	if l.diff != 1 || tb.shownText() != nightNow {
		t.Errorf("difference %d is at hand, the page shows %q", l.diff, tb.shownText())
	}
	tb.typed(fyne.KeyTab)
	if p := tb.versionPair(); p.diff != 1 || tb.w.session.Previewing() {
		t.Errorf("as spreads, difference %d is at hand", p.diff)
	}
	tb.typed(fyne.KeyTab)
	if tb.versionLeaf().diff != 1 {
		t.Error("back at the lines, another difference is at hand")
	}
	tb.typed(fyne.KeySpace, fyne.KeyEscape)
	if tb.overlay() != nil || tb.w.session.Previewing() || tb.w.session.Collection() != committed || tb.d.spread != open {
		t.Error("lifted, something stays")
	}
	if tb.w.win.Canvas().Focused() != fyne.Focusable(tb.d) {
		t.Error("the desk does not have the keys again")
	}
	tb.layLines()
	tb.typed(fyne.KeyReturn)
	tb.wants(night)
}

// TestLinesByMouse: a press goes to a difference, a second shows it on the page,
// words lead on, a press beside the leaf lifts it.
func TestLinesByMouse(t *testing.T) {
	tb := versioned(t)
	tb.edited(pagemodel.KeepVariant{Poem: tb.poem().ID(), Name: "another"})
	l := tb.layLines()
	second := l.seen()[1]
	at := image.Pt(l.plan.text+20, int(second.from+second.to)/2)
	l.MouseMoved(l.eventAt(at))
	if l.Cursor() != desktop.PointerCursor {
		t.Error("what can be pressed does not say so")
	}
	l.MouseDown(l.eventAt(at))
	if l.diff != 1 {
		t.Errorf("difference %d is at hand", l.diff)
	}
	l.MouseDown(l.eventAt(at))
	if tb.shownText() != night {
		t.Errorf("the page shows %q", tb.shownText())
	}
	l.press(t, onName)
	if l.shown != [2]int{0, 2} || len(l.compared()) != 0 {
		t.Errorf("compared are %v, with %d differences", l.shown, len(l.compared()))
	}
	l.draw(l.plan.at.Dx(), l.plan.at.Dy())
	l.press(t, onSpreads)
	tb.versionPair()
	tb.typed(fyne.KeyTab)
	l = tb.versionLeaf()
	l.MouseDown(l.eventAt(image.Pt(-40, 10)))
	if tb.overlay() != nil || tb.w.session.Previewing() {
		t.Error("a press beside the leaf does not lift it")
	}
}

// TestVersionsInEveryWindow: leaf and spreads lie on the window, are drawn, and
// go through every difference.
func TestVersionsInEveryWindow(t *testing.T) {
	for _, size := range []fyne.Size{{Width: 480, Height: 360}, {Width: 700, Height: 900}, {Width: 900, Height: 800}, {Width: 1400, Height: 900}} {
		tb := versioned(t)
		tb.w.win.Resize(size)
		l := tb.layLines()
		for range 3 {
			desk := image.Rectangle{Max: tb.d.plan.size}
			if !l.plan.at.In(desk) || l.plan.at.Empty() {
				t.Fatalf("%v: the leaf lies at %v on a desk of %v", size, l.plan.at, tb.d.plan.size)
			}
			img := l.draw(l.plan.at.Dx(), l.plan.at.Dy()).(*image.RGBA)
			if inked(img, tb.d.light.palette().ink) < 50 {
				t.Errorf("%v: no verse is inked", size)
			}
			seen := false
			for _, s := range l.seen() {
				seen = seen || s.diff == l.diff
			}
			if !seen {
				t.Errorf("%v: difference %d is at hand and out of sight", size, l.diff)
			}
			tb.typed(fyne.KeyDown)
		}
		tb.typed(fyne.KeyTab)
		p := tb.versionPair()
		for side, h := range p.plan.halves {
			if !h.name.Union(h.page).Union(h.take).In(image.Rectangle{Max: p.plan.at.Size()}) {
				t.Errorf("%v: side %d lies at %v of %v", size, side, h, p.plan.at.Size())
			}
		}
		p.draw(p.plan.at.Dx(), p.plan.at.Dy())
		tb.typed(fyne.KeyEscape)
	}
}

// TestVersionsCanBeReadOnly: in a book that can only be read they are compared,
// and none is used, named or dropped.
func TestVersionsCanBeReadOnly(t *testing.T) {
	tb := versioned(t)
	s, err := session.Open(tb.path)
	if err != nil {
		t.Fatal(err)
	}
	second := tableFor(t, s)
	before := s.Collection()
	second.keys(fyne.KeyDown)
	second.chord(key(ctrlShift, fyne.KeyA))
	if second.overlay() != nil || second.d.said != readOnlyWords {
		t.Errorf("to keep one, %T lies there, and the foot says %q", second.overlay(), second.d.said)
	}
	second.chord(key(ctrlShift, fyne.KeyV))
	second.typed(fyne.KeyDelete, fyne.KeyF2)
	second.versionsListed()
	second.typed(fyne.KeyTab, fyne.KeyDown, fyne.KeySpace, fyne.KeyTab)
	second.versionPair()
	second.typed(fyne.KeyReturn)
	if second.overlay() != nil || second.d.said != readOnlyWords || s.Collection() != before {
		t.Errorf("used, %T lies there, and the foot says %q", second.overlay(), second.d.said)
	}
}

// TestWordsOnTheLeafCanBeRead in both lights: 4.5:1 for words, on the paper and
// where they are at hand; 3:1 for marks (WCAG 2.2, 1.4.3 and 1.4.11).
func TestWordsOnTheLeafCanBeRead(t *testing.T) {
	for _, l := range [...]light{day, lamp} {
		p := l.palette()
		for name, paper := range map[string]color.RGBA{"leaf": p.leaf(), "at hand": p.leafWash()} {
			if c := contrast(p.aside, paper); c < 4.5 {
				t.Errorf("%s, %s: words have %.2f:1", l, name, c)
			}
			if c := contrast(p.mark, paper); c < 3 {
				t.Errorf("%s, %s: marks have %.2f:1", l, name, c)
			}
		}
	}
}

// TestMoreThanTheLeafHolds: what is out of sight is counted, and words, keys and
// wheel lead there.
func TestMoreThanTheLeafHolds(t *testing.T) {
	tb := setTable(t, verses(strings.TrimSuffix(strings.Repeat("a line of verse\n", 25), "\n")))
	tb.keys(fyne.KeyDown)
	tb.edited(pagemodel.KeepVariant{Poem: tb.poem().ID(), Name: "plain"})
	for _, l := range tb.poem().Lines() {
		tb.edited(pagemodel.Retype{LineRef: pagemodel.LineRef{Poem: tb.poem().ID(), Line: l.ID()}, Text: "a line of other verse"})
	}
	l := tb.layLines()
	inSight := func() {
		t.Helper()
		if n := len(l.seen()); l.diff < l.top || l.diff >= l.top+n {
			t.Errorf("difference %d is at hand, %d from %d are seen", l.diff, n, l.top)
		}
	}
	l.press(t, onFurther)
	inSight()
	if l.top == 0 || l.diff == 0 {
		t.Error("the words do not lead to what follows")
	}
	was := l.diff
	tb.typed(fyne.KeyPageDown)
	inSight()
	if l.diff <= was+1 {
		t.Error("Page Down goes no further than Down")
	}
	tb.typed(fyne.KeyEnd)
	inSight()
	if l.diff != 24 {
		t.Errorf("the last difference is %d", l.diff)
	}
	l.press(t, onEarlier)
	inSight()
	l.Scrolled(&fyne.ScrollEvent{Scrolled: fyne.NewDelta(0, 10)})
	inSight()
	tb.typed(fyne.KeyHome)
	if l.diff != 0 || l.top != 0 {
		t.Errorf("Home leads to difference %d, %d at the top", l.diff, l.top)
	}
}
