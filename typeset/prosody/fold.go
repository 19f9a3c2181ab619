package prosody

import (
	"strings"
	"unicode"
)

// unaccented are the letters that English borrows with an accent, and what the
// dictionary writes for them.
var unaccented = strings.NewReplacer(
	"à", "a", "á", "a", "â", "a", "ã", "a", "ä", "a", "å", "a", "ā", "a", "æ", "ae", "ç", "c", "č", "c",
	"è", "e", "é", "e", "ê", "e", "ë", "e", "ē", "e", "ì", "i", "í", "i", "î", "i", "ï", "i", "ī", "i",
	"ñ", "n", "ò", "o", "ó", "o", "ô", "o", "õ", "o", "ö", "o", "ø", "o", "ō", "o", "œ", "oe", "š", "s",
	"ß", "ss", "ù", "u", "ú", "u", "û", "u", "ü", "u", "ū", "u", "ý", "y", "ÿ", "y", "ž", "z", "þ", "th", "ð", "th",
)

// fold writes a word as the dictionary does: small letters without accents, the
// straight apostrophe, the plain hyphen, digits as they are.
func fold(word string) string {
	return unaccented.Replace(strings.Map(func(r rune) rune {
		switch {
		case isApostrophe(r):
			return '\''
		case isHyphen(r):
			return '-'
		case unicode.Is(unicode.Mn, r) || unicode.Is(unicode.Cf, r):
			return -1
		}
		return unicode.ToLower(r)
	}, word))
}

// isApostrophe says whether a sign is an apostrophe or a single quote, which
// are typed for each other.
func isApostrophe(r rune) bool {
	return r == '\'' || r == '’' || r == '‘' || r == 'ʼ'
}

// isHyphen says whether a sign is a hyphen that is always seen.
func isHyphen(r rune) bool { return r == '-' || r == '‐' || r == '‑' }

// soundsEd says whether a word has the accent by which verse marks that its
// ending -ed is a syllable, as in learnèd, with the accent of its own or as a
// letter and a combining mark. Behind t and d the ending is one without it.
func soundsEd(word string) bool {
	lower := strings.ToLower(word)
	for _, ending := range []string{"èd", "éd", "e\u0300d", "e\u0301d"} {
		if stem, ok := strings.CutSuffix(lower, ending); ok {
			return !strings.HasSuffix(stem, "t") && !strings.HasSuffix(stem, "d")
		}
	}
	return false
}

// withEd are the ways in which a word ends in a syllable -ed; where there is
// none, the first with its last consonant given a vowel.
func withEd(ways []string) []string {
	var sounded []string
	for _, way := range ways {
		for _, ending := range []string{" IH0 D", " AH0 D", " EH0 D"} {
			if strings.HasSuffix(way, ending) {
				sounded = append(sounded, way)
			}
		}
	}
	if len(sounded) > 0 {
		return sounded
	}
	stem, voiced := strings.CutSuffix(ways[0], " D")
	if !voiced {
		stem = strings.TrimSuffix(stem, " T")
	}
	return []string{stem + " IH0 D"}
}
