package raster

import (
	"image"
	"testing"

	"headland/pagemodel"
	"headland/typeset"
)

// fullPage is 35 rows of 45 characters, more than most pages of verse hold.
func fullPage(t testing.TB) *typeset.Page {
	texts := []string{
		"The ploughman at the headland turns his team,",
		"and what was east is west; the furrow’s wall ",
		"stands up behind him, wet, and takes the day.",
		"Quiet the jackdaws give the clod their eye’s ",
		"exact attention: worm, flint, half a willow. ",
	}
	var lines []string
	for i := range 35 {
		lines = append(lines, texts[i%len(texts)])
	}
	return garamond(t).page(pt(11), 13*pagemodel.Point, lines...)
}

// warmPage measures a page whose masks are there already, paper included.
func warmPage(b *testing.B, scale float64) {
	pg := fullPage(b)
	m := NewMasks(16 << 20)
	img := Image(pg, scale, m, paper, ink)
	pen := m.On(img, scale, image.Point{})
	b.ReportAllocs()
	for b.Loop() {
		pen.Clear(paper)
		pen.Page(pg, ink)
	}
}

func BenchmarkWarmPageAt1_9(b *testing.B) { warmPage(b, 1.9) }
func BenchmarkWarmPageAt3_8(b *testing.B) { warmPage(b, 3.8) }

func BenchmarkColdPageAt1_9(b *testing.B) {
	pg := fullPage(b)
	img := image.NewRGBA(image.Rectangle{Max: Size(pg.Trim, 1.9)})
	b.ReportAllocs()
	for b.Loop() {
		pen := NewMasks(16<<20).On(img, 1.9, image.Point{})
		pen.Clear(paper)
		pen.Page(pg, ink)
	}
}

func BenchmarkPaperAt1_9(b *testing.B) {
	pg := fullPage(b)
	pen := NewMasks(0).On(image.NewRGBA(image.Rectangle{Max: Size(pg.Trim, 1.9)}), 1.9, image.Point{})
	for b.Loop() {
		pen.Clear(paper)
	}
}
