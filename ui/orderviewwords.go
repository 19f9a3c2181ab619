package ui

import (
	"fmt"
	"image"
	"strings"

	"headland/pagemodel"
)

// drawHead draws the words at the head: the collection's title, and at the right
// the ways to hold the book.
func (v *orderView) drawHead(w, h int) image.Image {
	s := v.d.k.slate(v.headInk.next(w, h), v.plan.density, v.d.light.palette().desk)
	over := noWay
	if v.over.kind == overWay {
		over = way(v.over.id)
	}
	v.d.drawWays(s, orderWay, over)
	return s.img
}

// stripDepth is the depth of the strip that is out of the book, in the toolkit's
// units.
const stripDepth = 40

// strip is where a poem that the hand holds can be let go of to leave it out: at
// the foot of the rows, whatever rows are in sight.
func (v *orderView) strip() image.Rectangle {
	p := &v.plan
	if v.hand.state != dragging || v.hand.move == nil || v.hand.move.outmost() < 0 || v.hand.move.slots[v.hand.move.home].out {
		return image.Rectangle{}
	}
	return image.Rect(0, p.view.Max.Y-p.units(stripDepth), p.size.X, p.view.Max.Y)
}

// placeFoot lays the words at the foot, and the strip over them while there is
// one.
func (v *orderView) placeFoot() {
	p := &v.plan
	v.place(v.foot, image.Rect(0, p.view.Max.Y-v.strip().Dy(), p.size.X, p.size.Y))
}

// drawFoot draws the words at the foot.
func (v *orderView) drawFoot(w, h int) image.Image {
	v.follow()
	d, p, colors := v.d, &v.plan, v.d.light.palette()
	strip := v.strip()
	s := d.k.slateAt(v.footInk.next(w, h), image.Pt(0, p.view.Max.Y-strip.Dy()), p.density, colors.desk)
	if !strip.Empty() {
		v.drawStrip(s, strip)
	}
	base, margin := d.plan.footBase(), p.units(sideMargin)
	left, right := d.k.words(v.extentWords(), wordSize, false), d.k.words(v.rowsWords(), wordSize, false)
	from, to := margin, p.size.X-margin
	if p.size.X > p.units(narrowBelow) {
		from = s.write(left, from, base, colors.words) + p.units(28)
		to -= s.px(right.Width)
		s.write(right, to, base, colors.quiet)
		to -= p.units(28)
	}
	upper, lower := v.says()
	if lower != "" {
		base -= p.units(11)
	}
	for _, line := range [...]string{upper, lower} {
		run := d.k.words(d.fitting(s, line, to-from), wordSize, false)
		wide := s.px(run.Width)
		s.write(run, max(from, min(to-wide, (p.size.X-wide)/2)), base, colors.words)
		base += p.units(22)
	}
	return s.img
}

// drawStrip draws the strip that is out of the book.
func (v *orderView) drawStrip(s *slate, strip image.Rectangle) {
	p, colors := &v.plan, v.d.light.palette()
	in := v.hand.move.slots[v.hand.move.at].out
	box := image.Rect(strip.Min.X+p.units(sideMargin), strip.Min.Y+p.units(4), strip.Max.X-p.units(sideMargin), strip.Max.Y-p.units(6))
	thick := max(1, p.units(1))
	ink, words := colors.quiet, "out of the book: let go here, and it is left out"
	if in {
		thick, ink, words = 2*thick, colors.words, "let go, and it is left out of the book"
	}
	s.dashedFrame(box, thick, max(2, p.units(4)), ink)
	run := v.d.k.words(words, wordSize-1, true)
	s.write(run, (box.Min.X+box.Max.X-s.px(run.Width))/2, box.Max.Y-p.units(10), ink)
}

// extentWords say what the book takes.
func (v *orderView) extentWords() string {
	set := v.book.set
	each := v.plan.each
	n := pagemodel.Signatures(set.Extent(), each)
	words := fmt.Sprintf("%s · %s of %d", counted(set.Extent(), "page", "pages"), counted(n, "signature", "signatures"), each)
	if empty := pagemodel.Blanks(set.Extent(), each); empty > 0 {
		words += fmt.Sprintf(", %d empty", empty)
	}
	if left := len(v.book.out); left > 0 {
		words += fmt.Sprintf(" · %d left out", left)
	}
	return words
}

