package raster

import (
	"fmt"
	"image"
	"image/draw"
	"math"

	"golang.org/x/image/font/sfnt"
	"golang.org/x/image/math/fixed"

	"headland/typeset"
)

// largestKept is the size of em, in 1/64 pixel, above which a glyph is drawn
// straight from its outline, and only where it can be seen. Masks up to this
// size mostly stay where vector's fixed-point arithmetic holds (512 pixels).
const largestKept = 384 * 64

// reach is how many pixels from its origin a glyph that is kept may go: four
// ems of the largest. Only a damaged one goes farther, and is cut off.
const reach = 4 * 384

// exact is a width at which vector reckons in floating point. Its fixed-point
// arithmetic is out by up to 1/512 pixel for each row that an edge crosses:
// nothing in a mask, but a pixel at the end of a long line.
const exact = 513

// draw makes the mask of a glyph, a number of quarters of a pixel right of a
// whole one.
func (m *Masks) draw(s *strike, id uint32, quarter int) *mask {
	out := m.outline(s, id)
	out.dx = float64(quarter) / quarters
	box := out.bounds().Intersect(image.Rect(-reach, -reach, reach, reach))
	k := &mask{x: box.Min.X, y: box.Min.Y, w: box.Dx(), h: box.Dy()}
	k.cover = make([]uint8, k.w*k.h)
	if area := m.fill(out, box, 0, k.cover); len(k.cover) <= mostFine && overlaps(area, k.cover) {
		m.fine(out, box, k.cover)
	}
	return k
}

// overlaps tells, from the area that contours run round, whether they cross:
// then less is inked, because some lies within two of them, or more, because
// one runs the other way. In a pixel where edges cross, vector takes both their
// shares for ink, though one lies under the other.
func overlaps(area float64, cover []uint8) bool {
	sum := 0
	for _, c := range cover {
		sum += int(c)
	}
	return math.Abs(area-float64(sum)/255) > 0.02+area/1000
}

// finer is how many pixels stand for one, each way, where contours overlap.
const finer = 4

// mostFine is how many pixels a glyph may have to be done again so: beyond, the
// few that are wrong don't show.
const mostFine = 512 * 512

// fine fills as fill does, from an image that is finer.
func (m *Masks) fine(o outline, box image.Rectangle, cover []uint8) {
	o.unit, o.dx, o.dy = o.unit*finer, o.dx*finer, o.dy*finer
	w, h := box.Dx(), box.Dy()
	great := m.rough(w * h * finer * finer)
	m.fill(o, image.Rectangle{Min: box.Min.Mul(finer), Max: box.Max.Mul(finer)}, 0, great)
	for i := range cover {
		at, sum := (i/w*w*finer+i%w)*finer, finer*finer/2
		for range finer {
			for _, c := range great[at : at+finer] {
				sum += int(c)
			}
			at += w * finer
		}
		cover[i] = uint8(sum / (finer * finer))
	}
}

// outline is a glyph's contours in font units, y down, and how to bring them
// to pixels.
type outline struct {
	segments sfnt.Segments // valid until the next outline is loaded
	unit     float64       // pixels in a font unit
	dx, dy   float64       // pixels to move by, after that
}

// outline loads the contours of a glyph. They are asked for at an em of as
// many 1/64 pixel as it has units, so that they come unrounded.
func (m *Masks) outline(s *strike, id uint32) outline {
	upem := s.face.UnitsPerEm()
	segments, err := loadGlyph(s.face, &m.buffer, id)
	if err != nil {
		segments = missing(upem)
	}
	return outline{segments: segments, unit: float64(s.size) / 64 / float64(upem)}
}

// loadGlyph reads a glyph. A face from somewhere else may be damaged in one
// glyph only; that must not end the program.
func loadGlyph(face *typeset.Face, b *sfnt.Buffer, id uint32) (segments sfnt.Segments, err error) {
	defer func() {
		if trouble := recover(); trouble != nil {
			segments, err = nil, fmt.Errorf("glyph %d is damaged: %v", id, trouble)
		}
	}()
	if id > math.MaxUint16 {
		return nil, sfnt.ErrNotFound
	}
	return face.Outlines().LoadGlyph(b, sfnt.GlyphIndex(id), fixed.Int26_6(face.UnitsPerEm()), nil)
}

// missing is what stands for a glyph that the face can't draw: an upright
// frame, as many faces draw their glyph 0, so that the loss is seen.
func missing(upem int32) sfnt.Segments {
	em := fixed.Int26_6(upem)
	left, right, top, foot, line := em/16, em/2, -em*2/3, fixed.Int26_6(0), em/24
	outer := contour(left, top, right, top, right, foot, left, foot)
	left, right, top, foot = left+line, right-line, top+line, foot-line
	return append(outer, contour(left, top, left, foot, right, foot, right, top)...)
}

// contour is straight lines through places given as x, y, x, y…
func contour(at ...fixed.Int26_6) sfnt.Segments {
	var c sfnt.Segments
	op := sfnt.SegmentOpMoveTo
	for i := 0; i < len(at); i += 2 {
		c = append(c, sfnt.Segment{Op: op, Args: [3]fixed.Point26_6{{X: at[i], Y: at[i+1]}}})
		op = sfnt.SegmentOpLineTo
	}
	return c
}

// at brings a place in font units to pixels.
func (o *outline) at(p fixed.Point26_6) spot {
	return spot{float64(float64(p.X)*o.unit) + o.dx, float64(float64(p.Y)*o.unit) + o.dy}
}

// bounds is the least rectangle of whole pixels that holds the contours;
// empty for a space.
func (o *outline) bounds() image.Rectangle {
	if len(o.segments) == 0 {
		return image.Rectangle{}
	}
	units := o.segments.Bounds()
	return pixels(o.at(units.Min), o.at(units.Max))
}

// fill works out how much of each pixel of box the outline covers, and gives
// the area in pixels that its contours run round. Cover has box's pixels, row
// by row. Least is 0, or exact.
func (m *Masks) fill(o outline, box image.Rectangle, least int, cover []uint8) float64 {
	if box.Empty() {
		return 0
	}
	m.raster.Reset(max(box.Dx(), least), box.Dy())
	o.dx -= float64(box.Min.X)
	o.dy -= float64(box.Min.Y)
	t := tracer{z: &m.raster}
	t.outline(&o)
	m.settle(box.Dx(), box.Dy(), cover)
	return t.area()
}

// settle takes what the rasterizer has gathered as coverage of w by h pixels,
// whatever cover held before.
func (m *Masks) settle(w, h int, cover []uint8) {
	m.raster.DrawOp = draw.Src
	r := image.Rect(0, 0, w, h)
	m.raster.Draw(&image.Alpha{Pix: cover, Stride: w, Rect: r}, r, image.Opaque, image.Point{})
}

// rough gives scratch coverage of n pixels. It is overwritten by the next call.
func (m *Masks) rough(n int) []uint8 {
	if cap(m.scratch) < n {
		m.scratch = make([]uint8, n)
	}
	return m.scratch[:n]
}
