package typeset

import (
	"headland/pagemodel"
)

// unit is what a page end can't part: one of the poet's lines with its
// turnovers, a row of a paragraph, a row of a poem's head.
type unit struct {
	rows   []Row
	before int  // blank rows before it, unless it opens a continuation page
	group  int  // the stanza or other group that it belongs to
	at, of int  // its place in the group, from 0, and the group's length
	keep   bool // never parted from the unit after it
}

// blocks sets one poem as a list of units, in order.
type blocks struct {
	fitter
	units  []unit
	group  int
	head   int // how many units make the head
	turned []overlong
	faults []poemFault
}

// overlong is a line of the poem that exceeds its room.
type overlong struct {
	line    pagemodel.LineID
	stanza  int // through the whole poem, from 1
	number  int // in its stanza, from 1
	text    string
	parts   int
	overrun Length
	state   pagemodel.State
}

// setPoem makes the units of a poem.
func (b *blocks) setPoem(p *pagemodel.Poem) {
	b.poem = p.ID()
	b.deepest = deepestIndent(p).At(b.size)
	b.setHead(p)
	stanza := 0
	for _, part := range p.Parts() {
		b.prevEnd = 0
		b.setHeading(part.Heading())
		for i, s := range part.Stanzas() {
			gap := b.design.StanzaGap
			if i == 0 && part.Heading() != "" {
				gap = 1
			}
			stanza++
			b.setStanza(s, stanza, gap)
		}
	}
	b.setPlace(p.Head().Place)
}

func deepestIndent(p *pagemodel.Poem) pagemodel.Em {
	var deepest pagemodel.Em
	for _, l := range p.Lines() {
		deepest = max(deepest, l.Indent())
	}
	return deepest
}

// setStanza adds a stanza's lines, gap blank rows below what is above.
func (b *blocks) setStanza(s pagemodel.Stanza, number, gap int) {
	if s.Kind() == pagemodel.Prose {
		b.setProse(s, gap)
		return
	}
	lines := make([]fitted, len(s.Lines()))
	for i := range s.Lines() {
		lines[i] = b.fit(&s.Lines()[i])
		b.note(&lines[i], number, i+1)
		b.absentStyles(&s.Lines()[i])
	}
	b.closeRivers(lines)
	groups := make([][]Row, len(lines))
	for i := range lines {
		groups[i] = lines[i].rows
	}
	b.addGroup(groups, gap)
}

// note remembers a line that exceeds its room. A line broken in this edition
// is settled only if no piece of it still turns.
func (b *blocks) note(f *fitted, stanza, number int) {
	if f.overrun == 0 && !f.turned {
		return
	}
	state := f.line.State()
	if state == pagemodel.Broken && f.turned {
		state = pagemodel.Unsettled
	}
	b.turned = append(b.turned, overlong{
		line: f.line.ID(), stanza: stanza, number: number, text: f.line.Text(),
		parts: len(f.rows), overrun: f.overrun, state: state,
	})
}

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
		gap = 0
	}
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

// addGroup adds units that stand together, gap blank rows below the last.
func (b *blocks) addGroup(units [][]Row, gap int) {
	b.group++
	for i, rows := range units {
		u := unit{rows: rows, group: b.group, at: i, of: len(units)}
		if i == 0 && len(b.units) > 0 {
			u.before = gap
		}
		b.units = append(b.units, u)
		b.missing(rows)
	}
}

// absentStyles notes the words whose style the family has no face for.
func (b *blocks) absentStyles(l *pagemodel.Line) {
	for _, s := range l.Spans() {
		if b.faces.absent[faceStyle(s.Style)] {
			b.faults = append(b.faults, poemFault{kind: AbsentFace, line: l.ID(), text: l.Text()[s.Start:s.End]})
		}
	}
}

// missing notes the characters that the face has no glyph for.
func (b *blocks) missing(rows []Row) {
	for i := range rows {
		for _, run := range rows[i].Runs {
			for _, g := range run.Glyphs {
				if g.ID == 0 {
					b.faults = append(b.faults, poemFault{kind: MissingGlyph, line: rows[i].Line, text: missingText(run, g)})
				}
			}
		}
	}
}

func missingText(run Run, g Glyph) string {
	for _, r := range run.Text[g.Cluster:] {
		return string(r)
	}
	return run.Text
}
