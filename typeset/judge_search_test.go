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
		return b.bestFrom(entry+1, b.afterSection(number))
	}
	poem := slices.Index(b.poems, b.order[entry].Poem)
	next := b.lastThatHangsTogether(entry) + 1
	head := b.poems[poem].Head()
	if b.translated(poem) || b.across(poem) {
		head.Start = pagemodel.OnVerso
	}
	number = openingPage(head, number)
	var found *outcome
	for _, o := range b.bestOf(poem, poem+next-entry, number) {
		if o == nil {
			continue
		}
		free := o.sheets[len(o.sheets)-1].number + 1
		if b.across(poem) {
			free++
		}
		rest := b.bestFrom(next, free)
		whole := outcome{sheets: slices.Concat(o.sheets, rest.sheets)}
		if whole.cost = b.score(whole.sheets); whole.better(found) {
			found = &whole
		}
	}
	return found
}

// afterSection is the first page free behind a section's page, which can't stand
// before page number. It is a recto, backed by a blank unless the design says
// otherwise.
func (b *book) afterSection(number int) int {
	number += 1 - number%2
	if b.design.SectionOpen {
		return number + 1
	}
	return number + 2
}

// lastThatHangsTogether is the last of the entries, from one on, whose poems may
// share a page, or the translation of the one. A blank before a poem parts it from
// what stands above.
func (b *book) lastThatHangsTogether(entry int) int {
	head := func(i int) (h pagemodel.PoemHead) {
		if i < len(b.order) && b.order[i].Poem != nil {
			h = b.order[i].Poem.Head()
		}
		return h
	}
	if head(entry+1).Start == pagemodel.FacingPage {
		return entry + 1
	}
	for h := head(entry + 1); h.Start == pagemodel.SharedPage && !h.Blank; h = head(entry + 1) {
		entry++
	}
	return entry
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

// bestOf is the best way to set poems from one up to another that ends on a
// verso, and the best that ends on a recto.
func (b *book) bestOf(poem, next, number int) [2]*outcome {
	var best [2]*outcome
	laid := map[[2]int]sheet{}
	from, to := b.begins[poem], b.begins[next]
	step := 1
	if b.translated(poem) {
		step, to = 2, b.begins[poem+1]
	} else if b.across(poem) {
		step = 2
	}
	b.everyWay(from, to, number, step, laid, nil, func(sheets []sheet) {
		if b.translated(poem) {
			sheets = faced(sheets, to-from)
		}
		o := outcome{sheets, b.score(sheets)}
		side := sheets[len(sheets)-1].number % 2
		if o.better(best[side]) {
			o.sheets = slices.Clone(sheets)
			best[side] = &o
		}
	})
	return best
}

// faced are the pages of a poem and, behind them, those of its translation, which
// has the same pieces: the page facing each ends with the same line.
func faced(sheets []sheet, pieces int) []sheet {
	both := slices.Clone(sheets)
	for _, s := range sheets {
		s.number, s.from, s.to = s.number+1, s.from+pieces, s.to+pieces
		both = append(both, s)
	}
	return both
}

// everyWay visits every way to cut pieces into pages. No page runs over its
// foot, unless a single piece does, nor past a page end that the poet has put. From
// one page to the next the number goes up by step. A poem that may share a page opens a page or goes on with the one before it.
func (b *book) everyWay(from, to, number, step int, laid map[[2]int]sheet, done []sheet, visit func([]sheet)) {
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
			b.everyWay(end, to, number+step, step, laid, sheets, visit)
		}
		if end < to && b.pieces[end].opensPage() {
			return
		}
	}
}

// filled are the book's pages filled one after another: each ends at the last
// place that fits and is not forbidden, or where none is at the last that fits.
func (b *book) filled() []sheet {
	var sheets []sheet
	number := 1
	for entry := 0; entry < len(b.order); {
		if b.order[entry].Poem == nil {
			number, entry = b.afterSection(number), entry+1
			continue
		}
		last := b.lastThatHangsTogether(entry)
		poem := slices.Index(b.poems, b.order[entry].Poem)
		number = openingPage(b.poems[poem].Head(), number)
		for u, to := b.begins[poem], b.begins[poem+last-entry+1]; u < to; number++ {
			s := b.lay(u, b.lastFit(u, to))
			s.number = number
			sheets = append(sheets, s)
			u = s.to
		}
		entry = last + 1
	}
	return sheets
}

// lastFit is where a page ends when it is filled that begins with piece u.
func (b *book) lastFit(u, to int) int {
	fit, allowed := u+1, 0
	for end := u + 1; end <= to && (end == u+1 || b.lay(u, end).depth <= b.room(u)); end++ {
		fit = end
		if end == to || b.pieces[end].first || !b.forbidden(end) {
			allowed = end
		}
		if end < to && b.pieces[end].opensPage() {
			break
		}
	}
	if allowed > 0 {
		return allowed
	}
	return fit
}
