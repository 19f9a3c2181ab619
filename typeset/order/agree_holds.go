package order

// holds says that the order so far does not yet break a condition.
func (b *builder) holds() bool {
	for i := range b.conditions {
		if !b.bears(&b.conditions[i]) {
			return false
		}
	}
	return true
}

func (b *builder) bears(c *bound) bool {
	switch c.kind {
	case together:
		return b.bearsTogether(c)
	case inOrder:
		return b.bearsInOrder(c)
	case first:
		return b.first < 0 || b.first == c.entries[0]
	case last:
		return b.pos[c.entries[0]] < 0 || b.left == 0 && b.endsWith(c.entries[0])
	case apart:
		x, y := b.pos[c.entries[0]], b.pos[c.entries[1]]
		return x < 0 || y < 0 || x-y != 1 && y-x != 1
	}
	return true
}

// bearsTogether says that those of the poems that are laid stand together, and
// that the others can still follow.
func (b *builder) bearsTogether(c *bound) bool {
	low, high, laid := b.laid, int32(-1), 0
	for _, e := range c.entries {
		if at := b.pos[e]; at >= 0 {
			low, high, laid = min(low, at), max(high, at), laid+1
		}
	}
	switch laid {
	case 0:
		return true
	case len(c.entries):
		return int(high-low)+1 == laid
	}
	return int(high-low)+1 == laid && high == b.laid-1
}

// bearsInOrder says that those of the poems that are laid are the first of those
// named, one after another, and that the next can still follow.
func (b *builder) bearsInOrder(c *bound) bool {
	for i, e := range c.entries[1:] {
		before, at := b.pos[c.entries[i]], b.pos[e]
		switch {
		case at >= 0 && (before < 0 || at != before+1):
			return false
		case at < 0 && before >= 0 && before != b.laid-1:
			return false
		}
	}
	return true
}

// endsWith says that no poem stands behind a poem of the order.
func (b *builder) endsWith(entry int32) bool {
	for i := len(b.order) - 1; i >= 0; i-- {
		if block := &b.blocks[b.order[i]]; !block.head {
			return block.to-1 == entry
		}
	}
	return false
}
