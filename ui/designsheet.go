package ui

import (
	"fmt"
	"strings"

	"fyne.io/fyne/v2"

	"headland/ui/session"
)

// designSheet is the leaf on which the design is set. What it holds is the
// design that is tried; nothing of it is the book's until Enter.
type designSheet struct {
	w      *Window
	leaf   *leaf
	tries  *session.Designing
	extent int // of the book as it was; no margin follows what comes out
	groups []valueGroup
	values []designValue // of all groups, in order
	typed  *typing       // what is typed for the value at hand, or nil
	latest *session.Whole
	beside settingBeside
	was    figures
	now    figures
	over   bool
}

const (
	designHelp = "↑ ↓ to a value · ← → change it, or type it · Page Down turns the leaf · Enter sets the book so · Esc puts all back"
	staleHelp  = "The other pages are being set · Enter sets the book so · Esc puts all back"
	typedHelp  = "Type the value · Enter takes it · Esc leaves it as it was"
)

// askDesign lays the sheet on which the design is set.
func (w *Window) askDesign() {
	w.desk.settleHand()
	tries, err := w.session.Designing()
	if err != nil {
		w.desk.try(err)
		return
	}
	s := &designSheet{w: w, tries: tries, extent: w.session.Committed().Extent()}
	s.groups = designValues(s.extent, w.session.Families())
	for _, g := range s.groups {
		s.values = append(s.values, g.values...)
	}
	s.was = figuresOf(w.session.Committed())
	s.now = s.was
	s.beside = settingBeside{worker: worker{post: w.worker.post}, done: s.take}
	s.leaf = newLeaf(w, "The design", s, len(s.values)+1)
	s.leaf.show(s.rows(), s.foot())
	s.leaf.lay()
	s.tell()
}

// rows are the values as they are tried, and the name that they are kept under.
func (s *designSheet) rows() []leafRow {
	d := s.tries.Tried()
	var rows []leafRow
	for _, g := range s.groups {
		for i, v := range g.values {
			row := leafRow{name: v.name, value: v.words(&d), steps: v.step != nil}
			if i == 0 {
				row.group = g.words
			}
			rows = append(rows, row)
		}
	}
	rows = append(rows, s.keptRow())
	if s.typed != nil {
		rows[s.leaf.at].typed = s.typed
	}
	return rows
}

// keptRow is the name that the design tried is kept under.
func (s *designSheet) keptRow() leafRow {
	row := leafRow{group: "kept", name: "under the name", value: "none: type one to keep it", quiet: true}
	for _, kept := range s.w.session.Collection().Designs() {
		if kept.Design == s.tries.Tried() {
			row.value, row.quiet = kept.Name, false
		}
	}
	return row
}

// step goes to the next value, and the page with it.
func (s *designSheet) step(row, by int) {
	s.typed = nil
	if row >= len(s.values) || s.values[row].step == nil {
		return
	}
	d := s.tries.Tried()
	s.values[row].step(&d, by)
	s.try(d)
}

// press opens a value that can be typed, and steps on any other.
func (s *designSheet) press(row int) {
	s.typed = nil
	if row >= len(s.values) || s.values[row].typed != nil {
		s.typed = &typing{}
		s.show()
		return
	}
	s.step(row, 1)
}

// key is a key that is not for walking over the values.
func (s *designSheet) key(key fyne.KeyName) bool {
	if s.typed != nil {
		return s.typeKey(key)
	}
	switch key {
	case fyne.KeyReturn, fyne.KeyEnter:
		s.commit()
	case fyne.KeyEscape:
		s.leave()
	case fyne.KeyPageDown:
		s.turn(1)
	case fyne.KeyPageUp:
		s.turn(-1)
	default:
		return false
	}
	return true
}

// write begins to type a value, or goes on.
func (s *designSheet) write(r rune) {
	row := s.leaf.at
	if s.typed == nil {
		name := row >= len(s.values)
		if !name && (s.values[row].typed == nil || !strings.ContainsRune("0123456789.,", r)) {
			return
		}
		s.typed = &typing{}
	}
	s.typed.insert(string(r))
	s.leaf.said = ""
	s.show()
}

// typeKey is a key pressed while a value is typed.
func (s *designSheet) typeKey(key fyne.KeyName) bool {
	return typedValueKey(&s.typed, s.leaf, s.takeTyped, s.show, key)
}

// typedValueKey is a key pressed while a value of a leaf's row is typed: Escape drops
// what is typed, Enter takes it, ↑ and ↓ take it and, unless it could not be, are left
// to the leaf.
func typedValueKey(typed **typing, l *leaf, take, show func(), key fyne.KeyName) bool {
	switch key {
	case fyne.KeyEscape:
		*typed, l.said = nil, ""
	case fyne.KeyReturn, fyne.KeyEnter:
		take()
	case fyne.KeyUp, fyne.KeyDown:
		take()
		return *typed != nil
	default:
		(*typed).key(key)
	}
	show()
	return true
}

// takeTyped takes what was typed, if it can be.
func (s *designSheet) takeTyped() {
	text, row := strings.TrimSpace(s.typed.text), s.leaf.at
	switch {
	case text == "":
		s.typed = nil
		s.show()
	case row >= len(s.values):
		s.keep(text)
	default:
		s.tryTyped(row, text)
	}
}

// tryTyped tries a value that was typed. One that is refused can be mended.
func (s *designSheet) tryTyped(row int, text string) {
	d, typed := s.tries.Tried(), s.typed
	if err := s.values[row].typed(&d, text); err != nil {
		s.refuse(err)
		return
	}
	s.typed = nil
	if !s.try(d) {
		s.typed = typed
		s.show()
	}
}

// show draws the sheet as it is now.
func (s *designSheet) show() {
	s.leaf.stale = s.latest != nil
	if !s.leaf.byMouse {
		s.leaf.side = s.leaf.facing()
	}
	s.leaf.show(s.rows(), s.foot())
	s.tell()
}

// tell says at the foot of the desk what can be done.
func (s *designSheet) tell() {
	switch {
	case s.typed != nil:
		s.w.desk.tell(typedHelp)
	case s.latest != nil:
		s.w.desk.tell(staleHelp)
	default:
		s.w.desk.tell(designHelp)
	}
}

// foot says what the design gives, against what the book is now.
func (s *designSheet) foot() []leafFoot {
	d := s.tries.Tried()
	was := s.w.session.Collection().Design()
	measure := fmt.Sprintf("measure %.1f pt, %.1f ems", d.Measure().Points(), float64(d.Measure())/float64(d.Size))
	lines := changed(counted(d.Rows(), "line", "lines")+" a page", d.Rows(), was.Rows())
	if s.latest != nil {
		return []leafFoot{{measure, "pages: setting…"}, {lines, "signatures: setting…"}, {"turnovers: setting…", "faults: setting…"}}
	}
	return []leafFoot{
		{measure, changed(counted(s.now.extent, "page", "pages"), s.now.extent, s.was.extent)},
		{lines, foldedWords(s.now.extent, d.SignaturePages())},
		{
			changed(counted(s.now.turnovers, "turnover", "turnovers"), s.now.turnovers, s.was.turnovers),
			changed(counted(s.now.faults, "fault", "faults"), s.now.faults, s.was.faults),
		},
	}
}
