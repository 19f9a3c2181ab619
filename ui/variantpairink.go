package ui

import (
	"image"
	"image/color"

	"fyne.io/fyne/v2"

	"headland/pagemodel"
	"headland/typeset"
	"headland/typeset/raster"
)

// trim is what a side shows: a spread, or in a narrow window a page.
func (p *versionPair) trim(side int) pagemodel.Trim {
	trim := p.setting(side).Collection().Design().Trim
	if !p.w.desk.plan.narrow {
		trim.Width *= 2
	}
	return trim
}

// arrange lays the picture over the book.
func (p *versionPair) arrange() {
	d := p.w.desk
	trims := [2]pagemodel.Trim{p.trim(0), p.trim(1)}
	p.plan = newPairPlan(&d.plan, fyne.CurrentApp().Driver().AbsolutePositionForObject(d), trims)
	down := image.Pt(0, max(0, p.plan.at.Dy()-p.plan.halves[0].take.Max.Y)/3)
	for side := range p.plan.halves {
		h := &p.plan.halves[side]
		h.name, h.page, h.foot, h.take = h.name.Add(down), h.page.Add(down), h.foot.Add(down), h.take.Add(down)
	}
	p.plan.lay(p.picture)
}

// draw draws both halves.
func (p *versionPair) draw(w, h int) image.Image {
	s := p.w.desk.k.slate(p.ink.next(w, h), p.plan.density, p.w.desk.light.palette().desk)
	for side := range p.plan.halves {
		p.drawName(s, side)
		p.drawPages(s, side)
		p.drawFoot(s, side)
	}
	return s.img
}

// drawName writes a version's letter and name, ruled beneath where its side is
// the chosen one.
func (p *versionPair) drawName(s *slate, side int) {
	d := p.w.desk
	p.plan.name(s, side, side == p.side, d.light.palette(), func(x, base int, ink color.RGBA) int {
		x = s.write(d.k.words(sigla[side], wordSize, false), x, base, ink) + p.plan.units(10)
		words := d.fitting(s, p.title(p.shown[side]), p.plan.halves[side].name.Max.X-x)
		return s.write(d.k.words(words, wordSize, false), x, base, ink)
	})
}

// drawPages draws the pages of a side at which the difference at hand is seen.
func (p *versionPair) drawPages(s *slate, side int) {
	page, box := p.pageOf(side), p.plan.halves[side].page
	if p.w.desk.plan.narrow {
		p.drawPage(s, side, page, box)
		return
	}
	spread := pagemodel.SpreadOf(page, p.setting(side).Extent())
	gutter := (box.Min.X + box.Max.X) / 2
	left, right := box, box
	left.Max.X, right.Min.X = gutter+max(1, p.plan.units(1)), gutter
	p.drawPage(s, side, spread.Verso, left)
	p.drawPage(s, side, spread.Recto, right)
}

// drawPage draws a page with the marks of what differs, or nothing where there is
// none.
func (p *versionPair) drawPage(s *slate, side, number int, box image.Rectangle) {
	page, colors := p.pageOn(side, number), p.w.desk.light.palette()
	if page == nil {
		return
	}
	s.fill(box, colors.paper)
	frame(s.img, box, max(1, p.plan.units(1)), colors.hairline)
	pen := p.w.desk.k.masks.On(s.img, p.plan.scale, box.Min)
	pen.Page(page, colors.ink)
	p.drawMarks(s, side, page, pen)
}

// drawMarks rules beneath the words of a page that the other version does not
// have, and puts a bar in the outer margin by every row that differs; by those of
// the difference at hand it is a thick one. A line that only this version has has
// a cross there.
func (p *versionPair) drawMarks(s *slate, side int, page *typeset.Page, pen *raster.Pen) {
	diffs := p.compared()
	for n := range diffs {
		for i, l := range diffs[n].lines[side] {
			for nth, at := range rowsOf(page, pagemodel.LineRef{Poem: p.poem.ID(), Line: l.ID()}) {
				row := &page.Rows[at]
				p.drawBar(s, page, row, pen, n == p.diff, nth == 0 && diffs[n].only != onlyNowhere)
				if diffs[n].only == onlyNowhere {
					p.underRule(s, row, diffs[n].differ[side][i], pen)
				}
			}
		}
	}
}

func (p *versionPair) drawBar(s *slate, page *typeset.Page, row *typeset.Row, pen *raster.Pen, atHand, only bool) {
	if row.Turned {
		return
	}
	mark, thick := p.w.desk.light.palette().mark, max(1, p.plan.units(1))
	if atHand {
		thick = max(3, p.plan.units(3))
	}
	x, y, deep := pen.X(strokeX(page)), pen.Y(row.Baseline), p.plan.units(9)
	s.fill(image.Rect(x, y-deep, x+thick, y+p.plan.units(2)), mark)
	if only {
		s.fill(image.Rect(x-p.plan.units(4), y-deep/2, x+thick+p.plan.units(4), y-deep/2+max(1, p.plan.units(1.5))), mark)
	}
}

func (p *versionPair) underRule(s *slate, row *typeset.Row, differ map[[2]int]bool, pen *raster.Pen) {
	if row.Turned {
		return
	}
	y, thick := pen.Y(row.Baseline+sizeOf(row)/5), max(1, p.plan.units(1))
	for word := range differ {
		if from, to := max(word[0], row.Start), min(word[1], row.End); from < to {
			s.fill(image.Rect(pen.X(row.XAt(from)), y, pen.X(row.XAt(to)), y+thick), p.w.desk.light.palette().mark)
		}
	}
}

// drawFoot says what the book is with a version in it, and what can be pressed:
// the chosen side's version is put into the book, the other's foot leads to the
// lines.
func (p *versionPair) drawFoot(s *slate, side int) {
	d, h := p.w.desk, &p.plan.halves[side]
	colors := d.light.palette()
	set := p.setting(side)
	says := "page " + set.FolioOf(p.pageOf(side)) + " · " + counted(set.Extent(), "page", "pages") + " in all · " + unsettledWords(set.Unsettled())
	s.write(d.k.words(d.fitting(s, says, h.foot.Dx()), leafType, false), h.foot.Min.X, h.foot.Min.Y+p.plan.units(20), colors.words)
	act := "Line by line (Tab)"
	if side == p.side {
		act = "Put it into the book (Enter)"
		if p.all[p.shown[side]].edit == nil {
			act = "It is in the book (Enter)"
		}
	}
	s.write(d.k.words(act, leafType, true), h.take.Min.X, h.take.Min.Y+p.plan.units(16), colors.words)
}
