package echoes

import (
	"cmp"
	"maps"
	"math"
	"slices"
	"strings"
)

// What is put forward stands leastWords times in the book or more, in leastPoems
// poems or more, as what comes back within one poem only is that poem's own; and
// it surprises by leastSurprise: chance alone would go so far for one word in ten
// thousand (the value of chi squared for one degree of freedom and p = 0.0001, by
// which P. Rayson, D. Berridge and B. Francis, Extending the Cochran Rule for the
// Comparison of Word Frequencies between Corpora, JADT 2004, cut the like; from
// memory).
const (
	leastWords    = 3
	leastPoems    = 2
	leastSurprise = 15.13
)

// surprise is the log likelihood ratio, minus twice the logarithm of lambda, of
// finding something n times against what is expected, after T. Dunning, Accurate
// Methods for the Statistics of Surprise and Coincidence, Computational
// Linguistics 19 (1993): here for counts after Poisson, with the language's share
// taken as known. It is 0 for what isn't found more often than expected, or where
// nothing is expected.
func surprise(n int, expected float64) float64 {
	k := float64(n)
	if expected <= 0 || k <= expected {
		return 0
	}
	return 2 * (k*math.Log(k/expected) - (k - expected))
}

// unmarked are the words that repeat more than expected and are not marked, the
// most surprising first.
func (b *book) unmarked() []Echo {
	places := b.surprising()
	expected := b.expecting()
	var echoes []Echo
	for _, s := range slices.Sorted(maps.Keys(places)) {
		e := Echo{Name: b.nameOf(places[s]), Found: b.occurrences(places[s]), Expected: expected(s)}
		e.Surprise = surprise(len(e.Found), e.Expected)
		e.space()
		echoes = append(echoes, e)
	}
	slices.SortFunc(echoes, func(a, b Echo) int {
		return cmp.Or(cmp.Compare(b.Surprise, a.Surprise), strings.Compare(a.Name, b.Name))
	})
	return echoes
}

// surprising are the stems to put forward, with their places in order.
func (b *book) surprising() map[stem][]place {
	expected := b.expecting()
	places := map[stem][]place{}
	wanted := make([]bool, len(b.counts))
	for i, c := range b.counts {
		s := stem(i)
		wanted[i] = c.words >= leastWords && c.poems >= leastPoems && !b.isGrammar(s) && surprise(c.words, expected(s)) >= leastSurprise
	}
	for _, mark := range b.set.Collection().Echoes() {
		for _, word := range mark.Words {
			if stems := b.words.stemsOf(word); len(stems) == 1 && int(stems[0]) < len(wanted) {
				wanted[stems[0]] = false
			}
		}
	}
	for number, poem := range b.poems {
		for _, t := range poem.tokens {
			if wanted[t.stem] {
				places[t.stem] = append(places[t.stem], place{number, int(t.line), int(t.from), int(t.to)})
			}
		}
	}
	return places
}

// nameOf is the form of a word that stands at most of the places, the
// shortest of several: in small letters, unless it has a capital at all of them.
func (b *book) nameOf(places []place) string {
	forms, most, name, capital := map[string]int{}, 0, "", true
	for _, p := range places {
		word := b.poems[p.poem].lines[p.line].Text()[p.from:p.to]
		small := strings.ToLower(word)
		capital = capital && small != word
		forms[small]++
		if n := forms[small]; n > most || n == most && len(word) < len(name) {
			most, name = n, word
		}
	}
	if capital {
		return name
	}
	return strings.ToLower(name)
}
