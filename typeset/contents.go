package typeset

import (
	"strings"

	"headland/pagemodel"
)

// The contents and the index refer to pages. A row that does leaves a column
// free at the right end of the measure, as wide as a folio can be.

// mostFigures is how many figures a folio may have.
const mostFigures = 4

// folioColumn is the width of the column: so many of the face's widest figure.
func (f *matterFlow) folioColumn() Length {
	if f.column > 0 {
		return f.column
	}
	var widest int32
	face := f.faces.styles[0]
	for figure := '0'; figure <= '9'; figure++ {
		widest = max(widest, f.shaper.shape(face, plainCase, string(figure)).width)
	}
	f.column = face.at(f.size, mostFigures*widest)
	return f.column
}

// refer sets words that refer to a page, an em clear of the column. What turns
// over is indented by an em, and the folio stands on the last row.
func (f *matterFlow) refer(s headStyle, text string, to pageReference) []matterRow {
	measure := f.measure
	defer func() { f.measure = measure }()
	f.measure = max(f.size, measure-f.folioColumn()-f.size)
	text = oneLine(text)
	rows := f.set(s, text)
	if len(rows) > 1 {
		f.measure = max(f.size, f.measure-f.size)
		rows = f.set(s, text)
		for i := range rows[1:] {
			rows[i+1].X += f.size
		}
	}
	rows[len(rows)-1].to = to
	return rows
}

var (
	contentsStyle        = headStyle{role: RoleContents, size: same}
	contentsSectionStyle = headStyle{role: RoleContents, style: pagemodel.SmallCaps, size: same}
	contentsPartStyle    = headStyle{role: RoleContents, size: same, indent: pagemodel.OneEm}
)

// contents lists the sections and the poems, by their short titles, and the end
// matter; a poem without a title stands under its first line (The Chicago
// Manual of Style, 17th edition, 1.38 and 8.181; from memory). Words of the
// poet's stand below the heading.
func (f *matterFlow) contents(c *pagemodel.Collection, page pagemodel.MatterPage) {
	if c.Entries().Len() == 0 && wordless(page.Text) {
		return
	}
	f.head()
	f.paragraphs(matterStyle, 0, page.Text)
	gap := 0
	if !wordless(page.Text) {
		gap = 1
	}
	for i, e := range c.Order() {
		to := pageReference{entry: i + 1}
		if e.Section != nil {
			gap = min(1, i)
			f.add(chunk{gap: gap, rows: f.refer(contentsSectionStyle, e.Section.Title, to), below: 1})
		} else {
			f.add(f.poemInContents(e.Poem, to, gap))
		}
		gap = 0
		f.partsInContents(c, e.Poem, to)
	}
	f.endInContents(c)
}

func (f *matterFlow) poemInContents(p *pagemodel.Poem, to pageReference, gap int) chunk {
	rows := f.refer(contentsStyle, p.ShortName(), to)
	for i := range rows {
		rows[i].Poem = p.ID()
	}
	return chunk{gap: gap, rows: rows}
}

// partsInContents lists the parts of a poem where the matter asks for it.
func (f *matterFlow) partsInContents(c *pagemodel.Collection, p *pagemodel.Poem, to pageReference) {
	if p == nil || !c.Matter().Parts {
		return
	}
	for _, part := range headedParts(p) {
		to.line = part.line
		f.add(chunk{rows: f.refer(contentsPartStyle, part.heading, to)})
	}
}

// endInContents lists the end matter that takes pages.
func (f *matterFlow) endInContents(c *pagemodel.Collection) {
	gap := 1
	for _, page := range c.Matter().Pages {
		if page.Kind.Prelim() || len(f.blocks.setPiece(c, page)) == 0 {
			continue
		}
		rows := f.refer(contentsStyle, headingOf(page, c.About()), pageReference{piece: page.Kind})
		f.add(chunk{gap: gap, rows: rows})
		gap = 0
	}
}

// headedPart is a part that has a name of its own, and its first line.
type headedPart struct {
	heading string
	line    pagemodel.LineID
}

// headedParts are the parts of a poem that have more than a star above them.
func headedParts(p *pagemodel.Poem) []headedPart {
	var parts []headedPart
	for _, part := range p.Parts() {
		if strings.Trim(part.Heading(), "*⁂ ") == "" || len(part.Stanzas()) == 0 || len(part.Stanzas()[0].Lines()) == 0 {
			continue
		}
		parts = append(parts, headedPart{part.Heading(), part.Stanzas()[0].Lines()[0].ID()})
	}
	return parts
}
