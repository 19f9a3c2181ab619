package manuscript

import (
	"fmt"
	"strings"
	"unicode"
	"unicode/utf8"
)

const (
	// maxLine is how many bytes of text a line of verse or a paragraph has.
	maxLine = 64 << 10
	// maxRow is how many bytes a line of the file has: with every character of
	// the longest text marked and escaped.
	maxRow = 2 << 20
)

// row is a line of the file without the white at its end.
type row struct {
	number int // from 1
	text   string
}

// blank says that nothing stands in the row, or only the label of a page end.
func (r row) blank() bool { return r.text == "" || r.text == pageEndLabel }

// splitRows parts a manuscript into its lines. They end with LF, CR LF or CR,
// and so they are numbered; VT, U+0085 and U+2028 end a line as well, a form
// feed and U+2029 a stanza.
func splitRows(name, text string) ([]row, []Notice, error) {
	var rows []row
	c := cleaner{}
	for n := 1; text != ""; n++ {
		var line string
		line, text = cutLine(text)
		if len(line) > maxRow {
			return nil, nil, tooLong(name, n)
		}
		for _, piece := range c.pieces(line, n) {
			rows = append(rows, row{n, trimRight(piece)})
		}
	}
	return rows, c.notices(name), nil
}

func tooLong(name string, line int) error {
	return fmt.Errorf("%s, line %d is longer than %d KB: end lines where the verse does, and save it again", name, line, maxLine>>10)
}

func cutLine(text string) (line, rest string) {
	i := strings.IndexAny(text, "\r\n")
	switch {
	case i < 0:
		return text, ""
	case strings.HasPrefix(text[i:], "\r\n"):
		return text[:i], text[i+2:]
	}
	return text[:i], text[i+1:]
}

// lineEnds are the characters other than LF and CR that end a line or, as a
// form feed and a paragraph separator do, leave white as well.
var lineEnds = strings.NewReplacer("\v", "\n", "\u0085", "\n", "\u2028", "\n", "\u2029", "\n\n", "\f", "\n\n")

// cleaner takes out the characters that no text has: the C0 controls but the
// tab, and DEL. C1 controls are Windows-1252 that somebody has passed off as
// Latin-1, and become what was meant. Format characters stay.
type cleaner struct {
	dropped, meant         int
	firstDropped, firstFix int
}

func isControl(r rune) bool {
	return r < 0x20 && r != '\t' || r >= 0x7F && r < 0xA0 || r == 0x2028 || r == 0x2029
}

func (c *cleaner) pieces(line string, n int) []string {
	if strings.IndexFunc(line, isControl) < 0 {
		return []string{line}
	}
	return strings.Split(strings.Map(func(r rune) rune { return c.clean(r, n) }, lineEnds.Replace(line)), "\n")
}

func (c *cleaner) clean(r rune, n int) rune {
	if r == '\n' || !isControl(r) {
		return r
	}
	if w := windows(r); !isControl(w) {
		if c.meant++; c.meant == 1 {
			c.firstFix = n
		}
		return w
	}
	if c.dropped++; c.dropped == 1 {
		c.firstDropped = n
	}
	return -1
}

func (c *cleaner) notices(name string) []Notice {
	var list []Notice
	if c.dropped > 0 {
		list = append(list, Notice{name, c.firstDropped, counted(c.dropped, "control character") + " left out, the first here: they are no text"})
	}
	if c.meant > 0 {
		list = append(list, Notice{name, c.firstFix, counted(c.meant, "character") + " read as Windows-1252, the first here: look at its quotation marks and dashes"})
	}
	return list
}

// trimRight takes away the white at the end, all but a character that a
// backslash holds.
func trimRight(s string) string {
	t := strings.TrimRightFunc(s, unicode.IsSpace)
	if len(t) == len(s) || !endsInEscape(t) {
		return t
	}
	_, n := utf8.DecodeRuneInString(s[len(t):])
	return s[:len(t)+n]
}

// endsInEscape says that the last backslash is not itself escaped.
func endsInEscape(s string) bool {
	return (len(s)-len(strings.TrimRight(s, `\`)))%2 == 1
}

// trim takes away the white at both ends, all but what a backslash holds.
func trim(s string) string {
	return trimRight(strings.TrimLeftFunc(s, unicode.IsSpace))
}
