package ui

import (
	"fyne.io/fyne/v2"

	"headland/pagemodel"
)

// pageMenu is what the poet says about pages, over the rules of the setting: of
// the line at hand, then of its poem, then about what is faulty.
func (w *Window) pageMenu() *fyne.Menu {
	d := w.desk
	items := w.items(
		&command{words: "Keep with the Line Below, or Not", key: key(ctrlShift, fyne.KeyK), act: d.keepBelow, book: true},
		&command{words: "Keep the Stanza Whole, or Not", key: key(ctrlShift, fyne.KeyW), act: d.keepStanza, book: true},
		&command{words: "Begin a Page with This Line, or Not", key: key(ctrlShift, fyne.KeyB), act: d.beginPage, book: true},
		nil,
	)
	items = append(items,
		w.submenu("The Poem Opens on", w.poemCommands(startWords())),
		w.items(w.poemCommands([]poemWord{blankWord()})...)[0],
		w.submenu("Its Pages Run", w.poemCommands(runWords())),
		w.submenu("Its Form", w.formCommands()),
	)
	items = append(items, w.items(
		&command{words: "The Poem Smaller", key: key(ctrlShift, fyne.KeyMinus), act: d.poemSmaller, book: true},
		&command{words: "The Poem Larger Again", key: key(ctrlShift, fyne.KeyEqual), act: d.poemLarger, book: true},
	)...)
	items = append(items,
		w.submenu("The Poem Lies", w.poemCommands(lieWords())),
		w.submenu("Its Left Edge", w.poemCommands(edgeWords())),
	)
	items = append(items, w.items(
		&command{words: "Try Its Pages Out…", key: key(ctrlShift, fyne.KeyP), act: w.askPoemPages, book: true},
		nil,
		&command{words: "What Would Mend the Fault…", key: key(ctrl, fyne.KeyM), act: w.askRemedies, book: true},
	)...)
	return fyne.NewMenu("Page", items...)
}

// submenu is an item that opens a menu of commands.
func (w *Window) submenu(words string, commands []*command) *fyne.MenuItem {
	item := fyne.NewMenuItem(words, nil)
	item.ChildMenu = fyne.NewMenu("", w.items(commands...)...)
	return item
}

// poemCommands say things of the poem at hand; what is so is ticked.
func (w *Window) poemCommands(words []poemWord) []*command {
	var all []*command
	for _, word := range words {
		all = append(all, &command{words: word.menu, key: word.key, act: w.desk.say(word), is: w.desk.saysSo(word), book: true})
	}
	return all
}

// formCommands declare the form of the poem at hand; the one that its shape
// proposes says so.
func (w *Window) formCommands() []*command {
	all := w.poemCommands(formWords())
	for i, c := range all {
		form := pagemodel.Forms[i]
		c.says = func() string {
			p, ok := w.desk.poemAtHand()
			if ok && form != pagemodel.NoForm && pagemodel.ProposedForm(p) == form && p.Head().Form != form {
				return formMenu[form] + ", Which Its Shape Proposes"
			}
			return formMenu[form]
		}
	}
	return all
}
