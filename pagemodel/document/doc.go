// Package document makes text documents for word processors: a manuscript as the
// poet revised it, and lists for an editor.
//
// A [Document] is paragraphs and tables, each paragraph with a named style. It is
// written as Office Open XML (ECMA-376, ISO/IEC 29500: .docx) and as OpenDocument
// (ISO/IEC 26300: .odt), by the standard library alone; the same document gives the
// same bytes. Titles have an outline level, so that a word processor shows the
// sections, poems and parts beside the text.
//
// What has no place in such a file is kept in the nearest thing that word
// processors, and programs that convert their files, all keep:
//
//   - A stanza is one paragraph, with line ends in it. A paragraph for each line
//     would have an indent and a range of its own, but converters give every
//     paragraph white above it, pass over empty paragraphs, and take an indented
//     one for a quotation: of the three the stanzas would be lost.
//   - An indent or a gap is em spaces, and an en space or a four-per-em space for
//     what remains, let out or drawn in to the exact width. They are the spaces
//     that headland/pagemodel/manuscript reads as an indent.
//   - A line of white, or an empty line, holds a no-break space: line ends at a
//     paragraph's edge are passed over too.
//   - A tab stop is a tab stop. In a stanza whose lines are ranged differently, the
//     centre and the right edge are tab stops too.
//   - A dropped line is indented by about as much as the line above it is long.
//
// What concerns pages alone (where a page begins, which lines keep together, a
// poem's size) is left out: it is in the collection's file, not in its text.
package document
