package assets

import _ "embed"

// The frequencies are what frequencies/boil.go counts in WordNet 3.0, and says
// there; frequencies/LICENSE.txt has its licence.
//
//go:embed frequencies/words.gz
var frequencies []byte

// Frequencies returns how often 36,904 English words were found: a text in
// ASCII, compressed by gzip. Each of its lines has a word of the letters a to z,
// how often it stands in 1.4 million words of running text, how often senses of
// it as a base word were tagged among 0.3 million words of prose, and, only
// where it is an irregular form such as loaves or went, the base word that it is
// a form of, with a tab between. Tagging passed over most words of grammar. The
// lines are in the order of the bytes of their words. The bytes belong to this
// package and must not be written to.
func Frequencies() []byte { return frequencies }
