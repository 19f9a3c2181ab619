package pagemodel

import "fmt"

// What a manuscript says about pages, as it is taken into a new book. In a book that
// is there already the same is said by [KeepTogether], [PageBreak] and [SetMatter].

// WithTied is the line kept on the page of the line below it, or not.
func (l Line) WithTied(tied bool) Line { l.tied = tied; return l }

// WithOpensPage is the line that a page begins with, or not.
func (l Line) WithOpensPage(opens bool) Line { l.opens = opens; return l }

// Matter gives the book its prelims and end matter. The error says in words what
// makes them impossible.
func (b *Builder) Matter(m Matter) error {
	if err := m.check(); err != nil {
		return err
	}
	b.c.matter = m
	return nil
}

// SetTab moves the word at or after a byte offset to a tab stop, which counts from
// the poem's left edge; a stop at 0 takes the tab or gap there away.
type SetTab struct {
	LineRef
	At   int `json:"at"`
	Stop Em  `json:"stop"`
}

// Kind is "tab".
func (SetTab) Kind() string { return "tab" }

// Label says whether it sets or clears.
func (e SetTab) Label() string {
	if e.Stop == 0 {
		return "clear a tab"
	}
	return "set a tab"
}

// Apply sets the tab.
func (e SetTab) Apply(c *Collection) (*Collection, error) {
	if e.Stop < 0 || e.Stop > deepestIndent {
		return nil, fmt.Errorf("a tab stop can't stand at %v: choose from 0 to %v", e.Stop, deepestIndent)
	}
	return c.editLine(e.LineRef, func(l Line) (Line, error) {
		if err := breakable(l, e.At); err != nil {
			return l, err
		}
		_, at := spaceAround(l.text, e.At)
		return l.WithTab(at, e.Stop), nil
	})
}
