package choices

import (
	"headland/pagemodel"
	"headland/typeset"
)

// look is a setting as it is looked at for one line: the pages that were made,
// kept so that none is made twice.
type look struct {
	*typeset.Setting
	pages map[int]*typeset.Page
}

func lookAt(s *typeset.Setting) *look { return &look{s, map[int]*typeset.Page{}} }

func (l *look) page(n int) *typeset.Page {
	if l.pages[n] == nil {
		l.pages[n] = l.Page(n)
	}
	return l.pages[n]
}

// rows are the rows of a line, X from the left of the measure.
func (l *look) rows(ref pagemodel.LineRef) []typeset.Row {
	var rows []typeset.Row
	first, ok := l.PageOfLine(ref)
	for n := first; ok && n <= l.Extent(); n++ {
		for _, row := range l.page(n).Rows {
			if row.Number > 0 && row.Ref() == ref {
				rows = append(rows, l.fromMeasure(row, n))
			}
		}
		if len(rows) > 0 && rows[len(rows)-1].Last {
			break
		}
	}
	return rows
}

// fromMeasure is a row of page n whose X counts from the left of its measure. A
// poem on its side has its measure up from the foot, one across the spread from
// the left of the verso.
func (l *look) fromMeasure(row typeset.Row, n int) typeset.Row {
	d, page := l.Collection().Design(), l.page(n)
	p, _, _ := l.Collection().Poem(row.Poem)
	switch {
	case row.Turned:
		row.X -= d.Margins.Foot
		row.Turned = false
	case p.Head().Lie == pagemodel.Across && page.Side == pagemodel.Recto:
		row.X += d.Trim.Width - d.Margins.Left(pagemodel.Verso)
	default:
		row.X -= page.Text.X
	}
	return row
}

// rowsOf are the rows of some lines of a poem one below another, as on a slip of
// their own.
func (l *look) rowsOf(poem pagemodel.PoemID, lines []pagemodel.LineID) []typeset.Row {
	d := l.Collection().Design()
	var all []typeset.Row
	for _, line := range lines {
		all = append(all, l.rows(pagemodel.LineRef{Poem: poem, Line: line})...)
	}
	for i := range all {
		all[i].Grid = i + 1
		all[i].Baseline = d.Size + typeset.Length(i)*d.Leading
	}
	return all
}

// beginsPage says that a page begins with the line.
func (l *look) beginsPage(ref pagemodel.LineRef) bool {
	n, ok := l.PageOfLine(ref)
	return ok && len(l.page(n).Rows) > 0 && l.page(n).Rows[0].Ref() == ref
}

// stanzaRows is how many rows the stanza of a line takes.
func (l *look) stanzaRows(ref pagemodel.LineRef) int {
	p, at, err := l.Collection().Line(ref)
	if err != nil {
		return 0
	}
	lines := p.Stanza(at).Lines()
	in := make(map[pagemodel.LineID]bool, len(lines))
	for _, line := range lines {
		in[line.ID()] = true
	}
	first, _ := l.PageOfLine(pagemodel.LineRef{Poem: ref.Poem, Line: lines[0].ID()})
	last, _ := l.PageOfLine(pagemodel.LineRef{Poem: ref.Poem, Line: lines[len(lines)-1].ID()})
	if p.Head().Lie == pagemodel.Across {
		last++ // it is the verso of the spread
	}
	n := 0
	for page := first; page <= last; page++ {
		for i := range l.page(page).Rows {
			if row := &l.page(page).Rows[i]; row.Number > 0 && row.Poem == ref.Poem && in[row.Line] {
				n++
			}
		}
	}
	return n
}

// poemPages is how many pages a poem takes.
func (l *look) poemPages(id pagemodel.PoemID) int {
	p, _, _ := l.Collection().Poem(id)
	first, _ := l.PageOfPoem(id)
	parts := p.Parts()
	for i := len(parts) - 1; i >= 0; i-- {
		if stanzas := parts[i].Stanzas(); len(stanzas) > 0 {
			lines := stanzas[len(stanzas)-1].Lines()
			last, _ := l.PageOfLine(pagemodel.LineRef{Poem: id, Line: lines[len(lines)-1].ID()})
			return last - first + 1
		}
	}
	return 1
}

// below is the text of the line below another in its stanza, or "".
func (l *look) below(ref pagemodel.LineRef) string {
	p, at, err := l.Collection().Line(ref)
	if err != nil {
		return ""
	}
	if lines := p.Stanza(at).Lines(); at.Line+1 < len(lines) {
		return lines[at.Line+1].Text()
	}
	return ""
}
