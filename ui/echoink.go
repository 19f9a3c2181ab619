package ui

import (
	"image"
	"image/color"

	"headland/pagemodel"
	"headland/typeset"
	"headland/typeset/echoes"
)

// draw draws the scale, the echoes that are seen, and the line at hand.
func (v *echoView) draw(w, h int) image.Image {
	s := v.w.desk.k.slate(v.ink.next(w, h), v.density, v.w.desk.light.palette().desk)
	v.drawScale(s)
	for i, n := v.first, v.first+v.rowsSeen(); i < min(n, len(v.all)); i++ {
		if v.heads(i) {
			v.drawGroup(s, i)
		}
		v.drawEcho(s, i)
	}
	v.drawReach(s)
	v.drawCaption(s)
	v.drawPlace(s)
	return s.img
}

// drawScale draws the pages of the book as a scale, with the folios that there is
// room for, and over it where its sections begin.
func (v *echoView) drawScale(s *slate) {
	d, colors, hair := v.w.desk, v.w.desk.light.palette(), max(1, v.units(1))
	from, to := v.ends()
	y := v.units(echoHead) - v.units(6)
	s.fill(image.Rect(from, y, to, y+hair), colors.quiet)
	first, last := d.of.Body()
	clear := from - v.units(30)
	for n := first; n <= last; n++ {
		x := v.pageX(n, 0)
		if pagemodel.SideOf(n) == pagemodel.Verso || n == first {
			s.fill(image.Rect(x, y-v.units(4), x+hair, y), colors.quiet)
		}
		if folio := d.of.FolioOf(n); n == first || x >= clear+v.units(44) {
			s.write(d.k.words(folio, underSize-1, false), x, y-v.units(6), colors.quiet)
			clear = x
		}
	}
	v.drawSections(s, y-v.units(26))
}

// drawSections writes the titles of the sections over the pages where they begin.
func (v *echoView) drawSections(s *slate, base int) {
	d, end := v.w.desk, 0
	title := ""
	for _, e := range d.of.Collection().Order() {
		if e.Section != nil {
			title = e.Section.Title
			continue
		}
		page, ok := d.of.PageOfPoem(e.Poem.ID())
		if x := v.pageX(page, 0); ok && title != "" && x > end {
			end = s.write(d.k.words(title, underSize-1, true), x, base, d.light.palette().quiet) + v.units(12)
		}
		title = ""
	}
}

// drawGroup writes what the echoes below are, and what they are measured against.
func (v *echoView) drawGroup(s *slate, i int) {
	d := v.w.desk
	words := "Words that come back more than expected, " + echoes.Basis(d.of.Collection().About().Language)
	if v.all[i].Marked {
		words = "Marked by you"
	}
	base := v.rowTop(i) - v.units(9)
	words = d.fitting(s, words, s.img.Rect.Dx()-2*v.units(overMargin))
	s.write(d.k.words(words, wordSize-1, true), v.units(overMargin), base, v.w.desk.light.palette().quiet)
}

// drawEcho draws an echo: its name, how often it is there, and its places along
// the book.
func (v *echoView) drawEcho(s *slate, i int) {
	d, colors := v.w.desk, v.w.desk.light.palette()
	top, from, ink := v.rowTop(i), 0, colors.quiet
	middle := top + v.units(echoRow)/2
	if i == v.at {
		ink = colors.words
		bar := max(2, v.units(3))
		s.fill(image.Rect(v.units(overMargin-12), top+v.units(3), v.units(overMargin-12)+bar, top+v.units(echoRow-3)), ink)
	}
	from, to := v.ends()
	count := d.k.words(timesWords(&v.all[i]), underSize, false)
	x := from - v.units(16) - s.px(count.Width)
	s.write(count, x, middle+v.units(5), ink)
	name := d.fitting(s, v.all[i].Name, x-v.units(overMargin+8))
	end := s.write(d.k.words(name, wordSize, false), v.units(overMargin), middle+v.units(5), colors.words)
	hair := max(1, v.units(1))
	if v.over.kind == overEchoRow && v.over.echo == i {
		s.fill(image.Rect(v.units(overMargin), middle+v.units(9), end, middle+v.units(9)+hair), colors.words)
	}
	s.fill(image.Rect(from, middle, to, middle+hair), colors.quiet)
	for n, x := range v.ticksOf(i) {
		if n == 0 || x != v.x(i, n-1) || i == v.at {
			v.drawTick(s, i, n, middle, ink)
		}
	}
}

