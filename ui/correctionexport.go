package ui

import (
	"path/filepath"

	"fyne.io/fyne/v2"

	"headland/pagemodel"
)

// askMarkedProof asks where a marked proof of the last round is to go: its pages
// as sent, with the marks of the corrections.
func (w *Window) askMarkedProof() {
	w.desk.settleHand()
	round, ok := w.lastRound()
	if !ok {
		return
	}
	w.choose(asking{
		heading: "Export a marked proof of " + round.Name, verb: "Export", kinds: []string{".pdf"}, write: true, replace: true,
		name: w.stem() + " marked " + fileName(round.Name),
		done: func(path string) { w.exportMarked(path, round.ID) },
	})
}

// exportMarked writes a marked proof beside the window.
func (w *Window) exportMarked(path string, round pagemodel.RoundID) {
	proof, err := w.session.MarkedProof(round)
	if err != nil {
		w.fail("It could not be exported", err)
		return
	}
	w.exportBy(path, func(p progress) error { return proof.PDF(path, p) }, func() {})
}

// outWay is one way in which something goes out.
type outWay struct {
	words   string
	kind    string
	edition bool // with this edition's breaks
}

// askOut asks in which way something is to go out, and then where to.
func (w *Window) askOut(heading, name string, ways []outWay, done func(way outWay, path string)) {
	find(w, finding[outWay]{
		heading: heading, hint: "for what, or the ending", size: fyne.NewSize(560, float32(len(ways))*rowDepth), all: ways,
		row: func(o outWay) listRow { return listRow{words: o.words + " (" + o.kind + ")"} },
		take: func(o outWay) {
			w.choose(asking{
				heading: heading, verb: "Export", kinds: []string{o.kind}, write: true, replace: true, name: name,
				done: func(path string) { done(o, path) },
			})
		},
	})
}

// listWays are the ways in which a list of corrections goes out.
var listWays = []outWay{
	{words: "to print", kind: ".pdf"},
	{words: "for a word processor", kind: ".docx"},
	{words: "as an open document", kind: ".odt"},
	{words: "as a table", kind: ".csv"},
	{words: "for a mail", kind: ".txt"},
}

// askCorrectionsOut asks as what the corrections of the last round are to go out.
func (w *Window) askCorrectionsOut() {
	w.desk.settleHand()
	if round, ok := w.lastRound(); ok {
		w.askListOut(round)
	}
}

func (w *Window) askListOut(round pagemodel.Round) {
	w.askOut("Export the corrections to "+round.Name, w.stem()+" corrections to "+fileName(round.Name), listWays, func(_ outWay, path string) {
		if err := w.session.ExportCorrections(path, round.ID); err != nil {
			w.fail("It could not be exported", err)
			return
		}
		w.desk.tell("Exported " + filepath.Base(path))
	})
}

// revisedWays are the ways in which the revised manuscript goes out.
var revisedWays = []outWay{
	{words: "for a word processor, as the poems break", kind: ".docx"},
	{words: "for a word processor, with this edition’s breaks", kind: ".docx", edition: true},
	{words: "as an open document, as the poems break", kind: ".odt"},
	{words: "as an open document, with this edition’s breaks", kind: ".odt", edition: true},
	{words: "in Markdown, as the poems break", kind: ".md"},
	{words: "in Markdown, with this edition’s breaks", kind: ".md", edition: true},
	{words: "as plain text, as the poems break", kind: ".txt"},
	{words: "as plain text, with this edition’s breaks", kind: ".txt", edition: true},
}

// askRevised asks as what the manuscript is to go out as it stands now.
func (w *Window) askRevised() {
	w.desk.settleHand()
	w.askOut("Export the revised manuscript", w.stem()+" revised", revisedWays, func(way outWay, path string) {
		w.exportText(path, way.edition)
	})
}
