package ui

import (
	"image"
	"image/color"
	"math"
	"slices"
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"

	"headland/pagemodel"
	"headland/typeset"
	"headland/typeset/marks/overlay"
	"headland/ui/session"
)

// sheetOn is the sheet that lies over the pages.
func (tb *table) sheetOn() *sentSheet {
	tb.t.Helper()
	s, ok := tb.overlay().(*sentSheet)
	if !ok {
		tb.t.Fatalf("%T lies over the desk, want the sheet", tb.overlay())
	}
	return s
}

// spotAt is the position on the window of a device pixel of the desk.
func (s *sentSheet) spotAt(p image.Point) fyne.PointEvent {
	density := s.w.desk.plan.density
	at := s.origin.AddXY(float32(float64(p.X)/density), float32(float64(p.Y)/density))
	return fyne.PointEvent{Position: at, AbsolutePosition: at}
}

func (s *sentSheet) press(p image.Point) {
	s.MouseMoved(&desktop.MouseEvent{PointEvent: s.spotAt(p)})
	s.MouseDown(&desktop.MouseEvent{PointEvent: s.spotAt(p), Button: desktop.MouseButtonPrimary})
}

// TestTheSheetIsLaidAndLifted by the hand at the sliver, by its key and by Esc;
// while it lies there nothing changes.
func TestTheSheetIsLaidAndLifted(t *testing.T) {
	tb := corrected(t)
	now := tb.text()
	tb.d.MouseMoved(&desktop.MouseEvent{PointEvent: tb.at(middle(tb.d.plan.sliver))})
	if !strings.Contains(tb.d.help(), "Ctrl R") || tb.d.Cursor() != desktop.PointerCursor {
		t.Errorf("over the sliver the foot says %q", tb.d.help())
	}
	tb.press(middle(tb.d.plan.sliver))
	s := tb.sheetOn()
	for _, words := range []string{"copy-edit, as sent on ", "2 corrections, 2 on these pages", "Esc lifts"} {
		if !strings.Contains(tb.d.said, words) {
			t.Errorf("the foot says %q, want %q in it", tb.d.said, words)
		}
	}
	tb.chord(key(ctrl, fyne.KeyJ)) // would join
	tb.typed(fyne.KeyReturn, fyne.KeyDelete, fyne.KeyDown)
	s.TypedRune('x')
	tb.wants(now)
	if got := textOf(s.sent.Setting.Collection()); got != loaf {
		t.Errorf("the sheet has\n%s", got)
	}
	s.press(middle(tb.d.plan.sliver))
	if tb.overlay() != nil {
		t.Fatal("the sheet is not lifted at its foot")
	}
	tb.release()
	for _, lift := range []func(){func() { tb.typed(fyne.KeyEscape) }, func() { tb.chord(key(ctrl, fyne.KeyR)) }} {
		tb.chord(key(ctrl, fyne.KeyR))
		tb.sheetOn()
		lift()
		if tb.overlay() != nil || tb.d.said != "" || tb.w.win.Canvas().Focused() != fyne.Focusable(tb.d) {
			t.Errorf("lifted, %T lies there, and the foot says %q", tb.overlay(), tb.d.said)
		}
	}
}

// TestTheSheetLiesExactlyOver: where nothing was changed, its ink falls on the
// ink of the page below, in a wide window and a narrow one; its paper is another
// and larger.
func TestTheSheetLiesExactlyOver(t *testing.T) {
	tb := setTable(t, verses(loaf))
	tb.markSent()
	colors := tb.d.light.palette()
	for _, size := range []image.Point{{1400, 900}, {1000, 700}, {560, 800}} {
		tb.w.win.Resize(fyne.NewSize(float32(size.X), float32(size.Y)))
		tb.frame()
		tb.chord(key(ctrl, fyne.KeyR))
		s := tb.sheetOn()
		over := s.draw(s.at.Dx(), s.at.Dy()).(*image.RGBA)
		side, _ := tb.row("third one")
		at := tb.d.plan.sheets[side]
		page := tb.d.drawPage(side, at.seen.Dx(), at.seen.Dy()).(*image.RGBA)
		word := tb.onWord("third one", "third")
		dark := 0
		for y := word.Y - 8; y < word.Y+8; y++ {
			for x := word.X - 20; x < word.X+20; x++ {
				a, b := over.RGBAAt(x-s.at.Min.X, y-s.at.Min.Y), page.RGBAAt(x-at.seen.Min.X, y-at.seen.Min.Y)
				one, other := inkShare(a, tb.d.light.proof()), inkShare(b, colors.paper)
				if math.Abs(one-other) > 0.03 {
					t.Fatalf("%v: at %d, %d the sheet has %v and the page %v", size, x, y, a, b)
				}
				if one > 0.5 {
					dark++
				}
			}
		}
		if dark < 20 {
			t.Errorf("%v: only %d pixels are inked", size, dark)
		}
		if !at.seen.In(s.at) || s.at.Min.Y >= at.seen.Min.Y || s.at.Max.Y < tb.d.plan.sliver.Max.Y {
			t.Errorf("%v: the sheet lies at %v, the page at %v", size, s.at, at.seen)
		}
		if paper := tb.d.light.proof(); over.RGBAAt(20, 20) != paper || paper == colors.paper {
			t.Errorf("the sheet's paper is %v", over.RGBAAt(20, 20))
		}
		tb.typed(fyne.KeyEscape)
	}
}

