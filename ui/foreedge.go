package ui

import (
	"image"

	"headland/pagemodel"
)

// foreEdge is the leaves before or after the open spread, seen edge on: a line
// for each leaf on whole device pixels, or for several where there are more
// leaves than room.
type foreEdge struct {
	box     image.Rectangle
	outward int // -1 to the left, 1 to the right
	pitch   int // device pixels from one line to the next
	lines   int
	leaves  int
	nearest int // the leaf that lies next to the page
}

// leaf is the i-th leaf from the page outward.
func (e *foreEdge) leaf(i int) int { return e.nearest + i*e.outward }

// x is the left edge of the leaf's line, by its place from the page outward.
func (e *foreEdge) x(i int) int {
	line := e.line(i)
	if e.outward < 0 {
		return e.box.Max.X - (line+1)*e.pitch
	}
	return e.box.Min.X + line*e.pitch
}

func (e *foreEdge) line(i int) int {
	if i < 0 || e.leaves == 0 {
		return min(i, 0)
	}
	return min(i, e.leaves-1) * e.lines / e.leaves
}

// at is the place, from the page outward, of the leaf at a device pixel; false
// outside the edge.
func (e *foreEdge) at(p image.Point) (int, bool) {
	if e.lines == 0 || !p.In(e.box) {
		return 0, false
	}
	line := (p.X - e.box.Min.X) / e.pitch
	if e.outward < 0 {
		line = (e.box.Max.X - 1 - p.X) / e.pitch
	}
	// The first leaf that the line stands for.
	i := (line*e.leaves + e.lines - 1) / e.lines
	return min(i, e.leaves-1), true
}

// place is a leaf's place from the page outward; false if it lies on the other
// side.
func (e *foreEdge) place(leaf int) (int, bool) {
	i := (leaf - e.nearest) * e.outward
	return i, i >= 0 && i < e.leaves
}

// spread is what lies open when the book is parted at the i-th leaf: on the
// right, so that its recto is seen; on the left, so that its verso is.
func (e *foreEdge) spread(i, extent int) pagemodel.Spread {
	page := 2*e.leaf(i) - 1
	if e.outward < 0 {
		page++
	}
	return pagemodel.SpreadOf(min(page, extent), extent)
}

// tick says that a leaf holds something that wants the poet.
type tick struct {
	page   int
	faulty bool    // a ring; else a bar, for what is unsettled
	depth  float64 // where on the page, from 0 at the head to 1 at the foot
}

// placedTick is a tick with its place on the desk.
type placedTick struct {
	tick
	edge int // pagemodel.Side of the fore-edge
	leaf int // its place from the page outward
	root image.Point
	end  image.Point
}

// placeTicks places the ticks of pages that are not open, moved down where they
// would stand on one another. Ticks must be ordered by depth.
func (p *plan) placeTicks(ticks []tick) []placedTick {
	apart := p.units(14)
	below := [2]int{}
	var placed []placedTick
	for _, t := range ticks {
		side, i, ok := p.edgeOf(t.page)
		if !ok {
			continue
		}
		e := &p.edges[side]
		y := e.box.Min.Y + int(t.depth*float64(e.box.Dy()))
		y = min(max(y, below[side]), e.box.Max.Y-p.units(6))
		below[side] = y + apart
		end := e.box.Max.X + p.units(tickRoom/3)
		if e.outward < 0 {
			end = e.box.Min.X - p.units(tickRoom/3)
		}
		placed = append(placed, placedTick{t, side, i, image.Pt(e.x(i), y), image.Pt(end, y)})
	}
	return placed
}

// edgeOf finds the fore-edge that a page's leaf lies in, and its place there
// from the page outward. The back of an open page's leaf has the place -1.
func (p *plan) edgeOf(page int) (side, place int, ok bool) {
	for side := range p.edges {
		e := &p.edges[side]
		if e.outward == 0 || page == p.sheets[side].number {
			continue
		}
		if i, ok := e.place(pagemodel.Leaf(page)); ok || i == -1 {
			return side, i, true
		}
	}
	return 0, 0, false
}

// tickAt is the tick whose head is under the hand.
func (p *plan) tickAt(ticks []placedTick, at image.Point) (placedTick, bool) {
	reach := p.units(7)
	for _, t := range ticks {
		outside := (at.X-t.end.X)*p.edges[t.edge].outward > -p.units(tickRoom/3)
		near := abs(at.X-t.end.X) <= p.units(tickRoom/3) && abs(at.Y-t.end.Y) <= reach
		if outside && near {
			return t, true
		}
	}
	return placedTick{}, false
}

func abs(v int) int { return max(v, -v) }
