package pagemodel

import (
	"fmt"
	"slices"
	"unicode/utf8"
)

// Edit is one thing done to a collection, as a value. It names what it changes
// by lasting identities, so it can be kept and shown later; encoding/json
// writes its arguments.
type Edit interface {
	// Apply gives the next collection. An edit that would change nothing
	// gives c itself. The error says in words why it can't be done.
	Apply(c *Collection) (*Collection, error)
	// Kind is the edit's name in scripts and in the file: "break", "join" …
	Kind() string
	// Label says in words what the edit does, for a menu: "break a line".
	Label() string
}

// In says where a break holds.
type In string

// A break in the poem changes the text; a break in the edition holds in this
// book only, while the poem keeps its long line.
const (
	InPoem    In = "poem"
	InEdition In = "edition"
)

// Break ends a line at a byte offset of its text. The space about the offset
// belongs to neither side.
type Break struct {
	LineRef
	At int    `json:"at"`
	In In     `json:"in,omitempty"` // "" is the poem
	On string `json:"on,omitempty"` // the day, ISO 8601
}

// Kind is "break".
func (Break) Kind() string { return "break" }

// Label says where the break holds.
func (e Break) Label() string {
	if e.In == InEdition {
		return "break a line in this edition"
	}
	return "break a line"
}

// OnDay is the break on that day.
func (e Break) OnDay(day string) Edit { e.On = day; return e }

// Apply breaks the line.
func (e Break) Apply(c *Collection) (*Collection, error) {
	p, at, err := c.Line(e.LineRef)
	if err != nil {
		return nil, err
	}
	l := p.Line(at)
	if err := breakable(l, e.At); err != nil {
		return nil, err
	}
	if e.In == InEdition {
		return c.editLine(e.LineRef, func(l Line) (Line, error) { return l.brokenHere(e.At, e.On), nil })
	}
	if p.Stanza(at).kind == Prose {
		return nil, fmt.Errorf("a paragraph of prose has no line breaks of the poet's: break it in this edition, or open a stanza")
	}
	head, tail := l.part(e.At, LineID(c.next))
	tail.from.On = e.On
	lines := p.Stanza(at).lines
	lines = slices.Concat(lines[:at.Line], []Line{head, tail}, lines[at.Line+1:])
	d := c.withPoem(p.withLines(at, lines))
	d.next = c.next + 1
	return d, nil
}

// breakable says why a line can't be broken at the offset, or nil.
func breakable(l Line, at int) error {
	if at <= 0 || at >= len(l.text) || !utf8.RuneStart(l.text[at]) {
		return fmt.Errorf("the line %q can't be broken at character %d: there is nothing on one side", l.text, at)
	}
	if start, end := spaceAround(l.text, at); start == 0 || end == len(l.text) {
		return fmt.Errorf("the line %q can't be broken there: there is only white on one side", l.text)
	}
	return nil
}

// Join runs the line below on. In the edition it takes back this edition's
// break at byte offset At instead, or all of them where At is 0.
type Join struct {
	LineRef
	In In  `json:"in,omitempty"`
	At int `json:"at,omitempty"`
}

// Kind is "join".
func (Join) Kind() string { return "join" }

// Label says what is joined.
func (Join) Label() string { return "join two lines" }

// Apply joins the lines.
func (e Join) Apply(c *Collection) (*Collection, error) {
	if e.In == InEdition {
		return c.editLine(e.LineRef, func(l Line) (Line, error) { return l.unbroken(e.At) })
	}
	p, at, err := c.Line(e.LineRef)
	if err != nil {
		return nil, err
	}
	lines := p.Stanza(at).lines
	if at.Line+1 == len(lines) {
		return nil, fmt.Errorf("%q ends its stanza: close the stanza break before joining it to the next line", lines[at.Line].text)
	}
	joined := lines[at.Line].join(lines[at.Line+1])
	lines = slices.Concat(lines[:at.Line], []Line{joined}, lines[at.Line+2:])
	return c.withPoem(p.withLines(at, lines)), nil
}

