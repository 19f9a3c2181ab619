package pagemodel

import (
	"bytes"
	"encoding/json"
	"fmt"
	"slices"
	"strconv"
)

// Stored is one thing of a collection as bytes (JSON), the unit in which a file
// keeps it: a poem, a section's head, the design, the designs kept by name, the
// prelims and end matter, the order, what is true of the whole book, the rounds,
// the replies to corrections, the variants of a poem, or how words are said.
type Stored struct {
	Kind string // "poem", "section", "variants", "design" …: the kinds of state below
	Key  string // the identity of a poem or section, for variants of the poem; "" for the rest
	Body []byte
}

// Change is a thing that differs between two collections: its bytes in each,
// nil where it is not there.
type Change struct {
	Kind, Key string
	Old, New  []byte
}

// The kinds of state.
const (
	kindAbout   = "about"
	kindDesign  = "design"
	kindOrder   = "order"
	kindSection = "section"
	kindPoem    = "poem"
	kindMatter  = "matter"
	kindDesigns = "designs"

	// These are in a file only where there is something to keep.
	kindRounds   = "rounds"
	kindReplies  = "replies"
	kindSpoken   = "spoken"
	kindVariants = "variants"
	kindReadings = "readings"
	kindVoice    = "voice"
	kindOrders   = "orders"
	kindEchoes   = "echoes"
)

// Stored are all things of the collection, in no order to rely on.
func (c *Collection) Stored() []Stored {
	var states []Stored
	for _, ch := range Between(&Collection{}, c) {
		states = append(states, Stored{ch.Kind, ch.Key, ch.New})
	}
	return states
}

// FromStored puts a collection together from its states. next is the lowest
// identity not yet given out. The error names the state that can't be read.
func FromStored(states []Stored, next int64) (*Collection, error) {
	changes := make([]Change, len(states))
	for i, s := range states {
		changes[i] = Change{Kind: s.Kind, Key: s.Key, New: s.Body}
	}
	return (&Collection{next: next}).With(changes)
}

// Between is what changed from old to new. Things that the two share cost a
// comparison of pointers.
func Between(old, new *Collection) []Change {
	d := differ{}
	d.value(kindAbout, old.about, new.about, old.next == 0)
	d.value(kindDesign, old.design, new.design, old.next == 0)
	d.value(kindMatter, old.matter, new.matter, old.next == 0)
	d.value(kindDesigns, old.designs, new.designs, old.next == 0)
	d.value(kindOrder, orderOf(old), orderOf(new), old.next == 0)
	d.entries(old, new)
	d.besides(old, new)
	return d.changes
}

// Reversed turns changes round: applied, they take back what the others did.
func Reversed(changes []Change) []Change {
	back := make([]Change, len(changes))
	for i, ch := range changes {
		back[i] = Change{ch.Kind, ch.Key, ch.New, ch.Old}
	}
	return back
}

type differ struct{ changes []Change }

func (d *differ) value(kind string, old, new any, fresh bool) {
	a, b := encode(old), encode(new)
	switch {
	case fresh:
		d.changes = append(d.changes, Change{Kind: kind, New: b})
	case !bytes.Equal(a, b):
		d.changes = append(d.changes, Change{Kind: kind, Old: a, New: b})
	}
}

// entries compares poems and sections by identity; where the order is the same
// it walks the two side by side.
func (d *differ) entries(old, new *Collection) {
	was := make(map[string]thing, 8)
	is := make(map[string]thing, 8)
	a, b := old.things(), new.things()
	for i := range max(len(a), len(b)) {
		if i < len(a) && i < len(b) && a[i] == b[i] {
			continue
		}
		if i < len(a) {
			was[a[i].name()] = a[i]
		}
		if i < len(b) {
			is[b[i].name()] = b[i]
		}
	}
	for _, name := range sortedKeys(was, is) {
		d.entry(was[name], is[name])
	}
}

func (d *differ) entry(old, new thing) {
	if old == new {
		return
	}
	known := new
	if known.empty() {
		known = old
	}
	ch := Change{Kind: known.kind(), Key: known.key(), Old: old.encode(), New: new.encode()}
	if !bytes.Equal(ch.Old, ch.New) {
		d.changes = append(d.changes, ch)
	}
}

func sortedKeys(maps ...map[string]thing) []string {
	var keys []string
	for _, m := range maps {
		for k := range m {
			keys = append(keys, k)
		}
	}
	slices.Sort(keys)
	return slices.Compact(keys)
}

// thing is a poem or a section, in the book or left out.
type thing struct {
	poem    *Poem
	section *Section
}

func (c *Collection) things() []thing {
	all := make([]thing, 0, c.order.Len()+len(c.leftOut))
	for _, e := range c.order.All() {
		all = append(all, thing{e.Poem, e.Section})
	}
	for _, p := range c.leftOut {
		all = append(all, thing{poem: p})
	}
	return all
}

