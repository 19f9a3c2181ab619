package ui

import (
	"image"
	"image/color"

	large "headland/typeset/sheet"
)

// Sizes at the foot of the reading sheet, in the toolkit's units.
const (
	sheetLeadDepth = 7
	sheetLeadGap   = 10 // at most, between two leads
)

// sheetColors are the colours of the reading sheet: paper by day, the desk's ground
// by lamp.
type sheetColors struct{ ground, words, quiet color.RGBA }

func (l light) sheetColors() sheetColors {
	p := l.palette()
	if l == lamp {
		return sheetColors{p.desk, p.words, p.quiet}
	}
	return sheetColors{p.paper, p.ink, p.aside}
}

// draw draws the leaf that is open.
func (s *readingSheet) draw(w, h int) image.Image {
	d := s.w.desk
	colors := d.light.sheetColors()
	on := d.k.slate(s.ink.next(w, h), float64(w)/float64(max(1, s.size.Width)), colors.ground)
	l := s.open()
	if l == nil {
		s.drawEnd(on)
		return on.img
	}
	for i := range l.Verse {
		row := &l.Verse[i]
		for j := range row.Runs {
			on.pen.Run(&row.Runs[j], row.X+row.Runs[j].X, row.Baseline, colors.words)
		}
	}
	for i := range l.Words {
		s.drawWords(on, &l.Words[i])
	}
	return on.img
}

// drawWords draws words beside the verse, those that are not said in a quieter ink.
func (s *readingSheet) drawWords(on *slate, w *large.Words) {
	colors := s.w.desk.light.sheetColors()
	ink := colors.quiet
	if w.Kind == large.Talk {
		ink = colors.words
	}
	for j := range w.Runs {
		on.pen.Run(&w.Runs[j], w.X+w.Runs[j].X, w.Baseline, ink)
	}
}

// drawEnd says that all is read, and what it took.
func (s *readingSheet) drawEnd(on *slate) {
	f, colors, k := &s.set.Format, s.w.desk.light.sheetColors(), s.w.desk.k
	x, y := on.px(f.Side), on.px(f.Trim.Height/3)
	on.write(k.words(s.tookWords(), f.Most.Points(), false), x, y, colors.words)
	for i, words := range s.endWords() {
		on.write(k.words(words, f.Label.Points(), i > 0), x, y+on.px(f.Label)*(2*i+5)/2, colors.quiet)
	}
}

// drawStrip draws the foot: the time, and words below it.
func (s *readingSheet) drawStrip(w, h int) image.Image {
	d := s.w.desk
	s.stripWide = w
	on := d.k.slate(s.stripInk.next(w, h), float64(w)/float64(max(1, s.size.Width)), d.light.sheetColors().ground)
	s.drawFootWords(on)
	if s.open() != nil {
		s.drawLeads(on)
	}
	return on.img
}

// drawLeads draws the time that is left as leads, one for each item and as long as it
// takes: the one being read shortens from its end, with a notch under it for each
// stumble, those read are gone, those that are left out for want of time are hollow
// stubs; and a bar where the slot ends.
func (s *readingSheet) drawLeads(on *slate) {
	colors := s.w.desk.light.sheetColors()
	y, thin := on.units(sheetLeadTop), max(1, on.units(1))
	for _, lead := range s.leads(on) {
		at := image.Rect(lead.from, y, lead.to, y+on.units(sheetLeadDepth))
		ink := colors.quiet
		if lead.open {
			ink = colors.words
			frame(on.img, at, thin, colors.quiet)
			at.Max.X = lead.left
		}
		if lead.hollow {
			frame(on.img, at, thin, ink)
		} else {
			on.fill(at, ink)
		}
		for _, x := range lead.notches {
			on.fill(image.Rect(x, at.Max.Y+on.units(3), x+max(2, on.units(2)), at.Max.Y+on.units(9)), colors.words)
		}
	}
	if x, ok := s.slotEnd(on); ok {
		s.drawSlotEnd(on, x)
	}
}
