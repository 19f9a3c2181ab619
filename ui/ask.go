package ui

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/widget"
)

// askAbout opens the small menu of what can be done with a line.
func (w *Window) askAbout(m lineMenu) {
	items := make([]*fyne.MenuItem, len(m.items))
	for i, item := range m.items {
		items[i] = fyne.NewMenuItem(item.words, w.chosen(item.act))
	}
	pop := widget.NewPopUpMenu(fyne.NewMenu("", items...), w.win.Canvas())
	pop.ShowAtPosition(m.at)
	w.win.Canvas().Focus(pop)
}

// chosen does what was chosen from a line's menu and gives the desk the keys.
func (w *Window) chosen(act func()) func() {
	return func() {
		w.desk.takeKeys()
		act()
	}
}
