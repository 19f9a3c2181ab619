// Package difference says what differs between two states of a book as a reader
// of proofs would say it: new line, run on, substitute, transpose.
//
// It compares what is printed, and what decides how it is set: words, styles,
// spaces, indents, line ends, stanzas, parts, heads, the order, the prelims and
// end matter, the design. The printed text follows the edition: a break taken in
// this edition is a line end, and that it becomes the poem's is no difference.
// Identities, days, reasons, notes on decisions, rounds, replies and variants that
// are not in the book are none either.
//
// It knows nothing of pages. Where a change stands on the pages as they went
// out, and whose it is, is for headland/typeset/corrections to say.
package difference
