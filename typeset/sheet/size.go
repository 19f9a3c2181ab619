package sheet

import (
	"headland/pagemodel"
	"headland/typeset"
)

// sizeStep is what sizes differ by.
var sizeStep = pagemodel.Pt(0.5)

// sized is a source in the size that was chosen for it.
type sized struct {
	size  typeset.Length
	units []unit
}

// fit sets a source as large as the format allows: no line turns over that can
// stand whole in the format's smallest type, and, where that type lets it stand
// whole on a leaf below a head of that depth, it does so.
func (c *compositor) fit(s *source, f *Format, head typeset.Length) sized {
	measure := f.measure()
	units, turned := c.set(s, f.Least, measure)
	least := sized{f.Least, units}
	whole := depth(units) <= f.rows(f.Least, head)
	best := least
	low, high := 0, int((longest(s, units, f)-f.Least)/sizeStep)
	for low < high {
		middle := (low + high + 1) / 2
		size := f.Least + typeset.Length(middle)*sizeStep
		tried, turns := c.set(s, size, measure)
		if turns > turned || whole && depth(tried) > f.rows(size, head) {
			high = middle - 1
			continue
		}
		low, best = middle, sized{size, tried}
	}
	return best
}

// longest is the size at which the longest of the lines that don't turn over in the
// format's smallest type fills the measure, at most the format's largest.
func longest(s *source, units []unit, f *Format) typeset.Length {
	size := f.Most
	for i := range units {
		row := &units[i].rows[0]
		if row.Role != typeset.RoleVerse || len(units[i].rows) > 1 || row.Width <= 0 {
			continue
		}
		width := row.Width
		if row.X > f.Side && !ranged(s, row.Line) {
			width += row.X - f.Side
		}
		size = min(size, typeset.Length(int64(f.Least)*int64(f.measure())/int64(width)))
	}
	return max(f.Least, size)
}

// ranged says that a line is centred or ranged right: the white before it is not
// its own.
func ranged(s *source, line pagemodel.LineID) bool {
	for i := range s.lines {
		if s.lines[i].ID() == line {
			return s.lines[i].Range() != pagemodel.RangeLeft
		}
	}
	return false
}
