package ui

import (
	"image"
	"image/color"
	"math"
	"strings"
	"testing"

	"fyne.io/fyne/v2"

	"headland/typeset"
)

// TestChoicesStandOnThePagesOwnLines: the leaf's rows of verse are at the heights
// of the lines of the page beside it, and begin where a line would.
func TestChoicesStandOnThePagesOwnLines(t *testing.T) {
	tb := overlong(t)
	l := tb.layChoices()
	_, r := tb.row("The ovens")
	base := float64(tb.d.plan.sheets[l.side].page.Min.Y) + r.Baseline.Points()*tb.d.plan.scale
	for _, s := range l.seen() {
		y := float64(l.plan.at.Min.Y) + s.from - l.plan.pitch*0.3 + l.plan.pitch
		if off := (y - base) / l.plan.pitch; math.Abs(off-math.Round(off)) > 0.01 {
			t.Errorf("choice %d stands %.3f lines from the page’s", s.choice, off)
		}
	}
	page := tb.d.page(tb.d.plan.sheets[l.side.Facing()].number)
	want := tb.d.plan.fromPage(l.side, typeset.Point{X: page.Trim.Width - page.Text.X - page.Text.W}).X
	if got := l.plan.at.Min.X + l.plan.text; got < want-1 || got > want+1 {
		t.Errorf("the measure begins at %d, on the page at %d", got, want)
	}
	if l.plan.scale != tb.d.plan.scale {
		t.Errorf("the leaf is set at %v device pixels to the point, the page at %v", l.plan.scale, tb.d.plan.scale)
	}
}

// TestALeafInEveryWindow: it lies on the window, has room for the measure and
// never over the line in a narrow one.
func TestALeafInEveryWindow(t *testing.T) {
	for _, size := range []fyne.Size{{Width: 480, Height: 360}, {Width: 700, Height: 900}, {Width: 900, Height: 800}, {Width: 1400, Height: 900}} {
		tb := setDemo(t)
		tb.w.win.Resize(size)
		for range 6 {
			tb.chord(key(ctrl, fyne.KeyDown))
			l := tb.layChoices()
			tb.onTop(fyne.KeyDown)
			if !l.plan.at.In(image.Rectangle{Max: tb.d.plan.size}) || l.plan.at.Empty() {
				t.Fatalf("%v: the leaf lies at %v on a desk of %v", size, l.plan.at, tb.d.plan.size)
			}
			if wide := l.plan.text + l.onPage(l.plan.measure); wide > l.plan.at.Dx() {
				t.Errorf("%v: the measure needs %d pixels of %d", size, wide, l.plan.at.Dx())
			}
			img := l.draw(l.plan.at.Dx(), l.plan.at.Dy()).(*image.RGBA)
			if inked(img, tb.d.light.palette().ink) < 50 {
				t.Errorf("%v: no verse is inked", size)
			}
			tb.onTop(fyne.KeyEscape)
		}
	}
}

// inked is how many pixels have a colour.
func inked(img *image.RGBA, c color.RGBA) int {
	n := 0
	for y := range img.Rect.Dy() {
		for x := range img.Rect.Dx() {
			if img.RGBAAt(x, y) == c {
				n++
			}
		}
	}
	return n
}

// TestSmallWordsStayOnTheLeaf: what has no space in it is parted where the row is
// full, and not a character is lost.
func TestSmallWordsStayOnTheLeaf(t *testing.T) {
	tb := overlong(t)
	l := tb.layChoices()
	long := strings.Repeat("x/", 200)
	var joined string
	rows := l.rowsOfWords([]string{"short", long, "short again"})
	for _, r := range rows {
		joined += r.Text
		if wide := l.px(r.Width); wide > l.plan.room() {
			t.Errorf("%q is %d pixels wide on a leaf with %d", r.Text, wide, l.plan.room())
		}
	}
	if len(rows) < 3 || !strings.Contains(joined, long) {
		t.Errorf("the rows are %q", joined)
	}
}
