package ui

import (
	"image"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/widget"
)

// wordRow is a row of words on a panel, of which one may be in use: it is ruled
// beneath. They are driven by the field beside them and by the mouse, and the row
// never has the keys itself.
type wordRow struct {
	widget.BaseWidget
	k       *inker
	colors  *palette
	words   []string
	chosen  int // -1 for none
	over    int // under the hand; -1 for none
	act     func(i int)
	picture *canvas.Raster
	ink     buffers
}

// wordRowDepth is the depth of the row, in the toolkit's units: enough to press.
const wordRowDepth = 30

func newWordRow(k *inker, colors *palette, words []string, chosen int, act func(i int)) *wordRow {
	r := &wordRow{k: k, colors: colors, words: words, chosen: chosen, over: -1, act: act}
	r.picture = pixels(r.draw)
	r.ExtendBaseWidget(r)
	return r
}

// choose marks one as in use, or none.
func (r *wordRow) choose(i int) {
	r.chosen = i
	r.picture.Refresh()
}

// places are where the words begin and end, in the toolkit's units.
func (r *wordRow) places() [][2]float32 {
	x, places := float32(rowMargin), make([][2]float32, len(r.words))
	for i, w := range r.words {
		end := x + float32(r.k.words(w, underSize, false).Width.Points())
		places[i] = [2]float32{x, end}
		x = end + countGap
	}
	return places
}

// at is which words lie at a distance from the left; -1 for none. Each can be
// pressed half way to the next.
func (r *wordRow) at(x float32) int {
	for i, p := range r.places() {
		if x >= p[0]-countGap/2 && x < p[1]+countGap/2 {
			return i
		}
	}
	return -1
}

func (r *wordRow) draw(w, h int) image.Image {
	density := max(0.1, float64(w)/float64(max(1, r.Size().Width)))
	s := r.k.slate(r.ink.next(w, h), density, r.colors.panel)
	base, thick := h*2/3, max(1, int(density+0.5))
	for i, p := range r.places() {
		ink := r.colors.panelAside
		if i == r.chosen || i == r.over {
			ink = r.colors.panelInk
		}
		from := round(p[0], density)
		end := s.write(r.k.words(r.words[i], underSize, false), from, base, ink)
		switch y := base + round(5, density); i {
		case r.chosen:
			s.fill(image.Rect(from, y, end, y+2*thick), ink)
		case r.over:
			s.fill(image.Rect(from, y, end, y+thick), ink)
		}
	}
	return s.img
}

// MouseDown takes the words under the hand.
func (r *wordRow) MouseDown(e *desktop.MouseEvent) {
	if i := r.at(e.Position.X); i >= 0 {
		r.act(i)
	}
}

// MouseUp does nothing more.
func (r *wordRow) MouseUp(*desktop.MouseEvent) {}

// MouseIn begins to follow the hand.
func (r *wordRow) MouseIn(e *desktop.MouseEvent) { r.MouseMoved(e) }

// MouseMoved rules beneath the words under the hand.
func (r *wordRow) MouseMoved(e *desktop.MouseEvent) { r.hover(r.at(e.Position.X)) }

// MouseOut says that the hand has left.
func (r *wordRow) MouseOut() { r.hover(-1) }

func (r *wordRow) hover(i int) {
	if i != r.over {
		r.over = i
		r.picture.Refresh()
	}
}

// Cursor says that the words can be pressed.
func (r *wordRow) Cursor() desktop.Cursor {
	if r.over >= 0 {
		return desktop.PointerCursor
	}
	return desktop.DefaultCursor
}

// MinSize has room for one row of words.
func (r *wordRow) MinSize() fyne.Size {
	wide := float32(0)
	for _, p := range r.places() {
		wide = p[1] + rowMargin
	}
	return fyne.NewSize(wide, wordRowDepth)
}

// CreateRenderer hands the toolkit the picture.
func (r *wordRow) CreateRenderer() fyne.WidgetRenderer { return widget.NewSimpleRenderer(r.picture) }
