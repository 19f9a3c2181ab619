package marks

import (
	"math"

	"headland/pagemodel"
	"headland/typeset"
	"headland/typeset/marks/overlay"
)

// strokeWidth is how thick strokes are, in ems: an eighth of the x-height, about
// what a fine pen draws beside type of 11 points.
const strokeWidth = 0.06

// A pencil draws strokes in a frame. Shapes are in ems of the type that they
// belong to, x to the right and y up from where it is put.
type pencil struct {
	frame
	whose   pagemodel.Whose
	em      typeset.Length
	strokes []overlay.Stroke
}

// A knot is a place in ems: right of a mark's origin, and above it.
type knot struct{ x, y float64 }

// A curve is a path in ems. It begins at its first knot; each of the steps after
// that is one knot to run straight to, or three of a cubic curve.
type curve struct {
	from  knot
	steps [][]knot
}

// line is straight from knot to knot.
func line(from knot, to ...knot) curve {
	c := curve{from: from}
	for _, k := range to {
		c.steps = append(c.steps, []knot{k})
	}
	return c
}

// then runs on straight.
func (c curve) then(to knot) curve { c.steps = append(c.steps, []knot{to}); return c }

// bent runs on along a cubic curve.
func (c curve) bent(leave, arrive, to knot) curve {
	c.steps = append(c.steps, []knot{leave, arrive, to})
	return c
}

// draw puts curves with their origin at x and y, scaled to so large an em.
func (p *pencil) draw(x, y typeset.Length, curves ...curve) {
	at := func(k knot) typeset.Point { return p.onPage(x+p.ems(k.x), y-p.ems(k.y)) }
	for _, c := range curves {
		path := []overlay.Segment{{Op: overlay.Move, To: at(c.from)}}
		for _, step := range c.steps {
			s := overlay.Segment{Op: overlay.Line, To: at(step[len(step)-1])}
			if len(step) == 3 {
				s.Op, s.Leave, s.Arrive = overlay.Cubic, at(step[0]), at(step[1])
			}
			path = append(path, s)
		}
		p.strokes = append(p.strokes, overlay.Stroke{Path: path, Width: p.ems(strokeWidth), Whose: p.whose})
	}
}

// ems is so many ems as a length.
func (p *pencil) ems(n float64) typeset.Length { return times(p.em, n) }

// times is a length taken so often, to the nearest 1/64 pt.
func times(l typeset.Length, n float64) typeset.Length {
	return typeset.Length(math.Round(float64(l) * n))
}

// in is a length in ems.
func (p *pencil) in(l typeset.Length) float64 { return float64(l) / float64(p.em) }

// ring is a circle drawn out round words: level lines and round ends.
func (p *pencil) ring(left, top, right, bottom typeset.Length) {
	p.panel(left, top, right, bottom, min(right-left, bottom-top)/2)
}

// panel is a line round an area with corners of that radius.
func (p *pencil) panel(left, top, right, bottom, radius typeset.Length) {
	w, h := p.in(right-left), p.in(bottom-top)
	r := min(p.in(radius), h/2, w/2)
	k := r * (1 - roundness)
	c := line(knot{r, 0}, knot{w - r, 0}).
		bent(knot{w - k, 0}, knot{w, -k}, knot{w, -r}).then(knot{w, r - h}).
		bent(knot{w, k - h}, knot{w - k, -h}, knot{w - r, -h}).then(knot{r, -h}).
		bent(knot{k, -h}, knot{0, k - h}, knot{0, r - h}).then(knot{0, -r}).
		bent(knot{0, -k}, knot{k, 0}, knot{r, 0})
	p.draw(left, top, c)
}

// roundness is how far the control points of a quarter circle lie from its ends,
// for a radius of 1: 4/3·(√2-1).
const roundness = 0.5523

// circle is one of that radius about a knot.
func circle(middle knot, r float64) curve {
	k, x, y := r*roundness, middle.x, middle.y
	return line(knot{x + r, y}).
		bent(knot{x + r, y + k}, knot{x + k, y + r}, knot{x, y + r}).
		bent(knot{x - k, y + r}, knot{x - r, y + k}, knot{x - r, y}).
		bent(knot{x - r, y - k}, knot{x - k, y - r}, knot{x, y - r}).
		bent(knot{x + k, y - r}, knot{x + r, y - k}, knot{x + r, y})
}
