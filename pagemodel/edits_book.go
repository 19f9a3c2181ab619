package pagemodel

import (
	"fmt"
	"reflect"
	"slices"
)

// StanzaBreak opens a stanza break after a line, or closes the one that is
// there.
type StanzaBreak struct {
	LineRef
	Open bool `json:"open"`
}

// Kind is "stanza".
func (StanzaBreak) Kind() string { return "stanza" }

// Label says whether it opens or closes.
func (e StanzaBreak) Label() string {
	if e.Open {
		return "open a stanza break"
	}
	return "close a stanza break"
}

// Apply opens or closes the break.
func (e StanzaBreak) Apply(c *Collection) (*Collection, error) {
	p, at, err := c.Line(e.LineRef)
	if err != nil {
		return nil, err
	}
	s := p.Stanza(at)
	last := at.Line+1 == len(s.lines)
	switch {
	case e.Open == last:
		return c, nil
	case e.Open:
		upper, lower := Stanza{s.kind, s.lines[: at.Line+1 : at.Line+1]}, Stanza{s.kind, s.lines[at.Line+1:]}
		return c.withPoem(p.withStanzas(at.Part, at.Stanza, 1, upper, lower)), nil
	}
	return e.close(c, p, at)
}

func (e StanzaBreak) close(c *Collection, p *Poem, at Place) (*Collection, error) {
	stanzas := p.parts[at.Part].stanzas
	if at.Stanza+1 == len(stanzas) {
		return nil, fmt.Errorf("no stanza follows %q here: there is no break to close", p.Line(at).text)
	}
	upper, lower := stanzas[at.Stanza], stanzas[at.Stanza+1]
	if upper.kind != lower.kind {
		return nil, fmt.Errorf("a stanza of verse and a paragraph of prose can't be made one")
	}
	one := Stanza{upper.kind, slices.Concat(upper.lines, lower.lines)}
	return c.withPoem(p.withStanzas(at.Part, at.Stanza, 2, one)), nil
}

// SetHead gives a poem another head: title, dedication, form, start …
type SetHead struct {
	Poem PoemID   `json:"poem"`
	Head PoemHead `json:"head"`
}

// Kind is "head".
func (SetHead) Kind() string { return "head" }

// Label says what it does.
func (SetHead) Label() string { return "change a poem's head" }

// Apply changes the head.
func (e SetHead) Apply(c *Collection) (*Collection, error) {
	p, _, ok := c.Poem(e.Poem)
	if !ok {
		return nil, fmt.Errorf("that poem is no longer in the book")
	}
	if reflect.DeepEqual(p.head, e.Head) {
		return c, nil
	}
	if e.Head.Size != 0 && (e.Head.Size < Pt(4) || e.Head.Size > Pt(72)) {
		return nil, fmt.Errorf("a poem of %v can't be set: choose a size from 4pt to 72pt, or none of its own", e.Head.Size)
	}
	return c.withPoem(p.withHead(e.Head)), nil
}

// Move puts a poem before another, or at the end of the book where Before is 0.
type Move struct {
	Poem   PoemID `json:"poem"`
	Before PoemID `json:"before,omitempty"`
}

// Kind is "move".
func (Move) Kind() string { return "move" }

// Label says what it does.
func (Move) Label() string { return "move a poem" }

// Apply moves the poem.
func (e Move) Apply(c *Collection) (*Collection, error) {
	from, ok := c.IndexOf(e.Poem)
	if !ok {
		return nil, fmt.Errorf("the poem to move is no longer in the book")
	}
	if e.Poem == e.Before {
		return c, nil
	}
	order := slices.Delete(slices.Clone(c.order.All()), from, from+1)
	to := len(order)
	if e.Before != 0 {
		if to = indexOfPoem(order, e.Before); to < 0 {
			return nil, fmt.Errorf("the poem to move it before is no longer in the book")
		}
	}
	if to == from {
		return c, nil
	}
	order = slices.Insert(order, to, c.order.At(from))
	return c.with(func(d *Collection) { d.order = SeriesOf(order) }).reindexed(), nil
}

func indexOfPoem(order []Entry, id PoemID) int {
	return slices.IndexFunc(order, func(e Entry) bool { return e.Poem != nil && e.Poem.id == id })
}

// SetDesign sets the book to another design.
type SetDesign struct {
	Design Design `json:"design"`
}

// Kind is "design".
func (SetDesign) Kind() string { return "design" }

// Label says what it does.
func (SetDesign) Label() string { return "change the design" }

// Apply changes the design.
func (e SetDesign) Apply(c *Collection) (*Collection, error) {
	if err := e.Design.Check(); err != nil {
		return nil, err
	}
	if e.Design == c.design {
		return c, nil
	}
	return c.with(func(d *Collection) { d.design = e.Design }), nil
}

// SetAbout changes what is true of the whole book: its title, its poet.
type SetAbout struct {
	About About `json:"about"`
}

// Kind is "about".
func (SetAbout) Kind() string { return "about" }

// Label says what it does.
func (SetAbout) Label() string { return "change the book's title page" }

// Apply changes it.
func (e SetAbout) Apply(c *Collection) (*Collection, error) {
	if reflect.DeepEqual(e.About, c.about) {
		return c, nil
	}
	return c.with(func(d *Collection) { d.about = e.About }), nil
}

// Add puts the sections and poems of another collection, as a manuscript gives
// one, at the end of this book, with identities of their own. A book without
// prelims and end matter takes the other's.
type Add struct {
	From *Collection `json:"-"`
	Name string      `json:"name"` // of the manuscript, for the history
}

// Kind is "add".
func (Add) Kind() string { return "add" }

// Label says what was added.
func (e Add) Label() string { return "add " + e.Name }

// Apply adds the poems.
func (e Add) Apply(c *Collection) (*Collection, error) {
	if e.From == nil || e.From.order.Len() == 0 {
		return c, nil
	}
	shift := c.next - 1
	added := make([]Entry, e.From.order.Len())
	for i, entry := range e.From.order.All() {
		added[i] = entry.renumbered(shift)
	}
	return c.with(func(d *Collection) {
		d.order = SeriesOf(slices.Concat(c.order.All(), added))
		d.next = shift + e.From.next
		if reflect.DeepEqual(c.matter, Matter{}) {
			d.matter = e.From.matter
		}
	}).reindexed(), nil
}

// renumbered is the entry with every identity in it moved up by shift.
func (e Entry) renumbered(shift int64) Entry {
	if e.Section != nil {
		s := *e.Section
		s.ID += SectionID(shift)
		return Entry{Section: &s}
	}
	parts := make([]Part, len(e.Poem.parts))
	for i, part := range e.Poem.parts {
		parts[i] = Part{part.heading, make([]Stanza, len(part.stanzas))}
		for j, s := range part.stanzas {
			parts[i].stanzas[j] = s.renumbered(shift)
		}
	}
	return Entry{Poem: NewPoem(e.Poem.id+PoemID(shift), e.Poem.head, parts)}
}

func (s Stanza) renumbered(shift int64) Stanza {
	lines := slices.Clone(s.lines)
	for k := range lines {
		lines[k].id += LineID(shift)
		if f := lines[k].from; f != nil {
			g := *f
			g.Line += LineID(shift)
			lines[k].from = &g
		}
		lines[k].absorbed = slices.Clone(lines[k].absorbed)
		for n := range lines[k].absorbed {
			lines[k].absorbed[n].Line += LineID(shift)
		}
	}
	return Stanza{s.kind, lines}
}
