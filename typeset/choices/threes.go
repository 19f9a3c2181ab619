package choices

import (
	"cmp"
	"fmt"
	"slices"

	"headland/pagemodel"
	"headland/typeset"
)

// mostThrees is how many ways into three parts are set and shown: those whose
// parts are the most alike in width. The others stay open to who breaks a part
// again.
const mostThrees = 24

// brokenAt is how wide the two parts of the line are.
type brokenAt struct {
	at         int
	head, tail typeset.Length
	room       typeset.Length // of the tail
	fits       bool           // both do
}

// widthsOf is how wide the parts of a line broken in two are.
func widthsOf(c *Choice) brokenAt {
	b := brokenAt{at: c.At[0], fits: fits(c.Parts)}
	for i := range c.Rows {
		row := &c.Rows[i]
		width := row.Width
		if row.Overrun > 0 {
			width = row.Room + row.Overrun
		}
		if row.Turn == typeset.Turnover {
			continue
		}
		if i == 0 {
			b.head = width
		} else {
			b.tail, b.room = width, row.Room
		}
	}
	return b
}

// threes are the pairs of places that break the line into three parts that fit,
// by place, and how many there are in all: judged by the widths of what two parts
// have, and so to be tried.
func (f *finder) threes(two []brokenAt) (pairs [][]int, several int) {
	type pair struct {
		at     []int
		widest typeset.Length
	}
	whole := f.width()
	var all []pair
	for i, a := range two {
		for _, b := range two[i+1:] {
			// The middle is what both the longer head and the longer tail have.
			widest := max(a.head, b.head+a.tail-whole, b.tail)
			if widest <= min(a.room, b.room) {
				all = append(all, pair{[]int{a.at, b.at}, widest})
			}
		}
	}
	several = len(all)
	slices.SortStableFunc(all, func(a, b pair) int { return cmp.Compare(a.widest, b.widest) })
	all = all[:min(len(all), mostThrees)]
	slices.SortFunc(all, func(a, b pair) int { return slices.Compare(a.at, b.at) })
	for _, p := range all {
		pairs = append(pairs, p.at)
	}
	return pairs, several
}

// width is how wide the whole line is, where it is overlong.
func (f *finder) width() typeset.Length {
	rows := f.set.rows(f.ref)
	return rows[0].Room + rows[0].Overrun
}

// breakInThree tells of the ways into three. The last says how many were left
// out.
func (f *finder) breakInThree(in pagemodel.In, threes [][]int, several int) {
	told := 0
	for _, at := range threes {
		_, ok := f.breakAt(in, at...)
		if ok && !fits(f.all[len(f.all)-1].Parts) {
			f.all = f.all[:len(f.all)-1]
			continue
		}
		if ok {
			told++
		}
	}
	if told > 0 && several > len(threes) {
		last := &f.all[len(f.all)-1]
		last.Says = append(last.Says, fmt.Sprintf("of %d ways into three, the %d of the most even width are shown", several, told))
	}
}
