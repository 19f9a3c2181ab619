package raster

import (
	"image"
	"image/color"
	"math"
	"testing"

	"headland/typeset"
)

// board is a white sheet with a pen on it.
func board(w, h int, scale float64) (*image.RGBA, *Pen) {
	img := sheet(image.Rect(0, 0, w, h), white)
	return img, NewMasks(1<<20).On(img, scale, image.Point{})
}

// inked is the least rectangle that holds all black pixels; it fails if a pixel
// is neither black nor white.
func inked(t *testing.T, img *image.RGBA) image.Rectangle {
	t.Helper()
	var r image.Rectangle
	for y := range img.Rect.Dy() {
		for x := range img.Rect.Dx() {
			switch img.RGBAAt(x, y) {
			case black:
				r = r.Union(image.Rect(x, y, x+1, y+1))
			case white:
			default:
				t.Errorf("pixel %d,%d is not crisp: %v", x, y, img.RGBAAt(x, y))
			}
		}
	}
	if got := coverage(img); got != float64(r.Dx()*r.Dy()) {
		t.Errorf("%v pixels of ink in %v", got, r)
	}
	return r
}

func TestFillIsOnWholePixels(t *testing.T) {
	for _, c := range []struct {
		r    typeset.Rect
		want image.Rectangle
	}{
		{area(1, 2, 3, 4), image.Rect(2, 4, 8, 12)},
		{area(1.2, 2.3, 3, 4), image.Rect(2, 5, 8, 13)},
		{area(5, 5, 0.1, 3), image.Rect(10, 10, 11, 16)},
		{area(5, 5, 0, 0), image.Rect(10, 10, 11, 11)},
		{area(5, 5, -2, -1), image.Rect(6, 8, 10, 10)},
	} {
		img, p := board(40, 40, 2)
		p.Fill(c.r, black)
		if got := inked(t, img); got != c.want {
			t.Errorf("%v fills %v, want %v", c.r, got, c.want)
		}
	}
}

func TestFillsThatMeetHaveNoSeam(t *testing.T) {
	img, p := board(100, 3, 1.37)
	for x := 0.0; x < 80; x += 1.71875 {
		p.Fill(area(x, 0, 1.71875, 3), rust)
	}
	for x := range 100 {
		if got := img.RGBAAt(x, 1); got != img.RGBAAt(0, 1) {
			t.Errorf("pixel %d is %v: a seam or an overlap", x, got)
		}
	}
}

func TestLevelAndUprightStrokesAreCrisp(t *testing.T) {
	for _, c := range []struct {
		from, to typeset.Point
		width    float64
		want     image.Rectangle
	}{
		{at(1, 5.1), at(9, 5.1), 1, image.Rect(2, 10, 18, 11)},
		{at(9, 5.1), at(1, 5.1), 0, image.Rect(2, 10, 18, 11)},
		{at(1, 5.1), at(9, 5.1), 2, image.Rect(2, 9, 18, 11)},
		{at(1, 5.1), at(9, 5.1), 3.2, image.Rect(2, 9, 18, 12)},
		{at(5.3, 1), at(5.3, 9), 1, image.Rect(11, 2, 12, 18)},
		{at(5.3, 9), at(5.3, 1), 2.6, image.Rect(10, 2, 13, 18)},
		{at(5, 5), at(5, 5), 1, image.Rect(10, 10, 11, 11)},
	} {
		img, p := board(40, 40, 2)
		p.Stroke(c.from, c.to, c.width, black)
		if got := inked(t, img); got != c.want {
			t.Errorf("%v to %v, %v thick: %v, want %v", c.from, c.to, c.width, got, c.want)
		}
	}
}

// A slanting line covers its length times its width: area is conserved.
func TestSlantingStrokeHasItsArea(t *testing.T) {
	for _, width := range []float64{0.5, 1, 1.5, 4} {
		for _, to := range []typeset.Point{at(90, 50), at(50, 90), at(90, 11), at(11, 90)} {
			img, p := board(200, 200, 2)
			from := at(10, 10)
			p.Stroke(from, to, width, black)
			long := math.Hypot((to.X-from.X).Points(), (to.Y-from.Y).Points()) * 2
			want := long * max(1, width)
			if got := coverage(img); math.Abs(got-want) > 0.01*want+0.1 {
				t.Errorf("%v to %v, %v thick: %.2f pixels, want %.2f", from, to, width, got, want)
			}
		}
	}
}

