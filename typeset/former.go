package typeset

import (
	"slices"
	"strings"

	"headland/pagemodel"
)

// former is a poem as it was set before an edit, in the same design, to take over
// what the edit left alone. What it gives is what setting it afresh would.
type former struct {
	*poemSetting
	lines map[pagemodel.LineID]formerLine
}

// formerLine is a line as it was, and the unit that it was set as.
type formerLine struct {
	*pagemodel.Line
	unit int
}

// former is what a setting holds of a poem that is to be set otherwise; nil where
// it holds nothing that could serve.
func (s *Setting) former(p *pagemodel.Poem) *former {
	if s == nil {
		return nil
	}
	i, ok := s.collection.IndexOf(p.ID())
	if !ok {
		return nil
	}
	was := s.collection.Entries().At(i).Poem
	if h, g := was.Head(), p.Head(); h.Size != g.Size || h.Lie != g.Lie || deepestIndent(was) != deepestIndent(p) {
		return nil
	}
	f := &former{s.entries.At(i), make(map[pagemodel.LineID]formerLine, was.LineCount())}
	unit := 0
	for _, part := range was.Parts() {
		for _, stanza := range part.Stanzas() {
			for i := range stanza.Lines() {
				l := &stanza.Lines()[i]
				for unit < len(f.units) && f.units[unit].rows[0].Line != l.ID() {
					unit++
				}
				f.lines[l.ID()] = formerLine{l, unit}
			}
		}
	}
	return f
}

// fitted is a line of verse as it was set, if it was and nothing about it has
// changed. A dropped line depends on the one above, and a turnover set right on
// the one below.
func (f *former) fitted(l *pagemodel.Line, d *pagemodel.Design) (fitted, bool) {
	if f == nil {
		return fitted{}, false
	}
	was, ok := f.lines[l.ID()]
	if !ok || was.unit >= len(f.units) || l.Dropped() || !fitsLike(was.Line, l) {
		return fitted{}, false
	}
	rows := f.units[was.unit].rows
	out := fitted{line: l, rows: rows, overrun: rows[0].Overrun, turned: anyTurned(rows)}
	whole := rows[0].Role == RoleVerse && rows[len(rows)-1].Last
	return out, whole && !(out.turned && d.Turnovers == pagemodel.TurnRight)
}

// fitsLike says that a line is set like another of the same poem.
func fitsLike(a, b *pagemodel.Line) bool {
	return a.Text() == b.Text() && a.Indent() == b.Indent() && a.Range() == b.Range() && a.Dropped() == b.Dropped() &&
		slices.Equal(a.Spans(), b.Spans()) && slices.Equal(a.Gaps(), b.Gaps()) &&
		slices.Equal(a.Breaks(), b.Breaks()) && slices.Equal(a.Turns(), b.Turns())
}

// origin is the text that the line was cut from, where that was a line of the
// poem.
func (f *former) origin(l *pagemodel.Line) origin {
	if f == nil {
		return origin{}
	}
	line, at := f.lines[l.ID()].Line, 0
	if from := l.From(); from != nil && line == nil {
		line, at = f.lines[from.Line].Line, from.At+len(from.Space)
	}
	if line == nil {
		return origin{}
	}
	was := line.Text()
	was = was[:trimEnd(was, 0, len(was))]
	if at > len(was) || !strings.HasPrefix(was[at:], l.Text()) {
		return origin{}
	}
	return origin{was, at}
}
