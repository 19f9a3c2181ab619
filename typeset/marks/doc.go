// Package marks draws corrections on the pages that went out, as a reader of
// proofs does: every one twice, in the text where it is and in the margin what
// it is.
//
// The shapes are our own drawing after the geometry that is published for proof
// marks (descriptions of BS 5261 part 2 and of the practice before it, at second
// hand; summaries of New Hart's Rules 2.2). No conformity with any standard is
// claimed. That insertion, deletion, substitution, transposition, italic, run on
// and query look so is well attested; new line, taking over and back, indents and
// opening a stanza less well; closing a stanza is a guess.
//
// In the margin stand, in this order, the new matter in a face of the book, the
// mark, a "?" in a circle where the correction has been queried, the stroke that
// ends it, and its number in the list with the letters of whose it is, so that
// nothing is told by colour alone. What is circled is an instruction and is not to
// be set. Where new matter is too long for the margin the number says where it is
// to be read: "see 12". What is said of a line that is new stands behind the mark
// for a new line, and in the text at the words that are to begin it.
//
// Several corrections of a row stand in the order in which they come along the
// line. The outer margin takes them; where those of one row don't fit beside each
// other, or where the outer margin is taken up by the rows above, the ones in the
// half of the line towards the spine go to the inner margin. What still finds no
// place level with its row stands lower, and a thin line leads to it.
//
// What lies on its side is marked on its side, in the margins at its rows' two
// ends. The package finds no corrections and draws no ink: see
// headland/typeset/corrections, and headland/typeset/pdf and raster.
package marks
