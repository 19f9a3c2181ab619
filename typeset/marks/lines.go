package marks

import "headland/typeset"

// lines.go has the marks that stand between two rows, or at the ends of two.

// A gap is the white between a row and the one below it on the page, or below the
// last one.
type gap struct{ above, below *typeset.Row }

// gapAfter is the white below the stretch's row, or where before is true, that
// above it.
func (m *marker) gapAfter(s stretch, before bool) gap {
	rows := m.page.Rows
	if before {
		return gap{beside(rows, s.index, -1), s.row}
	}
	return gap{s.row, beside(rows, s.index, 1)}
}

// beside is the next row of the poet's lines, of the same poem, one way or the
// other; nil where there is none on the page.
func beside(rows []typeset.Row, i, way int) *typeset.Row {
	for k := i + way; k >= 0 && k < len(rows); k += way {
		if rows[k].Line != 0 {
			if rows[k].Poem != rows[i].Poem {
				return nil
			}
			return &rows[k]
		}
	}
	return nil
}

// left is the farthest left that the rows about the gap reach.
func (g gap) left() typeset.Length {
	if g.above == nil || g.below == nil {
		return g.any().X
	}
	return min(g.above.X, g.below.X)
}

// right is the farthest right that they reach.
func (g gap) right() typeset.Length {
	right := g.any().X + g.any().Width
	if g.above != nil && g.below != nil {
		right = max(right, g.above.X+g.above.Width)
	}
	return right
}

func (g gap) any() *typeset.Row {
	if g.below != nil {
		return g.below
	}
	return g.above
}

// level is the height midway between the letters above the gap and those below.
func (g gap) level(em typeset.Length) typeset.Length {
	switch {
	case g.above == nil:
		return g.below.Baseline - times(em, 0.9)
	case g.below == nil:
		return g.above.Baseline + times(em, 0.42)
	}
	return (g.above.Baseline+times(em, 0.2))/2 + (g.below.Baseline-times(em, 0.74))/2
}

// runOn is one curve from the end of a row, between the two, to the start of the
// next. Where that stands on another page, it breaks off below.
func (p *pencil) runOn(g gap) {
	if g.above == nil {
		return
	}
	end, y := g.above.X+g.above.Width+p.ems(0.14), g.above.Baseline-p.ems(0.26)
	drop := p.in(y - g.level(p.em))
	c := line(knot{0, 0}).bent(knot{0.9, 0}, knot{0.9, drop}, knot{-0.2, drop})
	if g.below != nil {
		start := p.in(g.below.X - end)
		foot := p.in(y - (g.below.Baseline - p.ems(0.26)))
		c = c.then(knot{start + 0.1, drop}).bent(knot{start - 1, drop}, knot{start - 1, foot}, knot{start - 0.14, foot})
	}
	p.draw(end, y, c)
}

// open is a level stroke in the white between two rows, which is to be made
// wider; a bow ends it on the outer side.
func (p *pencil) open(g gap) {
	left, right, y := g.left(), g.right(), g.level(p.em)
	w := p.in(right - left)
	bow := func(x, out float64) curve {
		return line(knot{x, 0.42}).bent(knot{x + out, 0.2}, knot{x + out, -0.2}, knot{x, -0.42})
	}
	if p.outerRight {
		p.draw(left, y, line(knot{0, 0}, knot{w + 0.5, 0}), bow(w+0.5, 0.24))
		return
	}
	p.draw(left, y, line(knot{-0.5, 0}, knot{w, 0}), bow(-0.5, -0.24))
}

// shut is a bow at both ends of the white between two rows, which is to go.
func (p *pencil) shut(g gap) {
	if g.above == nil || g.below == nil {
		p.open(g)
		return
	}
	left, right := g.left()-p.ems(0.3), g.right()+p.ems(0.3)
	y := g.above.Baseline - p.ems(0.2)
	h := p.in(y - (g.below.Baseline - p.ems(0.3)))
	p.draw(left, y, line(knot{0, 0}).bent(knot{-0.42, h / 4}, knot{-0.42, h * 3 / 4}, knot{0, h}))
	p.draw(right, y, line(knot{0, 0}).bent(knot{0.42, h / 4}, knot{0.42, h * 3 / 4}, knot{0, h}))
}

// swapLines is a squared S at the beginning of two rows: the upper one in its
// upper bay.
func (p *pencil) swapLines(g gap) {
	if g.above == nil || g.below == nil {
		return
	}
	x, y := g.left()-p.ems(0.2), g.above.Baseline-p.ems(0.75)
	middle := p.in(y - g.level(p.em))
	foot := p.in(y - (g.below.Baseline + p.ems(0.15)))
	p.draw(x, y, line(knot{0.1, 0}, knot{-0.6, 0}, knot{-0.6, middle}, knot{0.1, middle}, knot{0.1, foot}, knot{-0.6, foot}))
}
