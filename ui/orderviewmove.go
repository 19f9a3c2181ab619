package ui

import (
	"fmt"
	"image"
	"math"
	"slices"
	"strings"

	"headland/pagemodel"
	"headland/typeset/order"
)

// orderSlot is a place in the order where what is held can stand: before the
// thing of that index of the rest, in the book or among what is left out.
type orderSlot struct {
	out    bool
	before int
}

// orderAnchor is where a slot can be reached by the hand, in the rows as they lay
// when it took hold: where what is held would begin if it stood there and all else
// closed up. In the book that is counted in pages from the first, so that a row's
// end is near the next one's beginning; in what is left out, in device pixels.
type orderAnchor struct {
	slot   int
	begins float64
}

// orderMove is what is held, and where it can stand.
type orderMove struct {
	book    *orderBook // as it was when it was taken
	plan    *orderPlan // likewise
	ids     []int64    // what is held, in its order
	rest    pagemodel.Arrangement
	slots   []orderSlot
	anchors []orderAnchor
	home    int        // the slot where it stood
	at      int        // and where it would stand
	begins  float64    // where it began, in pages from the first of the book
	long    float64    // how many pages it takes, 0 where it is left out
	grip    float64    // how far from its beginning the hand took hold of it, likewise
	toll    order.Toll // of book
}

// newOrderMove takes hold of pieces: poems, or a section's head with its poems.
func newOrderMove(b *orderBook, p *orderPlan, ids []int64) *orderMove {
	m := &orderMove{book: b, plan: p, ids: ids}
	held := func(id int64) bool { return slices.Contains(ids, id) }
	was := b.set.Collection().Arrangement()
	m.rest = pagemodel.Arrangement{
		Order:   slices.DeleteFunc(slices.Clone(was.Order), held),
		LeftOut: slices.DeleteFunc(slices.Clone(was.LeftOut), held),
	}
	m.laySlots()
	m.home = m.homeSlot(was)
	m.at = m.home
	m.anchorSlots()
	return m
}

// section says that a section is held.
func (m *orderMove) section() bool { return m.ids[0] < 0 }

// laySlots finds where what is held can stand: a section between sections, poems
// anywhere, in the book and out of it.
func (m *orderMove) laySlots() {
	for i := range len(m.rest.Order) + 1 {
		if !m.section() || i == len(m.rest.Order) || m.rest.Order[i] < 0 {
			m.slots = append(m.slots, orderSlot{before: i})
		}
	}
	if m.section() {
		return
	}
	for i := range len(m.rest.LeftOut) + 1 {
		m.slots = append(m.slots, orderSlot{out: true, before: i})
	}
}

// homeSlot is the slot where the first that is held stood.
func (m *orderMove) homeSlot(was pagemodel.Arrangement) int {
	slot := orderSlot{before: slices.Index(was.Order, m.ids[0])}
	if slot.before < 0 {
		slot = orderSlot{true, slices.Index(was.LeftOut, m.ids[0])}
	}
	return slices.Index(m.slots, slot)
}

// anchorSlots finds where the hand reaches the slots: where what stands before
// each ends, and where what follows begins.
func (m *orderMove) anchorSlots() {
	first, out := m.book.piece(m.ids[0])
	if last, _ := m.book.piece(m.ids[len(m.ids)-1]); !out {
		m.begins = first.begins()
		m.long = last.ends() - m.begins
	}
	for i, s := range m.slots {
		list := m.list(s)
		before, _ := m.book.piece(idAt(list, s.before-1))
		after, _ := m.book.piece(idAt(list, s.before))
		if s.out {
			m.anchorOut(i, before, after)
			continue
		}
		closed := 0.0 // by what what is held leaves behind
		if !out && i > m.home {
			closed = m.long
		}
		if before != nil {
			m.anchors = append(m.anchors, orderAnchor{i, before.ends() - closed})
		}
		if after != nil {
			m.anchors = append(m.anchors, orderAnchor{i, after.begins() - closed})
		}
	}
	if !out {
		m.anchors = append(m.anchors, orderAnchor{m.home, m.begins})
	}
}

// anchorOut anchors a slot among what is left out.
func (m *orderMove) anchorOut(slot int, before, after *orderPiece) {
	at := func(row, x int) {
		m.anchors = append(m.anchors, orderAnchor{slot, float64((row-m.plan.books)*4*m.plan.size.X + x)})
	}
	if before != nil {
		row, b := m.plan.lastBar(before.id)
		at(row, b.to)
	}
	if after != nil {
		row, b := m.plan.firstBar(after.id)
		at(row, b.from)
	}
	if before == nil && after == nil {
		at(m.plan.books, m.plan.left)
	}
}

