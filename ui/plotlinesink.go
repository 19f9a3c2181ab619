package ui

import (
	"fmt"
	"image"
)

// draw draws the rows of poems in sight, and says what the strokes are.
func (l *linesPlot) draw(a *aloudView, s *slate) {
	p, colors := &a.place, a.w.desk.light.palette()
	for row := range min(len(l.rows)-l.top, l.seen(p)) {
		l.drawScale(a, s, l.room.Min.Y+row*p.units(linesRow), row == 0)
	}
	for _, place := range l.places {
		l.drawPoem(a, s, place)
	}
	words := "A stroke for each line, as high as the line is long; a gap where a stanza ends; hollow for prose"
	if n := len(l.rows); n > l.seen(p) {
		words += fmt.Sprintf(" · rows %d to %d of %d", l.top+1, min(n, l.top+l.seen(p)), n)
	}
	s.write(a.shortened(words, l.room.Dx(), plotType, true), l.room.Min.X, p.sheet.Max.Y-p.units(20), colors.aside)
}

// high is the height of a length in device pixels.
func (l *linesPlot) high(p *aloudPlan, ems float64) int {
	return int(min(ems/l.measure(), linesMost)/linesMost*float64(p.units(linesHigh)) + 0.5)
}

// drawScale draws the lines from which lengths are read off: nothing, and the measure.
func (l *linesPlot) drawScale(a *aloudView, s *slate, top int, said bool) {
	p, colors := &a.place, a.w.desk.light.palette()
	thin, base := max(1, p.units(1)), top+p.units(linesHigh)
	s.fill(image.Rect(l.room.Min.X, base, l.room.Max.X, base+thin), colors.leafLine())
	y := base - l.high(p, l.measure())
	s.fill(image.Rect(l.room.Min.X, y, l.room.Max.X, y+thin), colors.leafLine())
	if said {
		a.small(s, fmt.Sprintf("the upper line is the measure: %.1f ems", l.measure()), l.room.Max.X, top-p.units(4), true)
	}
}

// drawPoem draws the strokes of a poem and its number. The poem at hand is ruled
// beneath.
func (l *linesPlot) drawPoem(a *aloudView, s *slate, place linesPlace) {
	p, colors := &a.place, a.w.desk.light.palette()
	poem := l.poems[place.poem]
	base := place.at.Min.Y + p.units(linesHigh)
	ink := colors.aside
	if place.poem == l.at {
		ink = colors.ink
	}
	x, i := place.at.Min.X, 0
	lengths := l.lengths(a, poem)
	for _, lines := range stanzasOf(poem) {
		for range lines {
			stroke := image.Rect(x, base-l.high(p, max(lengths[i], 0)), x+p.units(lineStroke), base)
			if lengths[i] < 0 {
				stroke.Min.Y = base - l.high(p, l.measure())
				frame(s.img, stroke, max(1, p.units(1)), ink)
			} else {
				s.fill(stroke, ink)
			}
			x, i = x+p.units(lineStep), i+1
		}
		x += p.units(stanzaGap)
	}
	run := a.w.desk.k.words(fmt.Sprint(place.poem+1), plotType, false)
	s.write(run, place.at.Min.X, base+p.units(16), ink)
	if place.poem == l.at {
		s.fill(image.Rect(place.at.Min.X, base+p.units(linesNumber), place.at.Max.X, base+p.units(linesNumber)+max(2, p.units(2))), ink)
	}
}
