// Package echoes finds what comes back in a book of poems, so that a poet can
// space it: what the poet has marked, and words that repeat more than the
// language would expect, each with every place where it stands.
//
// How often the language would expect a word is its share among the words of
// content that assets.Frequencies counts, times the words of content in the
// book. Words of grammar (grammar.go) are never put forward. Forms of a word count
// as one where a closed set of endings tells (fold.go): oven and ovens, bake and
// baking. That is no dictionary's knowledge of words: fold.go says what it misses.
// A repeat surprises by its log likelihood ratio (surprise.go).
//
// There is a table for English only. Elsewhere a word is measured against the
// book's own words (expected.go), and only what is spelled alike is one word.
//
// The package tells what is there and judges nothing: an echo may be just what
// the poet wants. It puts forward words only; that a form or an image comes back
// is for the poet to mark. It looks at the poems' lines, not at titles, epigraphs
// and notes.
package echoes
