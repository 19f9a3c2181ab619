package ui

import (
	"strconv"
	"strings"

	"headland/pagemodel"
)

// rowOf is a row of the sheet in words.
func (s *matterSheet) rowOf(p matterPlace) leafRow {
	about, m := s.w.session.Collection().About(), s.matter()
	page, in := m.Page(p.kind)
	switch p.part {
	case bookName:
		return written("the book", "title", about.Title, "no title yet")
	case bookPoet:
		return written("", "poet", about.Poet, "no name yet")
	case matterPage:
		return s.pageRow(p.kind, in)
	case matterHeading:
		return written("", "    heading", page.Title, usualHeading(p.kind))
	case matterLine:
		name := ""
		if p.line == 0 {
			name = "    words"
		}
		if p.line >= len(page.Text) {
			return written("", name, "", nextLineWords(page))
		}
		return leafRow{name: name, value: page.Text[p.line]}
	case matterRoman:
		return leafRow{group: "all", name: "prelims’ folios", steps: true, value: either(m.Roman, "roman, the poems from 1", "one sequence with the poems")}
	case matterParts:
		return leafRow{name: "in the contents", steps: true, value: either(m.Parts, "poems and their parts", "poems")}
	}
	return leafRow{name: "index", steps: true, value: m.Alphabet.String()}
}

func either(yes bool, one, other string) string {
	if yes {
		return one
	}
	return other
}

// written is a row of the poet's words, or what stands there without any.
func written(group, name, words, without string) leafRow {
	if words == "" {
		return leafRow{group: group, name: name, value: without, quiet: true}
	}
	return leafRow{group: group, name: name, value: words}
}

// pageRow says whether a page is in the book, and where.
func (s *matterSheet) pageRow(kind pagemodel.MatterKind, in bool) leafRow {
	row := leafRow{name: string(kind), steps: true, value: "left out", quiet: true}
	switch kind {
	case pagemodel.MatterKinds[0]:
		row.group = "prelims"
	case pagemodel.Acknowledgements:
		row.group = "end matter"
	}
	if !in {
		return row
	}
	row.value, row.quiet = "in the book", false
	if kind == s.at.kind && s.page > 0 {
		row.value += ", page " + strconv.Itoa(s.page)
	}
	return row
}

// usualHeading is what stands over a page whose heading the poet did not write.
func usualHeading(kind pagemodel.MatterKind) string {
	switch kind {
	case pagemodel.HalfTitle, pagemodel.TitlePage:
		return "the book’s title"
	case pagemodel.Imprint, pagemodel.DedicationPage, pagemodel.EpigraphPage:
		return "none"
	}
	return "the usual one"
}

// nextLineWords are said where a page's next line can be written.
func nextLineWords(page pagemodel.MatterPage) string {
	switch {
	case len(page.Text) > 0:
		return "another line"
	case page.Kind == pagemodel.HalfTitle || page.Kind == pagemodel.TitlePage:
		return "made from the book: or write others"
	case page.Kind.Made():
		return "made from the book: write to add"
	}
	return "nothing yet: write a line"
}

// text is what a row that is written holds.
func (s *matterSheet) text(p matterPlace) string {
	about := s.w.session.Collection().About()
	page, _ := s.matter().Page(p.kind)
	switch {
	case p.part == bookName:
		return about.Title
	case p.part == bookPoet:
		return about.Poet
	case p.part == matterHeading:
		return page.Title
	case p.line < len(page.Text):
		return page.Text[p.line]
	}
	return ""
}

// edit is what writing a text in a row does; nil where it changes nothing.
func (s *matterSheet) edit(p matterPlace, text string) pagemodel.Edit {
	if text == s.text(p) {
		return nil
	}
	about := s.w.session.Collection().About()
	switch p.part {
	case bookName:
		about.Title = strings.TrimSpace(text)
		return pagemodel.SetAbout{About: about}
	case bookPoet:
		about.Poet = strings.TrimSpace(text)
		return pagemodel.SetAbout{About: about}
	}
	page, _ := s.matter().Page(p.kind)
	page.Kind = p.kind
	if p.part == matterHeading {
		page.Title = strings.TrimSpace(text)
		return pagemodel.SetMatter{Matter: s.matter().With(page)}
	}
	lines := s.linesTo(p.line + 1)
	lines[p.line] = text
	return s.lines(p.kind, lines)
}

// lines gives a page other lines, less any white after the last.
func (s *matterSheet) lines(kind pagemodel.MatterKind, lines []string) pagemodel.Edit {
	for len(lines) > 0 && lines[len(lines)-1] == "" {
		lines = lines[:len(lines)-1]
	}
	if len(lines) == 0 {
		lines = nil
	}
	page, _ := s.matter().Page(kind)
	page.Kind, page.Text = kind, lines
	return pagemodel.SetMatter{Matter: s.matter().With(page)}
}
