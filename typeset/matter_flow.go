package typeset

import (
	"headland/pagemodel"
)

// matterFlow lays the rows of one piece of matter one below another, over as
// many pages as they need.
type matterFlow struct {
	*blocks
	kind    pagemodel.MatterKind
	heading string
	pages   []matterPage
	grid    int    // the last row of the grid that is taken; on no page yet, the sink
	column  Length // the width of the column of folios, once it is known
}

// chunk is rows that stand together.
type chunk struct {
	gap   int // blank rows above it, unless it begins a page
	rows  []matterRow
	below int // how many more rows it wants below it on its page
}

// add puts a chunk, whose rows are of one size, below what is there: on the next
// page where it does not fit, and over several where it fits none.
func (f *matterFlow) add(c chunk) {
	if len(c.rows) == 0 {
		return
	}
	size := sizeOfRow(&c.rows[0].Row)
	gap, pitch := f.gapAbove(c.gap, size), f.drop(size, size)
	full := f.grid+gap+1+(len(c.rows)-1)*pitch+c.below > f.design.Rows()
	if len(f.pages) == 0 || full && len(f.page().rows) > 0 {
		f.newPage()
	}
	if len(f.page().rows) == 0 {
		gap = 0
	}
	f.grid += gap + 1
	for i, row := range c.rows {
		if i > 0 {
			f.grid += pitch
		}
		if f.grid > f.design.Rows() && len(f.page().rows) > 0 {
			f.newPage()
			f.grid = 1
		}
		row.Grid = f.grid
		f.page().rows = append(f.page().rows, row)
	}
}

// gapAbove is a gap of at least so many blank rows that keeps type of a size
// clear of the row above.
func (f *matterFlow) gapAbove(gap int, size Length) int {
	if len(f.pages) == 0 || len(f.page().rows) == 0 {
		return gap
	}
	above := &f.page().rows[len(f.page().rows)-1].Row
	return max(gap, above.Grid+f.drop(sizeOfRow(above), size)-f.grid-1)
}

func (f *matterFlow) page() *matterPage { return &f.pages[len(f.pages)-1] }

func (f *matterFlow) newPage() {
	if len(f.pages) > 0 {
		f.grid = 0
	}
	f.pages = append(f.pages, matterPage{kind: f.kind, heading: f.heading, opens: len(f.pages) == 0, folio: printsFolio(f.kind)})
}

// sink has the next row stand on a row of the grid, or lower where that is
// taken: then with a blank row above it.
func (f *matterFlow) sink(row int) {
	if taken := len(f.pages) > 0; taken {
		f.grid++
	}
	f.grid = max(f.grid, row-1)
}

// lower moves all that stands on a single page down to its foot.
func (f *matterFlow) lower() {
	if len(f.pages) != 1 {
		return
	}
	for i := range f.page().rows {
		f.page().rows[i].Grid += max(0, f.design.Rows()-f.grid)
	}
}

// line adds words that stand by themselves, gap blank rows below what is there.
func (f *matterFlow) line(s headStyle, gap int, text string) {
	f.add(chunk{gap: gap, rows: f.set(s, text)})
}

// set sets words as rows of the measure.
func (f *matterFlow) set(s headStyle, text string) []matterRow {
	words := f.words(s, text)
	rows := make([]matterRow, len(words))
	for i := range words {
		rows[i].Row = words[i]
	}
	return rows
}

// each goes over the lines of a text that hold something, with how many empty
// ones stand above each; above the first are none.
func each(lines []string, yield func(white int, line string)) {
	white, begun := 0, false
	for _, line := range lines {
		if trimEnd(line, 0, len(line)) == 0 {
			white++
			continue
		}
		if !begun {
			white = 0
		}
		yield(white, line)
		white, begun = 0, true
	}
}

// paragraphs adds a text line by line, each filled over as many rows as it
// needs, gap blank rows below what is there.
func (f *matterFlow) paragraphs(s headStyle, gap int, lines []string) {
	each(lines, func(white int, line string) {
		f.paragraph(s, gap+white, line)
		gap = 0
	})
}

// paragraph adds a paragraph of which no single row stands at the foot of a
// page or the head of the next.
func (f *matterFlow) paragraph(s headStyle, gap int, text string) {
	rows := f.set(s, text)
	if len(rows) < 2*leastPiece {
		f.add(chunk{gap: gap, rows: rows})
		return
	}
	end := len(rows) - leastPiece
	f.add(chunk{gap: gap, rows: rows[:leastPiece]})
	for i := leastPiece; i < end; i++ {
		f.add(chunk{rows: rows[i : i+1]})
	}
	f.add(chunk{rows: rows[end:]})
}