func TestHatchStaysInItsArea(t *testing.T) {
	img, p := board(60, 60, 2)
	p.Hatch(area(5, 7, 12, 9), pt(4), black)
	sum := 0.0
	for y := range 60 {
		for x := range 60 {
			dark := 255 - img.RGBAAt(x, y).R
			sum += float64(dark) / 255
			if dark > 0 && !image.Pt(x, y).In(image.Rect(10, 14, 34, 32)) {
				t.Fatalf("ink at %d,%d", x, y)
			}
		}
	}
	// One line in 8 pixels of a row, √2 wide along it.
	if want := 24 * 18 * math.Sqrt2 / 8; math.Abs(sum-want) > 0.05*want {
		t.Errorf("%.1f pixels of ink, want about %.1f", sum, want)
	}
}

// The lines belong to the page: areas that are moved, cut or scrolled show the
// same ones.
func TestHatchDoesNotCrawl(t *testing.T) {
	for _, spacing := range []float64{0.3, 3, 3.1, 4.7} {
		whole, p := board(120, 120, 1.9)
		p.Hatch(area(0, 0, 63, 63), pt(spacing), ink)
		for _, r := range []typeset.Rect{area(5, 5, 20, 30), area(5.3, 17.9, 20, 30), area(40, 2, 3, 55)} {
			part, q := board(120, 120, 1.9)
			q.Hatch(r, pt(spacing), ink)
			compare(t, q.rect(r), part, whole, image.Point{}, 0)
		}
		moved := sheet(whole.Rect, white)
		origin := image.Pt(-31, 17)
		NewMasks(0).On(moved, 1.9, origin).Hatch(area(0, 0, 63, 63), pt(spacing), ink)
		compare(t, image.Rect(0, 17, 88, 97), moved, whole, origin, 0)
	}
}

func TestPolygonHasItsArea(t *testing.T) {
	for _, c := range []struct {
		name   string
		points []typeset.Point
		want   float64 // square device pixels at scale 2
	}{
		{"half pixels", []typeset.Point{at(1.25, 1.25), at(3.25, 1.25), at(3.25, 4.25), at(1.25, 4.25)}, 24},
		{"triangle", []typeset.Point{at(2, 2), at(42, 2), at(2, 32)}, 2400},
		{"the other way round", []typeset.Point{at(2, 2), at(2, 32), at(42, 2)}, 2400},
		{"dart", []typeset.Point{at(5, 5), at(45, 25), at(5, 45), at(15, 25)}, 2400},
		{"cut on all sides", []typeset.Point{at(25, -25), at(75, 25), at(25, 75), at(-25, 25)}, 10000},
		{"mostly outside", []typeset.Point{at(-200, -150), at(25, 25), at(-250, 25)}, 972.2},
		{"two points", []typeset.Point{at(5, 5), at(45, 25)}, 0},
		{"none", nil, 0},
	} {
		img, p := board(100, 100, 2)
		p.Polygon(c.points, black)
		if got := coverage(img); math.Abs(got-c.want) > 0.003*c.want+0.05 {
			t.Errorf("%s: %.2f pixels, want %.2f", c.name, got, c.want)
		}
	}
}

func TestPolygonIsNotSnapped(t *testing.T) {
	img, p := board(10, 10, 2)
	p.Polygon([]typeset.Point{at(1.25, 1), at(3.25, 1), at(3.25, 3), at(1.25, 3)}, black)
	for x, want := range map[int]uint8{1: 255, 2: 127, 3: 0, 5: 0, 6: 127, 7: 255} {
		if got := img.RGBAAt(x, 3); apart(got, color.RGBA{want, want, want, 255}) > 1 {
			t.Errorf("pixel %d is %d, want %d", x, got, want)
		}
	}
}
