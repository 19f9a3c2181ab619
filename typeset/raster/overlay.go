package raster

import (
	"math"

	"headland/typeset"
	"headland/typeset/marks/overlay"
)

// Overlay draws what lies over a page that is height high. Strokes are as thick
// as they would be on paper, but never thinner than a pixel.
func (p *Pen) Overlay(o *overlay.Overlay, height typeset.Length) {
	if p.per == 0 {
		return
	}
	for i := range o.Strokes {
		p.path(&o.Strokes[i])
	}
	for i := range o.Rows {
		r, ink := &o.Rows[i], overlay.Colour(o.Whose[i])
		for k := range r.Runs {
			run := &r.Runs[k]
			if r.Turned {
				p.TurnedRun(run, r.X+run.X, r.Baseline, height, ink)
			} else {
				p.Run(run, r.X+run.X, r.Baseline, ink)
			}
		}
	}
}

// path inks a stroke, each part of it that begins with a move by itself.
func (p *Pen) path(s *overlay.Stroke) {
	half := max(1, float64(scaled(s.Width, p.per, 8))/256) / 2
	ink := overlay.Colour(s.Whose)
	var line []spot
	for _, g := range s.Path {
		switch to := p.spot(g.To); {
		case g.Op == overlay.Move:
			p.polygon(aroundLine(line, half), ink)
			line = []spot{to}
		case g.Op == overlay.Cubic:
			line = curved(line, p.spot(g.Leave), p.spot(g.Arrive), to)
		default:
			line = append(line, to)
		}
	}
	p.polygon(aroundLine(line, half), ink)
}

// spot is a place of the page in device pixels, not rounded to whole ones.
func (p *Pen) spot(at typeset.Point) spot {
	return spot{p.place(p.origin.X, at.X), p.place(p.origin.Y, at.Y)}
}

// curved is a line led on along a cubic curve.
func curved(line []spot, b, c, d spot) []spot {
	a := line[len(line)-1]
	n := parts(6 * max(bend(a, b, c), bend(b, c, d)))
	for i := 1; i < n; i++ {
		u := float64(i) / float64(n)
		ab, bc, cd := between(u, a, b), between(u, b, c), between(u, c, d)
		line = append(line, between(u, between(u, ab, bc), between(u, bc, cd)))
	}
	return append(line, d)
}

// aroundLine is the outline of a line that is twice half thick: along its one
// side, round its end, back along the other, and round its beginning. Where it
// bends inwards the outline goes by way of the line's own corner, so that it
// always runs round the ink in the same sense.
func aroundLine(line []spot, half float64) []spot {
	line = withoutRepeats(line)
	if len(line) == 0 {
		return nil
	}
	if len(line) == 1 {
		return arc(nil, line[0], half, 0, 2*math.Pi)
	}
	var out []spot
	n := len(line)
	for i := 0; i < n-1; i++ {
		out = side(out, line, i, i+1, i+2, half)
	}
	for i := n - 1; i > 0; i-- {
		out = side(out, line, i, i-1, i-2, half)
	}
	return out
}

func withoutRepeats(line []spot) []spot {
	var kept []spot
	for _, s := range line {
		if len(kept) == 0 || math.Hypot(s.x-kept[len(kept)-1].x, s.y-kept[len(kept)-1].y) > 1e-6 {
			kept = append(kept, s)
		}
	}
	return kept
}

// side adds the left side of the line from corner i to corner j, and the bend
// there towards corner k; where there is none, half a turn.
func side(out, line []spot, i, j, k int, half float64) []spot {
	a, b := line[i], line[j]
	from := math.Atan2(b.y-a.y, b.x-a.x)
	left := from + math.Pi/2
	out = append(out, away(a, left, half), away(b, left, half))
	if k < 0 || k >= len(line) {
		return arc(out, b, half, left, -math.Pi)
	}
	c := line[k]
	turn := math.Remainder(math.Atan2(c.y-b.y, c.x-b.x)-from, 2*math.Pi)
	if turn > 0 {
		return append(out, b)
	}
	return arc(out, b, half, left, turn)
}

// away is the place at a distance in a direction.
func away(a spot, direction, by float64) spot {
	return spot{a.x + float64(by*math.Cos(direction)), a.y + float64(by*math.Sin(direction))}
}

// arc adds the corners of an arc round a middle, so many that none is off the
// circle by more than a curve may be.
func arc(out []spot, middle spot, half, from, by float64) []spot {
	step := 2 * math.Acos(max(0, 1-off/max(half, off)))
	n := max(1, int(math.Ceil(math.Abs(by)/max(step, 0.1))))
	for i := 0; i <= n; i++ {
		out = append(out, away(middle, from+by*float64(i)/float64(n), half))
	}
	return out
}
