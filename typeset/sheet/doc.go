// Package sheet sets a running order in large type, to be read from: on the window
// and on paper, one leaf after another, and as a card of what comes when.
//
// [New] sets every item with the poet's own line breaks, whatever the book's
// design or this edition does with them. A poem is set as large as its longest line
// allows and, if it can be, so that it stands whole on one leaf; otherwise it is
// parted between stanzas, and within one only where that is deeper than a leaf.
// All ink is headland/typeset's: the package moves its rows and adds words.
//
// It draws nothing, writes no file and keeps no clock.
package sheet
