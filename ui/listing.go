package ui

import (
	"image"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/widget"
)

// listRow is one row of a listing.
type listRow struct {
	words string
	aside string // at the right: a page, a kind
	under string // smaller, below the words
	quiet bool   // set in italic
}

// Depths in the toolkit's units: of a listing's row, of a second row of its words,
// of each row of small words under it, and of the white below those.
const (
	rowDepth   = 27
	wordsDepth = 22
	underDepth = 19
	underWhite = 6
)

// Sizes of a listing's words, in the toolkit's units.
const (
	listSize  = 17
	underSize = 15
)

// rowsMost is how many rows the words have at most, and those under them.
const rowsMost = 2

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

// deep is the depth of a row.
func (l *listing) deep(row *listRow) float32 {
	words, under := l.wrapped(row)
	deep := rowDepth + float32(max(0, len(words)-1))*wordsDepth + float32(len(under))*underDepth
	if len(under) > 0 {
		deep += underWhite
	}
	return deep
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
	for i, y := l.top, float32(0); i < len(l.rows) && y < l.Size().Height; i++ {
		below := y + l.deep(&l.rows[i])
		l.drawRow(s, &l.rows[i], image.Rect(0, round(y, density), w, round(below, density)), i == l.chosen)
		y = below
	}
	return s.img
}

// rowMargin is the white at either side of a row, in the toolkit's units.
const rowMargin = 8

func (l *listing) drawRow(s *slate, row *listRow, r image.Rectangle, chosen bool) {
	if chosen {
		s.fill(r, l.colors.wash)
		s.fill(image.Rect(0, r.Min.Y, max(2, int(2*s.density)), r.Max.Y), l.colors.panelInk)
	}
	margin, base := int(rowMargin*s.density), r.Min.Y+int(rowDepth*s.density)*7/10
	aside := l.k.words(row.aside, underSize, false)
	s.write(aside, r.Max.X-margin-s.px(aside.Width), base, l.colors.panelAside)
	words, under := l.wrapped(row)
	for i, w := range words {
		if i > 0 {
			base += int(wordsDepth * s.density)
		}
		s.write(l.k.words(w, listSize, row.quiet), margin, base, l.colors.panelInk)
	}
	for _, w := range under {
		base += int(underDepth * s.density)
		s.write(l.k.words(w, underSize, false), margin, base, l.colors.panelAside)
	}
}

// wrapped is a row's words and those under them in as many rows as they need.
func (l *listing) wrapped(row *listRow) (words, under []string) {
	room := float64(l.Size().Width) - 2*rowMargin
	beside := l.k.words(row.aside, underSize, false).Width.Points()
	if beside > 0 {
		beside += rowMargin
	}
	words = inRows(row.words, func(w string) bool {
		return l.k.words(w, listSize, row.quiet).Width.Points() <= room-beside
	})
	under = inRows(row.under, func(w string) bool { return l.k.words(w, underSize, false).Width.Points() <= room })
	return words, under
}

// inRows is words in as many rows as they need for each to fit, but in no more
// than there may be: then the last is shortened.
func inRows(words string, fits func(string) bool) []string {
	var rows []string
	for _, word := range strings.Fields(words) {
		n := len(rows)
		switch {
		case n > 0 && fits(rows[n-1]+" "+word):
			rows[n-1] += " " + word
		case n < rowsMost:
			rows = append(rows, word)
		default:
			rows[n-1] += " …"
			return rows
		}
	}
	return rows
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
