package typeset

import (
	"headland/pagemodel"
)

// unit is what a page end can't part: one of the poet's lines with its
// turnovers, a row of a paragraph, a row of a poem's head.
type unit struct {
	rows   []Row
	before int  // blank rows before it, unless it opens a continuation page
	above  int  // how many of them the poet has put there, over the white that parts stanzas
	group  int  // the stanza or other group that it belongs to
	part   int  // of the poem, from 0
	at, of int  // its place in the group, from 0, and the group's length
	keep   bool // never parted from the unit after it
	tied   bool // the poet keeps it with the unit after it
	opens  bool // the poet has a page begin with it
	prose  bool // a row of a paragraph, not one of the poet's lines
	head   bool // of the poem's head
	goesOn bool // goes on with a line, deeper than a page, that the unit above began
}

// blocks sets one poem as a list of units, in order.
type blocks struct {
	fitter
	lie      pagemodel.Lie
	language string // of the book, by its BCP 47 tag
	former   *former
	units    []unit
	group    int
	part     int // of the poem, from 0
	head     int // how many units make the head
	turned   []overlong
	faults   []poemFault
}

// overlong is a line of the poem that exceeds its room.
type overlong struct {
	line    pagemodel.LineID
	stanza  int // through the whole poem, from 1
	number  int // in its stanza, from 1
	text    string
	parts   int
	overrun Length
	words   string // at which it turns, a space between them
	state   pagemodel.State
	why     string // a line that was let turn is unsettled again
}

// setPoem makes the units of a poem, at its own size and measure.
func (b *blocks) setPoem(p *pagemodel.Poem) {
	size := b.size
	defer func() { b.size = size }()
	b.poem, b.lie = p.ID(), p.Head().Lie
	b.size, b.measure = sizeOf(b.design, p.Head()), measureOf(b.design, b.lie)
	b.deepest = deepestIndent(p).At(b.size)
	b.setHead(p)
	stanza := 0
	for n, part := range p.Parts() {
		b.part, b.prevEnd = n, 0
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
	if len(b.units) == 0 {
		b.units = append(b.units, unit{rows: []Row{{}}, group: -1, of: 1}) // a poem of nothing still has its page
	}
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
		lines[i] = b.fitOrTakeOver(&s.Lines()[i])
		b.note(&lines[i], number, i+1)
		b.absentStyles(&s.Lines()[i])
	}
	b.closeRivers(lines)
	groups := make([][]Row, len(lines))
	for i := range lines {
		groups[i] = lines[i].rows
	}
	b.addGroup(groups, gap)
	for i := range lines {
		u := &b.units[len(b.units)-len(lines)+i]
		u.tied, u.opens = lines[i].line.Tied(), lines[i].line.OpensPage()
		b.whiteAbove(len(b.units)-len(lines)+i, lines[i].line)
	}
}

// fitOrTakeOver sets a line, or takes it over from before.
func (b *blocks) fitOrTakeOver(l *pagemodel.Line) fitted {
	f, ok := b.former.fitted(l, b.design)
	if !ok {
		b.origin = b.former.origin(l)
		f = b.fit(l)
		b.origin = origin{}
	}
	last := &f.rows[len(f.rows)-1]
	b.prevEnd = last.X + last.Width
	return f
}

// note remembers a line that exceeds its room.
func (b *blocks) note(f *fitted, stanza, number int) {
	if f.overrun == 0 && !f.turned {
		return
	}
	words := turnWords(f)
	state, why := settled(f, words)
	b.turned = append(b.turned, overlong{
		line: f.line.ID(), stanza: stanza, number: number, text: f.line.Text(),
		parts: len(f.rows), overrun: f.overrun, words: words, state: state, why: why,
	})
}

// addGroup adds units that stand together, gap blank rows below the last.
func (b *blocks) addGroup(units [][]Row, gap int) {
	b.group++
	for i, rows := range units {
		u := unit{rows: rows, group: b.group, part: b.part, at: i, of: len(units)}
		if i == 0 && len(b.units) > 0 {
			u.before = gap
		}
		b.units = append(b.units, u)
		b.missing(rows)
	}
}

// whiteAbove adds the white that the poet wants above a line, which begins with
// that unit, to the white that parts stanzas. It stands between the line and what
// is above it in the poem: a poem's first line has none, and like the white that
// parts stanzas it is not set where a page begins with the line.
func (b *blocks) whiteAbove(unit int, l *pagemodel.Line) {
	if unit > b.head {
		b.units[unit].above = l.Above()
		b.units[unit].before += l.Above()
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
