package typeset

import (
	"headland/pagemodel"
)

// The head of a poem is its title, subtitle, dedication and epigraph. Its rows
// stand on the grid like all others: the title on the design's title row, the
// poem on its poem row, or lower where a long head pushes it by whole lines.

// headStyle is how one kind of head row is set.
type headStyle struct {
	role   Role
	style  pagemodel.Style
	size   func(Length) Length
	indent pagemodel.Em
}

func same(size Length) Length   { return size }
func larger(size Length) Length { return size * 5 / 4 }

var (
	titleStyle      = headStyle{role: RoleTitle, size: larger}
	subtitleStyle   = headStyle{role: RoleSubtitle, style: pagemodel.Italic, size: same}
	dedicationStyle = headStyle{role: RoleDedication, style: pagemodel.Italic, size: same}
	epigraphStyle   = headStyle{role: RoleEpigraph, style: pagemodel.Italic, size: same, indent: 2 * pagemodel.OneEm}
	headingStyle    = headStyle{role: RoleHeading, style: pagemodel.SmallCaps, size: same}
	placeStyle      = headStyle{role: RolePlace, style: pagemodel.Italic, size: same, indent: 2 * pagemodel.OneEm}
	sectionStyle    = headStyle{role: RoleSection, style: pagemodel.SmallCaps, size: larger}
)

// setHead adds the head's units, each kept with what follows.
func (b *blocks) setHead(p *pagemodel.Poem) {
	h := p.Head()
	b.addHead(titleStyle, 0, h.Title)
	b.addHead(subtitleStyle, 0, h.Subtitle)
	b.addHead(dedicationStyle, 1, h.Dedication)
	b.addHead(epigraphStyle, 1, h.Epigraph...)
	b.head = len(b.units)
	for i := range b.units {
		b.units[i].head = true
	}
}

// addHead adds lines of a head, gap blank rows below the last.
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
			if len(b.units) > 0 {
				u.before = gap
			}
			b.units = append(b.units, u)
			gap = 0
		}
	}
}

// words sets words that are no line of the poet's, over as many rows as they
// need.
func (b *blocks) words(s headStyle, text string) []Row {
	line := pagemodel.NewLine(0, text)
	if s.style != 0 {
		line = line.WithSpans([]pagemodel.Span{{Start: 0, End: len(text), Style: s.style}})
	}
	was := b.size
	b.size = s.size(b.size)
	rows := b.fillFrom(&line, s.indent.At(b.size))
	b.size = was
	for i := range rows {
		rows[i].Role, rows[i].Line = s.role, 0
	}
	b.missing(rows)
	return rows
}

func (b *blocks) fillFrom(l *pagemodel.Line, x Length) []Row {
	was := b.measure
	b.measure -= x
	rows := b.fill(l, b.compose(l, 0, len(l.Text())))
	b.measure = was
	for i := range rows {
		rows[i].X += x
	}
	return rows
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
