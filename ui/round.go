package ui

import (
	"fmt"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/widget"

	"headland/pagemodel"
)

// roundMenu is what goes out to the editor and the setter, and what comes of it.
func (w *Window) roundMenu() *fyne.Menu {
	return fyne.NewMenu("Rounds", w.items(
		&command{words: "Mark as Sent…", key: key(ctrlShift, fyne.KeyT), act: w.askMarkSent, book: true},
		&command{words: "Lay the Last Round Over", key: key(ctrl, fyne.KeyR), act: w.laySheet, book: true},
		&command{words: "Corrections…", key: key(ctrlShift, fyne.KeyR), act: w.askCorrections, book: true},
		nil,
		&command{words: "Export Marked Proof…", key: key(ctrl, fyne.KeyP), act: w.askMarkedProof, book: true},
		&command{words: "Export Corrections…", act: w.askCorrectionsOut, book: true},
		&command{words: "Export Revised Manuscript…", key: key(ctrlShift, fyne.KeyX), act: w.askRevised, book: true},
	)...)
}

// noRoundWords are said where a round is wanted and none has gone out.
const noRoundWords = "Nothing has gone out yet: Ctrl Shift T marks the book as sent"

// lastRound is the round that went out last, or false.
func (w *Window) lastRound() (pagemodel.Round, bool) {
	round, ok := w.session.LastRound()
	if !ok {
		w.desk.tell(noRoundWords)
	}
	return round, ok
}

// sentWords say which round something is of, and when it went out.
func sentWords(r pagemodel.Round) string {
	if r.On == "" {
		return r.Name + ", as sent"
	}
	return r.Name + ", as sent on " + onDayWords(r.On)
}

// sending is the panel that asks what a round is called.
type sending struct {
	w     *Window
	panel *panel
	name  *field
	note  *widget.Label // why it can’t be; hidden until then
}

// askMarkSent asks what the round is called in which the book goes out as it
// stands.
func (w *Window) askMarkSent() {
	w.desk.settleHand()
	if _, only := w.session.ReadOnly(); only {
		w.desk.tell(readOnlyWords)
		return
	}
	s := &sending{w: w, note: wordsOf("")}
	s.note.Hide()
	keys := func(k fyne.KeyName) bool { return enterOrLeave(k, s.send, s.leave) }
	s.name = newField(w.session.Collection().NextRoundName(), "what the round is called", keys)
	s.panel = w.layPanel("Mark the book as sent", s.name,
		container.New(&wide{540}, s.name),
		container.New(&wide{540}, wordsOf(w.sendingWords())),
		container.New(&wide{540}, s.note),
		container.NewHBox(newButton("Mark as sent", s.send, s.leave), newButton("Leave it", s.leave, s.leave)))
}

// sendingWords say what marking the book as sent does.
func (w *Window) sendingWords() string {
	words := "The text, the pages and the rows are noted as they stand. Whatever differs from then on is a correction."
	if n := w.session.Committed().Unsettled(); n > 0 {
		words += " Now: " + unsettledWords(n) + "."
	}
	return words
}

func (s *sending) leave() { s.panel.lift() }

// send makes the round. Where that can't be, the panel stays and says why.
func (s *sending) send() {
	if err := s.w.session.MarkSent(s.name.Text); err != nil {
		s.note.SetText(errorWords(err))
		s.note.Show()
		return
	}
	s.panel.lift()
	if r, ok := s.w.lastRound(); ok {
		s.w.desk.tell(fmt.Sprintf("Marked as sent: %s, %s · its sheet lies under the book (Ctrl R) · whatever differs from now on is a correction", r.Name, onDayWords(r.On)))
	}
}
