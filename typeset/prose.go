package typeset

import "headland/pagemodel"

// setProse fills a paragraph: rows of as many words as fit, ragged right. Its
// line ends are the setting's, so none of them is a turnover.
func (b *blocks) setProse(s pagemodel.Stanza, gap int) {
	for i := range s.Lines() {
		l := &s.Lines()[i]
		b.absentStyles(l)
		rows := b.fill(l, b.compose(l, 0, len(l.Text())))
		groups := make([][]Row, len(rows))
		for j := range rows {
			groups[j] = rows[j : j+1]
		}
		b.addGroup(groups, gap)
		b.sayProse(l, len(rows))
		gap = 0
	}
}

// sayProse marks the units of the paragraph just added: the poet's page break
// goes before its first row, and a tie after its last.
func (b *blocks) sayProse(l *pagemodel.Line, n int) {
	units := b.units[len(b.units)-n:]
	for i := range units {
		units[i].prose = true
	}
	units[0].opens, units[n-1].tied = l.OpensPage(), l.Tied()
}

// fill sets a paragraph's words over as many rows as they need.
func (b *blocks) fill(l *pagemodel.Line, p piece) []Row {
	rows := b.fillRows(l, p)
	for i := range rows {
		rows[i].Role = RoleProse
	}
	rows[len(rows)-1].Last = true
	return rows
}

func (b *blocks) fillRows(l *pagemodel.Line, p piece) []Row {
	if p.width <= b.measure {
		return []Row{b.row(l, p, 0, 0, LineStart)}
	}
	var rows []Row
	t := newTurner(b.compositor, l, 0, p)
	for {
		head, next := t.head(b.measure)
		rows = append(rows, b.row(l, head, 0, t.start, LineStart))
		if next >= p.end {
			return rows
		}
		t.advance(next)
	}
}
