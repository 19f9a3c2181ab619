package marks

import (
	"strings"
	"unicode/utf8"

	"headland/pagemodel"
	"headland/pagemodel/difference"
	"headland/typeset"
)

// A stretch is words of one row, or a point in it where from and to are equal.
type stretch struct {
	row      *typeset.Row
	start    int            // the byte offset of its first word
	end      int            // and of its end
	from, to typeset.Length // along the row
	begins   bool           // the correction's words begin here, not on a row before
	index    int            // of the row on the page
}

func (s *stretch) turned() bool             { return s.row.Turned }
func (s *stretch) baseline() typeset.Length { return s.row.Baseline }

// within says that a point has words of its row on both sides.
func (s *stretch) within() bool { return s.row.X < s.from && s.from < s.row.X+s.row.Width }

// opens says that a point is where a line is to begin that the page does not have
// yet: words of the poet's line stand before it on the row, or on the row above it.
func (s *stretch) opens() bool {
	if s.row.Turn == typeset.Turnover {
		return true
	}
	text := textOf(s.row)
	return strings.Trim(text[:max(0, min(len(text), s.start-s.row.Start))], spaces) != ""
}

// em is the size of the row's type.
func (s *stretch) em() typeset.Length {
	if len(s.row.Runs) == 0 {
		return pagemodel.Pt(11)
	}
	return s.row.Runs[0].Size
}

// find gives the stretches of the page that a change stands in, row by row.
func (m *marker) find(c *difference.Change) []stretch {
	if c.Line.Line == 0 {
		return m.findInHead(c)
	}
	return m.within(append(m.stretches(m.rowsOf(c.Line), c.From, c.To), m.through(c)...))
}

// through are the stretches of the words that a change concerns in the lines below
// its own. How far they go in the last of them is told by the words themselves.
func (m *marker) through(c *difference.Change) []stretch {
	poem := m.poem(c.Poem)
	if c.Through == 0 || poem == nil {
		return nil
	}
	was := strings.Split(strings.ReplaceAll(quoted(c.Was), " // ", " / "), " / ")
	first, last := false, pagemodel.LineRef{Poem: c.Poem, Line: c.Through}
	var all []stretch
	for _, l := range poem.Lines() {
		ref := pagemodel.LineRef{Poem: c.Poem, Line: l.ID()}
		if first = first || ref == c.Line; !first || ref == c.Line {
			continue
		}
		to := len(l.Text())
		if ref == last {
			to = min(to, len(was[len(was)-1]))
		}
		all = append(all, m.stretches(m.rowsOf(ref), 0, to)...)
		if ref == last {
			break
		}
	}
	for i := range all {
		all[i].begins = false
	}
	return all
}

// poem is a poem of the book.
func (m *marker) poem(id pagemodel.PoemID) *pagemodel.Poem {
	if i, ok := m.set.Collection().IndexOf(id); ok {
		return m.set.Collection().Entries().At(i).Poem
	}
	return nil
}

// rowsOf are the page's rows of a line.
func (m *marker) rowsOf(line pagemodel.LineRef) []int {
	var rows []int
	for i := range m.page.Rows {
		if m.page.Rows[i].Ref() == line {
			rows = append(rows, i)
		}
	}
	return rows
}

// gap is the middle of the first space in a stretch; that at which it stands, where
// it is a point.
func (s *stretch) gap() typeset.Length {
	text := textOf(s.row)
	a, b := max(0, min(len(text), s.start-s.row.Start)), max(0, min(len(text), s.end-s.row.Start))
	if i := strings.IndexAny(text[a:b], spaces); i >= 0 {
		return gapIn(s.row, s.start+i)
	}
	return gapIn(s.row, s.start)
}

// within leaves out what lies beyond the trim: of a poem across the spread each
// page has its own half.
func (m *marker) within(all []stretch) []stretch {
	var kept []stretch
	for _, s := range all {
		if middle := (s.from + s.to) / 2; s.turned() || middle >= 0 && middle <= m.page.Trim.Width {
			kept = append(kept, s)
		}
	}
	return kept
}

// stretches are the parts of rows, which show one text, from one byte offset of
// it to another.
func (m *marker) stretches(rows []int, from, to int) []stretch {
	var all []stretch
	for _, i := range rows {
		r := &m.page.Rows[i]
		switch {
		case from == to && (from < r.Start || from > r.End && !r.Last):
		case from == to:
			x := gapIn(r, from)
			return []stretch{{r, from, to, x, x, true, i}}
		case from < r.End && to > r.Start:
			a, b := max(from, r.Start), min(to, r.End)
			all = append(all, stretch{r, a, b, r.XAt(a), endIn(r, b), from >= r.Start, i})
		}
	}
	if len(all) > 0 && from < all[0].start && all[0].row.Turn == typeset.LineStart {
		all[0].begins = true
	}
	return all
}

// endIn is where the words before a byte offset end.
func endIn(r *typeset.Row, offset int) typeset.Length {
	if offset >= r.End {
		return r.X + r.Width
	}
	return r.XAt(offset)
}

// gapIn is the middle of the space at a byte offset, or the offset's own place
// within a word; at the row's ends a little off the words.
func gapIn(r *typeset.Row, offset int) typeset.Length {
	em := (&stretch{row: r}).em()
	text := textOf(r)
	at := max(0, min(len(text), offset-r.Start))
	before := len(strings.TrimRight(text[:at], spaces))
	after := len(text) - len(strings.TrimLeft(text[at:], spaces))
	switch {
	case before == 0:
		return r.X - em/8
	case after >= r.End-r.Start:
		return r.X + r.Width + em/8
	}
	return (r.XAt(r.Start+before) + r.XAt(r.Start+after)) / 2
}

// spaces are what may stand between two words.
const spaces = " \t\u00a0\u2007\u2008\u2009\u202f"

// textOf is the text that a row shows, from its Start.
func textOf(r *typeset.Row) string {
	var b strings.Builder
	for i := range r.Runs {
		b.WriteString(r.Runs[i].Text)
	}
	return b.String()
}

// single says that a stretch is one character.
func (s *stretch) single() bool {
	text := textOf(s.row)
	a, b := max(0, s.start-s.row.Start), min(len(text), s.end-s.row.Start)
	return a < b && utf8.RuneCountInString(text[a:b]) == 1
}
