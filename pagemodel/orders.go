package pagemodel

import (
	"fmt"
	"slices"
	"strings"
)

// Arrangement is an order of the book by identities: poems positive, sections
// negative, and the poems that are left out.
type Arrangement struct {
	Order   []int64 `json:"order"`
	LeftOut []int64 `json:"left_out,omitempty"`
}

// Arrangement is the order of the book.
func (c *Collection) Arrangement() Arrangement { return Arrangement(orderOf(c)) }

// NamedOrder is an order kept by name beside the book's.
type NamedOrder struct {
	Name string      `json:"name"`
	On   string      `json:"on,omitempty"` // the day on which it was kept, ISO 8601
	Is   Arrangement `json:"is"`
}

// Orders are the orders kept by name, in the order in which they were kept. Not to
// be changed.
func (c *Collection) Orders() []NamedOrder { return c.orders }

// Complete is an arrangement with everything in it that the file has: what it does
// not name is left out, sections' heads at the end; what the file no longer has is
// passed over.
func (c *Collection) Complete(a Arrangement) Arrangement {
	have, named := map[int64]bool{}, map[int64]bool{}
	for _, t := range c.things() {
		have[identity(Entry{Poem: t.poem, Section: t.section})] = true
	}
	var whole Arrangement
	take := func(ids []int64, into *[]int64) {
		for _, id := range ids {
			if have[id] && !named[id] {
				named[id], *into = true, append(*into, id)
			}
		}
	}
	take(a.Order, &whole.Order)
	take(a.LeftOut, &whole.LeftOut)
	now := orderOf(c)
	for _, id := range slices.Concat(now.Order, now.LeftOut) {
		if id < 0 {
			take([]int64{id}, &whole.Order)
		} else {
			take([]int64{id}, &whole.LeftOut)
		}
	}
	return whole
}

// Rearrange puts the book into another order: poems, runs of poems and sections
// moved, left out or put back, in one step. It must name all that the file has.
type Rearrange struct {
	Arrangement
	What string `json:"what,omitempty"` // in words, for the history; "" is "put the book into another order"
}

// Kind is "order".
func (Rearrange) Kind() string { return "order" }

// Label says what is moved.
func (e Rearrange) Label() string {
	if e.What == "" {
		return "put the book into another order"
	}
	return e.What
}

// Apply puts the book into that order.
func (e Rearrange) Apply(c *Collection) (*Collection, error) {
	now := orderOf(c)
	if slices.Equal(now.Order, e.Order) && slices.Equal(now.LeftOut, e.LeftOut) {
		return c, nil
	}
	was, is := slices.Concat(now.Order, now.LeftOut), slices.Concat(e.Order, e.LeftOut)
	slices.Sort(was)
	slices.Sort(is)
	if !slices.Equal(was, is) {
		return nil, fmt.Errorf("that order does not name every poem and section of the file once: take it from the book as it is now")
	}
	for _, id := range e.LeftOut {
		if id < 0 {
			return nil, fmt.Errorf("a section's head can't be left out: leave out its poems, or take the section away")
		}
	}
	d := *c
	a := assembly{c: &d, pool: map[int64]Entry{}, order: &orderBody{e.Order, e.LeftOut}}
	return &d, a.reorder()
}

// KeepOrder keeps an order under a name, in place of one of that name.
type KeepOrder struct {
	Name string       `json:"name"`
	On   string       `json:"on,omitempty"` // the day, ISO 8601
	Is   *Arrangement `json:"is,omitempty"` // nil is the book's own order
}

// Kind is "keep-order".
func (KeepOrder) Kind() string { return "keep-order" }

// Label names it.
func (e KeepOrder) Label() string { return "keep the order " + e.Name }

// OnDay is the order kept on that day.
func (e KeepOrder) OnDay(day string) Edit { e.On = day; return e }

// Apply keeps it.
func (e KeepOrder) Apply(c *Collection) (*Collection, error) {
	name := strings.Join(strings.Fields(e.Name), " ")
	if name == "" {
		return nil, fmt.Errorf("an order that is kept needs a name: write a word or two")
	}
	kept := NamedOrder{name, e.On, c.Arrangement()}
	if e.Is != nil {
		kept.Is = c.Complete(*e.Is)
	}
	orders := slices.Clone(c.orders)
	switch i := indexOfOrder(orders, name); {
	case i < 0:
		orders = append(orders, kept)
	case orders[i].Name == name && slices.Equal(orders[i].Is.Order, kept.Is.Order) && slices.Equal(orders[i].Is.LeftOut, kept.Is.LeftOut):
		return c, nil
	default:
		orders[i] = kept
	}
	return c.with(func(d *Collection) { d.orders = orders }), nil
}

func indexOfOrder(orders []NamedOrder, name string) int {
	return slices.IndexFunc(orders, func(o NamedOrder) bool { return strings.EqualFold(o.Name, strings.TrimSpace(name)) })
}

// orderCalled is a kept order by its name. The error says what there is.
func (c *Collection) orderCalled(name string) (int, error) {
	if i := indexOfOrder(c.orders, name); i >= 0 {
		return i, nil
	}
	if len(c.orders) == 0 {
		return 0, fmt.Errorf("no order is kept yet: keep one first")
	}
	names := make([]string, len(c.orders))
	for i, o := range c.orders {
		names[i] = o.Name
	}
	return 0, fmt.Errorf("no order is called %q: it is one of %s", name, strings.Join(names, ", "))
}

// UseOrder puts the book into a kept order. Poems that came in since are left out,
// and said to be by the caller, who sees [Collection.LeftOut].
type UseOrder struct {
	Name string `json:"name"`
}

// Kind is "use-order".
func (UseOrder) Kind() string { return "use-order" }

// Label names it.
func (e UseOrder) Label() string { return "use the order " + e.Name }

// Apply puts the book into it.
func (e UseOrder) Apply(c *Collection) (*Collection, error) {
	i, err := c.orderCalled(e.Name)
	if err != nil {
		return nil, err
	}
	return Rearrange{Arrangement: c.Complete(c.orders[i].Is)}.Apply(c)
}

// DropOrder throws a kept order away.
type DropOrder struct {
	Name string `json:"name"`
}

// Kind is "drop-order".
func (DropOrder) Kind() string { return "drop-order" }

// Label names it.
func (e DropOrder) Label() string { return "drop the order " + e.Name }

// Apply drops it.
func (e DropOrder) Apply(c *Collection) (*Collection, error) {
	i, err := c.orderCalled(e.Name)
	if err != nil {
		return nil, err
	}
	return c.with(func(d *Collection) { d.orders = emptyIsNil(slices.Delete(slices.Clone(c.orders), i, i+1)) }), nil
}
