package ui

import (
	"fmt"
	"slices"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/widget"

	"headland/pagemodel"
	"headland/typeset/corrections"
)

// notesWide is the width of the panels about one correction, in the toolkit's
// units.
const notesWide = 620

// noteList is the panel that lists what can be noted about one correction.
type noteList struct {
	list  *correctionList
	panel *panel
	ways  []noteWay
	rows  *listing
}

// askNote asks what is to be noted about the correction at hand.
func (l *correctionList) askNote() {
	c, ok := l.chosen()
	if !ok {
		return
	}
	n := &noteList{list: l, ways: noteWays(c.State, c.Whose)}
	var rows []listRow
	for _, way := range n.ways {
		row := listRow{words: way.words, aside: way.key}
		if way.is {
			row.words += ", as it is"
			row.quiet = true
		}
		rows = append(rows, row)
	}
	rows = append(rows, listRow{words: "Reason, question and answer…"})
	n.rows = newListing(l.w.desk.k, l.w.desk.light.palette(), fyne.NewSize(notesWide, float32(len(rows))*rowDepth), n.take)
	n.rows.set(rows, slices.Index(pagemodel.ReplyStates, c.State))
	taker := newKeyTaker(n.key)
	leave := newButton("Leave it", n.leave, n.leave)
	n.panel = l.w.layPanel(aboutWords(c), taker, taker, newCorrectionWords(l.w.desk, l.row(c), notesWide), n.rows, container.NewHBox(leave))
}

// aboutWords head a panel about one correction.
func aboutWords(c *corrections.Correction) string {
	return fmt.Sprintf("About correction %d", c.Number)
}

func (n *noteList) key(k fyne.KeyName) {
	switch k {
	case fyne.KeyEscape:
		n.leave()
	case fyne.KeyReturn, fyne.KeyEnter:
		n.take(n.rows.chosen)
	default:
		n.rows.walk(k)
	}
}

// leave gives the keys back to the list of corrections.
func (n *noteList) leave() {
	n.panel.lift()
	n.list.takeKeys()
}

func (l *correctionList) takeKeys() { l.w.win.Canvas().Focus(l.field) }

// take notes what a row says; the last asks for words.
func (n *noteList) take(i int) {
	n.leave()
	if i == len(n.ways) {
		n.list.askWords()
		return
	}
	n.list.note(n.ways[i].set)
}

// notes is the panel for what is said in words about a correction.
type notes struct {
	list                     *correctionList
	panel                    *panel
	reason, question, answer *field
	shown                    *widget.Check
}

// askWords asks for a reason, a question and its answer.
func (l *correctionList) askWords() {
	r, ok := l.reply()
	if !ok {
		return
	}
	c, _ := l.chosen()
	n := &notes{list: l}
	keys := func(k fyne.KeyName) bool { return enterOrLeave(k, n.keep, n.leave) }
	n.reason = newField(r.Reason, "why it is so", keys)
	n.question = newField(r.Question, "from either side", keys)
	n.answer = newField(r.Answer, "what was answered", keys)
	n.shown = widget.NewCheck("The reason may go out", nil)
	n.shown.SetChecked(r.Shown)
	form := container.New(&wide{notesWide}, container.NewVBox(
		widget.NewLabel("Reason"), n.reason, n.shown, widget.NewLabel("Question"), n.question, widget.NewLabel("Answer"), n.answer))
	n.panel = l.w.layPanel(aboutWords(c), n.reason, newCorrectionWords(l.w.desk, l.row(c), notesWide), form,
		container.NewHBox(newButton("Note it", n.keep, n.leave), newButton("Leave it", n.leave, n.leave)))
}

func (n *notes) leave() {
	n.panel.lift()
	n.list.takeKeys()
}

// keep notes what was typed.
func (n *notes) keep() {
	n.leave()
	n.list.note(func(r *pagemodel.Reply) {
		r.Reason, r.Question, r.Answer = strings.TrimSpace(n.reason.Text), strings.TrimSpace(n.question.Text), strings.TrimSpace(n.answer.Text)
		r.Shown = n.shown.Checked && r.Reason != ""
	})
}