func (t thing) empty() bool { return t.poem == nil && t.section == nil }

func (t thing) kind() string {
	if t.poem != nil {
		return kindPoem
	}
	return kindSection
}

func (t thing) key() string {
	if t.poem != nil {
		return strconv.FormatInt(int64(t.poem.id), 10)
	}
	return strconv.FormatInt(int64(t.section.ID), 10)
}

func (t thing) name() string { return t.kind() + " " + t.key() }

func (t thing) encode() []byte {
	switch {
	case t.poem != nil:
		return encodePoem(t.poem)
	case t.section != nil:
		return encode(t.section)
	}
	return nil
}

// orderBody is the order of the book by identities: poems positive, sections
// negative.
type orderBody struct {
	Order   []int64 `json:"order"`
	LeftOut []int64 `json:"left_out,omitempty"`
}

func orderOf(c *Collection) orderBody {
	var o orderBody
	for _, e := range c.order.All() {
		if e.Poem != nil {
			o.Order = append(o.Order, int64(e.Poem.id))
		} else {
			o.Order = append(o.Order, -int64(e.Section.ID))
		}
	}
	for _, p := range c.leftOut {
		o.LeftOut = append(o.LeftOut, int64(p.id))
	}
	return o
}

// encode writes a value of the model, none of which json can refuse.
func encode(v any) []byte {
	b, err := json.Marshal(v)
	if err != nil {
		panic(fmt.Sprintf("pagemodel: a %T can't be written: %v", v, err))
	}
	return b
}

// With is the collection after changes: what undo and redo are made of.
func (c *Collection) With(changes []Change) (*Collection, error) {
	d := *c
	d.leftOut = slices.Clone(c.leftOut)
	a := assembly{c: &d, pool: map[int64]Entry{}}
	for _, ch := range changes {
		if err := a.take(ch); err != nil {
			return nil, fmt.Errorf("the %s %s can't be read: %w", ch.Kind, ch.Key, err)
		}
	}
	return &d, a.place()
}

// assembly puts changed things into a collection.
type assembly struct {
	c     *Collection
	pool  map[int64]Entry // changed entries: poems by identity, sections by its negative
	order *orderBody
}

func (a *assembly) take(ch Change) error {
	if ch.New == nil && !beside[ch.Kind] {
		return nil // what the order no longer names is gone
	}
	switch ch.Kind {
	case kindAbout:
		a.c.about = About{}
		return json.Unmarshal(ch.New, &a.c.about)
	case kindDesign:
		a.c.design = Design{}
		return json.Unmarshal(ch.New, &a.c.design)
	case kindMatter:
		a.c.matter = Matter{}
		return json.Unmarshal(ch.New, &a.c.matter)
	case kindDesigns:
		a.c.designs = nil
		return json.Unmarshal(ch.New, &a.c.designs)
	case kindOrder:
		a.order = &orderBody{}
		return json.Unmarshal(ch.New, a.order)
	case kindSection:
		s := &Section{}
		err := json.Unmarshal(ch.New, s)
		a.pool[-int64(s.ID)] = Entry{Section: s}
		return err
	case kindPoem:
		p, err := decodePoem(ch.New)
		if err == nil {
			a.pool[int64(p.id)] = Entry{Poem: p}
		}
		return err
	}
	return a.c.takeBeside(ch)
}

func (a *assembly) place() error {
	if a.order == nil {
		for i, e := range a.c.order.All() {
			if changed, ok := a.pool[identity(e)]; ok {
				a.c.order = a.c.order.With(i, changed)
			}
		}
		for i, p := range a.c.leftOut {
			if changed, ok := a.pool[int64(p.id)]; ok {
				a.c.leftOut[i] = changed.Poem
			}
		}
		return nil
	}
	return a.reorder()
}

func (a *assembly) reorder() error {
	for _, t := range a.c.things() {
		e := Entry{Poem: t.poem, Section: t.section}
		if _, ok := a.pool[identity(e)]; !ok {
			a.pool[identity(e)] = e
		}
	}
	order := make([]Entry, 0, len(a.order.Order))
	a.c.leftOut = nil
	for _, id := range a.order.Order {
		e, ok := a.pool[id]
		if !ok {
			return fmt.Errorf("the order names %d, which is not in the file", id)
		}
		order = append(order, e)
	}
	a.c.order = SeriesOf(order)
	for _, id := range a.order.LeftOut {
		e, ok := a.pool[id]
		if !ok || e.Poem == nil {
			return fmt.Errorf("the poem %d is left out and not in the file", id)
		}
		a.c.leftOut = append(a.c.leftOut, e.Poem)
	}
	a.c.reindexed()
	return nil
}

func identity(e Entry) int64 {
	if e.Poem != nil {
		return int64(e.Poem.id)
	}
	return -int64(e.Section.ID)
}
