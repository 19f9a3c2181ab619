package ui

import (
	"fmt"
	"image"
	"strings"

	"headland/pagemodel"
	"headland/typeset"
)

// tollWords say what the order that is tried out costs beside the one that it
// would take the place of: what is otherwise, and the extent always.
func (v *orderView) tollWords() string {
	was, is := v.hand.move.toll, v.toll
	var words []string
	say := func(is, was int, one, more string) {
		if is != was {
			words = append(words, fmt.Sprintf("%s, was %d", counted(is, one, more), was))
		}
	}
	say(is.Blanks, was.Blanks, "blank", "blanks")
	say(is.Unfaced, was.Unfaced, "unfaced", "unfaced")
	say(is.Parted, was.Parted, "stanza parted", "stanzas parted")
	say(is.Faults, was.Faults, "fault", "faults")
	if is.Extent == was.Extent {
		words = append(words, counted(is.Extent, "page", "pages")+" as before")
	}
	say(is.Extent, was.Extent, "page", "pages")
	say(is.Signatures, was.Signatures, "signature", "signatures")
	return strings.Join(words, " · ")
}

// Sizes of the slip in the hand, in the toolkit's units.
const (
	slipDepth  = 30
	slipWidest = 240
	slipAway   = 14 // from the point of the hand
)

// placeSlip puts the title of what the hand holds beside the hand; where nothing
// is held, out of sight.
func (v *orderView) placeSlip() {
	p := &v.plan
	if v.hand.state != dragging || v.hand.move == nil {
		v.place(v.slip, image.Rect(-40, -40, -20, -20))
		return
	}
	at := v.hand.at.Add(image.Pt(p.units(slipAway), p.units(slipAway)))
	wide := min(p.units(slipWidest), int(v.slipRun().Width.Points()*p.density)+p.units(24))
	v.place(v.slip, image.Rectangle{at, at.Add(image.Pt(wide, p.units(slipDepth)))})
}

// slipRun is the title of what is held.
func (v *orderView) slipRun() typeset.Run {
	return v.run(orderWords{text: strings.TrimSuffix(v.hand.move.what(), ","), size: barTitle + 1.5})
}

// drawSlip draws it: a slip of paper with the title over its bar.
func (v *orderView) drawSlip(w, h int) image.Image {
	p, colors := &v.plan, v.d.light.palette()
	s := v.d.k.slate(v.slipInk.next(w, h), p.density, colors.paper)
	if v.hand.move == nil {
		return s.img
	}
	frame(s.img, s.img.Rect, max(1, p.units(1)), colors.hairline)
	words := orderWords{text: strings.TrimSuffix(v.hand.move.what(), ","), size: barTitle + 1.5}
	s.write(v.within(s, words, w-p.units(16)), p.units(10), p.units(18), colors.ink)
	s.fill(image.Rect(p.units(10), p.units(22), w-p.units(10), p.units(22)+max(2, p.units(3))), colors.ink)
	return s.img
}

// matterWords say what a page is that is no poem's: "" for those of poems and
// sections.
func (v *orderView) matterWords(page int) string {
	set := v.book.set
	first, last := set.Body()
	switch {
	case page > set.Extent():
		return ""
	case page >= first && page <= last:
		if v.pages.look(false, page).key == 0 {
			return "blank"
		}
		return ""
	}
	for _, kind := range pagemodel.MatterKinds {
		if at, ok := set.PageOfMatter(kind); ok && at == page {
			return string(kind)
		}
	}
	if v.pages.look(false, page).key == 0 {
		return "blank"
	}
	return ""
}

// drawOutWords say beside the row of what is left out that it is.
func (v *orderView) drawOutWords(s *slate, n int) {
	p, colors := &v.plan, v.d.light.palette()
	top := p.units(orderAbove)
	if v.plan.rows[n].begins {
		s.fill(image.Rect(p.units(sideMargin), p.units(8), p.size.X-p.units(sideMargin), p.units(8)+max(1, p.units(1))), colors.quiet)
		for i, word := range [...]string{"left", "out"} {
			run := v.run(orderWords{text: word, size: wordSize, italic: true})
			s.write(run, p.left-p.units(orderAir+4)-s.px(run.Width), top+p.page.Y/2+p.units(float64(18*i)), colors.quiet)
		}
	}
	room, base := p.size.X-p.units(sideMargin)-p.left, top+p.page.Y/2
	set := func(words string) typeset.Run { return v.run(orderWords{text: words, size: wordSize, italic: true}) }
	upper, lower := v.rowWords(n), ""
	if s.px(set(upper).Width) > room {
		upper, lower = halves(upper)
	}
	s.write(set(upper), p.left, base, colors.quiet)
	s.write(set(lower), p.left, base+p.units(18), colors.quiet)
}

// rowWords are words in a row: that nothing is left out.
func (v *orderView) rowWords(n int) string {
	row := &v.plan.rows[n]
	if row.out && len(v.book.out) == 0 {
		return "Nothing is left out: a poem moved here stays in the file and not in the book"
	}
	if r, x, ok := v.stood(); ok && r == n && !row.out {
		return fmt.Sprint(x)
	}
	return ""
}
