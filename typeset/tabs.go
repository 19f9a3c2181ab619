package typeset

import (
	"unicode/utf8"

	"headland/pagemodel"
)

// A tab stop counts from the poem's left edge, so a piece of a line with stops
// can be composed only where it is known where the piece begins.

func hasTab(l *pagemodel.Line) bool { return lastTab(l) >= 0 }

// lastTab is the byte offset of what stands at the line's last tab stop, or -1.
func lastTab(l *pagemodel.Line) int {
	for i := len(l.Gaps()) - 1; i >= 0; i-- {
		if l.Gaps()[i].Tab {
			return l.Gaps()[i].At
		}
	}
	return -1
}

// white is the width of a gap before the byte offset at, which without it would
// stand at x.
func (c *compositor) white(l *pagemodel.Line, at, start int, x Length) Length {
	gap := gapBefore(l, at, start)
	if !gap.Tab {
		return gap.Width.At(c.size)
	}
	if stop := gap.Width.At(c.size); x <= stop {
		return stop - x
	}
	if r, _ := utf8.DecodeLastRuneInString(l.Text()[:at]); pagemodel.IsSpace(r) {
		return 0 // the word space stands there already
	}
	face := c.faces.styles[faceStyle(styleAt(l, at))]
	return face.at(c.size, c.shaper.shape(face, plainCase, " ").width)
}

// begin composes a piece of a line and says where it begins.
func (f *fitter) begin(l *pagemodel.Line, start, end int) (piece, Length) {
	if !hasTab(l) {
		p := f.compose(l, start, end)
		return p, f.left(l, start, p.width)
	}
	x := f.left(l, start, 0)
	p := f.composeAt(l, start, end, f.stopsFrom(l, x))
	if pulledIn := f.left(l, start, p.width); pulledIn != x {
		x = pulledIn
		p = f.composeAt(l, start, end, f.stopsFrom(l, x))
	}
	return p, x
}

// stopsFrom is how far from the poem's left edge a row at x begins, for its tab
// stops. A line that is centred or ranged right does not know the edge: its
// stops count from its own beginning.
func (f *fitter) stopsFrom(l *pagemodel.Line, x Length) Length {
	if l.Range() != pagemodel.RangeLeft {
		return 0
	}
	return x
}

// pastStops is farther right than any tab stop.
const pastStops Length = 1 << 29

// leastWide is a piece as a turner is to measure it: where it has tab stops,
// with all of them passed, since what they add depends on where a row begins.
func (f *fitter) leastWide(l *pagemodel.Line, start int, p piece) piece {
	if !hasTab(l) {
		return p
	}
	return f.composeAt(l, start, p.end, pastStops)
}
