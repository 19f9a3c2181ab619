package prosody

import (
	"strings"
	"unicode"
)

// LastWord is the last word of a line as it is written, without the stops and
// quotes around it, or "" where it has none. A compound with hyphens is one
// word.
func LastWord(text string) string {
	if w := words(text); len(w) > 0 {
		return w[len(w)-1]
	}
	return ""
}

// words are the words of a line as they are written: letters and digits with
// the apostrophes and hyphens among them, the point, comma and colon within a
// number, and "&". A hyphen that has no letter at each side is a dash, and an
// apostrophe that isn't one is a quote.
func words(text string) []string {
	var found []string
	quoted := false // a single quote is open
	runes := []rune(text)
	for at := 0; at < len(runes); {
		end := at
		for end < len(runes) && inWord(runes, end) {
			end++
		}
		if word := unquoted(string(runes[at:end]), &quoted); word != "" {
			found = append(found, word)
		}
		if at < len(runes) && end == at && runes[at] == '&' {
			found = append(found, "&")
		}
		at = max(end, at+1)
	}
	return found
}

// inWord says whether sign i belongs to a word.
func inWord(runes []rune, i int) bool {
	before, after := signAt(runes, i-1), signAt(runes, i+1)
	switch r := runes[i]; {
	case isLetter(r):
		return true
	case isApostrophe(r):
		return isLetter(before) || isLetter(after)
	case isHyphen(r):
		return (isLetter(before) || isApostrophe(before) && isLetter(signAt(runes, i-2))) &&
			(isLetter(after) || isApostrophe(after) && isLetter(signAt(runes, i+2)))
	case strings.ContainsRune(".,:", r):
		return unicode.IsDigit(before) && unicode.IsDigit(after)
	}
	return false
}

// signAt is sign i, or 0 beyond the line's ends.
func signAt(runes []rune, i int) rune {
	if i < 0 || i >= len(runes) {
		return 0
	}
	return runes[i]
}

// isLetter says whether a sign is a letter, a digit, or what is part of one.
func isLetter(r rune) bool {
	return unicode.IsLetter(r) && r != 'ʼ' || unicode.IsDigit(r) || unicode.Is(unicode.Mn, r) || unicode.Is(unicode.Cf, r)
}

// unquoted is a word without the quotes around it. Before a word, an apostrophe
// belongs to it where elisions has the word; after one, where elisions has it,
// or where it can stand for an s or a g and no single quote is open. It is ""
// where no letter is left.
func unquoted(word string, quoted *bool) string {
	for word != "" {
		rest := strings.TrimLeftFunc(word, isApostrophe)
		if rest == word || isElision(word) || isElision(strings.TrimRightFunc(word, isApostrophe)) {
			break
		}
		word, *quoted = rest, true
	}
	bare := strings.TrimRightFunc(word, isApostrophe)
	if bare == word || isElision(word) {
		return word
	}
	ending := fold(bare)
	if (strings.HasSuffix(ending, "s") || strings.HasSuffix(ending, "in")) && !*quoted {
		return word
	}
	*quoted = false
	return bare
}

// isElision says whether a word is in the closed list of elisions.
func isElision(word string) bool {
	_, ok := elisions[fold(word)]
	return ok
}
