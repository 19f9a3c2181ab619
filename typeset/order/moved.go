package order

// What an order has moved is the fewest poems whose taking out and putting back
// makes it of the order before. The others have kept their order among
// themselves, and their section: they are a longest increasing subsequence,
// each poem counting one. A section's head never counts as moved.

// moved is how many poems an order has moved. best is scratch of a length
// greater than the number of blocks.
func (p *pieces) moved(order []int32, best []int32) int {
	clear(best)
	part, poems := 0, int32(0)
	for _, id := range order {
		b := &p.blocks[id]
		if b.head {
			part = b.part
			continue
		}
		n := b.to - b.from
		poems += n
		if b.part != part {
			continue
		}
		kept := n + upTo(best, int(id))
		for i := int(id) + 1; i < len(best); i += i & -i {
			best[i] = max(best[i], kept)
		}
	}
	return int(poems - upTo(best, len(best)-1))
}

// upTo is the most that is kept by an increasing subsequence of the first n
// blocks: best is a tree of maxima over blocks, counted from 1 (P. M. Fenwick,
// Software: Practice and Experience 24, 1994).
func upTo(best []int32, n int) int32 {
	most := int32(0)
	for ; n > 0; n &= n - 1 {
		most = max(most, best[n])
	}
	return most
}

// movedBlocks are the blocks that an order has moved, in the order. Of several
// choices that are as few, the poems that stand early are kept.
func (p *pieces) movedBlocks(order []int32) []int32 {
	kept := p.keptBlocks(order)
	var moved []int32
	for _, id := range order {
		if !p.blocks[id].head && !kept[id] {
			moved = append(moved, id)
		}
	}
	return moved
}

// keptBlocks are the blocks of the longest increasing subsequence, found from
// the end of the order.
func (p *pieces) keptBlocks(order []int32) map[int32]bool {
	most := make([]int32, len(order)) // kept from here on
	next := make([]int, len(order))
	parts := p.partsOf(order)
	begin := -1
	for i := len(order) - 1; i >= 0; i-- {
		b := &p.blocks[order[i]]
		if b.head || b.part != parts[i] {
			continue
		}
		next[i] = -1
		for j := i + 1; j < len(order); j++ {
			if order[j] > order[i] && most[j] > 0 && (next[i] < 0 || most[j] > most[next[i]]) {
				next[i] = j
			}
		}
		most[i] = b.to - b.from
		if next[i] >= 0 {
			most[i] += most[next[i]]
		}
		if begin < 0 || most[i] >= most[begin] {
			begin = i
		}
	}
	kept := map[int32]bool{}
	for i := begin; i >= 0; i = next[i] {
		kept[order[i]] = true
	}
	return kept
}

// partsOf is the part of the book in which each block of an order stands.
func (p *pieces) partsOf(order []int32) []int {
	parts, part := make([]int, len(order)), 0
	for i, id := range order {
		if b := &p.blocks[id]; b.head {
			part = b.part
		}
		parts[i] = part
	}
	return parts
}
