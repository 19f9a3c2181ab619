package raster

import (
	"encoding/binary"
	"image"
	"image/color"
	"image/draw"
	"math"
	"math/rand/v2"
	"testing"
)

// apart is the greatest difference of two colours in any channel.
func apart(a, b color.RGBA) int {
	far := 0
	for _, d := range []int{int(a.R) - int(b.R), int(a.G) - int(b.G), int(a.B) - int(b.B), int(a.A) - int(b.A)} {
		far = max(far, d, -d)
	}
	return far
}

// Every lane of a word must round as one number does.
func TestShadeRoundsToTheNearest(t *testing.T) {
	for v := range uint64(256) {
		for part := range uint64(256) {
			want := uint64(math.Round(float64(v*part) / 255))
			if got := shade(v|v<<16|v<<32|v<<48, part); got != want|want<<16|want<<32|want<<48 {
				t.Fatalf("%d × %d/255 = %x, want %x in each lane", v, part, got, want)
			}
		}
	}
}

func TestPackUndoesSpread(t *testing.T) {
	for _, v := range []uint32{0, 0xFFFFFFFF, 0x12345678, 0xFF00FF00, 0x80000001} {
		if got := pack(spread(v)); got != v {
			t.Errorf("%08x comes back as %08x", v, got)
		}
	}
}

func anyColour(r *rand.Rand) color.RGBA {
	a := r.IntN(256)
	if r.IntN(2) == 0 {
		a = 255
	}
	part := func() uint8 { return uint8(r.IntN(a + 1)) }
	return color.RGBA{part(), part(), part(), uint8(a)}
}

// The standard library's image/draw is the reference for what source over
// gives. It rounds down, twice; we round to the nearest.
func TestBlendAgreesWithImageDraw(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 2))
	cover := image.NewAlpha(image.Rect(0, 0, 256, 1))
	for i := range cover.Pix {
		cover.Pix[i] = uint8(i)
	}
	for range 400 {
		under, over := anyColour(r), anyColour(r)
		got, want := sheet(cover.Rect, under), sheet(cover.Rect, under)
		m := NewMasks(0)
		pen := m.On(got, 1, image.Point{})
		if r.IntN(2) == 0 {
			pen.look(cover.Rect, m.dip(over))
		}
		pen.lay(cover.Pix, cover.Rect, m.dip(over))
		draw.DrawMask(want, want.Rect, image.NewUniform(over), image.Point{}, cover, image.Point{}, draw.Over)
		for x := range 256 {
			if g, w := got.RGBAAt(x, 0), want.RGBAAt(x, 0); apart(g, w) > 2 {
				t.Fatalf("%v over %v at %d: got %v, want %v", over, under, x, g, w)
			}
		}
	}
}

// Knowing the ground must make no difference.
func TestGroundChangesNothing(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 4))
	for range 2000 {
		var w inkwell
		w.fill(anyColour(r))
		under := word(anyColour(r))
		w.prepare(under)
		cover := uint8(r.IntN(256))
		pixel := binary.LittleEndian.AppendUint32(nil, under)
		w.dot(pixel, cover)
		if got := binary.LittleEndian.Uint32(pixel); got != w.onto[cover] {
			t.Fatalf("on the ground %08x, off it %08x", w.onto[cover], got)
		}
	}
}

func TestImpossibleInkDoesNotSpill(t *testing.T) {
	m := NewMasks(0)
	img := sheet(image.Rect(0, 0, 1, 1), white)
	m.On(img, 1, image.Point{}).Fill(area(0, 0, 1, 1), color.RGBA{R: 255, A: 10})
	if got, want := img.RGBAAt(0, 0), (color.RGBA{255, 245, 245, 255}); got != want {
		t.Errorf("got %v, want %v", got, want)
	}
}
