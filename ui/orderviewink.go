package ui

import (
	"image"
	"image/color"
	"slices"
	"strings"

	"headland/assets"
	"headland/pagemodel"
	"headland/typeset"
)

// orderWords are words in the order, and how they are set.
type orderWords struct {
	text   string
	size   float64
	italic bool
	caps   bool
}

// run sets words, once.
func (v *orderView) run(w orderWords) typeset.Run {
	r, known := v.runs[w]
	if !known {
		r = v.d.k.setter.Words(w.text, typeset.WordStyle{Family: assets.EBGaramond, Size: pagemodel.Pt(w.size), Italic: w.italic, SmallCaps: w.caps})
		v.runs[w] = r
	}
	return r
}

// within sets words so that they are not wider than some device pixels, their end
// given up where they would be.
func (v *orderView) within(s *slate, w orderWords, wide int) typeset.Run {
	run := v.run(w)
	if s.px(run.Width) <= wide {
		return run
	}
	const more = "…"
	dots := w
	dots.text = more
	room := s.unit(wide) - v.run(dots).Width
	for i := len(run.Glyphs) - 1; i >= 0; i-- {
		if g := &run.Glyphs[i]; g.X <= room && g.Cluster > 0 {
			w.text = strings.TrimRight(w.text[:g.Cluster], " ,") + more
			return v.run(w)
		}
	}
	return typeset.Run{}
}

// orderBandLook is all that a row's picture depends on: where it is the same, the
// row is not drawn again.
type orderBandLook struct {
	light light
	row   int
	keys  []uint64 // of the pages, and whether each has its picture
	bars  []orderBarLook
	words string
}

// orderBarLook is how a bar looks.
type orderBarLook struct {
	id                int64
	from, to          int
	title             string
	unsettled, faults int
	turns             bool
	mood              barMood
}

// barMood is what is being done with a piece.
type barMood uint8

const (
	moodChosen barMood = 1 << iota
	moodUnder          // the hand is over it
	moodHeld
)

// mood is what is being done with a piece.
func (v *orderView) mood(id int64) barMood {
	var m barMood
	if slices.Contains(v.chosen, id) {
		m |= moodChosen
	}
	if v.over.kind == overPiece && v.over.id == id {
		m |= moodUnder
	}
	if v.hand.move != nil && slices.Contains(v.hand.move.ids, id) {
		m |= moodHeld
	}
	return m
}

// draw draws the row, unless it looks as it did.
func (b *orderBand) draw(w, h int) image.Image {
	v := b.v
	v.follow()
	if b.row >= len(v.plan.rows) {
		b.drawn = orderBandLook{}
		return v.d.k.slate(b.ink.next(w, h), v.plan.density, v.d.light.palette().desk).img
	}
	row := &v.plan.rows[b.row]
	look := v.lookOf(b.row, row)
	if img, ok := b.ink.last(w, h); ok && look.same(&b.drawn) {
		return img
	}
	b.drawn = look
	s := v.d.k.slate(b.ink.next(w, h), v.plan.density, v.d.light.palette().desk)
	v.drawRow(s, b.row, row)
	v.fillLater()
	return s.img
}

// lookOf is how a row looks now.
func (v *orderView) lookOf(n int, row *orderRow) orderBandLook {
	look := orderBandLook{light: v.d.light, row: n, words: v.rowWords(n)}
	for _, c := range row.cells {
		at := v.pages.look(row.out, c.page)
		drawn := uint64(0)
		if v.pages.ink[at.key] != nil {
			drawn = 1
		}
		look.keys = append(look.keys, at.key, drawn, uint64(c.x), uint64(c.page))
	}
	for i := range row.bars {
		b := &row.bars[i]
		p := b.piece
		look.bars = append(look.bars, orderBarLook{p.id, b.from, b.to, p.title, p.unsettled, p.faults, p.turns, v.mood(p.id)})
	}
	return look
}

// same says that two looks are alike.
func (l *orderBandLook) same(o *orderBandLook) bool {
	return l.light == o.light && l.row == o.row && l.words == o.words && slices.Equal(l.keys, o.keys) && slices.Equal(l.bars, o.bars)
}

// fillLater has wanted small pages drawn before the next frame.
func (v *orderView) fillLater() {
	if v.filling || len(v.pages.wanted) == 0 || v.left {
		return
	}
	v.filling = true
	v.w.worker.after(smallEvery, v.fill)
}

// fill draws some of the wanted small pages.
func (v *orderView) fill() {
	v.filling = false
	if v.left || v.d.session == nil {
		return
	}
	v.pages.fill(v.d.k, v.plan.scale)
	for _, b := range v.bands {
		b.picture.Refresh()
	}
	v.fillLater()
}

