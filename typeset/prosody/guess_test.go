package prosody

import (
	"hash/crc32"
	"strings"
	"testing"
)

// isHeldOut says whether a word is in the half of the dictionary that the
// spellings of guess.go were not found by.
func isHeldOut(word string) bool { return crc32.ChecksumIEEE([]byte(word))%2 == 1 }

// A tally counts guesses.
type tally struct{ right, all int }

func (c *tally) add(right bool) {
	c.all++
	if right {
		c.right++
	}
}

func (c *tally) percent() float64 { return 100 * float64(c.right) / float64(c.all) }

// TestGuessesAgree lets the words that no spelling was found by be guessed, as
// if the dictionary lacked them, and compares with the dictionary.
func TestGuessesAgree(t *testing.T) {
	l := English()
	var counted, told, stress tally
	for i := range l.starts {
		word, _ := l.line(i)
		if !isHeldOut(word) || strings.ContainsAny(word, "'-") {
			continue
		}
		guess := soundOf(l.guess(word)[0])
		byLetters, byRule, sameStress := false, false, false
		for _, way := range l.look(word) {
			s := soundOf(way)
			byLetters = byLetters || s.Syllables == countSyllables(word)
			byRule = byRule || s.Syllables == guess.Syllables
			sameStress = sameStress || strings.IndexByte(s.Stress, '1') == strings.IndexByte(guess.Stress, '1')
		}
		counted.add(byLetters)
		told.add(byRule)
		if byRule {
			stress.add(sameStress)
		}
	}
	t.Logf("of %d words held out, the letters tell the syllables of %.1f %%, with two words in one %.1f %%; of these, %.1f %% have the primary stress where it is guessed",
		told.all, counted.percent(), told.percent(), stress.percent())
	if counted.percent() < 93.5 {
		t.Errorf("the letters tell the syllables of %.1f %% of the words held out, want 93.5", counted.percent())
	}
	if told.percent() < 93.5 {
		t.Errorf("a guess agrees with %.1f %% of the words held out, want 93.5", told.percent())
	}
	if stress.percent() < 76 {
		t.Errorf("the guessed stress agrees with %.1f %% of the words held out, want 76", stress.percent())
	}
}
