package raster

import "image"

// What lies on its side is a quarter turn anticlockwise about the origin of its
// glyph: x becomes up, and y, down from the baseline, becomes right.

// turned is a mask so turned.
func (k *mask) turned() *mask {
	box := turnedBox(image.Rect(k.x, k.y, k.x+k.w, k.y+k.h))
	return &mask{x: box.Min.X, y: box.Min.Y, w: box.Dx(), h: box.Dy(), cover: turnedCover(k.cover, k.w)}
}

// turnedBox is where the pixels of a box come to lie.
func turnedBox(r image.Rectangle) image.Rectangle {
	return image.Rect(r.Min.Y, -r.Max.X, r.Max.Y, -r.Min.X)
}

// uprightBox is the way back.
func uprightBox(r image.Rectangle) image.Rectangle {
	return image.Rect(-r.Max.Y, r.Min.X, -r.Min.Y, r.Max.X)
}

// turnedCover turns the coverage of a box that is w pixels wide: its last column
// becomes the first row.
func turnedCover(cover []uint8, w int) []uint8 {
	turned := make([]uint8, 0, len(cover))
	for x := w - 1; x >= 0; x-- {
		for i := x; i < len(cover); i += w {
			turned = append(turned, cover[i])
		}
	}
	return turned
}
