package raster

import (
	"flag"
	"image"
	"image/color"
	"image/draw"
	"image/png"
	"os"
	"path/filepath"
	"testing"

	"headland/assets"
	"headland/typeset"
)

var update = flag.Bool("update", false, "write the golden pictures anew")

// What may differ between processors: a few rounded values.
const (
	goldenDelta = 4    // in a channel
	goldenShare = 0.01 // of the pixels may be farther out
)

// golden compares a picture with testdata/name. What differs is left in
// testdata/failed, as it came out and with every wrong pixel in red.
func golden(t *testing.T, name string, got *image.RGBA) {
	t.Helper()
	path := filepath.Join("testdata", name)
	if *update {
		save(t, path, got)
		return
	}
	want := load(t, path)
	diff, wrong := differing(got, want)
	if wrong <= goldenShare*float64(len(got.Pix)/4) && got.Rect == want.Rect {
		return
	}
	save(t, filepath.Join("testdata", "failed", name), got)
	save(t, filepath.Join("testdata", "failed", "diff-"+name), diff)
	t.Errorf("%s: %v pixels of %v differ; see testdata/failed (-update accepts)", name, wrong, got.Rect.Size())
}

// differing marks in red where two pictures differ, and counts.
func differing(got, want *image.RGBA) (diff *image.RGBA, wrong float64) {
	diff = image.NewRGBA(got.Rect.Union(want.Rect))
	for y := range diff.Rect.Dy() {
		for x := range diff.Rect.Dx() {
			diff.SetRGBA(x, y, white)
			if apart(got.RGBAAt(x, y), want.RGBAAt(x, y)) > goldenDelta {
				diff.SetRGBA(x, y, color.RGBA{R: 255, A: 255})
				wrong++
			}
		}
	}
	return diff, wrong
}

func save(t *testing.T, path string, img *image.RGBA) {
	t.Helper()
	if err := os.MkdirAll(filepath.Dir(path), 0o755); err != nil {
		t.Fatal(err)
	}
	f, err := os.Create(path)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	if err := png.Encode(f, img); err != nil {
		t.Fatal(err)
	}
}

func load(t *testing.T, path string) *image.RGBA {
	t.Helper()
	f, err := os.Open(path)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	picture, err := png.Decode(f)
	if err != nil {
		t.Fatal(err)
	}
	img := image.NewRGBA(picture.Bounds())
	draw.Draw(img, img.Rect, picture, picture.Bounds().Min, draw.Src)
	return img
}

// Roman, italic, TrueType and CFF, ligatures, marks, three sizes.
func TestGoldenType(t *testing.T) {
	img := sheet(image.Rect(0, 0, 360, 250), paper)
	p := NewMasks(1<<20).On(img, 1.9, image.Point{})
	y := -2.0
	for _, c := range []*caster{garamond(t), cast(t, assets.EBGaramond, true), gentium(t)} {
		for _, size := range []float64{7, 10.5, 18} {
			run := c.run("office, “AVow” — naïve Å8", pt(size))
			y += 1.2 * size
			p.Run(&run, pt(6), pt(y), ink)
		}
	}
	golden(t, "type.png", img)
}

// The shapes that the window is drawn with, reaching over the edges.
func TestGoldenShapes(t *testing.T) {
	img := sheet(image.Rect(0, 0, 240, 160), paper)
	p := NewMasks(1<<20).On(img, 2, image.Point{})
	p.Hatch(area(-4, 8, 22, 60), pt(3.5), rust)
	p.Fill(area(24, 8, 20, 12.3), ink)
	p.Fill(area(34, 14, 20, 12.3), rust)
	for i := range 6 {
		width := 0.5 * float64(i+1)
		p.Stroke(at(60, 10+3*float64(i)), at(130, 10+3*float64(i)), width, ink)
		p.Stroke(at(62+4*float64(i), 32), at(62+4*float64(i), 52), width, ink)
		p.Stroke(at(90, 34), at(116, 30+8*float64(i)), width, ink)
	}
	p.Polygon([]typeset.Point{at(24, 40), at(52, 36), at(44, 84), at(38, 50)}, rust)
	golden(t, "shapes.png", img)
}
