package ui

import (
	"image"

	"headland/pagemodel"
	"headland/typeset"
)

// drawTotal writes what the running order takes against its slot, and what is left
// out for it.
func (a *aloudView) drawTotal(s *slate) {
	p, colors := &a.place, a.w.desk.light.palette()
	base := p.list.Max.Y + p.units(40)
	end := s.write(a.w.desk.k.words(againstSlot(&a.plan), titleSize-1, false), p.list.Min.X, base, colors.ink)
	if words := a.dropWords(); words != "" {
		room := p.list.Max.X - end - p.units(24)
		run := a.shortened(words, room, listSize, true)
		s.write(run, p.list.Max.X-s.px(run.Width), base, colors.aside)
	}
}

// drawLeads draws the time as leads: solid for what is read, hollow for the talk
// before it and for what is left out, and a bar where the slot ends.
func (a *aloudView) drawLeads(s *slate) {
	p, colors := &a.place, a.w.desk.light.palette()
	thin := max(1, p.units(1))
	for i, lead := range p.leads {
		t := &a.plan.Items[i]
		read := lead
		if t.Dropped || isTalk(&a.reading.Items[i]) {
			read.Min.X = read.Max.X
		} else if t.Seconds > 0 {
			read.Min.X += int(float64(lead.Dx()) * t.Talk / t.Seconds)
		}
		frame(s.img, lead, thin, colors.aside)
		s.fill(read, colors.aside)
		if i == a.at {
			s.fill(image.Rect(lead.Min.X, lead.Max.Y+p.units(4), lead.Max.X, lead.Max.Y+p.units(4)+max(2, p.units(2))), colors.ink)
		}
	}
	if p.slot > 0 {
		y := p.sheet.Max.Y - p.foot
		s.fill(image.Rect(p.slot, y-p.units(9), p.slot+max(2, p.units(2)), y+p.units(aloudLead+9)), colors.ink)
		a.drawSlotWords(s, y+p.units(aloudLead+20))
	}
}

// drawSlotWords say under its bar what the bar is; at the right edge they end at it.
func (a *aloudView) drawSlotWords(s *slate, base int) {
	p := &a.place
	run := a.w.desk.k.words("the slot ends", plotType, true)
	x := min(p.slot, p.list.Max.X-s.px(run.Width))
	s.write(run, x, base, a.w.desk.light.palette().aside)
}

// shortened sets words, as many of them as there is room for.
func (a *aloudView) shortened(words string, room int, size float64, italic bool) typeset.Run {
	return fitted(words, func(w string) (typeset.Run, bool) {
		run := a.w.desk.k.words(w, size, italic)
		return run, a.px(run.Width) <= room
	})
}

// verse sets words of the poems in the book's face, as many as there is room for.
func (a *aloudView) verse(words string, room int, size float64, italic bool) typeset.Run {
	style := typeset.WordStyle{Family: a.w.session.Collection().Design().Face, Size: pagemodel.Pt(size), Italic: italic}
	return fitted(words, func(w string) (typeset.Run, bool) {
		run := a.w.session.Setter().Words(w, style)
		return run, a.px(run.Width) <= room
	})
}

// fitted sets words without the last of them, where not all fit.
func fitted(words string, set func(string) (typeset.Run, bool)) typeset.Run {
	run, fits := set(words)
	for left := []rune(words); !fits && len(left) > 1; {
		left = left[:len(left)-max(1, len(left)/12)]
		run, fits = set(string(left) + " …")
	}
	return run
}
