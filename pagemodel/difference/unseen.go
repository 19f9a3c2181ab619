package difference

import (
	"fmt"
	"strings"
	"unicode"
)

// Characters that leave no ink, or white that can't be told from a word space, are
// named in words beside the quotation.

// unseenNames are what such characters are called, after Unicode's names for them.
var unseenNames = map[rune]string{
	'\t': "tab character", '\u00a0': "no-break space", '\u202f': "narrow no-break space", '\u2007': "figure space",
	'\u2002': "en space", '\u2003': "em space", '\u2009': "thin space", '\u200a': "hair space", '\u00ad': "soft hyphen",
	'\u200b': "zero-width space", '\u200c': "zero-width non-joiner", '\u200d': "zero-width joiner", '\u2060': "word joiner",
	'\u200e': "left-to-right mark", '\u200f': "right-to-left mark",
}

// unseenName names a character.
func unseenName(r rune) string {
	if name, ok := unseenNames[r]; ok {
		return name
	}
	return fmt.Sprintf("U+%04X", r)
}

// an is a name with its article.
func an(name string) string {
	if strings.ContainsAny(name[:1], "aei") {
		return "an " + name
	}
	return "a " + name
}

// unseen is such a character in a text.
type unseen struct {
	at    int // how many characters one sees before it
	char  rune
	white bool
}

// looksOf is a text as one sees it, all white a word space, and what one doesn't see.
func looksOf(text string) (string, []unseen) {
	var seen strings.Builder
	var all []unseen
	n := 0
	for _, r := range text {
		white := unicode.IsSpace(r)
		if r != ' ' && (white || unicode.Is(unicode.Cf, r)) {
			all = append(all, unseen{n, r, white})
		}
		switch {
		case white:
			seen.WriteByte(' ')
		case unicode.Is(unicode.Cf, r):
			continue
		default:
			seen.WriteRune(r)
		}
		n++
	}
	return seen.String(), all
}

// SameInk says that two texts look alike, though they may differ in characters
// that one does not see.
func SameInk(a, b string) bool {
	seen, _ := looksOf(a)
	other, _ := looksOf(b)
	return seen == other
}

// mostUnseen is how many such characters are named.
const mostUnseen = 3

// unseenWords names what one does not see in a text. Of one that looks like
// another it names only that in which they differ, and what stands in its place.
func unseenWords(text, other string) string {
	seen, here := looksOf(text)
	looks, there := looksOf(other)
	var said []string
	for _, u := range here {
		if seen != looks || !holds(there, u) {
			said = append(said, an(unseenName(u.char))+u.place(seen))
		}
	}
	for _, u := range there {
		if seen != looks || holds(here, u) || u.white && holdsWhite(here, u.at) {
			continue
		}
		name := "no " + unseenName(u.char)
		if u.white {
			name = "a word space"
		}
		said = append(said, name+u.place(seen))
	}
	if len(said) > mostUnseen {
		said = append(said[:mostUnseen], "more that is not seen")
	}
	if len(said) == 0 {
		return ""
	}
	return "with " + strings.Join(said, " and ")
}

func holds(all []unseen, u unseen) bool {
	for _, v := range all {
		if v == u {
			return true
		}
	}
	return false
}

func holdsWhite(all []unseen, at int) bool {
	for _, v := range all {
		if v.white && v.at == at {
			return true
		}
	}
	return false
}

// place says where a character stands by the letters before it.
func (u unseen) place(seen string) string {
	before := []rune(seen)[:u.at]
	from := len(before)
	for from > 0 && before[from-1] != ' ' {
		from--
	}
	if from == len(before) {
		return ""
	}
	return " after " + quoted(string(before[from:]))
}
