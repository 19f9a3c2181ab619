package typeset_test

import (
	"slices"

	"headland/pagemodel"
	"headland/typeset"
)

// outcome is some of the book's pages and what they cost.
type outcome struct {
	sheets []sheet
	cost   typeset.Cost
}

// better says that an outcome is to be preferred: by its cost, and where that
// ties by the fullest first page, then the fullest second.
func (a *outcome) better(b *outcome) bool {
	if b == nil {
		return true
	}
	if c := a.cost.Compare(b.cost); c != 0 {
		return c < 0
	}
	return slices.CompareFunc(a.sheets, b.sheets, func(s, t sheet) int { return s.to - s.from - (t.to - t.from) }) > 0
}

// best tries every way to end the pages of the book. Poems that can't share a
// page know of each other only on which side the first of them ends, so of all
// ways to set poems that hang together, begun on one side, the best that ends on
// each side is enough; all ways to put these together are tried.
func (b *book) best() outcome {
	return *b.bestFrom(0, 1)
}

// bestFrom is the best of the book from an entry of the order on, which may open
// on page number or later.
func (b *book) bestFrom(entry, number int) *outcome {
	if entry == len(b.order) {
		return &outcome{}
	}
	if b.order[entry].Poem == nil {
		number += 1 - number%2 // a section opens on a recto
		if !b.design.SectionOpen {
			number++
		}
		return b.bestFrom(entry+1, number+1)
	}
	next := entry + 1
	for next < len(b.order) && b.order[next].Poem != nil && b.order[next].Poem.Head().Start == pagemodel.SharedPage {
		next++
	}
	from, to := b.piecesBetween(entry, next)
	number = openingPage(b.order[entry].Poem.Head(), number)
	var found *outcome
	for _, o := range b.bestOf(from, to, number) {
		if o == nil {
			continue
		}
		rest := b.bestFrom(next, o.sheets[len(o.sheets)-1].number+1)
		whole := outcome{sheets: slices.Concat(o.sheets, rest.sheets)}
		if whole.cost = b.score(whole.sheets); whole.better(found) {
			found = &whole
		}
	}
	return found
}

// piecesBetween are the pieces of the poems of some entries.
func (b *book) piecesBetween(entry, next int) (from, to int) {
	poem := slices.Index(b.poems, b.order[entry].Poem)
	return b.begins[poem], b.begins[poem+next-entry]
}

// openingPage is the page on which a poem opens that can't open before page
// number.
func openingPage(h pagemodel.PoemHead, number int) int {
	if h.Blank {
		number++
	}
	if h.Start == pagemodel.OnRecto && number%2 == 0 || h.Start == pagemodel.OnVerso && number%2 == 1 {
		number++
	}
	return number
}

// bestOf is the best way to set pieces that ends on a verso, and the best that
// ends on a recto.
func (b *book) bestOf(from, to, number int) [2]*outcome {
	var best [2]*outcome
	laid := map[[2]int]sheet{}
	b.everyWay(from, to, number, laid, nil, func(sheets []sheet) {
		o := outcome{sheets, b.score(sheets)}
		side := sheets[len(sheets)-1].number % 2
		if o.better(best[side]) {
			o.sheets = slices.Clone(sheets)
			best[side] = &o
		}
	})
	return best
}

// everyWay visits every way to cut pieces into pages. No page runs over its
// foot, unless a single piece does, nor past a page end that the poet has put. A
// poem that may share a page opens a page or goes on with the one before it.
func (b *book) everyWay(from, to, number int, laid map[[2]int]sheet, done []sheet, visit func([]sheet)) {
	for end := from + 1; end <= to; end++ {
		s, ok := laid[[2]int{from, end}]
		if !ok {
			s = b.lay(from, end)
			laid[[2]int{from, end}] = s
		}
		if s.depth > b.room(from) && end > from+1 {
			return
		}
		s.number = number
		if sheets := append(done, s); end == to {
			visit(sheets)
		} else {
			b.everyWay(end, to, number+1, laid, sheets, visit)
		}
		if end < to && b.pieces[end].opensPage() {
			return
		}
	}
}
