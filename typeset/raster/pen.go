package raster

import (
	"image"
	"image/color"
	"math"

	"headland/typeset"
)

// Pen draws on one image, at one scale. What falls outside the image is cut
// off at its edge. To draw again only part of a page, put the pen on a SubImage
// with the same origin. Like its [Masks], a Pen is not for two goroutines.
type Pen struct {
	masks  *Masks
	img    *image.RGBA
	per    int64 // device pixels in a Length, times 2^32
	origin image.Point
}

// oneBits is how many bits of Pen.per stand behind the point.
const oneBits = 32

// greatestScale keeps every product of a scale and a length of up to a hundred
// metres within 64 bits.
const greatestScale = 4096

// On puts a pen on an image. Scale is device pixels per point, up to 4096;
// origin is the device pixel at the trim's top left corner, in the image's own
// coordinates, and may lie outside the image. Nothing is drawn at a scale that
// isn't above 0.
func (m *Masks) On(img *image.RGBA, scale float64, origin image.Point) *Pen {
	return &Pen{masks: m, img: img, per: perLength(scale), origin: origin}
}

// perLength is a scale as device pixels per Length, times 2^32. With whole
// numbers from here on, every machine rounds alike.
func perLength(scale float64) int64 {
	if !(scale > 0) {
		return 0
	}
	return int64(math.Round(min(scale, greatestScale) / float64(typeset.Length(64)) * (1 << oneBits)))
}

// scaled is a length in device pixels times 2^bits, to the nearest.
func scaled(l typeset.Length, per int64, bits uint) int {
	return int((int64(l)*per + 1<<(oneBits-1-bits)) >> (oneBits - bits))
}

// X is the edge between device pixels that is nearest to a distance from the
// left of the trim: the pixel to the right of that edge, in the image's
// coordinates. Everything that is drawn is placed by this rule, so that equal
// lengths meet.
func (p *Pen) X(l typeset.Length) int { return p.origin.X + scaled(l, p.per, 0) }

// Y is the same for a distance from the top of the trim: the device pixel
// below the nearest edge.
func (p *Pen) Y(l typeset.Length) int { return p.origin.Y + scaled(l, p.per, 0) }

// At is the place on the page of a device pixel's middle, in the image's
// coordinates, to the nearest 1/64 pt: for finding what the hand is on.
func (p *Pen) At(pixel image.Point) typeset.Point {
	return typeset.Point{X: p.length(pixel.X - p.origin.X), Y: p.length(pixel.Y - p.origin.Y)}
}

func (p *Pen) length(pixels int) typeset.Length {
	if p.per == 0 {
		return 0
	}
	return typeset.Length(math.Round((float64(pixels) + 0.5) * (1 << oneBits) / float64(p.per)))
}

// Page draws all rows of a page. Ink is premultiplied, here and everywhere.
func (p *Pen) Page(pg *typeset.Page, ink color.RGBA) {
	for i := range pg.Rows {
		r := &pg.Rows[i]
		for k := range r.Runs {
			run := &r.Runs[k]
			if r.Turned {
				p.TurnedRun(run, r.X+run.X, r.Baseline, pg.Trim.Height, ink)
			} else {
				p.Run(run, r.X+run.X, r.Baseline, ink)
			}
		}
	}
}

// Run draws a run with its origin at x and baseline, from the trim's top left
// corner. The run's own X is not added, so that a run can be drawn anywhere.
func (p *Pen) Run(run *typeset.Run, x, baseline typeset.Length, ink color.RGBA) {
	y := p.Y(baseline)
	p.run(run, ink, false, func(g *typeset.Glyph) (image.Point, int) {
		at := scaled(x+g.X, p.per, 2)
		return image.Pt(p.origin.X+at>>2, y+scaled(g.Y, p.per, 0)), at & 3
	})
}

// TurnedRun draws a run of a row that lies on its side, on a page that is height
// high: x counts up from the foot of the trim, baseline right from its left edge
// (see [typeset.Row]). Its pixels are the quarter turn of those that Run would
// draw in such a frame.
func (p *Pen) TurnedRun(run *typeset.Run, x, baseline, height typeset.Length, ink color.RGBA) {
	left, foot := p.X(baseline), p.Y(height)
	p.run(run, ink, true, func(g *typeset.Glyph) (image.Point, int) {
		at := scaled(x+g.X, p.per, 2)
		return image.Pt(left+scaled(g.Y, p.per, 0), foot-at>>2), at & 3
	})
}

// run draws a run's glyphs where place puts their origins: at a pixel, and some
// quarters of one farther on along the line.
func (p *Pen) run(run *typeset.Run, ink color.RGBA, turned bool, place func(*typeset.Glyph) (image.Point, int)) {
	size := scaled(run.Size, p.per, 6)
	if size <= 0 || run.Face == nil {
		return
	}
	well := p.masks.dip(ink)
	s := p.masks.strike(run.Face, size)
	for i := range run.Glyphs {
		g := &run.Glyphs[i]
		at, quarter := place(g)
		if size > largestKept {
			p.large(s, g.ID, at, quarter, turned, well)
			continue
		}
		k := p.masks.glyph(s, g.ID, quarter, turned)
		box := image.Rect(k.x, k.y, k.x+k.w, k.y+k.h).Add(at)
		if i == 0 {
			p.look(box, well)
		}
		p.lay(k.cover, box, well)
	}
}

// large draws the part of a great glyph that can be seen.
func (p *Pen) large(s *strike, id uint32, at image.Point, quarter int, turned bool, well *inkwell) {
	out := p.masks.outline(s, id)
	out.dx = float64(quarter) / quarters
	seen := p.img.Rect.Sub(at)
	if turned {
		seen = uprightBox(seen)
	}
	box := out.bounds().Intersect(seen)
	if box.Empty() {
		return
	}
	cover := p.masks.rough(box.Dx() * box.Dy())
	p.masks.fill(out, box, exact, cover)
	if turned {
		cover, box = turnedCover(cover, box.Dx()), turnedBox(box)
	}
	p.lay(cover, box.Add(at), well)
}

// Clear makes the whole image one colour, whatever was there.
func (p *Pen) Clear(paper color.RGBA) {
	p.flood(p.img.Rect, paper)
}
