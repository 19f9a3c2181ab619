package session

import (
	"slices"

	"headland/pagemodel"
	"headland/typeset"
)

// Glimpse is what lies open in a design that the rest of the book is not yet
// set in. Its pages stand under the numbers of the open spread; those that the
// poems will have in the end are not known yet.
type Glimpse struct {
	design pagemodel.Design
	pages  [2]*typeset.Page // by side; nil where there is none
}

// Design is the design of the pages.
func (g *Glimpse) Design() pagemodel.Design { return g.design }

// Page is the page of a side, or nil where none lies there.
func (g *Glimpse) Page(side pagemodel.Side) *typeset.Page { return g.pages[side] }

// glimpse sets what stands on the open spread in another design, so that the
// anchored line is in sight; nil where no poem or section stands there.
func (s *Session) glimpse(d pagemodel.Design, anchor pagemodel.LineRef) *Glimpse {
	whole, spread := s.Setting(), s.Spread()
	from, to := standing(whole, spread)
	book, err := excerpt(whole, from, to, d)
	if err != nil {
		return nil
	}
	set := s.setter.Set(nil, book)
	page, ok := set.PageOfLine(anchor)
	if !ok {
		page = max(spread.Verso, spread.Recto) - shiftOf(whole, set)
	}
	if page < 1 || page > set.Extent() {
		return nil
	}
	g := &Glimpse{design: d}
	open := pagemodel.SpreadOf(page, set.Extent())
	g.pages[pagemodel.Verso] = s.glimpsed(set, open.Verso, spread.Verso)
	g.pages[pagemodel.Recto] = s.glimpsed(set, open.Recto, spread.Recto)
	return g
}

// standing is the part of the book's order that covers a spread: from the poem
// that stands before it, or runs into it, to the first that opens after it.
func standing(set *typeset.Setting, spread pagemodel.Spread) (from, to int) {
	order := set.Collection().Order()
	first, last := max(1, spread.Verso), max(spread.Verso, spread.Recto)
	to = len(order)
	for i, e := range order {
		if e.Poem == nil {
			continue
		}
		page, _ := set.PageOfPoem(e.Poem.ID())
		if page < first && opensPage(e.Poem) {
			from = i
		}
		if page > last {
			to = i + 1
			break
		}
	}
	return from, to
}

// opensPage says that a poem does not depend on the page of the one before it.
func opensPage(p *pagemodel.Poem) bool {
	start := p.Head().Start
	return start != pagemodel.SharedPage && start != pagemodel.FacingPage
}

// excerpt is a book of part of another's order, in a design, without prelims
// and end matter. Its first poem opens on the side that it has in the whole.
func excerpt(whole *typeset.Setting, from, to int, d pagemodel.Design) (*pagemodel.Collection, error) {
	entries := whole.Collection().Order()[from:to]
	book, err := pagemodel.SetDesign{Design: d}.Apply(whole.Collection().Only(from, to))
	if err != nil {
		return nil, err
	}
	if len(entries) == 0 || entries[0].Poem == nil {
		return book, nil
	}
	return sameSide(whole, book, entries[0].Poem)
}

// sameSide is the book with a poem opening on the side that it has in the
// whole.
func sameSide(whole *typeset.Setting, book *pagemodel.Collection, p *pagemodel.Poem) (*pagemodel.Collection, error) {
	page, _ := whole.PageOfPoem(p.ID())
	head := p.Head()
	head.Blank = false
	head.Start = pagemodel.OnRecto
	if pagemodel.SideOf(page) == pagemodel.Verso {
		head.Start = pagemodel.OnVerso
	}
	return pagemodel.SetHead{Poem: p.ID(), Head: head}.Apply(book)
}

// shiftOf is how many pages further on the whole has the excerpt's first poem.
func shiftOf(whole, excerpt *typeset.Setting) int {
	for _, p := range excerpt.Collection().Poems() {
		in, _ := whole.PageOfPoem(p.ID())
		here, _ := excerpt.PageOfPoem(p.ID())
		return in - here
	}
	return 0
}

// glimpsed is a page of the excerpt under the number at which it is shown; nil
// where either has none.
func (s *Session) glimpsed(set *typeset.Setting, n, shown int) *typeset.Page {
	if n == 0 || shown == 0 {
		return nil
	}
	p := *set.Page(n)
	p.Number = shown
	if p.Folio == "" {
		return &p
	}
	p.Folio = s.Setting().Page(shown).Folio
	p.Rows = slices.Clone(p.Rows)
	for i := range p.Rows {
		if p.Rows[i].Role == typeset.RoleFolio {
			s.renumber(&p, &p.Rows[i], set.Collection().Design().Face)
		}
	}
	return &p
}

// renumber sets the page's folio in place of the one in a row, at the same edge
// of the text or in its middle.
func (s *Session) renumber(p *typeset.Page, r *typeset.Row, family string) {
	run := s.setter.Words(p.Folio, typeset.WordStyle{Family: family, Size: r.Runs[0].Size})
	switch right := p.Text.X + p.Text.W; {
	case r.X == p.Text.X:
	case r.X+r.Width == right:
		r.X = right - run.Width
	default:
		r.X += (r.Width - run.Width) / 2
	}
	r.Width, r.End, r.Runs = run.Width, len(p.Folio), []typeset.Run{run}
}
