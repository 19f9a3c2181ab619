package ui

import (
	"image"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"

	"headland/typeset"
)

// way is a way to hold the book.
type way int

const (
	noWay     way = iota - 1
	spreadWay     // open, two pages side by side
	orderWay      // by its order
	aloudWay      // by the running orders that are read from it

	ways = iota - 1
)

var (
	wayWords = [ways]string{"Spread", "Order", "Aloud"}
	wayKeys  = [ways]fyne.KeyName{fyne.Key1, fyne.Key2, fyne.Key3}
)

// wayGap is the white between the words for the ways, in the toolkit's units.
const wayGap = 24

// wayPlaces are where the words for the ways lie at the head, at its right, as far
// as they can be pressed; in device pixels of the desk.
func (d *desk) wayPlaces() (at [ways]image.Rectangle) {
	p, base := &d.plan, d.plan.headBase()
	right, half := p.size.X-p.units(sideMargin), p.units(wayGap/2)
	for i := ways - 1; i >= 0; i-- {
		wide := p.units(d.k.words(wayWords[i], wordSize, false).Width.Points())
		at[i] = image.Rect(right-wide-half, base-p.units(22), right+half, base+p.units(10))
		right -= wide + 2*half
	}
	return at
}

// wayUnder is the way whose word lies under a device pixel of the desk, or noWay.
func (d *desk) wayUnder(at image.Point) way {
	for i, place := range d.wayPlaces() {
		if at.In(place) {
			return way(i)
		}
	}
	return noWay
}

// drawWays draws the head of a view that holds the book otherwise than open: the
// collection's title, and at the right the ways to hold it, that in use ruled
// beneath.
func (d *desk) drawWays(s *slate, in, over way) {
	p, colors, base := &d.plan, d.light.palette(), d.plan.headBase()
	places, half := d.wayPlaces(), p.units(wayGap/2)
	room := places[0].Min.X - p.units(sideMargin)
	title := fitted(bookTitle(d.session), func(words string) (typeset.Run, bool) {
		run := d.k.words(words, titleSize, false)
		return run, s.px(run.Width) <= room
	})
	s.write(title, p.units(sideMargin), base, colors.words)
	for i, words := range wayWords {
		x, ink := places[i].Min.X+half, colors.quiet
		if way(i) == in || way(i) == over {
			ink = colors.words
		}
		end := s.write(d.k.words(words, wordSize, false), x, base, ink)
		if way(i) == in {
			y := base + p.units(6)
			s.fill(image.Rect(x, y, end, y+max(1, p.units(1.5))), ink)
		}
		if i > 0 {
			between := d.k.words("·", wordSize, false)
			s.write(between, places[i].Min.X-s.px(between.Width)/2, base, colors.quiet)
		}
	}
}

// hold holds the book in another way, as the menu does.
func (w *Window) hold(in way) {
	name := (&desktop.CustomShortcut{KeyName: wayKeys[in], Modifier: ctrl}).ShortcutName()
	for _, c := range w.menus.commands {
		if c.key != nil && c.key.ShortcutName() == name {
			w.run(c)
			return
		}
	}
}
