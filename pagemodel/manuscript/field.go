package manuscript

import "strings"

// A field is what is not verse: a title, an epigraph's line, a note. It has
// characters only, and no white at either end but what a backslash holds.

// readField reads a field; styled says that it had emphasis, which is lost.
func readField(raw string, k Kind) (text string, styled bool) {
	if !strings.ContainsAny(raw, `\[*_`) {
		return raw, false
	}
	lines, _ := readInline(raw, k.fields())
	return lines[0].text, lines[0].spans != nil
}

// writeField writes a field as it is, if it is read so, else with backslashes.
func writeField(text string, k Kind) string {
	if raw, styled := readField(trim(text), k); raw == text && !styled {
		return text
	}
	e := escaper{text: text, grammar: k.fields()}
	var b strings.Builder
	for i, r := range text {
		e.write(&b, i, r)
	}
	return b.String()
}
