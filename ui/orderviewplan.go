package ui

import (
	"image"
	"math"

	"fyne.io/fyne/v2"

	"headland/pagemodel"
)

// Sizes in the order, in the toolkit's units. A row is, from above: the name of
// a section, the titles of poems and their bars, the pages, their folios, and the
// sheets that they are folded from.
const (
	orderLeft   = 84  // before the first page: the letter and the back of the signature
	orderRight  = 22  // beyond the last
	orderAir    = 10  // from leaf to leaf
	orderAbove  = 48  // over the pages
	orderBelow  = 20  // under them, for the folios
	orderSheet  = 6   // from sheet to sheet
	orderGap    = 18  // from row to row
	orderLift   = 9   // by which what is held is lifted out of its row
	orderLeast  = 44  // the narrowest small page
	orderWidest = 104 // the widest
	orderTake   = 26  // how high the titles and bars are to the hand
)

// orderCell is a small page in a row.
type orderCell struct {
	page int // 0 for none
	x    int // of its left edge
}

// orderBar is a piece's bar, or as much of it as one row has.
type orderBar struct {
	piece       *orderPiece
	from, to    int   // its ends
	opens, ends bool  // the piece begins here, and ends here
	folds       []int // where it turns a leaf
	cells       []int // its pages in the row
}

// orderRow is one row: a signature, a part of one where the window is narrow, or
// some of the poems that are left out.
type orderRow struct {
	out       bool
	signature int // from 0
	begins    bool
	offset    int // of its first page in the signature
	cells     []orderCell
	bars      []orderBar
}

// orderPlan is where everything in the order lies, in whole device pixels. Rows
// are all of one depth; x is that of the desk, y within a row counts from its top.
type orderPlan struct {
	size    image.Point // of the window
	density float64
	view    image.Rectangle // between the words at the head and at the foot
	page    image.Point     // the size of a small page
	scale   float64         // device pixels to a point of the page
	left    int             // the first page's edge
	each    int             // pages in a signature
	depth   int             // of a row
	rows    []orderRow
	books   int // how many of the rows are the book's
}

func (p *orderPlan) units(n float64) int { return int(math.Round(n * p.density)) }

// newOrderPlan lays the book out in rows, and below them what is left out.
func newOrderPlan(of *plan, b *orderBook) orderPlan {
	p := orderPlan{size: of.size, density: of.density, view: of.view}
	p.view.Max.Y = of.foot
	d := b.set.Collection().Design()
	p.each = d.SignaturePages()
	parts := p.sizePages(d.Trim)
	p.depth = p.units(orderAbove) + p.page.Y + p.units(orderBelow) + p.units(orderSheet)*(p.each/4+1) + p.units(orderGap)
	for s := range pagemodel.Signatures(b.set.Extent(), p.each) {
		p.laySignature(s, parts)
	}
	p.books = len(p.rows)
	p.layBars(b.pieces, p.rows)
	p.layOut(b)
	return p
}

// sizePages chooses the largest small page with which a signature lies in one
// row; where that would be too small, in two, four or more. It gives how many.
func (p *orderPlan) sizePages(t pagemodel.Trim) int {
	room := p.size.X - p.units(orderLeft+orderRight)
	for parts := 1; ; parts *= 2 {
		columns := p.each/parts + min(1, parts-1)
		wide := (room - p.units(orderAir)*(columns/2+1)) / columns
		if wide < p.units(orderLeast) && parts < p.each/4 {
			continue
		}
		deepest := p.view.Dy()*11/20 - p.units(orderAbove)
		wide = max(4, min(wide, p.units(orderWidest), int(float64(deepest)*t.Width.Points()/t.Height.Points())))
		p.scale = float64(wide) / t.Width.Points()
		p.page = image.Pt(wide, int(math.Round(t.Height.Points()*p.scale)))
		used := columns*wide + p.units(orderAir)*(columns/2+1)
		p.left = p.units(orderLeft) + max(0, room-used)/2
		return parts
	}
}

// laySignature lays the pages of a signature in so many rows, parted between
// leaves.
func (p *orderPlan) laySignature(s, parts int) {
	for part := range parts {
		from, to := partOf(p.each, parts, part), partOf(p.each, parts, part+1)
		row := orderRow{signature: s, begins: part == 0, offset: from}
		for k := from; k < to; k++ {
			x := p.left + (k-from)*p.page.X + ((k+1)/2-(from+1)/2)*p.units(orderAir)
			row.cells = append(row.cells, orderCell{s*p.each + k + 1, x})
		}
		p.rows = append(p.rows, row)
	}
}

// partOf is the first page, from 0, of a part of a signature: always a verso but
// in the first.
func partOf(each, parts, part int) int {
	switch part {
	case 0:
		return 0
	case parts:
		return each
	}
	return 2*((part*each+parts)/(2*parts)) - 1
}

