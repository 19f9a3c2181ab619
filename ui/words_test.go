package ui

import (
	"testing"
	"unicode/utf8"
)

// TestWordsArePartedAtDots: in two lines as wide as given, whole where those can
// hold them; then without the things before the last, never half of one.
func TestWordsArePartedAtDots(t *testing.T) {
	const said = "Type to add it · Alt ↑ ↓ moves it · F2 the slot · Esc the book"
	for room, want := range map[int][2]string{
		40: {"Type to add it · Alt ↑ ↓ moves it", "F2 the slot · Esc the book"},
		26: {"Type to add it", "Esc the book"},
		33: {"Type to add it · Alt ↑ ↓ moves it", "F2 the slot · Esc the book"},
	} {
		upper, lower := inTwo(said, func(words string) bool { return utf8.RuneCountInString(words) <= room })
		if upper != want[0] || lower != want[1] {
			t.Errorf("in %d letters: %q and %q", room, upper, lower)
		}
	}
}

// TestArrowsStayWithTheirKey where words are parted within what they say.
func TestArrowsStayWithTheirKey(t *testing.T) {
	if upper, lower := halves("it goes Alt ↑ ↓ up here"); upper != "it goes Alt ↑ ↓" || lower != "up here" {
		t.Errorf("parted in %q and %q", upper, lower)
	}
	if upper, lower := halves("one"); upper != "one" || lower != "" {
		t.Errorf("one word is parted in %q and %q", upper, lower)
	}
}
