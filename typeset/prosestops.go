package typeset

import (
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"

	"headland/pagemodel"
)

// proseStop is a place in a paragraph's text where a row may end.
type proseStop struct {
	end, next int  // byte offsets: where the row's letters end, and where the next row begins
	divided   bool // the row shows a hyphen that is not in the text, or is a soft one there
	flagged   bool // the row ends with a hyphen
	forced    bool // the poet's word begins the next row
}

// inWord says that the row would end within a word: no space is left out.
func (s *proseStop) inWord() bool { return s.divided || s.end == s.next }

// softHyphen is the poet's leave to divide a word there. It shows only where
// that is done.
const softHyphen = '\u00ad'

// proseStops are the places where a paragraph's rows may end, in order, with
// its beginning before and its end behind: between words, after a dash or a
// hyphen, at a soft hyphen and, where there is a hyphenator, where it divides a
// word. No row begins with a dash or behind a gap, which it would swallow.
func proseStops(l *pagemodel.Line, end int, h *hyphenator) []proseStop {
	text := l.Text()[:end]
	stops := []proseStop{{}, {end: end, next: end}}
	for _, at := range spaceTurns(l, 0, end) {
		stops = append(stops, proseStop{end: trimEnd(text, 0, at), next: at})
	}
	for _, at := range dashStops(l, end) {
		r, _ := utf8.DecodeLastRuneInString(text[:at])
		stops = append(stops, proseStop{end: at, next: at, flagged: strings.ContainsRune(hyphens, r)})
	}
	stops = append(stops, softStops(text)...)
	if h != nil {
		for _, at := range h.divisions(text) {
			stops = append(stops, proseStop{end: at, next: at, divided: true, flagged: true})
		}
	}
	stops = slices.DeleteFunc(stops, func(s proseStop) bool { return s.next > 0 && (s.end == 0 || hasGap(l, s.next)) })
	for _, at := range l.Turns() {
		if at > 0 && at < end {
			stops = append(stops, proseStop{end: trimEnd(text, 0, at), next: at, forced: true})
		}
	}
	return inOrder(stops)
}

// inOrder sorts stops by where the next row begins, and keeps one for each
// place: the poet's word, where that is one.
func inOrder(stops []proseStop) []proseStop {
	slices.SortStableFunc(stops, func(a, b proseStop) int {
		if a.next == b.next && a.forced != b.forced {
			if a.forced {
				return -1
			}
			return 1
		}
		return a.next - b.next
	})
	return slices.CompactFunc(stops, func(a, b proseStop) bool { return a.next == b.next })
}

// hyphens are the dashes that a divided or compound word ends with.
const hyphens = "-‐"

// dashStops are the places after a dash or hyphen at which a row of prose may
// end: what follows is a letter, a figure or an opening mark (after a hyphen
// only a letter), and the hyphen stands within a word (UAX 14, LB 13, LB 20a
// and LB 25).
func dashStops(l *pagemodel.Line, end int) []int {
	text := l.Text()[:end]
	return slices.DeleteFunc(dashTurns(l, 0, end), func(at int) bool {
		next, _ := utf8.DecodeRuneInString(text[at:])
		dash, n := utf8.DecodeLastRuneInString(text[:at])
		if !strings.ContainsRune(hyphens, dash) {
			return !unicode.In(next, unicode.L, unicode.N) && !strings.ContainsRune(hangers, next)
		}
		before, _ := utf8.DecodeLastRuneInString(text[:at-n])
		return !unicode.IsLetter(next) || !unicode.In(before, unicode.L, unicode.N)
	})
}

// softStops are the soft hyphens within words.
func softStops(text string) []proseStop {
	var stops []proseStop
	for i, r := range text {
		if r != softHyphen {
			continue
		}
		at := i + utf8.RuneLen(r)
		before, _ := utf8.DecodeLastRuneInString(text[:i])
		next, _ := utf8.DecodeRuneInString(text[at:])
		if unicode.In(before, unicode.L, unicode.M, unicode.N) && unicode.In(next, unicode.L, unicode.N) {
			stops = append(stops, proseStop{end: i, next: at, divided: true, flagged: true})
		}
	}
	return stops
}
