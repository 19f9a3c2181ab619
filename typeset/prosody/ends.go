package prosody

import "strings"

// An End is how a line ends: with the syntax, or across it.
type End int

const (
	// EndStopped ends at a stop: a full stop, a question or exclamation mark,
	// an ellipsis, a semicolon or a colon.
	EndStopped End = iota

	// AtPhrase ends at a comma, a dash, a bracket or a quote, or without a sign
	// where one phrase may end and the next begin.
	AtPhrase

	// AgainstSyntax ends between words that belong together: after a word that
	// leans on the next one, such as an article or a preposition, or within a
	// word.
	AgainstSyntax
)

// String is the end in words.
func (e End) String() string {
	switch e {
	case EndStopped:
		return "end-stopped"
	case AtPhrase:
		return "at a phrase’s end"
	default:
		return "against the syntax"
	}
}

// EndOf tells how a line ends before the next, which is "" where nothing
// follows. The three kinds are those of J. Longenbach, The Art of the Poetic
// Line (2008): end-stopped, parsing and annotating lines. It goes by signs and
// by closed lists of function words, and so hears no cut between two words of
// content, as between an adjective and its noun: such an end is AtPhrase.
func EndOf(line, next string) End {
	last := LastWord(line)
	tail := strings.TrimSpace(line[strings.LastIndex(line, last)+len(last):])
	switch {
	case titles[fold(last)] && strings.HasPrefix(tail, "."), last != "" && wordBroken(line):
		return AgainstSyntax
	case strings.ContainsAny(tail, ".!?…;:"):
		return EndStopped
	case strings.ContainsAny(tail, `,–—-―)]}»"”’'`), last == "":
		return AtPhrase
	}
	if leansOn(fold(last), first(next)) {
		return AgainstSyntax
	}
	return AtPhrase
}

// wordBroken says whether a line ends in a word with a hyphen behind it, whose
// rest is on the next; two hyphens are a dash.
func wordBroken(line string) bool {
	runes := []rune(strings.TrimSpace(line))
	n := len(runes)
	return n > 1 && isHyphen(runes[n-1]) && isLetter(runes[n-2])
}

// leansOn says whether a word leans on the one that follows, "" for none.
func leansOn(word, next string) bool {
	word = beforeApostrophe(word)
	switch {
	case always[word] || titles[word]:
		return true
	case sometimes[word]:
		return next != "" && !opening[next]
	}
	return false
}

// first is the first word of a line, folded, or "".
func first(line string) string {
	if w := words(line); len(w) > 0 {
		return fold(w[0])
	}
	return ""
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
