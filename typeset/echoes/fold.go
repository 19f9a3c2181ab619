package echoes

import "strings"

// An ending is a plain inflection: what it ends a word in, what the word may end
// in without it, and whether a last consonant may be written twice before it.
type ending struct {
	ending  string
	before  []string
	doubles bool
}

// endings are the inflections that are taken off: the plural, the third person,
// the past and -ing. They are all that are; comparatives, -er, -ly and the rest
// make other words.
var endings = []ending{
	{"s", []string{""}, false}, {"es", []string{""}, false}, {"ies", []string{"y"}, false}, {"men", []string{"man"}, false},
	{"ed", []string{"", "e"}, true}, {"ied", []string{"y"}, false}, {"ing", []string{"", "e"}, true}, {"ying", []string{"ie"}, false},
}

// lasting are words that end like an inflection of another and are none, or are
// heard as a word of their own (from memory).
var lasting = wordSet(`awning clothes crooked evening jagged morning news pudding ragged rugged species stocking wicked`)

// rarest is how much rarer than its form a base word may be: one that is rarer
// still, as physic beside physics, is more likely another word. The number is ours.
const rarest = 0.05

// fold is the stem of a word in small letters: what its inflections have in
// common. An ending is taken off only where what is left is a word of the table,
// and the most frequent of several; a word that the table lacks loses only its
// plural -s. Irregular forms go by the table's list, which leaves out those that
// are words of their own, such as left and thought. It knows no sense and no
// syntax: she leaves is a leaf here, and sing and song are two words.
func (t *table) fold(word string) string {
	for range 3 { // buildings, building, build
		base := t.base(word)
		if base == word {
			break
		}
		word = base
	}
	return word
}

// base is a word without its last inflection.
func (t *table) base(word string) string {
	if grammar[word] || lasting[word] {
		return word
	}
	if base := t.forms[word].base; base != "" && !grammar[base] {
		return base
	}
	if !inflected(word) {
		return word
	}
	best, most := word, rarest*t.found(word)
	for _, e := range endings {
		left, ok := strings.CutSuffix(word, e.ending)
		if !ok {
			continue
		}
		for _, before := range e.before {
			best, most = t.better(best, most, left+before)
		}
		if e.doubles {
			best, most = t.better(best, most, undoubled(left))
		}
	}
	if _, listed := t.forms[word]; !listed && best == word && len(word) > 3 {
		return strings.TrimSuffix(word, "s")
	}
	return best
}

// better is the more frequent of two base words.
func (t *table) better(best string, most float64, word string) (string, float64) {
	if n := t.found(word); n > most && (len(word) > 2 || word == "go") && strings.ContainsAny(word, "aeiouy") && !grammar[word] {
		return word, n
	}
	return best, most
}

// inflected says that a word may end in an inflection: kiss, bus, this and seed
// don't.
func inflected(word string) bool {
	for _, ending := range []string{"ss", "us", "is", "eed"} {
		if strings.HasSuffix(word, ending) {
			return false
		}
	}
	return true
}

// undoubled is what is left of a word before an ending with its last consonant
// once where it is written twice, as stop of stopped.
func undoubled(left string) string {
	n := len(left)
	if n < 3 || left[n-1] != left[n-2] || strings.IndexByte("bdfgklmnprt", left[n-1]) < 0 {
		return left
	}
	return left[:n-1]
}
