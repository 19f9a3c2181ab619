package order

import (
	"errors"
	"fmt"

	"headland/pagemodel"
	"headland/typeset"
)

// A Dummy is a book printed at home, two pages on each side of a sheet, to be
// folded and held. The paper lies with its long edges at head and foot and is
// folded down its middle; places on it count from its top left corner.
type Dummy struct {
	Paper   Paper
	Pages   int // of the book, without the blanks that fill the last section
	Percent int // the size that pages are printed at, 100 or less
	Section int // the pages that were asked for in a section; 0 for all of them
	Sheets  []Sheet

	trim pagemodel.Trim // of a page at its full size
}

// Sections are the pages that a section of a dummy may have; 0 is the whole
// book in one, stapled.
var Sections = []int{0, 8, 16, 32, 4}

// edgeClear is how much of the paper's edge printers at home leave white
// (common practice, no source).
var edgeClear = pagemodel.MM(5)

// labelRoom is the white beside the pages that the label of a sheet needs.
var labelRoom = pagemodel.MM(2.5)

// NewDummy plans a dummy of a book of so many pages of one trim, in sections of
// so many pages: see [Sections] and [Impose]. Pages are printed at their full
// size where two of them fit side by side within the paper, 5 mm from its edges,
// and there is room for a label beside them; else they are reduced to the largest
// whole percentage at which they do.
func NewDummy(pages int, trim pagemodel.Trim, paper Paper, section int) (Dummy, error) {
	d := Dummy{Paper: paper, Pages: pages, Percent: 100, Section: section, trim: trim}
	if pages < 1 {
		return Dummy{}, errors.New("there are no pages to fold: set the collection first")
	}
	if err := checkSection(section); err != nil {
		return Dummy{}, err
	}
	for !d.fits() {
		if d.Percent--; d.Percent == 0 {
			return Dummy{}, fmt.Errorf("two pages of %.0f by %.0f mm don't go on %s at any size: choose a smaller trim",
				trim.Width.Millimetres(), trim.Height.Millimetres(), paper.Name)
		}
	}
	d.Sheets = Impose(pages, section)
	return d, nil
}

// checkSection refuses sections that sheets don't fold into.
func checkSection(section int) error {
	for _, s := range Sections {
		if s == section {
			return nil
		}
	}
	return fmt.Errorf("a section can't be of %d pages: choose 4, 8, 16 or 32, or all pages in one", section)
}

// fits says whether pages of this size, and a label, lie clear of the edges.
func (d *Dummy) fits() bool {
	beside, below := d.white()
	return beside >= edgeClear && below >= edgeClear && max(beside, below) >= edgeClear+labelRoom
}

// white is the paper left of and right of the two pages, and that above and
// below them.
func (d *Dummy) white() (beside, below typeset.Length) {
	area := d.Area()
	return area.X, area.Y
}

// Size is the paper as it lies.
func (d *Dummy) Size() pagemodel.Trim {
	return pagemodel.Trim{Width: d.Paper.Long, Height: d.Paper.Short}
}

// Area is where the two pages lie, beside each other in the middle of the paper.
// Cut along its edges, and folded, the sheets are the book.
func (d *Dummy) Area() typeset.Rect {
	w, h := 2*d.reduced(d.trim.Width), d.reduced(d.trim.Height)
	return typeset.Rect{X: (d.Paper.Long - w) / 2, Y: (d.Paper.Short - h) / 2, W: w, H: h}
}

// Corner is the top left corner of the left page, or of the right one.
func (d *Dummy) Corner(right bool) typeset.Point {
	area := d.Area()
	if right {
		area.X += area.W / 2
	}
	return typeset.Point{X: area.X, Y: area.Y}
}

// reduced is a length of the page as it is printed, to the nearest.
func (d *Dummy) reduced(l typeset.Length) typeset.Length {
	return typeset.Length((int64(l)*int64(d.Percent) + 50) / 100)
}

// Has says whether a page number is a page of the book and not a blank that
// fills the last section.
func (d *Dummy) Has(page int) bool { return page >= 1 && page <= d.Pages }
