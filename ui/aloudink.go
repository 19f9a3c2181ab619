package ui

import (
	"fmt"
	"image"
	"image/color"
	"strings"

	"headland/typeset"
)

// drawHead draws the words at the head of the desk while the view lies there: the
// collection's title, and at the right the ways to hold the book.
func (a *aloudView) drawHead(w, h int) image.Image {
	d := a.w.desk
	s := d.k.slateAt(a.headInk.next(w, h), d.plan.headBand().Min, d.plan.density, d.light.palette().desk)
	over := noWay
	if a.over.kind == onAloudWay {
		over = way(a.over.i)
	}
	d.drawWays(s, aloudWay, over)
	return s.img
}

// draw draws the sheet and what it shows.
func (a *aloudView) draw(w, h int) image.Image {
	d, p := a.w.desk, &a.place
	colors := d.light.palette()
	s := d.k.slate(a.ink.next(w, h), p.density, colors.desk)
	s.fill(p.sheet, colors.leaf())
	frame(s.img, p.sheet, max(1, p.units(1)), colors.leafLine())
	for i := range p.words {
		a.drawPress(s, i)
	}
	switch a.face {
	case orderFace:
		a.drawOrder(s)
	case timeFace:
		a.times.draw(a, s)
	case linesFace:
		a.lines.draw(a, s)
	}
	return s.img
}

// drawPress writes words that can be pressed, ruled beneath where they are in use
// or the hand is over them.
func (a *aloudView) drawPress(s *slate, i int) {
	w, colors := &a.place.words[i], a.w.desk.light.palette()
	over := a.over.kind == onAloudWords && a.over.i == i
	ink := colors.aside
	if over || w.in || w.size > titleSize {
		ink = colors.ink
	}
	end := s.write(a.w.desk.k.words(w.words, w.size, false), w.x, w.base, ink)
	thin := max(1, a.place.units(1))
	y := w.base + a.place.units(5)
	switch {
	case w.in:
		s.fill(image.Rect(w.x, y, end, y+2*thin), ink)
	case over:
		s.fill(image.Rect(w.x, y, end, y+thin), ink)
	}
}

// drawOrder draws the running order: its items, and at the foot what they take.
func (a *aloudView) drawOrder(s *slate) {
	p, colors := &a.place, a.w.desk.light.palette()
	if len(a.reading.Items) == 0 {
		a.drawEmpty(s)
		return
	}
	a.drawColumns(s)
	for i := range p.rows {
		if r := &p.rows[i]; r.at.Max.Y <= p.list.Max.Y {
			a.drawItem(s, r)
		}
	}
	y := p.list.Max.Y + p.units(9)
	s.fill(image.Rect(p.list.Min.X, y, p.list.Max.X, y+max(1, p.units(1))), colors.leafLine())
	a.drawTotal(s)
	a.drawLeads(s)
}

// emptyWords are what an empty running order says, and where nothing is made yet.
var emptyWords = [...]string{
	"Type a word of a poem’s title, and Enter puts the poem in.",
	"Ctrl E takes one from elsewhere; F2 says where it is read, when, and how long there is.",
}

func (a *aloudView) drawEmpty(s *slate) {
	p, k := &a.place, a.w.desk.k
	base := p.list.Min.Y + p.units(60)
	for i, words := range emptyWords {
		ink, italic := a.w.desk.light.palette().ink, i > 0
		if italic {
			ink = a.w.desk.light.palette().aside
		}
		for _, row := range inRows(words, func(w string) bool { return a.px(k.words(w, listSize, italic).Width) <= p.list.Dx() }) {
			s.write(k.words(row, listSize, italic), p.list.Min.X, base, ink)
			base += p.units(wordsDepth)
		}
		base += p.units(30 - wordsDepth)
	}
}

// drawColumns writes the heads of the columns, and how much is out of sight.
func (a *aloudView) drawColumns(s *slate) {
	p, base := &a.place, a.place.list.Min.Y-a.place.units(8)
	a.small(s, "begins", p.begins(), base, true)
	a.small(s, "takes", p.takes(), base, true)
	a.small(s, "page", p.page(), base, true)
	if p.took {
		a.small(s, "took", p.lasted(), base, true)
	}
	if words := a.moreWords(); words != "" {
		a.small(s, words, p.title(), base, false)
	}
}

