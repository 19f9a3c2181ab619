package aloud

import (
	"testing"

	"headland/pagemodel"
)

// TestByLetters holds the guess without a dictionary against lines whose measure
// is known (all from memory).
func TestByLetters(t *testing.T) {
	c := newShelf().Collection()
	for _, test := range []struct {
		text      string
		syllables int
		measure   string
	}{
		{"Nel mezzo del cammin di nostra vita", 11, "Dante, a hendecasyllable"},
		{"Über allen Gipfeln ist Ruh", 8, "Goethe"},
		{"Я помню чудное мгновенье", 9, "Pushkin, an iambic tetrameter with a feminine end"},
		{"ふるいけや", 5, "Bashō, in kana"},
		{"かわずとびこむ", 7, "the same"},
		{"きょう", 2, "a small kana"},
		{"床前明月光", 5, "Li Bai, five syllables a line"},
		{"noël, maïs", 4, "diaeresis parts vowels"},
		{"1984", 1, "digits, at least one"},
		{"כל", 1, "letters without vowels, two to a syllable"},
	} {
		got := CountsOf(c, pagemodel.Item{Text: test.text}, nil)
		if got.Syllables != test.syllables || got.Guessed != got.Words || got.Words == 0 {
			t.Errorf("%s (%s): %+v, want %d syllables, all guessed", test.text, test.measure, got, test.syllables)
		}
	}
}

// TestRunsOnWithoutADictionary holds that in a language without one only signs tell
// whether a line runs on: "in" is no preposition there.
func TestRunsOnWithoutADictionary(t *testing.T) {
	c := newShelf().Collection()
	if got := CountsOf(c, pagemodel.Item{Text: "Brot in\nOfen,\nund"}, nil); got.RunOns != 1 || got.Ends != 1 {
		t.Errorf("with signs: %+v", got)
	}
	if got := CountsOf(c, pagemodel.Item{Text: "Brot in\nOfen\nund"}, nil); got.RunOns != 0 || got.Ends != 2 {
		t.Errorf("without signs: %+v", got)
	}
}

// TestSaidWithoutADictionary holds that what the poet says of a word is known in
// any language.
func TestSaidWithoutADictionary(t *testing.T) {
	s := newShelf()
	s.poem("", "poésie du pain")
	c := mustDo(t, s.Collection(), pagemodel.Say{Word: "poésie", As: "po-é-SIE"})
	if got := CountsOf(c, first(c), nil); got.Syllables != 5 || got.Guessed != 2 {
		t.Errorf("got %+v", got)
	}
}
