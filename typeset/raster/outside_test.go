package raster

import (
	"bytes"
	"image"
	"image/color"
	"image/draw"
	"image/png"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"testing"

	"headland/assets"
	"headland/pagemodel"
	"headland/typeset"
)

// letters are single characters of every make: straight, round, composed,
// with a descender, with two contours, narrow and wide.
const letters = "Qgfx&WéæiÅ;’—8ßo"

// threeFaces have cubic curves, quadratic ones, and contours that overlap.
func threeFaces(t *testing.T) map[string]*caster {
	return map[string]*caster{"garamond": garamond(t), "italic": cast(t, assets.EBGaramond, true), "gentium": gentium(t)}
}

// A small glyph must be a great one seen from afar: each of its pixels is the
// mean of 16 by 16 of the great one's. That holds quarters of a pixel, too.
func TestSmallGlyphsAreGreatOnesFromAfar(t *testing.T) {
	const near = 16
	for name, c := range threeFaces(t) {
		for _, letter := range letters {
			for quarter := range 4 {
				x := pt(10) + typeset.Length(16*quarter)
				run := c.run(string(letter), pt(21))
				small, great := sheet(image.Rect(0, 0, 48, 48), white), sheet(image.Rect(0, 0, 48*near, 48*near), white)
				m := NewMasks(1 << 20)
				m.On(small, 1, image.Point{}).Run(&run, x, pt(30), black)
				m.On(great, near, image.Point{}).Run(&run, x, pt(30), black)
				if far := farthest(small, shrunk(great, near)); far > 6 || coverage(small) < 1 {
					t.Errorf("%s, %c, quarter %d: out by %d", name, letter, quarter, far)
				}
			}
		}
	}
}

// shrunk is an image whose pixels are means of squares.
func shrunk(img *image.RGBA, side int) *image.RGBA {
	small := image.NewRGBA(image.Rect(0, 0, img.Rect.Dx()/side, img.Rect.Dy()/side))
	for y := range small.Rect.Dy() {
		for x := range small.Rect.Dx() {
			sum := 0
			for i := range side * side {
				sum += int(img.RGBAAt(x*side+i%side, y*side+i/side).R)
			}
			grey := uint8((sum + side*side/2) / (side * side))
			small.SetRGBA(x, y, color.RGBA{grey, grey, grey, 255})
		}
	}
	return small
}

// farthest is the greatest difference of two images of one size.
func farthest(a, b *image.RGBA) int {
	far := 0
	for i := range a.Pix {
		far = max(far, int(a.Pix[i])-int(b.Pix[i]), int(b.Pix[i])-int(a.Pix[i]))
	}
	return far
}

// The reference is hb-view, of HarfBuzz, which draws with Cairo: another
// reader of the font, another shaper's build and another rasterizer.
func TestGlyphsAgreeWithHarfBuzz(t *testing.T) {
	tool, err := exec.LookPath("hb-view")
	if err != nil {
		t.Fatalf("hb-view is needed for this test (Debian: libharfbuzz-bin): %v", err)
	}
	for name, c := range threeFaces(t) {
		file := filepath.Join(t.TempDir(), name)
		if err := os.WriteFile(file, c.face.Data(), 0o600); err != nil {
			t.Fatal(err)
		}
		for _, letter := range letters {
			harfbuzzText(t, tool, file, c, string(letter), 0.01)
		}
		// Cairo places glyphs on quarters of a pixel by a rule of its own.
		harfbuzzText(t, tool, file, c, "first office, AVow & Wharf", 0.04)
	}
}

// unitsPerPixel makes a size at which nobody has to round a point of an
// outline.
const unitsPerPixel = 4

// harfbuzzText draws text with hb-view, its baseline 300 pixels down and its
// origin 40 across, and as we do. The sums of the ink must agree, and all but a
// share of it be in the same place.
func harfbuzzText(t *testing.T, tool, file string, c *caster, text string, share float64) {
	t.Helper()
	size := c.upem / unitsPerPixel
	text += "   " // hb-view cuts off ink beyond the advance
	out, err := exec.Command(tool, "--font-file="+file, "--font-size="+strconv.Itoa(size), "--font-extents=260,260,0",
		"--margin=40", "--output-format=png", "--text="+text).Output()
	if err != nil {
		t.Fatalf("hb-view: %v", err)
	}
	picture, err := png.Decode(bytes.NewReader(out))
	if err != nil {
		t.Fatalf("hb-view's picture: %v", err)
	}
	want := image.NewRGBA(picture.Bounds())
	draw.Draw(want, want.Rect, picture, image.Point{}, draw.Src)
	got := sheet(want.Rect, white)
	run := c.run(text, typeset.Length(size)*pagemodel.Point)
	NewMasks(1<<20).On(got, 1, image.Point{}).Run(&run, pt(40), pt(300), black)

	g, w := coverage(got), coverage(want)
	if w == 0 || math.Abs(g-w) > 0.005*w {
		t.Errorf("%s, %q: %.2f pixels of ink, hb-view has %.2f", filepath.Base(file), text, g, w)
	}
	if m := moved(got, want); m > share*w {
		t.Errorf("%s, %q: %.1f %% of the ink is elsewhere", filepath.Base(file), text, 100*m/w)
	}
}

// moved is how much ink, in pixels, is in one picture and not in the other.
func moved(a, b *image.RGBA) float64 {
	sum := 0.0
	for i := 0; i < len(a.Pix); i += 4 {
		sum += math.Abs(float64(a.Pix[i]) - float64(b.Pix[i]))
	}
	return sum / 255
}
