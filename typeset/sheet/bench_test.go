package sheet

import "testing"

// BenchmarkSheet sets twelve sonnets on a window.
func BenchmarkSheet(b *testing.B) {
	var poems []string
	for range 12 {
		text := "A Poem\n"
		for i := range 14 {
			text += bakeryWords[i] + " and the lamp is lit above the street " + bakeryWords[i+1] + "\n"
			if i%4 == 3 {
				text += "\n"
			}
		}
		poems = append(poems, text)
	}
	c := book(poems...)
	s, p := set(c), planOf(c, readingOf(c))
	for b.Loop() {
		New(s, p, OnWindow(1400, 900), setter)
	}
}
