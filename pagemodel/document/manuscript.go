package document

import (
	"strings"

	"headland/pagemodel"
)

// Options say how a manuscript is made. The zero Options are the poems as the poet
// keeps them.
type Options struct {
	Edition bool // this edition's breaks are line ends
	// PageEnds are the lines that begin a page where its end hides the stanza break
	// above them, each with the folio of the page that ends: the break is labelled.
	PageEnds map[pagemodel.LineID]string
	Name     string // of the manuscript, as in "after first proofs"; "" for none
}

// FromCollection is the manuscript of the poems of the book, in their order, with
// what the poet wrote for the prelims and the end matter. Poems left out of the
// book are left out of it.
func FromCollection(c *pagemodel.Collection, o Options) Document {
	about := c.About()
	m := &maker{Options: o, d: Document{Title: about.Title, Author: about.Poet, Language: about.Language}}
	m.words(Title, about.Title)
	m.words(Author, about.Poet)
	m.words(Author, o.Name)
	m.lines(Epigraph, about.Epigraph)
	m.matter(c.Matter(), true)
	for _, e := range c.Order() {
		if e.Section != nil {
			m.titled(Section, e.Section.Title)
			m.lines(Epigraph, e.Section.Epigraph)
			continue
		}
		m.poem(e.Poem)
	}
	m.matter(c.Matter(), false)
	return m.d
}

// maker makes the document of a collection.
type maker struct {
	Options
	d   Document
	end pagemodel.Em // about where the line above ended
}

// words adds a text of its own, line by line, unless it is empty.
func (m *maker) words(style Style, text string) {
	if text != "" {
		m.lines(style, strings.Split(text, "\n"))
	}
}

// lines adds lines as one paragraph, unless there are none.
func (m *maker) lines(style Style, lines []string) {
	if len(lines) == 0 {
		return
	}
	p := Paragraph{Style: style}
	for i, line := range lines {
		if i > 0 {
			p.Runs = append(p.Runs, Run{Mark: LineEnd})
		}
		p.Runs = append(p.Runs, Run{Text: shownLine(line)})
	}
	m.d.Add(p)
}

// shownLine is a line that is not lost where it is empty.
func shownLine(text string) string {
	if text == "" {
		return noBreak
	}
	return text
}

// titled adds a title. One that is empty says so in words, for without a title
// nothing would part a poem from the one before it.
func (m *maker) titled(style Style, title string) {
	if title == "" {
		title = "[no title]"
	}
	m.words(style, title)
}

func (m *maker) label(text string) { m.d.Add(Plain(Label, "["+text+"]")) }

// matter adds the words that the poet wrote for the prelims or for the end matter,
// each piece under a label.
func (m *maker) matter(matter pagemodel.Matter, prelims bool) {
	for _, page := range matter.Pages {
		if page.Kind.Prelim() != prelims || page.Title == "" && len(page.Text) == 0 {
			continue
		}
		m.label("page of the book: " + string(page.Kind))
		m.words(Body, page.Title)
		m.lines(Body, page.Text)
	}
}

func (m *maker) poem(p *pagemodel.Poem) {
	h := p.Head()
	m.titled(Poem, h.Title)
	if h.Short != "" {
		m.words(Label, "[title for contents and running heads: "+h.Short+"]")
	}
	m.words(Subtitle, h.Subtitle)
	m.words(Dedication, h.Dedication)
	m.lines(Epigraph, h.Epigraph)
	m.end = 0
	for i, part := range p.Parts() {
		switch {
		case part.Heading() != "":
			m.words(Heading, part.Heading())
		case i > 0:
			m.label("another part, without a heading")
		}
		for _, s := range part.Stanzas() {
			m.stanza(s)
		}
	}
	m.words(Place, h.Place)
	if h.Note != "" {
		m.label("note, for the notes of the book")
		m.words(Note, h.Note)
	}
}

// stanza adds a stanza of verse as one paragraph, and of prose as one for each of
// its paragraphs.
func (m *maker) stanza(s pagemodel.Stanza) {
	if s.Kind() == pagemodel.Prose {
		for _, l := range s.Lines() {
			m.pageEnd(l)
			m.verse(Prose, []pagemodel.Line{l})
		}
		return
	}
	if len(s.Lines()) == 0 {
		return
	}
	m.pageEnd(s.Lines()[0])
	if !m.Edition {
		m.verse(Verse, s.Lines())
		return
	}
	var lines []pagemodel.Line
	for _, l := range s.Lines() {
		lines = append(lines, l.InEdition()...)
	}
	m.verse(Verse, lines)
}

// pageEnd says that a page end hides the stanza break above a line, where it does.
func (m *maker) pageEnd(below pagemodel.Line) {
	page, hidden := m.PageEnds[below.ID()]
	switch {
	case hidden && page != "":
		m.label("stanza break at the end of page " + page)
	case hidden:
		m.label("stanza break at the end of a page")
	}
}
