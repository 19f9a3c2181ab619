package typeset_test

import (
	"headland/pagemodel"
	"headland/typeset"
)

// room is how many rows a page has that begins with piece u.
func (b *book) room(u int) int {
	return b.design.Rows() + b.poems[b.pieces[u].poem].Head().Run
}

// score is what the finished pages of a book, or of some of its poems, cost.
func (b *book) score(sheets []sheet) typeset.Cost {
	var c typeset.Cost
	for i := range sheets {
		s := &sheets[i]
		c.Pages++
		if b.across(b.pieces[s.from].poem) {
			c.Pages++
		}
		if s.to < len(b.pieces) && !b.pieces[s.to].first && !b.echoes(b.pieces[s.from].poem) {
			b.scoreEnd(s, &c)
		}
	}
	for i := 0; i < len(sheets); {
		poem := b.pieces[sheets[i].from].poem
		for ; poem <= b.pieces[sheets[i].to-1].poem; poem++ {
			i = b.scorePoem(sheets, i, poem, &c)
		}
		i++
	}
	return c
}

// scoreEnd adds what it costs that a page ends in the midst of a poem.
func (b *book) scoreEnd(s *sheet, c *typeset.Cost) {
	if b.forbidden(s.to) {
		c.Forbidden++
	}
	if within(&b.pieces[s.to-1], &b.pieces[s.to]) {
		if b.turned(s) {
			c.Turned++
		} else {
			c.Split++
		}
	}
	if b.againstRule(s.to) {
		c.AgainstRule++
	}
	slack := max(0, b.room(s.from)-s.depth)
	c.Slack += slack * slack
}

// scorePoem adds what the pages of one poem cost together. The poem begins on
// sheet i; its last sheet is given back.
func (b *book) scorePoem(sheets []sheet, i, poem int, c *typeset.Cost) (last int) {
	end := b.begins[poem+1]
	for last = i; sheets[last].to < end; last++ {
		if b.poems[poem].Head().Form == pagemodel.Stanzaless && !b.echoes(poem) {
			c.Uneven += [4]int{0, 2, 1, 2}[b.verseRows(&sheets[last], poem)%4] // an even depth, best a multiple of four (150)
		}
	}
	if last-i == 1 && sheets[i].recto() && !b.translated(poem) {
		c.Unfaced++
	}
	return last
}

func (b *book) verseRows(s *sheet, poem int) int {
	n := 0
	for u := s.from; u < s.to; u++ {
		if p := &b.pieces[u]; p.poem == poem && p.isVerse() {
			n += p.rows
		}
	}
	return n
}

// lay puts the pieces from one up to another on one page.
func (b *book) lay(from, to int) sheet {
	s := sheet{from: from, to: to, grids: make([]int, 0, to-from)}
	for u := from; u < to; u++ {
		grid := b.gridOf(&s, u)
		s.grids = append(s.grids, grid)
		s.depth = grid + b.pieces[u].rows - 1
	}
	return s
}

// gridOf is the row of the grid on which the next piece of a page stands.
func (b *book) gridOf(s *sheet, u int) int {
	d, p := &b.design, &b.pieces[u]
	opening := b.begins[p.poem] // of its poem
	fresh := opening == s.from  // the poem opens this page
	shares := opening > s.from  // the poem opens on this page, below another
	afterHead := !p.isOpening() && u > opening && b.pieces[u-1].isOpening()
	switch {
	case u == s.from && !fresh:
		return 1
	case u == opening && fresh && p.isOpening():
		return d.TitleRow
	case u == opening && fresh:
		return d.PoemRow
	case u == opening:
		return s.depth + 1 + 2*d.StanzaGap
	case afterHead && fresh:
		return max(s.depth+1+p.gap, d.PoemRow)
	case afterHead && shares:
		return s.depth + 1 + max(p.gap, d.PoemRow-d.TitleRow-1)
	}
	return s.depth + 1 + p.gap
}
