package ui

import (
	"strings"

	"fyne.io/fyne/v2"
)

// finding is what is looked for by a word of it.
type finding[T any] struct {
	heading string
	hint    string    // in the empty field
	size    fyne.Size // of the list
	all     []T
	row     func(T) listRow
	take    func(T)
}

// finder lists what goes with what is typed, and takes one of it.
type finder[T any] struct {
	finding[T]
	panel *panel
	field *field
	list  *listing
	found []T
}

// find asks which of some things is meant. Whoever asks has settled the hand.
func find[T any](w *Window, what finding[T]) {
	f := &finder[T]{finding: what}
	f.field = newField("", what.hint, f.key)
	f.field.OnChanged = func(string) { f.narrow() }
	f.list = newListing(w.desk.k, w.desk.light.palette(), what.size, f.choose)
	f.panel = w.layPanel(what.heading, f.field, f.field, f.list)
	f.narrow()
}

// narrow lists what goes with what is typed.
func (f *finder[T]) narrow() {
	f.found = nil
	var rows []listRow
	typed := strings.ToLower(f.field.Text)
	for _, thing := range f.all {
		row := f.row(thing)
		if strings.Contains(strings.ToLower(row.words), typed) {
			f.found, rows = append(f.found, thing), append(rows, row)
		}
	}
	f.list.set(rows, 0)
}

func (f *finder[T]) key(k fyne.KeyName) bool {
	switch k {
	case fyne.KeyEscape:
		f.panel.lift()
	case fyne.KeyReturn, fyne.KeyEnter:
		f.choose(f.list.chosen)
	default:
		return f.list.walk(k)
	}
	return true
}

// choose takes the i-th of what is listed.
func (f *finder[T]) choose(i int) {
	if i < 0 || i >= len(f.found) {
		return
	}
	f.panel.lift()
	f.take(f.found[i])
}
