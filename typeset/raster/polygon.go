package raster

import (
	"image"
	"image/color"
	"math"

	"headland/typeset"
)

// spot is a place in device pixels, in the image's coordinates.
type spot struct{ x, y float64 }

// Polygon inks what a closed chain of points encloses, antialiased, with its
// corners where they are and not on whole pixels. Where the chain crosses
// itself, what it runs round in either sense is inked (the non-zero rule).
// Fewer than three points enclose nothing. The points are only read.
func (p *Pen) Polygon(points []typeset.Point, ink color.RGBA) {
	spots := make([]spot, len(points))
	for i, at := range points {
		spots[i] = spot{p.place(p.origin.X, at.X), p.place(p.origin.Y, at.Y)}
	}
	p.polygon(spots, ink)
}

// place is a length in device pixels, not rounded to whole ones.
func (p *Pen) place(origin int, l typeset.Length) float64 {
	return float64(origin) + float64(scaled(l, p.per, 8))/256
}

// polygon inks a chain of places in pixels.
func (p *Pen) polygon(chain []spot, ink color.RGBA) {
	chain = within(chain, p.img.Rect)
	box := around(chain).Intersect(p.img.Rect)
	if box.Empty() {
		return
	}
	m := p.masks
	m.raster.Reset(max(box.Dx(), exact), box.Dy())
	t := tracer{z: &m.raster}
	for i, s := range chain {
		at := spot{s.x - float64(box.Min.X), s.y - float64(box.Min.Y)}
		if i == 0 {
			t.move(at)
			continue
		}
		t.line(at)
	}
	t.close()
	cover := m.rough(box.Dx() * box.Dy())
	m.settle(box.Dx(), box.Dy(), cover)
	p.lay(cover, box, m.dip(ink))
}

// around is the least rectangle of whole pixels that holds a chain; empty for
// fewer than three places.
func around(chain []spot) image.Rectangle {
	if len(chain) < 3 {
		return image.Rectangle{}
	}
	low, high := chain[0], chain[0]
	for _, s := range chain {
		low = spot{min(low.x, s.x), min(low.y, s.y)}
		high = spot{max(high.x, s.x), max(high.y, s.y)}
	}
	return pixels(low, high)
}

// pixels is the least rectangle of whole pixels that holds two corners.
func pixels(low, high spot) image.Rectangle {
	return image.Rect(
		int(math.Floor(low.x)), int(math.Floor(low.y)),
		int(math.Ceil(high.x)), int(math.Ceil(high.y)))
}

// within cuts a chain to a rectangle, edge by edge (Sutherland and Hodgman).
// Where a cut leaves several pieces they hang together by lines along the edge,
// which cover nothing.
func within(chain []spot, r image.Rectangle) []spot {
	x0, y0, x1, y1 := float64(r.Min.X), float64(r.Min.Y), float64(r.Max.X), float64(r.Max.Y)
	chain = cut(chain, func(s spot) float64 { return s.x - x0 })
	chain = cut(chain, func(s spot) float64 { return x1 - s.x })
	chain = cut(chain, func(s spot) float64 { return s.y - y0 })
	return cut(chain, func(s spot) float64 { return y1 - s.y })
}

// cut keeps what is inside an edge; inside is how far a place is from it, less
// than 0 without.
func cut(chain []spot, inside func(spot) float64) []spot {
	var kept []spot
	for i, b := range chain {
		a := chain[(i+len(chain)-1)%len(chain)]
		da, db := inside(a), inside(b)
		if (da < 0) != (db < 0) {
			t := da / (da - db)
			kept = append(kept, spot{a.x + (b.x-a.x)*t, a.y + (b.y-a.y)*t})
		}
		if db >= 0 {
			kept = append(kept, b)
		}
	}
	return kept
}
