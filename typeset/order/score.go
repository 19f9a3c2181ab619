package order

import (
	"cmp"
	"slices"

	"headland/typeset"
)

// score is what one order is worth to the search. Orders are compared field by
// field, and less is better: first that the conditions are met; then unfaced
// poems and blanks, together; then how few poems were moved; then stanzas that
// are not parted; then pages.
type score struct {
	amiss int // by how much conditions are not met
	loss  int // unfaced poems and blanks
	moved int // poems
	tally typeset.OrderTally
}

func (s score) compare(t score) int {
	return cmp.Or(
		cmp.Compare(s.amiss, t.amiss), cmp.Compare(s.loss, t.loss), cmp.Compare(s.moved, t.moved),
		cmp.Compare(s.tally.Parted, t.tally.Parted), cmp.Compare(s.tally.Extent, t.tally.Extent),
	)
}

// scorer scores orders of a book's blocks.
type scorer struct {
	*pieces
	trial      *typeset.OrderTrial
	conditions []bound
	stay       bool // sections stay as they are
	least      int  // unfaced poems and blanks that no order does without

	entries []int32 // of the order being scored
	pos     []int32 // where each entry stands in it
	best    []int32
	tried   int // orders
}

func newScorer(set *typeset.Setting, p *pieces, conditions []bound) *scorer {
	n := set.Collection().Entries().Len()
	trial := set.TrialOrder()
	return &scorer{
		pieces: p, trial: trial, conditions: conditions, stay: staying(conditions), least: trial.Least(),
		entries: make([]int32, 0, n), pos: make([]int32, n), best: make([]int32, len(p.blocks)+1),
	}
}

// staying says that sections are to stay as they are.
func staying(conditions []bound) bool {
	return slices.ContainsFunc(conditions, func(b bound) bool { return b.kind == sectionsStay })
}

// spread lays a sound order out entry by entry. What comes back is by how much it
// does not meet the conditions, as far as that can be known without pages.
func (s *scorer) spread(order []int32) int {
	s.entries = s.entries[:0]
	from, to := int32(-1), int32(-1) // the first and the last poem
	for _, id := range order {
		b := &s.blocks[id]
		for e := b.from; e < b.to; e++ {
			s.pos[e] = int32(len(s.entries))
			s.entries = append(s.entries, e)
		}
		if b.head {
			continue
		}
		if to = s.pos[b.to-1]; from < 0 {
			from = s.pos[b.from]
		}
	}
	amiss := 0
	for i := range s.conditions {
		amiss += s.conditions[i].amiss(s.pos, from, to)
	}
	return amiss
}

// floor is what an order is worth at best, as far as that can be known without its
// pages: its parted stanzas and pages are left at nothing. The order stays spread.
func (s *scorer) floor(order []int32) score {
	s.tried++
	return score{amiss: s.spread(order), loss: s.least, moved: s.moved(order, s.best)}
}

// full counts the pages of the order whose floor was last taken.
func (s *scorer) full(floor score) score {
	floor.tally = s.trial.Tally(s.entries)
	floor.amiss += s.facing()
	floor.loss = floor.tally.Unfaced + floor.tally.Blanks
	return floor
}

// facing is how many pairs that are to be apart have something on one opening in
// the order whose pages were last counted.
func (s *scorer) facing() int {
	n := 0
	for i := range s.conditions {
		b := &s.conditions[i]
		if b.kind != apart || s.next(b) {
			continue
		}
		aFrom, aTo := s.trial.Pages(int(b.entries[0]))
		bFrom, bTo := s.trial.Pages(int(b.entries[1]))
		if aFrom/2 <= bTo/2 && bFrom/2 <= aTo/2 {
			n++
		}
	}
	return n
}

// next says that one of the pair follows the other, which is amiss already.
func (s *scorer) next(b *bound) bool { return b.amiss(s.pos, 0, 0) > 0 }
