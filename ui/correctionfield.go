package ui

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"
)

// correctionField is the field above the list of corrections: it hands on the
// keys with a modifier, too.
type correctionField struct {
	field
	list *correctionList
}

func newCorrectionField(l *correctionList, hint string) *correctionField {
	f := &correctionField{field: field{onKey: l.key, tabs: true}, list: l}
	f.ExtendBaseWidget(f)
	f.SetPlaceHolder(hint)
	return f
}

// TypedShortcut asks the list first.
func (f *correctionField) TypedShortcut(s fyne.Shortcut) {
	if !f.list.shortcut(s) {
		f.field.TypedShortcut(s)
	}
}

// correctionRows is the listing of corrections. The right button asks what is
// to be noted about a row.
type correctionRows struct {
	listing
	note func()
}

func newCorrectionRows(d *desk, least fyne.Size, act func(int), note func()) *correctionRows {
	r := &correctionRows{listing: listing{k: d.k, colors: d.light.palette(), chosen: -1, least: least, act: act}, note: note}
	r.picture = pixels(r.draw)
	r.ExtendBaseWidget(r)
	return r
}

// MouseUp takes the row that was pressed, or with the right button asks about
// it.
func (r *correctionRows) MouseUp(e *desktop.MouseEvent) {
	if e.Button != desktop.MouseButtonSecondary {
		r.listing.MouseUp(e)
		return
	}
	if i, ok := r.rowAt(e.Position.Y); ok && i == r.chosen {
		r.note()
	}
}

// correctionWords shows a correction as it is listed. It can't be pressed.
type correctionWords struct{ listing }

func newCorrectionWords(d *desk, row listRow, wide float32) *correctionWords {
	c := &correctionWords{listing{k: d.k, colors: d.light.palette(), chosen: -1}}
	c.picture = pixels(c.draw)
	c.ExtendBaseWidget(c)
	c.set([]listRow{row}, -1)
	c.least.Width = wide
	c.Resize(c.least)
	c.fit(correctionsDeep)
	return c
}

// MouseDown does nothing.
func (c *correctionWords) MouseDown(*desktop.MouseEvent) {}

// MouseUp does nothing.
func (c *correctionWords) MouseUp(*desktop.MouseEvent) {}

// Scrolled does nothing: it is seen whole.
func (c *correctionWords) Scrolled(*fyne.ScrollEvent) {}
