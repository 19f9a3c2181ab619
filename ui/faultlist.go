package ui

import (
	"fyne.io/fyne/v2"

	"headland/typeset"
)

// askFault asks which fault to go to, by a word of its kind or its poem.
func (w *Window) askFault() {
	w.desk.settleHand()
	if len(w.desk.faults) == 0 {
		w.desk.tell("No fault is found")
		return
	}
	find(w, finding[typeset.Fault]{
		heading: "Go to a fault", hint: "a word of its kind, or of its poem", size: fyne.NewSize(620, 14*rowDepth),
		all: w.desk.faults, row: w.faultRow, take: w.desk.goToFault,
	})
}

// faultRow is a fault's letter, its kind, its poem and its folio.
func (w *Window) faultRow(fault typeset.Fault) listRow {
	kind := kindOf(fault)
	row := listRow{words: kind.letter + ": " + kind.words}
	if poem, _, ok := w.session.Setting().Collection().Poem(fault.Poem); ok {
		row.words += " · " + poem.Name()
	}
	if fault.Page > 0 {
		row.aside = w.session.Setting().FolioOf(fault.Page)
	}
	return row
}
