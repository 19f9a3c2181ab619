package ui

import (
	"fmt"
	"image"
)

// draw draws the rows, what joins them, and the axis.
func (t *timePlot) draw(a *aloudView, s *slate) {
	p, colors := &a.place, a.w.desk.light.palette()
	if a.reading.Slot > 0 {
		a.drawUpright(s, t.x(float64(a.reading.Slot)), t.room, "the slot ends, "+clock(float64(a.reading.Slot)))
	}
	t.drawJoins(a, s)
	for _, b := range t.bars {
		t.drawBar(a, s, b)
	}
	deep := min(p.units(timeRowMost), t.room.Dy()/max(1, len(t.rows)))
	for i := range t.rows {
		base := t.room.Min.Y + i*deep + p.units(24)
		run := a.w.desk.k.words(t.rows[i].name+" · "+clock(t.rows[i].ends()), underSize, i != t.at)
		s.fill(image.Rect(t.room.Min.X, base-p.units(14), t.room.Min.X+s.px(run.Width)+p.units(6), base+p.units(5)), colors.leaf())
		end := s.write(run, t.room.Min.X, base, colors.ink)
		if i == t.at {
			s.fill(image.Rect(t.room.Min.X, base+p.units(4), end, base+p.units(4)+max(1, p.units(1))), colors.ink)
		}
	}
	a.drawMinutes(s, t.room, float64(t.room.Dx())/t.second, t.second)
	note := t.failed
	if note == "" && len(t.rows) == 1 {
		note = "Nothing is timed yet: what a run-through takes comes in a row below this one."
	}
	s.write(a.shortened(note, t.room.Dx(), underSize, true), t.room.Min.X, t.room.Min.Y+deep+p.units(20), colors.aside)
}

// drawBar draws an item in a row, with its title or else its place in the running
// order where there is room, and below it a notch for each stumble.
func (t *timePlot) drawBar(a *aloudView, s *slate, b timeBar) {
	p, colors := &a.place, a.w.desk.light.palette()
	thin := max(1, p.units(1))
	ground := colors.leaf()
	if b.item == a.at {
		ground = colors.ink
	}
	frame(s.img, b.at, thin, colors.aside)
	s.fill(b.at.Inset(thin), ground)
	for _, at := range t.rows[b.row].parts[b.item].stumbles {
		x := b.at.Min.X + int(at*t.second)
		s.fill(image.Rect(x, b.at.Max.Y, x+max(2, p.units(2)), b.at.Max.Y+p.units(8)), colors.ink)
	}
	ink := colors.ink
	if b.item == a.at {
		ink = colors.leaf()
	}
	run := a.verse(a.titleOf(b.item), s.img.Rect.Dx(), plotType, false)
	if room := b.at.Dx() - p.units(8); s.px(run.Width) > room {
		if run = a.w.desk.k.words(fmt.Sprint(b.item+1), plotType, false); s.px(run.Width) > room {
			return
		}
	}
	s.write(run, b.at.Min.X+p.units(5), b.at.Min.Y+p.units(21), ink)
}

// drawJoins joins the end of each item with its end in the row below, so that one
// sees where the time is lost.
func (t *timePlot) drawJoins(a *aloudView, s *slate) {
	for _, b := range t.bars {
		below := t.bar(b.row+1, b.item)
		if below.Empty() {
			continue
		}
		from := image.Pt(b.at.Max.X, b.at.Max.Y)
		to := image.Pt(below.Max.X, below.Min.Y)
		s.join(from, to, a.w.desk.light.palette().leafLine())
	}
}
