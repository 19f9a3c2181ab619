package marks

import (
	"headland/typeset"
)

// setMargins sets what stands in the margins, row by row.
func (m *marker) setMargins(f frame, entries []entry) {
	inOrder(entries)
	outer, inner := m.columns(f)
	for len(entries) > 0 {
		n := 1
		for n < len(entries) && entries[n].baseline == entries[0].baseline {
			n++
		}
		m.setRow(f, outer, inner, entries[:n])
		entries = entries[n:]
	}
	outer.settle()
	inner.settle()
}

// setRow sets the entries of one row: in the outer margin, if they fit there
// beside each other and level with it; else those in the inner half of the line
// in the inner margin.
func (m *marker) setRow(f frame, outer, inner *column, row []entry) {
	var all []bit
	for i := range row {
		all = append(all, m.begun(m.fitted(outer, &row[i], outer.width()), i)...)
	}
	level := outer.foot <= row[0].baseline+m.design.Leading-times(outer.sized(matterSize), ascent)
	roomy := inner.width() >= m.design.Size*narrowest
	if !roomy || level && (len(row) == 1 || len(wrapped(all, outer.width())) == 1) {
		m.place(f, outer, row)
		return
	}
	middle, cut := f.text.X+f.text.W/2, 0
	for cut < len(row) && row[cut].x < middle {
		cut++
	}
	if inner.flushRight {
		m.place(f, inner, row[:cut])
		m.place(f, outer, row[cut:])
		return
	}
	m.place(f, outer, row[:cut])
	m.place(f, inner, row[cut:])
}

// begun are the bits of an entry that is the i-th on its row. It stays together on
// a line of its own where it does not fit on that of the one before.
func (m *marker) begun(bits []bit, i int) []bit {
	if i > 0 {
		bits[0].gap, bits[0].entry = m.design.Size, widthOf(bits)
	}
	return bits
}

// place sets entries of one row in a column, circled ones by themselves.
func (m *marker) place(f frame, c *column, row []entry) {
	for i := 0; i < len(row); {
		if row[i].note != "" {
			m.placeNote(f, c, &row[i])
			i++
			continue
		}
		var bits []bit
		k := i
		for ; k < len(row) && row[k].note == ""; k++ {
			bits = append(bits, m.begun(m.fitted(c, &row[k], c.width()), k-i)...)
		}
		m.placeLines(f, c, row[i].baseline, wrapped(bits, c.width()))
		i = k
	}
}

// ascent and descent are how far an entry reaches above its baseline and below,
// in ems of the new matter.
const (
	ascent  = 0.86
	descent = 0.28
)

// placeLines sets lines at a row's height, or where the column is free.
func (m *marker) placeLines(f frame, c *column, baseline typeset.Length, lines [][]bit) {
	size := c.sized(matterSize)
	step, first := times(size, ascent+descent), lines[0][0]
	c.add(block{
		row: baseline, above: times(size, ascent), below: typeset.Length(len(lines)-1)*step + times(size, descent),
		draw: func(at typeset.Length) {
			m.lead(f, c, baseline, at, first)
			for i, line := range lines {
				m.placeLine(f, c, at+typeset.Length(i)*step, line)
			}
		},
	})
}

// lead draws a thin line from a row to what stands above or below its height.
func (m *marker) lead(f frame, c *column, row, at typeset.Length, b bit) {
	if max(at-row, row-at) < m.design.Size/3 {
		return
	}
	p := &pencil{frame: f, whose: b.whose, em: m.design.Size}
	x, out := c.left, -1.0
	if c.flushRight {
		x, out = c.right, 1
	}
	p.draw(x, row, line(knot{out * 0.9, 0.25}, knot{out * 0.6, 0.25}, knot{out * 0.15, 0.25 - p.in(at-row)}))
	p.strokes[0].Width /= 2
	m.over.Strokes = append(m.over.Strokes, p.strokes...)
}

// placeLine sets bits beside each other, against the text's side of the column.
func (m *marker) placeLine(f frame, c *column, baseline typeset.Length, bits []bit) {
	x := c.left
	if c.flushRight {
		x = c.right - widthOf(bits)
	}
	m.setBits(f, x, baseline, bits)
}

// setBits sets bits from an x on; words that follow each other are one row.
func (m *marker) setBits(f frame, x, baseline typeset.Length, bits []bit) {
	for i := 0; i < len(bits); {
		b, n := bits[i], i+1
		if i > 0 {
			x += b.gap
		}
		if b.shape != nil {
			p := &pencil{frame: f, whose: b.whose, em: b.size}
			p.draw(x, baseline, b.shape.curves...)
			m.over.Strokes = append(m.over.Strokes, p.strokes...)
		} else {
			for n < len(bits) && bits[n].shape == nil && bits[n].size == b.size && bits[n].gap < b.size/2 {
				b.text += " " + bits[n].text
				n++
			}
			m.setWords(f, x, baseline, b)
		}
		x += widthOf(bits[i:n])
		i = n
	}
}

// setWords sets words as a row of the overlay.
func (m *marker) setWords(f frame, x, baseline typeset.Length, b bit) {
	run := m.words(b.text, b.size, b.italic)
	m.over.Rows = append(m.over.Rows, typeset.Row{
		Role: typeset.RoleMatter, End: len(b.text), X: x, Baseline: baseline, Width: run.Width, Room: run.Width,
		Last: true, Turned: f.turned, Runs: []typeset.Run{run},
	})
	m.over.Whose = append(m.over.Whose, b.whose)
}

// placeNote sets an instruction, circled.
func (m *marker) placeNote(f frame, c *column, e *entry) {
	size := c.sized(noteSize)
	pad, step := times(size, 0.8), times(size, 1.2)
	lines := wrapped(m.fitted(c, e, c.width()-2*pad), c.width()-2*pad)
	var wide typeset.Length
	for _, l := range lines {
		wide = max(wide, widthOf(l))
	}
	x := c.left + pad
	if c.flushRight {
		x = c.right - pad - wide
	}
	above, below := times(size, 0.9)+pad/2, typeset.Length(len(lines)-1)*step+times(size, 0.35)+pad/2
	c.add(block{row: e.baseline, above: above + size/4, below: below, draw: func(at typeset.Length) {
		m.lead(f, c, e.baseline, at, lines[0][0])
		for i, l := range lines {
			m.setBits(f, x, at+typeset.Length(i)*step, l)
		}
		p := &pencil{frame: f, whose: e.c.Whose, em: c.sized(matterSize)}
		p.panel(x-pad, at-above, x+wide+pad, at+below, times(size, 1.1))
		m.over.Strokes = append(m.over.Strokes, p.strokes...)
	}})
}
