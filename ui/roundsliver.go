package ui

import (
	"fmt"
	"image"
	"time"

	"fyne.io/fyne/v2/canvas"

	"headland/pagemodel"
)

// roundOnDesk is what the desk knows of the round that went out last. Its sheet
// lies under the book, and a sliver of it is seen at the foot.
type roundOnDesk struct {
	lay     func()                // lays the sheet over the pages
	count   func(*desk)           // has the corrections counted, a little later
	round   pagemodel.Round       // zero where none has gone out
	since   int                   // the corrections since, as they were counted last; -1 before that
	of      *pagemodel.Collection // what they were counted in
	picture *canvas.Raster
	ink     buffers
}

// countAfter is how long the book must lie still before its corrections are
// counted: that takes longer than a frame.
const countAfter = 400 * time.Millisecond

// Depths in the toolkit's units: of the sliver, what the book leaves free for
// it above the foot, and how far it stands in from the edges of the pages.
const (
	sliverDepth = 24
	sliverRoom  = 20
	sliverInset = 6
)

// begin forgets the round of the book before.
func (r *roundOnDesk) begin() { r.round, r.since, r.of = pagemodel.Round{}, -1, nil }

// there says that a round has gone out.
func (r *roundOnDesk) there() bool { return r.round.ID != 0 }

// noteRound takes note of the round that went out last: true where it is
// another than it was. Where the book is another, the corrections are counted
// again.
func (d *desk) noteRound() bool {
	r, c := &d.round, d.session.Collection()
	last, _ := d.session.LastRound()
	other := last != r.round
	if other {
		r.begin()
		r.round = last
	}
	if r.there() && r.of != c {
		r.of = c
		r.count(d)
	}
	return other
}

// countCorrections counts the corrections since the last round, of the book
// that lies on the desk then.
func (w *Window) countCorrections(*desk) {
	s := w.session
	w.worker.after(countAfter, func() {
		if s != nil && w.session == s {
			w.desk.countNow()
		}
	})
}

// countNow counts them, unless the book is in the hand: then it is changed soon.
func (d *desk) countNow() {
	r := &d.round
	if d.session == nil || !r.there() || d.session.Previewing() {
		r.of = nil
		return
	}
	list, err := d.session.Corrections(r.round.ID)
	since := -1
	if err == nil {
		since = len(list.All)
	}
	r.of = d.session.Collection()
	if since != r.since {
		r.since = since
		r.picture.Refresh()
	}
}

// correctionsWords say how many corrections there are.
func correctionsWords(n int) string {
	switch n {
	case 0:
		return "no corrections"
	case 1:
		return "1 correction"
	}
	return fmt.Sprintf("%d corrections", n)
}

// sliverAt is where the sliver lies: under what is seen of the pages.
func (p *plan) sliverAt() image.Rectangle {
	var pages image.Rectangle
	for _, s := range p.sheets {
		pages = pages.Union(s.seen)
	}
	if pages.Empty() {
		return image.Rectangle{}
	}
	inset := p.units(sliverInset)
	return image.Rect(pages.Min.X+inset, pages.Max.Y, pages.Max.X-inset, pages.Max.Y+p.units(sliverDepth))
}

// drawSliver draws the sliver: the edge of a sheet of paper, with the round's
// name and day on it, and at the right how many corrections there are since.
func (d *desk) drawSliver(w, h int) image.Image {
	colors := d.light.palette()
	img, at := d.round.ink.next(w, h), d.plan.sliver
	s := d.k.slateAt(img, at.Min, d.plan.density, colors.desk)
	if d.session == nil || !d.round.there() {
		return img
	}
	hair := max(1, d.plan.units(1))
	paper := image.Rect(at.Min.X, at.Min.Y, at.Max.X, at.Max.Y-d.plan.units(2))
	s.fill(paper, d.light.proof())
	frame(s.img, paper, hair, palettes[day].aside)
	d.writeSliver(s, paper)
	return img
}

// writeSliver writes on the foot of the round's sheet, ruled beneath while the
// hand is over it: it can be pressed.
func (d *desk) writeSliver(s *slate, paper image.Rectangle) {
	ink := palettes[day].ink
	margin, base := d.plan.units(10), paper.Min.Y+paper.Dy()*17/24
	right := d.k.words(d.sinceWords(), underSize, false)
	x := paper.Max.X - margin - s.px(right.Width)
	left := d.k.words(d.fitting(s, sentWords(d.round.round), x-paper.Min.X-2*margin), underSize, true)
	end := s.write(left, paper.Min.X+margin, base, ink)
	if x > end+margin {
		s.write(right, x, base, ink)
	}
	if d.over.kind == overSent {
		y := base + d.plan.units(3)
		s.fill(image.Rect(paper.Min.X+margin, y, end, y+max(1, d.plan.units(1))), ink)
	}
}

// sinceWords say how many corrections there are since the last round, once they
// are counted.
func (d *desk) sinceWords() string {
	if d.round.since < 0 {
		return ""
	}
	return correctionsWords(d.round.since) + " since"
}
