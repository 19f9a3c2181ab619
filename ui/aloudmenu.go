package ui

import "fyne.io/fyne/v2"

// readingMenu is what is done for reading aloud. Each lays the running orders over
// the desk first.
func (w *Window) readingMenu() *fyne.Menu {
	on := func(act func(*aloudView)) func() {
		return func() { act(w.layAloud()) }
	}
	return fyne.NewMenu("Reading", w.items(
		&command{words: "Another Running Order…", act: on((*aloudView).askNew), book: true},
		&command{words: "To a Running Order…", act: on((*aloudView).askWhich), book: true},
		nil,
		&command{words: "Read a Poem…", act: on(func(a *aloudView) { a.askItem("") }), book: true},
		&command{words: "From Elsewhere…", act: on((*aloudView).askElsewhere), book: true},
		&command{words: "Unread Longest…", key: key(ctrlShift, fyne.KeyU), act: on((*aloudView).askUnread), book: true},
		nil,
		&command{words: "Begin the Run-Through (Ctrl Enter in Aloud)", act: on(func(a *aloudView) { a.begin(0) }), book: true},
		&command{words: "On Paper…", act: on((*aloudView).askPaper), book: true},
		nil,
		&command{words: "The Voice…", key: key(ctrlShift, fyne.KeyY), act: on((*aloudView).askVoice), book: true},
		&command{words: "The Time, Planned and Taken", act: on(func(a *aloudView) { a.turnTo(timeFace) }), book: true},
		&command{words: "The Lines, Along the Book", act: on(func(a *aloudView) { a.turnTo(linesFace) }), book: true},
	)...)
}
