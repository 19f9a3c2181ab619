package ui

import (
	"strings"

	"fyne.io/fyne/v2"

	"headland/pagemodel"
	"headland/typeset"
)

// choice is one thing that can be tried out: in words, with what it would do or
// cost, and the edit that does it. nil leaves all as it is.
type choice struct {
	words, under string
	edit         pagemodel.Edit
}

// trial is a list of choices on a scrap beside the page. The one pointed at is
// tried out; Enter takes it; Escape leaves all as it was.
type trial struct {
	w       *Window
	scrap   *scrap
	list    *listing
	choices []choice
	poem    pagemodel.PoemID
	line    pagemodel.LineRef // that the book is to lie open at; the poem where it is zero
	was     int               // the page at which the book lay open
}

// trialDepth is the most that the choices on a scrap are deep, in the toolkit's
// units: head and foot of the page below it stay in sight.
const trialDepth = 12 * rowDepth

// askTrial lays out choices about a line, or about a poem where line is zero.
// The first is to leave all as it is.
func (w *Window) askTrial(heading string, poem pagemodel.PoemID, line pagemodel.LineRef, choices []choice) {
	d := w.desk
	if _, only := w.session.ReadOnly(); only {
		d.tell(readOnlyWords)
		return
	}
	t := &trial{w: w, poem: poem, line: line, was: w.session.Page()}
	t.choices = append([]choice{{words: "Leave all as it is"}}, choices...)
	rows := make([]listRow, len(t.choices))
	for i, c := range t.choices {
		rows[i] = listRow{words: c.words, under: c.under, quiet: c.edit == nil}
	}
	t.list = newListing(d.k, d.light.palette(), fyne.NewSize(300, trialDepth), t.take)
	t.list.point = t.try
	t.list.set(rows, 0)
	taker := newKeyTaker(t.key)
	t.scrap = w.layScrap(t.facing(), heading, taker, taker, t.list)
	t.list.fit(trialDepth)
	t.scrap.lieOver(t.scrap.side)
	d.tell("↑ ↓ or the hand tries one on the page · Enter takes it · Esc leaves all as it was")
}

// facing is the side beside the page that the trial is about.
func (t *trial) facing() pagemodel.Side { return pagemodel.SideOf(t.page()).Facing() }

// page is the page that the trial is about, as it is set now.
func (t *trial) page() int {
	set := t.w.session.Setting()
	if page, ok := set.PageOfLine(t.line); ok && t.line.Line != 0 {
		return page
	}
	if page, ok := set.PageOfPoem(t.poem); ok {
		return page
	}
	return t.was
}

func (t *trial) key(k fyne.KeyName) {
	switch k {
	case fyne.KeyEscape:
		t.leave()
	case fyne.KeyReturn, fyne.KeyEnter:
		t.take(t.list.chosen)
	default:
		t.list.walk(k)
	}
}

// try shows what a choice would do, on whatever page that is.
func (t *trial) try(i int) {
	s := t.w.session
	s.Drop()
	if edit := t.choices[i].edit; edit != nil {
		if err := s.Preview(edit); err != nil {
			t.w.desk.try(err)
		}
	}
	page := t.page()
	if i == 0 {
		page = t.was
	}
	t.w.desk.showPage(page)
	t.scrap.lieOver(pagemodel.SideOf(page).Facing())
}

// take does a choice.
func (t *trial) take(i int) {
	if i < 0 || t.choices[i].edit == nil {
		t.leave()
		return
	}
	d := t.w.desk
	t.scrap.lift()
	d.do(t.choices[i].edit)
	d.showPage(t.page())
}

// leave puts all back.
func (t *trial) leave() {
	d := t.w.desk
	t.w.session.Drop()
	t.scrap.lift()
	d.said = ""
	d.showPage(t.was)
}

// askRemedies asks which of what would mend the fault at hand is to be done.
func (w *Window) askRemedies() {
	d := w.desk
	d.settleHand()
	f, ok := d.faultAtHand()
	if !ok {
		d.tell("No fault is at hand: Ctrl Shift ↓ goes to the next one")
		return
	}
	var choices []choice
	for _, r := range d.of.Remedies(f) {
		what, cost, _ := strings.Cut(r.Text, ": ")
		choices = append(choices, choice{sentence(what), cost, r.Edit})
	}
	if len(choices) == 0 {
		d.tell(noRemedyWords(f))
		return
	}
	w.askTrial(sentence(kindOf(f).words)+": what would mend it", f.Poem, f.Line, choices)
}

// noRemedyWords say what to do where no page end, no order and no opening mends
// a fault.
func noRemedyWords(f typeset.Fault) string {
	switch f.Kind {
	case typeset.MissingGlyph, typeset.AbsentFace:
		return "Nothing on the pages mends this: add the face, or set the book in another"
	}
	return "Nothing tried on these pages mends this: it is for the words, or the design"
}
