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

// entry is one place in the order of the book, set.
type entry struct {
	source    pagemodel.Entry
	poem      *poemSetting // or the section's page
	first     int          // its first page, from 1
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
	entries    []entry
	pages      []pageRef // page n is pages[n-1]
	unsettled  int
	setter     *Setter
}

// Setter sets collections. It owns the cache of shaped runs and must not be
// used on two goroutines at once; the settings that it gives may be read
// freely, but for their pages' folios, which are shaped when looked at.
type Setter struct {
	source FaceSource
	shaper *shaper
}

// NewSetter makes a setter that finds its faces in source.
func NewSetter(source FaceSource) *Setter {
	return &Setter{source: source, shaper: newShaper()}
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
	set.entries = make([]entry, len(c.Order()))
	reuse := reuser{prev: prev}
	for i, source := range c.Order() {
		set.entries[i] = reuse.entry(i, source)
		if set.entries[i].poem == nil {
			set.entries[i] = s.entry(set, source)
		}
		set.unsettled += set.entries[i].unsettled
	}
	set.paginate()
	return set
}

func fitKeyOf(d *pagemodel.Design, faces *typeCase) fitKey {
	return fitKey{
		measure: d.Measure(), size: d.Size, leading: d.Leading, runOut: d.RunOut,
		rows: d.Rows(), titleRow: d.TitleRow, poemRow: d.PoemRow, gap: d.StanzaGap,
		turnovers: d.Turnovers, hang: d.HangQuotes, faces: faces.key(), engine: engineVersion,
	}
}

// reuser finds what the setting before has already set. It looks at the same
// place first; only when something is missing there does it make an index.
type reuser struct {
	prev  *Setting
	byKey map[[sha256.Size]byte]*entry
}

func (r *reuser) entry(i int, source pagemodel.Entry) entry {
	if r.prev == nil {
		return entry{}
	}
	if i < len(r.prev.entries) && r.prev.entries[i].source == source {
		return r.prev.entries[i] // the same value: equal content
	}
	if source.Poem == nil {
		return entry{}
	}
	if i < len(r.prev.entries) && r.prev.entries[i].sameContent(source) {
		return entry{source: source, poem: r.prev.entries[i].poem, unsettled: r.prev.entries[i].unsettled}
	}
	if len(r.prev.entries) == len(r.prev.collection.Order()) && i < len(r.prev.entries) && samePlace(&r.prev.entries[i], source) {
		return entry{} // the poem that was here, with other words
	}
	if found := r.index()[source.Poem.Key()]; found != nil {
		return entry{source: source, poem: found.poem, unsettled: found.unsettled}
	}
	return entry{}
}

func samePlace(e *entry, source pagemodel.Entry) bool {
	return e.source.Poem != nil && source.Poem != nil && e.source.Poem.ID() == source.Poem.ID()
}

func (e *entry) sameContent(source pagemodel.Entry) bool {
	return e.source.Poem != nil && e.source.Poem.Key() == source.Poem.Key()
}

func (r *reuser) index() map[[sha256.Size]byte]*entry {
	if r.byKey == nil {
		r.byKey = make(map[[sha256.Size]byte]*entry, len(r.prev.entries))
		for i := range r.prev.entries {
			if e := &r.prev.entries[i]; e.source.Poem != nil {
				r.byKey[e.source.Poem.Key()] = e
			}
		}
	}
	return r.byKey
}

// entry sets a poem or a section's page afresh.
func (s *Setter) entry(set *Setting, source pagemodel.Entry) entry {
	b := blocks{fitter: fitter{
		compositor: &compositor{shaper: s.shaper, faces: &set.faces, size: set.design.Size},
		design:     &set.design, measure: set.design.Measure(),
	}}
	e := entry{source: source}
	if source.Section != nil {
		e.poem = b.section(source.Section)
	} else {
		e.poem = b.poemSetting(source.Poem)
	}
	e.unsettled = e.poem.unsettled
	return e
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
	s.pages = make([]pageRef, 0, 2*len(s.entries))
	for i := range s.entries {
		e := &s.entries[i]
		for !s.mayOpen(e, len(s.pages)+1) {
			s.pages = append(s.pages, pageRef{entry: -1})
		}
		e.first = len(s.pages) + 1
		for page := range e.poem.pages {
			s.pages = append(s.pages, pageRef{int32(i), int32(page)})
		}
		if e.source.Section != nil && len(s.pages)%2 == 1 && i+1 < len(s.entries) {
			s.pages = append(s.pages, pageRef{entry: -1})
		}
	}
}

func (s *Setting) mayOpen(e *entry, page int) bool {
	if e.source.Section != nil {
		return pagemodel.SideOf(page) == pagemodel.Recto
	}
	switch e.source.Poem.Head().Start {
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
	sh := s.shaper.shape(face, caps, text)
	return sh.run(face, w.Size, text, 0, nil)
}

// absentFace says in words that the design's face is not here, or "".
func (s *Setting) absentFace() string {
	if s.faces.family {
		return ""
	}
	return fmt.Sprintf("the face %q is not here, so %s stands in for it: add the face to the file, or choose another in the design", s.design.Face, standIn)
}
