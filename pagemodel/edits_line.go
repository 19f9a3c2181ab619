package pagemodel

import (
	"fmt"
	"slices"
	"unicode/utf8"
)

// Keep settles a line by letting it turn. Turns are byte offsets of the words
// at which it is to turn; none leaves that to the setting.
type Keep struct {
	LineRef
	Turns  []int  `json:"turns,omitempty"`
	Reason string `json:"reason,omitempty"`
	Shown  bool   `json:"shown,omitempty"`  // the reason may go out
	Turned string `json:"turned,omitempty"` // the words at which it turns as it is set now, a space between them
	On     string `json:"on,omitempty"`     // the day, ISO 8601
}

// Kind is "keep".
func (Keep) Kind() string { return "keep" }

// Label says whether the poet chose the word.
func (e Keep) Label() string {
	if len(e.Turns) > 0 {
		return "turn a line here"
	}
	return "let a line turn"
}

// OnDay is the decision on that day.
func (e Keep) OnDay(day string) Edit { e.On = day; return e }

// Apply settles the line.
func (e Keep) Apply(c *Collection) (*Collection, error) {
	return c.editLine(e.LineRef, func(l Line) (Line, error) {
		turns := make([]int, 0, len(e.Turns))
		for _, t := range e.Turns {
			if err := breakable(l, t); err != nil {
				return l, err
			}
			_, t = spaceAround(l.text, t)
			turns = append(turns, t)
		}
		slices.Sort(turns)
		turns = emptyIsNil(slices.Compact(turns))
		l.decision = decision{true, turns, e.Turned, e.On, e.Reason, e.Shown && e.Reason != ""}
		return l, nil
	})
}

// Unsettle takes back what was decided about a line's length: that it may
// turn, where, why, and this edition's breaks.
type Unsettle struct{ LineRef }

// Kind is "unsettle".
func (Unsettle) Kind() string { return "unsettle" }

// Label says what it takes back.
func (Unsettle) Label() string { return "unsettle a line" }

// Apply unsettles the line.
func (e Unsettle) Apply(c *Collection) (*Collection, error) {
	return c.editLine(e.LineRef, func(l Line) (Line, error) {
		l = l.unsettled()
		l.breaks = nil
		return l, nil
	})
}

// Indent begins a line that far from the poem's left edge.
type Indent struct {
	LineRef
	To Em `json:"to"`
}

const deepestIndent = 60 * OneEm

// Kind is "indent".
func (Indent) Kind() string { return "indent" }

// Label says what it does.
func (Indent) Label() string { return "indent a line" }

// Apply indents the line.
func (e Indent) Apply(c *Collection) (*Collection, error) {
	if e.To < 0 || e.To > deepestIndent {
		return nil, fmt.Errorf("a line can't be indented by %v: choose from 0 to %v", e.To, deepestIndent)
	}
	return c.editLine(e.LineRef, func(l Line) (Line, error) { return l.WithIndent(e.To), nil })
}

// SetGap puts white of that width before the word at or after a byte offset;
// no width closes the gap there.
type SetGap struct {
	LineRef
	At    int `json:"at"`
	Width Em  `json:"width"`
}

// Kind is "gap".
func (SetGap) Kind() string { return "gap" }

// Label says whether it opens or closes.
func (e SetGap) Label() string {
	if e.Width == 0 {
		return "close a gap"
	}
	return "open a gap"
}

// Apply sets the gap.
func (e SetGap) Apply(c *Collection) (*Collection, error) {
	if e.Width < 0 || e.Width > deepestIndent {
		return nil, fmt.Errorf("a gap can't be %v wide: choose from 0 to %v", e.Width, deepestIndent)
	}
	return c.editLine(e.LineRef, func(l Line) (Line, error) {
		if err := breakable(l, e.At); err != nil {
			return l, err
		}
		_, at := spaceAround(l.text, e.At)
		return l.WithGap(at, e.Width), nil
	})
}

// Drop makes a line begin where the line above ended, or not.
type Drop struct {
	LineRef
	Dropped bool `json:"dropped"`
}

// Kind is "drop".
func (Drop) Kind() string { return "drop" }

// Label says what it does.
func (Drop) Label() string { return "drop a line" }

// Apply drops the line.
func (e Drop) Apply(c *Collection) (*Collection, error) {
	return c.editLine(e.LineRef, func(l Line) (Line, error) { return l.WithDropped(e.Dropped), nil })
}

// mostWhite is how many lines of white may stand above a line.
const mostWhite = 60

// SetAbove has that many lines of white stand above a line, besides the white
// that parts stanzas.
type SetAbove struct {
	LineRef
	Lines int `json:"lines"`
}

// Kind is "white".
func (SetAbove) Kind() string { return "white" }

// Label says whether it opens or closes.
func (e SetAbove) Label() string {
	if e.Lines == 0 {
		return "close the white above a line"
	}
	return "open white above a line"
}

// Apply opens or closes the white.
func (e SetAbove) Apply(c *Collection) (*Collection, error) {
	if e.Lines < 0 || e.Lines > mostWhite {
		return nil, fmt.Errorf("%d lines of white can't stand above a line: choose from 0 to %d", e.Lines, mostWhite)
	}
	return c.editLine(e.LineRef, func(l Line) (Line, error) { return l.WithAbove(e.Lines), nil })
}

// SetRange sets a line to an edge.
type SetRange struct {
	LineRef
	To Range `json:"to"`
}

