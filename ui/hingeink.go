package ui

import (
	"image"
)

// draw draws the hinges that are seen.
func (v *hingeView) draw(w, h int) image.Image {
	s := v.w.desk.k.slate(v.ink.next(w, h), v.density, v.w.desk.light.palette().desk)
	for i, strip := range v.strips() {
		v.drawHinge(s, i, &strip)
	}
	v.drawReach(s)
	return s.img
}

// drawHinge draws the words over a hinge and the strips of its two pages.
func (v *hingeView) drawHinge(s *slate, i int, strip *hingeStrip) {
	h, d := &v.all[i], v.w.desk
	colors := d.light.palette()
	ink := colors.quiet
	if i == v.at {
		ink = colors.words
	}
	base := strip.whole.Min.Y + v.units(hingeWordsDepth)*2/3
	end := s.write(d.k.words(h.meets(d.of), wordSize-1, false), strip.whole.Min.X, base, ink)
	between := d.k.words(h.between(d.of), wordSize-1, true)
	if x := strip.whole.Max.X - s.px(between.Width); x > end+v.units(12) {
		s.write(between, x, base, ink)
	}
	for e := range h.edges {
		v.drawEdge(s, hingeSpot{i, e}, strip.edges[e])
	}
	if v.level(h) {
		v.drawGutter(s, strip.edges[0].Union(strip.edges[1]))
	}
	if i == v.at {
		bar := max(2, v.units(3))
		x := strip.whole.Min.X - v.units(10)
		s.fill(image.Rect(x, strip.whole.Min.Y+v.units(6), x+bar, strip.whole.Max.Y), colors.words)
	}
}

// drawGutter draws the fold between two pages that face each other.
func (v *hingeView) drawGutter(s *slate, on image.Rectangle) {
	colors, fold := v.w.desk.light.palette(), v.strip.right
	hair := max(1, v.units(1))
	s.fill(image.Rect(fold, on.Min.Y, fold+hair, on.Max.Y), colors.hairline)
}

// drawEdge draws an edge's strip of paper: its poem's title, small, and its line
// where it stands on the page.
func (v *hingeView) drawEdge(s *slate, at hingeSpot, on image.Rectangle) {
	d, e := v.w.desk, &v.all[at.hinge].edges[at.edge]
	colors, page := d.light.palette(), d.page(e.page)
	left, base := v.strip.drawPaper(s, page, on)
	words := d.fitting(s, e.title(at.edge), on.Max.X-left-v.units(6))
	end := s.write(d.k.words(words, underSize, true), left, base, colors.aside)
	switch y := base + v.units(4); {
	case at.hinge == v.at && at.edge == v.edge:
		s.fill(image.Rect(left, y, end, y+max(2, v.units(2))), colors.ink)
	case at == v.over:
		s.fill(image.Rect(left, y, end, y+max(1, v.units(1))), colors.ink)
	}
	v.strip.drawRows(s, page, d.hingeRows(e), on)
}

// drawReach draws, at the right edge, how far through the hinges one sees.
func (v *hingeView) drawReach(s *slate) {
	n, h, wide := len(v.all), s.img.Rect.Dy(), max(2, v.units(2))
	if seen := v.page(); v.first > 0 || seen < n {
		right := s.img.Rect.Max.X - v.units(6)
		s.fill(image.Rect(right-wide, h*v.first/n, right, h*min(n, v.first+seen)/n), v.w.desk.light.palette().quiet)
	}
}
