package ui

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"

	"headland/typeset"
)

// FocusGained says that keys come here.
func (d *desk) FocusGained() {
	d.focused = true
	d.keys.come()
}

// FocusLost says that keys go elsewhere: a key that is held is not heard to be
// let go of there.
func (d *desk) FocusLost() {
	d.focused = false
	d.keys.leave()
	d.stir()
}

// takeKeys asks for the keys.
func (d *desk) takeKeys() {
	to := fyne.Focusable(d)
	if d.order != nil {
		to = d.order
	}
	if c := fyne.CurrentApp().Driver().CanvasForObject(d); c != nil && c.Focused() != to {
		c.Focus(to)
	}
}

// KeyDown hears of a modifier pressed while the hand holds something.
func (d *desk) KeyDown(*fyne.KeyEvent) {
	d.keys.come()
	d.stir()
}

// KeyUp hears of a modifier let go of.
func (d *desk) KeyUp(*fyne.KeyEvent) { d.stir() }

// stir has what the hand holds looked at again.
func (d *desk) stir() {
	if d.hand.state == dragging && d.hand.grip != nil {
		d.hand.stirred = true
		d.refresh(pageParts | footPart)
	}
}

// TypedKey is a key without a modifier.
func (d *desk) TypedKey(e *fyne.KeyEvent) {
	switch {
	case d.session == nil:
	case d.typing != nil:
		d.typeKey(e.Name)
	case d.hand.state == keyed:
		d.heldKey(e.Name)
	case d.hand.state == pressed || d.hand.state == dragging:
		if e.Name == fyne.KeyEscape {
			d.putBack()
		}
	default:
		d.bareKey(e.Name)
	}
}

// bareKey goes about in the book.
func (d *desk) bareKey(key fyne.KeyName) {
	switch key {
	case fyne.KeyPageDown:
		d.turnLeaf(1)
	case fyne.KeyPageUp:
		d.turnLeaf(-1)
	case fyne.KeyHome:
		d.toEnd(false)
	case fyne.KeyEnd:
		d.toEnd(true)
	case fyne.KeyDown:
		d.walkLine(1)
	case fyne.KeyUp:
		d.walkLine(-1)
	case fyne.KeyRight:
		d.walkWord(1)
	case fyne.KeyLeft:
		d.walkWord(-1)
	case fyne.KeyReturn, fyne.KeyEnter:
		d.beginTyping()
	case fyne.KeyEscape:
		d.said = ""
		d.word = -1
		d.fault = typeset.Fault{}
		d.session.ClearFocus()
		d.refresh(pageParts | footPart)
	}
}

// heldKey is a key pressed while the keys hold a rule.
func (d *desk) heldKey(key fyne.KeyName) {
	switch key {
	case fyne.KeyReturn, fyne.KeyEnter:
		d.letGo()
		d.hand = hand{}
		d.refresh(pageParts | footPart)
	case fyne.KeyEscape:
		d.putBack()
	case fyne.KeyLeft:
		d.stepRule(-1)
	case fyne.KeyRight:
		d.stepRule(1)
	case fyne.KeyUp:
		d.landRule(ownLine)
	case fyne.KeyDown:
		d.landRule(joinsNext)
	}
}

// stepRule moves the rule of the line at hand by keys, taking it first.
func (d *desk) stepRule(by int) {
	h, ok := d.keyedRule()
	if !ok {
		return
	}
	d.said = ""
	h.step(by, keysDown{})
	d.preview()
	d.refresh(pageParts | footPart)
}

// keyedRule is the rule that the keys hold, taken now if they hold none.
func (d *desk) keyedRule() (*hold, bool) {
	if h, ok := d.hand.grip.(*hold); ok && d.hand.state == keyed {
		return h, true
	}
	if d.hand.state != idle || d.typing != nil {
		return nil, false
	}
	d.said = ""
	ref, _ := d.session.Focus()
	for _, s := range d.plan.sheets {
		if h, ok := takeRule(d.session.Committed(), d.page(s.number), ref); ok {
			d.hand = hand{state: keyed, grip: h}
			return h, true
		}
	}
	d.tell(noLineWords)
	return nil, false
}

// landRule chooses where the words that the held rule sheds go.
func (d *desk) landRule(l lands) {
	h, ok := d.hand.grip.(*hold)
	if !ok || d.hand.state != keyed {
		return
	}
	d.said = ""
	if !h.land(l) {
		d.tell("What is shed here can only be a line of its own")
		return
	}
	d.preview()
	d.refresh(pageParts | footPart)
}

// TypedShortcut hears what no item of the menu has: the other way to redo.
func (d *desk) TypedShortcut(s fyne.Shortcut) {
	if k, ok := s.(*desktop.CustomShortcut); ok && d.session != nil && k.KeyName == fyne.KeyZ && k.Modifier == ctrlShift {
		d.redo()
	}
}