// Kind is "range".
func (SetRange) Kind() string { return "range" }

// Label says where to.
func (e SetRange) Label() string { return "range a line " + e.To.String() }

// Apply ranges the line.
func (e SetRange) Apply(c *Collection) (*Collection, error) {
	return c.editLine(e.LineRef, func(l Line) (Line, error) { return l.WithRange(e.To), nil })
}

// Retype gives a line other characters. Styles, gaps and breaks keep to the
// words that stay, from the front and from the end. A kept line stays kept as long
// as it turns at the word at which it did: the setting sees to that. Where
// nobody noted that word, the line is unsettled again.
type Retype struct {
	LineRef
	Text string `json:"text"`
}

// Kind is "text".
func (Retype) Kind() string { return "text" }

// Label says what it does.
func (Retype) Label() string { return "retype a line" }

// Apply retypes the line.
func (e Retype) Apply(c *Collection) (*Collection, error) {
	if !utf8.ValidString(e.Text) {
		return nil, fmt.Errorf("the new text is not UTF-8")
	}
	for _, r := range e.Text {
		if r == '\n' || r == '\r' || r == 0x2028 || r == 0x2029 || r == 0x85 || r == 0 {
			return nil, fmt.Errorf("a line can't hold the end of a line: break it after retyping it")
		}
	}
	return c.editLine(e.LineRef, func(l Line) (Line, error) { return l.retyped(e.Text), nil })
}

func (l Line) retyped(text string) Line {
	if text == l.text {
		return l
	}
	m := retyping{old: l.text, text: text}
	m.measure()
	r := l
	r.text = text
	r.spans, r.gaps, r.absorbed = nil, nil, nil
	r = r.decidedAs(l, 0)
	r.decision.turns = m.wordsMoved(l.decision.turns, r.decision.kept)
	for _, s := range l.spans {
		if a, b := m.moved(s.Start), m.moved(s.End); a < b {
			r.spans = append(r.spans, Span{a, b, s.Style})
		}
	}
	for _, g := range l.gaps {
		if at := m.moved(g.At); at > 0 && at < len(text) {
			r = r.withGap(Gap{at, g.Width, g.Tab})
		}
	}
	r.breaks = m.wordsMoved(l.breaks, true)
	if len(r.breaks) > 0 {
		r.decision.on = l.decision.on
	}
	return r
}

// retyping maps offsets of an old text to a new one: what is alike at the front
// and at the end stays put, what was between maps to the edges of the change.
type retyping struct {
	old, text  string
	front, end int // bytes alike at the front and at the end
}

func (m *retyping) measure() {
	n := min(len(m.old), len(m.text))
	for m.front < n && m.old[m.front] == m.text[m.front] {
		m.front++
	}
	for m.front > 0 && m.front < len(m.text) && !utf8.RuneStart(m.text[m.front]) {
		m.front--
	}
	for m.end < n-m.front && m.old[len(m.old)-1-m.end] == m.text[len(m.text)-1-m.end] {
		m.end++
	}
	for m.end > 0 && !utf8.RuneStart(m.text[len(m.text)-m.end]) {
		m.end--
	}
}

// wordsMoved are the places in the new text of offsets in the old, those left out
// that have come to an end of it or on to another; nil unless wanted.
func (m *retyping) wordsMoved(offsets []int, wanted bool) []int {
	var moved []int
	for _, o := range offsets {
		if at := m.moved(o); wanted && at > 0 && at < len(m.text) && !slices.Contains(moved, at) {
			moved = append(moved, at)
		}
	}
	return moved
}

func (m *retyping) moved(at int) int {
	switch {
	case at <= m.front:
		return at
	case at >= len(m.old)-m.end:
		return at + len(m.text) - len(m.old)
	}
	return min(at, len(m.text)-m.end, max(m.front, at))
}

// Restyle gives the characters from Start to End of a line a style, or takes
// it away.
type Restyle struct {
	LineRef
	Start int   `json:"start"`
	End   int   `json:"end"`
	Style Style `json:"style"`
	Off   bool  `json:"off,omitempty"`
}

// Kind is "style".
func (Restyle) Kind() string { return "style" }

// Label says what it does.
func (Restyle) Label() string { return "style some words" }

// Apply styles the words.
func (e Restyle) Apply(c *Collection) (*Collection, error) {
	return c.editLine(e.LineRef, func(l Line) (Line, error) {
		if e.Start < 0 || e.End > len(l.text) || e.Start >= e.End {
			return l, fmt.Errorf("characters %d to %d are not in %q", e.Start, e.End, l.text)
		}
		return l.restyled(e), nil
	})
}

// restyled lays the edit over the spans by way of the style of each byte.
func (l Line) restyled(e Restyle) Line {
	styles := make([]Style, len(l.text))
	for _, s := range l.spans {
		for i := s.Start; i < s.End; i++ {
			styles[i] |= s.Style
		}
	}
	for i := e.Start; i < e.End; i++ {
		if e.Off {
			styles[i] &^= e.Style
		} else {
			styles[i] |= e.Style
		}
	}
	var spans []Span
	for i, st := range styles {
		if last := len(spans) - 1; last >= 0 && spans[last].End == i && spans[last].Style == st {
			spans[last].End++
		} else if st != 0 {
			spans = append(spans, Span{i, i + 1, st})
		}
	}
	l.spans = spans
	return l
}
