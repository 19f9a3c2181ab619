package ui

import "fyne.io/fyne/v2"

// key moves the caret or takes characters away; false for any other key.
func (t *typing) key(key fyne.KeyName) bool {
	switch key {
	case fyne.KeyBackspace:
		t.backspace()
	case fyne.KeyDelete:
		t.remove()
	case fyne.KeyLeft:
		t.step(-1)
	case fyne.KeyRight:
		t.step(1)
	case fyne.KeyHome:
		t.caret = 0
	case fyne.KeyEnd:
		t.caret = len(t.text)
	default:
		return false
	}
	return true
}
