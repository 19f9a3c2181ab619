package pagemodel

// Parting one line in two and joining two in one: everything that is placed by byte offset (spans, gaps, breaks, turns, absorbed lines) moves with
// its words.

// cut is the line's own text from start to end with all that is placed in it.
// It keeps the identity and every other property.
func (l Line) cut(start, end int) Line {
	c := l
	c.text = l.text[start:end]
	c.spans = cutSpans(l.spans, start, end)
	c.gaps = nil
	for _, g := range l.gaps {
		if g.At > start && g.At < end {
			c.gaps = append(c.gaps, Gap{g.At - start, g.Width, g.Tab})
		}
	}
	c.breaks = cutOffsets(l.breaks, start, end)
	c.decision.turns = cutOffsets(l.decision.turns, start, end)
	c.absorbed = nil
	for _, s := range l.absorbed {
		if s.At >= start && s.At+len(s.Space) <= end && s.At > start {
			s.At -= start
			c.absorbed = append(c.absorbed, s)
		}
	}
	return c
}

func cutSpans(spans []Span, start, end int) []Span {
	var cut []Span
	for _, s := range spans {
		if a, b := max(s.Start, start), min(s.End, end); a < b {
			cut = append(cut, Span{a - start, b - start, s.Style})
		}
	}
	return cut
}

func cutOffsets(offsets []int, start, end int) []int {
	var cut []int
	for _, o := range offsets {
		if o > start && o < end {
			cut = append(cut, o-start)
		}
	}
	return cut
}

// part breaks the line in two at the byte offset. The head keeps the identity,
// the tail gets id; the space about the break belongs to neither and is
// remembered in the tail. Where a line was absorbed at that very place the two
// get back the indent and range that they had.
func (l Line) part(at int, id LineID) (head, tail Line) {
	start, end := spaceAround(l.text, at)
	seam := Seam{Line: l.id, At: start, Space: l.text[start:end], Indent: l.indent, Range: l.rng}
	for _, s := range l.absorbed {
		if s.At <= at && at <= s.At+len(s.Space) {
			start, end = s.At, s.At+len(s.Space)
			seam = s
			seam.Line = l.id
		}
	}
	seam.Gap, seam.Spans = gapAt(l.gaps, start, end), cutSpans(l.spans, start, end)
	head, tail = l.cut(0, start).unsettled(), l.cut(end, len(l.text)).unsettled()
	tail.id, tail.from = id, &seam
	tail.indent, tail.rng, tail.dropped, tail.above = seam.Indent, seam.Range, seam.Dropped, seam.Above
	tail.opens = false
	return head, tail
}

func gapAt(gaps []Gap, start, end int) Em {
	var width Em
	for _, g := range gaps {
		if g.At >= start && g.At <= end {
			width += g.Width
		}
	}
	return width
}

// join is the line with next run on. What stood between them when they were
// last one line comes back; else it is a word space, unless either side
// already has one.
func (l Line) join(next Line) Line {
	seam := seamBetween(l, next)
	seam.At = len(l.text)
	shift := len(l.text) + len(seam.Space)
	j := l
	j.text, j.tied = l.text+seam.Space+next.text, next.tied
	j.spans = joinSpans(l.spans, seam, next.spans)
	j.gaps = append([]Gap(nil), l.gaps...)
	if seam.Gap != 0 {
		j.gaps = append(j.gaps, Gap{At: shift, Width: seam.Gap})
	}
	for _, g := range next.gaps {
		j.gaps = append(j.gaps, Gap{g.At + shift, g.Width, g.Tab})
	}
	j.breaks = append(append([]int(nil), l.breaks...), shifted(next.breaks, shift)...)
	j.absorbed = append([]Seam(nil), l.absorbed...)
	j.absorbed = append(j.absorbed, seam)
	for _, s := range next.absorbed {
		s.At += shift
		j.absorbed = append(j.absorbed, s)
	}
	return j.decidedAs(l, 0)
}

func seamBetween(l, next Line) Seam {
	s := Seam{Line: next.id, Space: " ", Indent: next.indent, Range: next.rng, Dropped: next.dropped, Above: next.above}
	if f := next.from; f != nil && f.Line == l.id {
		s.Space, s.Gap, s.Spans = f.Space, f.Gap, f.Spans
		return s
	}
	_, end := spaceAround(next.text, 0)
	start, _ := spaceAround(l.text, len(l.text))
	if l.text == "" || next.text == "" || start < len(l.text) || end > 0 {
		s.Space = ""
	}
	return s
}

// joinSpans lays the spans of the upper line, the seam and the lower line end
// to end.
func joinSpans(upper []Span, seam Seam, lower []Span) []Span {
	spans := append([]Span(nil), upper...)
	for _, s := range seam.Spans {
		spans = appendSpan(spans, Span{s.Start + seam.At, s.End + seam.At, s.Style})
	}
	shift := seam.At + len(seam.Space)
	for _, s := range lower {
		spans = appendSpan(spans, Span{s.Start + shift, s.End + shift, s.Style})
	}
	return emptyIsNil(spans)
}

func shifted(offsets []int, by int) []int {
	out := make([]int, len(offsets))
	for i, o := range offsets {
		out[i] = o + by
	}
	return out
}
