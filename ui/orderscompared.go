package ui

import (
	"slices"

	"headland/pagemodel"
	"headland/typeset"
	"headland/typeset/order"
)

// keptOrder is the order of the book, the first, or one kept by name.
type keptOrder struct {
	name     string // "" is the book's
	isBook   bool   // it is the order of the book
	moved    int    // poems that stand elsewhere in it
	cameIn   []string
	leftOut  int // poems of the book that it leaves out, and knew
	putIn    int // poems that it puts into the book
	toll     order.Toll
	tollSeen bool
}

// orderName is what an order is called in a list.
func (o *keptOrder) words() string {
	if o.name == "" {
		return "The order of the book, as it is"
	}
	return o.name
}

// compared is a kept order beside that of the book.
func compared(c *pagemodel.Collection, o pagemodel.NamedOrder, now pagemodel.Arrangement) keptOrder {
	whole := c.Complete(o.Is)
	k := keptOrder{name: o.Name, isBook: slices.Equal(whole.Order, now.Order), moved: fewestMoved(now.Order, whole.Order)}
	for _, id := range now.Order {
		if id < 0 || slices.Contains(whole.Order, id) {
			continue
		}
		if slices.Contains(o.Is.LeftOut, id) {
			k.leftOut++
		} else if p, _, ok := c.Poem(pagemodel.PoemID(id)); ok {
			k.cameIn = append(k.cameIn, nameOfPoem(p))
		}
	}
	for _, id := range whole.Order {
		if id > 0 && !slices.Contains(now.Order, id) {
			k.putIn++
		}
	}
	return k
}

// fewestMoved is the fewest poems whose taking out and putting back makes one
// order of another: the poems of both, less the longest row of them that stands in
// both in one succession.
func fewestMoved(before, after []int64) int {
	at := map[int64]int{}
	for i, id := range before {
		at[id] = i
	}
	var tails []int // the least end of a rising row of each length
	both := 0
	for _, id := range after {
		i, in := at[id]
		if id < 0 || !in {
			continue
		}
		both++
		n, _ := slices.BinarySearch(tails, i)
		if n == len(tails) {
			tails = append(tails, i)
		} else {
			tails[n] = i
		}
	}
	return both - len(tails)
}

// firstOtherPage is the first page on which other poems stand than before, or
// the page given where there is none.
func firstOtherPage(before, now *typeset.Setting, page int) int {
	first, last := now.Body()
	for n := first; n <= last; n++ {
		a, _ := before.PoemOn(n)
		if b, _ := now.PoemOn(n); a != b {
			return n
		}
	}
	return page
}
