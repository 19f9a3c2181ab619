package marks

import "headland/typeset"

// A column is the part of a margin that marks may stand in.
type column struct {
	left, right typeset.Length
	flushRight  bool           // it lies left of the text
	narrow      bool           // new matter has little room in it
	size        typeset.Length // of the verse, or somewhat less in a narrow one
	head, end   typeset.Length // of the paper
	foot        typeset.Length // of what stands in it so far
	blocks      []block
}

// sized is a part of the column's size, or the least that can be read.
func (c *column) sized(part float64) typeset.Length { return max(times(c.size, part), leastSize) }

func (c *column) width() typeset.Length { return c.right - c.left }

// standOff is how far the margin's marks stay off the text, in ems: marks in the
// text reach so far beyond it.
const standOff = 1.3

// narrowest is the least width, in ems, at which a column is used at all if the
// other is wider.
const narrowest = 3

// wide is the width, in ems, from which on a column is not narrow.
const wide = 7

// columns are the outer one and the inner one.
func (m *marker) columns(f frame) (outer, inner *column) {
	off, edge := times(m.design.Size, standOff), m.design.Size/3
	left := &column{left: edge - m.room, right: f.text.X - off, flushRight: true}
	right := &column{left: f.text.X + f.text.W + off, right: f.width + m.room - edge}
	outer, inner = left, right
	if f.outerRight {
		outer, inner = right, left
	}
	for _, c := range []*column{left, right} {
		c.head, c.foot, c.end = edge-m.room, edge-m.room, f.height+m.room-edge
		if c.size = m.design.Size; c.width() < m.design.Size*wide {
			c.narrow, c.size = true, times(m.design.Size, smaller)
		}
	}
	if least := m.design.Size * narrowest; outer.width() < least && inner.width() > outer.width() {
		outer, inner = inner, outer
	}
	return outer, inner
}

// A block is what stands together in a column: lines, or a ring with its words.
type block struct {
	row          typeset.Length // the baseline that it is to be level with
	above, below typeset.Length // how far it reaches above its first baseline and below it
	at           typeset.Length // where that comes to stand
	draw         func(at typeset.Length)
}

// add puts a block at its row, or below what stands there already.
func (c *column) add(b block) {
	b.at = max(b.row, c.foot+b.above)
	c.foot = b.at + b.below
	c.blocks = append(c.blocks, b)
}

// settle draws the blocks. Where the last ones would stand off the paper, they and
// what is in their way move up.
func (c *column) settle() {
	end := c.end
	for i := len(c.blocks) - 1; i >= 0; i-- {
		b := &c.blocks[i]
		b.at = max(min(b.at, end-b.below), c.head+b.above)
		end = b.at - b.above
	}
	for i := range c.blocks {
		c.blocks[i].draw(c.blocks[i].at)
	}
}
