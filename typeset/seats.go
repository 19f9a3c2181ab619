package typeset

import (
	"slices"

	"headland/pagemodel"
)

// How the chains of a book follow one another. What a chain costs depends on
// the side that it opens on, and on which side is left for the next; so for
// each chain one difference is enough to say how much the rest of the book had
// rather be arrived at on a verso than on a recto. A change works back through
// the book only as far as that difference changes; a chain that must open on a
// recto cuts the book in two.

// opening is what the poet says about the page that a chain opens on.
type opening struct {
	blank bool // a blank page before it
	must  bool // open on side
	side  pagemodel.Side
}

// start is the side that the chain opens on where the next page is of the side
// next, and how many blanks stand before it.
func (o opening) start(next pagemodel.Side) (side pagemodel.Side, blanks int) {
	side = next
	if o.blank {
		side, blanks = side.Facing(), 1
	}
	if o.must && side != o.side {
		side, blanks = side.Facing(), blanks+1
	}
	return side, blanks
}

func openingOf(c *chain, e pagemodel.Entry) opening {
	if e.Section != nil {
		return opening{must: true, side: pagemodel.Recto}
	}
	o := opening{blank: e.Poem.Head().Blank}
	switch {
	case c.spreads():
		o.must, o.side = true, pagemodel.Verso
	case e.Poem.Head().Start == pagemodel.OnRecto:
		o.must, o.side = true, pagemodel.Recto
	case e.Poem.Head().Start == pagemodel.OnVerso:
		o.must, o.side = true, pagemodel.Verso
	}
	return o
}

// seats says where every chain stands. It never changes once made.
type seats struct {
	chains   pagemodel.Series[*chain]
	heads    []int32 // the entry that each chain begins with
	chainOf  []int32 // the chain of each entry
	openings []opening
	backed   bool // sections are backed by a blank

	prefers []weight            // what is left of the book from each chain on: verso less recto
	after   [][2]pagemodel.Side // by the side that it opens on, the side that its best plan leaves
	starts  []int32             // the first page of each chain, from 1
	ends    []int32             // the last page that each chain takes, the blank that backs a section counted
	pages   []pageRef           // page n is pages[n-1]
}

// pageRef says what stands on a page: a page of a chain, or nothing.
type pageRef struct {
	chain int32 // -1 for a blank
	page  int32
}

// seat places a book's chains, from nothing.
func seat(chains []*chain, heads []int32, order []pagemodel.Entry, backed bool) *seats {
	s := &seats{chains: pagemodel.SeriesOf(chains), heads: heads, backed: backed}
	s.chainOf = make([]int32, len(order))
	s.openings = make([]opening, len(chains))
	for i, c := range chains {
		s.openings[i] = openingOf(c, order[heads[i]])
		to := len(order)
		if i+1 < len(heads) {
			to = int(heads[i+1])
		}
		for e := int(heads[i]); e < to; e++ {
			s.chainOf[e] = int32(i)
		}
	}
	s.prefers = make([]weight, len(chains)+1)
	s.after = make([][2]pagemodel.Side, len(chains))
	for i := len(chains) - 1; i >= 0; i-- {
		s.judge(i)
	}
	s.starts, s.ends = make([]int32, len(chains)), make([]int32, len(chains))
	s.pages = make([]pageRef, 0, 2*len(chains))
	s.lay(0)
	return s
}

// judge decides for a chain, by what the rest of the book prefers, which plan is
// best for each side that it may open on.
func (s *seats) judge(i int) {
	c := s.chains.At(i)
	var left [2]weight
	for side := range s.after[i] {
		s.after[i][side], left[side] = c.best(pagemodel.Side(side), &s.prefers[i+1])
	}
	recto, _ := s.openings[i].start(pagemodel.Recto)
	verso, _ := s.openings[i].start(pagemodel.Verso)
	s.prefers[i] = left[verso].minus(&left[recto])
}

