package raster

import (
	"math"

	"golang.org/x/image/font/sfnt"
	"golang.org/x/image/vector"
)

// tracer runs a rasterizer along contours. It parts curves into straight lines
// itself: vector's own parts are so few that round letters lose up to a
// hundredth of their ink.
type tracer struct {
	z         *vector.Rasterizer
	from, at  spot
	twiceArea float64 // within the lines so far, clockwise
}

// off is how far, in pixels, a line may be from the curve it stands for.
const off = 1.0 / 64

// outline traces a glyph. Fonts leave out the last line home.
func (t *tracer) outline(o *outline) {
	for i := range o.segments {
		s := &o.segments[i]
		switch s.Op {
		case sfnt.SegmentOpMoveTo:
			t.close()
			t.move(o.at(s.Args[0]))
		case sfnt.SegmentOpLineTo:
			t.line(o.at(s.Args[0]))
		case sfnt.SegmentOpQuadTo:
			t.quad(o.at(s.Args[0]), o.at(s.Args[1]))
		case sfnt.SegmentOpCubeTo:
			t.cube(o.at(s.Args[0]), o.at(s.Args[1]), o.at(s.Args[2]))
		}
	}
	t.close()
}

// area is what the contours run round, counted as often as they do.
func (t *tracer) area() float64 { return math.Abs(t.twiceArea) / 2 }

func (t *tracer) move(a spot) {
	t.from, t.at = a, a
	t.z.MoveTo(float32(a.x), float32(a.y))
}

func (t *tracer) close() { t.line(t.from) }

func (t *tracer) line(b spot) {
	t.twiceArea += float64(t.at.x*b.y) - float64(b.x*t.at.y)
	t.at = b
	t.z.LineTo(float32(b.x), float32(b.y))
}

// bend is the length of a-2b+c: how far a corner is from being straight.
func bend(a, b, c spot) float64 { return math.Hypot(a.x-2*b.x+c.x, a.y-2*b.y+c.y) }

// A chord over a share h of a curve is at most h²/8 of the curve's second
// derivative away from it, which is twice the bend of a quadratic curve, and
// six times the greater bend of a cubic one.
func parts(derivative float64) int { return max(1, int(math.Ceil(math.Sqrt(derivative/8/off)))) }

// quad runs along a quadratic curve.
func (t *tracer) quad(b, c spot) {
	a := t.at
	n := parts(2 * bend(a, b, c))
	for i := 1; i < n; i++ {
		u := float64(i) / float64(n)
		t.line(between(u, between(u, a, b), between(u, b, c)))
	}
	t.line(c)
}

// cube runs along a cubic curve.
func (t *tracer) cube(b, c, d spot) {
	a := t.at
	n := parts(6 * max(bend(a, b, c), bend(b, c, d)))
	for i := 1; i < n; i++ {
		u := float64(i) / float64(n)
		ab, bc, cd := between(u, a, b), between(u, b, c), between(u, c, d)
		t.line(between(u, between(u, ab, bc), between(u, bc, cd)))
	}
	t.line(d)
}

// between is the place a share of the way from a to b.
func between(share float64, a, b spot) spot {
	return spot{a.x + float64(share*(b.x-a.x)), a.y + float64(share*(b.y-a.y))}
}
