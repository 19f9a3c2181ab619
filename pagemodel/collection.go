package pagemodel

import (
	"errors"
	"fmt"
	"strconv"
	"strings"
)

// SectionID names a section for as long as the file lives.
type SectionID int64

// Section is the head of a section: its poems are those that follow it in the
// order, up to the next section.
type Section struct {
	ID       SectionID
	Title    string
	Epigraph []string // line by line, the source last
}

// Entry is one place in the order of the book: a section's head or a poem. Just
// one of the two is set.
type Entry struct {
	Section *Section
	Poem    *Poem
}

// About is what is true of the whole book.
type About struct {
	Title    string   `json:"title"`
	Poet     string   `json:"poet,omitempty"`
	Language string   `json:"language,omitempty"` // BCP 47; "" is English
	Epigraph []string `json:"epigraph,omitempty"`
}

// Collection is a book of poems in order, and the design that it is set in. It
// never changes once made: every edit gives another that shares what it did
// not touch. The zero Collection is not used; see [NewCollection].
type Collection struct {
	about    About
	design   Design
	designs  []NamedDesign // kept by name, for comparing; never changed in place
	matter   Matter
	order    Series[Entry]
	leftOut  []*Poem
	rounds   []Round // none of these is changed in place
	replies  []Reply // by round and key
	versions map[PoemID]versions
	spoken   map[string]string
	readings []Reading
	voice    Voice // zero: the usual one
	orders   []NamedOrder
	echoes   []Echo
	index    map[PoemID]orderPlace // of order; shared while no poem changes place
	next     int64                 // the lowest identity not yet given out
}

// orderPlace is where a poem stands: its index in the order, and its number
// among the poems, from 1.
type orderPlace struct{ index, number int }

// reindexed is the collection with its index made anew, after its order has
// been given. It changes c, which nobody else may have seen yet.
func (c *Collection) reindexed() *Collection {
	c.index = make(map[PoemID]orderPlace, c.order.Len())
	number := 0
	for i, e := range c.order.All() {
		if e.Poem != nil {
			number++
			c.index[e.Poem.id] = orderPlace{i, number}
		}
	}
	return c
}

// NewCollection is an empty collection.
func NewCollection(about About, design Design) *Collection {
	return &Collection{about: about, design: design, next: 1}
}

// About is what is true of the whole book.
func (c *Collection) About() About { return c.about }

// Design is how the book is to look.
func (c *Collection) Design() Design { return c.design }

// Designs are the designs kept by name, in the order they were kept. Not to be
// changed.
func (c *Collection) Designs() []NamedDesign { return c.designs }

// Matter is the prelims and the end matter. Not to be changed.
func (c *Collection) Matter() Matter { return c.matter }

// Order is the sections' heads and the poems, as they stand in the book. Not
// to be changed.
func (c *Collection) Order() []Entry { return c.order.All() }

// Entries are the same as a series, for whoever wants to know what changed.
func (c *Collection) Entries() Series[Entry] { return c.order }

// Only is the book of part of the order, from one entry up to another, without
// prelims and end matter: for setting a few pages by themselves. It is not to be
// kept in a file.
func (c *Collection) Only(from, to int) *Collection {
	return c.with(func(d *Collection) {
		d.order, d.matter, d.leftOut = SeriesOf(c.order.All()[from:to:to]), Matter{}, nil
	}).reindexed()
}

// LeftOut are the poems that are in the file and not in the book. Not to be
// changed.
func (c *Collection) LeftOut() []*Poem { return c.leftOut }

// NextID is the lowest identity that has not been given out.
func (c *Collection) NextID() int64 { return c.next }

// WithNextID is the collection that gives out no identity below next. A
// history uses it so that what was undone never lends its identities again.
func (c *Collection) WithNextID(next int64) *Collection {
	if next <= c.next {
		return c
	}
	d := *c
	d.next = next
	return &d
}

// Poems are the poems of the book in order, numbered from 1.
func (c *Collection) Poems() func(yield func(number int, p *Poem) bool) {
	return func(yield func(int, *Poem) bool) {
		n := 0
		for _, e := range c.order.All() {
			if e.Poem == nil {
				continue
			}
			if n++; !yield(n, e.Poem) {
				return
			}
		}
	}
}

