package ui

import (
	"fyne.io/fyne/v2"

	"headland/pagemodel"
)

// begin lays the running order over the window in large type, to be read from one
// of its items on.
func (a *aloudView) begin(from int) { a.w.openReadingSheet(a.reading, from) }

// paperKind is a way to have a running order on paper.
type paperKind struct {
	words, under string
	ask          func(pagemodel.Reading)
}

// askPaper asks how the running order is to be had on paper.
func (a *aloudView) askPaper() {
	find(a.w, finding[paperKind]{
		heading: "On paper", hint: "a word of it", size: fyne.NewSize(a.w.panelWidth(askWidth), 4*rowDepth),
		all: []paperKind{
			{"A copy in large type", "to read from: no poem parted where it need not be", a.w.askReadingCopy},
			{"A card to lie in the book", "its pages, first words and times", a.w.askCard},
		},
		row:  func(k paperKind) listRow { return listRow{words: k.words, under: k.under} },
		take: func(k paperKind) { k.ask(a.reading) },
	})
}
