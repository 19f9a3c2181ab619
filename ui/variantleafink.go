package ui

import (
	"image"
	"image/color"

	"headland/pagemodel"
	"headland/typeset"
	"headland/typeset/raster"
)

// draw draws the leaf's paper, the names of A and B, and what differs.
func (l *versionLeaf) draw(w, h int) image.Image {
	d := l.w.desk
	colors := d.light.palette()
	s := d.k.slate(l.ink.next(w, h), l.plan.density, colors.leaf())
	verse := d.k.masks.On(s.img, l.plan.scale, image.Point{})
	frame(s.img, s.img.Rect, max(1, l.plan.units(1)), colors.leafLine())
	l.drawNames(s)
	for _, seen := range l.seen() {
		if seen.diff == l.diff {
			l.drawWash(s, seen)
		}
		l.drawDiff(s, verse, seen)
	}
	if len(l.blocks) == 0 {
		s.write(l.words("A and B are alike, line by line"), l.plan.text, int(l.namesDepth()+l.plan.pitch*1.5), colors.aside)
	}
	for _, w := range l.pressed() {
		l.drawWord(s, &w)
	}
	return s.img
}

// drawNames says which versions A and B are, and which of them is on the page.
func (l *versionLeaf) drawNames(s *slate) {
	colors := l.w.desk.light.palette()
	for side := range sigla {
		base := l.nameBase(side)
		l.drawSiglum(s, side, base, colors.ink)
		s.write(l.nameOf(side), l.plan.text, base, colors.ink)
		if side == l.onPage {
			s.write(l.onPageWords(), l.plan.at.Dx()-l.plan.units(leafMargin)-l.px(l.onPageWords().Width), base, colors.aside)
		}
	}
	y := int(l.namesDepth())
	s.fill(image.Rect(l.siglumX(), y, s.img.Rect.Max.X-l.plan.units(leafMargin), y+max(1, l.plan.units(1))), colors.leafLine())
}

// signRoom is how far left of the measure the letters A and B stand, in the
// toolkit's units.
const signRoom = 26

// siglumX is where the letters A and B stand, left of the measure.
func (l *versionLeaf) siglumX() int { return l.plan.text - l.plan.units(signRoom) }

func (l *versionLeaf) drawSiglum(s *slate, side, base int, ink color.RGBA) {
	s.write(l.w.desk.k.words(sigla[side], l.plan.small, false), l.siglumX(), base, ink)
}

// drawWash draws what the difference at hand lies on.
func (l *versionLeaf) drawWash(s *slate, seen seenDiff) {
	colors := l.w.desk.light.palette()
	in := image.Rect(l.siglumX()-l.plan.units(9), int(seen.from), s.img.Rect.Max.X-l.plan.units(leafMargin-8), int(seen.to))
	in = in.Intersect(s.img.Rect.Inset(l.plan.units(1)))
	s.fill(in, colors.leafWash())
	s.fill(image.Rect(in.Min.X, in.Min.Y, in.Min.X+max(2, l.plan.units(2)), in.Max.Y), colors.ink)
}

// drawDiff writes what differs, and inks the rows of both versions below it as
// the page would, each line with its letter.
func (l *versionLeaf) drawDiff(s *slate, verse *raster.Pen, seen seenDiff) {
	colors, b, diff := l.w.desk.light.palette(), &l.blocks[seen.diff], &l.compared()[seen.diff]
	y := seen.from
	for i := range b.says {
		y += l.plan.row
		s.write(b.says[i], l.plan.text, int(y), colors.aside)
	}
	left := pagemodel.Pt(float64(l.plan.text) / l.plan.scale)
	for side := range b.rows {
		was := -2
		for i := range b.rows[side] {
			r := &b.rows[side][i]
			if y += l.plan.pitch; y > l.plan.foot() {
				return
			}
			for j := range r.Runs {
				verse.Run(&r.Runs[j], left+r.X+r.Runs[j].X, pagemodel.Pt(y/l.plan.scale), colors.ink)
			}
			of := b.of[side][i]
			if of != was {
				l.drawSiglum(s, side, int(y), colors.aside)
			}
			if of >= 0 && diff.only == onlyNowhere {
				l.underRule(s, r, diff.differ[side][of], int(y))
			}
			if of != was && diff.only == side {
				l.drawOnly(s, int(y))
			}
			was = of
		}
	}
}

// underRule rules beneath the words of a row that the other version does not
// have; words that stand side by side have one rule.
func (l *versionLeaf) underRule(s *slate, r *typeset.Row, differ map[[2]int]bool, base int) {
	y, thick := base+l.plan.onPage(sizeOf(r))/5, max(1, l.plan.units(1.5))
	at := func(offset int) int { return l.plan.text + l.plan.onPage(r.XAt(max(r.Start, min(offset, r.End)))) }
	for word := range differ {
		from, to := word[0], word[1]
		for next := range differ {
			if next[0] == to+1 {
				to = next[0]
			}
		}
		if from < r.End && to > r.Start {
			s.fill(image.Rect(at(from), y, at(to), y+thick), l.w.desk.light.palette().mark)
		}
	}
}

// onPage is a length on the page in device pixels.
func (p *choicePlan) onPage(length typeset.Length) int { return int(length.Points()*p.scale + 0.5) }

// drawOnly draws the sign of a line that only one version has: a cross after its
// letter.
func (l *versionLeaf) drawOnly(s *slate, base int) {
	ink, arm, thick := l.w.desk.light.palette().mark, l.plan.units(3.5), max(1, l.plan.units(1.5))
	x, y := l.plan.text-l.plan.units(9), base-l.plan.units(4)
	s.fill(image.Rect(x-arm, y, x+arm+thick, y+thick), ink)
	s.fill(image.Rect(x, y-arm, x+thick, y+arm+thick), ink)
}

// drawWord writes words that can be pressed, ruled beneath where the hand is. The
// name of B is written already.
func (l *versionLeaf) drawWord(s *slate, w *leafWord) {
	colors := l.w.desk.light.palette()
	if w.kind != onName {
		s.write(w.run, w.x, w.y, colors.aside)
	}
	if l.over.kind == w.kind {
		y := w.y + l.plan.units(4)
		s.fill(image.Rect(w.x, y, w.x+w.wide, y+max(1, l.plan.units(1))), colors.aside)
	}
}
