package raster

import (
	"bytes"
	"errors"
	"hash/crc32"
	"image"
	"image/color"
	"image/png"
	"math"
	"testing"

	"headland/pagemodel"
	"headland/typeset"
)

func TestImageIsTheWholePageTight(t *testing.T) {
	pg := garamond(t).page(pt(11), pt(14), "One line.")
	img := Image(pg, 1.9, NewMasks(1<<20), paper, ink)
	if img.Rect.Min != (image.Point{}) || img.Rect.Max != Size(pg.Trim, 1.9) || img.Stride != 4*img.Rect.Dx() {
		t.Errorf("%v, stride %d", img.Rect, img.Stride)
	}
	if got := img.RGBAAt(0, 0); got != paper {
		t.Errorf("the corner is %v", got)
	}
}

// Each half of a spread is the page as it is drawn alone, byte for byte.
func TestSpreadIsItsPages(t *testing.T) {
	m := NewMasks(1 << 20)
	left := garamond(t).page(pt(11), pt(14), "On the left,", "a verso.")
	right := garamond(t).page(pt(12), pt(15), "On the right,", "a recto that runs out past its own fore-edge and is cut off there")
	right.Trim = pagemodel.Trim{Width: left.Trim.Width - pt(7.3), Height: left.Trim.Height + pt(4)}
	clear := color.RGBA{}
	for _, c := range []struct{ verso, recto *typeset.Page }{{left, right}, {left, nil}, {nil, right}} {
		got := Spread(c.verso, c.recto, 1.37, m, paper, ink)
		halves := []*image.RGBA{pageOrGap(c.verso, c.recto, m), pageOrGap(c.recto, c.verso, m)}
		split := halves[0].Rect.Dx()
		if got.Rect.Dx() != split+halves[1].Rect.Dx() {
			t.Errorf("the spread is %v wide", got.Rect.Dx())
		}
		for y := range got.Rect.Dy() {
			for x := range got.Rect.Dx() {
				want := clear
				if side, at := x/split, x%split; x < 2*split && y < halves[min(side, 1)].Rect.Dy() {
					want = halves[side].RGBAAt(at, y)
				}
				if got.RGBAAt(x, y) != want {
					t.Fatalf("pixel %d,%d is %v, want %v", x, y, got.RGBAAt(x, y), want)
				}
			}
		}
	}
	if got := Spread(nil, nil, 2, m, paper, ink); !got.Rect.Empty() {
		t.Errorf("no page takes %v", got.Rect)
	}
}

// pageOrGap is a page, or a clear area as large as the one it faces.
func pageOrGap(pg, facing *typeset.Page, m *Masks) *image.RGBA {
	if pg == nil {
		return image.NewRGBA(image.Rectangle{Max: Size(facing.Trim, 1.37)})
	}
	return Image(pg, 1.37, m, paper, ink)
}

func TestPNGSaysItsResolution(t *testing.T) {
	pg := garamond(t).page(pt(11), pt(14), "Three hundred to the inch")
	img := Image(pg, 300.0/72, NewMasks(1<<20), paper, ink)
	var a, b bytes.Buffer
	for _, out := range []*bytes.Buffer{&a, &b} {
		if err := WritePNG(out, img, 300.0/72); err != nil {
			t.Fatal(err)
		}
	}
	if !bytes.Equal(a.Bytes(), b.Bytes()) {
		t.Error("the same page gives two files")
	}
	// 300 dpi is 11811 pixels per metre; CRC-32 over type and data.
	want := []byte{0, 0, 0, 9, 'p', 'H', 'Y', 's', 0, 0, 0x2E, 0x23, 0, 0, 0x2E, 0x23, 1}
	if got := a.Bytes()[33:50]; !bytes.Equal(got, want) {
		t.Errorf("after IHDR there is % x, want % x", got, want)
	}
	if sum := crc32.ChecksumIEEE(want[4:]); !bytes.Equal(a.Bytes()[50:54], []byte{byte(sum >> 24), byte(sum >> 16), byte(sum >> 8), byte(sum)}) {
		t.Error("the CRC is wrong")
	}
	back, err := png.Decode(&a)
	if err != nil {
		t.Fatal(err)
	}
	for y := range img.Rect.Dy() {
		for x := range img.Rect.Dx() {
			if got := color.RGBAModel.Convert(back.At(x, y)); got != img.RGBAAt(x, y) {
				t.Fatalf("pixel %d,%d comes back as %v", x, y, got)
			}
		}
	}
}

// broken takes so many bytes and then fails.
type broken struct{ left int }

var errFull = errors.New("no room")

func (b *broken) Write(p []byte) (int, error) {
	if b.left -= len(p); b.left < 0 {
		return 0, errFull
	}
	return len(p), nil
}

func TestPNGErrors(t *testing.T) {
	img := sheet(image.Rect(0, 0, 4, 4), white)
	for _, scale := range []float64{0, -2, math.NaN(), math.Inf(1), 1e9} {
		if err := WritePNG(&bytes.Buffer{}, img, scale); err == nil {
			t.Errorf("no error at %v pixels per point", scale)
		}
	}
	if err := WritePNG(&bytes.Buffer{}, image.NewRGBA(image.Rectangle{}), 2); err == nil {
		t.Error("no error for an empty image")
	}
	for _, room := range []int{0, 33, 54} {
		if err := WritePNG(&broken{room}, img, 2); !errors.Is(err, errFull) {
			t.Errorf("with room for %d bytes: %v", room, err)
		}
	}
}
