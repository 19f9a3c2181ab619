package ui

import (
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	"headland/pagemodel"
)

// keptDesigns lists the designs kept by name, each with what it gives. A name
// typed that none has keeps the book's own design under it.
type keptDesigns struct {
	w       *Window
	panel   *panel
	field   *field
	list    *listing
	sets    *designSets
	choices []choiceOfDesign
}

// askKept lays the list of the designs kept by name.
func (w *Window) askKept() {
	w.desk.settleHand()
	k := &keptDesigns{w: w}
	sets, err := newDesignSets(w, func() { k.list.set(k.rows(), k.list.chosen) })
	if err != nil {
		w.fail("The kept designs can’t be shown", err)
		return
	}
	k.sets = sets
	k.field = newField("", "a name to keep the book’s design under", k.key)
	k.field.OnChanged = k.choose
	k.list = newListing(w.desk.k, w.desk.light.palette(), fyne.NewSize(640, 10*rowDepth), k.take)
	help := wordsOf("Enter sets the book in the design chosen, or keeps its own under a new name · Delete drops the one chosen")
	k.panel = w.layPanel("Kept designs", k.field, k.field, k.list, container.New(&wide{640}, help))
	k.read()
}

// read lists what is kept now.
func (k *keptDesigns) read() {
	k.choices = k.w.designChoices()
	k.list.set(k.rows(), 0)
	for _, c := range k.choices {
		k.sets.want(c.design)
	}
}

func (k *keptDesigns) rows() []listRow {
	rows := make([]listRow, len(k.choices))
	for i, c := range k.choices {
		rows[i] = listRow{words: c.name, aside: c.words(k.sets.sets[c.design]), quiet: !c.kept}
	}
	return rows
}

// choose goes to the design whose name begins as what is typed, or to none.
func (k *keptDesigns) choose(typed string) {
	if typed == "" {
		k.list.set(k.rows(), 0)
		return
	}
	for i, c := range k.choices {
		if c.kept && strings.HasPrefix(strings.ToLower(c.name), strings.ToLower(typed)) {
			k.list.set(k.rows(), i)
			return
		}
	}
	k.list.set(k.rows(), -1)
}

func (k *keptDesigns) key(key fyne.KeyName) bool {
	keep := func() { k.keep(strings.TrimSpace(k.field.Text)) }
	return keptListKey(key, k.list, k.leave, keep, k.take, k.drop)
}

// keptListKey is a key in a list of what is kept by name, under a field in which a name is
// typed: Enter takes the row that is chosen or, where none is, keeps something under
// that name.
func keptListKey(key fyne.KeyName, list *listing, leave, keep func(), take, drop func(row int)) bool {
	switch key {
	case fyne.KeyEscape:
		leave()
	case fyne.KeyReturn, fyne.KeyEnter:
		if list.chosen < 0 {
			keep()
		} else {
			take(list.chosen)
		}
	case fyne.KeyDelete:
		drop(list.chosen)
	default:
		return list.walk(key)
	}
	return true
}

// keep keeps the book's own design under a name.
func (k *keptDesigns) keep(name string) {
	if name == "" {
		return
	}
	edit := pagemodel.KeepDesign{Name: name, Design: k.w.session.Collection().Design()}
	k.w.fail("The design could not be kept", k.w.session.Do(edit))
	k.field.SetText("")
	k.read()
	k.list.step(len(k.choices))
}

// drop forgets a design that is kept.
func (k *keptDesigns) drop(i int) {
	if i < 0 || !k.choices[i].kept {
		return
	}
	k.w.fail("The design could not be dropped", k.w.session.Do(pagemodel.DropDesign{Name: k.choices[i].name}))
	k.read()
	k.list.step(i)
}

// take sets the book in a design.
func (k *keptDesigns) take(i int) {
	k.leave()
	k.w.useDesign(k.choices[i].design)
}

func (k *keptDesigns) leave() {
	k.sets.over = true
	k.panel.lift()
}
