package ui

import (
	"image"
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"

	"headland/pagemodel"
)

// keepDesigns keeps two designs: one in small type and one in large.
func (tb *table) keepDesigns() {
	tb.t.Helper()
	for name, size := range map[string]float64{"small": 9, "large": 14} {
		d := tb.w.session.Collection().Design()
		d.Size = pagemodel.Pt(size)
		d.Leading = d.Size * 5 / 4
		if err := tb.w.session.Do(pagemodel.KeepDesign{Name: name, Design: d}); err != nil {
			tb.t.Fatal(err)
		}
	}
}

// pair lays two designs side by side and gives them.
func (tb *table) pair() *twoDesigns {
	tb.t.Helper()
	tb.w.askTwoDesigns()
	p, ok := tb.overlay().(*twoDesigns)
	if !ok {
		tb.t.Fatalf("%T lies over the desk", tb.overlay())
	}
	return p
}

// allSet waits until every design that was wanted is set.
func (tb *table) allSet(s *designSets) {
	for len(s.waiting) > 0 {
		tb.setBeside(&s.beside)
	}
}

// TestTwoDesigns lays two designs side by side: the same line stands on both
// pages, each in its own size; one of them is taken, by keys alone.
func TestTwoDesigns(t *testing.T) {
	tb := setDemo(t)
	tb.keepDesigns()
	p := tb.pair()
	if p.page(1) != nil || !strings.Contains(p.choices[p.shown[1]].words(p.set(1)), "setting…") {
		t.Error("a design that is not yet set has a page")
	}
	tb.allSet(p.sets)
	tb.onTop(fyne.KeyDown)
	tb.allSet(p.sets)
	tb.onTop(fyne.KeyPageDown)
	sizes := [2]pagemodel.Length{}
	for side := range sizes {
		page := p.page(side)
		rows := rowsOf(page, p.anchor)
		if len(rows) == 0 {
			t.Fatalf("side %d does not show the line", side)
		}
		sizes[side] = page.Rows[rows[0]].Runs[0].Size
	}
	if sizes[0] != pagemodel.Pt(11) || sizes[1] != p.choices[2].design.Size {
		t.Errorf("the sides are set in %v", sizes)
	}
	if words := p.choices[2].words(p.set(1)); !strings.Contains(words, "turnover") || !strings.Contains(words, "pages") || !strings.Contains(words, "fault") {
		t.Errorf("a design is said to give %q", words)
	}
	tb.onTop(fyne.KeyReturn)
	if got := tb.w.session.Collection().Design(); got != p.choices[2].design || tb.overlay() != nil {
		t.Errorf("the book is set in %v", got.Size)
	}
	if !tb.d.inSight(p.anchor) {
		t.Error("the line that was compared is out of sight")
	}
	tb.d.undo()
	if got := tb.w.session.Collection().Design().Size; got != pagemodel.Pt(11) {
		t.Errorf("undone, the book is set in %v", got)
	}
}

// TestTwoDesignsByMouse chooses a side, shows another design there and takes
// it; Escape takes nothing.
func TestTwoDesignsByMouse(t *testing.T) {
	tb := setDemo(t)
	tb.keepDesigns()
	p := tb.pair()
	press := func(r image.Rectangle) {
		at := r.Min.Add(image.Pt(5, r.Dy()/2)).Add(p.plan.at.Min)
		pos := p.plan.origin.AddXY(float32(float64(at.X)/p.plan.density), float32(float64(at.Y)/p.plan.density))
		p.MouseDown(&desktop.MouseEvent{PointEvent: fyne.PointEvent{Position: pos}, Button: desktop.MouseButtonPrimary})
	}
	press(p.plan.halves[0].name)
	press(p.plan.halves[1].name)
	press(p.plan.halves[0].page)
	if p.shown != [2]int{1, 2} || p.side != 0 {
		t.Errorf("the sides show %v, and %d is chosen", p.shown, p.side)
	}
	tb.allSet(p.sets)
	if img := p.draw(p.plan.at.Dx(), p.plan.at.Dy()); img.Bounds().Size() != p.plan.at.Size() {
		t.Errorf("they are drawn as %v", img.Bounds().Size())
	}
	press(p.plan.halves[1].take)
	if got := tb.w.session.Collection().Design(); got != p.choices[2].design {
		t.Errorf("the book is set in %v", got.Size)
	}
	before := tb.w.session.Collection()
	tb.pair()
	tb.onTop(fyne.KeyLeft, fyne.KeyDown, fyne.KeyEscape)
	if tb.overlay() != nil || tb.w.session.Collection() != before {
		t.Error("Escape did not leave everything as it was")
	}
}