// TestTheSheetsSlip: in a narrow window, pressed where the facing page is seen, the
// sheet is laid over that one whole.
func TestTheSheetsSlip(t *testing.T) {
	tb := setTable(t, verses(stanzas(slices.Repeat([]int{14}, 9)...)))
	tb.markSent()
	tb.w.win.Resize(fyne.NewSize(560, 800))
	tb.frame()
	tb.keys(fyne.KeyPageDown)
	if !tb.d.plan.narrow {
		t.Fatal("the window is not narrow")
	}
	tb.chord(key(ctrl, fyne.KeyR))
	s, working := tb.sheetOn(), tb.d.working
	s.press(middle(tb.d.plan.sheets[working.Facing()].seen))
	if tb.d.working == working || tb.overlay() != fyne.CanvasObject(s) {
		t.Errorf("the page worked on is still %v", tb.d.working)
	}
}

// TestTheRoundIsInTheFile: a book opened again has its sliver and its sheet.
func TestTheRoundIsInTheFile(t *testing.T) {
	tb := corrected(t)
	tb.w.show(nil)
	if !tb.d.plan.sliver.Empty() {
		t.Error("a sliver lies on an empty desk")
	}
	s, err := session.Open(tb.path)
	if err != nil {
		t.Fatal(err)
	}
	tb.w.show(s)
	tb.frame()
	if tb.d.plan.sliver.Empty() {
		t.Error("no sliver is seen")
	}
	tb.chord(key(ctrl, fyne.KeyR))
	if got := textOf(tb.sheetOn().sent.Setting.Collection()); got != loaf {
		t.Errorf("the sheet has\n%s", got)
	}
}

// inkShare is how much of a pixel is inked, on paper of a colour.
func inkShare(c, paper color.RGBA) float64 {
	return (float64(paper.R) - float64(c.R)) / (float64(paper.R) - float64(palettes[day].ink.R))
}

// TestTheSheetIsLeafedThrough by keys; what did not go out says so.
func TestTheSheetIsLeafedThrough(t *testing.T) {
	tb := setTable(t, verses(stanzas(14, 14, 14)))
	tb.markSent()
	was := tb.w.session.Setting().Extent()
	design := tb.w.session.Collection().Design()
	design.Leading = pagemodel.Pt(40)
	if err := tb.w.session.Do(pagemodel.SetDesign{Design: design}); err != nil {
		t.Fatal(err)
	}
	if tb.w.session.Setting().Extent() < was+2 {
		t.Fatalf("the book has %d pages, and had %d", tb.w.session.Setting().Extent(), was)
	}
	tb.keys(fyne.KeyHome)
	tb.chord(key(ctrl, fyne.KeyR))
	s, before := tb.sheetOn(), tb.d.spread
	tb.typed(fyne.KeyPageDown)
	if tb.d.spread == before || tb.overlay() != fyne.CanvasObject(s) {
		t.Errorf("Page Down leafs to %v", tb.d.spread)
	}
	for side, sheet := range tb.d.plan.sheets {
		if n := s.number(pagemodel.Side(side)); sheet.number != 0 && sheet.number <= was && n != sheet.number {
			t.Errorf("over page %d lies page %d", sheet.number, n)
		}
	}
	tb.typed(fyne.KeyEnd)
	if n := s.number(pagemodel.SideOf(tb.w.session.Page())); n != 0 {
		t.Errorf("over a page that never went out lies page %d", n)
	}
}

// TestACorrectionIsFoundOnTheSheet: over its line the foot says what it is, and
// pressed it is chosen in the list.
func TestACorrectionIsFoundOnTheSheet(t *testing.T) {
	tb := corrected(t)
	on := tb.onWord("third one", "third")
	tb.chord(key(ctrl, fyne.KeyR))
	s := tb.sheetOn()
	s.MouseMoved(&desktop.MouseEvent{PointEvent: s.spotAt(on)})
	if !strings.Contains(tb.d.said, "too") {
		t.Errorf("over the line the foot says %q", tb.d.said)
	}
	s.press(on)
	c, ok := tb.corrections().chosen()
	if !ok || !strings.Contains(c.Change.Is, "too") {
		t.Errorf("chosen in the list is %v", c)
	}
}

