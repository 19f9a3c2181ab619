package ui

import (
	"slices"
	"strings"

	"headland/pagemodel"
	"headland/typeset/prosody"
)

// markWord marks the word at hand as an echo, or, where it is one, takes the mark
// off.
func (w *Window) markWord() {
	d := w.desk
	_, line, ok := d.toAsk()
	if !ok {
		return
	}
	word := d.wordAtCaret(line)
	if word == "" {
		d.tell(noWordWords)
		return
	}
	echo := w.echoOf(word)
	was := slices.Contains(echo.Words, word)
	echo.Words = toggled(echo.Words, word)
	d.do(pagemodel.SetEcho{Echo: echo})
	if was {
		d.tellDone(quoted(word) + " is no longer marked")
		return
	}
	d.tellDone(quoted(word) + " is marked as an echo · Ctrl F shows where it comes back")
}

// tellDone says what was done, unless it could not be.
func (d *desk) tellDone(words string) {
	if d.said == "" {
		d.tell(words)
	}
}

// wordAtCaret is the word that the caret is before, in small letters and without
// its stops; "" where there is none.
func (d *desk) wordAtCaret(line pagemodel.Line) string {
	for _, s := range pagemodel.Words(line.Text()) {
		if d.word >= 0 && d.word < s.End {
			return strings.ToLower(prosody.LastWord(line.Text()[s.Start:s.End]))
		}
	}
	return ""
}

// echoOf is what the poet marked under a name, or something new of that name.
func (w *Window) echoOf(name string) pagemodel.Echo {
	for _, e := range w.session.Collection().Echoes() {
		if strings.EqualFold(e.Name, name) {
			return e
		}
	}
	return pagemodel.Echo{Name: name}
}

// toggled are things with one more, or without it where it was among them.
func toggled[T comparable](all []T, one T) []T {
	if i := slices.Index(all, one); i >= 0 {
		return slices.Delete(slices.Clone(all), i, i+1)
	}
	return append(slices.Clone(all), one)
}
