package typeset

import (
	"math"
	"slices"
	"sync"

	"headland/pagemodel"
)

// The page ends of a chain that are best, for each side that it may open on and
// each side that may come after it. What they cost is a sum over its pages, and
// a page's share depends only on where it begins and ends, its side, and
// whether the poem has had no page before, one, or more: so the best way on
// from a page's head does not depend on how one came there, and dynamic
// programming finds the best of all ways. Ties take the fullest page, from the
// first page on.

// before says how many pages a poem has had at the head of a page.
const (
	none = iota
	one
	more
	counts
)

// onward is the best way on from the head of a page.
type onward struct {
	weight weight
	next   int32 // the first step of the next page
	open   bool  // there is such a way
}

// search is the table of one chain.
type search struct {
	c       *chain
	lenient bool // forbidden page ends are allowed
	table   *[]onward
	best    [][]onward // by step: [state(count, side, after)]
}

// tables are room for searches, which trying edits needs again and again.
var tables = sync.Pool{New: func() any { return new([]onward) }}

func state(count int, side, after pagemodel.Side) int { return count<<2 | int(side)<<1 | int(after) }

// solve finds the chain's plans. Only where nothing else fits are forbidden page
// ends tried: a chain can always keep them as few as they can be, whatever side
// it opens on, so no other plan could serve the book.
func (c *chain) solve() {
	if c.kind == singly && len(c.poems) == 1 && c.solveSingle() {
		return
	}
	s := search{c: c, table: tables.Get().(*[]onward)}
	defer tables.Put(s.table)
	if s.run(); !s.found() {
		s.lenient = true
		s.run()
	}
	for _, side := range [...]pagemodel.Side{pagemodel.Recto, pagemodel.Verso} {
		for _, after := range [...]pagemodel.Side{pagemodel.Recto, pagemodel.Verso} {
			c.plans[side][after] = s.plan(side, after)
		}
	}
}

// found says that some plan was found.
func (s *search) found() bool {
	for _, side := range [...]pagemodel.Side{pagemodel.Recto, pagemodel.Verso} {
		for _, after := range [...]pagemodel.Side{pagemodel.Recto, pagemodel.Verso} {
			if s.best[0][state(none, side, after)].open {
				return true
			}
		}
	}
	return false
}

// run fills the table from the chain's end.
func (s *search) run() {
	n := len(s.c.steps)
	table := slices.Grow((*s.table)[:0], (n+1)*counts*4)[:(n+1)*counts*4]
	clear(table)
	*s.table, s.best = table, make([][]onward, n+1)
	for u := range s.best {
		s.best[u] = table[u*counts*4 : (u+1)*counts*4]
	}
	for _, side := range [...]pagemodel.Side{pagemodel.Recto, pagemodel.Verso} {
		s.best[n][state(none, side, side)].open = true
	}
	for u := n - 1; u >= 0; u-- {
		if s.mayBegin(u) {
			s.from(u)
		}
	}
}

// mayBegin says that a page may begin with the step.
func (s *search) mayBegin(u int) bool {
	e := &s.c.steps[u].end
	return s.c.opens(u) || !e.barred && (s.lenient || !e.forbidden)
}

// from finds the best ways on from a page that begins with step u: the page is
// filled step by step, and may end before each.
func (s *search) from(u int) {
	f := s.c.page(u)
	rows := s.c.rows(u)
	last := s.c.poemAt(u)
	verse := int32(0) // of the poem that stands at the page's foot
	for i := u; i < len(s.c.steps); i++ {
		if i > u && s.c.steps[i].end.forced {
			return // no page runs past it
		}
		if s.c.opens(i) {
			last, verse = s.c.poemAt(i), 0
		}
		f.add(i)
		if f.grid > rows && i > u {
			return
		}
		verse += s.c.steps[i].verse
		if v := i + 1; v == len(s.c.steps) || s.mayBegin(v) {
			s.page(u, v, last, max(0, rows-f.grid), verse)
		}
	}
}

// page weighs a page from step u to step v in every state. last is the poem at
// its foot, slack the rows left empty, verse that poem's rows of verse on it.
func (s *search) page(u, v, last int, slack, verse int32) {
	c := s.c
	within := v < len(c.steps) && !c.opens(v)
	opened := int(c.first[last]) >= u
	for _, side := range [...]pagemodel.Side{pagemodel.Recto, pagemodel.Verso} {
		if c.spreads() && side == pagemodel.Recto {
			continue
		}
		cost := Cost{Pages: 1}
		next := side.Facing()
		foot := side
		if c.spreads() {
			cost.Pages, next, foot = 2, side, pagemodel.Recto // every page end is at a turn
		}
		if within {
			c.endCost(&cost, v, last, foot, slack, verse)
		}
		for count := s.firstCount(u); count <= s.lastCount(u); count++ {
			s.offer(u, v, count, side, next, within, opened, cost)
		}
	}
}

