package typeset

import "headland/pagemodel"

// seatAll gathers a book's entries into chains and seats them. What prev knows
// of chains of several poems is taken over.
func (s *Setting) seatAll(prev *Setting) *seats {
	order := s.collection.Order()
	entries := s.entries.All()
	known := prev.sharedChains()
	var chains []*chain
	var heads []int32
	for i := 0; i < len(order); {
		to := chainEnd(order, i)
		heads = append(heads, int32(i))
		chains = append(chains, s.chainOf(entries[i:to], order[i:to], known[entries[i]]))
		i = to
	}
	return seat(chains, heads, order, !s.design.SectionOpen)
}

// chainEnd is the entry after the last of the chain that begins with entry i.
func chainEnd(order []pagemodel.Entry, i int) int {
	to := i + 1
	if order[i].Poem == nil || order[i].Poem.Head().Lie == pagemodel.Across {
		return to
	}
	if to < len(order) && joins(order[i], order[to], pagemodel.FacingPage) {
		return to + 1
	}
	for to < len(order) && joins(order[to-1], order[to], pagemodel.SharedPage) &&
		!(to+1 < len(order) && joins(order[to], order[to+1], pagemodel.FacingPage)) {
		to++
	}
	return to
}

// joins says that a poem starts so after another that lies as it does.
func joins(before, e pagemodel.Entry, start pagemodel.Start) bool {
	return before.Poem != nil && e.Poem != nil && e.Poem.Head().Start == start && !e.Poem.Head().Blank &&
		e.Poem.Head().Lie == before.Poem.Head().Lie && e.Poem.Head().Lie != pagemodel.Across
}

// chainOf is the chain of some entries, which the one known may be.
func (s *Setting) chainOf(poems []*poemSetting, order []pagemodel.Entry, known *chain) *chain {
	switch {
	case len(poems) == 1:
		return poems[0].solo
	case known.isOf(poems, order):
		return known
	case order[1].Poem.Head().Start == pagemodel.FacingPage:
		return pairChain(poems[0], poems[1], &s.design)
	}
	return sharedChain(append([]*poemSetting(nil), poems...), &s.design)
}

// isOf says that the chain is of just those poems, joined as the order says.
func (c *chain) isOf(poems []*poemSetting, order []pagemodel.Entry) bool {
	if c == nil || len(c.poems) != len(poems) || (c.kind == facing) != (order[1].Poem.Head().Start == pagemodel.FacingPage) {
		return false
	}
	for i := range poems {
		if c.poems[i] != poems[i] {
			return false
		}
	}
	return true
}

// sharedChains are the chains of several poems, by their first.
func (s *Setting) sharedChains() map[*poemSetting]*chain {
	if s == nil {
		return nil
	}
	known := map[*poemSetting]*chain{}
	for _, c := range s.seats.chains.All() {
		if len(c.poems) > 1 {
			known[c.poems[0]] = c
		}
	}
	return known
}

// reseat seats the book from prev's seats, with some chains made anew.
func (s *Setting) reseat(prev *Setting, changed map[int]*chain) {
	order := s.collection.Entries()
	for i := range changed {
		from, to := int(prev.seats.heads[i]), order.Len()
		if i+1 < len(prev.seats.heads) {
			to = int(prev.seats.heads[i+1])
		}
		var poems []*poemSetting
		var entries []pagemodel.Entry
		for e := from; e < to; e++ {
			poems, entries = append(poems, s.entries.At(e)), append(entries, order.At(e))
		}
		changed[i] = s.chainOf(poems, entries, prev.seats.chains.At(i))
	}
	s.seats = prev.seats.with(changed)
}
