// Package choices says what each way of settling a line would do: breaking it in
// the poem or in this edition, letting it turn, or changing the space round it.
// Each is an edit, done on the collection and set, and what is said of it is read
// from the pages that come of it.
//
// It describes and never judges: no choice is good or bad, and none is ranked.
// It changes nothing: whoever asked does the edit. How words sound and how lines
// end is told by typeset/prosody, where every line stands by typeset.
package choices
