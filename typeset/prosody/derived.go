package prosody

import (
	"regexp"
	"slices"
	"strings"
)

// british are spellings of Britain behind which the dictionary, which is
// American, may have the same word (Hart's Rules, chapter 21; from memory).
var british = []struct {
	spelling *regexp.Regexp
	american string
}{
	{regexp.MustCompile(`ence(s?)$`), "ense$1"},
	{regexp.MustCompile(`our`), "or"},
	{regexp.MustCompile(`re(s?)$`), "er$1"},
	{regexp.MustCompile(`is(e|ed|es|er|ers|ing|ation)$`), "iz$1"},
	{regexp.MustCompile(`ll(ed|ing|er|ers|ous|en)$`), "l$1"},
	{regexp.MustCompile(`l(ful|fully|ment)$`), "ll$1"},
	{regexp.MustCompile(`ough(|s|ed|ing|man|men|share)$`), "ow$1"},
	{regexp.MustCompile(`ould`), "old"},
	{regexp.MustCompile(`ae|oe`), "e"},
	{regexp.MustCompile(`mme(s?)$`), "m$1"},
	{regexp.MustCompile(`phur`), "fur"},
	{regexp.MustCompile(`yre(s?)$`), "ire$1"},
	{regexp.MustCompile(`gaol`), "jail"},
}

// respelt says a word in British spelling as the American one is said.
func (l *Lexicon) respelt(word string) []string {
	for _, b := range british {
		if ways := l.told(b.spelling.ReplaceAllString(word, b.american)); len(ways) > 0 {
			return ways
		}
	}
	return nil
}

// negated says "un" before a word that is told.
func (l *Lexicon) negated(word string) []string {
	rest, ok := strings.CutPrefix(word, "un")
	if !ok || len(rest) < wordInOne {
		return nil
	}
	ways := l.told(rest)
	if len(ways) == 0 {
		return nil
	}
	return joined([]string{"AH0 N"}, ways)
}

// glides are spellings of one vowel that the dictionary, for most such words,
// gives two syllables only, while verse has them as one: "desire" as it gives
// "fire", and "sour" as it gives "hour".
var glides = regexp.MustCompile(`[^aeiou](ire|yre|our|oir)`)

var glide = strings.NewReplacer("AY1 ER0", "AY1 R", "AW1 ER0", "AW1 R")

// told are the ways in which the dictionary says a word, those with a glide in
// one syllable the last.
func (l *Lexicon) told(word string) []string {
	ways := l.look(word)
	if !glides.MatchString(word) {
		return ways
	}
	for _, way := range ways {
		if short := glide.Replace(way); !slices.Contains(ways, short) {
			ways = append(ways, short)
		}
	}
	return ways
}
