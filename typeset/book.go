package typeset

import (
	"sort"
	"strconv"

	"headland/assets"
	"headland/pagemodel"
)

// standIn is the family that stands in, under a fault, for one that is absent.
const standIn = assets.EBGaramond

// Collection is what was set.
func (s *Setting) Collection() *pagemodel.Collection { return s.collection }

// Extent is how many pages the book has, blanks counted.
func (s *Setting) Extent() int { return len(s.pages) }

// FaceHere says whether the design's own face was there to set with. Pages set
// with another must not leave the house.
func (s *Setting) FaceHere() bool { return s.faces.family }

// Page is page n, from 1, made now: its side, its margins and its folio are put
// on what the poem's setting holds. A page outside the book is blank.
func (s *Setting) Page(n int) *Page {
	d := &s.design
	p := &Page{Number: n, Side: pagemodel.SideOf(n), Trim: d.Trim}
	p.Text = Rect{d.Margins.Left(p.Side), d.Margins.Head, d.Measure(), d.Depth()}
	ref, ok := s.ref(n)
	if !ok || ref.entry < 0 {
		return p
	}
	rows := s.entries.At(int(ref.entry)).pages[ref.page]
	p.Rows = make([]Row, len(rows), len(rows)+1)
	for i := range rows {
		p.Rows[i] = rows[i]
		p.Rows[i].X += p.Text.X
		p.Rows[i].Baseline = d.Baseline(rows[i].Grid)
	}
	if s.source(ref.entry).Poem != nil {
		p.Folio = strconv.Itoa(n)
		p.Rows = append(p.Rows, s.folio(p))
	}
	return p
}

func (s *Setting) ref(n int) (pageRef, bool) {
	if n < 1 || n > len(s.pages) {
		return pageRef{entry: -1}, false
	}
	return s.pages[n-1], true
}

// PageOfPoem is the poem's first page, or false.
func (s *Setting) PageOfPoem(id pagemodel.PoemID) (int, bool) {
	if i, ok := s.collection.IndexOf(id); ok {
		return s.firsts[i], true
	}
	return 0, false
}

// source is the entry of the collection that was set at i.
func (s *Setting) source(i int32) pagemodel.Entry { return s.collection.Entries().At(int(i)) }

// PageOfLine is the page of the line's first row, or false.
func (s *Setting) PageOfLine(ref pagemodel.LineRef) (int, bool) {
	i, ok := s.collection.IndexOf(ref.Poem)
	if !ok {
		return 0, false
	}
	page, _, ok := s.entries.At(i).rowOf(ref.Line)
	return s.firsts[i] + page, ok
}

// rowOf is the page, from 0, and the number of the first row of a line.
func (s *poemSetting) rowOf(line pagemodel.LineID) (page, row int, ok bool) {
	for page, rows := range s.pages {
		for i := range rows {
			if rows[i].Line == line {
				return page, rows[i].Number, true
			}
		}
	}
	return 0, 0, false
}

// PoemOn is the poem that stands on the page, or false.
func (s *Setting) PoemOn(page int) (pagemodel.PoemID, bool) {
	ref, ok := s.ref(page)
	if !ok || ref.entry < 0 {
		return 0, false
	}
	if p := s.source(ref.entry).Poem; p != nil {
		return p.ID(), true
	}
	return 0, false
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
			page, row, _ := s.entries.At(i).rowOf(t.line)
			all = append(all, Overlong{
				Poem: id, Number: number, Stanza: t.stanza, Line: t.number,
				Ref:  pagemodel.LineRef{Poem: id, Line: t.line},
				Page: s.firsts[i] + page, Row: row, Text: t.text, Parts: t.parts, Overrun: t.overrun, State: t.state,
			})
		}
	}
	return all
}

// Faults are all faults: those of the whole book first, then page by page.
func (s *Setting) Faults() []Fault {
	var all []Fault
	if text := s.absentFace(); text != "" {
		all = append(all, Fault{Kind: AbsentFace, Text: text})
	}
	for i := range s.firsts {
		all = append(all, s.faultsOf(i)...)
	}
	return all
}

// faultsOf are the faults of the entry at i.
func (s *Setting) faultsOf(i int) []Fault {
	var all []Fault
	source := s.source(int32(i))
	for _, f := range s.entries.At(i).faults {
		fault := Fault{Kind: f.kind, Page: s.firsts[i] + f.page, Row: f.row, Text: f.words()}
		if source.Poem != nil {
			fault.Poem = source.Poem.ID()
		}
		if f.kind == SplitStanza && pagemodel.SideOf(fault.Page) == pagemodel.Verso {
			fault.Kind = TurnedStanza
		}
		all = append(all, fault)
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
	all := make([]ContentsEntry, 0, len(s.firsts))
	for i, source := range s.collection.Order() {
		if sec := source.Section; sec != nil {
			all = append(all, ContentsEntry{Title: sec.Title, Page: s.firsts[i], Section: true})
			continue
		}
		p := source.Poem
		all = append(all, ContentsEntry{Title: p.Name(), Page: s.firsts[i], Poem: p.ID()})
	}
	return all
}

// UnsettledOn is how many unsettled lines begin on the page.
func (s *Setting) UnsettledOn(page int) int {
	ref, ok := s.ref(page)
	if !ok || ref.entry < 0 {
		return 0
	}
	p := s.entries.At(int(ref.entry))
	if p.unsettled == 0 {
		return 0
	}
	n := 0
	for _, t := range p.turned {
		if at, _, ok := p.rowOf(t.line); ok && at == int(ref.page) && t.state == pagemodel.Unsettled {
			n++
		}
	}
	return n
}

// FaultsOn is how many faults the page has.
func (s *Setting) FaultsOn(page int) int {
	ref, ok := s.ref(page)
	if !ok || ref.entry < 0 {
		return 0
	}
	n := 0
	for _, f := range s.entries.At(int(ref.entry)).faults {
		if f.page == int(ref.page) {
			n++
		}
	}
	return n
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
	a, inA := s.ref(n)
	b, inB := prev.ref(n)
	if inA != inB || a.page != b.page || (a.entry < 0) != (b.entry < 0) {
		return false
	}
	return a.entry < 0 || s.entries.At(int(a.entry)) == prev.entries.At(int(b.entry))
}

// PoemAfter is the first page of the poem or section that begins after the
// page, or the page itself where none does.
func (s *Setting) PoemAfter(page int) int {
	i := sort.SearchInts(s.firsts, page+1)
	if i == len(s.firsts) {
		return page
	}
	return s.firsts[i]
}
