package ui

import (
	"fmt"

	"headland/pagemodel"
	"headland/typeset"
	"headland/ui/session"
)

// settingBeside sets whole books beside the window, one at a time; of those
// that wait only the last is set.
type settingBeside struct {
	worker worker
	next   *session.Whole
	done   func(*session.Whole) // called on the window's goroutine
}

// set sets a book as soon as the one before is set.
func (b *settingBeside) set(w *session.Whole) {
	b.next = w
	b.begin()
}

func (b *settingBeside) begin() {
	w := b.next
	if w == nil {
		return
	}
	job := func(progress) error { w.Set(); return nil }
	if b.worker.begin(job, func(int, int) {}, func(error) { b.end(w) }) {
		b.next = nil
	}
}

func (b *settingBeside) end(w *session.Whole) {
	b.done(w)
	b.begin()
}

// stop waits for the book that is being set, and sets no other.
func (b *settingBeside) stop() {
	b.next = nil
	b.worker.stop()
}

// showGlimpse lays the open spread on the desk as a design that is tried has
// it; nil shows nothing.
func (d *desk) showGlimpse(g *session.Glimpse) {
	if g == nil {
		return
	}
	d.pages = map[int]*typeset.Page{}
	for side, number := range [...]int{pagemodel.Recto: d.spread.Recto, pagemodel.Verso: d.spread.Verso} {
		if page := g.Page(pagemodel.Side(side)); number > 0 && page != nil {
			d.pages[number] = page
		} else if number > 0 {
			d.pages[number] = &typeset.Page{Number: number, Side: pagemodel.Side(side), Trim: g.Design().Trim}
		}
	}
	p := &d.plan
	d.plan = newPlan(planning{
		size: p.size, density: p.density, zoom: d.zoom, moved: d.moved, working: d.working,
		trim: g.Design().Trim, spread: d.spread, extent: d.of.Extent(),
	})
	d.placed = d.plan.placeTicks(d.ticks)
	d.placePictures()
	d.showAfresh()
}

// forgetGlimpse has the desk show the pages of its setting again, in whatever
// design that is.
func (d *desk) forgetGlimpse() {
	d.pages = map[int]*typeset.Page{}
	d.arrange()
	d.showAfresh()
}

// showAfresh draws everything again, and the paper too, on which the measure
// and the margins are marked.
func (d *desk) showAfresh() {
	for side := range d.pictures.sheets {
		d.pictures.sheets[side].under = look{}
	}
	d.refresh(allParts)
}

// figures are what a design gives.
type figures struct{ extent, turnovers, faults int }

func figuresOf(set *typeset.Setting) figures {
	return figures{set.Extent(), len(set.Turnovers()), len(set.Faults())}
}

// changed is words about a number, with what it was where that differs.
func changed(words string, now, was int) string {
	if now == was {
		return words
	}
	return fmt.Sprintf("%s (was %d)", words, was)
}

// foldedWords say how many signatures a book is folded into, and what is left.
func foldedWords(extent, signature int) string {
	words := fmt.Sprintf("%s of %d", counted(pagemodel.Signatures(extent, signature), "signature", "signatures"), signature)
	blanks := pagemodel.Blanks(extent, signature)
	if blanks == 0 {
		return words + ", no blank left"
	}
	return words + ", " + counted(blanks, "blank", "blanks")
}
