package ui

import (
	"strings"

	"fyne.io/fyne/v2"

	"headland/pagemodel"
)

// finder finds a poem of the book by what is typed of its name.
type finder struct {
	w     *Window
	panel *panel
	field *field
	list  *listing
	all   []found
	found []found
}

// found is a poem and where it begins.
type found struct {
	id   pagemodel.PoemID
	name string
	page int
}

// askPoem asks which poem to go to.
func (w *Window) askPoem() {
	w.desk.settleHand()
	f := &finder{w: w, all: w.poems()}
	f.field = newField("", "a word of its title, or of its first line", f.key)
	f.field.OnChanged = func(string) { f.narrow() }
	f.list = newListing(w.desk.k, w.desk.light.palette(), fyne.NewSize(560, 14*rowDepth), f.take)
	f.panel = w.layPanel("Go to a poem", f.field, f.field, f.list)
	f.narrow()
}

// poems are the poems of the book in order.
func (w *Window) poems() []found {
	var all []found
	set := w.session.Setting()
	for _, p := range set.Collection().Poems() {
		page, _ := set.PageOfPoem(p.ID())
		all = append(all, found{p.ID(), p.Name(), page})
	}
	return all
}

// narrow lists the poems that go with what is typed.
func (f *finder) narrow() {
	f.found = nil
	var rows []listRow
	typed := strings.ToLower(f.field.Text)
	for _, p := range f.all {
		if strings.Contains(strings.ToLower(p.name), typed) {
			f.found = append(f.found, p)
			rows = append(rows, listRow{words: p.name, aside: f.w.session.Setting().FolioOf(p.page)})
		}
	}
	f.list.set(rows, 0)
}

func (f *finder) key(k fyne.KeyName) bool {
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

// take opens the book at a poem.
func (f *finder) take(i int) {
	if i < 0 || i >= len(f.found) {
		return
	}
	f.panel.lift()
	f.w.desk.showPage(f.found[i].page)
}
