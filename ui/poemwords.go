package ui

import (
	"fyne.io/fyne/v2"

	"headland/pagemodel"
)

// poemWord is one thing that the poet can say of a poem's pages: in the menu,
// and as a choice to try out.
type poemWord struct {
	menu  string
	words string
	off   string // the words where it is so already and this takes it back
	key   fyne.Shortcut
	is    func(pagemodel.PoemHead) bool
	edit  func(pagemodel.PoemID, pagemodel.PoemHead) pagemodel.Edit
}

const altOnly = fyne.KeyModifierAlt

// startWords say on what page a poem opens.
func startWords() []poemWord {
	all := []poemWord{
		pagemodel.FreshPage:  {menu: "A Fresh Page", words: "Open on a fresh page", key: key(altOnly, fyne.Key1)},
		pagemodel.OnVerso:    {menu: "A Verso", words: "Open on a verso", key: key(altOnly, fyne.Key2)},
		pagemodel.OnRecto:    {menu: "A Recto", words: "Open on a recto", key: key(altOnly, fyne.Key3)},
		pagemodel.SharedPage: {menu: "The Page of the Poem Before, Below It", words: "Open below the poem before", key: key(altOnly, fyne.Key4)},
		pagemodel.FacingPage: {menu: "The Page Facing the Poem Before", words: "Open facing the poem before, line level with line", key: key(altOnly, fyne.Key5)},
	}
	for i := range all {
		start := pagemodel.Start(i)
		all[i].is = func(h pagemodel.PoemHead) bool { return h.Start == start }
		all[i].edit = func(id pagemodel.PoemID, h pagemodel.PoemHead) pagemodel.Edit {
			return pagemodel.SetStart{Poem: id, Start: start, Blank: h.Blank}
		}
	}
	return all
}

// blankWord puts a blank before a poem, or takes it away.
func blankWord() poemWord {
	return poemWord{
		menu: "A Blank Before", words: "A blank before", off: "No blank before", key: key(altOnly, fyne.Key0),
		is: func(h pagemodel.PoemHead) bool { return h.Blank },
		edit: func(id pagemodel.PoemID, h pagemodel.PoemHead) pagemodel.Edit {
			return pagemodel.SetStart{Poem: id, Start: h.Start, Blank: !h.Blank}
		},
	}
}

// runWords say how long the poem's pages run: by a line more or less than they
// do, or even.
func runWords() []poemWord {
	by := func(lines int) func(pagemodel.PoemID, pagemodel.PoemHead) pagemodel.Edit {
		return func(id pagemodel.PoemID, h pagemodel.PoemHead) pagemodel.Edit {
			return pagemodel.SetRun{Poem: id, Lines: h.Run + lines}
		}
	}
	return []poemWord{
		{menu: "A Line Longer", words: "Its pages a line longer", key: key(altOnly, fyne.KeyEqual), edit: by(1),
			is: func(h pagemodel.PoemHead) bool { return h.Run > 0 }},
		{menu: "A Line Shorter", words: "Its pages a line shorter", key: key(altOnly, fyne.KeyMinus), edit: by(-1),
			is: func(h pagemodel.PoemHead) bool { return h.Run < 0 }},
		{menu: "Even", words: "Its pages even", is: func(h pagemodel.PoemHead) bool { return h.Run == 0 },
			edit: func(id pagemodel.PoemID, _ pagemodel.PoemHead) pagemodel.Edit { return pagemodel.SetRun{Poem: id} }},
	}
}

// formMenu are the forms as the menu has them, in the order of pagemodel.Forms.
var formMenu = map[pagemodel.Form]string{
	pagemodel.NoForm: "None", pagemodel.Couplets: "Couplets", pagemodel.Tercets: "Tercets",
	pagemodel.Quatrains: "Quatrains", pagemodel.Sestets: "Sestets", pagemodel.Stanzaless: "Stanza-less",
}

// formWords declare the poem's form.
func formWords() []poemWord {
	var all []poemWord
	for _, form := range pagemodel.Forms {
		words := "In " + string(form)
		switch form {
		case pagemodel.NoForm:
			words = "No form declared"
		case pagemodel.Stanzaless:
			words = "Without stanzas"
		}
		all = append(all, poemWord{
			menu: formMenu[form], words: words, is: func(h pagemodel.PoemHead) bool { return h.Form == form },
			edit: func(id pagemodel.PoemID, _ pagemodel.PoemHead) pagemodel.Edit {
				return pagemodel.SetForm{Poem: id, Form: form}
			},
		})
	}
	return all
}

// headWord changes something of a poem's head.
func headWord(menu, words string, is func(pagemodel.PoemHead) bool, change func(*pagemodel.PoemHead)) poemWord {
	return poemWord{menu: menu, words: words, is: is, edit: func(id pagemodel.PoemID, h pagemodel.PoemHead) pagemodel.Edit {
		change(&h)
		return pagemodel.SetHead{Poem: id, Head: h}
	}}
}

// lieWords say how the poem lies.
func lieWords() []poemWord {
	var all []poemWord
	for lie, w := range [...][2]string{
		pagemodel.Upright: {"Upright", "Upright on its page"},
		pagemodel.Across:  {"Across the Spread", "Across the spread"},
		pagemodel.Turned:  {"Turned on Its Side", "Turned on its side"},
	} {
		to := pagemodel.Lie(lie)
		all = append(all, headWord(w[0], w[1], func(h pagemodel.PoemHead) bool { return h.Lie == to },
			func(h *pagemodel.PoemHead) { h.Lie = to }))
	}
	return all
}

// edgeWords say where the poem's left edge stands.
func edgeWords() []poemWord {
	var all []poemWord
	for edge, w := range [...][2]string{
		pagemodel.EdgeOfBook: {"As the Book", "Its left edge as the book’s"},
		pagemodel.EdgeLeft:   {"At the Left", "Its left edge at the left of the measure"},
		pagemodel.EdgeCentre: {"Centred on the Longest Line", "Centred on the longest line of each page"},
		pagemodel.EdgeOptic:  {"Centred by Eye", "Centred by eye, on the body of its lines"},
	} {
		to := pagemodel.Edge(edge)
		all = append(all, headWord(w[0], w[1], func(h pagemodel.PoemHead) bool { return h.Edge == to },
			func(h *pagemodel.PoemHead) { h.Edge = to }))
	}
	return all
}
