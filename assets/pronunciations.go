package assets

import _ "embed"

// The pronunciations are what pronunciations/boil.go makes of the CMU
// Pronouncing Dictionary; pronunciations/LICENSE.txt has its licences.
//
//go:embed pronunciations/words.gz
var pronunciations []byte

// Pronunciations returns how 125,925 English words are said in North America:
// a text in ASCII, compressed by gzip. Each of its lines has a word in small
// letters, with apostrophes and hyphens, and after it the ways in which it is
// said, the usual first, each behind a tab: phonemes in ARPABET with a space
// between, whose vowels carry their stress, 1 primary, 2 secondary, 0 none.
// The lines are in the order of the bytes of their words, and every way has a
// vowel. The bytes belong to this package and must not be written to.
func Pronunciations() []byte { return pronunciations }
