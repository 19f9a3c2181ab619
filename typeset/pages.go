package typeset

import "headland/pagemodel"

// place gives the rows of one page of a chain their places on the grid, in
// order. Their X counts from the left of the measure.
func (c *chain) place(p *plan, page int) []Row {
	if c.kind == divider {
		return c.poems[0].divider[page]
	}
	from, to := c.pageOf(p, page)
	f := c.page(from)
	rows := make([]Row, 0, to-from+2)
	begun := 0 // where the rows of the poem begin that is being placed
	for i := from; i < to; i++ {
		if i > from && c.opens(i) {
			c.poems[c.poemAt(i-1)].toEdge(rows[begun:])
			begun = len(rows)
		}
		top := f.add(i)
		for j, row := range c.unitRows(i, page) {
			row.Grid = int(top) + j
			rows = append(rows, row)
		}
	}
	if to > from {
		c.owner(to-1, page).toEdge(rows[begun:])
	}
	return number(rows)
}

// owner is the poem that a step is a unit of, on a page: of a pair the first
// poem stands on the verso.
func (c *chain) owner(step, page int) *poemSetting {
	if c.kind == facing {
		return c.poems[page%2]
	}
	return c.poems[c.poemAt(step)]
}

// unitRows are the rows of the unit that a step is, on a page.
func (c *chain) unitRows(step, page int) []Row {
	switch c.kind {
	case facing:
		unit := c.sides[page%2][step]
		if unit < 0 {
			return nil
		}
		return c.poems[page%2].units[unit].rows
	case across:
		return c.poems[0].units[step].rows
	}
	k := c.poemAt(step)
	return c.poems[k].units[step-int(c.first[k])].rows
}

// pageOfStep is the page of a plan, from 0, on which a step stands; of a pair or
// a poem across, its verso.
func (c *chain) pageOfStep(p *plan, step int) int {
	page := 0
	for page < len(p.cuts) && int(p.cuts[page]) <= step {
		page++
	}
	if c.spreads() {
		page *= 2
	}
	return page
}

// toEdge moves a poem's rows on one page to where its left edge is to stand.
func (s *poemSetting) toEdge(rows []Row) {
	if s.edge == pagemodel.EdgeCentre || s.edge == pagemodel.EdgeOptic {
		shiftToEdge(rows, s.edge, s.measure)
	}
}

// number counts a page's rows of the poet's words from its head.
func number(rows []Row) []Row {
	n := 0
	for i := range rows {
		if rows[i].Line != 0 {
			n++
			rows[i].Number = n
		}
	}
	return rows
}
