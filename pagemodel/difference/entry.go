package difference

import (
	"slices"
	"strings"

	"headland/pagemodel"
)

// The fields of a poem's head that do not stand at its head.
const (
	FieldPlace = "place" // below the poem
	FieldNote  = "note"  // in the notes of the end matter
)

// MatterOf is the piece of the prelims or end matter that a field names, or false.
func MatterOf(field string) (pagemodel.MatterKind, bool) {
	field = strings.TrimSuffix(strings.TrimSuffix(field, " page"), " heading")
	kind := pagemodel.MatterKind(field)
	return kind, slices.Contains(pagemodel.MatterKinds, kind)
}

// The fields of an entry's head. Those of the book are followed by the heading and
// the words of each page of the prelims and end matter.
var (
	poemFields    = []string{"title", "short title", "subtitle", "dedication", "epigraph", FieldPlace, FieldNote}
	sectionFields = []string{"section title", "section epigraph"}
	bookFields    = matterFields([]string{"book title", "poet", "book epigraph"})
)

func matterFields(fields []string) []string {
	for _, k := range pagemodel.MatterKinds {
		fields = append(fields, string(k)+" heading", string(k))
	}
	return fields
}

// The names of an entry's values. Those of the book begin with its language and
// whether it has each page of the prelims and end matter.
var (
	poemNames = namesOf(poemValues)
	bookNames = slices.Concat(pagesNamed(), namesOf(matterValues), namesOf(designValues))
)

func pagesNamed() []string {
	names := []string{"language"}
	for _, k := range pagemodel.MatterKinds {
		names = append(names, string(k)+" page")
	}
	return names
}

// fieldsOf are the fields that an entry of that name has.
func fieldsOf(n name) []string {
	switch {
	case n.poem != 0:
		return poemFields
	case n.section != 0:
		return sectionFields
	}
	return bookFields
}

// valuesNamed are the names of the values that an entry of that name has.
func valuesNamed(n name) []string {
	switch {
	case n.poem != 0:
		return poemNames
	case n.section != 0:
		return nil
	}
	return bookNames
}

func nameOf(e pagemodel.Entry) name {
	if e.Poem != nil {
		return name{poem: e.Poem.ID()}
	}
	return name{section: e.Section.ID}
}

// entryOf is a poem or a section's head as text.
func entryOf(e pagemodel.Entry) entry {
	r := entry{name: nameOf(e), fields: tokensOf(fieldTexts(e))}
	if e.Poem != nil {
		r.values = valuesOf(poemValues, e.Poem.Head())
		r.lines = linesOf(e.Poem, false, body{}).tokens
	}
	return r
}

// bookEntry is what is true of the whole book as text.
func bookEntry(c *pagemodel.Collection) entry {
	return entry{fields: tokensOf(bookTexts(c)), values: bookValues(c)}
}

// The values of a page of the prelims and end matter.
const (
	inBook    = "in the book"
	notInBook = "not in the book"
)

func bookValues(c *pagemodel.Collection) []string {
	values := []string{orElse(c.About().Language, "en")}
	for _, k := range pagemodel.MatterKinds {
		_, ok := c.Matter().Page(k)
		values = append(values, map[bool]string{true: inBook, false: notInBook}[ok])
	}
	return slices.Concat(values, valuesOf(matterValues, c.Matter()), valuesOf(designValues, c.Design()))
}

// fieldTexts are the fields of an entry, line by line.
func fieldTexts(e pagemodel.Entry) [][]string {
	if s := e.Section; s != nil {
		return [][]string{{s.Title}, s.Epigraph}
	}
	h := e.Poem.Head()
	return [][]string{{h.Title}, {h.Short}, {h.Subtitle}, {h.Dedication}, h.Epigraph, {h.Place}, {h.Note}}
}

func bookTexts(c *pagemodel.Collection) [][]string {
	about := c.About()
	texts := [][]string{{about.Title}, {about.Poet}, about.Epigraph}
	for _, k := range pagemodel.MatterKinds {
		page, _ := c.Matter().Page(k)
		texts = append(texts, []string{page.Title}, page.Text)
	}
	return texts
}

func tokensOf(texts [][]string) [][]token {
	fields := make([][]token, len(texts))
	for i, text := range texts {
		fields[i] = textOf(text, false).tokens
	}
	return fields
}
