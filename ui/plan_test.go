package ui

import (
	"image"
	"testing"

	"headland/pagemodel"
	"headland/typeset"
)

func planFor(width, height int, density float64, page, extent int) planning {
	return planning{
		size: image.Pt(int(float64(width)*density), int(float64(height)*density)), density: density,
		trim: pagemodel.DefaultDesign().Trim, spread: pagemodel.SpreadOf(page, extent), extent: extent, zoom: 1,
	}
}

// TestPagesMeet: at every size and scale the two pages are equally large, meet
// in the gutter, and lie whole in view.
func TestPagesMeet(t *testing.T) {
	for _, density := range []float64{1, 1.3, 1.5, 2} {
		for _, size := range []image.Point{{1400, 900}, {1151, 700}, {1920, 1080}, {2560, 1000}, {1400, 1400}} {
			p := newPlan(planFor(size.X, size.Y, density, 18, 80))
			verso, recto := p.sheets[pagemodel.Verso].page, p.sheets[pagemodel.Recto].page
			if verso.Size() != recto.Size() || verso.Max.X != recto.Min.X || verso.Min.Y != recto.Min.Y {
				t.Errorf("%v at %v: verso %v, recto %v", size, density, verso, recto)
			}
			for side, s := range p.sheets {
				if s.seen != s.page {
					t.Errorf("%v at %v: page %v is seen only in part: %v of %v", size, density, side, s.seen, s.page)
				}
				if e := p.edges[side].box; !e.In(image.Rectangle{Max: p.size}) {
					t.Errorf("%v at %v: the fore-edge %v reaches out of the window", size, density, e)
				}
			}
		}
	}
}

// TestAWindowBelow1150 shows one page whole, and a slip of the facing one where
// they could not both be whole as large.
func TestAWindowBelow1150(t *testing.T) {
	for _, working := range []pagemodel.Side{pagemodel.Verso, pagemodel.Recto} {
		in := planFor(800, 900, 1, 18, 80)
		in.working = working
		p := newPlan(in)
		if !p.narrow {
			t.Fatal("not narrow")
		}
		if s := p.sheets[working]; s.seen != s.page || !s.seen.In(p.view) {
			t.Errorf("the page worked on is not whole: %v of %v", s.seen, s.page)
		}
		facing := p.sheets[working.Facing()]
		if facing.seen.Empty() || facing.seen.Dx() >= facing.page.Dx() || !facing.seen.In(p.view) {
			t.Errorf("the slip is %v of %v", facing.seen, facing.page)
		}
	}
	if p := newPlan(planFor(1100, 600, 1, 18, 80)); p.narrow {
		t.Error("both pages fit whole, and one is a slip")
	}
}

func TestTheFirstSpreadHasNoVerso(t *testing.T) {
	p := newPlan(planFor(1400, 900, 1, 1, 80))
	if v := p.sheets[pagemodel.Verso]; !v.seen.Empty() || p.edges[pagemodel.Verso].lines != 0 {
		t.Errorf("a verso %v, %d leaves before it", v, p.edges[pagemodel.Verso].lines)
	}
	p = newPlan(planFor(1400, 900, 1, 80, 80))
	if r := p.sheets[pagemodel.Recto]; !r.seen.Empty() || p.edges[pagemodel.Recto].lines != 0 {
		t.Errorf("a recto %v after the last page", r)
	}
}

// TestALargeBookCanBeMovedToItsCorners, and no farther.
func TestALargeBookCanBeMovedToItsCorners(t *testing.T) {
	in := planFor(1400, 900, 1, 18, 80)
	in.zoom = 3
	in.moved = image.Pt(1<<20, 1<<20)
	p := newPlan(in)
	if p.book.Min.X < 0 || p.book.Min.Y < p.view.Min.Y || p.book.Min.X > p.size.X/2 {
		t.Errorf("moved right and down the book lies at %v in %v", p.book, p.view)
	}
	in.moved = image.Pt(-1<<20, -1<<20)
	p = newPlan(in)
	if p.book.Max.X > p.size.X || p.book.Max.Y > p.view.Max.Y {
		t.Errorf("moved left and up the book lies at %v in %v", p.book, p.view)
	}
	if seen := p.sheets[pagemodel.Recto].seen; !seen.In(p.view) {
		t.Errorf("a page is drawn outside the view: %v", seen)
	}
}

