package pagemodel

import (
	"fmt"
	"reflect"
	"slices"
)

// What the poet says about pages, over the rules of the setting. Each of these
// is anchored to a line or a poem, never to a page.

// KeepTogether keeps the lines from one through another on one page, or lets
// them part again. Through may be in a later stanza of the same poem.
type KeepTogether struct {
	LineRef
	Through LineID `json:"through"`
	Off     bool   `json:"off,omitempty"`
}

// Kind is "together".
func (KeepTogether) Kind() string { return "together" }

// Label says which way it goes.
func (e KeepTogether) Label() string {
	if e.Off {
		return "let lines part"
	}
	return "keep lines together"
}

// Apply ties every line but the last to the one below it. Pages that the poet
// had begin among them begin there no more.
func (e KeepTogether) Apply(c *Collection) (*Collection, error) {
	p, from, err := c.Line(e.LineRef)
	if err != nil {
		return nil, err
	}
	through, ok := p.Find(e.Through)
	if !ok {
		return nil, ErrNoLine
	}
	if through.before(from) {
		return nil, fmt.Errorf("%q stands above %q: name the upper line first", p.Line(through).text, p.Line(from).text)
	}
	return c.onPages(p, func(at Place, l Line) Line {
		if !at.before(from) && at.before(through) {
			l.tied = !e.Off
		}
		if from.before(at) && !through.before(at) && !e.Off {
			l.opens = false
		}
		return l
	}), nil
}

// PageBreak has a page begin with a line, or no longer.
type PageBreak struct {
	LineRef
	Off bool `json:"off,omitempty"`
}

// Kind is "page".
func (PageBreak) Kind() string { return "page" }

// Label says which way it goes.
func (e PageBreak) Label() string {
	if e.Off {
		return "take back a page break"
	}
	return "begin a page with a line"
}

// Apply puts the page break; the line above is no longer tied to this one.
func (e PageBreak) Apply(c *Collection) (*Collection, error) {
	p, here, err := c.Line(e.LineRef)
	if err != nil {
		return nil, err
	}
	if here == (Place{}) && !e.Off {
		return nil, fmt.Errorf("%q begins its poem: say how the poem opens instead", p.Line(here).text)
	}
	above, _ := p.above(here)
	return c.onPages(p, func(at Place, l Line) Line {
		switch {
		case at == here:
			l.opens = !e.Off
		case at == above && !e.Off:
			l.tied = false
		}
		return l
	}), nil
}

// onPages is the collection with change made to the lines of a poem; c itself
// where none differs.
func (c *Collection) onPages(p *Poem, change func(Place, Line) Line) *Collection {
	parts, changed := slices.Clone(p.parts), false
	for i := range parts {
		parts[i].stanzas = slices.Clone(parts[i].stanzas)
		for j, s := range parts[i].stanzas {
			lines := slices.Clone(s.lines)
			for k := range lines {
				l := change(Place{i, j, k}, lines[k])
				changed = changed || !sameLine(l, lines[k])
				lines[k] = l
			}
			parts[i].stanzas[j].lines = lines
		}
	}
	if !changed {
		return c
	}
	return c.withPoem(NewPoem(p.id, p.head, parts))
}

// before says that a place stands above another.
func (a Place) before(b Place) bool {
	if a.Part != b.Part {
		return a.Part < b.Part
	}
	if a.Stanza != b.Stanza {
		return a.Stanza < b.Stanza
	}
	return a.Line < b.Line
}

// above is the place of the line above, through stanza breaks and parts.
func (p *Poem) above(here Place) (Place, bool) {
	last, found := Place{-1, -1, -1}, false
	for at := range p.Lines() {
		if at == here {
			return last, found
		}
		last, found = at, true
	}
	return last, false
}

// SetStart says how a poem opens: on which page, and whether a blank stands
// before it.
type SetStart struct {
	Poem  PoemID `json:"poem"`
	Start Start  `json:"start"`
	Blank bool   `json:"blank,omitempty"`
}

// Kind is "start".
func (SetStart) Kind() string { return "start" }

// Label says what it does.
func (e SetStart) Label() string {
	if e.Blank {
		return "put a blank before a poem"
	}
	return "open a poem " + startLabels[e.Start]
}

var startLabels = map[Start]string{
	FreshPage: "on a fresh page", OnVerso: "on a verso", OnRecto: "on a recto", SharedPage: "below the one before",
	FacingPage: "facing the one before",
}

