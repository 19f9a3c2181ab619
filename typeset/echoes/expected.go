package echoes

import "unicode/utf8"

// commonest is the part of the poems of a book in a language without a table that
// a word of grammar stands in at least; commonBook is how many poems it takes for
// that to tell. Common practice has no number for it: these are ours.
const (
	commonest  = 1.0 / 3
	commonBook = 6
)

// longest is the number of letters from which words count as equally long.
const longest = 10

// Basis says in words what the words of a book in a language, by its tag of BCP
// 47, are measured against.
func Basis(language string) string {
	if isEnglish(language) {
		return "measured against how often English has each word"
	}
	return "measured against the book’s other words of the same length, as there are no counts for its language; only what is spelled alike is one word"
}

// isGrammar says whether a stem is a word of grammar: one of the closed classes
// in English, and elsewhere one that stands in a third of the poems or more.
func (b *book) isGrammar(s stem) bool {
	if b.words.english != nil {
		return grammar[b.words.stems[s]]
	}
	return len(b.poems) >= commonBook && float64(b.countOf(s).poems) >= commonest*float64(len(b.poems))
}

// expecting tells how often each stem is to be expected in the book: as the table
// has it, or as the book's other words stand in it.
func (b *book) expecting() func(stem) float64 {
	if b.words.english == nil {
		return b.asOthers()
	}
	content := 0
	for s, c := range b.counts {
		if !b.isGrammar(stem(s)) {
			content += c.words
		}
	}
	return func(s stem) float64 { return float64(content) * b.words.english.shareOf(b.words.stems[s]) }
}

// asOthers expects a word as often as the book's other words of its length stand
// in it on average, words of grammar left out. Words are the shorter the more often
// they are used, in every language (G. K. Zipf, The Psycho-Biology of Language,
// 1935; from memory).
func (b *book) asOthers() func(stem) float64 {
	var words, different [longest + 1]int
	letters := func(s stem) int { return min(longest, utf8.RuneCountInString(b.words.stems[s])) }
	for i, c := range b.counts {
		if s := stem(i); c.words > 0 && !b.isGrammar(s) {
			words[letters(s)] += c.words
			different[letters(s)]++
		}
	}
	return func(s stem) float64 {
		n := letters(s)
		if own := b.countOf(s).words; own > 0 && different[n] > 1 {
			return float64(words[n]-own) / float64(different[n]-1)
		}
		return 1 // no other to go by: as often as a word that is there must stand
	}
}
