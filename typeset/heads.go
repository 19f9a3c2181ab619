package typeset

import (
	"headland/pagemodel"
)

// The head of a poem is its title, subtitle, dedication and epigraph. Its rows
// stand on the grid like all others: the title on the design's title row, the
// poem on its poem row, or lower where a long head pushes it by whole lines.

// headStyle is how one kind of head row is set.
type headStyle struct {
	role    Role
	style   pagemodel.Style
	size    func(Length) Length
	indent  pagemodel.Em
	display display
}

func same(size Length) Length   { return size }
func larger(size Length) Length { return size * 5 / 4 }

var (
	titleStyle      = headStyle{role: RoleTitle, size: larger, display: asTitle}
	subtitleStyle   = headStyle{role: RoleSubtitle, style: pagemodel.Italic, size: same, display: withTitle}
	dedicationStyle = headStyle{role: RoleDedication, style: pagemodel.Italic, size: same, display: withTitle}
	epigraphStyle   = headStyle{role: RoleEpigraph, style: pagemodel.Italic, size: same, indent: 2 * pagemodel.OneEm}
	headingStyle    = headStyle{role: RoleHeading, style: pagemodel.SmallCaps, size: same, display: bySense}
	placeStyle      = headStyle{role: RolePlace, style: pagemodel.Italic, size: same, indent: 2 * pagemodel.OneEm}
	sectionStyle    = headStyle{role: RoleSection, style: pagemodel.SmallCaps, size: larger, display: asTitle}
)

// setHead adds the head's units, each kept with what follows.
func (b *blocks) setHead(p *pagemodel.Poem) {
	h := p.Head()
	b.addHead(titleOf(b.design), 0, h.Title)
	b.addHead(subtitleStyle, 0, h.Subtitle)
	b.addHead(dedicationStyle, 1, h.Dedication)
	b.addHead(epigraphStyle, 1, h.Epigraph...)
	b.head = len(b.units)
	for i := range b.units {
		b.units[i].head = true
	}
}

// addHead adds lines of a head, gap blank rows below the last, and more between
// rows of type that is too large for the leading.
func (b *blocks) addHead(s headStyle, gap int, lines ...string) {
	for i, text := range lines {
		if text == "" {
			continue
		}
		if i > 0 {
			gap = 0
		}
		for _, row := range b.words(s, text) {
			u := unit{rows: []Row{row}, group: -1, of: 1, keep: true}
			if n := len(b.units); n > 0 {
				u.before = max(gap, b.drop(sizeOfRow(&b.units[n-1].rows[0]), sizeOfRow(&row))-1)
			}
			b.units = append(b.units, u)
			gap = 0
		}
	}
}

// sizeOfRow is the size of a row's type; 0 where it holds none.
func sizeOfRow(r *Row) Length {
	if len(r.Runs) == 0 {
		return 0
	}
	return r.Runs[0].Size
}

// setHeading adds the number or title of a part, kept with its first lines.
func (b *blocks) setHeading(heading string) {
	if heading == "" {
		return
	}
	if heading == "*" {
		heading = "⁂"
		if !b.has("⁂") {
			heading = "*"
		}
	}
	gap := b.design.StanzaGap + 1
	if len(b.units) == b.head {
		gap = 0
	}
	for i, row := range b.words(headingStyle, heading) {
		u := unit{rows: []Row{row}, group: -1, of: 1, keep: true}
		if i == 0 && len(b.units) > 0 {
			u.before = gap
		}
		b.units = append(b.units, u)
	}
}

// has says that the face can set the text.
func (b *blocks) has(text string) bool {
	for _, g := range b.shaper.shape(b.faces.styles[0], plainCase, text).glyphs {
		if g.id == 0 {
			return false
		}
	}
	return true
}

// setPlace adds the closing place or date, kept with the line above it.
func (b *blocks) setPlace(place string) {
	if place == "" {
		return
	}
	if n := len(b.units); n > b.head {
		b.units[n-1].keep = true
	}
	for i, row := range b.words(placeStyle, place) {
		u := unit{rows: []Row{row}, group: -1, of: 1}
		if i == 0 && len(b.units) > 0 {
			u.before = 1
		}
		b.units = append(b.units, u)
	}
}
