package pagemodel

import (
	"slices"
	"strings"
)

// InEdition is the lines that this edition's breaks make of a line: itself alone
// where it has none. The white at a break belongs to neither side; the tail has
// the line's indent and range, as a break in the poem would give it. A page, white
// above and the drop begin with the first of them, and the last keeps to the line
// below. All have the line's identity.
func (l Line) InEdition() []Line {
	if len(l.breaks) == 0 {
		return []Line{l}
	}
	var lines []Line
	start := 0
	for _, end := range append(slices.Clone(l.breaks), len(l.text)) {
		next := l.piece(start, end)
		if start == 0 {
			next = next.WithDropped(l.dropped).WithOpensPage(l.opens).WithAbove(l.above)
		}
		lines = append(lines, next.WithTied(l.tied && end == len(l.text)))
		start = end
	}
	return lines
}

// piece is the line's text between two offsets, without the white at its end, and
// what is placed in it. A gap at a break goes with the white.
func (l Line) piece(start, end int) Line {
	text := l.text[start:end]
	if end < len(l.text) {
		text = strings.TrimRightFunc(text, IsSpace)
	}
	var spans []Span
	for _, s := range l.spans {
		spans = append(spans, Span{Start: s.Start - start, End: s.End - start, Style: s.Style})
	}
	c := NewLine(l.id, text).WithSpans(spans).WithIndent(l.indent).WithRange(l.rng)
	for _, g := range l.gaps {
		if at := g.At - start; (at > 0 || start == 0) && (at < len(text) || end == len(l.text)) {
			g.At = at
			c = c.withGap(g)
		}
	}
	return c
}
