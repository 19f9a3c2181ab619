package typeset

import (
	"crypto/sha256"
	"fmt"
	"reflect"
	"slices"

	"headland/pagemodel"
)

// engineVersion goes up whenever the same words would be set otherwise, so
// that nothing set by an older engine is taken for this one's.
const engineVersion = 2

// fitKey is the part of a design that the setting of a poem depends on, with
// the faces and the engine.
type fitKey struct {
	measure, size, leading, runOut  Length
	rows, titleRow, poemRow, gap    int
	turnovers                       pagemodel.TurnoverStyle
	hang, titleCentred, sectionOpen bool
	tighten                         int
	edge                            pagemodel.Edge
	titles                          pagemodel.TitleStyle
	titleSize                       Length
	prose                           pagemodel.ProseStyle
	hidden                          pagemodel.HiddenBreaks
	depth, inner                    Length // the measure of poems that lie on their side or across the spread
	language                        string // of prose that is hyphenated
	faces                           [4][sha256.Size]byte
	engine                          int
}

// poemSetting is one poem, set: its units, not yet cut into pages. It is keyed
// by content and never changes. A section's page is one too, with nothing but
// its divider.
type poemSetting struct {
	key        [sha256.Size]byte
	units      []unit
	head       int // how many units make the head
	rows       int // of the grid on its pages
	measure    Length
	lie        pagemodel.Lie
	edge       pagemodel.Edge
	stanzaless bool // declared so
	showsForm  bool // its stanzas are so alike that a page end between two can be seen
	steps      []step
	solo       *chain // the poem paged by itself
	turned     []overlong
	faults     []unitFault
	unsettled  int
	divider    [][]Row
}

// Setting is a whole book, set. It never changes once made.
type Setting struct {
	collection *pagemodel.Collection
	design     pagemodel.Design
	key        fitKey
	faces      typeCase
	entries    pagemodel.Series[*poemSetting] // by place in the order: a poem, or a section's page
	seats      *seats                         // shared while nothing moves
	matter     *matterSetting
	unsettled  int
	setter     *Setter
}

// Setter sets collections. It owns the cache of shaped runs and must not be
// used on two goroutines at once; the settings that it gives may be read
// freely, but for their pages' folios, which are shaped when looked at.
type Setter struct {
	source FaceSource
	comp   compositor
	trials trials // of the setting last asked for remedies

	keepMatter *matterSetting // to be taken for whatever is set, unless nil
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
	set.key = fitKeyOf(c, &set.faces)
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
	set.seats = set.seatAll(prev)
	set.setMatter(prev, true)
	return set
}

// setOn sets a book from a setting of as many entries: what is the same value
// in the same place is taken over at the price of a comparison, and so are the
// page ends that no change has reached.
func (s *Setter) setOn(prev, set *Setting) {
	set.entries, set.unsettled = prev.entries, prev.unsettled
	reseat, renamed := false, false
	changed := map[int]*chain{}
	now, before := set.collection.Entries(), prev.collection.Entries()
	for i := range now.Changed(before) {
		was, p := prev.entries.At(i), s.poem(set, prev, now.At(i))
		set.entries = set.entries.With(i, p)
		set.unsettled += p.unsettled - was.unsettled
		reseat = reseat || !sameOpening(now.At(i), before.At(i))
		renamed = renamed || !sameMatter(now.At(i), before.At(i), set.collection.Matter())
		changed[int(prev.seats.chainOf[i])] = nil
	}
	if reseat {
		set.seats = set.seatAll(prev)
	} else {
		set.reseat(prev, changed)
	}
	set.setMatter(prev, renamed)
}

// sameOpening says that two entries may open on the same pages.
func sameOpening(a, b pagemodel.Entry) bool {
	if a.Poem == nil || b.Poem == nil {
		return a.Section != nil && b.Section != nil
	}
	g, h := a.Poem.Head(), b.Poem.Head()
	return a.Poem.ID() == b.Poem.ID() && g.Start == h.Start && g.Blank == h.Blank && g.Lie == h.Lie
}

// poem is an entry's setting: what the book before had for the same content,
// or set afresh.
func (s *Setter) poem(set, prev *Setting, source pagemodel.Entry) *poemSetting {
	if source.Poem != nil {
		if found := prev.known(source.Poem); found != nil {
			return found
		}
	}
	b := set.blocks()
	if source.Section != nil {
		return b.section(source.Section)
	}
	b.former = prev.former(source.Poem)
	return b.poemSetting(source.Poem)
}

