package session

import (
	"strings"

	"headland/typeset"
	"headland/typeset/pdf"
)

// outlineOf is the book as a reader lists it beside the pages: the pieces of the
// prelims, the poems under their sections, the pieces of the end matter.
func outlineOf(set *typeset.Setting) []pdf.Bookmark {
	prelims, end := matterMarks(set)
	marks := append(prelims, poemMarks(set.Contents())...)
	return append(marks, end...)
}

// matterMarks are the pieces before and after the poems, each where it opens,
// under its own heading or, where it has none, by what it is.
func matterMarks(set *typeset.Setting) (prelims, end []pdf.Bookmark) {
	for _, piece := range set.Collection().Matter().Pages {
		page, ok := set.PageOfMatter(piece.Kind)
		if !ok {
			continue
		}
		mark := pdf.Bookmark{Title: piece.Title, Page: page - 1}
		if mark.Title == "" {
			kind := string(piece.Kind)
			mark.Title = strings.ToUpper(kind[:1]) + kind[1:]
		}
		if piece.Kind.Prelim() {
			prelims = append(prelims, mark)
		} else {
			end = append(end, mark)
		}
	}
	return prelims, end
}

// poemMarks are the contents, poems under their sections.
func poemMarks(contents []typeset.ContentsEntry) []pdf.Bookmark {
	var marks []pdf.Bookmark
	inSection := false
	for _, entry := range contents {
		mark := pdf.Bookmark{Title: entry.Title, Page: entry.Page - 1}
		if inSection && !entry.Section {
			section := &marks[len(marks)-1]
			section.Under = append(section.Under, mark)
			continue
		}
		inSection = inSection || entry.Section
		marks = append(marks, mark)
	}
	return marks
}
