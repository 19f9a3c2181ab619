// Package manuscript reads and writes manuscripts: a collection of poems as a
// poet keeps it in a text editor, in Markdown or in plain text.
//
// The format is the same for both kinds; in plain text the signs of emphasis
// are characters like any other, and styles are lost.
//
//	---
//	title: A Book            (front matter: title, poet, language, epigraph)
//	poet: A Poet
//	page: imprint            (a page of the prelims or end matter: see matter.go)
//	text: First published …
//	---
//
//	# A Section              (where a file has both # and ##; else # is a poem)
//	> its epigraph
//
//	## A Poem                (a bare ## is a poem without a title)
//	[subtitle: …]            (also short_title, dedication, form, start, blank, run,
//	                         size, edge, lie and note: see attribute.go)
//	> its epigraph, line by line
//
//	A line of verse
//	    a line indented by an em, with a [gap 2] gap or a [tab 12] tab in it
//	[drop] [right] [indent 1.3] marks at a line's start
//	[page] a page begins here, [together] on the page of the line below
//	[white 2] two lines of white stand above it, besides what parts stanzas
//
//	[page end: stanza break] (a note of where a page ended, passed over in reading)
//
//	### 2                    (a part; a bare ### is a part without a heading)
//
//	[prose]
//	A paragraph, which may run over several lines of the file.
//
//	[place: where and when]
//
// A line of the file is a line of verse; a line with only white on it is a
// stanza break, however many of them stand together. White at the end of a
// line is not content. A backslash before white or before a sign takes it
// literally; alone on a line it is an empty line of verse.
//
// What was guessed, and what could not be kept, is said in notices; what can't
// be read at all is an error in words, naming the file, the line and the
// remedy. The package opens no file: it is given bytes and gives bytes. How a
// collection is kept is headland/pagemodel/sqlite's affair.
package manuscript
