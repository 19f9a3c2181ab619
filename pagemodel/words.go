package pagemodel

import (
	"unicode"
	"unicode/utf8"
)

// Word is a run of a line's text without a space that a line may be parted
// at. Start and End are byte offsets.
type Word struct {
	Start, End int
}

// IsSpace says that a line can be parted at the character: any white space but
// the no-break spaces (U+00A0, U+202F: class GL of UAX 14), which hold.
func IsSpace(r rune) bool {
	return unicode.IsSpace(r) && r != 0x00A0 && r != 0x202F
}

// Words are the words of a text in order.
func Words(text string) []Word {
	var words []Word
	start := -1
	for i, r := range text {
		switch {
		case IsSpace(r):
			if start >= 0 {
				words = append(words, Word{start, i})
			}
			start = -1
		case start < 0:
			start = i
		}
	}
	if start >= 0 {
		words = append(words, Word{start, len(text)})
	}
	return words
}

// spaceAround is the run of spaces that touches the byte offset on either
// side: the characters that a break there takes out of both lines.
func spaceAround(text string, at int) (start, end int) {
	start, end = at, at
	for start > 0 {
		r, n := utf8.DecodeLastRuneInString(text[:start])
		if !IsSpace(r) {
			break
		}
		start -= n
	}
	for end < len(text) {
		r, n := utf8.DecodeRuneInString(text[end:])
		if !IsSpace(r) {
			break
		}
		end += n
	}
	return start, end
}