// drawRow draws one row.
func (v *orderView) drawRow(s *slate, n int, row *orderRow) {
	if row.out {
		v.drawOutWords(s, n)
	} else {
		v.drawBack(s, row)
		v.drawSheets(s, row)
	}
	lifted := v.liftedCells(row)
	for i, c := range row.cells {
		at := v.plan.pageRect(c)
		if lifted[i] {
			v.drawSlot(s, at)
			at = at.Sub(image.Pt(0, v.plan.units(orderLift)))
		}
		v.drawSmallPage(s, row, c, at)
		v.drawFolio(s, row, c)
	}
	v.drawChosen(s, row, lifted)
	v.drawSections(s, row)
	for i := range row.bars {
		v.drawBar(s, row, &row.bars[i])
	}
	v.drawMatterWords(s, row)
	v.drawStood(s, n)
}

// liftedCells are the pages of a row that are held.
func (v *orderView) liftedCells(row *orderRow) map[int]bool {
	if v.hand.move == nil {
		return nil
	}
	lifted := map[int]bool{}
	for i := range row.bars {
		if v.mood(row.bars[i].piece.id)&moodHeld != 0 {
			for _, c := range row.bars[i].cells {
				lifted[c] = true
			}
		}
	}
	return lifted
}

// drawSmallPage draws a page; what has no picture yet is blank paper.
func (v *orderView) drawSmallPage(s *slate, row *orderRow, c orderCell, at image.Rectangle) {
	colors := v.d.light.palette()
	look := v.pages.look(row.out, c.page)
	s.fill(at, colors.paper)
	if img := v.pages.picture(look); img != nil {
		pen := v.d.k.masks.On(s.img, v.plan.scale, at.Min)
		copyInto(s.img, at, img, pen.X(smallEdge(look.page))-at.Min.X)
	}
	frame(s.img, at, max(1, v.plan.units(1)), colors.hairline)
	if !row.out && c.page > v.book.set.Extent() {
		v.drawFiller(s, at)
	}
}

// copyInto copies a picture into a rectangle of an image, so far to the right,
// and what then falls outside it not at all.
func copyInto(img *image.RGBA, at image.Rectangle, from *image.RGBA, right int) {
	to := at.Add(image.Pt(right, 0)).Intersect(at).Intersect(img.Rect)
	if to.Empty() {
		return
	}
	start := to.Min.Sub(at.Min).Sub(image.Pt(right, 0))
	for y := range to.Dy() {
		src := from.PixOffset(start.X, start.Y+y)
		copy(img.Pix[img.PixOffset(to.Min.X, to.Min.Y+y):][:4*to.Dx()], from.Pix[src:])
	}
}

// drawChosen draws an outline about the pages of a row that are at hand, one about
// all that lie side by side.
func (v *orderView) drawChosen(s *slate, row *orderRow, lifted map[int]bool) {
	chosen := map[int]bool{}
	for i := range row.bars {
		if v.mood(row.bars[i].piece.id)&moodChosen != 0 {
			for _, c := range row.bars[i].cells {
				chosen[c] = true
			}
		}
	}
	for c := 0; c < len(row.cells); c++ {
		if !chosen[c] {
			continue
		}
		outline := v.plan.pageRect(row.cells[c])
		if lifted[c] {
			outline = outline.Sub(image.Pt(0, v.plan.units(orderLift)))
		}
		for chosen[c+1] && row.cells[c+1].x == outline.Max.X && lifted[c+1] == lifted[c] {
			c++
			outline.Max.X += v.plan.page.X
		}
		frame(s.img, outline, max(2, v.plan.units(2)), v.d.light.palette().ink)
	}
}

// dashes draws a dashed line, level or upright.
func (s *slate) dashes(r image.Rectangle, dash int, ink color.RGBA) {
	for at := 0; at < max(r.Dx(), r.Dy()); at += 2 * dash {
		if r.Dx() >= r.Dy() {
			s.fill(image.Rect(r.Min.X+at, r.Min.Y, min(r.Min.X+at+dash, r.Max.X), r.Max.Y), ink)
		} else {
			s.fill(image.Rect(r.Min.X, r.Min.Y+at, r.Max.X, min(r.Min.Y+at+dash, r.Max.Y)), ink)
		}
	}
}

// dashedFrame draws a dashed rectangle.
func (s *slate) dashedFrame(r image.Rectangle, thick, dash int, ink color.RGBA) {
	s.dashes(image.Rect(r.Min.X, r.Min.Y, r.Max.X, r.Min.Y+thick), dash, ink)
	s.dashes(image.Rect(r.Min.X, r.Max.Y-thick, r.Max.X, r.Max.Y), dash, ink)
	s.dashes(image.Rect(r.Min.X, r.Min.Y, r.Min.X+thick, r.Max.Y), dash, ink)
	s.dashes(image.Rect(r.Max.X-thick, r.Min.Y, r.Max.X, r.Max.Y), dash, ink)
}

// drawSlot draws the place that what is held would take.
func (v *orderView) drawSlot(s *slate, at image.Rectangle) {
	s.dashedFrame(at, max(1, v.plan.units(1)), max(2, v.plan.units(3)), v.d.light.palette().quiet)
}

// drawFiller marks a page that only fills the signature up.
func (v *orderView) drawFiller(s *slate, at image.Rectangle) {
	colors := v.d.light.palette()
	s.fill(at, colors.desk)
	s.dashedFrame(at, max(1, v.plan.units(1)), max(2, v.plan.units(2)), v.sheetInk())
}
