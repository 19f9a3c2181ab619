package typeset

import (
	"sort"

	"headland/assets"
	"headland/pagemodel"
)

// standIn is the family that stands in, under a fault, for one that is absent.
const standIn = assets.EBGaramond

// Collection is what was set.
func (s *Setting) Collection() *pagemodel.Collection { return s.collection }

// Extent is how many pages the book has: prelims, poems and end matter, blanks
// counted.
func (s *Setting) Extent() int {
	_, last := s.Body()
	if len(s.matter.end) == 0 {
		return last
	}
	return s.behind() + len(s.matter.end)
}

// behind is the last page before the end matter, which begins on a recto.
func (s *Setting) behind() int {
	_, last := s.Body()
	return last + last%2
}

// before is how many pages the prelims take, always an even number.
func (s *Setting) before() int { return len(s.matter.prelims) }

// Body is the first and the last page of the poems and sections. In a book
// without any the last is before the first.
func (s *Setting) Body() (first, last int) { return s.before() + 1, s.before() + len(s.seats.pages) }

// FaceHere says whether the design's own face was there to set with. Pages set
// with another must not leave the house.
func (s *Setting) FaceHere() bool { return s.faces.family }

// Cost is what the book's page ends cost.
func (s *Setting) Cost() Cost {
	var sum weight
	for i := range s.seats.starts {
		_, p := s.seats.planOf(i)
		sum = sum.add(&p.weight)
	}
	return sum.cost()
}

// Page is page n, from 1, made now: its side, its margins and its folio are put
// on what the poem's setting holds. A page outside the book is blank.
func (s *Setting) Page(n int) *Page {
	d := &s.design
	p := &Page{Number: n, Side: pagemodel.SideOf(n), Trim: d.Trim}
	p.Text = Rect{d.Margins.Left(p.Side), d.Margins.Head, d.Measure(), d.Depth()}
	if m := s.matterAt(n); m != nil {
		s.fillMatter(p, m)
		return p
	}
	ref, ok := s.ref(n)
	if !ok || ref.chain < 0 {
		return p
	}
	s.fillPage(p, ref)
	return p
}

// matterAt is the page of the prelims or end matter that page n is, or nil.
func (s *Setting) matterAt(n int) *matterPage {
	switch behind := s.behind(); {
	case n >= 1 && n <= s.before():
		return &s.matter.prelims[n-1]
	case n > behind && n <= s.Extent():
		return &s.matter.end[n-behind-1]
	}
	return nil
}

// fillPage puts a chain's rows on the page, its folio and its running head.
func (s *Setting) fillPage(p *Page, ref pageRef) {
	c, plan := s.seats.planOf(int(ref.chain))
	rows := c.place(plan, int(ref.page))
	p.Rows = make([]Row, 0, len(rows)+3)
	for i := range rows {
		if row, ok := s.onPage(p, c, rows[i], int(ref.page)); ok {
			p.Rows = append(p.Rows, row)
		}
	}
	if c.kind == divider {
		return
	}
	s.signHidden(p, c, plan, int(ref.page))
	s.furnish(p, ref)
}

// onPage is a row at its place on the page. Of a poem across the spread a page
// has the rows that reach it; what runs over from the verso is not numbered
// again on the recto.
func (s *Setting) onPage(p *Page, c *chain, row Row, page int) (Row, bool) {
	d := &s.design
	switch {
	case c.poems[0].lie == pagemodel.Turned:
		row.Turned = true
		row.X += d.Margins.Foot
		row.Baseline = d.Margins.Left(p.Side) + d.Size + Length(row.Grid-1)*d.Leading
		return row, true
	case c.kind == across:
		row.X += d.Margins.Left(pagemodel.Verso)
		row.Baseline = d.Baseline(row.Grid)
		if page%2 == 0 {
			return row, row.X < d.Trim.Width
		}
		if over := row.X < d.Trim.Width; over {
			row.Number = 0
		}
		row.X -= d.Trim.Width
		return row, row.X+row.Width > 0
	}
	row.X += p.Text.X
	row.Baseline = d.Baseline(row.Grid)
	return row, true
}

