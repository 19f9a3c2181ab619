package ui

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"
)

// versionRows is a list that can be pressed with the other button too.
type versionRows struct {
	listing
	ask func(i int, at fyne.Position)
}

func newVersionRows(d *desk, act func(int), ask func(int, fyne.Position)) *versionRows {
	r := &versionRows{ask: ask}
	r.k, r.colors, r.chosen, r.act = d.k, d.light.palette(), -1, act
	r.least = fyne.NewSize(300, trialDepth)
	r.picture = pixels(r.draw)
	r.ExtendBaseWidget(r)
	return r
}

// MouseUp takes the row that was pressed, or asks what is to be done with it.
func (r *versionRows) MouseUp(e *desktop.MouseEvent) {
	if i, ok := r.rowAt(e.Position.Y); ok && i == r.chosen && e.Button == desktop.MouseButtonSecondary {
		r.ask(i, e.AbsolutePosition)
		return
	}
	r.listing.MouseUp(e)
}

// tabTaker has the keys where there is nothing to type, the tab key too.
type tabTaker struct{ keyTaker }

func newTabTaker(onKey func(fyne.KeyName)) *tabTaker {
	t := &tabTaker{keyTaker{onKey: onKey}}
	t.ExtendBaseWidget(t)
	return t
}

// AcceptsTab keeps the tab key.
func (t *tabTaker) AcceptsTab() bool { return true }
