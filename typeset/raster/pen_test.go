package raster

import (
	"image"
	"math"
	"testing"

	"headland/pagemodel"
	"headland/typeset"
)

func TestXRoundsToTheNearestEdge(t *testing.T) {
	p := NewMasks(0).On(image.NewRGBA(image.Rect(0, 0, 1, 1)), 2, image.Pt(10, 20))
	for _, c := range []struct {
		points float64
		want   int
	}{{0, 10}, {1, 12}, {0.25, 11}, {0.234375, 10}, {-0.25, 10}, {-0.265625, 9}, {-1, 8}, {100.5, 211}} {
		if got := p.X(pt(c.points)); got != c.want {
			t.Errorf("X(%v pt) = %d, want %d", c.points, got, c.want)
		}
		if got := p.Y(pt(c.points)); got != c.want+10 {
			t.Errorf("Y(%v pt) = %d, want %d", c.points, got, c.want+10)
		}
	}
}

// The rule in whole numbers must be the plain one, at every scale in use.
func TestXAgreesWithFloatingPoint(t *testing.T) {
	for _, scale := range []float64{0.1, 0.73, 1, 1.3, 1.9, 3.8, 300.0 / 72, 41.7} {
		p := NewMasks(0).On(image.NewRGBA(image.Rect(0, 0, 1, 1)), scale, image.Point{})
		for l := typeset.Length(-5000); l < 60000; l += 7 {
			exact := l.Points() * scale
			if got := p.X(l); math.Abs(float64(got)-exact) > 0.5+1e-6 {
				t.Fatalf("at %v, X(%v) = %d, but it is %v pixels", scale, l, got, exact)
			}
		}
	}
}

func TestAtIsTheWayBack(t *testing.T) {
	for _, scale := range []float64{0.5, 1, 1.9, 3.8} {
		p := NewMasks(0).On(image.NewRGBA(image.Rect(0, 0, 1, 1)), scale, image.Pt(-7, 31))
		for x := -20; x < 800; x++ {
			got := p.At(image.Pt(x, x))
			exact := pt((float64(x+7) + 0.5) / scale)
			if got.X != exact {
				t.Fatalf("at %v, pixel %d is at %v, want %v", scale, x, got.X, exact)
			}
			if p.X(got.X) != x && p.X(got.X) != x+1 {
				t.Fatalf("at %v, pixel %d is at %v, whose edge is %d", scale, x, got.X, p.X(got.X))
			}
		}
	}
}

func TestNoScaleDrawsNothing(t *testing.T) {
	for _, scale := range []float64{0, -1, math.NaN(), math.Inf(-1)} {
		img := sheet(image.Rect(0, 0, 40, 40), white)
		p := NewMasks(1<<20).On(img, scale, image.Point{})
		run := garamond(t).run("Nothing", pt(11))
		p.Run(&run, 0, pt(10), black)
		p.Fill(area(0, 0, 9, 9), black)
		p.Stroke(at(0, 0), at(9, 9), 2, black)
		p.Hatch(area(0, 0, 9, 9), pt(3), black)
		p.Polygon([]typeset.Point{at(0, 0), at(9, 0), at(9, 9)}, black)
		if got := coverage(img); got != 0 {
			t.Errorf("at scale %v there are %v pixels of ink", scale, got)
		}
		if at := p.At(image.Pt(3, 3)); at != (typeset.Point{}) {
			t.Errorf("at scale %v a pixel is at %v", scale, at)
		}
	}
}

// everything draws one of each thing, reaching far over the edges of a sheet
// of 60 by 40 points.
func everything(t *testing.T, p *Pen) {
	run := garamond(t).run("Quietly, the Jackdaw", pt(14))
	for i := range 4 {
		p.Run(&run, pt(-20+7*float64(i)), pt(2+14*float64(i)), ink)
	}
	great := garamond(t).run("Q&", pt(300))
	p.Run(&great, pt(-90.3), pt(120), rust)
	p.Fill(area(-5, 12, 30, 3.3), rust)
	p.Fill(area(50, -5, 30, 30), ink)
	p.Stroke(at(-9, 30), at(90, 30), 1.6, ink)
	p.Stroke(at(5, -30), at(5, 90), 3, rust)
	p.Stroke(at(-30, -10), at(90, 60), 2.4, ink)
	p.Hatch(area(30, 20, 90, 90), pt(4), ink)
	p.Polygon([]typeset.Point{at(-20, 20), at(30, -60), at(90, 30), at(20, 25), at(30, 90)}, rust)
}

// Whatever window looks on, it must show the same pixels: ink is cut at all
// four edges, and never moved by them.
func TestEdgesCutAndDoNotMove(t *testing.T) {
	whole := sheet(image.Rect(0, 0, 120, 80), white)
	m := NewMasks(1 << 20)
	everything(t, m.On(whole, 2, image.Point{}))
	windows := []image.Rectangle{
		image.Rect(0, 0, 60, 40), image.Rect(60, 40, 120, 80), image.Rect(37, 11, 71, 59),
		image.Rect(0, 33, 120, 34), image.Rect(51, 0, 52, 80), image.Rect(90, 5, 91, 6),
	}
	for _, w := range windows {
		small := sheet(image.Rectangle{Max: w.Size()}, white)
		everything(t, m.On(small, 2, image.Point{}.Sub(w.Min)))
		compare(t, small.Rect, small, whole, image.Point{}.Sub(w.Min), rounding)
	}
}

