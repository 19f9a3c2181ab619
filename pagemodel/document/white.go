package document

import (
	"strings"
	"unicode/utf8"

	"headland/pagemodel"
)

// noBreak stands on a line that is otherwise empty.
const noBreak = "\u00a0"

// The spaces that white is made of, by their widths (The Unicode Standard, table
// 6-2).
const (
	emSpace, enSpace, fourPerEm = "\u2003", "\u2002", "\u2005"
	fourth                      = pagemodel.OneEm / 4
)

// spaces is white of a width as characters, at least one, and by how much each of
// them must be let out (or, less than nothing, drawn in) for the exact width.
func spaces(width pagemodel.Em) (text string, each pagemodel.Em) {
	quarters := max(1, int(width+fourth/2)/int(fourth))
	text = strings.Repeat(emSpace, quarters/4)
	if quarters&2 != 0 {
		text += enSpace
	}
	if quarters&1 != 0 {
		text += fourPerEm
	}
	over := width - pagemodel.Em(quarters)*fourth
	return text, over / pagemodel.Em(utf8.RuneCountInString(text))
}

// letterWidth is about how wide a character of verse is set, spaces counted in
// (measured by no one: for the indent of dropped lines only).
const letterWidth = 42 * pagemodel.OneEm / 100

// widthOf is about how wide a text is.
func widthOf(text string) pagemodel.Em {
	return letterWidth * pagemodel.Em(utf8.RuneCountInString(text))
}