// drawTick draws a place of an echo: a stroke for a word, an open square for a
// line or a poem that was marked by hand. The place at hand is larger, and stands on a foot.
func (v *echoView) drawTick(s *slate, echo, place, middle int, ink color.RGBA) {
	x, high, wide := v.x(echo, place), v.units(8), max(1, v.units(2))
	at := echo == v.at && place == v.place(echo)
	if at || v.over == (echoSpot{overEchoTick, echo, place}) {
		high, wide = v.units(12), max(2, v.units(3))
	}
	if v.whole(echo, place) {
		half := max(3, v.units(5))
		box := image.Rect(x-half, middle-half, x+half, middle+half)
		s.fill(box, v.w.desk.light.palette().desk)
		frame(s.img, box, max(1, v.units(1.5)), ink)
	} else {
		s.fill(image.Rect(x-wide/2, middle-high, x-wide/2+wide, middle+high), ink)
	}
	if at {
		foot := v.units(7)
		s.fill(image.Rect(x-foot, middle+v.units(12), x+foot, middle+v.units(12)+max(2, v.units(2.5))), ink)
	}
}

// whole says that a place is a whole line or poem.
func (v *echoView) whole(echo, place int) bool {
	o := &v.all[echo].Found[place]
	if o.Ref.Line == 0 {
		return true
	}
	poem, at, err := v.w.desk.of.Collection().Line(o.Ref)
	return err == nil && o.From == 0 && o.To == len(poem.Line(at).Text()) && v.all[echo].Marked
}

// drawReach draws, at the right edge, how far through the echoes one sees.
func (v *echoView) drawReach(s *slate) {
	n, seen := len(v.all), v.rowsSeen()
	if v.first == 0 && seen >= n {
		return
	}
	top, deep := v.units(echoHead), v.rowsEnd()-v.units(echoHead)
	right, wide := s.img.Rect.Max.X-v.units(6), max(2, v.units(2))
	s.fill(image.Rect(right-wide, top+deep*v.first/n, right, top+deep*min(n, v.first+seen)/n), v.w.desk.light.palette().quiet)
}

// drawPlace draws the strip with the line at hand, what comes back under-ruled.
func (v *echoView) drawPlace(s *slate) {
	on, d := v.lineAt(), v.w.desk
	page, rows := v.rowsAt()
	if page == nil {
		return
	}
	colors, o := d.light.palette(), v.all[v.at].Found[v.place(v.at)]
	left, base := v.strip.drawPaper(s, page, on)
	title := d.k.words(d.fitting(s, v.placeTitle(), on.Max.X-left-v.units(6)), underSize, true)
	end := s.write(title, left, base, colors.aside)
	if v.over.kind == overEchoLine {
		s.fill(image.Rect(left, base+v.units(4), end, base+v.units(4)+max(1, v.units(1))), colors.ink)
	}
	v.strip.drawRows(s, page, rows, on)
	for i := range rows {
		if o.Ref.Line != 0 {
			v.underRule(s, page, &rows[i], v.strip.baseline(i), [2]int{o.From, o.To}, on)
		}
	}
}

// underRule rules off what comes back in a row, from below.
func (v *echoView) underRule(s *slate, page *typeset.Page, r *typeset.Row, baseline typeset.Length, words [2]int, on image.Rectangle) {
	from, to := max(words[0], r.Start), min(words[1], r.End)
	if from >= to {
		return
	}
	origin, shift := v.strip.origin(page, on), stripX(page, r)-r.X
	y := origin.Y + v.strip.px(baseline) + v.units(4)
	x, end := origin.X+v.strip.px(r.XAt(from)+shift), origin.X+v.strip.px(r.XAt(to)+shift)
	s.fill(image.Rect(x, y, end, y+max(2, v.units(1.5))).Intersect(on), v.w.desk.light.palette().mark)
}
