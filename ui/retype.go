package ui

import (
	"fyne.io/fyne/v2"
)

// beginTyping begins to retype the line at hand in place.
func (d *desk) beginTyping() {
	ref, ok := d.session.Focus()
	line, in := d.lineAtHand()
	if !ok || !in {
		d.tell(noLineWords)
		return
	}
	if _, only := d.session.ReadOnly(); only {
		d.tell(readOnlyWords)
		return
	}
	caret := len(line.Text())
	if d.word >= 0 {
		caret = d.word
	}
	d.putBack()
	d.said = ""
	d.typing = newTyping(ref, line.Text(), caret)
	d.refresh(pageParts | footPart)
}

// showTyping shows the line as it is typed.
func (d *desk) showTyping() {
	d.said = ""
	edit := d.typing.edit()
	if edit == nil {
		d.session.Drop()
	} else {
		d.try(d.session.Preview(edit))
	}
	d.refresh(pageParts | footPart)
}

// finishTyping keeps what was typed.
func (d *desk) finishTyping() {
	if d.typing == nil {
		return
	}
	d.typing = nil
	d.word = -1
	d.try(d.session.Release())
	d.refresh(pageParts | footPart)
}

// dropTyping puts the line back as it was.
func (d *desk) dropTyping() {
	d.typing = nil
	d.session.Drop()
	d.refresh(pageParts | footPart)
}

// TypedRune types into the line that is being retyped.
func (d *desk) TypedRune(r rune) {
	if d.typing == nil {
		return
	}
	d.typing.insert(string(r))
	d.showTyping()
}

// paste types what the clipboard holds into the line.
func (d *desk) paste(text string) {
	if d.typing == nil {
		return
	}
	d.typing.insert(text)
	d.showTyping()
}

// typeKey is a key pressed while a line is retyped.
func (d *desk) typeKey(key fyne.KeyName) {
	t := d.typing
	switch key {
	case fyne.KeyReturn, fyne.KeyEnter:
		d.finishTyping()
		return
	case fyne.KeyEscape:
		d.dropTyping()
		return
	case fyne.KeyUp, fyne.KeyDown:
		d.finishTyping()
		d.bareKey(key)
		return
	}
	if t.key(key) {
		d.showTyping()
	}
}
