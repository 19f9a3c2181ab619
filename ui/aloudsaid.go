package ui

import (
	"fmt"
	"slices"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	"headland/pagemodel"
	"headland/typeset/prosody"
)

// saidWord is a word of an item that may be read otherwise than it is printed.
type saidWord struct {
	pagemodel.Saying        // As is "" where it is read as printed
	text             string // the line it stands in
	n                int    // the line's number, from 1
}

// saidWords are the words of an item, in their order.
func (a *aloudView) saidWords(item *pagemodel.Item) []saidWord {
	var all []saidWord
	add := func(id pagemodel.LineID, n, from int, text string) {
		for _, w := range pagemodel.Words(text) {
			word := prosody.LastWord(text[w.Start:w.End])
			in := strings.Index(text[w.Start:w.End], word)
			if word == "" || in < 0 {
				continue
			}
			s := pagemodel.Saying{Line: id, At: from + w.Start + in, Word: word}
			all = append(all, saidWord{s, text, n})
		}
	}
	if item.Poem == 0 {
		at := 0
		for i, line := range strings.Split(item.Text, "\n") {
			add(0, i+1, at, line)
			at += len(line) + 1
		}
	}
	within := item.From == 0
	for _, l := range a.poemLines(item) {
		if within = within || l.id == item.From; within {
			add(l.id, l.n, 0, l.text)
		}
		within = within && l.id != item.To
	}
	for i := range all {
		if k := all[i].among(item.Said); k >= 0 {
			all[i].As = item.Said[k].As
		}
	}
	return all
}

// among is where a word is among those noted, -1 for nowhere.
func (w *saidWord) among(said []pagemodel.Saying) int {
	return slices.IndexFunc(said, func(s pagemodel.Saying) bool { return s.Line == w.Line && s.At == w.At && s.Word == w.Word })
}

// askSaidAs asks which word of the item at hand is said otherwise than it is
// printed, and how.
func (a *aloudView) askSaidAs() {
	item, ok := a.item()
	words := a.saidWords(&item)
	if !ok || len(words) == 0 {
		a.w.desk.tell("A word is said otherwise in a poem: put one at hand first")
		return
	}
	find(a.w, finding[saidWord]{
		heading: "Which word is said otherwise than it is printed?", hint: "the word", size: a.pickSize(), all: words,
		row: func(w saidWord) listRow {
			row := listRow{words: w.Word, aside: fmt.Sprintf("line %d · %s", w.n, firstWords(w.text, 4))}
			if w.As != "" {
				row.words += " → " + w.As
			}
			return row
		},
		take: a.askAs,
	})
}

// askAs asks how a word is said. It is noted for reading only: neither the poem nor
// the book changes.
func (a *aloudView) askAs(w saidWord) {
	var p *panel
	var f *field
	leave := func() { a.w.liftTo(p, a) }
	keep := func() {
		leave()
		a.sayAs(w, strings.TrimSpace(f.Text))
	}
	f = newField(w.As, "as it is said", func(k fyne.KeyName) bool { return enterOrLeave(k, keep, leave) })
	p = a.w.layPanel("How it is said", f, a.w.lineInInk(w.Word, w.text), f,
		a.w.paragraph("For reading only: the page stays as it is · Enter keeps it · an empty one takes it back · Esc leaves"),
		container.NewHBox(newButton("Keep It", keep, leave), newButton("Leave It", leave, leave)))
}

// sayAs notes how a word of the item at hand is said; "" is as printed.
func (a *aloudView) sayAs(w saidWord, as string) {
	a.set(func(i *pagemodel.Item) {
		said := slices.Clone(i.Said)
		if k := w.among(said); k >= 0 {
			said = slices.Delete(said, k, k+1)
		}
		if w.As = as; as != "" {
			said = append(said, w.Saying)
		}
		i.Said = said
		if len(said) == 0 {
			i.Said = nil
		}
	})
}