// TestTheSheetsPaper carries words and marks in both lights, and is not the pages'
// own (contrasts after WCAG 2.2, 1.4.3).
func TestTheSheetsPaper(t *testing.T) {
	for l := range palettes {
		paper, colors := light(l).proof(), light(l).palette()
		for _, ink := range []color.RGBA{colors.ink, palettes[day].ink, colors.aside} {
			if c := contrast(ink, paper); c < 4.5 {
				t.Errorf("%v: words have a contrast of %.1f", light(l), c)
			}
		}
		for _, whose := range pagemodel.WhoseLetters {
			if c := contrast(overlay.Colour(whose), paper); c < 4.5 {
				t.Errorf("%v: what is marked as %s has a contrast of %.1f", light(l), whose, c)
			}
		}
		if paper == colors.paper {
			t.Errorf("%v: the sheet's paper is the pages'", light(l))
		}
	}
}

// TestTheSheetGoesWithTheBook: it is laid over the leaf pressed at the fore-edge,
// and lies over the pages when they are nearer.
func TestTheSheetGoesWithTheBook(t *testing.T) {
	tb := setTable(t, verses(stanzas(slices.Repeat([]int{14}, 60)...)))
	tb.markSent()
	tb.keys(fyne.KeyHome)
	tb.chord(key(ctrl, fyne.KeyR))
	s, before := tb.sheetOn(), tb.d.spread
	edge := tb.d.plan.edges[pagemodel.Recto].box
	s.press(image.Pt(edge.Max.X-1, edge.Max.Y-20))
	if tb.d.spread == before || tb.overlay() != fyne.CanvasObject(s) {
		t.Errorf("pressed at the fore-edge, the book lies open at %v", tb.d.spread)
	}
	was := tb.d.plan.scale
	tb.chord(key(ctrl, fyne.KeyEqual))
	if tb.d.plan.scale <= was || s.at.Intersect(tb.d.plan.view).Empty() || !tb.d.plan.sheets[pagemodel.Verso].seen.In(s.at) {
		t.Errorf("nearer, the sheet lies at %v", s.at)
	}
}

// TestATitleIsFoundOnTheSheet: what differs in a poem's head is said over it.
func TestATitleIsFoundOnTheSheet(t *testing.T) {
	tb := setTable(t, verses(loaf))
	tb.markSent()
	side, row := tb.row("Trial")
	for _, p := range tb.w.session.Collection().Poems() {
		head := p.Head()
		head.Title = "Tried"
		if err := tb.w.session.Do(pagemodel.SetHead{Poem: p.ID(), Head: head}); err != nil {
			t.Fatal(err)
		}
	}
	on := tb.d.plan.fromPage(side, typeset.Point{X: row.X + row.Width/2, Y: row.Baseline - sizeOf(row)/4})
	tb.chord(key(ctrl, fyne.KeyR))
	s := tb.sheetOn()
	s.MouseMoved(&desktop.MouseEvent{PointEvent: s.spotAt(on)})
	if !strings.Contains(tb.d.said, "Tried") {
		t.Errorf("over the title the foot says %q", tb.d.said)
	}
}

// TestTheSheetGoesToWhatDiffers: the keys ↓ and ↑ pass over pages on which nothing
// does.
func TestTheSheetGoesToWhatDiffers(t *testing.T) {
	tb := setTable(t, verses(stanzas(slices.Repeat([]int{14}, 30)...)))
	tb.markSent()
	var pages []int
	for _, page := range []int{3, 11, 12} {
		tb.d.showPage(page)
		tb.keys(fyne.KeyEscape, fyne.KeyDown)
		tb.append(" too")
		pages = append(pages, tb.w.session.Page())
	}
	tb.keys(fyne.KeyHome)
	tb.chord(key(ctrl, fyne.KeyR))
	tb.sheetOn()
	extent := tb.d.of.Extent()
	for _, step := range []struct {
		key  fyne.KeyName
		page int
	}{
		{fyne.KeyDown, pages[0]}, {fyne.KeyDown, pages[1]}, {fyne.KeyDown, pages[2]}, {fyne.KeyDown, pages[2]},
		{fyne.KeyUp, pages[1]}, {fyne.KeyUp, pages[0]}, {fyne.KeyUp, pages[0]},
	} {
		tb.typed(step.key)
		if want := pagemodel.SpreadOf(step.page, extent); tb.d.spread != want {
			t.Errorf("%s goes to pages %v, want %v", step.key, tb.d.spread, want)
		}
	}
}
