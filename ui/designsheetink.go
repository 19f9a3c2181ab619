package ui

import (
	"fmt"
	"image"
	"strings"

	"headland/typeset"
)

// draw draws the leaf's paper and what is written on it.
func (l *leaf) draw(w, h int) image.Image {
	colors := l.w.desk.light.palette()
	s := l.w.desk.k.slate(l.ink.next(w, h), l.plan.density, colors.leaf())
	frame(s.img, s.img.Rect, max(1, l.plan.units(1)), colors.leafLine())
	s.write(l.w.desk.k.words(l.heading, titleSize, false), l.plan.units(leafMargin), l.plan.units(32), colors.ink)
	l.drawMore(s)
	for i := range min(l.plan.seen, len(l.rows)-l.top) {
		l.drawRow(s, l.top+i, l.plan.row(i))
	}
	l.drawFoot(s)
	return s.img
}

// drawMore says how many rows are out of sight.
func (l *leaf) drawMore(s *slate) {
	above, below := l.top, len(l.rows)-l.top-l.plan.seen
	var said []string
	if above > 0 {
		said = append(said, fmt.Sprintf("%d more ↑", above))
	}
	if below > 0 {
		said = append(said, fmt.Sprintf("%d more ↓", below))
	}
	l.right(s, strings.Join(said, "  "), l.plan.units(32), true)
}

// right writes quiet words that end at the right margin.
func (l *leaf) right(s *slate, words string, base int, italic bool) {
	run := l.words(words, italic)
	s.write(run, s.img.Rect.Dx()-l.plan.units(leafMargin)-s.px(run.Width), base, l.w.desk.light.palette().aside)
}

// drawRow draws one value. The row at hand lies on a wash, as in a list.
func (l *leaf) drawRow(s *slate, i int, band image.Rectangle) {
	colors, row := l.w.desk.light.palette(), &l.rows[i]
	in := image.Rect(l.plan.units(l.plan.names-8), band.Min.Y, band.Max.X-l.plan.units(leafMargin-8), band.Max.Y)
	if i == l.at {
		s.fill(in, colors.leafWash())
		s.fill(image.Rect(in.Min.X, in.Min.Y, in.Min.X+max(2, l.plan.units(2)), in.Max.Y), colors.ink)
	}
	base := band.Min.Y + band.Dy()*28/40
	if row.group != "" {
		if i > l.top {
			s.fill(image.Rect(l.plan.units(leafMargin), band.Min.Y, in.Max.X, band.Min.Y+max(1, l.plan.units(1))), colors.leafLine())
		}
		if l.plan.names > leafMargin {
			s.write(l.words(row.group, true), l.plan.units(leafMargin), base, colors.aside)
		}
	}
	s.write(l.words(row.name, false), l.plan.units(l.plan.names), base, colors.aside)
	l.drawValue(s, row, base)
	if row.steps && row.typed == nil && (i == l.at || i == l.over) {
		l.clear(s, i, l.plan.stepAt(band, -1).Union(l.plan.stepAt(band, 1)).Inset(max(1, l.plan.units(1))))
		l.drawStep(s, l.plan.stepAt(band, -1), false)
		l.drawStep(s, l.plan.stepAt(band, 1), true)
	}
}

// clear takes away what a value has written where its − and + are to stand.
func (l *leaf) clear(s *slate, row int, at image.Rectangle) {
	colors := l.w.desk.light.palette()
	ground := colors.leaf()
	if row == l.at {
		ground = colors.leafWash()
	}
	s.fill(at, ground)
}

// drawValue writes a value, or what is being typed in its place.
func (l *leaf) drawValue(s *slate, row *leafRow, base int) {
	colors, x := l.w.desk.light.palette(), l.plan.units(l.plan.values)
	if row.typed == nil {
		ink := colors.ink
		if row.quiet {
			ink = colors.aside
		}
		s.write(l.words(row.value, row.quiet), x, base, ink)
		return
	}
	if row.typed.text == "" {
		s.write(l.words(row.value, true), x+l.plan.units(5), base, colors.aside)
	}
	run := l.words(row.typed.text, false)
	end := s.write(run, x, base, colors.ink)
	s.fill(image.Rect(x, base+l.plan.units(4), max(end, x+l.plan.units(40)), base+l.plan.units(4)+max(1, l.plan.units(1))), colors.leafLine())
	before := l.words(row.typed.text[:row.typed.caret], false)
	caret := x + s.px(before.Width)
	s.fill(image.Rect(caret, base-l.plan.units(12), caret+max(1, l.plan.units(1)), base+l.plan.units(4)), colors.mark)
}

// drawStep draws a − or a + in the middle of its place.
func (l *leaf) drawStep(s *slate, at image.Rectangle, plus bool) {
	colors, thick, half := l.w.desk.light.palette(), max(1, l.plan.units(1)), l.plan.units(4)
	x, y := (at.Min.X+at.Max.X)/2, (at.Min.Y+at.Max.Y)/2
	s.fill(image.Rect(x-half, y, x+half+thick, y+thick), colors.ink)
	if plus {
		s.fill(image.Rect(x, y-half, x+thick, y+half+thick), colors.ink)
	}
}

// drawFoot draws the lines at the foot under a hairline, and below them what
// was refused.
func (l *leaf) drawFoot(s *slate) {
	colors, x := l.w.desk.light.palette(), l.plan.units(leafMargin)
	y, middle := l.plan.footTop(), s.img.Rect.Dx()*21/40
	if len(l.foot) > 0 {
		s.fill(image.Rect(x, y, s.img.Rect.Dx()-x, y+max(1, l.plan.units(1))), colors.leafLine())
	}
	for i, line := range l.foot {
		base := y + l.plan.units(17+leafFootLine*float64(i))
		s.write(l.w.desk.k.words(line.left, l.plan.small, false), x, base, colors.ink)
		s.write(l.w.desk.k.words(line.right, l.plan.small, false), middle, base, colors.ink)
	}
	base := s.img.Rect.Max.Y - l.plan.units(leafSaid-14)
	for _, line := range l.lines(s, l.said, s.img.Rect.Dx()-2*x) {
		s.write(l.words(line, true), x, base, colors.mark)
		base += l.plan.units(leafFootLine - 1)
	}
}

// words sets words of the leaf's size.
func (l *leaf) words(text string, italic bool) typeset.Run {
	return l.w.desk.k.words(text, leafType, italic)
}

// lines parts words over two lines where one has too little room.
func (l *leaf) lines(s *slate, words string, room int) []string {
	if s.px(l.words(words, true).Width) <= room {
		return []string{words}
	}
	upper, lower := halves(words)
	return []string{upper, lower}
}
