package ui

import (
	"strings"

	"fyne.io/fyne/v2"

	"headland/pagemodel"
)

// faceKinds are the endings of files that hold a face of type.
var faceKinds = []string{".ttf", ".otf"}

// faceList shows the families that the book can be set in; the last row adds
// one of the poet's own.
type faceList struct {
	w        *Window
	panel    *panel
	field    *field
	list     *listing
	families []string
	rows     []listRow
}

// askFace asks which family the book is to be set in.
func (w *Window) askFace() {
	w.desk.settleHand()
	f := &faceList{w: w, families: w.session.Families()}
	now := w.session.Collection().Design().Face
	chosen := 0
	for i, family := range f.families {
		row := listRow{words: family}
		if family == now {
			chosen, row.aside = i, "now"
		}
		f.rows = append(f.rows, row)
	}
	f.rows = append(f.rows, listRow{words: "Add a face of yours, .ttf or .otf…"})
	f.list = newListing(w.desk.k, w.desk.light.palette(), fyne.NewSize(560, float32(min(14, len(f.rows)))*rowDepth), f.take)
	f.field = newField("", "a word of its name", f.key)
	f.field.OnChanged = f.choose
	f.panel = w.layPanel("Set the book in", f.field, f.field, f.list)
	f.list.set(f.rows, chosen)
}

// choose goes to the first family that has what is typed in its name.
func (f *faceList) choose(typed string) {
	for i, family := range f.families {
		if strings.Contains(strings.ToLower(family), strings.ToLower(typed)) {
			f.list.set(f.rows, i)
			return
		}
	}
}

func (f *faceList) key(k fyne.KeyName) bool {
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

// take sets the book in a family, or asks for a file to add.
func (f *faceList) take(i int) {
	if i < 0 || i > len(f.families) {
		return
	}
	f.panel.lift()
	if i == len(f.families) {
		f.w.choose(asking{heading: "Add a face", verb: "Add", kinds: faceKinds, done: f.w.addFace})
		return
	}
	design := f.w.session.Collection().Design()
	design.Face = f.families[i]
	f.w.fail("The book could not be set in it", f.w.session.Do(pagemodel.SetDesign{Design: design}))
	f.w.desk.refresh(allParts)
}

// addFace puts a face into the book's file and shows what there is now.
func (w *Window) addFace(path string) {
	w.desk.settleHand()
	if err := w.session.AddFace(path); err != nil {
		w.fail("The face could not be added", err)
		return
	}
	w.desk.refresh(allParts)
	w.askFace()
}