// layOut lays the poems that are left out, each with its pages together.
func (p *orderPlan) layOut(b *orderBook) {
	row := orderRow{out: true, begins: true}
	x, end := p.left, p.size.X-p.units(orderRight)
	for i := range b.out {
		piece := &b.out[i]
		wide := (piece.last - piece.first + 1) * p.page.X
		if x+min(wide, end-p.left) > end && len(row.cells) > 0 {
			p.rows = append(p.rows, row)
			row, x = orderRow{out: true}, p.left
		}
		for n := piece.first; n <= piece.last && x+p.page.X <= max(end, p.left+p.page.X); n++ {
			row.cells = append(row.cells, orderCell{n, x})
			x += p.page.X
		}
		x += p.units(orderAir) * 2
	}
	p.rows = append(p.rows, row)
	p.layBars(b.out, p.rows[p.books:])
}

// layBars lays the pieces' bars over the rows in which their pages lie.
func (p *orderPlan) layBars(pieces []orderPiece, rows []orderRow) {
	type spot struct{ row, cell int }
	where := map[int]spot{}
	for r := range rows {
		for c := range rows[r].cells {
			where[rows[r].cells[c].page] = spot{r, c}
		}
	}
	for i := range pieces {
		piece, last := &pieces[i], -1
		for n := piece.first; n <= piece.last; n += piece.step {
			at, ok := where[n]
			if !ok {
				continue
			}
			row := &rows[at.row]
			if at.row != last || piece.step > 1 {
				row.bars = append(row.bars, orderBar{piece: piece, from: row.cells[at.cell].x, opens: n == piece.first})
			}
			last = at.row
			p.lengthen(&row.bars[len(row.bars)-1], row, at.cell)
		}
	}
}

// lengthen lays a bar over another page.
func (p *orderPlan) lengthen(bar *orderBar, row *orderRow, cell int) {
	c := row.cells[cell]
	if len(bar.cells) > 0 && c.x > bar.to {
		bar.folds = append(bar.folds, (bar.to+c.x)/2)
	}
	if c.page == bar.piece.first {
		bar.from = c.x + int(bar.piece.from*float64(p.page.X))
	}
	bar.to = c.x + p.page.X
	if bar.ends = c.page == bar.piece.last; bar.ends {
		bar.to = c.x + int(bar.piece.to*float64(p.page.X))
	}
	bar.cells = append(bar.cells, cell)
}

// tall is how deep all the rows are together.
func (p *orderPlan) tall() int { return len(p.rows) * p.depth }

// farthest is how far the rows can be moved up.
func (p *orderPlan) farthest() int { return max(0, p.tall()-p.view.Dy()) }

// pixel is the device pixel of the desk at a position.
func (p *orderPlan) pixel(at fyne.Position) image.Point {
	return image.Pt(int(math.Floor(float64(at.X)*p.density)), int(math.Floor(float64(at.Y)*p.density)))
}

// pageRect is where a cell's page lies in its row.
func (p *orderPlan) pageRect(c orderCell) image.Rectangle {
	top := p.units(orderAbove)
	return image.Rect(c.x, top, c.x+p.page.X, top+p.page.Y)
}

// rowAt is the row at a depth of all rows, within those that there are.
func (p *orderPlan) rowAt(y int) int { return max(0, min(len(p.rows)-1, y/max(1, p.depth))) }

// pageAt is the place in the book, in pages from its first, that lies under an x of
// a row; white between leaves counts to the page before.
func (p *orderPlan) pageAt(row, x int) float64 {
	r := &p.rows[row]
	at := r.cells[0]
	for _, c := range r.cells {
		if c.x <= x {
			at = c
		}
	}
	return float64(at.page-1) + max(0, min(1, float64(x-at.x)/float64(p.page.X)))
}

// barAt is the bar under a point of a row: over the pages, on its title and line,
// or on one of its pages.
func (p *orderPlan) barAt(row *orderRow, at image.Point) *orderBar {
	top := p.units(orderAbove)
	if at.Y < top-p.units(orderTake) || at.Y >= top+p.page.Y {
		return nil
	}
	for i := range row.bars {
		if b := &row.bars[i]; at.X >= b.from && at.X < b.to {
			return b
		}
	}
	return nil
}

// firstBar is the row and the bar with which a piece begins.
func (p *orderPlan) firstBar(id int64) (row int, bar *orderBar) {
	for r := range p.rows {
		for i := range p.rows[r].bars {
			if b := &p.rows[r].bars[i]; b.piece.id == id {
				return r, b
			}
		}
	}
	return -1, nil
}

// lastBar is the row and the bar with which a piece ends.
func (p *orderPlan) lastBar(id int64) (row int, bar *orderBar) {
	row, bar = p.firstBar(id)
	for r := row + 1; bar != nil && r < len(p.rows); r++ {
		for i := range p.rows[r].bars {
			if b := &p.rows[r].bars[i]; b.piece.id == id {
				row, bar = r, b
			}
		}
		if row < r {
			break
		}
	}
	return row, bar
}
