package manuscript

import (
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"
)

// escaper writes the characters of a text so that none of them is taken for a
// mark.
type escaper struct {
	grammar
	text  string
	verse bool // the text is a line's, so that its start may be taken for a mark
}

// write writes the character at a byte offset.
func (e escaper) write(b *strings.Builder, at int, r rune) {
	if e.needed(at, r) {
		b.WriteByte('\\')
	}
	b.WriteRune(r)
}

func (e escaper) needed(at int, r rune) bool {
	switch {
	case r == '\\':
		return true
	case unicode.IsSpace(r):
		return at == 0 || at+utf8.RuneLen(r) == len(e.text)
	case r == '*' || r == '_':
		return e.styles
	case r == '[':
		return e.isMark(e.text[at:]) || at == 0 && e.verse && startsLine(e.text)
	case at == 0 && e.verse:
		return r == '>' || r == '#' && looksLikeHeading(e.text)
	}
	return false
}

// isMark says that the text begins with one of the marks within a line, or
// with something that a notice would be given of.
func (e escaper) isMark(s string) bool {
	name, _, n := markAt(s)
	if n == 0 {
		return false
	}
	return e.gaps && isWhiteMark(name) || e.styles && slices.Contains(styleMarks[:], strings.TrimPrefix(name, "/"))
}

// startMarks are the marks of a line's start, and of what stands alone between
// stanzas.
var startMarks = []string{"indent", "page", "together", "drop", "white", "centre", "center", "right", "prose"}

// startsLine says that the text begins with what is read at a line's start.
func startsLine(s string) bool {
	name, _, n := markAt(s)
	_, key := attributeKey(s)
	return key > 0 || n > 0 && slices.Contains(startMarks, name)
}

// looksLikeHeading counts headings deeper than ours, of which a notice would
// be given.
func looksLikeHeading(s string) bool {
	rest := strings.TrimLeft(s, "#")
	return len(rest) < len(s) && (rest == "" || rest[0] == ' ' || rest[0] == '\t')
}
