package ui

import (
	"slices"

	"fyne.io/fyne/v2"
)

// press writes a row that is written, and steps on any other.
func (s *matterSheet) press(row int) {
	s.keep()
	if p := s.rows[min(row, len(s.rows)-1)]; p.written() {
		s.at = p
		s.begin()
		return
	}
	s.step(row, 1)
}

// written says that a row is words of the poet's.
func (p matterPlace) written() bool {
	return p.part == bookName || p.part == bookPoet || p.part == matterHeading || p.part == matterLine
}

// key is a key that the sheet hears.
func (s *matterSheet) key(key fyne.KeyName) bool {
	switch key {
	case fyne.KeyUp, fyne.KeyDown:
		s.keep()
		by := 1
		if key == fyne.KeyUp {
			by = -1
		}
		s.goTo(slices.Index(s.rows, s.at) + by)
		return true
	case fyne.KeyEscape:
		s.escape()
		return true
	case fyne.KeyReturn, fyne.KeyEnter:
		s.enter()
		return true
	case fyne.KeyHome, fyne.KeyEnd:
		if s.typed == nil {
			s.goTo(map[fyne.KeyName]int{fyne.KeyHome: 0, fyne.KeyEnd: len(s.rows)}[key])
			return true
		}
	case fyne.KeyPageDown, fyne.KeyPageUp:
		s.keep()
		s.w.desk.bareKey(key)
		s.show()
		return true
	}
	if s.typed == nil {
		return s.at.written() && (key == fyne.KeyBackspace || key == fyne.KeyDelete) && s.removeLine()
	}
	if key == fyne.KeyBackspace && s.typed.caret == 0 && s.joinUp() {
		return true
	}
	s.typed.key(key)
	s.tryTyped()
	return true
}

// escape puts the line being typed back, or lifts the sheet.
func (s *matterSheet) escape() {
	if s.typed == nil {
		s.w.desk.said = ""
		s.leaf.lift()
		s.w.desk.forgetGlimpse()
		return
	}
	s.typed = nil
	s.w.session.Drop()
	s.w.desk.forgetGlimpse()
	s.show()
}

// enter begins to write the row at hand, or keeps what was written and goes on.
func (s *matterSheet) enter() {
	switch {
	case !s.at.written():
		s.step(slices.Index(s.rows, s.at), 1)
	case s.typed == nil:
		s.begin()
	case s.at.part == matterLine:
		s.splitLine()
	default:
		s.keep()
		s.goTo(slices.Index(s.rows, s.at) + 1)
	}
}

// write types a character into the row at hand.
func (s *matterSheet) write(r rune) {
	if !s.at.written() {
		return
	}
	if s.typed == nil {
		s.begin()
	}
	s.typed.insert(string(r))
	s.tryTyped()
}
