package ui

import (
	"unicode"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"
)

const (
	aloudHelp      = "Type a poem’s name to add it · Alt ↑ ↓ moves it · Enter: what is said before · Space: drop if short · F2 the slot · Ctrl Enter reads it · Esc the book"
	aloudHelpEmpty = "Type a poem’s name to add it · Ctrl N another running order · Ctrl G goes to one · Tab shows the time · Esc the book"
	movingHelp     = "Let it go where it is to be read · Esc puts it back"
)

// tell says at the foot of the desk what can be done.
func (a *aloudView) tell() {
	words := aloudHelp
	switch {
	case a.moving:
		words = movingHelp
	case a.face == timeFace:
		words = a.times.words(a)
	case a.face == linesFace:
		words = a.lines.words(a)
	case len(a.reading.Items) == 0:
		words = aloudHelpEmpty
	}
	a.w.desk.tell(words)
}

// TypedKey is a key: everything that the hand can do.
func (a *aloudView) TypedKey(e *fyne.KeyEvent) {
	switch {
	case a.moving && e.Name == fyne.KeyEscape:
		a.putBack()
	case a.moving:
	case e.Name == fyne.KeyEscape:
		a.lift()
	case e.Name == fyne.KeyTab:
		a.turnTo((a.face + 1) % aloudFaces)
	case e.Name == fyne.KeyPageDown:
		a.another(1)
	case e.Name == fyne.KeyPageUp:
		a.another(-1)
	case e.Name == fyne.KeyF2:
		a.askAbout()
	case a.face == timeFace:
		a.times.key(a, e.Name)
	case a.face == linesFace:
		a.lines.key(a, e.Name)
	default:
		a.orderKey(e.Name)
	}
}

// orderKey is a key over the running order.
func (a *aloudView) orderKey(k fyne.KeyName) {
	switch k {
	case fyne.KeyUp:
		a.walk(a.at - 1)
	case fyne.KeyDown:
		a.walk(a.at + 1)
	case fyne.KeyHome:
		a.walk(0)
	case fyne.KeyEnd:
		a.walk(len(a.reading.Items) - 1)
	case fyne.KeyReturn, fyne.KeyEnter:
		a.askSaid()
	case fyne.KeyInsert:
		a.askItem("")
	case fyne.KeyDelete:
		a.takeOut()
	}
}

// TypedRune begins to look for a poem; Space says whether the item at hand is left
// out if time is short.
func (a *aloudView) TypedRune(r rune) {
	switch {
	case a.moving || a.face != orderFace:
	case r == ' ':
		a.flipDrop()
	case unicode.IsPrint(r):
		a.askItem(string(r))
	}
}

// AcceptsTab has the tab key come here: it shows another face.
func (a *aloudView) AcceptsTab() bool { return true }

// TypedShortcut hears the keys with a modifier, those of the menu too.
func (a *aloudView) TypedShortcut(s fyne.Shortcut) {
	if a.moving {
		return
	}
	if act, ok := aloudKeys()[s.ShortcutName()]; ok {
		act(a)
	}
}

// aloudKeys are the keys with a modifier by the names of their shortcuts. Where the
// menu has one of them for the book, here it is for the running order.
func aloudKeys() map[string]func(*aloudView) {
	const alt = fyne.KeyModifierAlt
	name := func(mod fyne.KeyModifier, k fyne.KeyName) string {
		return (&desktop.CustomShortcut{KeyName: k, Modifier: mod}).ShortcutName()
	}
	undo := func(a *aloudView) { a.goBack(a.w.desk.undo) }
	redo := func(a *aloudView) { a.goBack(a.w.desk.redo) }
	return map[string]func(*aloudView){
		(&fyne.ShortcutUndo{}).ShortcutName(): undo,
		(&fyne.ShortcutRedo{}).ShortcutName(): redo,
		name(ctrlShift, fyne.KeyZ):            redo,
		name(ctrl, fyne.Key1):                 func(a *aloudView) { a.leaveFor(spreadWay) },
		name(ctrl, fyne.Key2):                 func(a *aloudView) { a.leaveFor(orderWay) },
		name(ctrl, fyne.Key3):                 (*aloudView).lift,
		name(alt, fyne.KeyUp):                 func(a *aloudView) { a.shift(-1) },
		name(alt, fyne.KeyDown):               func(a *aloudView) { a.shift(1) },
		name(ctrl, fyne.KeyN):                 (*aloudView).askNew,
		name(ctrl, fyne.KeyG):                 (*aloudView).askWhich,
		name(ctrl, fyne.KeyE):                 (*aloudView).askElsewhere,
		name(ctrl, fyne.KeyH):                 (*aloudView).askSaidAs,
		name(ctrl, fyne.KeyF):                 (*aloudView).askExtract,
		name(ctrlShift, fyne.KeyU):            (*aloudView).askUnread,
		name(ctrlShift, fyne.KeyY):            (*aloudView).askVoice,
		name(ctrl, fyne.KeyReturn):            func(a *aloudView) { a.begin(0) },
		name(ctrlShift, fyne.KeyReturn):       func(a *aloudView) { a.begin(a.at) },
		name(ctrl, fyne.KeyP):                 (*aloudView).askPaper,
		name(ctrl, fyne.KeyL):                 (*aloudView).otherLight,
		name(ctrl, fyne.KeyDelete):            (*aloudView).dropReading,
	}
}

// leaveFor lifts the view and holds the book in another way.
func (a *aloudView) leaveFor(in way) {
	a.lift()
	a.w.hold(in)
}

// otherLight lights the lamp, or lets in the day.
func (a *aloudView) otherLight() {
	a.w.otherLight()
	a.arrange()
	a.tell()
}
