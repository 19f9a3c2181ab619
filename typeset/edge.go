package typeset

import "headland/pagemodel"

// edgeOf is where the left edge of a poem stands: where the poet says, else
// where the design says, else at the left of the measure.
func edgeOf(d *pagemodel.Design, h pagemodel.PoemHead) pagemodel.Edge {
	for _, edge := range [...]pagemodel.Edge{h.Edge, d.Edge} {
		if edge != pagemodel.EdgeOfBook {
			return edge
		}
	}
	return pagemodel.EdgeLeft
}

// shiftToEdge moves the verse of one poem on one page, whose X count from the
// left of the measure, to where its left edge is to stand. All of it moves by
// one amount, turnovers with their lines and part headings and the closing place
// with the verse; never left of the measure, nor out of it at the right. What
// stays is the head, which keeps the edge of the book's other heads, prose,
// which fills the measure, and lines that are centred or ranged right in it.
func shiftToEdge(rows []Row, edge pagemodel.Edge, measure Length) {
	var x extent
	for i := range rows {
		if rows[i].keepsEdge() {
			x.add(&rows[i])
		}
	}
	shift := x.shift(edge, measure)
	if shift == 0 {
		return
	}
	for i := range rows {
		if rows[i].keepsEdge() {
			rows[i].X += shift
			rows[i].Room -= shift
		}
	}
}

// keepsEdge says that the row begins at, or so far from, the poem's left edge.
func (r *Row) keepsEdge() bool {
	switch r.Role {
	case RoleVerse:
		return !r.ranged
	case RoleHeading, RolePlace:
		return true
	}
	return false
}

// extent is how far the rows that keep a poem's left edge reach, on one page.
type extent struct {
	rows, verse   int
	least, most   Length // of all the rows
	left          Length // of the verse
	longest, next Length // the two ends of verse that are farthest right
}

func (x *extent) add(r *Row) {
	// A mark that hangs outside the edge does not move it.
	left, end := max(0, r.X), r.X+r.Width
	if x.rows == 0 {
		x.least, x.most = left, end
	}
	x.rows++
	x.least, x.most = min(x.least, left), max(x.most, end)
	if r.Role != RoleVerse {
		return
	}
	switch {
	case x.verse == 0:
		x.left, x.longest, x.next = left, end, left
	case end > x.longest:
		x.longest, x.next = end, x.longest
	default:
		x.next = max(x.next, end)
	}
	x.left = min(x.left, left)
	x.verse++
}

// shift is how far the rows are to move right.
func (x *extent) shift(edge pagemodel.Edge, measure Length) Length {
	if x.verse == 0 || edge != pagemodel.EdgeCentre && edge != pagemodel.EdgeOptic {
		return 0
	}
	end := x.longest
	if edge == pagemodel.EdgeOptic && x.freakish() {
		end = x.next
	}
	shift := (measure - end - x.left) / 2
	return max(-x.least, min(shift, measure-x.most))
}

// freakish says that one line of the page is disproportionately long, so that
// the poem is to be centred by the others (New Hart's Rules 9.4.2): by more than
// a third than the next longest, which is our measure of it. Since the line must
// stay within the measure, one that leaves but an em of it has the em at its
// left and runs fully to the right (Brossard, Le Correcteur typographe, 1934,
// 68, after Desormes).
func (x *extent) freakish() bool {
	return x.verse > 1 && 3*(x.longest-x.left) > 4*(x.next-x.left)
}
