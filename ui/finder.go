package ui

import (
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
)

// finding is what is looked for by a word of it.
type finding[T any] struct {
	heading string
	hint    string    // in the empty field
	size    fyne.Size // of the list
	help    string    // below it; or ""
	all     []T
	sieves  []sieve[T] // that narrow it besides; or none
	row     func(T) listRow
	take    func(T)
}

// sieve lets some of the things in a list through.
type sieve[T any] struct {
	words string // how many it lets through, of what kind
	lets  func(T) bool
}

// finder lists what goes with what is typed, and takes one of it.
type finder[T any] struct {
	finding[T]
	panel *panel
	field *field
	sieve *wordRow
	list  *listing
	found []T
}

// find asks which of some things is meant. Whoever asks has settled the hand.
func find[T any](w *Window, what finding[T]) {
	f := &finder[T]{finding: what}
	f.field = newField("", what.hint, f.key)
	f.field.OnChanged = func(string) { f.narrow() }
	f.list = newListing(w.desk.k, w.desk.light.palette(), what.size, f.choose)
	var body []fyne.CanvasObject
	var words []string
	for _, s := range what.sieves {
		words = append(words, s.words)
	}
	f.sieve = newWordRow(w.desk.k, w.desk.light.palette(), words, -1, f.sift)
	if f.field.tabs = len(words) > 0; f.field.tabs {
		body = append(body, f.sieve)
	}
	if body = append(body, f.field, f.list); what.help != "" {
		body = append(body, container.New(&wide{what.size.Width}, wordsOf(what.help)))
	}
	f.panel = w.layPanel(what.heading, f.field, body...)
	f.narrow()
}

// narrow lists what goes with what is typed: every word of it, in whatever
// order.
func (f *finder[T]) narrow() {
	f.found = nil
	var rows []listRow
	typed := strings.Fields(strings.ToLower(f.field.Text))
	for _, thing := range f.all {
		if f.sieve.chosen >= 0 && !f.sieves[f.sieve.chosen].lets(thing) {
			continue
		}
		if row := f.row(thing); row.has(typed) {
			f.found, rows = append(f.found, thing), append(rows, row)
		}
	}
	f.list.set(rows, 0)
}

// sift narrows the list to what a sieve lets through, or, where it does so
// already, no longer.
func (f *finder[T]) sift(i int) {
	if i == f.sieve.chosen {
		i = -1
	}
	f.sieve.choose(i)
	f.narrow()
	f.panel.w.win.Canvas().Focus(f.field)
}

// nextSieve takes the next sieve, and after the last none.
func (f *finder[T]) nextSieve() {
	next := f.sieve.chosen + 1
	if next == len(f.sieves) {
		next = -1
	}
	f.sieve.choose(next)
	f.narrow()
}

func (f *finder[T]) key(k fyne.KeyName) bool {
	switch k {
	case fyne.KeyEscape:
		f.panel.lift()
	case fyne.KeyReturn, fyne.KeyEnter:
		f.choose(f.list.chosen)
	case fyne.KeyTab:
		f.nextSieve()
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
