package corrections

import (
	"fmt"
	"io"
	"strings"
	"unicode/utf8"
)

// mailWidth is how many characters a line of the list has at most. Lines of mail
// should have no more than 78 (RFC 5322, 2.1.1; RFC 3676, 4.2), and 72 leave room
// for the signs that quoting in an answer puts before them.
const mailWidth = 72

// WriteText writes the list as plain text for a mail, UTF-8 with LF: each
// correction under its number, the counting rule last. No line is longer than 72
// characters; what is longer goes on below, indented, so that no line can be taken
// for a quotation, a signature or another correction. The error is the writer's.
func (l *List) WriteText(w io.Writer) error {
	var b strings.Builder
	for _, text := range []string{l.heading(), l.book(), l.span()} {
		if text != "" {
			fold(&b, "", "", text)
		}
	}
	digits := len(fmt.Sprint(len(l.All)))
	for i := range l.All {
		b.WriteByte('\n')
		l.All[i].writeText(&b, digits)
	}
	b.WriteByte('\n')
	fold(&b, "", "", ruleHeading+plain(l.Rule))
	_, err := io.WriteString(w, b.String())
	return err
}

// writeText writes one correction, its number as wide as the list's greatest.
func (c *Correction) writeText(b *strings.Builder, digits int) {
	number := fmt.Sprintf("%*d. ", digits, c.Number)
	margin := strings.Repeat(" ", len(number))
	fold(b, number, margin+"  ", c.where())
	if page := c.onPage(); page != "" {
		fold(b, margin, margin+"  ", page)
	}
	fold(b, margin, margin+"  ", string(c.Change.Kind)+", "+c.whose())
	for _, s := range c.says() {
		head := fmt.Sprintf("%s%-8s", margin, s.label+":")
		fold(b, head, strings.Repeat(" ", len(head)), s.text)
	}
}

// fold writes a text in lines, the first after head, the others after margin. It
// folds at spaces only; a word longer than a line is cut.
func fold(b *strings.Builder, head, margin, text string) {
	line, empty := head, true
	flush := func() {
		b.WriteString(strings.TrimRight(line, " "))
		b.WriteByte('\n')
		line, empty = margin, true
	}
	for _, word := range strings.Split(text, " ") {
		if !empty && utf8.RuneCountInString(line)+1+utf8.RuneCountInString(word) > mailWidth {
			flush()
		}
		if !empty {
			line += " "
		}
		for utf8.RuneCountInString(line)+utf8.RuneCountInString(word) > mailWidth {
			runes := []rune(word)
			fits := mailWidth - utf8.RuneCountInString(line)
			line, word = line+string(runes[:fits]), string(runes[fits:])
			flush()
		}
		line, empty = line+word, false
	}
	flush()
}
