package typeset

import (
	"headland/pagemodel"
)

// step is one unit as the search for page ends sees it: rows of the grid and
// what a page end before it would do.
type step struct {
	before int32 // blank rows before it, but at the head of a page
	shared int32 // the same where its poem opens below another
	top    int32 // the highest row that it may have on the page on which its poem opens
	rows   int32
	verse  int32 // rows of verse
	end    pageEnd
	white  bool // begins a stanza: a page that begins with it hides a stanza break
}

// steps are the poem's units as the search sees them. Its first unit says
// nothing about page ends: whether a page ends before a poem is not the poem's.
func (s *poemSetting) stepsOf(d *pagemodel.Design, form pagemodel.Form) []step {
	steps := make([]step, len(s.units))
	for i := range s.units {
		u := &s.units[i]
		t := step{before: int32(u.before), shared: int32(u.before), top: 1, rows: int32(len(u.rows)), white: u.at == 0 && u.group > 0 && !u.goesOn}
		if u.group > 0 && !u.prose {
			t.verse = t.rows
		}
		switch {
		case i == 0 && s.head > 0:
			t.top = int32(s.titleRow(d))
		case i == s.head:
			t.top = int32(s.sink(d))
		}
		switch {
		case i == 0:
			t.shared = int32(2 * d.StanzaGap)
		case i == s.head:
			t.shared = max(t.shared, int32(d.PoemRow-d.TitleRow-1))
		}
		if i > 0 {
			t.end = endBefore(s.units, i, form)
		}
		steps[i] = t
	}
	return steps
}

// chainKind says how the pages of a chain follow one another.
type chainKind int

const (
	singly  chainKind = iota // page by page
	facing                   // two poems side by side, spread by spread
	across                   // one poem over both pages, spread by spread
	divider                  // a section's page: no poem
)

// chain is what is paged as one: most often a single poem; a poem and those
// that may open below it on its last page; an original and its translation; a
// section's page. It opens on a page of its own, so that all it owes to what is
// before it is the side on which it opens. A chain never changes once made.
type chain struct {
	kind   chainKind
	poems  []*poemSetting
	first  []int32 // for each poem its first step, and then the number of steps
	steps  []step
	sides  [2][]int32 // of a pair: the unit of each poem that a step sets level, or -1
	hidden bool       // a line of white heads a page that hides a stanza break
	plans  [2][2]plan // by the side it opens on and the side that comes after it
}

// plan is one way to end a chain's pages.
type plan struct {
	weight weight
	cuts   []int32 // the first step of each page but the first
	pages  int32   // that it takes; 0 where there is no such plan
}

// soloChain is a poem paged by itself.
func soloChain(p *poemSetting, d *pagemodel.Design) *chain {
	c := &chain{poems: []*poemSetting{p}, first: []int32{0, int32(len(p.steps))}, steps: p.steps, hidden: d.Hidden == pagemodel.HiddenWhite}
	if p.lie == pagemodel.Across {
		c.kind = across
	}
	c.solve()
	return c
}

// sharedChain is poems that may follow one another on a page.
func sharedChain(poems []*poemSetting, d *pagemodel.Design) *chain {
	c := &chain{poems: poems, hidden: d.Hidden == pagemodel.HiddenWhite}
	for _, p := range poems {
		c.first = append(c.first, int32(len(c.steps)))
		c.steps = append(c.steps, p.steps...)
	}
	c.first = append(c.first, int32(len(c.steps)))
	c.solve()
	return c
}

// dividerChain is a section's pages: one, and a blank behind it unless the
// design says otherwise.
func dividerChain(p *poemSetting) *chain {
	c := &chain{kind: divider, poems: []*poemSetting{p}, first: []int32{0, 1}}
	n := int32(len(p.divider))
	for s := range c.plans {
		c.plans[s][(int32(s)+n)%2] = plan{pages: n}
	}
	return c
}

// rows is how deep a page is that begins with a step: the poem's that stands
// there.
func (c *chain) rows(at int) int32 { return int32(c.poems[c.poemAt(at)].rows) }

// poemAt is the poem, of the chain, that a step belongs to.
func (c *chain) poemAt(at int) int {
	k := 0
	for c.kind == singly && int(c.first[k+1]) <= at {
		k++
	}
	return k
}

// opens says that a poem of the chain begins with the step.
func (c *chain) opens(at int) bool {
	return at == 0 || len(c.poems) > 1 && int(c.first[c.poemAt(at)]) == at
}

// filling fills one page with steps, one after another.
type filling struct {
	c     *chain
	start int
	fresh bool // the poem opens at the head of this page
	below bool // a poem opened below another on this page
	grid  int32
}

func (c *chain) page(start int) filling { return filling{c: c, start: start, fresh: c.opens(start)} }

// add puts the next step on the page; its first row of the grid comes back, and
// grid is its last.
func (f *filling) add(i int) (top int32) {
	t := &f.c.steps[i]
	switch {
	case i == f.start:
		if f.c.hidden && !f.fresh && t.white {
			f.grid = 1
		}
	case f.c.opens(i):
		f.fresh, f.below = false, true
		f.grid += t.shared
	case f.below:
		f.grid += t.shared
	default:
		f.grid += t.before
	}
	top = f.grid + 1
	if f.fresh {
		top = max(top, t.top)
	}
	f.grid = top + t.rows - 1
	return top
}

// pageOf is the first step of a page of a plan, from 0, and the step after its
// last. Of a chain that goes spread by spread it is the spread's.
func (c *chain) pageOf(p *plan, page int) (from, to int) {
	if c.kind == facing || c.kind == across {
		page /= 2
	}
	to = len(c.steps)
	if page > 0 {
		from = int(p.cuts[page-1])
	}
	if page < len(p.cuts) {
		to = int(p.cuts[page])
	}
	return from, to
}
