package ui

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/widget"

	"headland/pagemodel"
)

// ask lays out at a place of the window what can be done with a version.
func (l *versionList) ask(i int, at fyne.Position) {
	items := []*fyne.MenuItem{fyne.NewMenuItem("Leave all as it was", l.leave)}
	if l.all[i].edit != nil {
		items = []*fyne.MenuItem{
			fyne.NewMenuItem("Put it into the book", func() { l.take(i) }),
			fyne.NewMenuItem("Compare it line by line", func() { l.compare((*versions).layLines) }),
			fyne.NewMenuItem("Compare it as spreads", func() { l.compare((*versions).layPair) }),
		}
	}
	if !l.states {
		items = append(items, fyne.NewMenuItem("Name it…", l.rename))
	}
	if l.all[i].kept {
		items = append(items, fyne.NewMenuItem("Drop it", l.drop))
	}
	pop := widget.NewPopUpMenu(fyne.NewMenu("", items...), l.w.win.Canvas())
	pop.ShowAtPosition(at)
	l.w.win.Canvas().Focus(pop)
}

// rename asks for another name of the version chosen, and lays the list again.
func (l *versionList) rename() {
	i := l.shown[1]
	if l.states || l.refused() {
		return
	}
	from, name := l.all[i].name, l.all[i].name
	if i == l.book {
		from, name = "", l.w.session.Collection().VariantName(l.poem.ID())
	}
	l.w.session.Drop()
	l.scrap.lift()
	l.w.askVersionName("Name this version of "+nameOfPoem(l.poem), name, "a name", func(to string) error {
		if to == name {
			return nil
		}
		return l.w.session.Do(pagemodel.NameVariant{Poem: l.poem.ID(), From: from, To: to})
	}, func() { l.again(i) })
}

// drop throws the variant chosen away.
func (l *versionList) drop() {
	i := l.shown[1]
	if !l.all[i].kept || l.refused() {
		return
	}
	l.w.session.Drop()
	l.scrap.lift()
	l.w.desk.do(pagemodel.DropVariant{Poem: l.poem.ID(), Name: l.all[i].name})
	if l.again(i); l.w.overlaid() {
		return
	}
	l.w.desk.tell(quoted(l.all[i].name) + " is dropped, and no other is kept · Ctrl Z brings it back")
}

// refused says, where the book can only be read, why nothing can be changed.
func (l *versionList) refused() bool {
	_, only := l.w.session.ReadOnly()
	if only {
		l.w.desk.tell(readOnlyWords)
	}
	return only
}

// again lays the list of the variants as they are now; without any but the one
// in the book it ends.
func (l *versionList) again(chosen int) {
	v := l.w.variantsOf(l.poem)
	v.was = l.was
	if len(v.all) == 1 {
		v.end()
		return
	}
	v.choose(min(chosen, len(v.all)-1))
	v.layList()
}

// overlaid says that something lies over the desk.
func (w *Window) overlaid() bool { return len(w.win.Canvas().Overlays().List()) > 0 }
