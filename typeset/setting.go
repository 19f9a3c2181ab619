package typeset

import (
	"crypto/sha256"
	"fmt"
	"slices"

	"headland/pagemodel"
)

// engineVersion goes up whenever the same words would be set otherwise, so
// that nothing set by an older engine is taken for this one's.
const engineVersion = 1

// fitKey is the part of a design that the setting of a poem depends on, with
// the faces and the engine.
type fitKey struct {
	measure, size, leading, runOut Length
	rows, titleRow, poemRow, gap   int
	turnovers                      pagemodel.TurnoverStyle
	hang                           bool
	faces                          [4][sha256.Size]byte
	engine                         int
}

// poemSetting is one poem, set: its pages without side or folio. It is keyed by
// content and never changes.
type poemSetting struct {
	key       [sha256.Size]byte
	pages     [][]Row
	opens     []bool // whether each page begins within a stanza
	turned    []overlong
	faults    []poemFault
	unsettled int
}

// pageRef says what stands on a page: a page of an entry, or nothing.
type pageRef struct {
	entry int32 // index into entries, -1 for a blank
	page  int32
}

// Setting is a whole book, set. It never changes once made.
type Setting struct {
	collection *pagemodel.Collection
	design     pagemodel.Design
	key        fitKey
	faces      typeCase
	entries    pagemodel.Series[*poemSetting] // by place in the order: a poem, or a section's page
	firsts     []int                          // the first page of each, from 1; shared while no page moves
	pages      []pageRef                      // page n is pages[n-1]; shared likewise
	unsettled  int
	setter     *Setter
}

// Setter sets collections. It owns the cache of shaped runs and must not be
// used on two goroutines at once; the settings that it gives may be read
// freely, but for their pages' folios, which are shaped when looked at.
type Setter struct {
	source FaceSource
	comp   compositor
}

// NewSetter makes a setter that finds its faces in source.
func NewSetter(source FaceSource) *Setter {
	return &Setter{source: source, comp: compositor{shaper: newShaper()}}
}

// Set sets the whole collection. It is a pure function: prev, which may be nil,
// only saves work, and what it gives does not depend on it. What costs time is
// what changed: a poem whose key, fit and faces are as they were is taken over.
func (s *Setter) Set(prev *Setting, c *pagemodel.Collection) *Setting {
	d := c.Design()
	set := &Setting{collection: c, design: d, faces: newTypeCase(s.source, d.Face), setter: s}
	set.key = fitKeyOf(&d, &set.faces)
	if prev != nil && prev.key != set.key {
		prev = nil
	}
	s.comp.faces, s.comp.size = &set.faces, d.Size
	if prev != nil && prev.entries.Len() == c.Entries().Len() {
		s.setOn(prev, set)
		return set
	}
	entries := make([]*poemSetting, 0, c.Entries().Len())
	for _, source := range c.Order() {
		p := s.poem(set, prev, source)
		entries = append(entries, p)
		set.unsettled += p.unsettled
	}
	set.entries = pagemodel.SeriesOf(entries)
	set.paginate()
	return set
}

// setOn sets a book from a setting of as many entries: what is the same value
// in the same place is taken over at the price of a comparison, and the pages
// too where no entry takes more or fewer of them than before.
func (s *Setter) setOn(prev, set *Setting) {
	set.entries, set.unsettled = prev.entries, prev.unsettled
	moved := false
	now, before := set.collection.Entries(), prev.collection.Entries()
	for i := range now.Changed(before) {
		was, p := prev.entries.At(i), s.poem(set, prev, now.At(i))
		set.entries = set.entries.With(i, p)
		set.unsettled += p.unsettled - was.unsettled
		moved = moved || len(p.pages) != len(was.pages) || !sameOpening(now.At(i), before.At(i))
	}
	set.pages, set.firsts = prev.pages, prev.firsts
	if moved {
		set.paginate()
	}
}

// sameOpening says that two entries may open on the same pages.
func sameOpening(a, b pagemodel.Entry) bool {
	if a.Poem == nil || b.Poem == nil {
		return a.Section != nil && b.Section != nil
	}
	return a.Poem.Head().Start == b.Poem.Head().Start
}

// poem is an entry's setting: what the book before had for the same content,
// or set afresh.
func (s *Setter) poem(set, prev *Setting, source pagemodel.Entry) *poemSetting {
	if source.Poem != nil {
		if found := prev.known(source.Poem); found != nil {
			return found
		}
	}
	b := blocks{fitter: fitter{compositor: &s.comp, design: &set.design, measure: set.design.Measure()}}
	if source.Section != nil {
		return b.section(source.Section)
	}
	return b.poemSetting(source.Poem)
}

// known is what a setting holds for a poem's content, or nil. A poem's identity
// is part of its content, so there is one place to look.
func (s *Setting) known(p *pagemodel.Poem) *poemSetting {
	if s == nil {
		return nil
	}
	i, ok := s.collection.IndexOf(p.ID())
	if !ok || s.entries.At(i).key != p.Key() {
		return nil
	}
	return s.entries.At(i)
}

