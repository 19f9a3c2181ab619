package typeset

import (
	"slices"

	"headland/pagemodel"
)

// OrderTrial counts what the poems of a setting would take in other orders,
// without setting or laying anything: each poem keeps the plans that it has, and
// only who follows whom is asked again. It needs no setter, so it may be used
// beside one, but not on two goroutines at once.
type OrderTrial struct {
	set   *Setting
	all   []*chain  // in the order of the setting
	opens []opening // likewise
	at    []int32   // where each stands in the order last counted
	seats seats     // of that order
	order []*chain  // the chains of seats
}

// OrderTally is what an order takes.
type OrderTally struct {
	Blanks  int // blank pages among the poems, and between them and the end matter
	Unfaced int // poems of two pages that do not face each other
	Parted  int // page ends within a stanza
	Extent  int // pages of the book, prelims and end matter as they stand in the setting
}

// TrialOrder begins to try other orders of the setting's poems and sections.
func (s *Setting) TrialOrder() *OrderTrial {
	n := s.seats.chains.Len()
	t := &OrderTrial{set: s, all: s.seats.chains.All(), opens: s.seats.openings, at: make([]int32, n), order: make([]*chain, n)}
	t.seats = seats{
		backed: s.seats.backed, chains: pagemodel.SeriesOf(t.order), openings: make([]opening, n),
		prefers: make([]weight, n+1), after: make([][2]pagemodel.Side, n), starts: make([]int32, n), ends: make([]int32, n),
	}
	return t
}

// Tally counts what the book takes in an order of the entries of the setting's
// collection, by their indexes there. It must name all of them, and poems that
// begin facing or sharing a page must stand behind what is before them now.
func (t *OrderTrial) Tally(order []int32) OrderTally {
	for i, e := 0, 0; e < len(order); i++ {
		c := t.set.seats.chainOf[order[e]]
		t.order[i], t.seats.openings[i], t.at[c] = t.all[c], t.opens[c], int32(i)
		e += len(t.all[c].poems)
	}
	for i := len(t.order) - 1; i >= 0; i-- {
		t.seats.judge(i)
	}
	t.seats.pages = t.seats.pages[:0]
	t.seats.lay(0)
	return t.count()
}

// count reads the tally off the pages.
func (t *OrderTrial) count() OrderTally {
	var sum weight
	for i := range t.order {
		_, p := t.seats.planOf(i)
		sum = sum.add(&p.weight)
	}
	cost := sum.cost()
	n := OrderTally{Unfaced: cost.Unfaced, Parted: cost.Turned + cost.Split, Extent: t.set.before() + len(t.seats.pages)}
	for _, ref := range t.seats.pages {
		if ref.chain < 0 {
			n.Blanks++
		}
	}
	if end := len(t.set.matter.end); end > 0 {
		n.Blanks += n.Extent % 2
		n.Extent += n.Extent%2 + end
	}
	return n
}

// Pages are the first and the last page of an entry in the order last counted.
func (t *OrderTrial) Pages(entry int) (first, last int) {
	chain := t.set.seats.chainOf[entry]
	i := t.at[chain]
	c, p := t.seats.planOf(int(i))
	at := placed{c, p, entry - int(t.set.seats.heads[chain]), t.set.before() + int(t.seats.starts[i])}
	if c.kind == divider {
		return at.page, at.page + int(p.pages) - 1
	}
	first, last = at.pageOfUnit(0), at.pageOfUnit(max(0, len(t.set.entries.At(entry).units)-1))
	if c.kind == across {
		last++
	}
	return first, last
}

// Least is a number of unfaced poems and blanks, counted together, that no order
// can do with less than; there need be none that does with it.
func (t *OrderTrial) Least() int {
	least := 0
	for i, c := range t.all {
		least += c.leastUnfaced()
		if t.opens[i].blank {
			least++
		}
		odd := c.plans[pagemodel.Recto][pagemodel.Verso].pages%2 == 1
		if c.kind == divider && t.seats.backed && odd && i+1 < len(t.all) {
			least++
		}
	}
	return least
}

// leastUnfaced is how many of the chain's poems do not face in the best of its
// plans.
func (c *chain) leastUnfaced() int {
	var found []int
	for side := range c.plans {
		for after := range c.plans[side] {
			if p := &c.plans[side][after]; p.pages > 0 {
				found = append(found, p.weight.cost().Unfaced)
			}
		}
	}
	if len(found) == 0 {
		return 0
	}
	return slices.Min(found)
}
