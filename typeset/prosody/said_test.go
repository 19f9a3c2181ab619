package prosody

import (
	"testing"
)

// TestWith: what the poet says of a word holds over the dictionary and the guess,
// and is not guessed; the rest of the language is as it was. The rhymes are those
// of the CMU Pronouncing Dictionary.
func TestWith(t *testing.T) {
	l := English().With(map[string]string{
		"Cardamom,": "CAR-da-mom", "oven": "OV'N", "desire": "de-SI-re", "glorping": "glor-PING", "of": "OF", "learnèd": "LEARN-ed", "a-b": "",
	})
	for _, tc := range []struct {
		word, stress, rhyme string
	}{
		{"cardamom", "100", "AA R D AH M AH M"},
		{"Cardamom,", "100", "AA R D AH M AH M"},
		{"cardamom’s", "100", "AA R D AH M AH M Z"},
		{"oven", "1", "AH N"},
		{"desire", "010", "AY ER"},
		{"glorping", "01", ""},
		{"of", "1", "AH V"},
		{"learnèd", "10", "ER N AH D"},
		{"learned", "1", "ER N D"},
	} {
		s := l.Word(tc.word)
		if len(s) == 0 || s[0].Stress != tc.stress || s[0].Rhyme != tc.rhyme || s[0].Syllables != len(tc.stress) || s[0].Guessed {
			t.Errorf("%s: %+v, want stress %s, rhyme %q", tc.word, s, tc.stress, tc.rhyme)
		}
	}
	if m := l.Line("of cardamom and glorping, and of frumbling"); m.Stress != "11000010110" || len(m.Guessed) != 1 || m.Guessed[0] != "frumbling" {
		t.Errorf("the line measures %+v", m)
	}
	if !English().With(map[string]string{"and": "AND"}).Rhymes("hand", "and") {
		t.Error("“and”, said with stress, doesn’t rhyme with “hand”")
	}
	if s := English().Word("oven"); s[0].Syllables != 2 {
		t.Errorf("the dictionary itself has changed: %+v", s)
	}
}

// TestWithoutDictionary: in a language that there is no dictionary of, the poet's
// own words are known, and a line is measured if it holds no others.
func TestWithoutDictionary(t *testing.T) {
	var none *Lexicon
	if none.With(nil) != nil || none.With(map[string]string{}) != nil || none.HasDictionary() {
		t.Error("where nothing is said there is a lexicon")
	}
	l := none.With(map[string]string{"die": "die", "bäckerei": "bäck-e-REI"})
	if s := l.Word("Bäckerei"); len(s) != 1 || s[0] != (Sound{Syllables: 3, Stress: "001"}) {
		t.Errorf("said: %+v", s)
	}
	if m := l.Line("die Bäckerei"); m.Syllables != 4 || m.Stress != "0001" || m.Guessed != nil {
		t.Errorf("a line of known words: %+v", m)
	}
	if m := l.Line("die Bäckerei schläft"); m.Syllables != 0 || m.Stress != "" {
		t.Errorf("a line with an unknown word: %+v", m)
	}
	if len(l.Word("schläft")) != 0 || l.Rhymes("die", "Bäckerei") || l.HasDictionary() {
		t.Error("it knows what nobody said")
	}
}
