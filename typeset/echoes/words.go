package echoes

import (
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"

	"headland/pagemodel"
)

// A poem is the words of a poem.
type poem struct {
	id     pagemodel.PoemID
	lines  []pagemodel.Line
	tokens []token
}

// A token is one word of a poem.
type token struct {
	line     int32 // its index in the poem
	from, to int32 // byte offsets in the line
	stem     stem
}

// read reads the words of a poem.
func (v *vocabulary) read(p *pagemodel.Poem) *poem {
	read := &poem{id: p.ID(), lines: make([]pagemodel.Line, 0, p.LineCount()), tokens: make([]token, 0, 8*p.LineCount())}
	for _, line := range p.Lines() {
		read.tokens = v.tokens(read.tokens, len(read.lines), line.Text())
		read.lines = append(read.lines, line)
	}
	return read
}

// tokens appends the words of a line: runs of letters, with the apostrophes
// among them where the language is English. A hyphen parts words, so that light
// is heard in half-light. Numbers are no words.
func (v *vocabulary) tokens(tokens []token, line int, text string) []token {
	for at := 0; at < len(text); {
		r, size := utf8.DecodeRuneInString(text[at:])
		if !unicode.IsLetter(r) {
			at += size
			continue
		}
		end := v.wordEnd(text, at)
		word := text[at:end]
		if v.english != nil {
			word = uncontracted(word)
		}
		tokens = append(tokens, token{int32(line), int32(at), int32(at + len(word)), v.stemOf(word)})
		at = end
	}
	return tokens
}

// wordEnd is where the word that begins at a byte offset ends.
func (v *vocabulary) wordEnd(text string, at int) int {
	for at < len(text) {
		r, size := utf8.DecodeRuneInString(text[at:])
		switch {
		case unicode.IsLetter(r) || unicode.Is(unicode.Mn, r):
			at += size
			continue
		case v.english != nil && isApostrophe(r):
			if next, _ := utf8.DecodeRuneInString(text[at+size:]); unicode.IsLetter(next) {
				at += size
				continue
			}
		}
		return at
	}
	return at
}

func isApostrophe(r rune) bool { return r == '\'' || r == '’' }

// contractions are the endings behind an apostrophe that are words of their own,
// or a possessive.
var contractions = []string{"s", "d", "m", "ll", "re", "ve"}

// uncontracted is a word without the ending of its possessive, or the weak verb
// or "not" that is written with it.
func uncontracted(word string) string {
	at := strings.LastIndexFunc(word, isApostrophe)
	if at < 0 {
		return word
	}
	_, size := utf8.DecodeRuneInString(word[at:])
	ending := strings.ToLower(word[at+size:])
	if slices.Contains(contractions, ending) {
		return word[:at]
	}
	if ending == "t" && strings.HasSuffix(strings.ToLower(word[:at]), "n") {
		return word[:at-1]
	}
	return word
}
