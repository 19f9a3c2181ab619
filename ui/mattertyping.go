package ui

import (
	"slices"
	"strings"

	"fyne.io/fyne/v2"

	"headland/pagemodel"
)

// begin begins to write the row at hand, with the caret behind its words.
func (s *matterSheet) begin() {
	text := s.text(s.at)
	s.typed = newTyping(pagemodel.LineRef{}, text, len(text))
	s.show()
}

// tryTyped shows on the page what is being typed.
func (s *matterSheet) tryTyped() {
	s.leaf.said = ""
	if e := s.edit(s.at, s.typed.text); e == nil {
		s.w.session.Drop()
	} else if err := s.w.session.Preview(e); err != nil {
		s.leaf.said = errorWords(err) + "."
	}
	s.w.desk.forgetGlimpse()
	if s.page == 0 {
		s.open() // a page without words was none
	}
	s.show()
}

// keep makes what is being typed the book's.
func (s *matterSheet) keep() {
	if s.typed == nil {
		return
	}
	e := s.edit(s.at, s.typed.text)
	s.typed = nil
	s.w.session.Drop()
	if e != nil {
		s.do(e)
	}
}

// splitLine keeps the line up to the caret and goes on with what is after it as
// a line of its own.
func (s *matterSheet) splitLine() {
	text, caret := s.typed.text, s.typed.caret
	lines := s.linesTo(s.at.line + 1)
	lines[s.at.line] = text[:caret]
	if caret < len(text) {
		lines = slices.Insert(lines, s.at.line+1, text[caret:])
	}
	s.rewrite(lines, s.at.line+1, 0)
}

// joinUp runs the line being typed on behind the one above it; false where none
// is above.
func (s *matterSheet) joinUp() bool {
	if s.at.part != matterLine || s.at.line == 0 {
		return false
	}
	lines := s.linesTo(s.at.line)
	above := lines[s.at.line-1]
	lines[s.at.line-1] += s.typed.text
	if s.at.line < len(lines) {
		lines = slices.Delete(lines, s.at.line, s.at.line+1)
	}
	s.rewrite(lines, s.at.line-1, len(above))
	return true
}

// linesTo are the lines of the page at hand, with white below to make them at
// least so many. They are the caller's.
func (s *matterSheet) linesTo(least int) []string {
	page, _ := s.matter().Page(s.at.kind)
	lines := slices.Clone(page.Text)
	for len(lines) < least {
		lines = append(lines, "")
	}
	return lines
}

// removeLine takes the line at hand out of its page.
func (s *matterSheet) removeLine() bool {
	page, _ := s.matter().Page(s.at.kind)
	if s.at.part != matterLine || s.at.line >= len(page.Text) {
		return false
	}
	s.do(s.lines(s.at.kind, slices.Delete(slices.Clone(page.Text), s.at.line, s.at.line+1)))
	s.show()
	return true
}

// rewrite gives the page at hand other lines, and goes on writing in one.
func (s *matterSheet) rewrite(lines []string, line, caret int) {
	s.typed = nil
	s.w.session.Drop()
	s.do(s.lines(s.at.kind, lines))
	s.at.line = line
	s.typed = newTyping(pagemodel.LineRef{}, s.text(s.at), caret)
	s.show()
}

// TypedShortcut hears what is pasted: several lines are several lines of the
// page at hand.
func (l *leaf) TypedShortcut(shortcut fyne.Shortcut) {
	paste, ok := shortcut.(*fyne.ShortcutPaste)
	if !ok || paste.Clipboard == nil {
		return
	}
	lines := strings.Split(strings.TrimRight(strings.ReplaceAll(paste.Clipboard.Content(), "\r\n", "\n"), "\n"), "\n")
	for i, line := range lines {
		if i > 0 {
			l.hand.key(fyne.KeyReturn)
		}
		for _, r := range line {
			l.hand.write(r)
		}
	}
}
