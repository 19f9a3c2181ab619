package ui

import (
	"fmt"

	"fyne.io/fyne/v2"

	"headland/pagemodel"
	"headland/typeset"
)

// askDecision asks which line to go to, of all that are overlong and all about
// which something was decided.
func (w *Window) askDecision() {
	w.desk.settleHand()
	all := w.session.Decisions()
	if len(all) == 0 {
		w.desk.tell("No line is overlong, and nothing was decided about any")
		return
	}
	find(w, finding[typeset.Decision]{
		heading: "Decisions about lines", hint: "words of the line, its poem, its reason", size: fyne.NewSize(w.panelWidth(680), 7*(rowDepth+underDepth+underWhite)),
		help: "Enter goes to the line · Tab shows only what one of the counts counts, then the next, then all · Esc leaves",
		all:  all, sieves: decisionSieves(all), row: w.decisionRow,
		take: func(d typeset.Decision) { w.desk.goToDecision(d) },
	})
}

// goToDecision puts the line that a decision is about at hand.
func (d *desk) goToDecision(about typeset.Decision) {
	d.said, d.fault = "", typeset.Fault{}
	d.goTo(about.Ref)
	d.refresh(pageParts | footPart)
}

// decisionRow is a line's words and its folio, and below them what was decided,
// of which line of which poem, on what day and why.
func (w *Window) decisionRow(about typeset.Decision) listRow {
	row := listRow{words: w.decisionLine(about)}
	if about.Page > 0 {
		row.aside = w.session.Setting().FolioOf(about.Page)
	}
	words := []string{sentence(decisionWords(about))}
	if about.Overrun > 0 && about.State == pagemodel.Unsettled {
		words[0] += ", " + longer(about.Overrun) + " than its room"
	}
	place := fmt.Sprintf("stanza %d, line %d", about.Stanza, about.Line)
	if poem, _, ok := w.session.Collection().Poem(about.Ref.Poem); ok {
		place = poem.Name() + ", " + place
	}
	if about.Row > 0 {
		place += fmt.Sprintf(", row %d", about.Row)
	}
	row.under = dotted(append(words, place, onDayWords(about.On), reasonWords(about.Reason, about.Shown))...)
	return row
}

// decisionLine is the words of the line that a decision is about; of one broken in
// the poem, both lines that the break made.
func (w *Window) decisionLine(about typeset.Decision) string {
	if about.InPoem {
		if poem, at, err := w.session.Collection().Line(about.Made); err == nil {
			return about.Text + " / " + poem.Line(at).Text()
		}
	}
	return about.Text
}

// decisionSieves count the decisions by what was decided, and narrow the list to
// one of these at a time. What there is none of has none.
func decisionSieves(all []typeset.Decision) []sieve[typeset.Decision] {
	var sieves []sieve[typeset.Decision]
	for _, kind := range []sieve[typeset.Decision]{
		{"unsettled", func(d typeset.Decision) bool { return d.State == pagemodel.Unsettled && !d.InPoem }},
		{"kept", func(d typeset.Decision) bool { return d.State == pagemodel.Kept && !d.InPoem }},
		{"broken in the poem", func(d typeset.Decision) bool { return d.InPoem }},
		{"in this edition", func(d typeset.Decision) bool { return d.State == pagemodel.Broken && !d.InPoem }},
	} {
		n, asleep := 0, 0
		for _, d := range all {
			if kind.lets(d) {
				n++
				if d.Asleep {
					asleep++
				}
			}
		}
		if n == 0 {
			continue
		}
		kind.words = fmt.Sprintf("%d %s", n, kind.words)
		if asleep > 0 {
			kind.words += fmt.Sprintf(", %d of them asleep", asleep)
		}
		sieves = append(sieves, kind)
	}
	return sieves
}
