package ui

import (
	"image"
	"image/color"

	"headland/assets"
	"headland/pagemodel"
	"headland/typeset"
	"headland/typeset/raster"
)

// masksLimit is how many bytes of glyph shapes the window keeps.
const masksLimit = 24 << 20

// Sizes of the words on the desk, in the toolkit's units.
const (
	titleSize = 22
	wordSize  = 17
)

// inker sets and draws words on the desk. Its setter is its own: the book's
// faces do not change how the desk speaks.
type inker struct {
	setter *typeset.Setter
	masks  *raster.Masks
}

func newInker() *inker {
	return &inker{typeset.NewSetter(typeset.Bundled()), raster.NewMasks(masksLimit)}
}

// words sets words at a size in units of the toolkit, which stand for points.
func (k *inker) words(text string, size float64, italic bool) typeset.Run {
	return k.setter.Words(text, typeset.WordStyle{Family: assets.EBGaramond, Size: pagemodel.Pt(size), Italic: italic})
}

// slate is an image of a part of the desk and the pen that writes on it.
type slate struct {
	img     *image.RGBA
	pen     *raster.Pen
	density float64
}

// slate begins an image of w by h device pixels on a ground.
func (k *inker) slate(img *image.RGBA, density float64, ground color.RGBA) *slate {
	s := &slate{img, k.masks.On(img, density, image.Point{}), density}
	s.pen.Clear(ground)
	return s
}

// slateAt begins an image of the part of the desk that has its top left corner
// there, on a ground. What is drawn on it is placed as on the whole desk.
func (k *inker) slateAt(img *image.RGBA, at image.Point, density float64, ground color.RGBA) *slate {
	part := &image.RGBA{Pix: img.Pix, Stride: img.Stride, Rect: img.Rect.Add(at)}
	return k.slate(part, density, ground)
}

// unit is a device pixel as a distance for the pen.
func (s *slate) unit(px int) typeset.Length { return pagemodel.Pt(float64(px) / s.density) }

// px is a length in device pixels.
func (s *slate) px(l typeset.Length) int { return int(l.Points()*s.density + 0.5) }

// write writes words from x on a baseline, both in device pixels, and gives
// the x where they end.
func (s *slate) write(run typeset.Run, x, baseline int, ink color.RGBA) int {
	s.pen.Run(&run, s.unit(x), s.unit(baseline), ink)
	return x + s.px(run.Width)
}

// fill fills a rectangle of whole device pixels.
func (s *slate) fill(r image.Rectangle, c color.RGBA) { fill(s.img, r, c) }

// fill fills a rectangle of an image with an opaque colour.
func fill(img *image.RGBA, r image.Rectangle, c color.RGBA) {
	r = r.Intersect(img.Rect)
	if r.Empty() {
		return
	}
	first := img.Pix[img.PixOffset(r.Min.X, r.Min.Y):][:4*r.Dx()]
	for i := 0; i < len(first); i += 4 {
		first[i], first[i+1], first[i+2], first[i+3] = c.R, c.G, c.B, c.A
	}
	for y := r.Min.Y + 1; y < r.Max.Y; y++ {
		copy(img.Pix[img.PixOffset(r.Min.X, y):], first)
	}
}

// frame draws the border of a rectangle, inside it.
func frame(img *image.RGBA, r image.Rectangle, thick int, c color.RGBA) {
	fill(img, image.Rect(r.Min.X, r.Min.Y, r.Max.X, r.Min.Y+thick), c)
	fill(img, image.Rect(r.Min.X, r.Max.Y-thick, r.Max.X, r.Max.Y), c)
	fill(img, image.Rect(r.Min.X, r.Min.Y, r.Min.X+thick, r.Max.Y), c)
	fill(img, image.Rect(r.Max.X-thick, r.Min.Y, r.Max.X, r.Max.Y), c)
}

// blend is a colour between two, share of the way from a to b.
func blend(a, b color.RGBA, share float64) color.RGBA {
	mix := func(x, y uint8) uint8 { return uint8(float64(x) + (float64(y)-float64(x))*share + 0.5) }
	return color.RGBA{mix(a.R, b.R), mix(a.G, b.G), mix(a.B, b.B), 0xFF}
}

// buffers are two images of one size, used in turn, so that the one on the
// screen is never drawn on.
type buffers struct {
	images [2]*image.RGBA
	turn   int
}

// next is the image to draw on, of w by h device pixels.
func (b *buffers) next(w, h int) *image.RGBA {
	b.turn = 1 - b.turn
	if img := b.images[b.turn]; img == nil || img.Rect.Dx() != w || img.Rect.Dy() != h {
		b.images[b.turn] = image.NewRGBA(image.Rect(0, 0, w, h))
	}
	return b.images[b.turn]
}

// last is the image drawn last, if it has that size.
func (b *buffers) last(w, h int) (*image.RGBA, bool) {
	img := b.images[b.turn]
	return img, img != nil && img.Rect.Dx() == w && img.Rect.Dy() == h
}
