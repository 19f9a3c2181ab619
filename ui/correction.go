package ui

import (
	"fmt"
	"slices"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	"headland/pagemodel"
	"headland/typeset/corrections"
)

// correctionList lists the corrections of a round. What is typed narrows it, and
// so does a state; the one chosen is gone to, or something is noted about it.
type correctionList struct {
	w      *Window
	round  pagemodel.RoundID
	list   *corrections.List
	shown  []int // of the list's, in the rows
	panel  *panel
	field  *correctionField
	rows   *correctionRows
	sieve  *wordRow
	states []pagemodel.ReplyState // what the sieves let through: those in which there are corrections
}

// Sizes of the list in the toolkit's units.
const (
	correctionsWide = 860
	correctionsDeep = 17 * rowDepth // at most
)

// askCorrections lists the corrections of the last round.
func (w *Window) askCorrections() {
	w.desk.settleHand()
	if round, ok := w.lastRound(); ok {
		w.layCorrections(round.ID, 0)
	}
}

// layCorrections lists the corrections of a round, the one of that number
// chosen; 0 is the first.
func (w *Window) layCorrections(round pagemodel.RoundID, number int) {
	list, err := w.session.Corrections(round)
	if err != nil {
		w.fail("The corrections can’t be listed", err)
		return
	}
	l := &correctionList{w: w, round: round, list: list}
	l.field = newCorrectionField(l, "words of the place, the correction, its kind")
	l.field.OnChanged = func(string) { l.narrow(0) }
	l.rows = newCorrectionRows(w.desk, fyne.NewSize(l.wide(), correctionsDeep), l.goTo, l.askNote)
	l.rows.Resize(l.rows.least)
	l.sieve = newWordRow(w.desk.k, w.desk.light.palette(), nil, -1, l.sift)
	l.countStates()
	l.narrow(0)
	l.rows.fit(correctionsDeep)
	l.lay()
	l.choose(number)
}

// correctionsHelp says what can be done with the list.
const correctionsHelp = "Enter goes to the line · Ctrl Enter or the right button notes something about it · " +
	"Ctrl 1 to 5 note it as open, made, refused, queried, missed · Tab shows only one state, then the next, then all · Ctrl E exports them · Ctrl Shift R lists those of another round · Esc leaves"

// lay lays the panel.
func (l *correctionList) lay() {
	buttons := container.NewHBox(newButton("Export…", l.export, l.leave), newButton("Leave it", l.leave, l.leave))
	if len(l.w.session.Collection().Rounds()) > 1 {
		buttons.Objects = append([]fyne.CanvasObject{newButton("Another round…", l.askRound, l.leave)}, buttons.Objects...)
	}
	l.panel = l.w.layPanel(throughWords(l.list), l.field, l.sieve, l.field, l.rows,
		container.New(&wide{l.wide()}, wordsOf(l.list.Rule)), container.New(&wide{l.wide()}, wordsOf(correctionsHelp)), buttons)
}

// wide is the width of the list: less in a window that has less.
func (l *correctionList) wide() float32 {
	return max(notesWide/2, min(correctionsWide, l.w.win.Canvas().Size().Width-3*sideMargin))
}

// countStates has the sieves say how many corrections are in which state. The
// one in use stays in use, while there is one in its state.
func (l *correctionList) countStates() {
	var used pagemodel.ReplyState
	if l.sieve.chosen >= 0 {
		used = l.states[l.sieve.chosen]
	}
	some := l.sieve.chosen >= 0
	l.states, l.sieve.words, l.sieve.chosen = nil, nil, -1
	for _, state := range pagemodel.ReplyStates {
		n := 0
		for i := range l.list.All {
			if l.list.All[i].State == state {
				n++
			}
		}
		if n == 0 {
			continue
		}
		if some && state == used {
			l.sieve.chosen = len(l.states)
		}
		l.states = append(l.states, state)
		l.sieve.words = append(l.sieve.words, fmt.Sprintf("%d %s", n, state))
	}
	l.sieve.Refresh()
}

// sift narrows the list to a state, or, where that is so already, no longer.
func (l *correctionList) sift(i int) {
	if i == l.sieve.chosen {
		i = -1
	}
	l.sieve.choose(i)
	l.narrow(0)
	l.w.win.Canvas().Focus(l.field)
}

// narrow lists what goes with the state and with what is typed, the row chosen
// that is there or the last.
func (l *correctionList) narrow(chosen int) {
	l.shown = nil
	var rows []listRow
	typed := strings.Fields(strings.ToLower(l.field.Text))
	for i := range l.list.All {
		c := &l.list.All[i]
		if l.sieve.chosen >= 0 && c.State != l.states[l.sieve.chosen] {
			continue
		}
		if row := l.row(c); row.has(typed) {
			l.shown, rows = append(l.shown, i), append(rows, row)
		}
	}
	l.rows.set(rows, -1)
	l.rows.step(max(0, chosen) + 1)
}

// row is a correction as it is listed.
func (l *correctionList) row(c *corrections.Correction) listRow {
	return correctionRow(c, l.w.session.Collection().Reply(l.round, c.Change.Key))
}

// choose chooses the correction of a number, if it is listed.
func (l *correctionList) choose(number int) {
	at := slices.IndexFunc(l.shown, func(i int) bool { return l.list.All[i].Number == number })
	if at >= 0 {
		l.rows.step(at - l.rows.chosen)
	}
}

// chosen is the correction at hand, or false.
func (l *correctionList) chosen() (*corrections.Correction, bool) {
	if i := l.rows.chosen; i >= 0 && i < len(l.shown) {
		return &l.list.All[l.shown[i]], true
	}
	return nil, false
}

func (l *correctionList) leave() { l.panel.lift() }

// goTo opens the book at the correction in a row: at its line, or where that is
// gone, at its poem.
func (l *correctionList) goTo(i int) {
	l.rows.choose(i)
	c, ok := l.chosen()
	if !ok {
		return
	}
	l.leave()
	d, set := l.w.desk, l.w.session.Setting()
	if _, there := set.PageOfLine(c.Change.Line); there && c.Change.Line.Line != 0 {
		d.goTo(c.Change.Line)
	} else if page, there := set.PageOfPoem(c.Change.Poem); there {
		d.showPage(page)
	}
	d.tell(fmt.Sprintf("Correction %d, %s: %s", c.Number, c.Change.Kind, wasIs(c)))
}

// askRound asks of which round the corrections are to be listed, if there are
// several.
func (l *correctionList) askRound() {
	if len(l.w.session.Collection().Rounds()) < 2 {
		return
	}
	l.leave()
	l.w.findRound("The corrections of which round?", func(r pagemodel.Round) { l.w.layCorrections(r.ID, 0) })
}

// export asks as what this round's corrections are to go out.
func (l *correctionList) export() {
	l.leave()
	l.w.askListOut(l.list.Round)
}

// findRound asks which round is meant; the last comes first.
func (w *Window) findRound(heading string, take func(pagemodel.Round)) {
	rounds := slices.Clone(w.session.Collection().Rounds())
	slices.Reverse(rounds)
	find(w, finding[pagemodel.Round]{
		heading: heading, hint: "a word of its name", size: fyne.NewSize(560, float32(min(10, len(rounds)))*rowDepth), all: rounds, take: take,
		row: func(r pagemodel.Round) listRow {
			until := "up to today"
			if next, ok := w.session.Collection().RoundAfter(r.ID); ok {
				until = "up to " + next.Name
			}
			return listRow{words: r.Name + ", " + until, aside: onDayWords(r.On)}
		},
	})
}
