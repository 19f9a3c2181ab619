package ui

import (
	"image"
	"math"

	"headland/pagemodel"
	"headland/typeset"
)

// Sizes on the desk in the toolkit's units, which are device pixels at 1x.
const (
	headDepth   = 62   // of the row of words at the head
	footDepth   = 62   // of the row of words at the foot
	sideMargin  = 16   // white beside the words at the head and foot
	edgeRoom    = 60   // the thickest that a fore-edge gets
	tickRoom    = 34   // how far ticks stand out from a fore-edge
	bookAir     = 12   // between the book and the rows of words
	narrowBelow = 1150 // width under which one page is shown whole
	slipShare   = 0.30 // of a page's width, the least that the facing page's slip has
)

// sheetPlan is where a page lies on the desk, and what part of it is seen.
// Both are in device pixels of the desk; seen is empty for a page that is not
// there.
type sheetPlan struct {
	number int // of the page; 0 for none
	page   image.Rectangle
	seen   image.Rectangle
}

// plan is where everything lies on the desk, in whole device pixels.
type plan struct {
	size     image.Point // of the desk
	density  float64     // device pixels to a unit of the toolkit
	scale    float64     // device pixels to a point of the page
	view     image.Rectangle
	book     image.Rectangle // both pages, whether they are there or not
	narrow   bool            // one page whole, the facing one as a slip
	slip     int             // its width
	sheets   [2]sheetPlan    // by pagemodel.Side
	edges    [2]foreEdge     // likewise: the recto's fore-edge is on the right
	sliver   image.Rectangle // of the last round’s sheet; empty where none went out
	foot     int             // where the words at the foot begin
	farthest image.Point     // how far the book can be moved either way
}

// planning is what a plan is made from.
type planning struct {
	size    image.Point
	density float64
	trim    pagemodel.Trim
	spread  pagemodel.Spread
	extent  int
	zoom    float64     // 1 fits the window
	moved   image.Point // the book from its middle, in device pixels
	working pagemodel.Side
	sliver  bool // a round has gone out
}

// units is a distance on the desk in device pixels.
func (p *plan) units(n float64) int { return int(math.Round(n * p.density)) }

// newPlan lays the book on the desk.
func newPlan(in planning) plan {
	p := plan{size: in.size, density: in.density}
	p.foot = max(p.units(headDepth)+1, in.size.Y-p.units(footDepth))
	p.view = image.Rect(0, p.units(headDepth), in.size.X, p.foot)
	if in.sliver {
		p.view.Max.Y = max(p.view.Min.Y+1, p.foot-p.units(sliverRoom))
	}
	p.scale = p.fit(in.trim) * in.zoom
	w, h := p.pixels(in.trim.Width), p.pixels(in.trim.Height)
	free := p.size.X - 2*p.units(edgeRoom/3+tickRoom) - w
	p.slip = min(w, max(int(math.Round(float64(w)*slipShare)), free))
	p.layBook(in, w, h)
	p.laySheets(in, w)
	p.layEdges(in)
	if in.sliver {
		p.sliver = p.sliverAt()
	}
	return p
}

// headBase and footBase are the baselines of the words at the head and foot of
// the desk.
func (p *plan) headBase() int { return p.view.Min.Y * 5 / 8 }
func (p *plan) footBase() int { return p.foot + (p.size.Y-p.foot)*9/16 }

// headBand and footBand are the parts of the desk that those words are drawn
// on: no more than they need, since every pixel is laid down again each frame.
// The foot's has room for two lines.
func (p *plan) headBand() image.Rectangle { return p.band(p.headBase(), 24, 10) }
func (p *plan) footBand() image.Rectangle { return p.band(p.footBase(), 28, 20) }

func (p *plan) band(base int, above, below float64) image.Rectangle {
	return image.Rect(0, base-p.units(above), p.size.X, base+p.units(below)).Intersect(image.Rectangle{Max: p.size})
}

// fit is the scale at which the spread just fills what is free. In a narrow
// window where the pages could be larger if they were not both whole, one page
// fills it and the facing one is a slip.
func (p *plan) fit(trim pagemodel.Trim) float64 {
	wide := func(pages, side float64) float64 {
		return (float64(p.size.X) - 2*side*p.density) / (pages * trim.Width.Points())
	}
	deep := float64(p.view.Dy()-2*p.units(bookAir)) / trim.Height.Points()
	if float64(p.size.X) < narrowBelow*p.density && wide(2, edgeRoom/3+tickRoom) < deep {
		p.narrow = true
		return max(0.05, min(wide(1+slipShare, edgeRoom/3+tickRoom), deep))
	}
	side := edgeRoom + tickRoom + 10.0
	if float64(p.size.X) < narrowBelow*p.density {
		side = edgeRoom/3 + tickRoom
	}
	return max(0.05, min(wide(2, side), deep))
}

