package document

import "headland/pagemodel"

// Document is a text document, ready to be written. The zero Document is empty.
type Document struct {
	Title    string
	Author   string
	Language string // BCP 47; "" is English
	Blocks   []Block
}

// Block is a paragraph or a table: the table where it is not nil.
type Block struct {
	Paragraph
	Table *Table
}

// Paragraph is runs one after the other.
type Paragraph struct {
	Style Style
	Range pagemodel.Range // the edge that its lines are set to
	Stops []Stop          // ordered
	Runs  []Run
}

// Stop is a tab stop.
type Stop struct {
	Kind pagemodel.Range // what follows the tab begins there, has its middle there or ends there
	At   pagemodel.Em    // from the left edge of the text
}

// Mark is what a run stands for.
type Mark int

// The marks.
const (
	Words Mark = iota
	LineEnd
	Tab   // to the next tab stop
	White // as wide as the run says
)

// Run is words that look alike, or a mark between words.
type Run struct {
	Mark  Mark
	Text  string          // of words
	Look  pagemodel.Style // of words
	Width pagemodel.Em    // of white, more than nothing
}

// Table is rows of as many cells each, the first of them its heading.
type Table struct {
	Widths []int // of the columns, in hundredths of the text's width
	Rows   [][]Cell
}

// Cell is the paragraphs of a table's cell, at least one.
type Cell []Paragraph

// Plain is a paragraph of plain words.
func Plain(style Style, text string) Paragraph {
	return Paragraph{Style: style, Runs: []Run{{Text: text}}}
}

// Add puts paragraphs at the end.
func (d *Document) Add(paragraphs ...Paragraph) {
	for _, p := range paragraphs {
		d.Blocks = append(d.Blocks, Block{Paragraph: p})
	}
}

// paragraphs goes over all paragraphs, those in tables too.
func (d *Document) paragraphs(yield func(*Paragraph) bool) {
	for i := range d.Blocks {
		b := &d.Blocks[i]
		if b.Table == nil {
			if !yield(&b.Paragraph) {
				return
			}
			continue
		}
		for _, row := range b.Table.Rows {
			for _, cell := range row {
				for j := range cell {
					if !yield(&cell[j]) {
						return
					}
				}
			}
		}
	}
}
