package ui

import (
	"headland/pagemodel"
	"headland/typeset"
)

// orderPiece is a poem, or a section's head, as it lies in the order.
type orderPiece struct {
	id          int64 // as an arrangement names it: a section's is negative
	title       string
	first, last int     // its pages
	step        int     // from one of its pages to the next: 2 where it faces another poem throughout
	from, to    float64 // where it begins across its first page and ends across its last, from 0 to 1
	section     int     // the piece that is the head of its section, its own for a head; -1 for none
	unsettled   int
	faults      int  // of all kinds, but that it turns the leaf
	turns       bool // of two pages that do not face each other
}

// head says that the piece is a section's head.
func (p *orderPiece) head() bool { return p.id < 0 }

// begins and ends are where the piece lies, in pages from the first of the book.
func (p *orderPiece) begins() float64 { return float64(p.first-1) + p.from }
func (p *orderPiece) ends() float64   { return float64(p.last-1) + p.to }

// orderBook is a setting as the order shows it: piece by piece.
type orderBook struct {
	set    *typeset.Setting
	pieces []orderPiece
	aside  *typeset.Setting // the poems that are left out, set by themselves; nil where there are none
	out    []orderPiece     // these, on pages of aside
	at     map[int64]int    // by identity: the place in pieces, or below -1 in out
}

// newOrderBook is a setting piece by piece, aside being the poems that are left
// out, or nil.
func newOrderBook(set, aside *typeset.Setting) *orderBook {
	b := &orderBook{set: set, pieces: piecesOf(set), aside: aside, at: map[int64]int{}}
	if aside != nil {
		b.out = piecesOf(aside)
	}
	for i := range b.pieces {
		b.at[b.pieces[i].id] = i
	}
	for i := range b.out {
		b.at[b.out[i].id] = -2 - i
	}
	return b
}

// piece is the piece of an identity, and whether it is left out; nil for none.
func (b *orderBook) piece(id int64) (p *orderPiece, out bool) {
	i, ok := b.at[id]
	switch {
	case !ok:
		return nil, false
	case i < -1:
		return &b.out[-2-i], true
	}
	return &b.pieces[i], false
}

// all are the pieces in the book, and then those left out.
func (b *orderBook) all() []int64 {
	ids := make([]int64, 0, len(b.pieces)+len(b.out))
	for i := range b.pieces {
		ids = append(ids, b.pieces[i].id)
	}
	for i := range b.out {
		ids = append(ids, b.out[i].id)
	}
	return ids
}

// ofSection is a section's head and its poems, from the head's identity.
func (b *orderBook) ofSection(head int64) []int64 {
	at, ids := b.at[head], []int64(nil)
	for i := at; i < len(b.pieces) && b.pieces[i].section == at; i++ {
		ids = append(ids, b.pieces[i].id)
	}
	return ids
}

// piecesOf finds where everything in the order lies.
func piecesOf(set *typeset.Setting) []orderPiece {
	contents := set.Contents()
	pieces := make([]orderPiece, len(contents))
	at := make(map[pagemodel.PoemID]*orderPiece, len(contents))
	section := -1
	for i, e := range set.Collection().Order() {
		p := &pieces[i]
		*p = orderPiece{title: contents[i].Title, first: contents[i].Page, last: contents[i].Page, step: 1, to: 1}
		if e.Section != nil {
			p.id, section = -int64(e.Section.ID), i
		} else {
			p.id = int64(e.Poem.ID())
			at[e.Poem.ID()] = p
		}
		p.section = section
	}
	reachPages(set, at)
	sharePages(pieces)
	noteState(set, at)
	return pieces
}

// reachPages finds the last page of every poem.
func reachPages(set *typeset.Setting, at map[pagemodel.PoemID]*orderPiece) {
	first, last := set.Body()
	for n := first; n <= last; n++ {
		id, ok := set.PoemOn(n)
		if p := at[id]; ok && n > p.last {
			if n > p.last+1 {
				p.step = 2
			}
			p.last = n
		}
	}
}

// sharePages parts the pages on which more than one piece stands among them.
func sharePages(pieces []orderPiece) {
	on := map[int][]*orderPiece{}
	for i := range pieces {
		p := &pieces[i]
		on[p.first] = append(on[p.first], p)
		if p.last != p.first && p.step == 1 {
			on[p.last] = append(on[p.last], p)
		}
	}
	for page, all := range on {
		for k, p := range all {
			if p.first == page {
				p.from = float64(k) / float64(len(all))
			}
			if p.last == page {
				p.to = float64(k+1) / float64(len(all))
			}
		}
	}
}

// noteState counts what wants the poet, poem by poem.
func noteState(set *typeset.Setting, at map[pagemodel.PoemID]*orderPiece) {
	for _, o := range set.Turnovers() {
		if p := at[o.Poem]; p != nil && o.State == pagemodel.Unsettled {
			p.unsettled++
		}
	}
	for _, f := range set.Faults() {
		switch p := at[f.Poem]; {
		case p == nil:
		case f.Kind == typeset.UnfacedPoem:
			p.turns = true
		default:
			p.faults++
		}
	}
}

// setAside sets the poems of a collection that are left out as a book of their
// own, so that their pages can be seen; nil where there are none. before is what
// this gave last, or nil.
func setAside(setter *typeset.Setter, c *pagemodel.Collection, before *typeset.Setting) (*typeset.Setting, error) {
	if len(c.LeftOut()) == 0 {
		return nil, nil
	}
	was := c.Arrangement()
	turned := pagemodel.Arrangement{Order: was.LeftOut}
	for _, id := range was.Order {
		if id < 0 {
			turned.Order = append(turned.Order, id)
		} else {
			turned.LeftOut = append(turned.LeftOut, id)
		}
	}
	only, err := pagemodel.Rearrange{Arrangement: turned}.Apply(c)
	if err != nil {
		return nil, err
	}
	return setter.Set(before, only.Only(0, len(was.LeftOut))), nil
}
