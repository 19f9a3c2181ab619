package ui

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/widget"

	"headland/pagemodel"
	"headland/typeset/prosody"
)

// sayAsk asks how a word goes: its syllables, the stressed ones in capitals.
type sayAsk struct {
	w     *Window
	word  string
	then  func() // after the ask, whatever came of it
	panel *panel
	field *field
	note  *widget.Label
}

// askSay asks how the word at hand goes.
func (w *Window) askSay() { w.askSayThen(func() {}) }

// askSayThen asks, and does something when the ask is gone.
func (w *Window) askSayThen(then func()) {
	_, line, ok := w.desk.toAsk()
	if !ok {
		return
	}
	word := w.desk.wordToSay(line)
	if word == "" {
		w.desk.tell(noWordWords)
		return
	}
	a := &sayAsk{w: w, word: word, then: then, note: wordsOf("")}
	said := w.session.Collection().Spoken()[sayKey(word)]
	a.field = newField(said, "its syllables, as in CAR-da-mom", a.key)
	a.field.OnChanged = func(string) { a.tell() }
	help := w.paragraph("A hyphen between syllables, the stressed ones in capitals · Enter keeps it · an empty one takes it back · Esc leaves")
	buttons := container.NewHBox(newButton("Keep It", a.keep, a.leave), newButton("Leave It", a.leave, a.leave))
	a.panel = w.layPanel("How a word goes", a.field, w.lineInInk(word, w.soundWords(word, said)),
		a.field, container.New(&wide{w.panelWidth(askWidth)}, a.note), help, buttons)
	a.tell()
}

// noWordWords are said where a word is to be said and none is at hand.
const noWordWords = "Set the caret before a word of the line first: press the word, or use the keys ← →"

// wordToSay is the word that the caret is before, without its stops; else the
// first of the line that is only guessed; "" where there is none.
func (d *desk) wordToSay(line pagemodel.Line) string {
	for _, s := range pagemodel.Words(line.Text()) {
		word := prosody.LastWord(line.Text()[s.Start:s.End])
		switch {
		case d.word >= 0 && d.word < s.End:
			return word
		case d.word < 0 && d.isGuessed(word):
			return word
		}
	}
	return ""
}

// isGuessed says that nobody knows how a word goes: not the dictionary, not the
// poet.
func (d *desk) isGuessed(word string) bool {
	if _, said := d.session.Collection().Spoken()[sayKey(word)]; said {
		return false
	}
	sounds := d.session.Sounds(word)
	return len(sounds) > 0 && sounds[0].Guessed
}

func (a *sayAsk) key(k fyne.KeyName) bool {
	switch k {
	case fyne.KeyEscape:
		a.leave()
	case fyne.KeyReturn, fyne.KeyEnter:
		a.keep()
	default:
		return false
	}
	return true
}

// tell says what is typed, as it is typed.
func (a *sayAsk) tell() { a.note.SetText(a.typedWords()) }

// keep notes how the word goes. What can't be read as syllables is said to be so,
// and the ask stays.
func (a *sayAsk) keep() {
	edit := pagemodel.Say{Word: a.word, As: a.field.Text}
	next, err := edit.Apply(a.w.session.Collection())
	if err != nil {
		a.tell()
		return
	}
	a.panel.lift()
	if next != a.w.session.Collection() {
		a.w.desk.do(edit)
	}
	a.then()
}

func (a *sayAsk) leave() {
	a.panel.lift()
	a.then()
}
