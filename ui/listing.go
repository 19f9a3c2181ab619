package ui

import (
	"image"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/widget"
)

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
	point   func(i int) // another row was chosen, by the hand or the keys; or nil
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
	to := max(0, min(len(l.rows)-1, l.chosen+by))
	if len(l.rows) == 0 {
		l.chosen = -1
		return
	}
	for l.scrollTo(min(l.top, to)); l.top < to && to >= l.top+l.seen(); {
		l.top++
	}
	l.choose(to)
}

// choose chooses a row.
func (l *listing) choose(i int) {
	if i == l.chosen {
		return
	}
	l.chosen = i
	l.picture.Refresh()
	if l.point != nil {
		l.point(i)
	}
}

// rowAt is the row at a height of the listing; false below the last.
func (l *listing) rowAt(y float32) (int, bool) {
	for i := l.top; i < len(l.rows) && y >= 0; i++ {
		if y -= l.deep(&l.rows[i]); y < 0 {
			return i, true
		}
	}
	return 0, false
}

// seen is how many rows can be seen whole.
func (l *listing) seen() int {
	n, left := 0, l.Size().Height
	for i := l.top; i < len(l.rows); i++ {
		if left -= l.deep(&l.rows[i]); left < 0 {
			break
		}
		n++
	}
	return max(1, n)
}

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

// scrollTo has a row be the first that is seen, or the last from which the list
// is seen to its end.
func (l *listing) scrollTo(top int) {
	last, left := len(l.rows), l.Size().Height
	for last > 0 && left >= l.deep(&l.rows[last-1]) {
		last--
		left -= l.deep(&l.rows[last])
	}
	l.top = max(0, min(top, last, len(l.rows)-1))
	l.picture.Refresh()
}

func (l *listing) draw(w, h int) image.Image {
	density := max(0.1, float64(w)/float64(max(1, l.Size().Width)))
	s := l.k.slate(l.ink.next(w, h), density, l.colors.panel)
	seen := l.top // the row after the last that is seen whole
	for i, y := l.top, float32(0); i < len(l.rows) && y < l.Size().Height; i++ {
		below := y + l.deep(&l.rows[i])
		l.drawRow(s, &l.rows[i], image.Rect(0, round(y, density), w, round(below, density)), i == l.chosen)
		if y = below; y <= l.Size().Height {
			seen = i + 1
		}
	}
	l.drawReach(s, seen, w, h)
	return s.img
}

// drawReach draws a line at the right edge of a list that is longer than what is
// seen of it, from row top to row seen: as far down the edge as they are in the
// list.
func (l *listing) drawReach(s *slate, seen, w, h int) {
	if n := len(l.rows); l.top > 0 || seen < n {
		wide := max(2, int(2*s.density))
		s.fill(image.Rect(w-wide, h*l.top/n, w, h*seen/n), l.colors.panelAside)
	}
}

// MouseDown presses a row.
func (l *listing) MouseDown(e *desktop.MouseEvent) {
	if i, ok := l.rowAt(e.Position.Y); ok {
		l.choose(i)
	}
}

// MouseUp takes the row that was pressed.
func (l *listing) MouseUp(e *desktop.MouseEvent) {
	if i, ok := l.rowAt(e.Position.Y); ok && i == l.chosen {
		l.act(i)
	}
}

// MouseIn begins to point at rows, where that does something.
func (l *listing) MouseIn(e *desktop.MouseEvent) { l.MouseMoved(e) }

// MouseMoved points at a row.
func (l *listing) MouseMoved(e *desktop.MouseEvent) {
	if i, ok := l.rowAt(e.Position.Y); ok && l.point != nil {
		l.choose(i)
	}
}

// MouseOut leaves the row chosen that was pointed at last.
func (l *listing) MouseOut() {}

// Scrolled moves the rows.
func (l *listing) Scrolled(e *fyne.ScrollEvent) { l.scrollTo(l.top - 3*steps(e.Scrolled.DY)) }

// MinSize is what was asked for.
func (l *listing) MinSize() fyne.Size { return l.least }

// fit makes the listing no deeper than its rows, at the width that it has.
func (l *listing) fit(most float32) {
	deep := float32(0)
	for i := range l.rows {
		deep += l.deep(&l.rows[i])
	}
	l.least.Height = min(most, deep)
}

// CreateRenderer hands the toolkit the picture.
func (l *listing) CreateRenderer() fyne.WidgetRenderer { return widget.NewSimpleRenderer(l.picture) }
