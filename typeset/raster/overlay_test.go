package raster

import (
	"image"
	"image/color"
	"math"
	"testing"

	"headland/pagemodel"
	"headland/typeset"
	"headland/typeset/marks/overlay"
)

// path is a path through places in points.
func path(at ...float64) []overlay.Segment {
	var p []overlay.Segment
	for i := 0; i < len(at); i += 2 {
		s := overlay.Segment{Op: overlay.Line, To: typeset.Point{X: pagemodel.Pt(at[i]), Y: pagemodel.Pt(at[i+1])}}
		if i == 0 {
			s.Op = overlay.Move
		}
		p = append(p, s)
	}
	return p
}

// inkOf is the area, in pixels, that strokes ink at 4 pixels a point.
func inkOf(strokes ...overlay.Stroke) (float64, *image.RGBA) {
	img := image.NewRGBA(image.Rect(0, 0, 400, 400))
	pen := NewMasks(1<<20).On(img, 4, image.Point{})
	pen.Clear(white)
	pen.Overlay(&overlay.Overlay{Strokes: strokes}, pagemodel.Pt(100))
	c := overlay.Colour(pagemodel.Authors)
	sum := 0.0
	for i := 0; i < len(img.Pix); i += 4 {
		sum += float64(255-img.Pix[i]) / float64(255-c.R)
	}
	return sum, img
}

// A stroke inks its length by its width, and half a circle at each end; where it
// bends, or crosses itself, no place is inked twice or left out.
func TestStrokesInkTheirArea(t *testing.T) {
	const w = 3 * 4.0
	round := math.Pi / 4 * w * w
	right := w*w/4 - math.Pi/16*w*w // what a right bend's rounding leaves off its square
	ring := overlay.Stroke{Width: pagemodel.Pt(3), Path: append(path(70, 50),
		curve(70, 61.05, 61.05, 70, 50, 70), curve(38.95, 70, 30, 61.05, 30, 50),
		curve(30, 38.95, 38.95, 30, 50, 30), curve(61.05, 30, 70, 38.95, 70, 50))}
	for name, test := range map[string]struct {
		stroke overlay.Stroke
		want   float64
	}{
		"level":     {overlay.Stroke{Path: path(20, 50, 80, 50), Width: pagemodel.Pt(3)}, 240*w + round},
		"slanting":  {overlay.Stroke{Path: path(20, 20, 60, 50), Width: pagemodel.Pt(3)}, 200*w + round},
		"bent":      {overlay.Stroke{Path: path(20, 20, 60, 20, 60, 60), Width: pagemodel.Pt(3)}, 320*w + round - right},
		"bent back": {overlay.Stroke{Path: path(20, 60, 20, 20, 60, 20), Width: pagemodel.Pt(3)}, 320*w + round - right},
		"crossing":  {overlay.Stroke{Path: append(path(20, 50, 80, 50), path(50, 20, 50, 80)...), Width: pagemodel.Pt(3)}, 480*w + 2*round - w*w},
		"dot":       {overlay.Stroke{Path: path(50, 50, 50, 50), Width: pagemodel.Pt(3)}, round},
		"ring":      {ring, 2 * math.Pi * 80 * w},
	} {
		if got, _ := inkOf(test.stroke); math.Abs(got-test.want) > 0.015*test.want {
			t.Errorf("%s: %.1f pixels are inked, want %.1f", name, got, test.want)
		}
	}
}

// curve is a cubic segment by places in points.
func curve(at ...float64) overlay.Segment {
	point := func(i int) typeset.Point { return typeset.Point{X: pagemodel.Pt(at[i]), Y: pagemodel.Pt(at[i+1])} }
	return overlay.Segment{Op: overlay.Cubic, Leave: point(0), Arrive: point(2), To: point(4)}
}

// A thin stroke is a pixel thick at any scale, and words are set in the colour of
// whose they are, upright or on their side.
func TestOverlayWordsAndHairlines(t *testing.T) {
	img := image.NewRGBA(image.Rect(0, 0, 100, 100))
	pen := NewMasks(1<<20).On(img, 1, image.Point{})
	pen.Clear(white)
	row := typeset.Row{X: pagemodel.Pt(10), Baseline: pagemodel.Pt(30), Runs: []typeset.Run{garamond(t).run("oven", pt(24))}}
	turned := row
	turned.Turned, turned.Baseline = true, pagemodel.Pt(90)
	pen.Overlay(&overlay.Overlay{
		Strokes: []overlay.Stroke{{Path: path(10, 50.5, 60, 50.5), Width: 1}},
		Rows:    []typeset.Row{row, turned},
		Whose:   []pagemodel.Whose{pagemodel.Editors, pagemodel.Designers},
	}, pagemodel.Pt(100))
	if got := img.RGBAAt(30, 50); got != overlay.Colour("") {
		t.Errorf("the hairline is %v", got)
	}
	green, violet := overlay.Colour(pagemodel.Editors), overlay.Colour(pagemodel.Designers)
	if !hasInk(img.SubImage(image.Rect(10, 10, 60, 40)), green) || !hasInk(img.SubImage(image.Rect(70, 40, 95, 95)), violet) {
		t.Error("words are missing, or not in their inks")
	}
}

// hasInk says that some pixel has a colour in full.
func hasInk(img image.Image, c color.RGBA) bool {
	b := img.Bounds()
	for y := b.Min.Y; y < b.Max.Y; y++ {
		for x := b.Min.X; x < b.Max.X; x++ {
			if img.At(x, y) == c {
				return true
			}
		}
	}
	return false
}
