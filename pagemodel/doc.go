// Package pagemodel says what is true of a book of poems: its words, from the
// collection down to the line, the page that they are to stand on, and the
// edits that change either.
//
// Everything here is a value. A [Collection] never changes once made; an [Edit]
// gives the next one, sharing all that it did not touch, so an older collection
// can be kept as long as somebody wants it. Nothing here measures type
// (headland/typeset does), keeps a file (headland/pagemodel/sqlite) or reads a
// manuscript (headland/pagemodel/manuscript). The package imports the standard
// library only.
package pagemodel