// blocks begins to set one poem or piece of the book.
func (s *Setting) blocks() blocks {
	return blocks{
		fitter:   fitter{compositor: &s.setter.comp, design: &s.design, measure: s.design.Measure()},
		language: s.collection.About().Language,
	}
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

func fitKeyOf(c *pagemodel.Collection, faces *typeCase) fitKey {
	d := c.Design()
	return fitKey{
		measure: d.Measure(), size: d.Size, leading: d.Leading, runOut: d.RunOut,
		rows: d.Rows(), titleRow: d.TitleRow, poemRow: d.PoemRow, gap: d.StanzaGap,
		turnovers: d.Turnovers, hang: d.HangQuotes, titleCentred: d.TitleCentred, sectionOpen: d.SectionOpen,
		tighten: d.Tighten, edge: d.Edge, titles: d.Titles, titleSize: d.TitleSize, prose: d.Prose, hidden: d.Hidden,
		depth: d.Depth(), inner: d.Margins.Inner, language: c.About().Language, faces: faces.key(), engine: engineVersion,
	}
}

func (b *blocks) poemSetting(p *pagemodel.Poem) *poemSetting {
	b.setPoem(p)
	h := p.Head()
	s := &poemSetting{
		key: p.Key(), head: b.head, rows: rowsOf(b.design, h), lie: h.Lie, edge: edgeOf(b.design, h),
		measure: measureOf(b.design, h.Lie), stanzaless: h.Form == pagemodel.Stanzaless,
		showsForm: showsForm(p), turned: b.turned,
	}
	s.units = unitsThatFit(b.units, s.rows, s.rows-s.sink(b.design)+1)
	s.steps = s.stepsOf(b.design, h.Form)
	for i := range s.turned {
		if s.turned[i].state == pagemodel.Unsettled {
			s.unsettled++
		}
	}
	s.findFaults(b.faults)
	s.solo = soloChain(s, b.design)
	return s
}

// rowsOf is how many rows of the grid a poem's pages have. A poem on its side
// has the measure for its depth.
func rowsOf(d *pagemodel.Design, h pagemodel.PoemHead) int {
	rows := d.Rows()
	if h.Lie == pagemodel.Turned {
		rows = int((d.Measure()-d.Size)/d.Leading) + 1
	}
	return max(2, rows+h.Run)
}

// sink is the row of the grid on which the poem's first line stands, where
// nothing of its head pushes it lower. On its side a poem has fewer rows, and
// sinks to their middle at most.
func (s *poemSetting) sink(d *pagemodel.Design) int {
	if s.lie == pagemodel.Turned {
		return min(d.PoemRow, s.rows/2+1)
	}
	return d.PoemRow
}

// titleRow is the row of the grid on which the poem's title stands.
func (s *poemSetting) titleRow(d *pagemodel.Design) int {
	if s.lie == pagemodel.Turned {
		return min(d.TitleRow, s.rows/3+1)
	}
	return d.TitleRow
}

// unitsThatFit parts units that are deeper than a page, for which nothing else
// can be done. The first unit, where it is no head, has less room: the sink
// takes some.
func unitsThatFit(units []unit, rows, first int) []unit {
	if !slices.ContainsFunc(units, func(u unit) bool { return len(u.rows) > first }) {
		return units
	}
	var fit []unit
	for i, u := range units {
		room := rows
		if i == 0 {
			room = first
		}
		for len(u.rows) > room {
			top := u
			top.rows, top.keep, top.tied = u.rows[:room], false, false
			fit = append(fit, top)
			u.rows, u.before, u.above, u.goesOn, room = u.rows[room:], 0, 0, true, rows
		}
		fit = append(fit, u)
	}
	return fit
}

// section sets a section's page: its title a third of the way down, its
// epigraph below.
func (b *blocks) section(s *pagemodel.Section) *poemSetting {
	b.addHead(sectionStyle, 0, s.Title)
	b.addHead(epigraphStyle, 1, s.Epigraph...)
	b.units = unitsThatFit(b.units, b.design.Rows(), b.design.Rows())
	p := &poemSetting{rows: b.design.Rows(), divider: [][]Row{nil}}
	grid := max(1, b.design.Rows()/3) - 1
	for i := range b.units {
		u := &b.units[i]
		if grid += u.before; grid+len(u.rows) > p.rows {
			p.divider, grid = append(p.divider, nil), 0
		}
		last := len(p.divider) - 1
		for _, row := range u.rows {
			grid++
			row.Grid = grid
			p.divider[last] = append(p.divider[last], row)
		}
	}
	p.solo = dividerChain(p)
	return p
}

// setMatter sets the prelims and the end matter, or takes over prev's where
// nothing that they name has changed.
func (s *Setting) setMatter(prev *Setting, renamed bool) {
	c := s.collection
	if s.matter = s.setter.keepMatter; s.matter != nil {
		return
	}
	if prev != nil && !renamed && reflect.DeepEqual(prev.collection.Matter(), c.Matter()) && reflect.DeepEqual(prev.collection.About(), c.About()) {
		s.matter = prev.matter
		return
	}
	b := s.blocks()
	s.matter = b.setMatter(c)
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