// rowsWords say which pages are in sight.
func (v *orderView) rowsWords() string {
	p := &v.plan
	first := min(v.top/max(1, p.depth), len(p.rows)-1)
	last := min((v.top+p.view.Dy()-1)/max(1, p.depth), len(p.rows)-1)
	if first >= p.books {
		return "left out"
	}
	extent := v.book.set.Extent()
	from := p.rows[first].cells[0].page
	cells := p.rows[min(last, p.books-1)].cells
	to := min(cells[len(cells)-1].page, extent)
	words := fmt.Sprintf("pages %s–%s", v.book.set.FolioOf(from), v.book.set.FolioOf(to))
	switch {
	case v.top > 0 && v.top < p.farthest():
		words = "↑ " + words + " ↓"
	case v.top > 0:
		words = "↑ " + words
	case p.farthest() > 0:
		words += " ↓"
	}
	return words
}

// chosenHelp is what can be done with what is at hand. In a narrow window what
// stands before its last words is given up first: Shift, then Enter.
const chosenHelp = "Drag, or Ctrl ← → ↑ ↓, moves it · Delete leaves out · Enter opens · Shift takes more · Esc goes back"

// says is what is said in the middle of the foot: what is, and what can be done.
func (v *orderView) says() (upper, lower string) {
	switch {
	case v.said != "":
		return v.said, ""
	case v.d.said != "":
		return v.d.said, ""
	case v.hand.move != nil:
		return v.moveWords(), v.heldWords()
	case v.over.kind == overWay && way(v.over.id) == aloudWay:
		return "Press: the running orders that are read aloud (Ctrl 3)", ""
	case v.over.kind == overWay:
		return "Press: back to the open pages (Ctrl 1, Esc)", ""
	case v.over.kind == overPiece:
		return v.pieceWords([]int64{v.over.id}), "Press to have it at hand, drag to move it, press twice to open it"
	case len(v.chosen) > 0:
		return v.pieceWords(v.chosen), chosenHelp
	}
	return "← → ↑ ↓ go from poem to poem · Esc goes back to the pages", ""
}

// moveWords say what letting go would do, and what it would cost beside what was.
func (v *orderView) moveWords() string {
	m := v.hand.move
	if m.at == m.home {
		return sentence(strings.TrimSuffix(m.what(), ",")) + " where it stood: nothing is moved"
	}
	return sentence(m.says()) + " · " + v.tollWords()
}

// heldWords say how what is held is let go of.
func (v *orderView) heldWords() string {
	if v.hand.state == dragging {
		return "Let go to have it so · Esc puts it back"
	}
	return "← → by a place, ↑ ↓ by a row · Enter has it so · Esc puts it back"
}

// pieceWords say what a piece is, where it is and what wants the poet in it.
func (v *orderView) pieceWords(ids []int64) string {
	p, out := v.book.piece(ids[0])
	last, _ := v.book.piece(ids[len(ids)-1])
	if p == nil || last == nil {
		return ""
	}
	words := sentence(strings.TrimSuffix(v.book.name(ids), ","))
	if out {
		return words + ", left out · " + counted(p.last-p.first+1, "page", "pages")
	}
	words += ", " + v.pageWords(p.first, last.last)
	if len(ids) > 1 {
		return words
	}
	if p.unsettled > 0 {
		words += " · " + unsettledWords(p.unsettled)
	}
	if p.turns {
		words += " · its two pages do not face each other"
	}
	if p.faults > 0 {
		words += " · " + counted(p.faults, "fault", "faults")
	}
	return words
}

// pageWords are pages by their folios.
func (v *orderView) pageWords(first, last int) string {
	if first == last {
		return "page " + v.book.set.FolioOf(first)
	}
	return "pages " + v.book.set.FolioOf(first) + "–" + v.book.set.FolioOf(last)
}
