package prosody

import (
	"strings"
	"unicode"
	"unicode/utf8"
)

// An End is how a line ends: with the syntax, or across it.
type End int

const (
	// EndStopped ends at a stop: a full stop, a question or exclamation mark,
	// an ellipsis, a semicolon or a colon.
	EndStopped End = iota

	// AtPhrase ends at a comma, a dash, a bracket or a quote, or without a sign
	// before a word that opens a phrase: a conjunction, a relative or a
	// preposition.
	AtPhrase

	// WithoutStop ends without a sign where nothing tells whether a phrase ends.
	WithoutStop

	// AgainstSyntax ends between words that belong together: after a word that
	// leans on the next one, such as an article, a preposition, an auxiliary, a
	// possessive or a numeral, or within a word or a name.
	AgainstSyntax
)

// String is the end in words.
func (e End) String() string {
	switch e {
	case EndStopped:
		return "end-stopped"
	case AtPhrase:
		return "at a phrase’s end"
	case WithoutStop:
		return "without a stop"
	default:
		return "against the syntax"
	}
}

// EndOf tells how a line ends before the next, which is "" where nothing
// follows. Three of the kinds are those of J. Longenbach, The Art of the Poetic
// Line (2008): end-stopped, parsing and annotating lines. It goes by signs and
// by closed lists of function words, and so hears no cut between two words of
// content, as between an adjective and its noun: such an end is WithoutStop.
func EndOf(line, next string) End {
	all := words(line)
	last := ""
	if len(all) > 0 {
		last = all[len(all)-1]
	}
	tail := strings.TrimSpace(line[strings.LastIndex(line, last)+len(last):])
	switch {
	case titles[fold(last)] && strings.HasPrefix(tail, "."), last != "" && wordBroken(line):
		return AgainstSyntax
	case strings.ContainsAny(tail, ".!?…;:"):
		return EndStopped
	case strings.ContainsAny(tail, `,–—-―)]}»"”’'`), last == "":
		return AtPhrase
	}
	return unsigned(all, next)
}

// unsigned is how a line of some words ends that has no sign behind the last.
func unsigned(all []string, next string) End {
	last, opener := fold(all[len(all)-1]), first(next)
	before := ""
	if len(all) > 1 {
		before = fold(all[len(all)-2])
	}
	switch {
	case names[last] && isCapital(all[len(all)-1]) && isCapital(next), leansOn(before, last, opener):
		return AgainstSyntax
	case joins[opener], opensPhrase[opener] && !mayLean(last) && !alone(next):
		return AtPhrase
	}
	return WithoutStop
}

// alone says whether a sign stands behind the first word of a line, or nothing
// does: "in" is no preposition there.
func alone(line string) bool {
	word := words(line)[0]
	behind := line[strings.Index(line, word)+len(word):]
	return strings.TrimSpace(behind) == "" || !strings.HasPrefix(behind, " ")
}

// isCapital says whether a text begins with a capital.
func isCapital(text string) bool {
	r, _ := utf8.DecodeRuneInString(text)
	return unicode.IsUpper(r)
}

// wordBroken says whether a line ends in a word with a hyphen behind it, whose
// rest is on the next; two hyphens are a dash.
func wordBroken(line string) bool {
	runes := []rune(strings.TrimSpace(line))
	n := len(runes)
	return n > 1 && isHyphen(runes[n-1]) && isLetter(runes[n-2])
}

// first is the first word of a line, folded, or "".
func first(line string) string {
	if w := words(line); len(w) > 0 {
		return fold(w[0])
	}
	return ""
}