// Apply changes the poem's head.
func (e SetStart) Apply(c *Collection) (*Collection, error) {
	if p, _, ok := c.Poem(e.Poem); ok && p.head.Lie == Across && e.Start != FreshPage && e.Start != OnVerso {
		return nil, fmt.Errorf("%s lies across the spread, and so opens on a verso: set it upright first", p.Name())
	}
	return c.editHead(e.Poem, func(h *PoemHead) { h.Start, h.Blank = e.Start, e.Blank })
}

// SetForm declares a poem's form.
type SetForm struct {
	Poem PoemID `json:"poem"`
	Form Form   `json:"form"`
}

// Kind is "form".
func (SetForm) Kind() string { return "form" }

// Label says what it does.
func (SetForm) Label() string { return "declare a poem's form" }

// Apply changes the poem's head.
func (e SetForm) Apply(c *Collection) (*Collection, error) {
	return c.editHead(e.Poem, func(h *PoemHead) { h.Form = e.Form })
}

// SetRun has a poem's pages run so many lines long, or short where Lines is
// negative: both pages of a spread alike.
type SetRun struct {
	Poem  PoemID `json:"poem"`
	Lines int    `json:"lines"`
}

// Kind is "run".
func (SetRun) Kind() string { return "run" }

// Label says which way.
func (e SetRun) Label() string {
	switch {
	case e.Lines > 0:
		return "run a poem's pages long"
	case e.Lines < 0:
		return "run a poem's pages short"
	}
	return "run a poem's pages even"
}

// Apply changes the poem's head. Pages run at most two lines long or short.
func (e SetRun) Apply(c *Collection) (*Collection, error) {
	if e.Lines < -2 || e.Lines > 2 {
		return nil, fmt.Errorf("pages can run at most two lines long or short, not %d", e.Lines)
	}
	return c.editHead(e.Poem, func(h *PoemHead) { h.Run = e.Lines })
}

// editHead is the collection with one poem's head changed.
func (c *Collection) editHead(id PoemID, change func(*PoemHead)) (*Collection, error) {
	p, _, ok := c.Poem(id)
	if !ok {
		return nil, fmt.Errorf("that poem is no longer in the book")
	}
	h := p.head
	change(&h)
	return SetHead{id, h}.Apply(c)
}

// SetMatter gives the book other prelims and end matter.
type SetMatter struct {
	Matter Matter `json:"matter"`
}

// Kind is "matter".
func (SetMatter) Kind() string { return "matter" }

// Label says what it does.
func (SetMatter) Label() string { return "change the prelims or end matter" }

// Apply changes them.
func (e SetMatter) Apply(c *Collection) (*Collection, error) {
	if err := e.Matter.check(); err != nil {
		return nil, err
	}
	if reflect.DeepEqual(e.Matter, c.matter) {
		return c, nil
	}
	return c.with(func(d *Collection) { d.matter = e.Matter }), nil
}

// NamedDesign is a design kept under a name.
type NamedDesign struct {
	Name   string `json:"name"`
	Design Design `json:"design"`
}

// KeepDesign keeps a design under a name, over any that was kept under it.
type KeepDesign struct {
	Name   string `json:"name"`
	Design Design `json:"design"`
}

// Kind is "keep-design".
func (KeepDesign) Kind() string { return "keep-design" }

// Label names it.
func (e KeepDesign) Label() string { return "keep the design “" + e.Name + "”" }

// Apply keeps the design.
func (e KeepDesign) Apply(c *Collection) (*Collection, error) {
	if e.Name == "" {
		return nil, fmt.Errorf("a design is kept under a name: give one")
	}
	if err := e.Design.Check(); err != nil {
		return nil, err
	}
	kept := NamedDesign(e)
	i := slices.IndexFunc(c.designs, func(d NamedDesign) bool { return d.Name == e.Name })
	if i >= 0 && c.designs[i] == kept {
		return c, nil
	}
	return c.with(func(d *Collection) {
		d.designs = slices.Clone(c.designs)
		if i >= 0 {
			d.designs[i] = kept
		} else {
			d.designs = append(d.designs, kept)
		}
	}), nil
}

// DropDesign forgets a design that was kept under a name.
type DropDesign struct {
	Name string `json:"name"`
}

// Kind is "drop-design".
func (DropDesign) Kind() string { return "drop-design" }

// Label names it.
func (e DropDesign) Label() string { return "drop the design “" + e.Name + "”" }

// Apply drops the design.
func (e DropDesign) Apply(c *Collection) (*Collection, error) {
	for i, kept := range c.designs {
		if kept.Name == e.Name {
			return c.with(func(d *Collection) { d.designs = emptyIsNil(slices.Delete(slices.Clone(c.designs), i, i+1)) }), nil
		}
	}
	return nil, fmt.Errorf("no design is kept under the name %q", e.Name)
}
