package raster

import (
	"image"
	"image/color"
	"math"

	"headland/typeset"
)

// rect is an area of the page on whole device pixels, at least one each way.
func (p *Pen) rect(r typeset.Rect) image.Rectangle {
	box := image.Rect(p.X(r.X), p.Y(r.Y), p.X(r.X+r.W), p.Y(r.Y+r.H))
	box.Max.X = max(box.Max.X, box.Min.X+1)
	box.Max.Y = max(box.Max.Y, box.Min.Y+1)
	return box
}

// Fill inks an area. Its edges are on whole device pixels, so that areas that
// meet on the page meet on the screen without a seam; it is never thinner than
// one pixel. A negative width reaches left, a negative height up.
func (p *Pen) Fill(r typeset.Rect, ink color.RGBA) {
	if p.per == 0 {
		return
	}
	p.even(p.rect(r), p.masks.dip(ink))
}

// Stroke draws a straight line, width device pixels thick and never thinner
// than one. A level or upright line is crisp: a whole number of pixels thick,
// the middle one of which is the one that [Pen.X] or [Pen.Y] names, and at
// least one long. Any other is antialiased, through the middles of such pixels,
// and cut square at its ends.
func (p *Pen) Stroke(from, to typeset.Point, width float64, ink color.RGBA) {
	if p.per == 0 {
		return
	}
	a := image.Pt(p.X(from.X), p.Y(from.Y))
	b := image.Pt(p.X(to.X), p.Y(to.Y))
	width = max(1, width)
	thick := int(math.Round(width))
	switch {
	case a.Y == b.Y:
		p.even(level(a.X, b.X, a.Y-thick/2, thick), p.masks.dip(ink))
	case a.X == b.X:
		r := level(a.Y, b.Y, a.X-thick/2, thick)
		r = image.Rect(r.Min.Y, r.Min.X, r.Max.Y, r.Max.X)
		p.even(r, p.masks.dip(ink))
	default:
		p.slant(a, b, width, float64(thick%2)/2, ink)
	}
}

// level is a line of pixels from edge to edge, at least one long.
func level(from, to, top, thick int) image.Rectangle {
	r := image.Rect(from, top, to, top+thick)
	r.Max.X = max(r.Max.X, r.Min.X+1)
	return r
}

// slant draws a line that is neither level nor upright.
func (p *Pen) slant(from, to image.Point, width, middle float64, ink color.RGBA) {
	a := spot{float64(from.X) + middle, float64(from.Y) + middle}
	b := spot{float64(to.X) + middle, float64(to.Y) + middle}
	half := width / 2 / math.Hypot(b.x-a.x, b.y-a.y)
	dx, dy := (a.y-b.y)*half, (b.x-a.x)*half
	p.polygon([]spot{{a.x + dx, a.y + dy}, {b.x + dx, b.y + dy}, {b.x - dx, b.y - dy}, {a.x - dx, a.y - dy}}, ink)
}

// A line of one pixel at 45 degrees, through the middles of pixels, covers
// 2√½ - ½ of each of them and ¼ of each neighbour in the row.
const (
	hatchMiddle = 233
	hatchBeside = 64
)

// leastHatch is the fewest pixels from line to line at which they are still
// seen as lines.
const leastHatch = 4

// Hatch draws hairlines of one device pixel, rising to the right at 45 degrees,
// over an area cut as by [Pen.Fill]. Spacing is from line to line along a row,
// and never below four pixels. The lines are the page's: they run on from one
// area to the next and don't crawl when an area is moved or its size changes.
func (p *Pen) Hatch(r typeset.Rect, spacing typeset.Length, ink color.RGBA) {
	box := p.rect(r).Intersect(p.img.Rect)
	if p.per == 0 || box.Empty() {
		return
	}
	step := max(int64(spacing)*p.per, leastHatch<<oneBits)
	well := p.masks.dip(ink)
	for y := box.Min.Y; y < box.Max.Y; y++ {
		p.hatchRow(box, y, step, well)
	}
}

// hatchRow draws what the hatching has in one row. The line number k is where
// x+y, from the origin, is k steps to the nearest pixel.
func (p *Pen) hatchRow(box image.Rectangle, y int, step int64, w *inkwell) {
	zero := p.origin.X + p.origin.Y - y // the x of line 0
	dot := func(x int, cover uint8) {
		if x >= box.Min.X && x < box.Max.X {
			w.dot(p.img.Pix[p.img.PixOffset(x, y):], cover)
		}
	}
	for k := (int64(box.Min.X-1-zero)<<oneBits)/step - 1; ; k++ {
		x := zero + int((k*step+1<<(oneBits-1))>>oneBits)
		if x > box.Max.X {
			return
		}
		dot(x-1, hatchBeside)
		dot(x, hatchMiddle)
		dot(x+1, hatchBeside)
	}
}
