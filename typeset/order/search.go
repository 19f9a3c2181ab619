package order

import (
	"context"
	"errors"
	"slices"

	"headland/pagemodel"
	"headland/typeset"
)

// Found is an order that meets the conditions, with what it costs. Nothing has
// been done to the book: whoever wants the order makes a [pagemodel.Rearrange] of
// it.
type Found struct {
	Arrangement pagemodel.Arrangement
	Toll        Toll               // with the prelims and end matter as they stand; its faults are [Uncounted]
	Moved       []pagemodel.PoemID // in their new order; the others have kept their section, and their order among themselves
	Says        []string           // in words: each that moved, from where to where, and then what the order costs beside the present one
}

// exactly is up to how many movable poems all orders are tried.
const exactly = 8

// Search looks for the best order of a set book that meets the conditions, and
// gives found each that is better than all before, the first of them soon.
//
// Better is, in this order: fewer unfaced poems and blanks, counted together;
// fewer poems moved against the present order; fewer parted stanzas; fewer pages.
// Of a book of up to eight poems all orders are tried, and the last that is found
// is as good as any. In a larger book it looks until ctx is done, or until it can
// show that nothing is better. The same book and conditions give the same orders
// in the same succession.
//
// A poem that begins facing or sharing a page stays behind the poem before it,
// and the two are moved as one. Heads of sections are not moved: poems may change
// their section, unless [SectionsStay] is asked for, but every section that has
// poems keeps one, and one that has none gets none. Poems that are left out stay
// out.
//
// The error says in words which conditions contradict one another, or that no
// order was found before ctx was done. Search needs no setter, so it may run on a
// goroutine of its own; found is called on it.
func Search(ctx context.Context, set *typeset.Setting, conditions []Condition, found func(Found)) error {
	book := set.Collection()
	p := piecesOf(book)
	var all []bound
	for _, c := range conditions {
		b, err := bind(book, c)
		if err != nil {
			return err
		}
		all = append(all, b)
	}
	begin, err := p.agree(book, all)
	if err != nil {
		return err
	}
	s := newSearch(ctx, set, p, all, found)
	if p.movable <= exactly {
		s.tryAll()
	} else {
		s.improve(begin)
	}
	return s.outcome()
}

// search is a search under way.
type search struct {
	*scorer
	ctx    context.Context
	set    *typeset.Setting
	before Toll
	found  func(Found)
	order  []int32 // the best so far
	worth  score   // of it
}

func newSearch(ctx context.Context, set *typeset.Setting, p *pieces, conditions []bound, found func(Found)) *search {
	s := &search{scorer: newScorer(set, p, conditions), ctx: ctx, set: set, found: found}
	s.before = tollOf(set, s.trial.Tally(present(set)))
	return s
}

// done says that the search has been stopped.
func (s *search) done() bool { return s.ctx.Err() != nil }

// take reports an order that is better than all before. One that does not meet
// the conditions is none.
func (s *search) take(order []int32, worth score) {
	if !s.betters(worth) {
		return
	}
	s.order, s.worth = slices.Clone(order), worth
	s.found(s.report())
}

// betters says that an order of that worth is better than all before.
func (s *search) betters(worth score) bool {
	return worth.amiss == 0 && (s.order == nil || worth.compare(s.worth) < 0)
}

func (s *search) outcome() error {
	switch {
	case s.order != nil:
		return nil
	case s.done():
		return errors.New("no order that meets the conditions was found in this time: give it longer, or give up one of them")
	}
	return errors.New("no order meets the conditions: on the pages, poems that are to be apart come to face each other however they stand: give up one of them")
}

// tryAll tries all orders. The orders nearest the present one, read from the
// front, come first, so that of equals they are taken.
func (s *search) tryAll() {
	s.tryFrom(make([]int32, 0, len(s.blocks)), make([]bool, len(s.blocks)), place{})
}

// tryFrom tries all orders that begin so.
func (s *search) tryFrom(begun []int32, used []bool, at place) {
	if len(begun) == len(s.blocks) {
		if floor := s.floor(begun); s.whole(at) && s.betters(floor) {
			s.take(begun, s.full(floor))
		}
		return
	}
	for id := range s.blocks {
		if used[id] || s.done() || !s.mayFollow(at, int32(id), s.stay) {
			continue
		}
		used[id] = true
		s.tryFrom(append(begun, int32(id)), used, s.then(at, int32(id)))
		used[id] = false
	}
}
