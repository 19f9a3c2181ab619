package ui

import (
	"image"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
)

// orderBand is the picture of one row that is in sight.
type orderBand struct {
	v       *orderView
	picture *canvas.Raster
	row     int
	ink     buffers
	drawn   orderBandLook
}

// arrange lays the rows that are in sight, and the words, on whole device pixels.
func (v *orderView) arrange() {
	v.layRows()
	v.placeBands()
	p := &v.plan
	v.place(v.head, image.Rect(0, 0, p.size.X, p.view.Min.Y))
	v.place(v.foot, image.Rect(0, p.view.Max.Y, p.size.X, p.size.Y))
	v.ground.Resize(v.Size())
	v.placeSlip()
}

// placeBands has a picture for every row that is in sight.
func (v *orderView) placeBands() {
	p := &v.plan
	seen := p.view.Dy()/max(1, p.depth) + 2
	for len(v.bands) < seen {
		b := &orderBand{v: v}
		b.picture = pixels(b.draw)
		v.bands = append(v.bands, b)
	}
	first := v.top / max(1, p.depth)
	for _, b := range v.bands {
		row := first + (b.index()-first%len(v.bands)+len(v.bands))%len(v.bands)
		y := p.view.Min.Y + row*p.depth - v.top
		if row != b.row {
			b.row = row
			b.picture.Refresh()
		}
		v.place(b.picture, image.Rect(0, y, p.size.X, y+p.depth))
	}
}

// index is the band's own among all.
func (b *orderBand) index() int {
	for i := range b.v.bands {
		if b.v.bands[i] == b {
			return i
		}
	}
	return 0
}

// place puts a picture on the device pixels of a rectangle.
func (v *orderView) place(r *canvas.Raster, at image.Rectangle) {
	unit := func(px int) float32 { return float32(float64(px) / v.plan.density) }
	size, pos := fyne.NewSize(unit(at.Dx()), unit(at.Dy())), fyne.NewPos(unit(at.Min.X), unit(at.Min.Y))
	if r.Size() != size {
		r.Resize(size)
	}
	if r.Position() != pos {
		r.Move(pos)
	}
}

// scroll moves the rows so that others come into sight.
func (v *orderView) scroll(to int) {
	to = max(0, min(to, v.plan.farthest()))
	if to == v.top {
		return
	}
	v.top = to
	v.placeBands()
	v.foot.Refresh()
}

// reveal brings what is at hand into sight, its beginning first.
func (v *orderView) reveal() {
	if n := len(v.chosen); n > 0 {
		v.revealPiece(v.chosen[n-1])
		v.revealPiece(v.chosen[0])
	}
}

// revealPiece brings a piece's first row into sight.
func (v *orderView) revealPiece(id int64) {
	p := &v.plan
	row, bar := p.firstBar(id)
	if bar == nil {
		return
	}
	v.scroll(max(min(v.top, row*p.depth), (row+1)*p.depth-p.view.Dy()))
}