// ref is what stands on page n of the book, where that is a page of the poems
// and sections.
func (s *Setting) ref(n int) (pageRef, bool) {
	n -= s.before()
	if n < 1 || n > len(s.seats.pages) {
		return pageRef{chain: -1}, false
	}
	return s.seats.pages[n-1], true
}

// placed is where an entry was set: its chain, the plan, which of the chain's
// poems it is, and the page of the book on which the chain begins.
type placed struct {
	*chain
	plan *plan
	poem int
	page int
}

func (s *Setting) placed(entry int) placed {
	i := int(s.seats.chainOf[entry])
	c, p := s.seats.planOf(i)
	return placed{c, p, entry - int(s.seats.heads[i]), s.before() + int(s.seats.starts[i])}
}

// stepOf is the step of the chain that a unit of the poem is.
func (p placed) stepOf(unit int) int {
	if p.kind == facing {
		for i, u := range p.sides[p.poem] {
			if int(u) == unit {
				return i
			}
		}
	}
	return int(p.first[p.poem]) + unit
}

// pageOfUnit is the page of the book on which a unit of the poem stands.
func (p placed) pageOfUnit(unit int) int {
	if p.kind == divider {
		return p.page
	}
	page := p.page + p.pageOfStep(p.plan, p.stepOf(unit))
	if p.kind == facing {
		page += p.poem
	}
	return page
}

// PageOfPoem is the poem's first page, or false.
func (s *Setting) PageOfPoem(id pagemodel.PoemID) (int, bool) {
	if i, ok := s.collection.IndexOf(id); ok {
		return s.firstPage(i), true
	}
	return 0, false
}

// firstPage is the page on which an entry begins.
func (s *Setting) firstPage(entry int) int { return s.placed(entry).pageOfUnit(0) }

// source is the entry of the collection that was set at i.
func (s *Setting) source(i int32) pagemodel.Entry { return s.collection.Entries().At(int(i)) }

// PageOfLine is the page of the line's first row, or false.
func (s *Setting) PageOfLine(ref pagemodel.LineRef) (int, bool) {
	i, ok := s.collection.IndexOf(ref.Poem)
	if !ok {
		return 0, false
	}
	unit := s.entries.At(i).unitOf(ref.Line)
	return s.placed(i).pageOfUnit(max(0, unit)), unit >= 0
}

// unitOf is the unit that a line begins, or -1.
func (s *poemSetting) unitOf(line pagemodel.LineID) int {
	for i := range s.units {
		if s.units[i].rows[0].Line == line {
			return i
		}
	}
	return -1
}

// rowAt is the page on which a unit of an entry stands and the number of its
// first row there.
func (s *Setting) rowAt(entry, unit int) (page, row int) {
	at := s.placed(entry)
	page = at.pageOfUnit(unit)
	if at.kind == divider {
		return page, 0
	}
	from, _ := at.pageOf(at.plan, page-at.page)
	for i := from; i < at.stepOf(unit); i++ {
		for _, r := range at.unitRows(i, page-at.page) {
			if r.Line != 0 {
				row++
			}
		}
	}
	if s.entries.At(entry).units[unit].rows[0].Line != 0 {
		return page, row + 1
	}
	return page, 0
}

// PoemOn is the poem that stands on the page, the first of those that share it,
// or false.
func (s *Setting) PoemOn(page int) (pagemodel.PoemID, bool) {
	ref, ok := s.ref(page)
	if !ok || ref.chain < 0 {
		return 0, false
	}
	if p := s.source(s.entryOn(ref)).Poem; p != nil {
		return p.ID(), true
	}
	return 0, false
}

// entryOn is the entry that a page of a chain begins with.
func (s *Setting) entryOn(ref pageRef) int32 {
	c, p := s.seats.planOf(int(ref.chain))
	head := s.seats.heads[ref.chain]
	switch c.kind {
	case facing:
		return head + ref.page%2
	case singly:
		from, _ := c.pageOf(p, int(ref.page))
		return head + int32(c.poemAt(from))
	}
	return head
}

// Unsettled is how many overlong lines nobody has dealt with.
func (s *Setting) Unsettled() int { return s.unsettled }