// pixels is a distance on the page in whole device pixels, at least one.
func (p *plan) pixels(l typeset.Length) int {
	return max(1, int(math.Round(l.Points()*p.scale)))
}

// layBook places the two pages as one block, moved by the hand as far as there
// is something to bring into view.
func (p *plan) layBook(in planning, w, h int) {
	wide := 2 * w
	if p.narrow {
		wide = w + p.slip
	}
	p.farthest = image.Pt(max(0, (wide-p.size.X)/2+p.units(edgeRoom)), max(0, (h-p.view.Dy())/2+p.units(bookAir)))
	if wide <= p.size.X-2*p.units(tickRoom) {
		p.farthest.X = 0
	}
	if h <= p.view.Dy() {
		p.farthest.Y = 0
	}
	middle := p.view.Min.Add(p.view.Max).Div(2)
	left := middle.X - wide/2 + between(in.moved.X, p.farthest.X)
	top := middle.Y - h/2 + between(in.moved.Y, p.farthest.Y)
	if p.narrow && in.working == pagemodel.Recto {
		left -= w - p.slip
	}
	p.book = image.Rect(left, top, left+2*w, top+h)
}

func between(v, limit int) int { return max(-limit, min(limit, v)) }

// laySheets places each page of the spread in the block.
func (p *plan) laySheets(in planning, w int) {
	gutter := p.book.Min.X + w
	verso := image.Rect(p.book.Min.X, p.book.Min.Y, gutter, p.book.Max.Y)
	recto := image.Rect(gutter, p.book.Min.Y, p.book.Max.X, p.book.Max.Y)
	p.sheets[pagemodel.Verso] = sheetPlan{in.spread.Verso, verso, verso}
	p.sheets[pagemodel.Recto] = sheetPlan{in.spread.Recto, recto, recto}
	if p.narrow {
		strip := image.Rect(gutter-p.slip, p.book.Min.Y, gutter+p.slip, p.book.Max.Y)
		facing := &p.sheets[in.working.Facing()]
		facing.seen = facing.seen.Intersect(strip)
	}
	for i := range p.sheets {
		s := &p.sheets[i]
		s.seen = s.seen.Intersect(p.view)
		if s.number == 0 {
			s.seen = image.Rectangle{}
		}
	}
}

// layEdges places the fore-edges outside the pages that are there.
func (p *plan) layEdges(in planning) {
	if v := p.sheets[pagemodel.Verso]; v.number > 0 {
		before := pagemodel.Leaf(v.number) - 1
		p.edges[pagemodel.Verso] = p.foreEdge(v, before, before, -1)
	}
	if r := p.sheets[pagemodel.Recto]; r.number > 0 {
		after := pagemodel.Leaf(r.number) + 1
		p.edges[pagemodel.Recto] = p.foreEdge(r, after, pagemodel.Leaf(in.extent)-after+1, 1)
	}
}

// foreEdge is the edge of so many leaves beyond a page, given the leaf nearest
// to it.
func (p *plan) foreEdge(s sheetPlan, nearest, leaves, outward int) foreEdge {
	e := foreEdge{outward: outward, pitch: max(2, p.units(2)), nearest: nearest, leaves: max(0, leaves)}
	room := p.units(edgeRoom)
	if float64(p.size.X) < narrowBelow*p.density {
		room = p.units(edgeRoom / 3)
	}
	e.lines = min(e.leaves, room/e.pitch)
	x := s.seen.Max.X
	if outward < 0 {
		x = s.seen.Min.X
	}
	e.box = image.Rect(x, s.page.Min.Y, x+outward*e.lines*e.pitch, s.page.Max.Y).Canon()
	return e
}

// toPage is the point of a page under a device pixel of the desk.
func (p *plan) toPage(side pagemodel.Side, at image.Point) typeset.Point {
	from := p.sheets[side].page.Min
	return typeset.Point{X: p.length(at.X - from.X), Y: p.length(at.Y - from.Y)}
}

// length is a number of device pixels as a distance on the page.
func (p *plan) length(px int) typeset.Length { return pagemodel.Pt(float64(px) / p.scale) }

// fromPage is the device pixel of the desk at a point of a page.
func (p *plan) fromPage(side pagemodel.Side, at typeset.Point) image.Point {
	x, y := at.X.Points()*p.scale, at.Y.Points()*p.scale
	return p.sheets[side].page.Min.Add(image.Pt(int(math.Round(x)), int(math.Round(y))))
}

// sideAt is the page that lies seen under a device pixel.
func (p *plan) sideAt(at image.Point) (pagemodel.Side, bool) {
	for side, s := range p.sheets {
		if at.In(s.seen) {
			return pagemodel.Side(side), true
		}
	}
	return 0, false
}
