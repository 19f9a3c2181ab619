package difference

import (
	"fmt"
	"slices"
	"strings"

	"headland/pagemodel"
)

// name is what an entry of a text is known by: a poem or a section. The zero name
// is the book itself.
type name struct {
	poem    pagemodel.PoemID
	section pagemodel.SectionID
}

// entry is a poem, a section's head, or what is true of the whole book.
type entry struct {
	name   name
	fields [][]token // the words of its head, as fieldsOf the name
	values []string  // as valuesNamed of the name
	lines  []token   // of a poem
}

// Text is a book as it is to be printed, and what decides how it is set. It holds
// the words, each with its style and with what parts it from the one before. It
// never changes once made.
type Text struct {
	book    entry
	entries []entry // in the order of the book
}

// TextOf is a book's text, its lines ending where this edition ends them.
func TextOf(c *pagemodel.Collection) Text {
	t := Text{book: bookEntry(c), entries: make([]entry, 0, len(c.Order()))}
	for _, e := range c.Order() {
		t.entries = append(t.entries, entryOf(e))
	}
	return t
}

// Equal says that two texts print alike.
func (t Text) Equal(other Text) bool {
	return t.book.equal(&other.book) &&
		slices.EqualFunc(t.entries, other.entries, func(a, b entry) bool { return a.equal(&b) })
}

func (e *entry) equal(other *entry) bool {
	return e.name == other.name && slices.Equal(e.values, other.values) && slices.Equal(e.lines, other.lines) &&
		slices.EqualFunc(e.fields, other.fields, slices.Equal[[]token])
}

// String is the text line by line, for people and for messages of tests: what a
// line has besides its words follows it.
func (t Text) String() string {
	var b strings.Builder
	t.book.write(&b)
	for i := range t.entries {
		b.WriteByte('\n')
		t.entries[i].write(&b)
	}
	return b.String()
}

func (e *entry) write(b *strings.Builder) {
	fields, values := fieldsOf(e.name), valuesNamed(e.name)
	for i, f := range e.fields {
		if !blank(f) {
			fmt.Fprintf(b, "%s: %s\n", fields[i], said(f))
		}
	}
	for i, v := range e.values {
		fmt.Fprintf(b, "%s: %s\n", values[i], v)
	}
	for i := range e.lines {
		e.lines[i].write(b)
	}
	b.WriteByte('\n')
}

func (t *token) write(b *strings.Builder) {
	if t.level > within {
		fmt.Fprintf(b, "\n%s%+v ", []string{"", "", "//", "///"}[t.level], t.boundary)
	} else if plain := (boundary{lead: " "}); t.boundary != plain {
		fmt.Fprintf(b, " %+v ", t.boundary)
	} else {
		b.WriteByte(' ')
	}
	b.WriteString(t.text)
	if t.styles != "" {
		fmt.Fprintf(b, "%v", []byte(t.styles))
	}
	b.WriteString([]string{"", "(empty line)", "(empty stanza)", "(empty part)"}[t.void])
}

// blank says that a field holds nothing.
func blank(tokens []token) bool { return len(tokens) == 1 && tokens[0].void != hasWords }
