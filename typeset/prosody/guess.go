package prosody

import (
	"regexp"
	"slices"
	"strings"
)

// A spelling is letters whose sound parts from what the groups of vowels tell:
// vowels side by side that are said apart, letters e that are silent.
type spelling struct {
	letters *regexp.Regexp
	adds    int // syllables
}

// The spellings were found by counting over one half of the CMU Pronouncing
// Dictionary; the test has the agreement with the other half. Of heads and of
// tails, the first that fits counts; of insides all, as often as they occur.
var (
	heads = []spelling{
		{regexp.MustCompile(`^mc`), 1},
		{regexp.MustCompile(`^(eye|fore|home|house|side|some|there|where)[b-df-hj-np-tv-z]`), -1},
	}
	insides = []spelling{
		{regexp.MustCompile(`[^ctsxg]ia(g?[^g]|g?$)|tiat|[csg]iat`), 1},
		{regexp.MustCompile(`[^ctsxgl]io([^u]|$)|[cgs]io$|riou`), 1},
		{regexp.MustCompile(`[^aeiou]ie(r$|st$|t)|eier`), 1},
		{regexp.MustCompile(`[^cgp]eo|^geo`), 1},
		{regexp.MustCompile(`iu|aue|ayo|[aoi]ya|[aeo]ye([^d]|$)`), 1},
		{regexp.MustCompile(`[^gq]ua([^r]|$)|[^aeiou]uou`), 1},
	}
	tails = []spelling{
		{regexp.MustCompile(`(lle|que|gue)s?$`), -1},
		{regexp.MustCompile(`[^aeiouylr]le[ds]?$|[bt]re$`), 0},
		{regexp.MustCompile(`[aeiouytd]ed$`), 0},
		{regexp.MustCompile(`ed$`), -1},
		{regexp.MustCompile(`([szxcg]|[cs]h)es$`), 0},
		{regexp.MustCompile(`[^aeiouy]es?$`), -1},
		{regexp.MustCompile(`[^aeiouy]e(ly|ments?|ful|fully|less|lessly|ness)$`), -1},
		{regexp.MustCompile(`[aeiouy]ings?$|(th|[iy]s)ms?$`), 1},
	}
	vowels = regexp.MustCompile(`[aeiouy]+`)
)

// vowelGroups counts the vowels of a word, those side by side as one.
func vowelGroups(word string) int { return len(vowels.FindAllStringIndex(word, -1)) }

// countSyllables is how many syllables a folded word seems to have by its
// letters, 1 at least.
func countSyllables(word string) int {
	n := vowelGroups(word) + firstOf(heads, word) + firstOf(tails, word)
	for _, s := range insides {
		n += s.adds * len(s.letters.FindAllStringIndex(word, -1))
	}
	return max(n, 1)
}

// firstOf is what the first spelling that fits a word adds.
func firstOf(spellings []spelling, word string) int {
	for _, s := range spellings {
		if s.letters.MatchString(word) {
			return s.adds
		}
	}
	return 0
}

// guess is a way that a word may be said which no rule knows: as two words
// written in one, or else with as many unknown vowels as the letters tell.
func (l *Lexicon) guess(word string) []string {
	if ways := l.twoInOne(word); len(ways) > 0 {
		return ways
	}
	return byLetters(word)
}

// byLetters is the guess by letters alone.
func byLetters(word string) []string {
	n := countSyllables(word)
	stressed := guessStress(word, n)
	phonemes := append([]string{guessed}, slices.Repeat([]string{unknownWeak}, n)...)
	phonemes[1+stressed] = unknownStressed
	return []string{strings.Join(phonemes, " ")}
}

// wordInOne is how many letters at least each of two words written in one has:
// among shorter ones, too many are names and chance.
const wordInOne = 4

// twoInOne says a word such as bakehouse as the two that it is written of, the
// second with secondary stress, as in CMU's own compounds; the first as long as
// it can be. It is nil where there are no two.
func (l *Lexicon) twoInOne(word string) []string {
	for cut := len(word) - wordInOne; cut >= wordInOne; cut-- {
		first, second := l.look(word[:cut]), l.look(word[cut:])
		if len(first) > 0 && len(second) > 0 {
			return []string{guessed + " " + first[0] + " " + strings.ReplaceAll(second[0], "1", "2")}
		}
	}
	return nil
}

// penultimate are endings with the stress on the syllable before the last one.
var penultimate = regexp.MustCompile(`([st]ion|ic)s?$`)

// guessStress is which syllable of n has the stress, counted from 0: the first
// of two, the third from the end of more, but the one before an ending such as
// -tion (common practice, no source).
func guessStress(word string, n int) int {
	switch {
	case n <= 2:
		return 0
	case penultimate.MatchString(word):
		return n - 2
	}
	return n - 3
}