// Poem finds a poem of the book by its identity; its number counts from 1.
func (c *Collection) Poem(id PoemID) (p *Poem, number int, ok bool) {
	at, ok := c.index[id]
	if !ok {
		return nil, 0, false
	}
	return c.order.At(at.index).Poem, at.number, true
}

// IndexOf is a poem's index in the order, or false.
func (c *Collection) IndexOf(id PoemID) (int, bool) {
	at, ok := c.index[id]
	return at.index, ok
}

// PoemCalled finds a poem by its number ("7", "#7") or by its title, where only
// one has it. "#7" is always the number. The error says what to write instead.
func (c *Collection) PoemCalled(name string) (*Poem, error) {
	digits, always := strings.CutPrefix(name, "#")
	if n, err := strconv.Atoi(digits); err == nil {
		if p, err := c.poemNumbered(n); err == nil || always {
			return p, err
		}
	}
	return c.poemTitled(name)
}

func (c *Collection) poemNumbered(want int) (*Poem, error) {
	count := 0
	for n, p := range c.Poems() {
		if count = n; n == want {
			return p, nil
		}
	}
	return nil, fmt.Errorf("there is no poem %d: the book has %d", want, count)
}

func (c *Collection) poemTitled(title string) (*Poem, error) {
	var found []*Poem
	var numbers []string
	for n, p := range c.Poems() {
		if p.head.Title == title || p.head.Title == "" && p.Name() == title {
			found, numbers = append(found, p), append(numbers, "#"+strconv.Itoa(n))
		}
	}
	switch len(found) {
	case 0:
		return nil, fmt.Errorf("there is no poem called %q: write its title or its number", title)
	case 1:
		return found[0], nil
	}
	return nil, fmt.Errorf("%d poems are called %q: write its number, one of %s", len(found), title, strings.Join(numbers, ", "))
}

// LineRef is a line and the poem that it stands in. Both are needed to find it
// without a look through the whole book.
type LineRef struct {
	Poem PoemID `json:"poem"`
	Line LineID `json:"line"`
}

// ErrNoLine says that a line is not in the book: it was joined into another,
// or undone.
var ErrNoLine = errors.New("that line is no longer in the book")

// Line finds a line of the book.
func (c *Collection) Line(ref LineRef) (*Poem, Place, error) {
	p, _, ok := c.Poem(ref.Poem)
	if !ok {
		return nil, Place{}, ErrNoLine
	}
	at, ok := p.Find(ref.Line)
	if !ok {
		return nil, Place{}, ErrNoLine
	}
	return p, at, nil
}

// with is the collection after change has had its way with a copy.
func (c *Collection) with(change func(*Collection)) *Collection {
	d := *c
	change(&d)
	return &d
}

// withPoem is the collection with one poem of the order replaced by another
// value of it.
func (c *Collection) withPoem(p *Poem) *Collection {
	return c.with(func(d *Collection) {
		d.order = c.order.With(c.index[p.id].index, Entry{Poem: p})
	})
}

// Builder makes a collection from nothing, giving out identities as it goes:
// what importing a manuscript uses. The zero Builder is not used.
type Builder struct {
	c     *Collection
	order []Entry
}

// NewBuilder begins a collection.
func NewBuilder(about About, design Design) *Builder {
	return &Builder{c: NewCollection(about, design)}
}

func (b *Builder) id() int64 { b.c.next++; return b.c.next - 1 }

// Line is a new line with that text.
func (b *Builder) Line(text string) Line { return NewLine(LineID(b.id()), text) }

// Section puts a section's head at the end of the book.
func (b *Builder) Section(title string, epigraph []string) {
	s := &Section{ID: SectionID(b.id()), Title: title, Epigraph: epigraph}
	b.order = append(b.order, Entry{Section: s})
}

// Poem puts a poem at the end of the book. It keeps the slices.
func (b *Builder) Poem(head PoemHead, parts []Part) {
	p := NewPoem(PoemID(b.id()), head, parts)
	b.order = append(b.order, Entry{Poem: p})
}

// Collection is what has been built. The builder must not be used afterwards.
func (b *Builder) Collection() *Collection {
	b.c.order = SeriesOf(b.order)
	return b.c.reindexed()
}
