package marks

import (
	"strings"

	"headland/typeset/corrections"
)

// drawSpace marks white to be opened, altered or closed: between two words, or
// above a line.
func (m *marker) drawSpace(p *pencil, c *corrections.Correction, s stretch) entry {
	is := after(c.Change.Is)
	switch {
	case strings.Contains(is, "no white"), white.MatchString(is):
		return m.drawWhite(p, c, s)
	case strings.HasPrefix(is, "ranged"), strings.HasPrefix(is, "begun"):
		e := noteOf(c)
		if e.note = is; s.opens() {
			e.note = "new line, " + is
			p.bracket(s)
		} else {
			p.brackets(s)
		}
		return e
	}
	s.from = s.gap()
	if strings.Contains(is, "nothing") || strings.Contains(is, "no space") {
		p.closeUp(s)
		return entry{c: c, shape: &closeUpShape}
	}
	return drawGap(p, c, s)
}

// drawGap marks how wide the white between two words is to be, or the stop at which
// the words after it are to stand.
func drawGap(p *pencil, c *corrections.Correction, s stretch) entry {
	was, is := after(c.Change.Was), after(c.Change.Is)
	if strings.Contains(is, "a tab to ") {
		p.tab(s)
		return entry{c: c, matter: strings.TrimPrefix(is, "with a tab "), amount: true, shape: &tabShape}
	}
	p.upright(s)
	e := entry{c: c, matter: ems(c.Change.Is), amount: true, shape: &spaceShape}
	if e.matter == "" && is != "with a word space" {
		e.matter = strings.TrimPrefix(is, "with ")
	}
	if emsIn(c.Change.Is) < emsIn(c.Change.Was) || strings.Contains(was, "a tab to ") {
		e.shape = &lessSpaceShape
	}
	return e
}

// drawWhite marks lines of white above a line; of one that is new, where it is to
// begin.
func (m *marker) drawWhite(p *pencil, c *corrections.Correction, s stretch) entry {
	is := after(c.Change.Is)
	if strings.Contains(is, "no white") {
		p.shut(m.gapAfter(s, true))
		return entry{c: c, shape: &closeShape}
	}
	e := entry{c: c, matter: linesOf(is), amount: true, shape: &openShape}
	if s.opens() {
		p.step(s)
		e.before = &newLineShape
		return e
	}
	p.open(m.gapAfter(s, true))
	return e
}
