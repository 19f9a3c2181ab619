package ui

import (
	"fmt"
	"image"
	"image/color"
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"

	"headland/pagemodel"
	"headland/typeset"
)

// bookOf is a book of poems, each a title and its lines, and of sections, each a
// title after "# ".
func bookOf(things ...string) *pagemodel.Collection {
	b := pagemodel.NewBuilder(pagemodel.About{Title: "Trial"}, pagemodel.DefaultDesign())
	for _, thing := range things {
		if title, ok := strings.CutPrefix(thing, "# "); ok {
			b.Section(title, nil)
			continue
		}
		title, text, _ := strings.Cut(thing, "\n")
		var lines []pagemodel.Line
		for line := range strings.SplitSeq(text, "\n") {
			lines = append(lines, b.Line(line))
		}
		b.Poem(pagemodel.PoemHead{Title: title}, []pagemodel.Part{pagemodel.NewPart("", []pagemodel.Stanza{pagemodel.NewStanza(pagemodel.Verse, lines)})})
	}
	return b.Collection()
}

// ovens is a book of a few short poems in two sections, written for the tests; the
// third takes two pages.
func ovens() *pagemodel.Collection {
	return bookOf("# Dark", "First Tray\nThe oven hums.\nFlour on the sill.", "Salt\nA pinch of it.\nThe street is out.",
		"Long Counter\n"+strings.TrimSuffix(strings.Repeat("loaf after loaf after loaf\n", 34), "\n"),
		"Peel\nThe peel goes in.\nThe oven is a mouth.", "# Light", "Window\nSteam on the pane.\nAn oven of a day.", "Receipt\nTwo loaves.\nPaid.")
}

// pressOver moves the hand over a view and presses there; at is a device pixel of
// its picture.
func pressOver(v *laidOver, w interface {
	MouseMoved(*desktop.MouseEvent)
	MouseDown(*desktop.MouseEvent)
}, at image.Point) {
	at = at.Add(v.view.Min)
	pos := v.origin.AddXY(float32((float64(at.X)+0.5)/v.density), float32((float64(at.Y)+0.5)/v.density))
	w.MouseMoved(&desktop.MouseEvent{PointEvent: fyne.PointEvent{Position: pos}})
	w.MouseDown(&desktop.MouseEvent{PointEvent: fyne.PointEvent{Position: pos}, Button: desktop.MouseButtonPrimary})
}

// laidHinges lays the hinges and gives them.
func (tb *table) laidHinges() *hingeView {
	tb.t.Helper()
	tb.chord(hingesKey)
	v, ok := tb.overlay().(*hingeView)
	if !ok {
		tb.t.Fatalf("%T lies over the desk", tb.overlay())
	}
	return v
}

// borders are the edges of a book as one reads them off its pages: where the next
// row of verse belongs to another poem.
func borders(set *typeset.Setting) []string {
	var all []string
	var line pagemodel.LineRef
	at := 0
	for n := 1; n <= set.Extent(); n++ {
		for _, r := range set.Page(n).Rows {
			if r.Line == 0 || r.Ref() == line {
				continue
			}
			if line.Poem != 0 && r.Poem != line.Poem {
				all = append(all, fmt.Sprint(line, at, r.Ref(), n))
			}
			line, at = r.Ref(), n
		}
	}
	return all
}

// TestHingesAreTheEdgesOnThePages all through the demo, each where its pages have
// it.
func TestHingesAreTheEdgesOnThePages(t *testing.T) {
	tb := setDemo(t)
	var got []string
	ways := map[hingeWay]int{}
	for _, h := range hingesOf(tb.d.of) {
		got = append(got, fmt.Sprint(h.edges[0].line, h.edges[0].page, h.edges[1].line, h.edges[1].page))
		ways[h.way()]++
	}
	want := borders(tb.d.of)
	if strings.Join(got, "\n") != strings.Join(want, "\n") {
		t.Errorf("hinges\n%s\nwant\n%s", strings.Join(got, "\n"), strings.Join(want, "\n"))
	}
	if ways[overGutter] == 0 || ways[overLeaf] == 0 || ways[pagesApart] == 0 {
		t.Errorf("the demo has only %v", ways)
	}
}

// TestHingesInWords: what faces what, what lies back to back, and what comes
// between.
func TestHingesInWords(t *testing.T) {
	tb := setTable(t, ovens())
	var said []string
	for _, h := range hingesOf(tb.d.of) {
		said = append(said, joined(" · ", h.meets(tb.d.of), h.between(tb.d.of)))
	}
	all := strings.Join(said, "\n")
	for _, words := range []string{" faces page ", ", and over the leaf page ", "the section “Light” begins · pages 8 and 10 are blank, and page 11 faces one of them"} {
		if !strings.Contains(all, words) {
			t.Errorf("nothing says %q in\n%s", words, all)
		}
	}
	if len(said) != 5 {
		t.Errorf("six poems have %d hinges", len(said))
	}
}

