package ui

import (
	"image"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/widget"
)

// listRow is one row of a listing.
type listRow struct {
	words string
	aside string // at the right: a page, a kind
	quiet bool   // set in italic
}

// rowDepth is the depth of a listing's row, in the toolkit's units.
const rowDepth = 27

// listing is a list of words in ink, one of which is chosen. It is driven by
// the field above it and by the mouse, and never has the keys itself.
type listing struct {
	widget.BaseWidget
	k       *inker
	colors  *palette
	rows    []listRow
	chosen  int // -1 for none
	top     int // the first row that is seen
	least   fyne.Size
	act     func(i int) // a row was pressed
	picture *canvas.Raster
	ink     buffers
}

func newListing(k *inker, colors *palette, least fyne.Size, act func(int)) *listing {
	l := &listing{k: k, colors: colors, chosen: -1, least: least, act: act}
	l.picture = pixels(l.draw)
	l.ExtendBaseWidget(l)
	return l
}

// set shows other rows, none of them or the first chosen.
func (l *listing) set(rows []listRow, chosen int) {
	l.rows, l.chosen, l.top = rows, min(chosen, len(rows)-1), 0
	l.picture.Refresh()
}

// step chooses another row and brings it into sight.
func (l *listing) step(by int) {
	l.chosen = max(0, min(len(l.rows)-1, l.chosen+by))
	if len(l.rows) == 0 {
		l.chosen = -1
		return
	}
	l.scrollTo(max(l.chosen-l.seen()+1, min(l.top, l.chosen)))
}

// seen is how many rows can be seen at once.
func (l *listing) seen() int { return max(1, int(l.Size().Height/rowDepth)) }

// walk is a key that goes up or down the list; false for any other.
func (l *listing) walk(k fyne.KeyName) bool {
	by, ok := map[fyne.KeyName]int{
		fyne.KeyDown: 1, fyne.KeyUp: -1, fyne.KeyPageDown: l.seen(), fyne.KeyPageUp: -l.seen(),
	}[k]
	if ok {
		l.step(by)
	}
	return ok
}

func (l *listing) scrollTo(top int) {
	l.top = max(0, min(top, len(l.rows)-l.seen()))
	l.picture.Refresh()
}

func (l *listing) draw(w, h int) image.Image {
	density := max(0.1, float64(w)/float64(max(1, l.Size().Width)))
	s := l.k.slate(l.ink.next(w, h), density, l.colors.panel)
	depth := int(rowDepth*density + 0.5)
	margin := int(8 * density)
	for i := l.top; i < len(l.rows) && (i-l.top)*depth < h; i++ {
		row, y := l.rows[i], (i-l.top)*depth
		if i == l.chosen {
			s.fill(image.Rect(0, y, w, y+depth), l.colors.wash)
			s.fill(image.Rect(0, y, max(2, int(2*density)), y+depth), l.colors.panelInk)
		}
		base := y + depth*7/10
		s.write(l.k.words(row.words, 17, row.quiet), margin, base, l.colors.panelInk)
		aside := l.k.words(row.aside, 15, false)
		s.write(aside, w-margin-s.px(aside.Width), base, l.colors.panelAside)
	}
	return s.img
}

// MouseDown presses a row.
func (l *listing) MouseDown(e *desktop.MouseEvent) {
	if i := l.top + int(e.Position.Y/rowDepth); i >= 0 && i < len(l.rows) {
		l.chosen = i
		l.picture.Refresh()
	}
}

// MouseUp takes the row that was pressed.
func (l *listing) MouseUp(e *desktop.MouseEvent) {
	if i := l.top + int(e.Position.Y/rowDepth); i == l.chosen && i >= 0 && i < len(l.rows) {
		l.act(i)
	}
}

// Scrolled moves the rows.
func (l *listing) Scrolled(e *fyne.ScrollEvent) { l.scrollTo(l.top - 3*steps(e.Scrolled.DY)) }

// MinSize is what was asked for.
func (l *listing) MinSize() fyne.Size { return l.least }

// CreateRenderer hands the toolkit the picture.
func (l *listing) CreateRenderer() fyne.WidgetRenderer { return widget.NewSimpleRenderer(l.picture) }
