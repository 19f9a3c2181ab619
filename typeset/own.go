package typeset

import "headland/pagemodel"

// A poem may have a size and a lie of its own. Both stay on the book's grid.

// The sizes that type can be set in, as pagemodel.Design.Check has them.
const (
	leastSize    = 4 * pagemodel.Point
	greatestSize = 72 * pagemodel.Point
)

// sizeOf is the size of a poem's verse: its own, or the design's where it has
// none or one that can't be set.
func sizeOf(d *pagemodel.Design, h pagemodel.PoemHead) Length {
	if h.Size < leastSize || h.Size > greatestSize {
		return d.Size
	}
	return h.Size
}

// measureOf is the measure of a poem that lies so. On its side a poem's lines
// run up the depth of the page; across the spread they run from the left edge of
// the verso's text to the right edge of the recto's.
func measureOf(d *pagemodel.Design, lie pagemodel.Lie) Length {
	switch lie {
	case pagemodel.Turned:
		return d.Depth()
	case pagemodel.Across:
		return 2 * (d.Measure() + d.Margins.Inner)
	}
	return d.Measure()
}

// headMeasure is the measure of words that are not the poet's lines. Those of a
// poem across the spread keep to the verso: a head in the midst of the spread
// would fall into the gutter.
func (b *blocks) headMeasure() Length {
	if b.lie == pagemodel.Across {
		return b.design.Measure()
	}
	return b.measure
}