// idAt is a thing of a list; 0, which names nothing, outside it.
func idAt(list []int64, i int) int64 {
	if i < 0 || i >= len(list) {
		return 0
	}
	return list[i]
}

// list is the rest of what a slot is in: the book, or what is left out.
func (m *orderMove) list(s orderSlot) []int64 {
	if s.out {
		return m.rest.LeftOut
	}
	return m.rest.Order
}

// reach is the slot nearest to a point, y counted from the first row: the one
// that has what is held lie under the hand where it took hold of it.
func (m *orderMove) reach(p image.Point) int {
	row := m.plan.rowAt(p.Y)
	out := row >= m.plan.books && m.outmost() >= 0
	begins := float64((row-m.plan.books)*4*m.plan.size.X + p.X)
	if !out {
		begins = m.plan.pageAt(min(row, m.plan.books-1), p.X) - m.grip
	}
	return m.nearest(out, begins)
}

// nearest is the slot, in the book or out of it, where what is held begins nearest
// to a place.
func (m *orderMove) nearest(out bool, begins float64) int {
	best, slot := -1.0, m.at
	for _, a := range m.anchors {
		if m.slots[a.slot].out != out {
			continue
		}
		if far := math.Abs(a.begins - begins); best < 0 || far < best {
			best, slot = far, a.slot
		}
	}
	return slot
}

// grasp notes where on what is held the hand took hold of it.
func (m *orderMove) grasp(p image.Point) {
	if row := m.plan.rowAt(p.Y); row < m.plan.books {
		m.grip = max(0, min(m.long, m.plan.pageAt(row, p.X)-m.begins))
	}
}

// outmost is the last slot of what is left out, -1 where what is held can't be
// left out.
func (m *orderMove) outmost() int {
	if last := len(m.slots) - 1; m.slots[last].out {
		return last
	}
	return -1
}

// end is the last slot in the book.
func (m *orderMove) end() int {
	for i := len(m.slots) - 1; i >= 0; i-- {
		if !m.slots[i].out {
			return i
		}
	}
	return m.home
}

// arrangement is the order with what is held in its slot.
func (m *orderMove) arrangement() pagemodel.Arrangement {
	s := m.slots[m.at]
	a := pagemodel.Arrangement{Order: slices.Clone(m.rest.Order), LeftOut: slices.Clone(m.rest.LeftOut)}
	if s.out {
		a.LeftOut = slices.Insert(a.LeftOut, s.before, m.ids...)
	} else {
		a.Order = slices.Insert(a.Order, s.before, m.ids...)
	}
	return a
}

// edit is what letting go would do; false where nothing would be otherwise.
func (m *orderMove) edit() (pagemodel.Rearrange, bool) {
	if m.at == m.home {
		return pagemodel.Rearrange{}, false
	}
	return pagemodel.Rearrange{Arrangement: m.arrangement(), What: m.says()}, true
}

// says says in words what the move is.
func (m *orderMove) says() string {
	s := m.slots[m.at]
	_, out := m.book.piece(m.ids[0])
	switch {
	case s.out && out:
		return "move " + m.what() + " among what is left out"
	case s.out:
		return "leave out " + strings.TrimSuffix(m.what(), ",")
	case out:
		return "put " + m.what() + " into the book " + m.where(s)
	}
	return "move " + m.what() + " " + m.where(s)
}

// what names what is held.
func (m *orderMove) what() string { return m.book.name(m.ids) }

// where says before what a slot of the book is, or after what.
func (m *orderMove) where(s orderSlot) string {
	next := idAt(m.rest.Order, s.before)
	switch {
	case next > 0 || next < 0 && m.section():
		return "before " + m.book.name([]int64{next})
	case next == 0 && s.before > 0 && (m.section() || idAt(m.rest.Order, s.before-1) > 0):
		return "to the end of the book"
	case s.before == 0:
		return "to the front of the book"
	}
	before := idAt(m.rest.Order, s.before-1)
	if before < 0 {
		return "into " + m.book.name([]int64{before})
	}
	return "after " + m.book.name([]int64{before})
}

// name names pieces: one by its title, a run by its first and last, a section by
// its own.
func (b *orderBook) name(ids []int64) string {
	quoted := func(id int64) string {
		if p, _ := b.piece(id); p != nil && p.title != "" {
			return "“" + p.title + "”"
		}
		return "a section without a title"
	}
	switch {
	case ids[0] < 0:
		return "the section " + quoted(ids[0])
	case len(ids) == 1:
		return quoted(ids[0])
	}
	return fmt.Sprintf("%d poems, %s to %s,", len(ids), quoted(ids[0]), quoted(ids[len(ids)-1]))
}
