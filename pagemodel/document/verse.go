package document

import (
	"slices"

	"headland/pagemodel"
)

// deepest is how far a dropped line is indented at most: farther, and its words
// would leave the sheet.
const deepest = 3 * measure / 4

// verse adds lines as one paragraph.
func (m *maker) verse(style Style, lines []pagemodel.Line) {
	v := verse{Paragraph: Paragraph{Style: style}, end: m.end}
	v.ranged(lines)
	for i, l := range lines {
		if i > 0 {
			v.mark(LineEnd)
		}
		for range l.Above() {
			v.words(noBreak, 0)
			v.mark(LineEnd)
		}
		v.line(l)
	}
	m.end = v.end
	m.d.Add(v.Paragraph)
}

// verse is a paragraph being made of lines.
type verse struct {
	Paragraph
	at  pagemodel.Em // about how far the line has come
	end pagemodel.Em // about where the line above ended
}

// ranged sets the paragraph to the edge that all lines are set to; where they
// differ the other edges are tab stops. So are the stops of the lines' own tabs.
func (v *verse) ranged(lines []pagemodel.Line) {
	v.Range = lines[0].Range()
	if slices.ContainsFunc(lines, func(l pagemodel.Line) bool { return l.Range() != v.Range }) {
		v.Range = pagemodel.RangeLeft
	}
	for _, l := range lines {
		if l.Range() != v.Range {
			v.stop(edgeStop(l.Range()))
		}
		for _, g := range l.Gaps() {
			if g.Tab {
				v.stop(Stop{pagemodel.RangeLeft, g.Width})
			}
		}
	}
}

// edgeStop is the stop that stands for the middle or the right edge.
func edgeStop(r pagemodel.Range) Stop {
	if r == pagemodel.RangeCentre {
		return Stop{r, measure / 2}
	}
	return Stop{r, measure}
}

// stop puts a stop in its place, one for each place.
func (v *verse) stop(s Stop) {
	i, found := slices.BinarySearchFunc(v.Stops, s, func(a, b Stop) int { return int(a.At - b.At) })
	if !found {
		v.Stops = slices.Insert(v.Stops, i, s)
	}
}

func (v *verse) mark(m Mark) { v.Runs = append(v.Runs, Run{Mark: m}) }

func (v *verse) words(text string, look pagemodel.Style) {
	if text == "" {
		return
	}
	v.Runs = append(v.Runs, Run{Text: text, Look: look})
	v.at += widthOf(text)
}

// white adds white, if it is any.
func (v *verse) white(width pagemodel.Em) {
	if width > 0 {
		v.Runs = append(v.Runs, Run{Mark: White, Width: width})
		v.at += width
	}
}

// tab adds as many tabs as there are stops up to one, at least one.
func (v *verse) tab(to pagemodel.Em) {
	n := 0
	for _, s := range v.Stops {
		if s.At > v.at && s.At <= to {
			n++
		}
	}
	for range max(1, n) {
		v.mark(Tab)
	}
	v.at = max(v.at, to)
}

// line adds a line: where it begins, then its words and what parts them.
func (v *verse) line(l pagemodel.Line) {
	v.at = 0
	if l.Range() != v.Range {
		v.tab(edgeStop(l.Range()).At)
	}
	if l.Dropped() && l.Range() == pagemodel.RangeLeft {
		v.white(min(deepest, v.end+letterWidth))
	}
	v.white(l.Indent())
	if l.Text() == "" {
		v.words(noBreak, 0)
	}
	v.inside(l)
	v.end = v.at
}

// inside adds a line's words with their styles, and its gaps and tabs.
func (v *verse) inside(l pagemodel.Line) {
	text, from := l.Text(), 0
	for _, at := range cuts(l) {
		v.words(text[from:at], styleAt(l, from))
		for _, g := range l.Gaps() {
			switch {
			case g.At == at && g.Tab:
				v.tab(g.Width)
			case g.At == at:
				v.white(g.Width)
			}
		}
		from = at
	}
	v.words(text[from:], styleAt(l, from))
}

// cuts are the byte offsets at which something in a line changes, ordered.
func cuts(l pagemodel.Line) []int {
	var list []int
	for _, s := range l.Spans() {
		list = append(list, s.Start, s.End)
	}
	for _, g := range l.Gaps() {
		list = append(list, min(max(0, g.At), len(l.Text())))
	}
	slices.Sort(list)
	return slices.Compact(list)
}

func styleAt(l pagemodel.Line, at int) pagemodel.Style {
	for _, s := range l.Spans() {
		if s.Start <= at && at < s.End {
			return s.Style
		}
	}
	return 0
}
