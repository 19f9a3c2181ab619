package marks

import (
	"strings"

	"headland/pagemodel/difference"
	"headland/typeset"
	"headland/typeset/corrections"
)

// draw draws a correction's mark in the text and gives what is to stand in the
// margin.
func (m *marker) draw(p *pencil, c *corrections.Correction, where []stretch) entry {
	if c.Change.Line.Line != 0 && c.Change.Field != "" {
		return m.drawAbout(p, c, where[0])
	}
	switch c.Change.Kind {
	case difference.Insert, difference.Delete, difference.Substitute, difference.Transpose:
		return m.drawWords(p, c, where)
	case difference.Italic, difference.Roman, difference.Bold, difference.SmallCapitals:
		return drawFace(p, c, where)
	case difference.Space:
		return m.drawSpace(p, c, where[0])
	case difference.NewLine, difference.RunOn, difference.TurnAt, difference.OpenStanza, difference.CloseStanza,
		difference.IndentLine, difference.CancelIndent:
		return m.drawLines(p, c, where[0])
	}
	return m.drawAbout(p, c, where[0])
}

// drawWords draws what becomes of words.
func (m *marker) drawWords(p *pencil, c *corrections.Correction, where []stretch) entry {
	switch c.Change.Kind {
	case difference.Insert:
		p.caret(where[0])
		e := newMatter(c)
		e.shape = &caretShape
		return e
	case difference.Delete:
		p.strike(where)
		return entry{c: c, shape: &deleShape}
	case difference.Substitute:
		p.strike(where)
		return newMatter(c)
	}
	m.transpose(p, c, where)
	return entry{c: c, shape: &transposeShape}
}

// transpose marks words, or lines, that are to change places.
func (m *marker) transpose(p *pencil, c *corrections.Correction, where []stretch) {
	if c.Change.Through == 0 {
		p.swap(where[0], where[0].between(quoted(c.Change.Is)))
		return
	}
	last := where[0]
	for _, s := range where {
		if s.row.Line == last.row.Line {
			last = s
		}
	}
	p.swapLines(m.gapAfter(last, false))
}

// drawFace marks words to be set in another face, or in it no more.
func drawFace(p *pencil, c *corrections.Correction, where []stretch) entry {
	e := entry{c: c}
	switch {
	case c.Change.Kind == difference.Italic:
		p.under(where, 1)
		e.shape = &italicShape
	case strings.HasSuffix(c.Change.Is, "in bold"):
		p.wavy(where)
		e.shape = &boldShape
	case strings.HasSuffix(c.Change.Is, "in small capitals"):
		p.under(where, 2)
		e.shape = &smallCapsShape
	default:
		p.around(where)
		e.shape = map[difference.Kind]*shape{
			difference.Roman: &romanShape, difference.Bold: &notBoldShape, difference.SmallCapitals: &notSmallCapsShape,
		}[c.Change.Kind]
	}
	return e
}

// drawLines draws what has to do with where lines begin and end.
func (m *marker) drawLines(p *pencil, c *corrections.Correction, s stretch) entry {
	e := entry{c: c}
	switch c.Change.Kind {
	case difference.NewLine:
		p.step(s)
		e.shape = &newLineShape
	case difference.RunOn:
		p.runOn(m.gapAfter(s, false))
		e.shape = &runOnShape
	case difference.OpenStanza:
		if e.shape = &openShape; s.within() {
			p.step(s)
		} else {
			p.open(m.gapAfter(s, c.Change.To == 0))
		}
	case difference.CloseStanza:
		p.shut(m.gapAfter(s, c.Change.To == 0))
		e.shape = &closeShape
	case difference.TurnAt:
		return m.turn(p, c, s)
	case difference.IndentLine, difference.CancelIndent:
		return drawIndent(p, c, s)
	}
	return e
}

// drawIndent marks how far in a line is to begin: where the line stands, or, if it
// is a new one, at the words that are to begin it.
func drawIndent(p *pencil, c *corrections.Correction, s stretch) entry {
	e, by := entry{c: c}, emsIn(c.Change.Is)
	switch {
	case s.opens() && c.Change.Kind == difference.CancelIndent:
		p.noIndent(s)
		return entry{c: c, before: &newLineShape, shape: &cancelIndentShape}
	case s.opens():
		p.newIndent(s, by)
		e.before = &newLineShape
	case c.Change.Kind == difference.CancelIndent:
		p.cancelIndent(s, s.row.X-max(p.ems(0.7), p.ems(emsIn(c.Change.Was))))
		return entry{c: c, shape: &cancelIndentShape}
	default:
		p.indent(s, by-emsIn(c.Change.Was))
	}
	e.matter, e.amount, e.shape = ems(c.Change.Is), true, &indentShape
	return e
}

// turn marks the word at which a line is to turn. Words that stand in a turnover
// are taken back, up to there; others are taken over.
func (m *marker) turn(p *pencil, c *corrections.Correction, s stretch) entry {
	s.from = gapIn(s.row, c.Change.From)
	switch {
	case strings.HasSuffix(c.Change.Is, "wherever the measure ends"):
		p.upright(s)
		e := noteOf(c)
		e.note = "turn wherever the measure ends"
		return e
	case s.row.Turn != typeset.Turnover:
		p.takeOver(s)
		return entry{c: c, shape: &takeOverShape}
	case s.start > s.row.Start:
		p.takeBack(s)
		return entry{c: c, shape: &takeBackShape}
	}
	p.upright(s) // it turns there already, and is to go on doing so
	return entry{c: c, shape: &takeOverShape}
}

// drawAbout marks what is said of a line in words: where a page or a part begins,
// above it; what else there is, with the line in brackets.
func (m *marker) drawAbout(p *pencil, c *corrections.Correction, s stretch) entry {
	switch {
	case s.row.Line == 0:
		p.around([]stretch{s})
	case c.Change.Kind == difference.Part, c.Change.Field == "page break", c.Change.Field == "part heading":
		p.open(m.gapAfter(s, true))
	default:
		p.brackets(s)
	}
	return noteOf(c)
}
