package ui

import (
	"fyne.io/fyne/v2"

	"headland/pagemodel"
)

// askPoem asks which poem to go to, by a word of its name.
func (w *Window) askPoem() {
	w.desk.settleHand()
	set := w.session.Setting()
	var poems []*pagemodel.Poem
	for _, p := range set.Collection().Poems() {
		poems = append(poems, p)
	}
	page := func(p *pagemodel.Poem) int {
		page, _ := set.PageOfPoem(p.ID())
		return page
	}
	find(w, finding[*pagemodel.Poem]{
		heading: "Go to a poem", hint: "a word of its title, or of its first line", size: fyne.NewSize(560, 14*rowDepth), all: poems,
		row:  func(p *pagemodel.Poem) listRow { return listRow{words: p.Name(), aside: set.FolioOf(page(p))} },
		take: func(p *pagemodel.Poem) { w.goToPoem(p, page(p)) },
	})
}

// goToPoem opens the book at a poem, whose first line is then at hand: what is done
// next is done to it, and not to the poem that faces it.
func (w *Window) goToPoem(p *pagemodel.Poem, page int) {
	w.desk.showPage(page)
	for _, l := range p.Lines() {
		w.desk.goTo(pagemodel.LineRef{Poem: p.ID(), Line: l.ID()})
		return
	}
	w.session.ClearFocus()
}
