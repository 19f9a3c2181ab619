package order

import (
	"fmt"
	"slices"
)

// enough is how many beginnings of an order are tried before it is left open
// whether there is one.
const enough = 50_000

// builder makes an order block by block, and goes back where it can't go on.
// Blocks that the conditions can't tell apart come in their present order.
type builder struct {
	*pieces
	conditions []bound
	stay       bool
	alike      []int // the kind of each block: blocks of a kind can stand for one another
	count      []int // of each kind, how many are used
	used       []bool
	order      []int32
	pos        []int32 // where each entry stands, or -1
	laid       int32   // entries
	left       int     // movable blocks not yet used
	first      int32   // the first poem's entry, or -1
	barren     map[string]bool
	tried      int
}

// build makes an order that meets the conditions but for what depends on pages. It
// is the present one where that could not be settled.
func (p *pieces) build(conditions []bound) (order []int32, possible bool) {
	b := &builder{
		pieces: p, conditions: conditions, stay: staying(conditions), left: p.movable, first: -1, barren: map[string]bool{},
		used: make([]bool, len(p.blocks)), pos: make([]int32, len(p.blocksByEntry())),
	}
	for e := range b.pos {
		b.pos[e] = -1
	}
	b.sort()
	if b.goOn(place{}) {
		return b.order, true
	}
	if b.tried < enough {
		return nil, false
	}
	return p.present(), true
}

// sort tells the kinds of blocks apart: a section's head, a pinned block and a
// block that a condition names by itself are of a kind of their own; other blocks
// are alike that are in the same part of the book, if that matters, and are to be
// together with the same poems.
func (b *builder) sort() {
	kinds := map[string]int{}
	for id, block := range b.blocks {
		kind := ""
		if b.stay {
			kind = fmt.Sprint(block.part)
		}
		alone := block.head || block.pinned
		for i, c := range b.conditions {
			named := slices.ContainsFunc(c.entries, func(e int32) bool { return block.from <= e && e < block.to })
			if named {
				kind += fmt.Sprint(" ", i)
				alone = alone || c.kind != together || block.to-block.from > 1
			}
		}
		if alone {
			kind = fmt.Sprint("alone ", id)
		}
		if _, ok := kinds[kind]; !ok {
			kinds[kind] = len(kinds)
		}
		b.alike = append(b.alike, kinds[kind])
	}
	b.count = make([]int, len(kinds))
}

// goOn completes the order, or leaves it as it was.
func (b *builder) goOn(at place) bool {
	if len(b.order) == len(b.blocks) {
		return b.whole(at)
	}
	key := b.key()
	if b.tried++; b.tried > enough || b.barren[key] || b.wanting(at) {
		return false
	}
	tried := make([]bool, len(b.count)) // kinds of which one was tried: another would do no better
	for id := range b.blocks {
		if b.used[id] || tried[b.alike[id]] || !b.mayFollow(at, int32(id), b.stay) {
			continue
		}
		tried[b.alike[id]] = true
		first := b.lay(int32(id))
		if b.holds() && b.goOn(b.then(at, int32(id))) {
			return true
		}
		b.lift(int32(id), first)
	}
	b.barren[key] = true
	return false
}

// wanting says that fewer blocks are left than the parts of the book to come
// need.
func (b *builder) wanting(at place) bool {
	need := 0
	for part := at.part; part < len(b.filled); part++ {
		if b.filled[part] && !(part == at.part && at.filled) {
			need++
		}
	}
	return need > b.left
}

// lay puts a block at the order's end. What comes back is for lift.
func (b *builder) lay(id int32) (first int32) {
	block := &b.blocks[id]
	b.used[id], b.order = true, append(b.order, id)
	b.count[b.alike[id]]++
	first = b.first
	for e := block.from; e < block.to; e++ {
		b.pos[e] = b.laid
		b.laid++
	}
	if block.head {
		return first
	}
	b.left--
	if b.first < 0 {
		b.first = block.from
	}
	return first
}

// lift takes the last block off again.
func (b *builder) lift(id, first int32) {
	block := &b.blocks[id]
	b.used[id], b.order, b.first = false, b.order[:len(b.order)-1], first
	b.count[b.alike[id]]--
	for e := block.from; e < block.to; e++ {
		b.pos[e] = -1
		b.laid--
	}
	if !block.head {
		b.left++
	}
}

// key is all of the order so far that what can follow depends on: how many of each
// kind are used, each section's head being a kind, and what kind is last.
func (b *builder) key() string {
	key := make([]byte, 0, 2*len(b.count)+2)
	for _, n := range b.count {
		key = append(key, byte(n), byte(n>>8))
	}
	last := -1
	if n := len(b.order); n > 0 {
		last = b.alike[b.order[n-1]]
	}
	return string(append(key, byte(last), byte(last>>8)))
}