// TestPagesOfTwoDesignsDoNotOverlap, whatever their trims.
func TestPagesOfTwoDesignsDoNotOverlap(t *testing.T) {
	tb := setDemo(t)
	for _, one := range pagemodel.TrimPresets {
		for _, other := range pagemodel.TrimPresets {
			p := newPairPlan(&tb.d.plan, fyne.Position{}, [2]pagemodel.Trim{one.Trim, other.Trim})
			view := image.Rectangle{Max: p.at.Size()}
			for side, h := range p.halves {
				if all := h.name.Union(h.page).Union(h.take); !all.In(view) {
					t.Errorf("%s and %s: side %d lies at %v of %v", one.Name, other.Name, side, all, view)
				}
			}
			if p.halves[0].page.Overlaps(p.halves[1].page) {
				t.Errorf("%s and %s lie on one another", one.Name, other.Name)
			}
		}
	}
}

// TestNoTwoDesigns says how a design is kept where none is.
func TestNoTwoDesigns(t *testing.T) {
	tb := setDemo(t)
	tb.w.askTwoDesigns()
	if _, pair := tb.overlay().(*twoDesigns); pair || tb.overlay() == nil {
		t.Errorf("%T lies over the desk", tb.overlay())
	}
}

// TestKeptDesigns keeps the book's design under a name, sets the book in
// another, and drops one.
func TestKeptDesigns(t *testing.T) {
	tb := setDemo(t)
	tb.keepDesigns()
	tb.w.askKept()
	tb.writeIn("as it was", fyne.KeyReturn)
	kept := tb.w.session.Collection().Designs()
	if len(kept) != 3 || kept[2].Name != "as it was" || kept[2].Design != tb.w.session.Collection().Design() {
		t.Fatalf("kept: %v", kept)
	}
	tb.writeIn("lar", fyne.KeyReturn)
	if got := tb.w.session.Collection().Design().Size; got != pagemodel.Pt(14) || tb.overlay() != nil {
		t.Errorf("the book is set in %v", got)
	}
	tb.w.askKept()
	tb.writeIn("small", fyne.KeyDelete)
	if got := tb.w.session.Collection().Designs(); len(got) != 2 || got[0].Name == "small" || got[1].Name == "small" {
		t.Errorf("after one was dropped there are %v", got)
	}
	tb.writeIn("", fyne.KeyEscape)
	if tb.overlay() != nil {
		t.Error("the list still lies there")
	}
}

// TestKeptDesignsSayWhatTheyGive, once they are set.
func TestKeptDesignsSayWhatTheyGive(t *testing.T) {
	tb := setDemo(t)
	tb.keepDesigns()
	k := &keptDesigns{w: tb.w, list: newListing(tb.d.k, tb.d.light.palette(), fyne.NewSize(100, 100), nil)}
	sets, err := newDesignSets(tb.w, func() { k.list.set(k.rows(), k.list.chosen) })
	if err != nil {
		t.Fatal(err)
	}
	k.sets = sets
	k.read()
	if !strings.Contains(k.list.rows[1].aside, "setting…") || strings.Contains(k.list.rows[0].aside, "setting…") {
		t.Errorf("at first the list says %v", k.list.rows)
	}
	tb.allSet(sets)
	for _, row := range k.list.rows {
		if strings.Contains(row.aside, "setting…") || !strings.Contains(row.aside, "pages") {
			t.Errorf("%s is said to give %q", row.words, row.aside)
		}
	}
}

// TestDesignIsKeptFromItsSheet types a name into the sheet's last row: the
// design that is tried is kept, and goes on being tried.
func TestDesignIsKeptFromItsSheet(t *testing.T) {
	tb := setDemo(t)
	s := tb.design()
	tb.walkTo(s.leaf, "size")
	tb.onTop(fyne.KeyRight, fyne.KeyEnd)
	tb.typeOnTop("a little larger")
	tb.onTop(fyne.KeyReturn)
	kept := tb.w.session.Collection().Designs()
	if len(kept) != 1 || kept[0].Name != "a little larger" || kept[0].Design.Size != pagemodel.Pt(11.25) {
		t.Fatalf("kept: %v", kept)
	}
	if s.leaf.rows[s.leaf.at].value != "a little larger" || tb.sizeOn() != pagemodel.Pt(11.25) {
		t.Errorf("the sheet says %q, the page is set in %v", s.leaf.rows[s.leaf.at].value, tb.sizeOn())
	}
	tb.onTop(fyne.KeyEscape)
	if got := tb.w.session.Collection().Design().Size; got != pagemodel.Pt(11) || tb.sizeOn() != got {
		t.Errorf("the book is set in %v", got)
	}
}
