package ui

import (
	"image"
	"slices"
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"

	"headland/pagemodel"
	"headland/typeset"
)

// eventAt is the hand at a device pixel of the leaf.
func (l *choiceLeaf) eventAt(p image.Point, button desktop.MouseButton) *desktop.MouseEvent {
	p = p.Add(l.plan.at.Min)
	at := l.plan.origin.AddXY(float32(float64(p.X)/l.plan.density), float32(float64(p.Y)/l.plan.density))
	return &desktop.MouseEvent{PointEvent: fyne.PointEvent{Position: at, AbsolutePosition: at}, Button: button}
}

// middleOf is a place on a choice that is seen.
func (tb *table) middleOf(l *choiceLeaf, choice int) image.Point {
	tb.t.Helper()
	for _, s := range l.seen() {
		if s.choice == choice {
			return image.Pt(l.plan.text+40, int(s.from+s.to)/2)
		}
	}
	tb.t.Fatalf("choice %d is not seen: %d from %d are", choice, len(l.seen()), l.top)
	return image.Point{}
}

// TestTheHandPointsAndTakes: over a choice it is on the page; off it, all is as
// it was; a press takes it.
func TestTheHandPointsAndTakes(t *testing.T) {
	tb := overlong(t)
	ref, _ := tb.w.session.Focus()
	was := tb.onPages(ref)
	l := tb.layChoices()
	l.MouseMoved(l.eventAt(tb.middleOf(l, 2), 0))
	if l.at != 2 || !tb.w.session.Previewing() || slices.Equal(tb.onPages(ref), was) {
		t.Errorf("under the hand is choice %d, and the page shows %q", l.at, tb.onPages(ref))
	}
	l.MouseMoved(l.eventAt(image.Pt(-30, 40), 0))
	if l.at != -1 || tb.w.session.Previewing() || !slices.Equal(tb.onPages(ref), was) {
		t.Errorf("the hand has left, and the page shows %q, want %q", tb.onPages(ref), was)
	}
	l.MouseMoved(l.eventAt(tb.middleOf(l, 3), 0))
	l.MouseOut()
	if tb.w.session.Previewing() {
		t.Error("the hand has left the window, and a choice is still tried out")
	}
	l.MouseDown(l.eventAt(tb.middleOf(l, 3), desktop.MouseButtonPrimary))
	tb.frame()
	if tb.overlay() != nil || tb.w.session.Previewing() || slices.Equal(tb.onPages(ref), was) {
		t.Errorf("pressed, the choice is not taken: %q", tb.onPages(ref))
	}
}

// TestAPressBesideTheLeafIsForThePage: it lifts the leaf and takes the rule that
// is pressed.
func TestAPressBesideTheLeafIsForThePage(t *testing.T) {
	tb := overlong(t)
	rule := tb.ruleAt("The ovens")
	l := tb.layChoices()
	tb.onTop(fyne.KeyDown)
	l.MouseDown(l.eventAt(rule.Sub(l.plan.at.Min), desktop.MouseButtonPrimary))
	if tb.overlay() != nil || tb.w.session.Previewing() {
		t.Error("the leaf still lies there, or its choice is still tried out")
	}
	if _, ok := tb.d.hand.grip.(*hold); !ok {
		t.Errorf("the hand holds %T, want the rule", tb.d.hand.grip)
	}
}

// TestAStrokeLaysTheChoices: pressing the stroke in the margin, where it is drawn.
func TestAStrokeLaysTheChoices(t *testing.T) {
	for _, text := range []string{long + "\n" + two, strings.Repeat("a line\n", 45) + long} {
		tb := setTable(t, verses(text))
		tb.chord(key(ctrl, fyne.KeyDown))
		ref, _ := tb.w.session.Focus()
		for _, at := range []bool{true, false} {
			if !at {
				tb.d.session.ClearFocus()
			}
			tb.press(tb.strokeInk(ref))
			l := tb.choiceLeaf()
			if l.ref != ref || tb.d.hand.state != idle {
				t.Errorf("at hand %v: the choices are for %v, want %v; the hand is %v", at, l.ref, ref, tb.d.hand.state)
			}
			tb.onTop(fyne.KeyEscape)
		}
	}
}

// strokeInk finds the stroke of a line that lies open by its ink.
func (tb *table) strokeInk(ref pagemodel.LineRef) image.Point {
	tb.t.Helper()
	mark := tb.d.light.palette().mark
	for side, s := range tb.d.plan.sheets {
		page := tb.d.page(s.number)
		for _, i := range rowsOf(page, ref) {
			at := typeset.Point{X: strokeX(page), Y: page.Rows[i].Baseline - sizeOf(&page.Rows[i])/4}
			if tb.inkAt(pagemodel.Side(side), at) == mark {
				return tb.d.plan.fromPage(pagemodel.Side(side), at)
			}
		}
	}
	tb.t.Fatal("no stroke is drawn")
	return image.Point{}
}

// TestTheLeafScrolls: what does not fit is said to follow, and can be come to.
func TestTheLeafScrolls(t *testing.T) {
	tb := overlong(t)
	l := tb.layChoices()
	if foot := l.footWords()[0]; foot.kind != onMore || !strings.Contains(foot.run.Text, "more ↓") {
		t.Fatalf("the foot says %q", foot.run.Text)
	}
	more := image.Pt(l.footWords()[0].x+4, l.plan.at.Dy()-l.plan.units(12))
	l.MouseMoved(l.eventAt(more, 0))
	l.MouseDown(l.eventAt(more, desktop.MouseButtonPrimary))
	if l.top == 0 {
		t.Error("pressing the words that say so does not bring more into sight")
	}
	for range l.all {
		l.Scrolled(&fyne.ScrollEvent{Scrolled: fyne.NewDelta(0, -10)})
	}
	seen := l.seen()
	if last := seen[len(seen)-1]; last.choice != len(l.all)-1 || l.top != l.lowest() {
		t.Errorf("scrolled to the end, %d is the last of %d that is seen", last.choice, len(l.all))
	}
	if !seen[0].headed {
		t.Error("the head that the first is under is not seen")
	}
}
