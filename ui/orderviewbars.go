package ui

import (
	"fmt"
	"image"
	"image/color"

	"headland/pagemodel"
)

// Sizes of words in the order, in the toolkit's units.
const (
	barTitle     = 13.5
	sectionTitle = 13
	smallFolio   = 12
)

// barAtop is how far above the pages a bar lies, and titleAtop the baseline of its
// title; sectionAtop that of a section's name.
const (
	barAtop     = 7
	titleAtop   = 14
	sectionAtop = 33
)

// drawBar draws a piece's title and its bar: a single line for a poem, a double
// one for a section's head; heavier where it is at hand.
func (v *orderView) drawBar(s *slate, row *orderRow, b *orderBar) {
	p, colors, mood := &v.plan, v.d.light.palette(), v.mood(b.piece.id)
	lift := 0
	if mood&moodHeld != 0 {
		lift = p.units(orderLift)
	}
	y := p.units(orderAbove-barAtop) - lift
	inset := p.units(2)
	from, to := b.from, b.to
	if b.opens {
		from += inset
	}
	if b.ends {
		to -= inset
	}
	ink, thick := colors.quiet, max(1, p.units(1.5))
	if mood != 0 {
		ink = colors.words
	}
	if mood&moodChosen != 0 {
		thick = max(3, p.units(4))
	}
	v.drawBarLine(s, b, image.Rect(from, y, to, y+thick), ink)
	if b.piece.head() {
		s.fill(image.Rect(from, y-p.units(3), to, y-p.units(3)+max(1, p.units(1))), ink)
	}
	room := v.drawState(s, b, to, y)
	if b.opens || len(b.cells) > 0 && b.cells[0] == 0 {
		v.drawTitle(s, row, b, from, room, y)
	}
}

// drawBarLine draws the line of a bar. Where a poem of two pages turns the leaf,
// the line is broken, and its two ends turn down.
func (v *orderView) drawBarLine(s *slate, b *orderBar, r image.Rectangle, ink color.RGBA) {
	if !b.piece.turns || len(b.folds) == 0 {
		if b.piece.turns {
			v.drawTurn(s, b, r, ink)
		}
		s.fill(r, ink)
		return
	}
	half := v.plan.units(orderAir)/2 + v.plan.units(1)
	fold := b.folds[0]
	left, right := r, r
	left.Max.X, right.Min.X = fold-half, fold+half
	s.fill(left, ink)
	s.fill(right, ink)
	v.drawHook(s, left.Max.X, r, -1, ink)
	v.drawHook(s, right.Min.X, r, 1, ink)
}

// drawTurn turns the end of a bar down that turns the leaf at the end of a row.
func (v *orderView) drawTurn(s *slate, b *orderBar, r image.Rectangle, ink color.RGBA) {
	if !b.ends {
		v.drawHook(s, r.Max.X, r, -1, ink)
	}
	if !b.opens {
		v.drawHook(s, r.Min.X, r, 1, ink)
	}
}

// drawHook draws the end of a bar that turns down over the edge of a page.
func (v *orderView) drawHook(s *slate, x int, r image.Rectangle, inward int, ink color.RGBA) {
	wide := max(2, v.plan.units(2))
	if inward < 0 {
		x -= wide
	}
	s.fill(image.Rect(x, r.Min.Y, x+wide, r.Min.Y+v.plan.units(barAtop+6)), ink)
}

// drawState draws what wants the poet in a piece at the end of its bar: a stroke
// and the number of unsettled lines, a ring and the number of faults. It gives the
// x where the title has to end.
func (v *orderView) drawState(s *slate, b *orderBar, to, y int) int {
	if !b.ends {
		return to
	}
	p, ink := &v.plan, v.d.light.palette().deskMark
	x, base := to, y-p.units(titleAtop-barAtop-2)
	number := func(n int) {
		if n > 1 {
			run := v.run(orderWords{text: fmt.Sprint(n), size: smallFolio})
			x -= s.px(run.Width)
			s.write(run, x, base, ink)
			x -= p.units(2)
		}
	}
	if n := b.piece.faults; n > 0 {
		number(n)
		x -= p.units(8)
		s.ring(image.Pt(x+p.units(4), base-p.units(4)), 3.5*p.density, p.density*1.5, ink)
		x -= p.units(4)
	}
	if n := b.piece.unsettled; n > 0 {
		number(n)
		x -= max(2, p.units(2))
		s.fill(image.Rect(x, base-p.units(10), x+max(2, p.units(2)), base+p.units(1)), ink)
		x -= p.units(4)
	}
	return x
}

// drawTitle writes a piece's title over its bar; on a later row, that it goes on.
func (v *orderView) drawTitle(s *slate, row *orderRow, b *orderBar, from, room, y int) {
	p, colors := &v.plan, v.d.light.palette()
	words := orderWords{text: b.piece.title, size: barTitle}
	switch {
	case b.piece.head():
		words = orderWords{text: "section", size: barTitle, italic: true}
	case !b.opens:
		words.text, words.italic = "… "+b.piece.title, true
	}
	ink := colors.words
	s.write(v.within(s, words, room-from), from, y-p.units(titleAtop-barAtop-2), ink)
}