func fitKeyOf(d *pagemodel.Design, faces *typeCase) fitKey {
	return fitKey{
		measure: d.Measure(), size: d.Size, leading: d.Leading, runOut: d.RunOut,
		rows: d.Rows(), titleRow: d.TitleRow, poemRow: d.PoemRow, gap: d.StanzaGap,
		turnovers: d.Turnovers, hang: d.HangQuotes, faces: faces.key(), engine: engineVersion,
	}
}

func (b *blocks) poemSetting(p *pagemodel.Poem) *poemSetting {
	b.setPoem(p)
	d := b.design
	b.units = unitsThatFit(b.units, d.Rows())
	cuts := cutPages(b.units, d.Rows()-b.sunk(), d.Rows())
	s := &poemSetting{key: p.Key(), pages: place(b.units, cuts, b.top), turned: b.turned}
	s.opens = make([]bool, len(s.pages))
	for i, c := range cuts {
		s.opens[i+1] = b.units[c].at > 0
	}
	for i := range s.turned {
		if s.turned[i].state == pagemodel.Unsettled {
			s.unsettled++
		}
	}
	s.findFaults(b.faults)
	return s
}

// unitsThatFit parts units that are deeper than a page, for which nothing else
// can be done.
func unitsThatFit(units []unit, rows int) []unit {
	if !slices.ContainsFunc(units, func(u unit) bool { return len(u.rows) > rows }) {
		return units
	}
	var fit []unit
	for _, u := range units {
		for len(u.rows) > rows {
			top := u
			top.rows, top.keep = u.rows[:rows], false
			fit = append(fit, top)
			u.rows, u.before, u.at = u.rows[rows:], 0, 0
		}
		fit = append(fit, u)
	}
	return fit
}

// top is the highest row of the grid that a unit of the first page may have.
func (b *blocks) top(i int) int {
	switch {
	case i == 0 && b.head > 0:
		return b.design.TitleRow
	case i == b.head:
		return b.design.PoemRow
	}
	return 1
}

// sunk is how many rows of the first page the sink leaves empty, over the rows
// and blanks that the units themselves ask for.
func (b *blocks) sunk() int {
	grid := 0
	for i := 0; i <= b.head && i < len(b.units); i++ {
		if i > 0 {
			grid += b.units[i].before
		}
		grid = max(grid+1, b.top(i)) + len(b.units[i].rows) - 1
	}
	used := 0
	for i := 0; i <= b.head && i < len(b.units); i++ {
		used += len(b.units[i].rows)
		if i > 0 {
			used += b.units[i].before
		}
	}
	return grid - used
}

func (s *poemSetting) opensWithin(page int) bool { return s.opens[page] }

// section sets a section's page: its title a third of the way down, its
// epigraph below.
func (b *blocks) section(s *pagemodel.Section) *poemSetting {
	b.addHead(sectionStyle, 0, s.Title)
	b.addHead(epigraphStyle, 1, s.Epigraph...)
	third := max(1, b.design.Rows()/3)
	rows := place(b.units, nil, func(i int) int {
		if i == 0 {
			return third
		}
		return 1
	})
	if len(rows) == 0 {
		rows = [][]Row{nil}
	}
	return &poemSetting{pages: rows, opens: make([]bool, len(rows))}
}

// paginate gives every entry its first page. A section opens on a recto with a
// blank behind it, so its first poem opens on a recto too (common practice, as
// copy-editing handbooks give it); a poem opens where the poet says.
func (s *Setting) paginate() {
	order := s.collection.Order()
	entries := s.entries.All()
	s.pages = make([]pageRef, 0, 2*len(entries))
	s.firsts = make([]int, len(entries))
	for i, e := range entries {
		for !mayOpen(order[i], len(s.pages)+1) {
			s.pages = append(s.pages, pageRef{entry: -1})
		}
		s.firsts[i] = len(s.pages) + 1
		for page := range e.pages {
			s.pages = append(s.pages, pageRef{int32(i), int32(page)})
		}
		if order[i].Section != nil && len(s.pages)%2 == 1 && i+1 < len(entries) {
			s.pages = append(s.pages, pageRef{entry: -1})
		}
	}
}

func mayOpen(e pagemodel.Entry, page int) bool {
	if e.Section != nil {
		return pagemodel.SideOf(page) == pagemodel.Recto
	}
	switch e.Poem.Head().Start {
	case pagemodel.OnRecto:
		return pagemodel.SideOf(page) == pagemodel.Recto
	case pagemodel.OnVerso:
		return pagemodel.SideOf(page) == pagemodel.Verso
	}
	return true
}

// Words sets a label that is no part of the book: the words on the desk.
func (s *Setter) Words(text string, w WordStyle) Run {
	faces := newTypeCase(s.source, w.Family)
	style := 0
	if w.Italic {
		style |= styleItalic
	}
	if w.Bold {
		style |= styleBold
	}
	caps := plainCase
	if w.SmallCaps {
		caps = smallCaps
	}
	face := faces.styles[style]
	sh := s.comp.shaper.shape(face, caps, text)
	return sh.run(face, w.Size, text, 0, nil)
}

// absentFace says in words that the design's face is not here, or "".
func (s *Setting) absentFace() string {
	if s.faces.family {
		return ""
	}
	return fmt.Sprintf("the face %q is not here, so %s stands in for it: add the face to the file, or choose another in the design", s.design.Face, standIn)
}
