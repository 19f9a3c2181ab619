package ui

import (
	"strconv"
	"strings"

	"fyne.io/fyne/v2"
)

// key is a key that does not walk over the rows.
func (s *voiceSheet) key(key fyne.KeyName) bool {
	if s.typed != nil {
		return s.typeKey(key)
	}
	switch key {
	case fyne.KeyReturn, fyne.KeyEnter:
		s.press(s.leaf.at)
	case fyne.KeyEscape:
		s.leaf.lift()
		s.a.w.win.Canvas().Focus(s.a)
		s.a.arrange()
		s.a.tell()
	default:
		return false
	}
	return true
}

// write begins to type a value, or goes on.
func (s *voiceSheet) write(r rune) {
	if s.leaf.at >= len(voiceValues) || !strings.ContainsRune("0123456789.,", r) {
		return
	}
	if s.typed == nil {
		s.typed = &typing{}
	}
	s.typed.insert(string(r))
	s.leaf.said = ""
	s.show()
}

// typeKey is a key pressed while a value is typed.
func (s *voiceSheet) typeKey(key fyne.KeyName) bool {
	return typedValueKey(&s.typed, s.leaf, s.takeTyped, s.show, key)
}

// takeTyped takes what was typed, if it can be; else it can be mended.
func (s *voiceSheet) takeTyped() {
	typed := s.typed
	s.typed = nil
	if strings.TrimSpace(typed.text) == "" {
		return
	}
	n, err := strconv.ParseFloat(strings.Replace(strings.TrimSpace(typed.text), ",", ".", 1), 64)
	if err != nil {
		s.leaf.said = quoted(typed.text) + " is no number: write one such as 250."
		s.typed = typed
		return
	}
	v := s.voice()
	*voiceValues[s.leaf.at].field(&v) = n
	if !s.set(v) {
		s.typed = typed
	}
}
