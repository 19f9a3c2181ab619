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
	e := entry{c: c}
	switch c.Change.Kind {
	case difference.Insert:
		p.caret(where[0])
		e.matter, e.italic = matterOf(c.Change.Is)
		e.shape = &caretShape
	case difference.Delete:
		p.strike(where)
		e.shape = &deleShape
	case difference.Substitute:
		p.strike(where)
		e.matter, e.italic = matterOf(c.Change.Is)
	default:
		m.transpose(p, c, where)
		e.shape = &transposeShape
	}
	return e
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
	case difference.IndentLine:
		p.indent(s, emsIn(c.Change.Is)-emsIn(c.Change.Was))
		e.matter, e.shape = ems(c.Change.Is), &indentShape
	case difference.CancelIndent:
		p.cancelIndent(s, s.row.X-max(p.ems(0.7), p.ems(emsIn(c.Change.Was))))
		e.shape = &cancelIndentShape
	}
	return e
}

// turn marks the word at which a line is to turn. Words that stand in a turnover
// are taken back, up to there; others are taken over.
func (m *marker) turn(p *pencil, c *corrections.Correction, s stretch) entry {
	s.from = gapIn(s.row, c.Change.From)
	switch {
	case !strings.Contains(c.Change.Is, "“"):
		p.upright(s)
		e := noteOf(c)
		e.note = "turn " + c.Change.Is
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

// drawSpace marks white to be opened, altered or closed: between two words, or
// above a line.
func (m *marker) drawSpace(p *pencil, c *corrections.Correction, s stretch) entry {
	was, is := after(c.Change.Was), after(c.Change.Is)
	switch {
	case strings.Contains(is, "no white"):
		p.shut(m.gapAfter(s, true))
		return entry{c: c, shape: &closeShape}
	case white.MatchString(is):
		p.open(m.gapAfter(s, true))
		return entry{c: c, matter: linesOf(is), shape: &openShape}
	case strings.HasPrefix(is, "ranged"), strings.HasPrefix(is, "begun"):
		p.brackets(s)
		e := noteOf(c)
		e.note = is
		return e
	}
	s.from = s.gap()
	if strings.Contains(is, "nothing") || strings.Contains(is, "no space") {
		p.closeUp(s)
		return entry{c: c, shape: &closeUpShape}
	}
	p.upright(s)
	e := entry{c: c, matter: ems(is), shape: &spaceShape}
	if e.matter == "" && strings.Contains(is, "spaces") {
		e.matter = strings.TrimPrefix(is, "with ")
	}
	if emsIn(is) < emsIn(was) {
		e.shape = &lessSpaceShape
	}
	return e
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
