package order

import "headland/pagemodel"

// block is what an order moves as one: a poem with those behind it that begin
// facing or sharing a page, which never leave the poem before them; or a
// section's head, which is never moved.
type block struct {
	from, to int32 // its entries of the book's order, the last not among them
	part     int   // of the book: 0 is what stands before the first section's head
	head     bool  // a section's
	pinned   bool  // it begins facing or sharing a page with nothing before it: it stays the first of its part
}

// pieces are a book in blocks.
type pieces struct {
	blocks  []block // in the order of the book
	filled  []bool  // by part: it has poems
	pins    []int32 // by part: the block that is pinned to its head, or -1
	movable int     // blocks that are no section's head
}

// piecesOf takes a book apart.
func piecesOf(book *pagemodel.Collection) *pieces {
	p := &pieces{filled: []bool{false}, pins: []int32{-1}}
	for i, e := range book.Order() {
		at := int32(i)
		if e.Section != nil {
			p.filled, p.pins = append(p.filled, false), append(p.pins, -1)
			p.blocks = append(p.blocks, block{from: at, to: at + 1, part: len(p.filled) - 1, head: true})
			continue
		}
		part := len(p.filled) - 1
		start := e.Poem.Head().Start
		joined := start == pagemodel.FacingPage || start == pagemodel.SharedPage
		if joined && p.filled[part] {
			p.blocks[len(p.blocks)-1].to++
			continue
		}
		if joined {
			p.pins[part] = int32(len(p.blocks))
		}
		p.filled[part] = true
		p.movable++
		p.blocks = append(p.blocks, block{from: at, to: at + 1, part: part, pinned: joined})
	}
	return p
}

// place is how far an order has come that is made block by block.
type place struct {
	part   int
	filled bool // a poem of the part is there
}

// mayFollow says that a block may come next. Heads keep their order; a part of
// the book that has poems keeps one at least, and one that has none gets none.
func (p *pieces) mayFollow(at place, id int32, stay bool) bool {
	b := &p.blocks[id]
	switch {
	case b.head:
		return b.part == at.part+1 && at.filled == p.filled[at.part]
	case !p.filled[at.part], stay && b.part != at.part:
		return false
	case b.pinned:
		return b.part == at.part && !at.filled
	}
	return at.filled || p.pins[at.part] < 0
}

// then is the place after a block.
func (p *pieces) then(at place, id int32) place {
	if b := &p.blocks[id]; b.head {
		return place{part: b.part}
	}
	return place{at.part, true}
}

// whole says that an order may end here.
func (p *pieces) whole(at place) bool {
	return at.part == len(p.filled)-1 && at.filled == p.filled[at.part]
}

// sound says that an order of all blocks is one of the book's possible orders,
// whatever the conditions.
func (p *pieces) sound(order []int32, stay bool) bool {
	var at place
	for _, id := range order {
		if !p.mayFollow(at, id, stay) {
			return false
		}
		at = p.then(at, id)
	}
	return p.whole(at)
}

// present is the present order.
func (p *pieces) present() []int32 {
	now := make([]int32, len(p.blocks))
	for i := range now {
		now[i] = int32(i)
	}
	return now
}