func (l Line) unbroken(at int) (Line, error) {
	left := slices.DeleteFunc(slices.Clone(l.breaks), func(b int) bool { return at == 0 || b == at })
	if len(left) == len(l.breaks) {
		return l, fmt.Errorf("this edition has no break there in %q", l.text)
	}
	l.breaks = emptyIsNil(left)
	if l.State() == Unsettled {
		l.decision.on = ""
	}
	return l, nil
}

// Carry carries words over the break at a line's end: Count words down to the
// line below, or, where Count is negative, up from it. Where all of the line
// below would come up, the two are joined.
type Carry struct {
	LineRef
	Count int `json:"count"`
}

// Kind is "words".
func (Carry) Kind() string { return "words" }

// Label says which way they go.
func (e Carry) Label() string {
	if e.Count < 0 {
		return "draw words up"
	}
	return "carry words down"
}

// Apply carries the words.
func (e Carry) Apply(c *Collection) (*Collection, error) {
	if e.Count == 0 {
		return c, nil
	}
	p, at, err := c.Line(e.LineRef)
	if err != nil {
		return nil, err
	}
	lines := p.Stanza(at).lines
	if at.Line+1 == len(lines) {
		return nil, fmt.Errorf("%q ends its stanza: there is no line below to carry words to", lines[at.Line].text)
	}
	upper, lower := lines[at.Line], lines[at.Line+1]
	offset, whole, err := e.offset(upper, lower)
	if err != nil {
		return nil, err
	}
	if whole {
		return Join{LineRef: e.LineRef}.Apply(c)
	}
	head, tail := upper.join(lower).part(offset, lower.id)
	tail.indent, tail.rng, tail.dropped, tail.above, tail.from = lower.indent, lower.rng, lower.dropped, lower.above, lower.from
	head, tail = head.decidedAs(upper, 0), tail.decidedAs(lower, len(tail.text)-len(lower.text))
	head.tied, tail.opens = upper.tied, lower.opens
	head.absorbed = withoutSeam(head.absorbed, lower.id)
	tail.absorbed = withoutSeam(tail.absorbed, lower.id)
	lines = slices.Concat(lines[:at.Line], []Line{head, tail}, lines[at.Line+2:])
	return c.withPoem(p.withLines(at, lines)), nil
}

// offset is where, in the two lines joined, the break is to stand.
func (e Carry) offset(upper, lower Line) (offset int, whole bool, err error) {
	down, up := Words(upper.text), Words(lower.text)
	switch {
	case e.Count >= len(down):
		return 0, false, fmt.Errorf("%q has %d words: at least one must stay", upper.text, len(down))
	case e.Count > 0:
		return down[len(down)-e.Count].Start, false, nil
	case -e.Count > len(up):
		return 0, false, fmt.Errorf("%q has only %d words to draw up", lower.text, len(up))
	case -e.Count == len(up):
		return 0, true, nil
	}
	joined := upper.join(lower)
	shift := len(joined.text) - len(lower.text)
	return shift + up[-e.Count].Start, false, nil
}

func withoutSeam(seams []Seam, id LineID) []Seam {
	return emptyIsNil(slices.DeleteFunc(slices.Clone(seams), func(s Seam) bool { return s.Line == id }))
}

// editLine is the collection with one line changed by change.
func (c *Collection) editLine(ref LineRef, change func(Line) (Line, error)) (*Collection, error) {
	p, at, err := c.Line(ref)
	if err != nil {
		return nil, err
	}
	old := p.Line(at)
	l, err := change(old)
	if err != nil {
		return nil, err
	}
	if sameLine(old, l) {
		return c, nil
	}
	lines := slices.Clone(p.Stanza(at).lines)
	lines[at.Line] = l
	return c.withPoem(p.withLines(at, lines)), nil
}

func sameLine(a, b Line) bool {
	return a.text == b.text && a.indent == b.indent && a.rng == b.rng && a.dropped == b.dropped && a.above == b.above &&
		a.tied == b.tied && a.opens == b.opens && slices.Equal(a.spans, b.spans) &&
		slices.Equal(a.gaps, b.gaps) && slices.Equal(a.breaks, b.breaks) && a.decision.same(b.decision)
}
