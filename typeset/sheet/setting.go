package sheet

import (
	"headland/pagemodel"
	"headland/typeset"
)

// compositor sets sources in a family of type.
type compositor struct {
	setter *typeset.Setter
	about  pagemodel.About
	family string
	side   typeset.Length // where lines begin, from the left
}

// unit is what a leaf's end can't part: a line with its turnovers, or a row of a
// head or a paragraph.
type unit struct {
	rows   []typeset.Row
	before int  // blank rows above it, unless a leaf begins with it
	opens  bool // a stanza, or a part by its heading
	keep   bool // it never ends a leaf
	stanza int  // through the source, from 0; -1 outside
	pause  int  // how slight the pause after it is, from 0, a full stop's
}

// depth is how many rows units take on a leaf that begins with the first.
func depth(units []unit) int {
	n := 0
	for i := range units {
		if i > 0 {
			n += units[i].before
		}
		n += len(units[i].rows)
	}
	return n
}

// set sets a source in type of a size to a measure. How many of its lines turn
// over is turned.
func (c *compositor) set(s *source, size, measure typeset.Length) (units []unit, turned int) {
	b := pagemodel.NewBuilder(c.about, c.design(s, size, measure))
	stanzas := make([]int, len(s.lines))
	b.Poem(headOf(s), rebuilt(b, s, stanzas))
	set := c.setter.Set(nil, b.Collection())
	var rows []typeset.Row
	for n := 1; n <= set.Extent(); n++ {
		rows = append(rows, set.Page(n).Rows...)
	}
	return unitsOf(s, rows, stanzas), len(set.Turnovers())
}

// headOf is the head that is set with the verse: all but the title, which is no
// part of its rows.
func headOf(s *source) pagemodel.PoemHead {
	h := s.head
	h.Place = s.place
	return h
}

// rebuilt is the source's parts with lines of the builder's: with all that the poet
// has put into them, and nothing that only this edition or a page of the book
// wants. Line n of the source, from 0, is given the identity n+1; stanzas is told
// which stanza each belongs to.
func rebuilt(b *pagemodel.Builder, s *source, stanzas []int) []pagemodel.Part {
	var parts []pagemodel.Part
	line, stanza := 0, 0
	for _, part := range s.parts {
		var all []pagemodel.Stanza
		for _, st := range part.Stanzas() {
			lines := make([]pagemodel.Line, len(st.Lines()))
			for i, l := range st.Lines() {
				lines[i] = asPoets(b, l)
				stanzas[line] = stanza
				line++
			}
			stanza++
			all = append(all, pagemodel.NewStanza(st.Kind(), lines))
		}
		parts = append(parts, pagemodel.NewPart(part.Heading(), all))
	}
	return parts
}

// asPoets is a line as the poet has it.
func asPoets(b *pagemodel.Builder, l pagemodel.Line) pagemodel.Line {
	set := b.Line(l.Text()).WithSpans(l.Spans()).WithIndent(l.Indent()).WithRange(l.Range()).WithDropped(l.Dropped()).WithAbove(l.Above())
	for _, g := range l.Gaps() {
		if g.Tab {
			set = set.WithTab(g.At, g.Width)
		} else {
			set = set.WithGap(g.At, g.Width)
		}
	}
	return set
}

// design is one page without a foot, so deep that everything stands on it.
func (c *compositor) design(s *source, size, measure typeset.Length) pagemodel.Design {
	d := pagemodel.DefaultDesign()
	d.Face, d.Size, d.Leading = c.family, size, leadingOf(size)
	d.Margins = pagemodel.Margins{Inner: c.side, Outer: c.side}
	d.Trim.Width = measure + 2*c.side
	d.TitleRow, d.PoemRow, d.StanzaGap = 1, 2, 1
	d.Folios = pagemodel.FolioNone
	rows := 20 + 4*len(s.parts) + 2*len(s.head.Epigraph)
	for _, text := range append([]string{s.head.Subtitle, s.head.Dedication, s.place}, s.head.Epigraph...) {
		rows += rowsAtMost(text, size, measure)
	}
	for _, l := range s.lines {
		rows += 2 + l.Above() + rowsAtMost(l.Text(), size, measure)
	}
	d.Trim.Height = typeset.Length(rows) * d.Leading
	return d
}

// rowsAtMost is how many rows a text can take: no character is reckoned wider than
// an em, and every row to be half filled.
func rowsAtMost(text string, size, measure typeset.Length) int {
	return 1 + int(2*typeset.Length(len(text))*size/max(size, measure))
}

// unitsOf are the rows of a source as units, each row and line under the identities
// of the source.
func unitsOf(s *source, rows []typeset.Row, stanzas []int) []unit {
	var units []unit
	grid, last := 0, pagemodel.LineID(0)
	for _, row := range rows {
		set := row.Line
		row.Poem, row.Line = s.poem, 0
		if set != 0 {
			row.Line = s.lines[set-1].ID()
		}
		n := len(units)
		if row.Turn == typeset.Turnover && n > 0 && set == last && row.Role == typeset.RoleVerse {
			units[n-1].rows = append(units[n-1].rows, row)
			grid = row.Grid
			continue
		}
		u := unit{rows: []typeset.Row{row}, stanza: -1, before: max(0, row.Grid-grid-1)}
		if set != 0 {
			u.stanza = stanzas[set-1]
		}
		units = append(units, u)
		grid, last = row.Grid, set
	}
	for i := range units {
		units[i].bind(units[:i], s)
	}
	return units
}

// bind says how a unit stands to the ones above it.
func (u *unit) bind(above []unit, s *source) {
	if len(above) == 0 {
		return
	}
	up := &above[len(above)-1]
	role, over := u.rows[0].Role, up.rows[0].Role
	verse := u.stanza >= 0
	u.opens = up.stanza != u.stanza && (verse || role == typeset.RoleHeading)
	switch {
	case over == typeset.RoleHeading:
		up.keep = true
	case role == typeset.RolePlace:
		up.keep, u.opens = true, false
	case up.stanza < 0 && over != typeset.RolePlace:
		up.keep = true
		if verse || role == typeset.RoleHeading {
			u.before = max(1, u.before)
		}
	}
	up.pause = pauseAfter(up.text())
}

// text is the words of the unit's last row.
func (u *unit) text() string { return textOf(&u.rows[len(u.rows)-1]) }

func textOf(row *typeset.Row) string {
	text := ""
	for i := range row.Runs {
		text += row.Runs[i].Text
	}
	return text
}
