package prosody

import "strings"

// leansOn says whether a word leans on the one that follows, "" for none; before
// is the word before it, "" for none. All are folded.
func leansOn(before, word, next string) bool {
	switch stem := beforeApostrophe(word); {
	case always[stem] || titles[word], stem != word, isReduced(word):
		return true
	case next == "":
		return false
	case next == "of" && partitive[word], next == "to" && infinitival[word]:
		return true
	case isAuxiliary(word):
		return participles[next] || !opening[next]
	case counts[word]:
		return !clock[before] && !functional[next] && !always[next] && !sometimes[next]
	}
	return (sometimes[word] || isPossessive(word)) && !opening[next]
}

// mayLean says whether a word leans on some words that may follow it.
func mayLean(word string) bool {
	return sometimes[word] || counts[word] || isAuxiliary(word) || isPossessive(word)
}

// isReduced says whether a verb in a word is reduced to its consonant, as in
// bakers'll: such a verb never ends a phrase (Quirk and others, 1985; from
// memory).
func isReduced(word string) bool {
	return strings.HasSuffix(word, "'ll") || strings.HasSuffix(word, "'ve") || strings.HasSuffix(word, "'re")
}

// isAuxiliary says whether a word is a verb that asks for another, negated or
// not.
func isAuxiliary(word string) bool {
	return auxiliary[word] || strings.HasSuffix(word, "n't") && len(word) > len("n't")
}

// isPossessive says whether a word is a genitive, or a noun with "is".
func isPossessive(word string) bool {
	return strings.HasSuffix(word, "'s") || strings.HasSuffix(word, "s'")
}

// beforeApostrophe is the word that a weak verb leans on, as in I'll and who's;
// every other word as it is.
func beforeApostrophe(word string) string {
	for _, ending := range []string{"'s", "'ll", "'ve", "'re", "'d", "'m"} {
		if stem, ok := strings.CutSuffix(word, ending); ok && functional[stem] {
			return stem
		}
	}
	return word
}

// isFunctionWord says whether a folded word is one that speech leaves
// unstressed beside words of content (D. Attridge, Poetic Rhythm, 1995; from
// memory).
func isFunctionWord(word string) bool { return functional[beforeApostrophe(word)] }
