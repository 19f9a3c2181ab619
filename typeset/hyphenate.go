package typeset

import (
	"strings"
	"sync"
	"unicode"
	"unicode/utf8"

	"headland/assets"
	"headland/pagemodel"
)

// How many letters of a divided word stay on the row, and how many go to the
// next (Hart's Rules, appendix; the pattern files ask for the same).
const (
	leaveLetters = 2
	carryLetters = 3
)

// hyphenator divides the words of one language by F. M. Liang's method (Word
// Hy-phen-a-tion by Com-put-er, Stanford 1983): of all the patterns that occur
// in a word, the greatest value at each place counts, and an odd one lets the
// word be divided there. It never changes.
type hyphenator struct {
	patterns   map[string][]byte // by letters: the value before each letter and after the last
	longest    int               // letters of a pattern
	exceptions map[string][]int
}

var (
	british  = sync.OnceValue(func() *hyphenator { return parseHyphenator(assets.BritishPatterns()) })
	american = sync.OnceValue(func() *hyphenator { return parseHyphenator(assets.AmericanPatterns()) })
)

// hyphenatorFor is the hyphenator of a language by its BCP 47 tag, or nil: the
// words of a language that there are no patterns for are not divided. English
// is British but where the tag says US: the other places that write English
// divide, in the main, as London does (common practice, no source).
func hyphenatorFor(language string) *hyphenator {
	subtags := strings.Split(strings.ToLower(language), "-")
	if language != "" && subtags[0] != "en" {
		return nil
	}
	for _, s := range subtags[1:] {
		if s == "us" {
			return american()
		}
	}
	return british()
}

// parseHyphenator reads a file of TeX's patterns (The TeXbook, appendix H).
func parseHyphenator(file []byte) *hyphenator {
	h := &hyphenator{patterns: map[string][]byte{}, exceptions: map[string][]int{}}
	var plain strings.Builder
	for line := range strings.Lines(string(file)) {
		code, _, _ := strings.Cut(line, "%")
		plain.WriteString(code + "\n")
	}
	for _, p := range groupOf(plain.String(), `\patterns{`) {
		h.addPattern(p)
	}
	for _, word := range groupOf(plain.String(), `\hyphenation{`) {
		h.addException(word)
	}
	return h
}

// groupOf are the words between a TeX command's braces.
func groupOf(file, command string) []string {
	_, rest, _ := strings.Cut(file, command)
	group, _, _ := strings.Cut(rest, "}")
	return strings.Fields(group)
}

// addPattern takes in a pattern such as ".ad3e": letters, a dot for an end of
// the word, and the values that are not 0.
func (h *hyphenator) addPattern(pattern string) {
	var letters []byte
	values := []byte{0}
	for i := range len(pattern) {
		if c := pattern[i]; c >= '0' && c <= '9' {
			values[len(values)-1] = c - '0'
		} else {
			letters, values = append(letters, c), append(values, 0)
		}
	}
	h.patterns[string(letters)] = values
	h.longest = max(h.longest, len(letters))
}

func (h *hyphenator) addException(word string) {
	parts := strings.Split(word, "-")
	at, points := 0, []int{}
	for _, p := range parts[:len(parts)-1] {
		at += len(p)
		points = append(points, at)
	}
	h.exceptions[strings.Join(parts, "")] = points
}

// points are the byte offsets at which a word of plain letters, a to z in
// either case, may be divided.
func (h *hyphenator) points(word string) []int {
	word = strings.ToLower(word)
	points, known := h.exceptions[word]
	if known {
		return points
	}
	values := h.values("." + word + ".")
	for at := leaveLetters; at <= len(word)-carryLetters; at++ {
		if values[at+1]%2 == 1 {
			points = append(points, at)
		}
	}
	return points
}

// values are the greatest values before each letter of a word with a dot at
// either end, and after the last.
func (h *hyphenator) values(dotted string) []byte {
	values := make([]byte, len(dotted)+1)
	for i := range len(dotted) {
		for end := i + 1; end <= min(len(dotted), i+h.longest); end++ {
			for k, v := range h.patterns[dotted[i:end]] {
				values[i+k] = max(values[i+k], v)
			}
		}
	}
	return values
}

// divisions are the byte offsets at which the words of a text may be divided,
// in order.
func (h *hyphenator) divisions(text string) []int {
	var all []int
	add := func(start, end int) {
		from, to := divisible(text[start:end])
		for _, at := range h.points(text[start+from : start+to]) {
			all = append(all, start+from+at)
		}
	}
	start := 0
	for i, r := range text {
		if partsWords(r) {
			add(start, i)
			start = i + utf8.RuneLen(r)
		}
	}
	add(start, len(text))
	return all
}

// partsWords says that what stands before and behind the character are two
// words, each to be divided by itself.
func partsWords(r rune) bool {
	return pagemodel.IsSpace(r) || r == '\u00a0' || r == '\u202f' || strings.ContainsRune("—–―", r)
}

// divisible is the part of a word that the patterns may divide: its letters,
// without marks before and behind or an ending such as ’s. It is empty in a
// word with anything else in it: one with a hyphen is divided there only (Hart's
// Rules), one with a soft hyphen where the poet says, one with a letter that
// English has not, or a figure, not at all.
func divisible(word string) (start, end int) {
	mark := func(r rune) bool { return unicode.IsPunct(r) || unicode.IsSymbol(r) }
	start = len(word) - len(strings.TrimLeftFunc(word, mark))
	core := strings.TrimRightFunc(word[start:], mark)
	if i := strings.LastIndexAny(core, "'’"); i >= 0 && utf8.RuneCountInString(core[i:]) <= 3 {
		core = core[:i]
	}
	for i := range len(core) {
		if c := core[i] | 0x20; c < 'a' || c > 'z' {
			return start, start
		}
	}
	return start, start + len(core)
}
