package ui

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"
)

// AcceptsTab keeps the tab key: there is nothing else to go to.
func (l *choiceLeaf) AcceptsTab() bool { return true }

// TypedKey is a key without a modifier.
func (l *choiceLeaf) TypedKey(e *fyne.KeyEvent) {
	l.byMouse = false
	switch e.Name {
	case fyne.KeyEscape:
		l.lift()
	case fyne.KeyReturn, fyne.KeyEnter:
		l.take(l.at)
	case fyne.KeyTab:
		l.otherBreak()
	case fyne.KeySpace:
		l.turnFlap()
	default:
		l.walkKey(e.Name)
	}
}

// walkKey goes from choice to choice.
func (l *choiceLeaf) walkKey(key fyne.KeyName) {
	switch key {
	case fyne.KeyDown:
		l.walk(1)
	case fyne.KeyUp:
		l.walk(-1)
	case fyne.KeyRight:
		l.toHead(1)
	case fyne.KeyLeft:
		l.toHead(-1)
	case fyne.KeyHome:
		l.goTo(0)
	case fyne.KeyEnd:
		l.goTo(len(l.all) - 1)
	case fyne.KeyPageDown:
		l.goTo(min(len(l.all)-1, max(l.at, l.top)+max(1, len(l.seen())-1)))
	case fyne.KeyPageUp:
		l.goTo(max(0, max(l.at, l.top)-max(1, len(l.seen())-1)))
	}
}

// TypedShortcut hears the keys with a modifier, those of the menu too.
func (l *choiceLeaf) TypedShortcut(s fyne.Shortcut) {
	k, ok := s.(*desktop.CustomShortcut)
	if !ok {
		return
	}
	l.byMouse = false
	switch *k {
	case desktop.CustomShortcut{KeyName: fyne.KeyReturn, Modifier: ctrl}:
		l.layOnFlap()
	case desktop.CustomShortcut{KeyName: fyne.KeyO, Modifier: ctrlShift}:
		l.turnOrder()
	case desktop.CustomShortcut{KeyName: fyne.KeyC, Modifier: ctrlShift}:
		l.lift()
	case desktop.CustomShortcut{KeyName: fyne.KeyH, Modifier: ctrlShift}:
		l.sayWord()
	case desktop.CustomShortcut{KeyName: fyne.KeyDown, Modifier: ctrl}:
		l.toUnsettled(1)
	case desktop.CustomShortcut{KeyName: fyne.KeyUp, Modifier: ctrl}:
		l.toUnsettled(-1)
	}
}

// toUnsettled lays out the choices for the next unsettled line, or the one
// before.
func (l *choiceLeaf) toUnsettled(by int) {
	l.lift()
	l.w.desk.toUnsettled(by)
	if l.w.desk.said == "" {
		l.w.askChoices()
	}
}

// sayWord asks how a word of the line goes, the one that the caret is before or
// the first that is guessed, and lays the choices out again.
func (l *choiceLeaf) sayWord() {
	d := l.w.desk
	if line, ok := d.lineAtHand(); !ok || d.wordToSay(line) == "" {
		d.tell("No word of the line is guessed · set the caret before a word first to say how that one goes")
		return
	}
	l.lift()
	l.w.askSayThen(l.w.askChoices)
}
