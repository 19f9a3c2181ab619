package raster

import (
	"image"
	"image/color"

	"headland/pagemodel"
	"headland/typeset"
)

// Size is how many device pixels a trim takes at a scale in pixels per point,
// by the rule of [Pen.X].
func Size(t pagemodel.Trim, scale float64) image.Point {
	per := perLength(scale)
	return image.Pt(scaled(t.Width, per, 0), scaled(t.Height, per, 0))
}

// Image draws a whole page on paper, at a scale in device pixels per point. The
// image begins at (0,0), has no gaps between its rows, and is the caller's.
func Image(pg *typeset.Page, scale float64, m *Masks, paper, ink color.RGBA) *image.RGBA {
	img := image.NewRGBA(image.Rectangle{Max: Size(pg.Trim, scale)})
	pen := m.On(img, scale, image.Point{})
	pen.Clear(paper)
	pen.Page(pg, ink)
	return img
}

// Spread draws two facing pages side by side, each as [Image] draws it, top
// aligned. Where verso or recto is nil, its half is left transparent and as
// large as the other; with neither, the image is empty. It begins at (0,0) and
// is the caller's.
func Spread(verso, recto *typeset.Page, scale float64, m *Masks, paper, ink color.RGBA) *image.RGBA {
	left, right := half(verso, recto, scale), half(recto, verso, scale)
	img := image.NewRGBA(image.Rect(0, 0, left.X+right.X, max(left.Y, right.Y)))
	for i, pg := range []*typeset.Page{verso, recto} {
		if pg == nil {
			continue
		}
		area := image.Rectangle{Max: left}
		if i == 1 {
			area = image.Rectangle{Max: right}.Add(image.Pt(left.X, 0))
		}
		pen := m.On(img.SubImage(area).(*image.RGBA), scale, area.Min)
		pen.Clear(paper)
		pen.Page(pg, ink)
	}
	return img
}

// half is the size of a page, or where there is none, of the one it faces.
func half(pg, facing *typeset.Page, scale float64) image.Point {
	if pg == nil {
		pg = facing
	}
	if pg == nil {
		return image.Point{}
	}
	return Size(pg.Trim, scale)
}
