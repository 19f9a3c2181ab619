package choices

import (
	"slices"
	"strings"
	"unicode/utf8"

	"headland/pagemodel"
)

const (
	dashes  = "—–―"
	hyphens = "-‐‑"
)

// places are the byte offsets at which a poet may break a line, in order: before
// every word but the first, on either side of a dash within a word, and behind a
// hyphen within one. A setting has fewer: see typeset.
func places(text string) []int {
	var at []int
	for i, w := range pagemodel.Words(text) {
		if i > 0 {
			at = append(at, w.Start)
		}
		at = append(at, placesWithin(text, w)...)
	}
	return at
}

// placesWithin are the places inside one word.
func placesWithin(text string, w pagemodel.Word) []int {
	var at []int
	word := text[w.Start:w.End]
	for i, r := range word {
		next := i + utf8.RuneLen(r)
		switch {
		case strings.ContainsRune(dashes, r):
			at = append(at, i, next)
		case strings.ContainsRune(hyphens, r):
			at = append(at, next)
		}
	}
	at = slices.Compact(at)
	return slices.DeleteFunc(shifted(at, w.Start), func(o int) bool { return !betweenLetters(text, w, o) })
}

// betweenLetters says that a word has something to read on either side of an
// offset: a dash or mark left alone is no line.
func betweenLetters(text string, w pagemodel.Word, at int) bool {
	marks := dashes + hyphens + `“”‘’"'«».,;:!?…()[]`
	return strings.Trim(text[w.Start:at], marks) != "" && strings.Trim(text[at:w.End], marks) != ""
}

func shifted(offsets []int, by int) []int {
	for i := range offsets {
		offsets[i] += by
	}
	return offsets
}

// titled says in words where the line is broken or turned: the word, with those
// behind it until the line has no others like them.
func titled(text string, at []int) string {
	words := make([]string, len(at))
	for i, o := range at {
		words[i] = "“" + phraseAt(text, o) + "”"
	}
	return strings.Join(words, " and ")
}

// phraseAt is the word at a byte offset, as short as tells it from the rest of
// the line.
func phraseAt(text string, at int) string {
	phrase := ""
	for _, w := range pagemodel.Words(text[at:]) {
		phrase = strings.TrimRight(text[at:at+w.End], ",;:.!?…”’")
		if phrase != "" && strings.Count(text, phrase) == 1 {
			break
		}
	}
	return phrase
}