// best is the side that the best plan leaves to the rest of the book, whose
// preference is given, and what the two cost together.
func (c *chain) best(side pagemodel.Side, prefers *weight) (after pagemodel.Side, cost weight) {
	recto, verso := &c.plans[side][pagemodel.Recto], &c.plans[side][pagemodel.Verso]
	toVerso := verso.weight.add(prefers)
	if verso.pages == 0 {
		return pagemodel.Recto, recto.weight
	}
	if recto.pages == 0 {
		return pagemodel.Verso, toVerso
	}
	order := toVerso.compare(&recto.weight)
	if order < 0 || order == 0 && verso.fuller(recto) {
		return pagemodel.Verso, toVerso
	}
	return pagemodel.Recto, recto.weight
}

// fuller says that the first page on which two plans of the same chain differ
// holds more in p.
func (p *plan) fuller(q *plan) bool {
	for i := range min(len(p.cuts), len(q.cuts)) {
		if p.cuts[i] != q.cuts[i] {
			return p.cuts[i] > q.cuts[i]
		}
	}
	return len(p.cuts) < len(q.cuts)
}

// lay gives pages to the chains from one on. The pages before it must have been
// given.
func (s *seats) lay(from int) {
	chains := s.chains.All()
	for i := from; i < len(chains); i++ {
		next := len(s.pages) + 1
		side, blanks := s.openings[i].start(pagemodel.SideOf(next))
		for range blanks {
			s.pages = append(s.pages, pageRef{chain: -1})
		}
		s.starts[i] = int32(len(s.pages) + 1)
		for page := range chains[i].plans[side][s.after[i][side]].pages {
			s.pages = append(s.pages, pageRef{int32(i), page})
		}
		if chains[i].kind == divider && s.backed && len(s.pages)%2 == 1 && i+1 < len(chains) {
			s.pages = append(s.pages, pageRef{chain: -1})
		}
		s.ends[i] = int32(len(s.pages))
	}
}

// with is the seats with some chains replaced by others of the same entries.
// What nothing moved is shared.
func (s *seats) with(changed map[int]*chain) *seats {
	d := *s
	low, high := s.chains.Len(), -1
	for i, c := range changed {
		old := s.chains.At(i)
		d.chains = d.chains.With(i, c)
		if !old.weighsLike(c) {
			low, high = min(low, i), max(high, i)
		}
	}
	if high < 0 {
		return &d
	}
	d.prefers, d.after = slices.Clone(s.prefers), slices.Clone(s.after)
	for i := high; i >= 0; i-- {
		if i < low && d.prefers[i+1] == s.prefers[i+1] {
			break // the change has died out
		}
		d.judge(i)
		low = min(low, i)
	}
	d.starts, d.ends = slices.Clone(s.starts), slices.Clone(s.ends)
	kept := 0
	if low > 0 {
		kept = int(s.ends[low-1])
	}
	d.pages = make([]pageRef, kept, len(s.pages)+4)
	copy(d.pages, s.pages)
	d.lay(low)
	return &d
}

// weighsLike says that a chain may take another's place without anything else
// moving.
func (c *chain) weighsLike(d *chain) bool {
	for side := range c.plans {
		for after := range c.plans[side] {
			p, q := &c.plans[side][after], &d.plans[side][after]
			if p.weight != q.weight || p.pages != q.pages {
				return false
			}
		}
		p, q := &c.plans[side], &d.plans[side]
		if p[0].fuller(&p[1]) != q[0].fuller(&q[1]) || p[1].fuller(&p[0]) != q[1].fuller(&q[0]) {
			return false
		}
	}
	return true
}

// planOf is the plan by which a chain is paged.
func (s *seats) planOf(i int) (*chain, *plan) {
	c := s.chains.At(i)
	side := pagemodel.SideOf(int(s.starts[i]))
	return c, &c.plans[side][s.after[i][side]]
}