// TestAWayForEachPlace: on one page, over the gutter, over the leaf, and apart.
func TestAWayForEachPlace(t *testing.T) {
	for _, c := range []struct {
		above, below int
		want         hingeWay
	}{{4, 4, onOnePage}, {4, 5, overGutter}, {5, 6, overLeaf}, {4, 6, pagesApart}, {5, 9, pagesApart}, {8, 5, sideBySide}} {
		h := hinge{edges: [2]hingeEdge{{page: c.above}, {page: c.below}}}
		if got := h.way(); got != c.want {
			t.Errorf("from page %d to page %d is way %d, want %d", c.above, c.below, got, c.want)
		}
	}
}

// TestHingesByKeys: walked to the last and opened there; Escape and their own key
// leave the book as it lay.
func TestHingesByKeys(t *testing.T) {
	tb := setDemo(t)
	was := tb.d.spread
	for _, leave := range []func(){func() { tb.onTop(fyne.KeyEscape) }, func() { tb.chordOnTop(hingesKey) }} {
		tb.laidHinges()
		tb.onTop(fyne.KeyPageDown, fyne.KeyDown, fyne.KeyUp, fyne.KeyPageUp)
		if leave(); tb.overlay() != nil || tb.d.spread != was || tb.d.said != "" {
			t.Errorf("left, the book lies open at %v, and the foot says %q", tb.d.spread, tb.d.said)
		}
	}
	v := tb.laidHinges()
	tb.onTop(fyne.KeyEnd, fyne.KeyUp, fyne.KeyRight)
	if !v.isSeen(v.at) || v.at != len(v.all)-2 {
		t.Errorf("at hinge %d of %d, seen %v", v.at, len(v.all), v.isSeen(v.at))
	}
	e := v.all[v.at].edges[v.edge]
	tb.onTop(fyne.KeyReturn)
	if ref, ok := tb.w.session.Focus(); !ok || ref != e.line || !tb.d.inSight(ref) || tb.overlay() != nil {
		t.Errorf("opened, %v is at hand, want %v", ref, e.line)
	}
}

// TestHingesByMouse: an edge that is pressed opens the book there.
func TestHingesByMouse(t *testing.T) {
	tb := setDemo(t)
	v := tb.laidHinges()
	v.Scrolled(&fyne.ScrollEvent{Scrolled: fyne.NewDelta(0, -40)})
	if v.first == 0 {
		t.Error("the wheel does not go on")
	}
	i := v.first + 1
	e := v.all[i].edges[1]
	pressOver(&v.laidOver, v, middle(v.strips()[i].edges[1]))
	if ref, ok := tb.w.session.Focus(); !ok || ref != e.line || !tb.d.inSight(ref) || tb.overlay() != nil {
		t.Errorf("pressed, %v is at hand, want %v", ref, e.line)
	}
}

// inkedIn is how many pixels of a part of a picture are nearly as dark as ink.
func inkedIn(img *image.RGBA, in image.Rectangle, ink color.RGBA) int {
	n := 0
	in = in.Intersect(img.Rect)
	for y := in.Min.Y; y < in.Max.Y; y++ {
		for x := in.Min.X; x < in.Max.X; x++ {
			if contrast(img.RGBAAt(x, y), ink) < 1.5 {
				n++
			}
		}
	}
	return n
}

// TestHingesAreDrawn in both lights and windows of every width, each edge inked on
// its page's side, and none over another.
func TestHingesAreDrawn(t *testing.T) {
	tb := setDemo(t)
	for _, size := range []image.Point{{1400, 900}, {1000, 700}, {560, 800}} {
		tb.w.win.Resize(fyne.NewSize(float32(size.X), float32(size.Y)))
		tb.frame()
		v := tb.laidHinges()
		img := v.draw(v.view.Dx(), v.view.Dy()).(*image.RGBA)
		for i, s := range v.strips() {
			if !v.isSeen(i) {
				continue
			}
			for e, at := range s.edges {
				left := at.Min.X < v.strip.right
				if verso := pagemodel.SideOf(v.all[i].edges[e].page) == pagemodel.Verso; verso != left || inkedIn(img, at, tb.d.light.palette().ink) == 0 {
					t.Errorf("%v: edge %d of hinge %d lies at %v without ink, or on the wrong side", size, e, i, at)
				}
				if at.Min.X < 0 || at.Max.X > v.view.Dx() || at.Dy() < v.units(24) {
					t.Errorf("%v: an edge lies at %v", size, at)
				}
			}
			if s.edges[0].Overlaps(s.edges[1]) {
				t.Errorf("%v: edges of hinge %d overlap", size, i)
			}
		}
		tb.onTop(fyne.KeyEscape)
		tb.w.otherLight()
	}
}

// TestNoHinges in a book of one poem; the foot says why.
func TestNoHinges(t *testing.T) {
	tb := setTable(t, verses(two))
	tb.chord(hingesKey)
	if tb.overlay() != nil || !strings.Contains(tb.d.said, "no two meet") {
		t.Errorf("the foot says %q", tb.d.said)
	}
}
