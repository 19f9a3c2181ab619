package raster

import (
	"encoding/binary"
	"image"
	"image/color"
)

// A pixel's four channels are blended at once, as four lanes of 16 bits in one
// word: R lowest, then G, B and A.
const (
	lanes  = 0x00FF00FF00FF00FF
	halves = 0x0080008000800080
)

// spread parts a pixel, read little end first, into lanes.
func spread(pixel uint32) uint64 {
	v := uint64(pixel)
	v = (v | v<<16) & 0x0000FFFF0000FFFF
	return (v | v<<8) & lanes
}

// pack is the way back.
func pack(v uint64) uint32 {
	v = (v | v>>8) & 0x0000FFFF0000FFFF
	return uint32(v | v>>16)
}

// shade multiplies every lane by part/255, to the nearest.
func shade(v uint64, part uint64) uint64 {
	v = v*part + halves
	return (v + v>>8&lanes) >> 8 & lanes
}

// inkwell is one ink at each of 256 coverages, and what that gives on the
// ground that most of it is laid on.
type inkwell struct {
	ink    color.RGBA
	filled bool
	at     [256]uint64 // the ink in lanes, by coverage
	ground uint32
	onto   [256]uint32 // the pixel that is left on ground, by coverage
}

// dip gives the well of an ink. It is good until the next dip.
func (m *Masks) dip(ink color.RGBA) *inkwell {
	w := &m.well
	if !w.filled || w.ink != ink {
		w.fill(ink)
	}
	return w
}

// fill prepares an ink. A channel greater than alpha, which no premultiplied
// colour has, is brought down to it, or it would spill into the next lane.
func (w *inkwell) fill(ink color.RGBA) {
	w.ink, w.filled = ink, true
	ink.R, ink.G, ink.B = min(ink.R, ink.A), min(ink.G, ink.A), min(ink.B, ink.A)
	v := spread(word(ink))
	for cover := range w.at {
		w.at[cover] = shade(v, uint64(cover))
	}
	w.prepare(w.ground)
}

// prepare works out what the ink gives on a ground.
func (w *inkwell) prepare(ground uint32) {
	w.ground = ground
	under := spread(ground)
	for cover, v := range w.at {
		w.onto[cover] = over(under, v)
	}
}

// over lays ink over what is under it, both in lanes, and gives the pixel:
// Porter and Duff's source over.
func over(under, ink uint64) uint32 { return pack(ink + shade(under, 255-ink>>48)) }

// word is a colour as a pixel, to be written little end first.
func word(c color.RGBA) uint32 {
	return uint32(c.R) | uint32(c.G)<<8 | uint32(c.B)<<16 | uint32(c.A)<<24
}

// look takes the pixel at a corner of box for the ground, if it is seen. It
// matters to the speed only, never to what is drawn.
func (p *Pen) look(box image.Rectangle, w *inkwell) {
	if !box.Min.In(p.img.Rect) {
		return
	}
	if ground := binary.LittleEndian.Uint32(p.img.Pix[p.img.PixOffset(box.Min.X, box.Min.Y):]); ground != w.ground {
		w.prepare(ground)
	}
}

// lay lays ink on box, as thick as cover says, which has the box's pixels row
// by row. What lies outside the image is left out.
func (p *Pen) lay(cover []uint8, box image.Rectangle, w *inkwell) {
	seen := box.Intersect(p.img.Rect)
	if seen.Empty() {
		return
	}
	width, n := box.Dx(), seen.Dx()
	from := (seen.Min.Y-box.Min.Y)*width + seen.Min.X - box.Min.X
	to := p.img.PixOffset(seen.Min.X, seen.Min.Y)
	for range seen.Dy() {
		w.row(p.img.Pix[to:to+4*n], cover[from:from+n])
		from += width
		to += p.img.Stride
	}
}

// row lays ink on a row of pixels.
func (w *inkwell) row(pix, cover []uint8) {
	ground := w.ground
	for ; len(cover) > 0 && len(pix) >= 4; pix, cover = pix[4:], cover[1:] {
		under := binary.LittleEndian.Uint32(pix)
		if under == ground {
			binary.LittleEndian.PutUint32(pix, w.onto[cover[0]])
		} else if cover[0] != 0 {
			w.dot(pix, cover[0])
		}
	}
}

// even lays ink of one coverage on a rectangle, cut to the image.
func (p *Pen) even(r image.Rectangle, w *inkwell) {
	r = r.Intersect(p.img.Rect)
	if r.Empty() {
		return
	}
	if w.ink.A == 255 {
		p.flood(r, w.ink)
		return
	}
	for y := r.Min.Y; y < r.Max.Y; y++ {
		at := p.img.PixOffset(r.Min.X, y)
		w.solid(p.img.Pix[at : at+4*r.Dx()])
	}
}

// solid lays ink on every pixel of a row.
func (w *inkwell) solid(pix []uint8) {
	for ; len(pix) > 0; pix = pix[4:] {
		w.dot(pix, 255)
	}
}

// dot lays ink on the first of some pixels.
func (w *inkwell) dot(pix []uint8, cover uint8) {
	binary.LittleEndian.PutUint32(pix, over(spread(binary.LittleEndian.Uint32(pix)), w.at[cover]))
}

// flood writes a colour over a rectangle of the image.
func (p *Pen) flood(r image.Rectangle, c color.RGBA) {
	if r.Empty() {
		return
	}
	at, n := p.img.PixOffset(r.Min.X, r.Min.Y), 4*r.Dx()
	if n == p.img.Stride {
		flood(p.img.Pix[at:at+n*r.Dy()], c)
		return
	}
	first := p.img.Pix[at : at+n]
	flood(first, c)
	for range r.Dy() - 1 {
		at += p.img.Stride
		copy(p.img.Pix[at:at+n], first)
	}
}

// floodStep is as many bytes as are copied at a time: few enough to stay close
// to the processor.
const floodStep = 16 << 10

// flood writes a colour to every pixel, by copying what it has written.
func flood(pix []uint8, c color.RGBA) {
	binary.LittleEndian.PutUint32(pix, word(c))
	for done := 4; done < len(pix); {
		done += copy(pix[done:], pix[:min(done, floodStep)])
	}
}
