package ui

import (
	"image"

	"headland/pagemodel"
	"headland/typeset"
	"headland/typeset/raster"
)

// draw draws the leaf's paper and the choices on it.
func (l *choiceLeaf) draw(w, h int) image.Image {
	d := l.w.desk
	colors := d.light.palette()
	s := d.k.slate(l.ink.next(w, h), l.plan.density, colors.leaf())
	verse := d.k.masks.On(s.img, l.plan.scale, image.Point{})
	frame(s.img, s.img.Rect, max(1, l.plan.units(1)), colors.leafLine())
	for _, seen := range l.seen() {
		if seen.headed {
			l.drawHead(s, l.all[seen.choice].Head.String(), int(seen.head-l.plan.pitch*0.15+0.5))
		}
		if seen.choice == l.at {
			l.drawWash(s, seen)
		}
		l.drawChoice(s, verse, seen)
	}
	l.drawFoot(s)
	return s.img
}

// drawHead writes a head with a hairline after it, as wide as the measure.
func (l *choiceLeaf) drawHead(s *slate, words string, base int) {
	colors, size := l.w.desk.light.palette(), max(l.plan.small, leafType)
	end := s.write(l.w.desk.k.words(words, size, true), l.plan.text, base, colors.aside)
	y := base - l.plan.units(4)
	s.fill(image.Rect(end+l.plan.units(12), y, l.plan.text+l.onPage(l.plan.measure), y+max(1, l.plan.units(1))), colors.leafLine())
}

// onPage is a length on the page in device pixels.
func (l *choiceLeaf) onPage(length typeset.Length) int {
	return int(length.Points()*l.plan.scale + 0.5)
}

// drawWash draws what the choice pointed at lies on.
func (l *choiceLeaf) drawWash(s *slate, seen seenChoice) {
	colors := l.w.desk.light.palette()
	in := image.Rect(l.plan.text-l.plan.units(12), int(seen.from), s.img.Rect.Max.X-l.plan.units(leafMargin-8), int(seen.to))
	in = in.Intersect(s.img.Rect.Inset(l.plan.units(1)))
	s.fill(in, colors.leafWash())
	s.fill(image.Rect(in.Min.X, in.Min.Y, in.Min.X+max(2, l.plan.units(2)), in.Max.Y), colors.ink)
}

// drawChoice inks a choice's rows as the page would, and its small words below.
func (l *choiceLeaf) drawChoice(s *slate, verse *raster.Pen, seen seenChoice) {
	colors, b := l.w.desk.light.palette(), &l.blocks[seen.choice]
	top := seen.from - l.plan.pitch*0.3
	left := pagemodel.Pt(float64(l.plan.text) / l.plan.scale)
	rows := l.all[seen.choice].Rows
	for i := range rows {
		r := &rows[i]
		baseline := pagemodel.Pt((top + l.plan.pitch*float64(r.Grid)) / l.plan.scale)
		for j := range r.Runs {
			verse.Run(&r.Runs[j], left+r.X+r.Runs[j].X, baseline, colors.ink)
		}
		l.drawOver(s, r, int(top+l.plan.pitch*float64(r.Grid)))
	}
	y := top + l.plan.pitch*float64(b.grid)
	for i := range b.says {
		y += l.plan.row
		s.write(b.says[i], l.plan.text, int(y), colors.aside)
	}
}

// drawOver marks what of a row exceeds the measure: a hairline where it ends, and
// the ink past it under-ruled.
func (l *choiceLeaf) drawOver(s *slate, r *typeset.Row, baseline int) {
	end := l.plan.text + l.onPage(l.plan.measure)
	far := l.plan.text + l.onPage(r.X+r.Width)
	if r.X+r.Width <= l.plan.measure {
		return
	}
	mark, hair, size := l.w.desk.light.palette().mark, max(1, l.plan.units(1)), l.onPage(sizeOf(r))
	s.fill(image.Rect(end, baseline-size*4/5, end+hair, baseline+size*3/10), mark)
	s.fill(image.Rect(end, baseline+size*4/20, far, baseline+size*4/20+hair), mark)
}

// drawFoot writes the words at the foot, ruled beneath where the hand is.
func (l *choiceLeaf) drawFoot(s *slate) {
	colors, base := l.w.desk.light.palette(), s.img.Rect.Max.Y-l.plan.units(13)
	for _, w := range l.footWords() {
		end := s.write(w.run, w.x, base, colors.aside)
		if l.over.kind == w.kind {
			y := base + l.plan.units(4)
			s.fill(image.Rect(w.x, y, end, y+max(1, l.plan.units(1))), colors.aside)
		}
	}
}
