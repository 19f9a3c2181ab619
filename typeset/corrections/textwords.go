package corrections

import (
	"fmt"
	"strings"
	"unicode"

	"headland/pagemodel"
)

// heading says what the list is: "Corrections to first proofs".
func (l *List) heading() string { return "Corrections to " + plain(l.Round.Name) }

// book names the book and the poet, as far as they have names.
func (l *List) book() string {
	title, poet := plain(l.About.Title), plain(l.About.Poet)
	switch {
	case title == "":
		return poet
	case poet == "":
		return title
	}
	return title + ", by " + poet
}

// span says from when to when the list goes, and how long it is.
func (l *List) span() string {
	until := "today"
	if l.Until != "" {
		until = plain(l.Until)
	}
	sent := ""
	if l.Round.On != "" {
		sent = ", sent on " + plain(l.Round.On)
	}
	count := "no correction"
	switch n := len(l.All); {
	case n == 1:
		count = "1 correction"
	case n > 1:
		count = fmt.Sprint(n, " corrections")
	}
	return fmt.Sprintf("From %s%s, to %s: %s.", plain(l.Round.Name), sent, until, count)
}

// ruleHeading stands before the counting rule.
const ruleHeading = "How corrections are counted: "

// where says where a correction stands in the text: "Sign, stanza 2, line 3".
func (c *Correction) where() string {
	words := []string{"the book"}
	if c.Title != "" {
		words[0] = plain(c.Title)
	}
	if c.Change.Field != "" {
		words = append(words, plain(c.Change.Field))
	}
	if c.Stanza > 0 {
		words = append(words, fmt.Sprint("stanza ", c.Stanza))
	}
	if c.LineNumber > 0 {
		words = append(words, fmt.Sprint("line ", c.LineNumber))
	}
	return strings.Join(words, ", ")
}

// onPage says where it stands on the pages that went out: "page 14, row 7"; "" where
// it stands on none.
func (c *Correction) onPage() string {
	switch {
	case c.Page == "":
		return ""
	case c.Row == 0:
		return "page " + plain(c.Page)
	}
	return fmt.Sprintf("page %s, row %d", plain(c.Page), c.Row)
}

// whose is whose alteration it is, in words and by its letters.
func (c *Correction) whose() string {
	who := c.letters()
	return fmt.Sprintf("%s (%s)", who.Words(), string(who))
}

// letters are the author's where nobody says otherwise.
func (c *Correction) letters() pagemodel.Whose {
	if c.Whose == "" {
		return pagemodel.Authors
	}
	return c.Whose
}

// said is something said of a correction, under a label.
type said struct{ label, text string }

// says is all that is said of a correction besides its kind and place, in the order
// in which it is read. What is empty is left out, but not what was and what shall
// be.
func (c *Correction) says() []said {
	list := []said{{"was", orNothing(c.Change.Was)}, {"is", orNothing(c.Change.Is)}}
	for _, s := range []said{{"moves", c.Moves}, {"reason", c.Reason}, {"state", c.State.String()}, {"query", c.Question}, {"answer", c.Answer}} {
		if s.text = plain(s.text); s.text != "" {
			list = append(list, s)
		}
	}
	return list
}

// orNothing says in words that there is nothing.
func orNothing(text string) string {
	if text = plain(text); text == "" {
		return "(nothing)"
	}
	return text
}

// plain is a text on one line: an end of line in it and every control character
// become a space.
func plain(text string) string {
	return strings.Map(func(r rune) rune {
		if unicode.IsControl(r) || r == '\u2028' || r == '\u2029' {
			return ' '
		}
		return r
	}, text)
}
