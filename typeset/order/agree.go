package order

import (
	"fmt"
	"slices"

	"headland/pagemodel"
)

// agree finds an order near the present one that meets the conditions, but for
// poems that come to face each other on the pages, to begin the search with. Where
// there is none the error names the fewest conditions that already contradict one
// another. Where it can't be told in reasonable time it is the present order.
func (p *pieces) agree(book *pagemodel.Collection, conditions []bound) ([]int32, error) {
	var begin []int32
	for _, some := range append(p.related(conditions), conditions) {
		order, possible := p.build(some)
		if !possible {
			return nil, p.contradiction(book, p.fewest(some))
		}
		begin = order
	}
	return begin, nil
}

// related are the conditions in groups that have blocks in common, so that what
// contradicts in one group is found without the others. What is to be first and
// what is to be last go together, and that sections stay goes with all.
func (p *pieces) related(conditions []bound) [][]bound {
	blocks := p.blocksByEntry()
	var groups [][]bound
	var stay []bound
	for _, c := range conditions {
		if c.kind == sectionsStay {
			stay = []bound{c}
			continue
		}
		joined, apart := []bound{}, [][]bound(nil)
		for _, g := range groups {
			if slices.ContainsFunc(g, func(d bound) bool { return touch(&c, &d, blocks) }) {
				joined = append(joined, g...)
			} else {
				apart = append(apart, g)
			}
		}
		groups = append(apart, append(joined, c))
	}
	for i := range groups {
		groups[i] = append(groups[i], stay...)
	}
	return groups
}

// touch says that two conditions are about the same block, or both about an end of
// the book.
func touch(c, d *bound, blocks []int) bool {
	ends := func(b *bound) bool { return b.kind == first || b.kind == last }
	if ends(c) && ends(d) {
		return true
	}
	for _, e := range c.entries {
		for _, f := range d.entries {
			if blocks[e] == blocks[f] {
				return true
			}
		}
	}
	return false
}

// blocksByEntry is the block of each entry.
func (p *pieces) blocksByEntry() []int {
	var blocks []int
	for i, b := range p.blocks {
		for range b.to - b.from {
			blocks = append(blocks, i)
		}
	}
	return blocks
}

// fewest leaves away, of conditions that contradict one another, those without
// which they still do.
func (p *pieces) fewest(conditions []bound) []bound {
	for i := len(conditions) - 1; i >= 0; i-- {
		fewer := slices.Delete(slices.Clone(conditions), i, i+1)
		if _, possible := p.build(fewer); !possible {
			conditions = fewer
		}
	}
	return conditions
}

func (p *pieces) contradiction(book *pagemodel.Collection, conditions []bound) error {
	words := make([]string, len(conditions))
	for i, c := range conditions {
		words[i] = c.Words(book)
	}
	if len(words) == 1 {
		return fmt.Errorf("%s can't be had in this book%s: give it up", words[0], p.bonds())
	}
	return fmt.Errorf("these can't all be had%s: %s; give up one of them", p.bonds(), listed(words))
}

// bonds say what in the book itself an order must keep to, as a clause, or "".
func (p *pieces) bonds() string {
	var words []string
	if slices.ContainsFunc(p.blocks, func(b block) bool { return b.pinned || b.to-b.from > 1 }) {
		words = append(words, "a poem that begins facing or sharing a page stays behind the one before it")
	}
	if len(p.filled) > 1 {
		words = append(words, "a section that has poems keeps one")
	}
	if len(words) == 0 {
		return ""
	}
	return ", where " + listed(words)
}
