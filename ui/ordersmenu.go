package ui

import "fyne.io/fyne/v2"

// The keys that lay these views over the book lift them, too.
var (
	hingesKey = key(ctrl, fyne.KeyH)
	echoesKey = key(ctrl, fyne.KeyF)
)

// orderMenu is what is done about the order of the poems, and what comes back in
// it.
func (w *Window) orderMenu() *fyne.Menu {
	return fyne.NewMenu("Order", w.items(
		&command{words: "Hinges", key: hingesKey, act: w.askHinges, book: true, order: true},
		nil,
		&command{words: "Kept Orders…", key: key(ctrlShift, fyne.KeyO), act: w.askKeptOrders, book: true, order: true},
		&command{words: "Look for an Order…", key: key(ctrlShift, fyne.KeyF), act: w.askLook, book: true, order: true},
		nil,
		&command{words: "Echoes", key: echoesKey, act: w.askEchoes, book: true, order: true},
		&command{words: "Mark the Word as an Echo, or Not", key: key(ctrl, fyne.KeyB), act: w.markWord, book: true},
		&command{words: "Mark the Line under an Echo…", key: key(ctrlShift, fyne.KeyI), act: w.askMarkLine, book: true},
	)...)
}
