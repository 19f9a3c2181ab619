package document

import (
	"fmt"
	"strings"
	"unicode/utf8"
)

// unwritable says that XML has no such character, not even escaped (XML 1.0, 2.2,
// Char), or, of an end of line, that a reader would make another one of it (2.11)
// or a space. An end of line has a mark of its own in a document.
func unwritable(r rune) bool {
	switch {
	case r == '\t':
		return false
	case r < 0x20, r == 0xFFFE, r == 0xFFFF:
		return true
	}
	return false
}

// writable is a text without the characters that can't be written: ends of line
// become a space, bytes that are no character become U+FFFD, others are left out.
func writable(text string) string {
	if utf8.ValidString(text) && strings.IndexFunc(text, unwritable) < 0 {
		return text
	}
	return strings.Map(func(r rune) rune {
		switch {
		case r == '\n' || r == '\r' || r == '\v' || r == '\f':
			return ' '
		case unwritable(r):
			return -1
		}
		return r
	}, strings.ToValidUTF8(text, "\uFFFD"))
}

// Notices say in words what of the document can't be written; none where it
// can be written whole.
func (d Document) Notices() []string {
	changed := 0
	count := func(text string) {
		if writable(text) != text {
			changed++
		}
	}
	count(d.Title)
	count(d.Author)
	for p := range d.paragraphs {
		for _, r := range p.Runs {
			count(r.Text)
		}
	}
	switch changed {
	case 0:
		return nil
	case 1:
		return []string{"1 text held control characters, which no such file can hold: they became spaces or were left out"}
	}
	return []string{fmt.Sprintf("%d texts held control characters, which no such file can hold: they became spaces or were left out", changed)}
}
