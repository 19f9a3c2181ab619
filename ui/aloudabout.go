package ui

import (
	"fmt"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/widget"

	"headland/pagemodel"
)

// aboutAsk asks what a running order is called, where and when it is read, and how
// long there is.
type aboutAsk struct {
	a      *aloudView
	made   bool // a new one is made
	panel  *panel
	fields [aboutFields]*field
	begins *wordRow // with what a new one begins
	note   *widget.Label
}

// What is asked about a running order.
const (
	aboutName = iota
	aboutOccasion
	aboutDay
	aboutSlot

	aboutFields
)

var aboutHints = [aboutFields]string{
	aboutName: "what it is called", aboutOccasion: "where, and for whom",
	aboutDay: "the day, as 28 November 2026", aboutSlot: "how long there is: 20, or 19:30; nothing for no limit",
}

var aboutBegins = [...]string{"nothing in it yet", "the book in its order", "what is at hand"}

// askAbout asks about the running order at hand.
func (a *aloudView) askAbout() { a.layAbout(a.reading, a.reading.ID == 0) }

// askNew asks about a new one.
func (a *aloudView) askNew() { a.layAbout(pagemodel.Reading{Name: a.nextName()}, true) }

func (a *aloudView) layAbout(r pagemodel.Reading, made bool) {
	k := &aboutAsk{a: a, made: made, note: wordsOf("")}
	slot := ""
	if r.Slot > 0 {
		slot = clock(float64(r.Slot))
	}
	name := r.Name
	if name == "" {
		name = a.nextName()
	}
	rows := []fyne.CanvasObject{}
	for i, text := range [aboutFields]string{name, r.Occasion, onDayWords(r.On), slot} {
		k.fields[i] = newField(text, aboutHints[i], k.key)
		k.fields[i].OnChanged = func(string) { k.tell() }
		rows = append(rows, k.fields[i])
	}
	heading, help := "About the running order", "Tab goes on · Enter keeps it · Esc leaves"
	k.begins = newWordRow(a.w.desk.k, a.w.desk.light.palette(), aboutBegins[:], 0, k.begin)
	if made {
		heading, help = "A running order", "Tab goes on · ↑ ↓ what it begins with · Enter keeps it · Esc leaves"
		rows = append(rows, k.begins)
	}
	rows = append(rows, container.New(&wide{a.w.panelWidth(askWidth)}, k.note),
		a.w.paragraph(help),
		container.NewHBox(newButton("Keep It", k.keep, k.leave), newButton("Leave It", k.leave, k.leave)))
	k.panel = a.w.layPanel(heading, k.fields[0], rows...)
	k.tell()
}

func (k *aboutAsk) key(key fyne.KeyName) bool {
	switch key {
	case fyne.KeyUp, fyne.KeyDown:
		by := 1
		if key == fyne.KeyUp {
			by = len(aboutBegins) - 1
		}
		k.begin((k.begins.chosen + by) % len(aboutBegins))
		return true
	}
	return enterOrLeave(key, k.keep, k.leave)
}

// begin has a new running order begin with something.
func (k *aboutAsk) begin(i int) {
	if k.made {
		k.begins.choose(i)
		k.tell()
	}
}

// reading is what the fields say.
func (k *aboutAsk) reading() (pagemodel.Reading, error) {
	r := k.a.reading
	if k.made {
		r = k.beginning()
	}
	r.Name, r.Occasion = k.fields[aboutName].Text, k.fields[aboutOccasion].Text
	var err error
	if r.On, err = dayOf(k.fields[aboutDay].Text); err != nil {
		return r, err
	}
	if r.Slot, err = clockOf(k.fields[aboutSlot].Text); err != nil {
		return r, err
	}
	_, err = pagemodel.SetReading{Reading: r}.Apply(k.a.w.session.Collection())
	return r, err
}

// beginning is what a new running order begins with.
func (k *aboutAsk) beginning() pagemodel.Reading {
	switch k.begins.chosen {
	case 1:
		return pagemodel.Reading{Items: k.a.w.session.BookReading().Items}
	case 2:
		r := k.a.changed(func(r *pagemodel.Reading) { r.ID = 0 })
		for i := range r.Items {
			r.Items[i].ID = 0
		}
		return r
	}
	return pagemodel.Reading{}
}

// tell says what it takes against the slot as that is typed, or what can't be.
func (k *aboutAsk) tell() {
	r, err := k.reading()
	if err != nil {
		k.note.SetText(errorWords(err))
		return
	}
	plan := k.a.w.session.Plan(r)
	k.note.SetText(fmt.Sprintf("%s · %s", counted(len(r.Items), "item", "items"), againstSlot(&plan)))
}

// keep makes it so. Where that can't be the panel stays and says why.
func (k *aboutAsk) keep() {
	r, err := k.reading()
	if err != nil {
		k.tell()
		return
	}
	k.leave()
	k.a.reading.ID = r.ID
	k.a.make(func(to *pagemodel.Reading) { *to = r })
}

func (k *aboutAsk) leave() { k.a.w.liftTo(k.panel, k.a) }

// liftTo takes a panel away and gives the keys to what lies below it.
func (w *Window) liftTo(p *panel, below fyne.Focusable) {
	p.lift()
	w.win.Canvas().Focus(below)
}
