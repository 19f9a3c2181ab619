package ui

import (
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	"headland/pagemodel"
)

// reasonAsk asks why a line is as it is, and whether that may go out.
type reasonAsk struct {
	w     *Window
	ref   pagemodel.LineRef
	was   pagemodel.SetReason
	panel *panel
	field *field
	goes  *wordRow // whether it may go out: private, or shown
}

// A reason is one of these.
const (
	reasonPrivate = iota
	reasonShown
)

var goesWords = [...]string{reasonPrivate: "private: it stays in this file", reasonShown: "shown: it goes out with the corrections"}

// askReason asks why the line at hand is as it is.
func (w *Window) askReason() {
	ref, line, ok := w.desk.toAsk()
	if !ok {
		return
	}
	r := &reasonAsk{w: w, ref: ref, was: pagemodel.SetReason{LineRef: ref, Reason: line.Reason(), Shown: line.Shown()}}
	r.field = newField(line.Reason(), "a reason, in your own words", r.key)
	r.field.tabs = true
	r.goes = newWordRow(w.desk.k, w.desk.light.palette(), goesWords[:], reasonPrivate, r.goAs)
	if line.Shown() {
		r.goes.choose(reasonShown)
	}
	help := w.paragraph("Enter keeps it · Tab: private, or shown · an empty one takes the reason back · Esc leaves")
	buttons := container.NewHBox(newButton("Keep It", r.keep, r.leave), newButton("Leave It", r.leave, r.leave))
	r.panel = w.layPanel("Why the line is as it is", r.field,
		w.lineInInk(line.Text(), w.desk.stateFor(ref, line)), r.field, r.goes, help, buttons)
}

// toAsk is the line at hand where something may be asked about it; else the
// foot says why not.
func (d *desk) toAsk() (pagemodel.LineRef, pagemodel.Line, bool) {
	d.settleHand()
	ref, ok := d.session.Focus()
	line, in := d.lineAtHand()
	if !ok || !in {
		d.tell(noLineWords)
		return ref, line, false
	}
	if _, only := d.session.ReadOnly(); only {
		d.tell(readOnlyWords)
		return ref, line, false
	}
	return ref, line, true
}

// stateFor says what was decided about a line, or that it needs nothing.
func (d *desk) stateFor(ref pagemodel.LineRef, line pagemodel.Line) string {
	if line.State() == pagemodel.Unsettled && !d.isUnsettled(ref) {
		return "it fits: there is nothing to settle"
	}
	return dotted(d.stateOf(ref), onDayWords(line.On()))
}

// lineInInk shows words of the verse on a panel, with others in small type below.
func (w *Window) lineInInk(words, under string) *listing {
	size := fyne.NewSize(w.panelWidth(askWidth), 4*rowDepth)
	l := newListing(w.desk.k, w.desk.light.palette(), size, func(int) {})
	l.Resize(size)
	l.set([]listRow{{words: words, under: under}}, -1)
	l.fit(size.Height)
	return l
}

// askWidth is how wide a small ask is, in the toolkit's units.
const askWidth = 560

// panelWidth is how wide something on a panel is at most, so that the panel has
// room in the window.
func (w *Window) panelWidth(most float32) float32 {
	return min(most, max(300, w.win.Canvas().Size().Width-80))
}

// paragraph is words on a small ask.
func (w *Window) paragraph(text string) *fyne.Container {
	return container.New(&wide{w.panelWidth(askWidth)}, wordsOf(text))
}

func (r *reasonAsk) key(k fyne.KeyName) bool {
	switch k {
	case fyne.KeyEscape:
		r.leave()
	case fyne.KeyReturn, fyne.KeyEnter:
		r.keep()
	case fyne.KeyTab:
		r.goAs((r.goes.chosen + 1) % len(goesWords))
	default:
		return false
	}
	return true
}

// goAs has the reason be private, or shown.
func (r *reasonAsk) goAs(i int) {
	r.goes.choose(i)
	r.w.win.Canvas().Focus(r.field)
}

// keep notes the reason, if it is another.
func (r *reasonAsk) keep() {
	r.leave()
	edit := pagemodel.SetReason{LineRef: r.ref, Reason: strings.TrimSpace(r.field.Text), Shown: r.goes.chosen == reasonShown}
	if edit.Shown = edit.Shown && edit.Reason != ""; edit == r.was {
		return
	}
	r.w.desk.do(edit)
}

func (r *reasonAsk) leave() { r.panel.lift() }
