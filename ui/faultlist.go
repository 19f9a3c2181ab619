package ui

import (
	"strings"

	"fyne.io/fyne/v2"

	"headland/typeset"
)

// faultList finds one of the book's faults by what is typed of its kind or its
// poem.
type faultList struct {
	w     *Window
	panel *panel
	field *field
	list  *listing
	found []typeset.Fault
}

// askFault asks which fault to go to.
func (w *Window) askFault() {
	w.desk.settleHand()
	if len(w.desk.faults) == 0 {
		w.desk.tell("No fault is found")
		return
	}
	f := &faultList{w: w}
	f.field = newField("", "a word of its kind, or of its poem", f.key)
	f.field.OnChanged = func(string) { f.narrow() }
	f.list = newListing(w.desk.k, w.desk.light.palette(), fyne.NewSize(620, 14*rowDepth), f.take)
	f.panel = w.layPanel("Go to a fault", f.field, f.field, f.list)
	f.narrow()
}

// narrow lists the faults that go with what is typed.
func (f *faultList) narrow() {
	f.found = nil
	var rows []listRow
	typed := strings.ToLower(f.field.Text)
	for _, fault := range f.w.desk.faults {
		row := f.row(fault)
		if strings.Contains(strings.ToLower(row.words), typed) {
			f.found, rows = append(f.found, fault), append(rows, row)
		}
	}
	f.list.set(rows, 0)
}

// row is a fault's letter, its kind, its poem and its folio.
func (f *faultList) row(fault typeset.Fault) listRow {
	kind := kindOf(fault)
	row := listRow{words: kind.letter + ": " + kind.words}
	if poem, _, ok := f.w.session.Setting().Collection().Poem(fault.Poem); ok {
		row.words += " · " + poem.Name()
	}
	if fault.Page > 0 {
		row.aside = f.w.session.Setting().FolioOf(fault.Page)
	}
	return row
}

func (f *faultList) key(k fyne.KeyName) bool {
	switch k {
	case fyne.KeyEscape:
		f.panel.lift()
	case fyne.KeyReturn, fyne.KeyEnter:
		f.take(f.list.chosen)
	default:
		return f.list.walk(k)
	}
	return true
}

// take goes to a fault.
func (f *faultList) take(i int) {
	if i < 0 || i >= len(f.found) {
		return
	}
	f.panel.lift()
	f.w.desk.goToFault(f.found[i])
}
