// Package session is the one state of an open collection and the doors to it:
// what is set, what is only tried out, where the book lies open, and which line
// is at hand. The window and the command line both come in here, and here alone
// files are opened.
//
// It shows nothing and imports no toolkit (headland/ui does), knows no verbs
// (headland/ui/command does), and decides neither what an edit means
// (headland/pagemodel) nor where a glyph goes (headland/typeset).
//
// A [Session] belongs to one goroutine. What it hands out (collections,
// settings, pages) never changes and may be kept.
package session
