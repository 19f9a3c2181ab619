package pagemodel

import "slices"

// LineID names a line for as long as the file lives: it comes from a counter
// in the file and is never used again. A break's head keeps it, a join's first
// line keeps it.
type LineID int64

// Style is a way that some words differ from the rest. Styles add up.
type Style uint8

// The styles that a span can have.
const (
	Italic Style = 1 << iota
	Bold
	SmallCaps
)

// Span is a run of a line's text with a style. Start and End are byte offsets
// into the text, Start < End.
type Span struct {
	Start int   `json:"start"`
	End   int   `json:"end"`
	Style Style `json:"style"`
}

// Gap is white put into a line before the character at byte offset At, on top
// of whatever word space stands there. A gap to a tab stop is as wide as it
// must be for what follows to begin at Width from the poem's left edge; where
// the words have gone past the stop already, it is an ordinary word space.
type Gap struct {
	At    int  `json:"at"`
	Width Em   `json:"em"`
	Tab   bool `json:"tab,omitempty"`
}

// Range is the edge that a line is set to.
type Range int

// The ranges of a line.
const (
	RangeLeft Range = iota
	RangeCentre
	RangeRight
)

var rangeNames = [...]string{RangeLeft: "left", RangeCentre: "centre", RangeRight: "right"}

// String is the range in words.
func (r Range) String() string { return nameOf(rangeNames[:], int(r)) }

// ParseRange reads a range by its name.
func ParseRange(s string) (Range, error) {
	n, err := indexOf(rangeNames[:], "range", s)
	return Range(n), err
}

// Seam remembers how two lines met, so that parting and joining them again
// gives back the same bytes.
type Seam struct {
	Line    LineID `json:"line"`              // the other line
	At      int    `json:"at"`                // byte offset in the joined text where the separator begins
	Space   string `json:"space"`             // the characters between, which neither line keeps
	Spans   []Span `json:"spans,omitempty"`   // styles of those characters
	Gap     Em     `json:"gap,omitempty"`     // white set at the seam
	Indent  Em     `json:"indent,omitempty"`  // the second line's own indent
	Range   Range  `json:"range,omitempty"`   // and its range
	Dropped bool   `json:"dropped,omitempty"` // and whether it was dropped
	Above   int    `json:"above,omitempty"`   // and the white above it, in lines
	On      string `json:"on,omitempty"`      // the day on which the two were parted
}

// Line is one line of verse, or one paragraph of a prose stanza. The zero Line
// is empty. A Line never changes; its With methods give another.
type Line struct {
	id       LineID
	text     string
	spans    []Span
	indent   Em
	rng      Range
	dropped  bool
	above    int
	gaps     []Gap
	breaks   []int
	decision decision
	tied     bool
	opens    bool
	from     *Seam
	absorbed []Seam
}

// NewLine is a line with that text, ranged left, plain and unsettled.
func NewLine(id LineID, text string) Line { return Line{id: id, text: text} }

// ID is the line's lasting identity.
func (l Line) ID() LineID { return l.id }

// Text is the poet's characters, exactly as written. Indent and gaps are not
// among them.
func (l Line) Text() string { return l.text }

// Spans are the styled runs, ordered, not overlapping. Not to be changed.
func (l Line) Spans() []Span { return l.spans }

// Indent is how far the line begins from the poem's left edge.
func (l Line) Indent() Em { return l.indent }

// Range is the edge that the line is set to.
func (l Line) Range() Range { return l.rng }

// Dropped says that the line begins where the line above ended, one line down.
func (l Line) Dropped() bool { return l.dropped }

// Above is how many lines of white stand above the line, besides the white that
// parts stanzas.
func (l Line) Above() int { return l.above }

// Gaps are the gaps within the line, ordered. Not to be changed.
func (l Line) Gaps() []Gap { return l.gaps }

// Breaks are the byte offsets at which this edition breaks the line, ordered:
// the words from there begin a line of their own in this book, while the poem
// keeps its long line. Not to be changed.
func (l Line) Breaks() []int { return l.breaks }

// Tied says that the poet wants the line on the page of the line below it.
func (l Line) Tied() bool { return l.tied }

// OpensPage says that the poet wants a page to begin with the line.
func (l Line) OpensPage() bool { return l.opens }

// From is the line that this one was broken from, or nil.
func (l Line) From() *Seam { return l.from }

// Absorbed are the lines joined into this one, ordered by place.
func (l Line) Absorbed() []Seam { return l.absorbed }

// WithSpans is the line with those styled runs, which must be ordered. Spans
// outside the text are cut to it, empty ones dropped, like ones that touch made
// one.
func (l Line) WithSpans(spans []Span) Line {
	l.spans = nil
	for _, s := range spans {
		s.Start, s.End = max(0, s.Start), min(len(l.text), s.End)
		if s.Start < s.End && s.Style != 0 {
			l.spans = appendSpan(l.spans, s)
		}
	}
	return l
}

// appendSpan adds a span behind others, closing it up with one of its style
// that it touches.
func appendSpan(spans []Span, s Span) []Span {
	if last := len(spans) - 1; last >= 0 && spans[last].End == s.Start && spans[last].Style == s.Style {
		spans[last].End = s.End
		return spans
	}
	return append(spans, s)
}

// WithIndent is the line begun that far from the poem's left edge.
func (l Line) WithIndent(e Em) Line { l.indent = e; return l }

// WithRange is the line set to that edge.
func (l Line) WithRange(r Range) Line { l.rng = r; return l }

// WithDropped is the line dropped, or not.
func (l Line) WithDropped(dropped bool) Line { l.dropped = dropped; return l }

// WithAbove is the line with that many lines of white above it.
func (l Line) WithAbove(lines int) Line { l.above = lines; return l }

// WithGap is the line with white of that width before the byte offset; no
// width takes the gap away.
func (l Line) WithGap(at int, width Em) Line { return l.withGap(Gap{At: at, Width: width}) }

// WithTab is the line with what stands at the byte offset moved to a tab stop,
// which counts from the poem's left edge.
func (l Line) WithTab(at int, stop Em) Line { return l.withGap(Gap{at, stop, true}) }

func (l Line) withGap(gap Gap) Line {
	gaps := slices.DeleteFunc(slices.Clone(l.gaps), func(g Gap) bool { return g.At == gap.At })
	if gap.Width != 0 {
		gaps = append(gaps, gap)
		slices.SortFunc(gaps, func(a, b Gap) int { return a.At - b.At })
	}
	l.gaps = emptyIsNil(gaps)
	return l
}

func emptyIsNil[T any](s []T) []T {
	if len(s) == 0 {
		return nil
	}
	return s
}