// Overlong is a line that exceeds its room, and what was done about it.
type Overlong struct {
	Poem         pagemodel.PoemID
	Number       int // of the poem in the book, from 1
	Stanza, Line int // from 1; stanzas are counted through the poem
	Ref          pagemodel.LineRef
	Page, Row    int // of its first row, from 1
	Text         string
	Parts        int // rows that it takes
	Overrun      Length
	State        pagemodel.State
}

// Turnovers are all overlong lines, in the order of the book.
func (s *Setting) Turnovers() []Overlong {
	var all []Overlong
	for number, p := range s.collection.Poems() {
		id := p.ID()
		i, _ := s.collection.IndexOf(id)
		for _, t := range s.entries.At(i).turned {
			page, row := s.rowAt(i, max(0, s.entries.At(i).unitOf(t.line)))
			all = append(all, Overlong{
				Poem: id, Number: number, Stanza: t.stanza, Line: t.number,
				Ref:  pagemodel.LineRef{Poem: id, Line: t.line},
				Page: page, Row: row, Text: t.text, Parts: t.parts, Overrun: t.overrun, State: t.state,
			})
		}
	}
	return all
}

// ContentsEntry is a line of the contents.
type ContentsEntry struct {
	Title   string
	Page    int
	Section bool             // a section's title
	Poem    pagemodel.PoemID // 0 for a section
}

// Contents are the sections and poems with their pages. A poem without a title
// stands under its first line.
func (s *Setting) Contents() []ContentsEntry {
	all := make([]ContentsEntry, 0, s.entries.Len())
	for i, source := range s.collection.Order() {
		if sec := source.Section; sec != nil {
			all = append(all, ContentsEntry{Title: sec.Title, Page: s.firstPage(i), Section: true})
			continue
		}
		p := source.Poem
		all = append(all, ContentsEntry{Title: p.Name(), Page: s.firstPage(i), Poem: p.ID()})
	}
	return all
}

// UnsettledOn is how many unsettled lines begin on the page.
func (s *Setting) UnsettledOn(page int) int {
	n := 0
	for i := range s.entriesOn(page) {
		p := s.entries.At(i)
		if p.unsettled == 0 {
			continue
		}
		at := s.placed(i)
		for _, t := range p.turned {
			if t.state == pagemodel.Unsettled && at.pageOfUnit(max(0, p.unitOf(t.line))) == page {
				n++
			}
		}
	}
	return n
}

// entriesOn are the entries that have something on the page.
func (s *Setting) entriesOn(page int) func(yield func(entry int) bool) {
	return func(yield func(int) bool) {
		ref, ok := s.ref(page)
		if !ok || ref.chain < 0 {
			return
		}
		c, p := s.seats.planOf(int(ref.chain))
		first := int(s.entryOn(ref))
		last := first
		if c.kind == singly {
			_, to := c.pageOf(p, int(ref.page))
			last = int(s.seats.heads[ref.chain]) + c.poemAt(to-1)
		}
		for i := first; i <= last; i++ {
			if !yield(i) {
				return
			}
		}
	}
}

// FirstMoved is the lowest page that does not hold what it held in prev, 0 if
// there is none. What each holds is compared by identity of what was set, so a
// poem set again counts as moved on all its pages.
func (s *Setting) FirstMoved(prev *Setting) int {
	for n := 1; n <= max(s.Extent(), prev.Extent()); n++ {
		if !s.samePage(prev, n) {
			return n
		}
	}
	return 0
}

func (s *Setting) samePage(prev *Setting, n int) bool {
	if m, was := s.matterAt(n), prev.matterAt(n); m != nil || was != nil {
		return m == was
	}
	a, inA := s.ref(n)
	b, inB := prev.ref(n)
	if inA != inB || a.page != b.page || (a.chain < 0) != (b.chain < 0) {
		return false
	}
	if a.chain < 0 {
		return true
	}
	c, p := s.seats.planOf(int(a.chain))
	d, q := prev.seats.planOf(int(b.chain))
	return c == d && p == q
}

// PoemAfter is the first page of the poem or section that begins after the
// page, or the page itself where none does.
func (s *Setting) PoemAfter(page int) int {
	n := s.entries.Len()
	i := sort.Search(n, func(i int) bool { return s.firstPage(i) > page })
	if i == n {
		return page
	}
	return s.firstPage(i)
}