// rounding is how far a polygon that is cut may be out: its corners are other
// ones.
const rounding = 2

// compare holds an area of one image against the same part of the page in
// another, whose origin is at 0,0.
func compare(t *testing.T, r image.Rectangle, got, whole *image.RGBA, origin image.Point, tolerance int) {
	t.Helper()
	for y := r.Min.Y; y < r.Max.Y; y++ {
		for x := r.Min.X; x < r.Max.X; x++ {
			g, want := got.RGBAAt(x, y), whole.RGBAAt(x-origin.X, y-origin.Y)
			if apart(g, want) > tolerance {
				t.Errorf("area %v: pixel %d,%d is %v, in the whole %v", r, x, y, g, want)
				return
			}
		}
	}
}

func TestSubImageIsLeftAloneOutside(t *testing.T) {
	img := sheet(image.Rect(0, 0, 120, 80), white)
	whole := sheet(image.Rect(0, 0, 120, 80), white)
	m := NewMasks(1 << 20)
	everything(t, m.On(whole, 2, image.Point{}))
	w := image.Rect(33, 17, 80, 60)
	p := m.On(img.SubImage(w).(*image.RGBA), 2, image.Point{})
	p.Clear(white)
	everything(t, p)
	for y := range 80 {
		for x := range 120 {
			want := white
			if image.Pt(x, y).In(w) {
				want = whole.RGBAAt(x, y)
			}
			if got := img.RGBAAt(x, y); apart(got, want) > rounding {
				t.Fatalf("pixel %d,%d is %v, want %v", x, y, got, want)
			}
		}
	}
}

func TestFarOutsideIsHarmless(t *testing.T) {
	img := sheet(image.Rect(0, 0, 30, 30), white)
	m := NewMasks(1 << 20)
	for _, origin := range []image.Point{{-5000, 0}, {5000, 0}, {0, -5000}, {0, 5000}} {
		everything(t, m.On(img, 2, origin))
	}
	if got := coverage(img); got != 0 {
		t.Errorf("there are %v pixels of ink", got)
	}
}

func TestRunStandsOnQuartersAcrossAndWholePixelsDown(t *testing.T) {
	m := NewMasks(1 << 20)
	run := garamond(t).run("n", pt(12))
	draw := func(x, y typeset.Length) *image.RGBA {
		img := sheet(image.Rect(0, 0, 20, 20), white)
		m.On(img, 1, image.Point{}).Run(&run, x, y, black)
		return img
	}
	same := func(a, b *image.RGBA) bool { return string(a.Pix) == string(b.Pix) }
	base := draw(pt(3), pt(15))
	if !same(base, draw(pt(3)+7, pt(15))) || same(base, draw(pt(3)+8, pt(15))) {
		t.Error("across, a glyph should move by quarters of a pixel, at the nearest")
	}
	if !same(base, draw(pt(3), pt(15)+31)) || same(base, draw(pt(3), pt(15)+32)) {
		t.Error("down, a baseline should move by whole pixels, at the nearest")
	}
	quarters := map[string]bool{}
	for x := pt(3); x < pt(4); x++ {
		quarters[string(draw(x, pt(15)).Pix)] = true
	}
	if len(quarters) != 5 { // the fifth is the first, a pixel on
		t.Errorf("over a pixel the glyph looks %d ways, want 4 and the next", len(quarters))
	}
}

func TestRowAddsItsOwnPlaceAndTheRuns(t *testing.T) {
	m := NewMasks(1 << 20)
	run := garamond(t).run("tail", pt(11))
	run.X = pt(4.5)
	row := typeset.Row{X: pt(10), Baseline: pt(20), Runs: []typeset.Run{run}}
	got, want := sheet(image.Rect(0, 0, 80, 40), white), sheet(image.Rect(0, 0, 80, 40), white)
	m.On(got, 1.5, image.Point{}).Page(&typeset.Page{Rows: []typeset.Row{row}}, black)
	m.On(want, 1.5, image.Point{}).Run(&run, pt(14.5), pt(20), black)
	if string(got.Pix) != string(want.Pix) || coverage(got) == 0 {
		t.Error("a row's run doesn't stand at the row's X and its own")
	}
}

func TestClearReplacesWhatWasThere(t *testing.T) {
	img := sheet(image.Rect(0, 0, 301, 97), ink)
	NewMasks(0).On(img, 1, image.Point{}).Clear(rust)
	for i := 0; i < len(img.Pix); i += 4 {
		if got := img.RGBAAt(i/4%301, i/4/301); got != rust {
			t.Fatalf("pixel %d is %v, want %v", i/4, got, rust)
		}
	}
	NewMasks(0).On(image.NewRGBA(image.Rectangle{}), 1, image.Point{}).Clear(rust)
}

func TestSizeFollowsTheRule(t *testing.T) {
	trim := pagemodel.Trim{Width: pt(100.25), Height: pt(200.125)}
	if got := Size(trim, 2); got != image.Pt(201, 400) {
		t.Errorf("size %v", got)
	}
}
