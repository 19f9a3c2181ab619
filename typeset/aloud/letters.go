package aloud

import (
	"strings"
	"unicode"
)

// The letters for vowels, each by itself or with a mark. Side by side, those of the
// Latin and Greek alphabets are taken for one syllable, unless the second has a
// diaeresis; each of the Cyrillic is one. (Common practice, no source.)
const (
	vowels    = "aeiouyàáâãäåæèéêëìíîïòóôõöøùúûüýÿāăąēĕėęěīĭįıōŏőœūŭůűųαεηιουωάέήίόύώϊϋΐΰ"
	apart     = "ëïÿϊϋΐΰ"
	cyrillics = "аеёиоуыэюяіїєў"
)

// byLetters guesses the syllables of a word of any language, 1 at least: groups of
// vowels; each sign of Chinese, Japanese and Korean, where a small kana and the
// sign of a long one belong to the one before; and in scripts that write few
// vowels, such as Arabic and Hebrew, a syllable for every two letters.
func byLetters(word string) int {
	n, letters, inVowel := 0, 0, false
	for _, r := range strings.ToLower(word) {
		vowel := strings.ContainsRune(vowels, r)
		switch {
		case vowel && (!inVowel || strings.ContainsRune(apart, r)), strings.ContainsRune(cyrillics, r), isSyllable(r):
			n++
		case unicode.IsLetter(r):
			letters++
		}
		inVowel = vowel || inVowel && unicode.Is(unicode.Mn, r)
	}
	if n == 0 {
		n = (letters + 1) / 2
	}
	return max(n, 1)
}

// isSyllable says whether a sign is a syllable by itself.
func isSyllable(r rune) bool {
	return unicode.In(r, unicode.Han, unicode.Hiragana, unicode.Katakana, unicode.Hangul) && !strings.ContainsRune("ゃゅょャュョー", r)
}
