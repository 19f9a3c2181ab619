// Package corrections makes the list of corrections of a round: what differs from
// the pages that went out, numbered, with the page and the row as they were sent,
// whether any page moves, whose alteration it is and what became of it.
//
// What differs is found by headland/pagemodel/difference. A list is a plain value;
// the other files of the package write it down for people and programs.
package corrections
