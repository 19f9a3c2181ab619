package command

import (
	"fmt"
	"slices"
	"strings"

	"headland/pagemodel"
	"headland/ui/session"
)

// headFields are the fields of a poem's head that are not edits of their own.
var headFields = []string{
	"title", "short_title", "subtitle", "dedication", "epigraph", "place", "note", "size_pt", "edge", "lie",
}

// makeHead changes those fields of a poem's head that are there.
func makeHead(f *fields, s *session.Session) pagemodel.Edit {
	p := f.poem("poem", s)
	if f.err == nil && !f.hasAny(headFields) {
		f.err = fmt.Errorf(`"head" needs something to change: one of %s`, strings.Join(headFields, ", "))
	}
	if f.err != nil {
		return nil
	}
	h := p.Head()
	for name, words := range map[string]*string{
		"title": &h.Title, "short_title": &h.Short, "subtitle": &h.Subtitle, "dedication": &h.Dedication, "place": &h.Place, "note": &h.Note,
	} {
		f.take(name, words, "words in quotation marks")
	}
	f.lineByLine("epigraph", &h.Epigraph)
	f.ownSize(&h)
	if f.has("edge") {
		parsed(f, "edge", &h.Edge, pagemodel.ParseEdge)
	}
	if f.has("lie") {
		parsed(f, "lie", &h.Lie, pagemodel.ParseLie)
	}
	return pagemodel.SetHead{Poem: p.ID(), Head: h}
}

// ownSize takes a poem's own size, 0 for the design's.
func (f *fields) ownSize(h *pagemodel.PoemHead) {
	if !f.has("size_pt") {
		return
	}
	h.Size = pagemodel.Pt(f.number("size_pt"))
	if h.Size != 0 && (h.Size < pagemodel.Pt(4) || h.Size > pagemodel.Pt(72)) && f.err == nil {
		f.err = fmt.Errorf("type of %v can't be set: choose a size from 4pt to 72pt, or 0 for the book's", h.Size)
	}
}

func (f *fields) hasAny(names []string) bool { return slices.ContainsFunc(names, f.has) }

// lineByLine takes lines of words, in a value that nobody else holds.
func (f *fields) lineByLine(name string, lines *[]string) {
	if !f.has(name) {
		return
	}
	var given []string
	f.take(name, &given, `a list of lines, as in ["one","two"]`)
	*lines = given
}

// makeMatter puts in, changes or takes out a page of the prelims or the end
// matter, or says something of all of them.
func makeMatter(f *fields, s *session.Session) pagemodel.Edit {
	m := s.Collection().Matter()
	switch {
	case f.has("kind"):
		m = f.matterPage(m)
	case f.hasAny([]string{"title", "text", "off"}) && f.err == nil:
		f.err = fmt.Errorf(`"matter" needs "kind", which page is meant: one of %s`, matterKinds())
	case !f.hasAny([]string{"roman", "parts", "alphabet"}) && f.err == nil:
		f.err = fmt.Errorf(`"matter" needs something to do: "kind", a page to put in, or one of roman, parts, alphabet`)
	}
	f.take("roman", &m.Roman, "true or false")
	f.take("parts", &m.Parts, "true or false")
	if f.has("alphabet") {
		parsed(f, "alphabet", &m.Alphabet, pagemodel.ParseAlphabet)
	}
	return pagemodel.SetMatter{Matter: m}
}

// matterPage is the matter with the page that is meant put in or taken out.
func (f *fields) matterPage(m pagemodel.Matter) pagemodel.Matter {
	page, there := m.Page(pagemodel.MatterKind(f.text("kind")))
	page.Kind = pagemodel.MatterKind(f.text("kind"))
	if !slices.Contains(pagemodel.MatterKinds, page.Kind) && f.err == nil {
		f.err = fmt.Errorf("%q is no page of a book's prelims or end matter: it is one of %s", string(page.Kind), matterKinds())
	}
	if !f.yes("off") {
		f.take("title", &page.Title, "words in quotation marks")
		f.lineByLine("text", &page.Text)
		return m.With(page)
	}
	if f.err == nil && (f.has("title") || f.has("text")) {
		f.err = fmt.Errorf(`"off" takes the page out, so it can't have a title or text: leave them out`)
	}
	if f.err == nil && !there {
		f.err = fmt.Errorf("the book has no page of the kind %q to take out", string(page.Kind))
	}
	return m.Without(page.Kind)
}

func matterKinds() string {
	names := make([]string, len(pagemodel.MatterKinds))
	for i, k := range pagemodel.MatterKinds {
		names[i] = string(k)
	}
	return strings.Join(names, ", ")
}

// aboutFields are what is true of the whole book.
var aboutFields = []string{"title", "poet", "language", "epigraph"}

// makeAbout changes what is there of it.
func makeAbout(f *fields, s *session.Session) pagemodel.Edit {
	a := s.Collection().About()
	if !f.hasAny(aboutFields) && f.err == nil {
		f.err = fmt.Errorf(`"about" needs something to change: one of %s`, strings.Join(aboutFields, ", "))
	}
	for name, words := range map[string]*string{"title": &a.Title, "poet": &a.Poet, "language": &a.Language} {
		f.take(name, words, "words in quotation marks")
	}
	f.lineByLine("epigraph", &a.Epigraph)
	return pagemodel.SetAbout{About: a}
}
