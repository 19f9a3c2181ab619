package ui

import (
	"image"
	"image/color"

	"fyne.io/fyne/v2"

	"headland/pagemodel"
)

// Sizes on a leaf in the toolkit's units.
const (
	leafWidth    = 460
	leafMargin   = 18   // white inside its edges
	leafHead     = 50   // from its top to the first row
	leafRowDepth = 19   // of a row
	leafType     = 15.5 // the size of its words
	leafFootLine = 18   // from one line at the foot to the next
	leafNames    = 94   // where the names begin, right of the groups
	leafValues   = 212  // where the values begin
	leafStep     = 22   // the width of a − or a +
	leafCompact  = 440  // a leaf narrower than this has no room for the groups' words
	leafLeast    = 330  // the narrowest that one gets
	leafSaid     = 40   // the room for what was refused: two lines
)

// leafPlan is where a leaf lies on the window and where its rows are.
type leafPlan struct {
	at      image.Rectangle // in device pixels of the desk
	origin  fyne.Position   // of the desk, on the window
	density float64
	names   float64 // where they begin, in the toolkit's units
	values  float64
	small   float64 // the size of the words at the foot
	seen    int     // rows
	feet    int     // lines at the foot
}

func (p *leafPlan) units(n float64) int { return int(n*p.density + 0.5) }

// row is the band of the i-th row that is seen, in device pixels of the leaf.
func (p *leafPlan) row(i int) image.Rectangle {
	top := p.units(leafHead + leafRowDepth*float64(i))
	return image.Rect(0, top, p.at.Dx(), p.units(leafHead+leafRowDepth*float64(i+1)))
}

// footTop is where the foot begins.
func (p *leafPlan) footTop() int {
	return p.at.Dy() - p.units(leafSaid+leafFootLine*float64(p.feet)+10)
}

// stepAt is the place of a row's − (-1) or + (1).
func (p *leafPlan) stepAt(band image.Rectangle, by int) image.Rectangle {
	right := band.Max.X - p.units(leafMargin)
	if by < 0 {
		right -= p.units(leafStep)
	}
	return image.Rect(right-p.units(leafStep), band.Min.Y, right, band.Max.Y)
}

// under is the row at a position on the window, and -1 or 1 where that is its −
// or its +.
func (p *leafPlan) under(at fyne.Position, top, rows int) (row, by int, ok bool) {
	x := int(float64(at.X-p.origin.X)*p.density) - p.at.Min.X
	y := int(float64(at.Y-p.origin.Y)*p.density) - p.at.Min.Y
	for i := range min(p.seen, rows-top) {
		band := p.row(i)
		if !image.Pt(x, y).In(band) {
			continue
		}
		for _, by := range [...]int{-1, 1} {
			if image.Pt(x, y).In(p.stepAt(band, by)) {
				return top + i, by, true
			}
		}
		return top + i, 0, true
	}
	return 0, 0, false
}

// newLeafPlan lays a leaf over the side of a book: its inner edge a little off
// the gutter, as deep as it has rows for. In a narrow window it lies over the
// lower half, and the head of the page that is worked on stays in sight.
func newLeafPlan(p *plan, side pagemodel.Side, origin fyne.Position, rows, feet int) leafPlan {
	lp := leafPlan{origin: origin, density: p.density, feet: feet, names: leafNames, values: leafValues, small: leafType}
	air, off := p.units(6), p.units(14)
	wide := min(p.units(leafWidth), max(p.units(leafLeast), p.size.X/2-off-air), p.size.X-2*air)
	if p.narrow {
		wide = min(p.units(leafWidth), p.size.X-2*air)
	}
	if wide < p.units(leafCompact) {
		lp.names, lp.values, lp.small = leafMargin, leafMargin+leafValues-leafNames, 13
	}
	around := p.units(leafHead + leafSaid + leafFootLine*float64(feet) + 16)
	deep := min(p.view.Dy()-2*air, around+lp.units(leafRowDepth*float64(rows)))
	gutter := p.book.Min.X + p.book.Dx()/2
	x, y := gutter-off-wide, p.view.Min.Y+(p.view.Dy()-deep)/2
	if side == pagemodel.Recto {
		x = gutter + off
	}
	if p.narrow {
		deep = min(deep, p.view.Dy()*11/20)
		x, y = (p.size.X-wide)/2, p.view.Max.Y-deep-air
	}
	x = max(air, min(x, p.size.X-air-wide))
	lp.at = image.Rect(x, y, x+wide, y+deep)
	lp.seen = max(1, int(float64(deep-around)/p.density/leafRowDepth+0.01))
	return lp
}

// arrange lays the leaf and its veils on whole device pixels.
func (l *leaf) arrange() {
	d := l.w.desk
	origin := fyne.CurrentApp().Driver().AbsolutePositionForObject(d)
	l.plan = newLeafPlan(&d.plan, l.side, origin, l.deepest, len(l.foot))
	l.top = max(0, min(l.top, len(l.rows)-l.plan.seen))
	l.place(l.picture, l.plan.at)
	for side, veil := range l.veils {
		at := d.plan.ground(pagemodel.Side(side), false)
		if !l.stale || at.Empty() {
			at = image.Rect(-1000, 0, -990, 10) // an object that was never drawn is not found again
		}
		l.place(veil, at)
		veil.Refresh()
	}
	l.picture.Refresh()
}

// place puts an object on device pixels of the desk.
func (l *leaf) place(o fyne.CanvasObject, at image.Rectangle) {
	unit := func(px int) float32 { return float32(float64(px) / l.plan.density) }
	o.Resize(fyne.NewSize(unit(at.Dx()), unit(at.Dy())))
	o.Move(l.plan.origin.AddXY(unit(at.Min.X), unit(at.Min.Y)))
}

// leaf is the paper of what is laid over a page: darker than the page.
func (p *palette) leaf() color.RGBA { return p.fold }

// leafLine is a hairline on it.
func (p *palette) leafLine() color.RGBA { return blend(p.hairline, p.aside, 0.3) }

// veil dims what is seen through it towards the desk.
func (p *palette) veil() color.NRGBA {
	return color.NRGBA{p.desk.R, p.desk.G, p.desk.B, 0xA8}
}

// leafWash lies behind the row at hand.
func (p *palette) leafWash() color.RGBA { return blend(p.fold, p.hairline, 0.16) }
