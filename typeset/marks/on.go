package marks

import (
	"cmp"
	"slices"

	"headland/pagemodel"
	"headland/typeset"
	"headland/typeset/corrections"
	"headland/typeset/marks/overlay"
)

// ProofRoom is the white paper round the trim of a marked proof: a B-format page
// with it fits A4.
var ProofRoom = pagemodel.MM(40)

// An Overlay is the marks of one page, as headland/typeset/pdf and raster take them.
type Overlay = overlay.Overlay

// On is what lies over a page of the book as it went out: the marks of the
// corrections that stand on it, within its trim. Corrections of the book, and
// what is nowhere printed, are noted at the head of page 1. The setter sets the
// words in the margins. On is pure, but like [typeset.Setting.Page] not for two
// goroutines that share a setter.
func On(set *typeset.Setting, page int, list *corrections.List, setter *typeset.Setter) Overlay {
	return OnProof(set, page, list, setter, 0)
}

// OnProof is On for a page with so much white paper on all four sides of its
// trim, which the margins' marks use as well.
func OnProof(set *typeset.Setting, page int, list *corrections.List, setter *typeset.Setter, room typeset.Length) Overlay {
	m := &marker{set: set, page: set.Page(page), setter: setter, design: set.Collection().Design(), room: room}
	m.entries = make(map[bool][]entry)
	for i := range list.All {
		m.mark(&list.All[i])
	}
	for _, turned := range []bool{false, true} {
		m.setMargins(m.frame(turned), m.entries[turned])
	}
	return m.over
}

// marker marks one page.
type marker struct {
	set     *typeset.Setting
	page    *typeset.Page
	setter  *typeset.Setter
	design  pagemodel.Design
	room    typeset.Length
	over    Overlay
	entries map[bool][]entry // for the margins: upright, and on their side
}

// mark draws a correction in the text, if it stands on the page, and keeps what
// is to stand in the margin. That is said once, where the words begin.
func (m *marker) mark(c *corrections.Correction) {
	where := m.find(&c.Change)
	if len(where) == 0 {
		if !m.notedHere(c) {
			return
		}
		m.note(c, m.headOf(c))
		return
	}
	p := &pencil{frame: m.frame(where[0].turned()), whose: c.Whose, em: where[0].em()}
	said := m.draw(p, c, where)
	m.over.Strokes = append(m.over.Strokes, p.strokes...)
	if where[0].begins {
		m.keep(where[0], said)
	}
}

// keep keeps an entry for the margins.
func (m *marker) keep(at stretch, e entry) {
	e.baseline, e.x = at.baseline(), at.from
	m.entries[at.turned()] = append(m.entries[at.turned()], e)
}

// note keeps an instruction for the margin. The title of a poem that is to be moved
// or taken out is circled as well, and a section's, whatever is to be done to it.
func (m *marker) note(c *corrections.Correction, at stretch) {
	if at.index >= 0 && (c.Change.Field == "poem" || c.Change.Section != 0) {
		p := &pencil{frame: m.frame(at.turned()), whose: c.Whose, em: at.em()}
		p.around([]stretch{at})
		m.over.Strokes = append(m.over.Strokes, p.strokes...)
	}
	m.keep(at, noteOf(c))
}

// inOrder sorts entries by their rows, and along them.
func inOrder(entries []entry) {
	slices.SortStableFunc(entries, func(a, b entry) int {
		return cmp.Or(cmp.Compare(a.baseline, b.baseline), cmp.Compare(a.x, b.x))
	})
}
