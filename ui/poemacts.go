package ui

import (
	"slices"

	"headland/pagemodel"
)

// noPoemWords are said where something is to be said of the poem at hand and
// there is none.
const noPoemWords = "No one poem is at hand: press one of its lines"

// poemAtHand is the poem of the line at hand, or of the fault at hand, or else the
// only one on the open pages.
func (d *desk) poemAtHand() (*pagemodel.Poem, bool) {
	c := d.session.Collection()
	if ref, ok := d.session.Focus(); ok && d.inSight(ref) {
		poem, _, ok := c.Poem(ref.Poem)
		return poem, ok
	}
	if f, ok := d.faultAtHand(); ok && f.Poem != 0 {
		poem, _, ok := c.Poem(f.Poem)
		return poem, ok
	}
	var open []pagemodel.PoemID
	for _, number := range [...]int{d.spread.Verso, d.spread.Recto} {
		for _, id := range poemsOf(d.page(number)) {
			if !slices.Contains(open, id) {
				open = append(open, id)
			}
		}
	}
	if len(open) != 1 {
		return nil, false
	}
	poem, _, ok := c.Poem(open[0])
	return poem, ok
}

// say does what a word says of the poem at hand.
func (d *desk) say(w poemWord) func() {
	return func() {
		d.withPoem(func(p *pagemodel.Poem) pagemodel.Edit { return w.edit(p.ID(), p.Head()) })
	}
}

// saysSo says that a word is so of the poem at hand.
func (d *desk) saysSo(w poemWord) func() bool {
	return func() bool {
		p, ok := d.poemAtHand()
		return ok && w.is(p.Head())
	}
}

// withPoem does what edit makes of the poem at hand, and opens the book where
// the poem then is.
func (d *desk) withPoem(edit func(*pagemodel.Poem) pagemodel.Edit) {
	d.settleHand()
	poem, ok := d.poemAtHand()
	if !ok {
		d.tell(noPoemWords)
		return
	}
	e := edit(poem)
	if e == nil {
		return
	}
	d.do(e)
	if ref, focused := d.session.Focus(); focused && ref.Poem == poem.ID() {
		d.follows()
		return
	}
	if page, ok := d.of.PageOfPoem(poem.ID()); ok && d.spread != pagemodel.SpreadOf(page, d.of.Extent()) {
		d.showPage(page)
	}
}

// sizeStep is the step in which a poem is set smaller, and larger again.
const sizeStep = pagemodel.Point / 2

// smallestPoem is the smallest size that a poem is stepped down to: below it
// verse is not read with ease (common practice, no source).
const smallestPoem = 7 * pagemodel.Point

func (d *desk) poemSmaller() { d.stepSize(-sizeStep) }

func (d *desk) poemLarger() { d.stepSize(sizeStep) }

// stepSize sets the poem smaller than the book by a step, or back towards the
// book's size.
func (d *desk) stepSize(by pagemodel.Length) {
	d.withPoem(func(p *pagemodel.Poem) pagemodel.Edit {
		h, book := p.Head(), d.session.Collection().Design().Size
		size := h.Size
		if size == 0 {
			size = book
		}
		switch size += by; {
		case size > book:
			d.tell("The poem is set at the book’s size already")
			return nil
		case size < smallestPoem:
			d.tell("A poem is set no smaller than " + sizeWords(smallestPoem))
			return nil
		case size == book:
			size = 0
		}
		h.Size = size
		return pagemodel.SetHead{Poem: p.ID(), Head: h}
	})
}

// askPoemPages lays out all that can be said of the poem at hand's pages, each
// to be tried out.
func (w *Window) askPoemPages() {
	d := w.desk
	d.settleHand()
	poem, ok := d.poemAtHand()
	if !ok {
		d.tell(noPoemWords)
		return
	}
	proposed := pagemodel.ProposedForm(poem)
	var choices []choice
	for _, word := range slices.Concat(startWords(), []poemWord{blankWord()}, runWords(), formWords(), lieWords(), edgeWords()) {
		edit := word.edit(poem.ID(), poem.Head())
		if next, err := edit.Apply(w.session.Collection()); err != nil || next == w.session.Collection() {
			continue
		}
		c := choice{words: word.words, edit: edit}
		if word.off != "" && word.is(poem.Head()) {
			c.words = word.off
		}
		if form, ok := edit.(pagemodel.SetForm); ok && form.Form == proposed && proposed != pagemodel.NoForm {
			c.words += ", which its shape proposes"
		}
		choices = append(choices, c)
	}
	name := poem.Name()
	if poem.Head().Title != "" {
		name = quoted(name)
	}
	w.askTrial("The pages of "+name, poem.ID(), pagemodel.LineRef{}, choices)
}
