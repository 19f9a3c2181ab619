package typeset

import "headland/pagemodel"

// setProse sets paragraphs, ragged right or justified as the design says. Their
// line ends are the setting's, so none of them is a turnover.
func (b *blocks) setProse(s pagemodel.Stanza, gap int) {
	for i := range s.Lines() {
		l := &s.Lines()[i]
		b.absentStyles(l)
		rows := b.paragraph(l)
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
// and white go before its first row, and a tie after its last.
func (b *blocks) sayProse(l *pagemodel.Line, n int) {
	units := b.units[len(b.units)-n:]
	for i := range units {
		units[i].prose = true
	}
	units[0].opens, units[n-1].tied = l.OpensPage(), l.Tied()
	b.whiteAbove(len(b.units)-n, l)
}

// paragraph breaks a paragraph into rows by total fit. Only a justified one has
// its words divided, but for soft hyphens, which are the poet's own leave. What
// has tab stops is ragged whatever the design says: wider word spaces would push
// words off their stops.
func (b *blocks) paragraph(l *pagemodel.Line) []Row {
	whole := b.compose(l, 0, len(l.Text()))
	if whole.width <= b.measure {
		row := b.row(l, whole, 0, 0, LineStart)
		row.Role, row.Last = RoleProse, true
		return []Row{row}
	}
	g := galley{compositor: b.compositor, line: l, whole: whole, measure: b.measure}
	justified := b.design.Prose == pagemodel.ProseJustified && !hasTab(l)
	var h *hyphenator
	if justified {
		h = hyphenatorFor(b.language)
	}
	g.stops = proseStops(l, whole.end, h)
	g.measureStops()
	p := paragraph{points: g.points, measure: b.measure, em: b.size, justified: justified, width: g.width}
	rows, ok := b.rowsOf(&g, &p)
	if !ok {
		rows, _ = b.rowsOf(&g, &p)
	}
	return rows
}

// rowsOf composes the rows that a paragraph is broken into. It is false where
// one of them is not as wide as it was thought to be, so that the paragraph must
// be broken again; the second time it never is.
func (b *blocks) rowsOf(g *galley, p *paragraph) ([]Row, bool) {
	breaks := p.breaks()
	rows := make([]Row, 0, len(breaks))
	from := 0
	for _, to := range breaks {
		set := g.row(b.compositor, from, to)
		if g.distrust(from, to, set.width) {
			return nil, false
		}
		if p.justified && !p.free(to) && p.fits(from, to, set.width) {
			justify(&set, b.measure)
		}
		row := b.row(g.line, set, 0, g.stops[from].next, LineStart)
		row.Role, row.Last = RoleProse, to == len(p.points)-1
		rows = append(rows, row)
		from = to
	}
	return rows, true
}

// justify widens or narrows the word spaces of a row so that it is exactly as
// wide as the measure; what does not divide evenly is spread along it. A row
// without a word space is left as it is.
func justify(p *piece, measure Length) {
	spaces := 0
	for r := range p.runs {
		for i := range p.runs[r].Glyphs {
			if isGlue(&p.runs[r], i) {
				spaces++
			}
		}
	}
	if spaces == 0 {
		return
	}
	extra, past := int(measure-p.width), 0
	moved := func() Length { return Length(extra * past / spaces) }
	for r := range p.runs {
		run := &p.runs[r]
		start := moved()
		run.X += start
		for i := range run.Glyphs {
			before := moved()
			run.Glyphs[i].X += before - start
			if isGlue(run, i) {
				past++
				run.Glyphs[i].Advance += moved() - before
			}
		}
		run.Width += moved() - start
	}
	p.width = measure
}
