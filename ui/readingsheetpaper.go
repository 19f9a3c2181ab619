package ui

import (
	"path/filepath"

	"fyne.io/fyne/v2"

	"headland/pagemodel"
	large "headland/typeset/sheet"
)

// askReadingCopy asks on what paper a running order is to be in large type, and
// then where it is to go.
func (w *Window) askReadingCopy(r pagemodel.Reading) {
	w.desk.settleHand()
	find(w, finding[string]{
		heading: "A copy in large type, to read from", hint: "the paper: A4, A5 or Letter",
		size: fyne.NewSize(440, float32(len(large.Papers))*rowDepth), all: large.Papers,
		row: func(paper string) listRow { return listRow{words: paper} }, take: func(paper string) { w.askCopyPlace(r, paper) },
	})
}

func (w *Window) askCopyPlace(r pagemodel.Reading, paper string) {
	w.choose(asking{
		heading: "Export “" + r.Name + "” in large type", verb: "Export", kinds: []string{".pdf"}, write: true, replace: true,
		name: w.stem() + " reading copy", done: func(path string) { w.exportReadingCopy(path, r, paper) },
	})
}

// exportReadingCopy writes the copy beside the window.
func (w *Window) exportReadingCopy(path string, r pagemodel.Reading, paper string) {
	c, err := w.session.ReadingCopy(r, paper)
	if err != nil {
		w.fail("It could not be exported", err)
		return
	}
	w.exportBy(path, func(p progress) error { return c.PDF(path, p) }, func() {})
}

// askCard asks where a running order is to go as a card that lies in the book.
func (w *Window) askCard(r pagemodel.Reading) {
	w.desk.settleHand()
	w.choose(asking{
		heading: "Export a card of “" + r.Name + "”, to lie in the book", verb: "Export", kinds: []string{".pdf"}, write: true, replace: true,
		name: w.stem() + " card", done: func(path string) { w.exportCard(path, r) },
	})
}

func (w *Window) exportCard(path string, r pagemodel.Reading) {
	if err := w.session.ExportCard(path, r); err != nil {
		w.fail("It could not be exported", err)
		return
	}
	w.desk.tell("Exported " + filepath.Base(path))
}