// moreWords say how many items are out of sight.
func (a *aloudView) moreWords() string {
	var words []string
	if a.top > 0 {
		words = append(words, fmt.Sprintf("%d more ↑", a.top))
	}
	seen := 0
	for _, r := range a.place.rows {
		if r.at.Max.Y <= a.place.list.Max.Y {
			seen++
		}
	}
	if below := len(a.reading.Items) - a.top - seen; below > 0 {
		words = append(words, fmt.Sprintf("%d more ↓", below))
	}
	return strings.Join(words, "  ")
}

// drawItem draws an item: when it begins, what it is, where it stands and what it
// takes. The item at hand lies on a wash.
func (a *aloudView) drawItem(s *slate, r *itemPlace) {
	p, colors, t := &a.place, a.w.desk.light.palette(), &a.plan.Items[r.item]
	if r.item == a.at {
		s.fill(r.at, colors.leafWash())
		s.fill(image.Rect(r.at.Min.X, r.at.Min.Y, r.at.Min.X+max(2, p.units(2)), r.at.Max.Y), colors.ink)
	}
	begins, takes := clock(t.Starts), clock(t.Seconds)
	if t.Dropped {
		begins = "–"
	}
	a.right(s, begins, p.begins(), r.base, colors.aside)
	a.right(s, takes, p.takes(), r.base, colors.ink)
	if p.took && t.Last > 0 {
		a.right(s, clock(t.Last), p.lasted(), r.base, colors.aside)
	}
	if folio := a.folioOf(r.item); folio != "" {
		a.right(s, folio, p.page(), r.base, colors.aside)
	}
	if t.Number > 0 && !p.narrow() {
		a.right(s, fmt.Sprint(t.Number), p.number(), r.base, colors.aside)
	}
	if r.talk > 0 {
		a.drawTalk(s, r)
	}
	a.drawTitle(s, r)
	if r.under > 0 {
		room := p.text() - p.title()
		s.write(a.shortened(a.underItem(r.item), room, underSize, true), p.title(), r.under, colors.aside)
	}
}

// drawTalk writes what is said before an item and what that takes.
func (a *aloudView) drawTalk(s *slate, r *itemPlace) {
	p, colors := &a.place, a.w.desk.light.palette()
	words := a.reading.Items[r.item].Before
	if words == "" {
		words = "talk"
	}
	room := p.text() - p.title()
	s.write(a.shortened(words, room, underSize, true), p.title(), r.talk, colors.aside)
	run := a.w.desk.k.words(clock(a.plan.Items[r.item].Talk), underSize, false)
	s.write(run, p.takes()-s.px(run.Width), r.talk, colors.aside)
}

// drawTitle writes an item's title, and behind it whether it is left out if time is
// short. One that is left out is struck through.
func (a *aloudView) drawTitle(s *slate, r *itemPlace) {
	p, colors, item := &a.place, a.w.desk.light.palette(), &a.reading.Items[r.item]
	marks := ""
	switch {
	case a.plan.Items[r.item].Dropped:
		marks = "dropped: time is short"
	case item.Drop:
		marks = "drop if short"
	}
	mark := a.w.desk.k.words(marks, underSize, true)
	room := p.text() - p.title() - s.px(mark.Width) - p.units(14)
	title := a.verse(a.titleOf(r.item), room, wordSize+2, isTalk(item))
	end := s.write(title, p.title(), r.base, colors.ink)
	if a.plan.Items[r.item].Dropped {
		y := r.base - p.units(5)
		s.fill(image.Rect(p.title(), y, end, y+max(1, p.units(1))), colors.ink)
	}
	s.write(mark, end+p.units(14), r.base, colors.aside)
}

// right writes words in the size of a list that end there.
func (a *aloudView) right(s *slate, words string, x, base int, ink color.RGBA) {
	run := a.w.desk.k.words(words, listSize, false)
	s.write(run, x-s.px(run.Width), base, ink)
}

// small writes small words that begin or end there.
func (a *aloudView) small(s *slate, words string, x, base int, ends bool) {
	run := a.w.desk.k.words(words, plotType, true)
	if ends {
		x -= s.px(run.Width)
	}
	s.write(run, x, base, a.w.desk.light.palette().aside)
}

// px is a length in device pixels.
func (a *aloudView) px(l typeset.Length) int { return int(l.Points()*a.place.density + 0.5) }