// firstCount and lastCount are how many pages the poem at a page's head can
// have had before.
func (s *search) firstCount(u int) int {
	if s.c.opens(u) {
		return none
	}
	return one
}

func (s *search) lastCount(u int) int {
	if s.c.opens(u) {
		return none
	}
	return more
}

// offer takes the page as the way on from u where it is the best so far. Of
// equals the later, fuller page is taken.
func (s *search) offer(u, v, count int, side, next pagemodel.Side, within, opened bool, cost Cost) {
	c := s.c
	then := none
	if within {
		then = one
		if !opened {
			then = min(count+1, more)
		}
	}
	ends := v >= int(c.first[c.poemAt(u)+1])
	if count == one && ends && side == pagemodel.Verso && !c.spreads() {
		cost.Unfaced++
	}
	w := weightOf(cost)
	for _, after := range [...]pagemodel.Side{pagemodel.Recto, pagemodel.Verso} {
		way := &s.best[v][state(then, next, after)]
		if !way.open {
			continue
		}
		sum := w.add(&way.weight)
		mine := &s.best[u][state(count, side, after)]
		if !mine.open || sum.compare(&mine.weight) <= 0 {
			*mine = onward{weight: sum, next: int32(v), open: true}
		}
	}
}

// spreads says that the chain goes spread by spread.
func (c *chain) spreads() bool { return c.kind == facing || c.kind == across }

// endCost adds what a page end before step v costs, at the foot of a page of
// that side.
func (c *chain) endCost(cost *Cost, v, last int, foot pagemodel.Side, slack, verse int32) {
	e := &c.steps[v].end
	if e.forbidden {
		cost.Forbidden++
	}
	if e.parts && foot == pagemodel.Recto {
		cost.Turned++
	}
	if e.parts && foot == pagemodel.Verso {
		cost.Split++
	}
	if e.against {
		cost.AgainstRule++
	}
	if c.poems[last].stanzaless {
		cost.Uneven += unevenness(verse)
	}
	cost.Slack += int(slack) * int(slack)
}

// unevenness is 0 for a page of stanza-less verse whose depth is a multiple of
// four, 1 where it is only even, 2 where it is odd: "an even number, best a
// multiple of 4" (Brossard 150).
func unevenness(rows int32) int {
	switch {
	case rows%4 == 0:
		return 0
	case rows%2 == 0:
		return 1
	}
	return 2
}

// plan reads the best way through off the table.
func (s *search) plan(side, after pagemodel.Side) plan {
	way := s.best[0][state(none, side, after)]
	if !way.open {
		return plan{}
	}
	p := plan{weight: way.weight, pages: 0}
	count, u := none, 0
	each := int32(1)
	if s.c.spreads() {
		each = 2
	}
	for {
		v := int(s.best[u][state(count, side, after)].next)
		p.pages += each
		if v == len(s.c.steps) {
			return p
		}
		p.cuts = append(p.cuts, int32(v))
		count = s.countAt(u, v, count)
		if !s.c.spreads() {
			side = side.Facing()
		}
		u = v
	}
}

// countAt is how many pages the poem at step v has had, where the page before
// began with step u and the poem there had had count.
func (s *search) countAt(u, v, count int) int {
	switch {
	case s.c.opens(v):
		return none
	case int(s.c.first[s.c.poemAt(v)]) >= u:
		return one
	}
	return min(count+1, more)
}

// solveSingle serves the usual poem, which fits one page: that, or the best of
// two pages where the book had rather the other side came next. Three pages are
// never better than one, nor four than two: the same page ends less some. It is
// false where the poem is longer.
func (c *chain) solveSingle() bool {
	f := c.page(0)
	rows := c.rows(0)
	for i := range c.steps {
		if f.add(i); i > 0 && c.steps[i].end.forced || f.grid > rows {
			return false
		}
	}
	for _, side := range [...]pagemodel.Side{pagemodel.Recto, pagemodel.Verso} {
		c.plans[side][side.Facing()] = plan{weight: weightOf(Cost{Pages: 1}), pages: 1}
		c.plans[side][side] = c.bestOfTwo(side)
	}
	return true
}

// bestOfTwo is the best plan of two pages of a poem that would fit one.
func (c *chain) bestOfTwo(side pagemodel.Side) plan {
	f, rows, verse := c.page(0), c.rows(0), int32(0)
	best := plan{weight: weight{math.MaxInt64}}
	for v := 1; v < len(c.steps); v++ {
		f.add(v - 1)
		verse += c.steps[v-1].verse
		if e := &c.steps[v].end; e.forbidden || e.barred {
			continue
		}
		cost := Cost{Pages: 2}
		if side == pagemodel.Recto {
			cost.Unfaced = 1
		}
		c.endCost(&cost, v, 0, side, max(0, rows-f.grid), verse)
		if w := weightOf(cost); w.compare(&best.weight) <= 0 {
			best = plan{weight: w, cuts: []int32{int32(v)}, pages: 2}
		}
	}
	if best.pages == 0 {
		return plan{}
	}
	return best
}