func TestAPixelIsAPointAndBack(t *testing.T) {
	for _, density := range []float64{1, 1.3, 2} {
		p := newPlan(planFor(1400, 900, density, 18, 80))
		for _, at := range []image.Point{{700, 300}, {911, 417}, {1003, 699}} {
			for side := range p.sheets {
				if got := p.fromPage(pagemodel.Side(side), p.toPage(pagemodel.Side(side), at)); got != at {
					t.Errorf("at %v, %v comes back as %v", density, at, got)
				}
			}
		}
	}
}

// TestEveryLeafHasAPlace: whatever the extent, the fore-edges hold all leaves
// but the open ones, and each line gives a leaf that it stands for.
func TestEveryLeafHasAPlace(t *testing.T) {
	for _, extent := range []int{1, 2, 3, 16, 69, 80, 240, 1200} {
		for page := 1; page <= extent; page += max(1, extent/7) {
			p := newPlan(planFor(1400, 900, 1, page, extent))
			spread := pagemodel.SpreadOf(page, extent)
			for leaf := 1; leaf <= pagemodel.Leaf(extent); leaf++ {
				open := leaf == pagemodel.Leaf(spread.Verso) && spread.Verso > 0 || leaf == pagemodel.Leaf(spread.Recto) && spread.Recto > 0
				_, left := p.edges[pagemodel.Verso].place(leaf)
				_, right := p.edges[pagemodel.Recto].place(leaf)
				if open == (left || right) || left && right {
					t.Fatalf("extent %d open at %d: leaf %d open %v, left %v, right %v", extent, page, leaf, open, left, right)
				}
			}
			checkEdges(t, &p, extent)
		}
	}
}

func checkEdges(t *testing.T, p *plan, extent int) {
	t.Helper()
	for side := range p.edges {
		e := &p.edges[side]
		if wide := e.box.Dx(); wide > p.units(edgeRoom) {
			t.Errorf("a fore-edge %d pixels thick", wide)
		}
		for i := range e.leaves {
			got, ok := e.at(image.Pt(e.x(i), e.box.Min.Y+5))
			if !ok || e.line(got) != e.line(i) {
				t.Fatalf("extent %d: leaf %d of %d is drawn where leaf %d is taken", extent, i, e.leaves, got)
			}
			s := e.spread(i, extent)
			if leaf := e.leaf(i); pagemodel.Leaf(s.Verso) != leaf && pagemodel.Leaf(s.Recto) != leaf {
				t.Fatalf("leaf %d opens the book at %v", leaf, s)
			}
		}
	}
}

func TestTicksKeepApart(t *testing.T) {
	p := newPlan(planFor(1400, 900, 1, 18, 80))
	var ticks []tick
	for page := 20; page < 50; page += 2 {
		ticks = append(ticks, tick{page: page, depth: 0.3, faulty: page%4 == 0})
	}
	// The back of the open recto's leaf counts too, the open pages do not.
	placed := p.placeTicks(append(ticks, tick{page: 18, depth: 0.5}))
	if len(placed) != len(ticks) {
		t.Fatalf("%d ticks of %d are placed", len(placed), len(ticks))
	}
	for i := 1; i < len(placed); i++ {
		if placed[i].end.Y-placed[i-1].end.Y < 12 {
			t.Errorf("ticks at %d and %d", placed[i-1].end.Y, placed[i].end.Y)
		}
		if i, n := placed[i], placed[i].tick.page; n == 18 || n == 19 {
			t.Errorf("an open page has a tick: %+v", i)
		}
		if got, ok := p.tickAt(placed, placed[i].end); !ok || got.page != placed[i].page {
			t.Errorf("the hand on the tick of page %d takes that of %d", placed[i].page, got.page)
		}
	}
}

func TestRowsOfAnEmptyPage(t *testing.T) {
	if got := rowsOf(&typeset.Page{}, pagemodel.LineRef{Poem: 1, Line: 1}); len(got) != 0 {
		t.Errorf("rows %v", got)
	}
}
