package ui

import (
	"fmt"
	"strings"

	"headland/pagemodel"
	"headland/typeset"
	"headland/typeset/corrections"
)

// pageAsSent is the page as sent that a correction stands on; 0 where it is of
// the whole book, or of what had no page.
func pageAsSent(sent *typeset.Setting, c *corrections.Correction) int {
	if page, ok := sent.PageOfLine(c.Change.Line); ok && c.Change.Line.Line != 0 {
		return page
	}
	if page, ok := sent.PageOfPoem(c.Change.Poem); ok && c.Change.Poem != 0 {
		return page
	}
	return 0
}

// placeWords say where a correction stands, as it was sent.
func placeWords(c *corrections.Correction) string {
	title := c.Title
	if title == "" {
		title = "the book"
	}
	said := []string{title}
	if c.Stanza > 0 {
		said = append(said, fmt.Sprintf("stanza %d", c.Stanza))
	}
	if c.LineNumber > 0 {
		said = append(said, fmt.Sprintf("line %d", c.LineNumber))
	}
	if c.Change.Field != "" {
		said = append(said, c.Change.Field)
	}
	place := strings.Join(said, ", ")
	if c.Page == "" {
		return place
	}
	if c.Row == 0 {
		return place + " · page " + c.Page
	}
	return fmt.Sprintf("%s · page %s, row %d", place, c.Page, c.Row)
}

// wasIs says what stood and what shall stand.
func wasIs(c *corrections.Correction) string {
	was, is := c.Change.Was, c.Change.Is
	if was == "" {
		was = "(nothing)"
	}
	if is == "" {
		is = "(nothing)"
	}
	return was + " → " + is
}

// correctionLine is what the foot of the desk says of corrections of one line.
func correctionLine(all []*corrections.Correction) string {
	said := make([]string, len(all))
	for i, c := range all {
		said[i] = fmt.Sprintf("%d, %s: %s (%s, %s)", c.Number, c.Change.Kind, wasIs(c), c.Whose, c.State)
	}
	return strings.Join(said, " · ") + " · press for the list"
}

// correctionRow is a correction as a row of a list, with what is noted about it.
func correctionRow(c *corrections.Correction, noted pagemodel.Reply) listRow {
	reason := reasonWords(noted.Reason, noted.Shown)
	if noted.Reason == "" {
		reason = reasonWords(c.Reason, true)
	}
	return listRow{
		words: fmt.Sprintf("%d · %s · %s", c.Number, c.Change.Kind, placeWords(c)),
		aside: fmt.Sprintf("%s · %s", c.Whose, c.State),
		under: dotted(wasIs(c), c.Moves, reason, prefixed("asked: ", c.Question), prefixed("answered: ", c.Answer)),
	}
}

// prefixed is words after what they are; "" where there are none.
func prefixed(what, words string) string {
	if words == "" {
		return ""
	}
	return what + words
}

// throughWords say up to when the corrections of a round go.
func throughWords(l *corrections.List) string {
	until := l.Until
	if until == "" {
		until = "today"
	}
	return fmt.Sprintf("Corrections to %s, up to %s · %d", sentWords(l.Round), until, len(l.All))
}
