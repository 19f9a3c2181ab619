package typeset_test

import (
	"fmt"
	"slices"

	"headland/pagemodel"
	"headland/typeset"
)

// bookOf takes a collection apart into pieces. How many rows each piece has, and
// how much white parts it from the one above, is read off the poem set alone on
// one very deep page, where nothing is to be decided. The poet's own white above
// a line is left out there and put in here.
func bookOf(setter *typeset.Setter, c *pagemodel.Collection) *book {
	b := &book{design: c.Design(), order: c.Order()}
	for _, p := range c.Poems() {
		b.begins = append(b.begins, len(b.pieces))
		b.pieces = append(b.pieces, piecesOf(setter, c.Design(), p, len(b.poems))...)
		b.poems = append(b.poems, p)
	}
	b.begins = append(b.begins, len(b.pieces))
	return b
}

// piecesOf are the pieces of one poem.
func piecesOf(setter *typeset.Setter, d pagemodel.Design, p *pagemodel.Poem, poem int) []piece {
	d.Trim.Height = pagemodel.MM(1000)
	d.TitleRow, d.PoemRow = 1, 2
	s := setter.Set(nil, plainly(d, p))
	if s.Extent() != 1 {
		panic(fmt.Sprintf("a poem of %d pages on pages of %d rows", s.Extent(), d.Rows()))
	}
	places := placesOf(p)
	var pieces []piece
	below := 0
	for _, r := range wordsOf(s.Page(1)) {
		last := len(pieces) - 1
		if r.Role == typeset.RoleVerse && last >= 0 && pieces[last].line.ID() == r.Line {
			pieces[last].rows++
		} else {
			q := places[r.Line]
			q.poem, q.role, q.rows, q.gap = poem, r.Role, 1, r.Grid-below-1
			if last >= 0 && !pieces[last].isOpening() && pieces[last].line.ID() != r.Line {
				q.gap += q.line.Above()
			}
			pieces = append(pieces, q)
		}
		below = r.Grid
	}
	countRows(pieces)
	pieces[0].first = true
	return pieces
}

// plainly is a book of one poem, about which nothing is said that moves its page
// ends.
func plainly(d pagemodel.Design, p *pagemodel.Poem) *pagemodel.Collection {
	b := pagemodel.NewBuilder(pagemodel.About{}, d)
	var parts []pagemodel.Part
	for _, part := range p.Parts() {
		var stanzas []pagemodel.Stanza
		for _, s := range part.Stanzas() {
			lines := slices.Clone(s.Lines())
			for i, l := range lines {
				lines[i] = l.WithTied(false).WithOpensPage(false).WithAbove(0)
			}
			stanzas = append(stanzas, pagemodel.NewStanza(s.Kind(), lines))
		}
		parts = append(parts, pagemodel.NewPart(part.Heading(), stanzas))
	}
	h := p.Head()
	h.Form, h.Start, h.Blank, h.Run, h.Lie = pagemodel.NoForm, pagemodel.FreshPage, false, 0, pagemodel.Upright
	b.Poem(h, parts)
	return b.Collection()
}

// placesOf is a piece for each line, with what the poem says of it; the piece of
// line 0 stands for all that is no line.
func placesOf(p *pagemodel.Poem) map[pagemodel.LineID]piece {
	places := map[pagemodel.LineID]piece{0: {stanza: -1}}
	stanza := -1
	for at, l := range p.Lines() {
		if at.Line == 0 {
			stanza++
		}
		places[l.ID()] = piece{line: l, stanza: stanza, part: at.Part, at: at.Line, of: len(p.Stanza(at).Lines())}
	}
	return places
}

// countRows counts a paragraph's rows, which are pieces each. A paragraph stands
// for a stanza.
func countRows(pieces []piece) {
	for i := 0; i < len(pieces); {
		j := i + 1
		if pieces[i].role == typeset.RoleProse {
			for j < len(pieces) && pieces[j].line.ID() == pieces[i].line.ID() {
				j++
			}
			for k := i; k < j; k++ {
				pieces[k].at, pieces[k].of, pieces[k].ends = k-i, j-i, k == j-1
			}
		}
		i = j
	}
}

// wordsOf are a page's rows of poems: no folio, no running head, no section.
func wordsOf(p *typeset.Page) []typeset.Row {
	var rows []typeset.Row
	for _, r := range p.Rows {
		switch r.Role {
		case typeset.RoleFolio, typeset.RoleRunning, typeset.RoleSign, typeset.RoleSection:
		default:
			rows = append(rows, r)
		}
	}
	return rows
}

// finished reads the pages of a setting, those of each poem together. The error
// says where they do not hold the pieces of the book, each once and in order.
func (b *book) finished(s *typeset.Setting) ([]sheet, error) {
	var sheets []sheet
	next := slices.Clone(b.begins[:len(b.poems)]) // the piece that each poem goes on with
	for n := 1; n <= s.Extent(); n++ {
		if rows := wordsOf(s.Page(n)); len(rows) > 0 {
			page, err := b.read(n, rows, next)
			if err != nil {
				return nil, fmt.Errorf("page %d: %w", n, err)
			}
			sheets = append(sheets, page)
		}
	}
	for i, u := range next {
		if u < b.begins[i+1] {
			return nil, fmt.Errorf("pieces %d to %d are on no page", u, b.begins[i+1]-1)
		}
	}
	slices.SortFunc(sheets, func(a, b sheet) int { return a.from - b.from })
	return sheets, nil
}

// read reads the rows of a page. next is the piece that each poem goes on with.
func (b *book) read(number int, rows []typeset.Row, next []int) (sheet, error) {
	page := sheet{number: number, from: -1}
	for len(rows) > 0 {
		poem := slices.IndexFunc(b.poems, func(p *pagemodel.Poem) bool { return p.ID() == rows[0].Poem })
		if poem < 0 || next[poem] == b.begins[poem+1] {
			return page, fmt.Errorf("more rows than the book has: %s", rowList(rows))
		}
		u := next[poem]
		p := &b.pieces[u]
		if page.from < 0 {
			page.from = u
		} else if u != page.to {
			return page, fmt.Errorf("piece %d stands below piece %d", u, page.to-1)
		}
		if !p.holds(rows) {
			return page, fmt.Errorf("not the %d rows of piece %d, %v %q, but %s", p.rows, u, p.role, p.line.Text(), rowList(rows))
		}
		page.grids = append(page.grids, rows[0].Grid)
		page.depth = rows[p.rows-1].Grid
		rows = rows[p.rows:]
		next[poem]++
		page.to = u + 1
	}
	return page, nil
}

// holds says that the rows begin with this piece, its rows one below another.
func (p *piece) holds(rows []typeset.Row) bool {
	if len(rows) < p.rows {
		return false
	}
	for i, r := range rows[:p.rows] {
		if r.Role != p.role || r.Line != p.line.ID() || r.Grid != rows[0].Grid+i {
			return false
		}
	}
	return true
}
