package pdf

import (
	"fmt"

	"headland/pagemodel"
	"headland/typeset"
)

// Crop marks: hairlines of 0.25 pt, 5 mm long, which stay 3 mm from the trim
// or, where that is more, outside the bleed (common prepress practice; lines
// under 0.2 pt are refused by PDF/X checks).
var (
	markWidth  = pagemodel.Pt(0.25)
	markLength = pagemodel.MM(5)
	markGap    = pagemodel.MM(3)
)

// A placed is a page on a sheet.
type placed struct {
	page int            // index in the document's pages
	left typeset.Length // from the trim's left edge
}

// A side is one sheet of the file: the trim of a page, or of a spread.
type side struct {
	trim   pagemodel.Trim
	edge   typeset.Length // paper round the trim, on all four sides
	bleed  typeset.Length
	placed []placed
}

// sides lays the pages on sheets: one each, or verso and recto together. A
// page without a page facing it keeps its own half of the spread.
func sides(d *Document, trim pagemodel.Trim) []side {
	var all []side
	for i := 0; i < len(d.Pages); i = all[len(all)-1].next() {
		s := side{trim: trim, edge: d.Sheet.edge(), bleed: d.Sheet.Bleed, placed: []placed{{page: i}}}
		if d.Sheet.Spreads {
			s.trim.Width *= 2
			s.placed = halves(d.Pages, i, trim.Width)
		}
		all = append(all, s)
	}
	return all
}

// halves places page i, and the recto that faces it if it is a verso; each is
// width wide.
func halves(pages []*typeset.Page, i int, width typeset.Length) []placed {
	if pages[i].Side == pagemodel.Recto {
		return []placed{{page: i, left: width}}
	}
	if i+1 < len(pages) && pages[i+1].Side == pagemodel.Recto {
		return []placed{{page: i}, {page: i + 1, left: width}}
	}
	return []placed{{page: i}}
}

// next is the page after those on the sheet.
func (s side) next() int { return s.placed[len(s.placed)-1].page + 1 }

// edge is how much paper there is round the trim.
func (s Sheet) edge() typeset.Length {
	if s.Marks {
		return max(s.Bleed, markGap) + markLength
	}
	return s.Bleed
}

// boxes are the sheet's boxes (ISO 14.11.2): all the paper, what the ink of
// the page may cover, and the size after cutting.
func (s side) boxes() string {
	right, head := s.edge+s.trim.Width, s.edge+s.trim.Height
	grown := func(by typeset.Length) string {
		return box(s.edge-by, s.edge-by, right+by, head+by)
	}
	return fmt.Sprintf("/MediaBox %s /BleedBox %s /TrimBox %s", grown(s.edge), grown(s.bleed), grown(0))
}

// cropMarks are two hairlines at each corner, in the coordinates of a page on
// the sheet.
func (s side) cropMarks() []typeset.Rect {
	gap := s.edge - markLength
	half := markWidth / 2
	var marks []typeset.Rect
	for _, y := range []typeset.Length{0, s.trim.Height} {
		for _, x := range []typeset.Length{-s.edge, s.trim.Width + gap} {
			marks = append(marks, typeset.Rect{X: x, Y: y - half, W: markLength, H: markWidth})
		}
	}
	for _, x := range []typeset.Length{0, s.trim.Width} {
		for _, y := range []typeset.Length{-s.edge, s.trim.Height + gap} {
			marks = append(marks, typeset.Rect{X: x - half, Y: y, W: markWidth, H: markLength})
		}
	}
	return marks
}
