package document

import "headland/pagemodel"

// Style is a paragraph's named style: what it is, not how it looks.
type Style int

// The styles of paragraphs.
const (
	Body       Style = iota
	Title            // of the whole document
	Author           // below it
	Section          // a section's title: the first level of the outline
	Poem             // a poem's title: the second
	Heading          // of a part of a poem: the third
	Subtitle         // of a poem
	Dedication       // of a poem
	Epigraph
	Verse // a stanza
	Prose
	Place // closing place or date
	Note
	Label // words about the text that are no part of it
	CellText
)

// The page and the type of a document. The sheet is A4 (ISO 216) and the type 12
// on 15 points, as manuscripts are sent (common practice, no source).
const (
	sheetWidth  = pagemodel.Length(210 * 72 * 640 / 254)
	sheetHeight = pagemodel.Length(297 * 72 * 640 / 254)
	sheetMargin = 72 * pagemodel.Point
	textWidth   = sheetWidth - 2*sheetMargin
	typeSize    = 12 * pagemodel.Point
	lineHeight  = 15 * pagemodel.Point
	textFace    = "Times New Roman"
	usualTongue = "en-GB" // of a book that says no language
)

// measure is the width of the text in thousandths of an em.
const measure = pagemodel.Em(int64(textWidth) * int64(pagemodel.OneEm) / int64(typeSize))

// look is how a style looks. Lengths left out are 0, and the size the text's.
type look struct {
	name          string // as word processors know it, or ours
	outline       int    // level from 1; 0 for none
	size          pagemodel.Length
	bold          bool
	rng           pagemodel.Range
	before, after pagemodel.Length
	left          pagemodel.Length
	page          bool // begins a page
	next          bool // keeps to the paragraph after it
	whole         bool // keeps together
}

// looks are the styles in their order. Only the first five and Author are named as
// word processors name theirs: a subtitle of that name at a document's head would
// be taken for the whole document's.
var looks = [...]look{
	Body:       {name: "Text body", after: lineHeight / 2},
	Title:      {name: "Title", size: 20 * pagemodel.Point, rng: pagemodel.RangeCentre, before: 4 * lineHeight, after: lineHeight, next: true},
	Author:     {name: "Author", size: 14 * pagemodel.Point, rng: pagemodel.RangeCentre, after: 2 * lineHeight},
	Section:    {name: "heading 1", outline: 1, size: 18 * pagemodel.Point, bold: true, after: lineHeight, page: true, next: true},
	Poem:       {name: "heading 2", outline: 2, size: 14 * pagemodel.Point, bold: true, after: lineHeight, page: true, next: true},
	Heading:    {name: "heading 3", outline: 3, bold: true, before: lineHeight / 2, after: lineHeight, next: true},
	Subtitle:   {name: "Poem subtitle", after: lineHeight, next: true},
	Dedication: {name: "Poem dedication", after: lineHeight, next: true},
	Epigraph:   {name: "Epigraph", left: 3 * typeSize, after: lineHeight, next: true, whole: true},
	Verse:      {name: "Verse", after: lineHeight, whole: true},
	Prose:      {name: "Prose", after: lineHeight},
	Place:      {name: "Closing place", after: lineHeight},
	Note:       {name: "Poem note", size: 10 * pagemodel.Point, after: lineHeight / 2},
	Label:      {name: "Label", size: 10 * pagemodel.Point, after: lineHeight, next: true},
	CellText:   {name: "Table text", size: 10 * pagemodel.Point, after: lineHeight / 5},
}

// sizeOf is the size of a style's type.
func (s Style) sizeOf() pagemodel.Length {
	if size := looks[s].size; size != 0 {
		return size
	}
	return typeSize
}