// drawSections writes the names of the sections over the poems, each with a
// hairline as far as the section goes.
func (v *orderView) drawSections(s *slate, row *orderRow) {
	p, colors := &v.plan, v.d.light.palette()
	if row.out {
		return
	}
	base, thin := p.units(orderAbove-sectionAtop), max(1, p.units(1))
	for i := 0; i < len(row.bars); {
		b := &row.bars[i]
		last := i
		for last+1 < len(row.bars) && row.bars[last+1].piece.section == b.piece.section {
			last++
		}
		i = last + 1
		if b.piece.section < 0 {
			continue
		}
		head := &v.book.pieces[b.piece.section]
		lift := 0
		if v.mood(head.id)&moodHeld != 0 {
			lift = p.units(orderLift)
		}
		room := row.bars[last].to - b.from
		run := v.within(s, orderWords{text: sectionWords(head, b), size: sectionTitle, caps: true}, room)
		end := s.write(run, b.from+p.units(2), base-lift, colors.quiet) + p.units(8)
		if far := row.bars[last].to - p.units(2); far > end+p.units(8) {
			s.fill(image.Rect(end, base-lift-p.units(4), far, base-lift-p.units(4)+thin), v.sheetInk())
		}
	}
}

// sectionWords name a section at its head, and say further on that it goes on.
func sectionWords(head *orderPiece, b *orderBar) string {
	title := head.title
	if title == "" {
		title = "a section without a title"
	}
	if b.piece.id != head.id {
		return "… " + title
	}
	return title
}

// drawFolio writes a page's number under its outer edge.
func (v *orderView) drawFolio(s *slate, row *orderRow, c orderCell) {
	if row.out || c.page > v.book.set.Extent() {
		return
	}
	p := &v.plan
	run := v.run(orderWords{text: v.book.set.FolioOf(c.page), size: smallFolio})
	x := c.x + p.units(3)
	if pagemodel.SideOf(c.page) == pagemodel.Recto {
		x = c.x + p.page.X - p.units(3) - s.px(run.Width)
	}
	s.write(run, x, p.units(orderAbove)+p.page.Y+p.units(13), v.d.light.palette().quiet)
}

// drawMatterWords say over the pages that are no poem's what they are: prelims,
// end matter, and blanks.
func (v *orderView) drawMatterWords(s *slate, row *orderRow) {
	if row.out {
		return
	}
	p := &v.plan
	for _, c := range row.cells {
		if words := v.matterWords(c.page); words != "" && !row.covered(c.x, p.page.X) {
			run := v.within(s, orderWords{text: words, size: smallFolio + 1, italic: true}, p.page.X-p.units(2))
			s.write(run, c.x+p.units(2), p.units(orderAbove-titleAtop+2), v.d.light.palette().quiet)
		}
	}
}

// covered says that a bar lies over a page.
func (r *orderRow) covered(x, wide int) bool {
	for i := range r.bars {
		if r.bars[i].from < x+wide && r.bars[i].to > x {
			return true
		}
	}
	return false
}

// drawStood marks the place where what is held stood, in the row where that now
// is: an empty slot, as narrow as it can be seen.
func (v *orderView) drawStood(s *slate, n int) {
	row, x, ok := v.stood()
	if !ok || row != n {
		return
	}
	p, colors := &v.plan, v.d.light.palette()
	top := p.units(orderAbove)
	wide := p.units(3)
	slot := image.Rect(x-wide, top-p.units(barAtop), x+wide+1, top+p.page.Y+p.units(4))
	s.fill(slot, colors.desk)
	s.dashedFrame(slot, max(1, p.units(1)), max(2, p.units(2)), colors.words)
}

// stood is the row and the x of the place where what is held stood: before the
// piece that followed it there, or after the one before.
func (v *orderView) stood() (row, x int, ok bool) {
	m := v.hand.move
	if m == nil || m.at == m.home {
		return 0, 0, false
	}
	home := m.slots[m.home]
	list := m.list(home)
	if r, b := v.plan.firstBar(idAt(list, home.before)); b != nil {
		return r, v.betweenLeaves(r, b.from), true
	}
	if r, b := v.plan.lastBar(idAt(list, home.before-1)); b != nil {
		return r, b.to, true
	}
	return 0, 0, false
}

// betweenLeaves is the middle of the white before a verso; elsewhere, the place
// itself.
func (v *orderView) betweenLeaves(row, x int) int {
	for _, c := range v.plan.rows[row].cells {
		if c.x == x && !v.plan.rows[row].out && pagemodel.SideOf(c.page) == pagemodel.Verso {
			return x - v.plan.units(orderAir)/2
		}
	}
	return x
}
