package ui

import (
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	"headland/pagemodel"
)

// poemMenu is what is done about the versions of the poem at hand.
func (w *Window) poemMenu() *fyne.Menu {
	return fyne.NewMenu("Poem", w.items(
		&command{words: "Keep a Variant…", key: key(ctrlShift, fyne.KeyA), act: w.askKeepVariant, book: true},
		&command{words: "Variants…", key: key(ctrlShift, fyne.KeyV), act: w.askVariants, book: true},
		&command{words: "Every State Since It Came In…", key: key(ctrlShift, fyne.KeyE), act: w.askStates, book: true},
	)...)
}

// brief says that the desk's foot has room for the chief keys only.
func (d *desk) brief() bool { return d.plan.size.X < d.plan.units(choiceBrief) }

// poemAsked is the poem at hand; without one the foot of the desk says so.
func (w *Window) poemAsked() (*pagemodel.Poem, bool) {
	w.desk.settleHand()
	poem, ok := w.desk.poemAtHand()
	if !ok {
		w.desk.tell(noPoemWords)
	}
	return poem, ok
}

// askVariants lists the versions of the poem at hand.
func (w *Window) askVariants() {
	poem, ok := w.poemAsked()
	if !ok {
		return
	}
	v := w.variantsOf(poem)
	if len(v.all) == 1 {
		w.desk.tell("No variant of " + nameOfPoem(poem) + " is kept: Ctrl Shift A keeps it, as it stands, under a name")
		return
	}
	v.layList()
}

// askStates lists every state of the poem at hand.
func (w *Window) askStates() {
	poem, ok := w.poemAsked()
	if !ok {
		return
	}
	v, err := w.statesOf(poem)
	switch {
	case err != nil:
		w.fail("The states of the poem can’t be shown", err)
	case len(v.all) < 2:
		w.desk.tell(sentence(nameOfPoem(poem)) + " is as it came in")
	default:
		v.layList()
	}
}

// askKeepVariant asks under what name the poem at hand is to be kept beside the
// one in the book.
func (w *Window) askKeepVariant() {
	poem, ok := w.poemAsked()
	if !ok {
		return
	}
	if _, only := w.session.ReadOnly(); only {
		w.desk.tell(readOnlyWords)
		return
	}
	w.askVersionName("Keep a variant of "+nameOfPoem(poem), "", "a name for the poem as it stands", func(name string) error {
		err := w.session.Do(pagemodel.KeepVariant{Poem: poem.ID(), Name: name})
		if err == nil {
			w.desk.tell("Kept as " + quoted(name) + " · the book goes on with the poem as it was · Ctrl Shift V compares the two")
		}
		return err
	}, func() {})
}

// askVersionName asks for the name of a version until do takes it, and does left
// when the question is lifted.
func (w *Window) askVersionName(heading, name, hint string, do func(name string) error, left func()) {
	var p *panel
	wrong := wordsOf("Enter keeps the name · Esc leaves all as it was")
	f := newField(name, hint, nil)
	f.onKey = func(k fyne.KeyName) bool {
		switch k {
		case fyne.KeyEscape:
			p.lift()
			left()
		case fyne.KeyReturn, fyne.KeyEnter:
			if err := do(strings.TrimSpace(f.Text)); err != nil {
				wrong.SetText(sentence(err.Error()))
				return true
			}
			p.lift()
			left()
		default:
			return false
		}
		return true
	}
	p = w.layPanel(heading, f, container.New(&wide{460}, f), container.New(&wide{460}, wrong))
}

// nameOfPoem is a poem's name as it stands in a sentence: a first line that
// stands for a title has its marks already.
func nameOfPoem(p *pagemodel.Poem) string {
	if p.Head().Title != "" {
		return quoted(p.Name())
	}
	return p.Name()
}
