package sheet

import (
	"slices"
	"strings"

	"headland/pagemodel"
	"headland/typeset"
)

// source is the words of an item, or of something said, as they are to be set.
type source struct {
	title   string
	head    pagemodel.PoemHead // what else stands over the verse
	place   string
	parts   []pagemodel.Part
	lines   []pagemodel.Line // of the parts, in order
	poem    pagemodel.PoemID // 0: from elsewhere
	starts  []int            // of a text's lines, their byte offsets
	instead string           // of lines, where there can be none
}

// sourceOf is what an item reads. One whose poem is no longer in the file, and one
// that is only said, has no lines.
func sourceOf(c *pagemodel.Collection, item pagemodel.Item) source {
	if item.Poem == 0 {
		return sourceOfText(item.Title, item.Text)
	}
	p := poemOf(c, item.Poem)
	if p == nil {
		return source{title: item.Title, instead: "(This poem is no longer in the file.)"}
	}
	h := p.Head()
	s := source{title: h.Title, poem: p.ID(), parts: p.Parts(), place: h.Place}
	s.head = pagemodel.PoemHead{Subtitle: h.Subtitle, Dedication: h.Dedication, Epigraph: h.Epigraph}
	if parts, ok := extract(p, item.From, item.To); ok {
		s.parts, s.head, s.place = parts, pagemodel.PoemHead{}, ""
		if s.title != "" {
			s.title = "from " + s.title
		}
	}
	s.lines = linesOf(s.parts)
	return s
}

// poemOf is a poem of the file, in the book or left out, or nil.
func poemOf(c *pagemodel.Collection, id pagemodel.PoemID) *pagemodel.Poem {
	if p, _, ok := c.Poem(id); ok {
		return p
	}
	if i := slices.IndexFunc(c.LeftOut(), func(p *pagemodel.Poem) bool { return p.ID() == id }); i >= 0 {
		return c.LeftOut()[i]
	}
	return nil
}

// sourceOfText is a poem from elsewhere: a line each, stanzas parted by empty
// lines. Its lines are numbered from 1.
func sourceOfText(title, text string) source {
	var stanzas []pagemodel.Stanza
	var starts []int
	for _, stanza := range stanzasIn(text) {
		lines := make([]pagemodel.Line, len(stanza))
		for i, line := range stanza {
			starts = append(starts, line.at)
			lines[i] = pagemodel.NewLine(pagemodel.LineID(len(starts)), line.text)
		}
		stanzas = append(stanzas, pagemodel.NewStanza(pagemodel.Verse, lines))
	}
	parts := []pagemodel.Part{pagemodel.NewPart("", stanzas)}
	return source{title: title, parts: parts, lines: linesOf(parts), starts: starts}
}

// textLine is a line of a text, and the byte offset at which it begins.
type textLine struct {
	text string
	at   int
}

// stanzasIn are the lines of a text, stanza by stanza, spaces at their ends left
// out.
func stanzasIn(text string) [][]textLine {
	var stanzas [][]textLine
	open, at := false, 0
	for _, line := range strings.SplitAfter(text, "\n") {
		l := textLine{strings.TrimRight(line, " \t\r\n"), at}
		at += len(line)
		if l.text == "" {
			open = false
			continue
		}
		if !open {
			stanzas, open = append(stanzas, nil), true
		}
		last := len(stanzas) - 1
		stanzas[last] = append(stanzas[last], l)
	}
	return stanzas
}

// sourceOfTalk is what is said, each line a paragraph in a style.
func sourceOfTalk(text string, style pagemodel.Style) source {
	var stanzas []pagemodel.Stanza
	for _, lines := range stanzasIn(text) {
		for _, line := range lines {
			l := pagemodel.NewLine(0, line.text).WithSpans([]pagemodel.Span{{End: len(line.text), Style: style}})
			stanzas = append(stanzas, pagemodel.NewStanza(pagemodel.Prose, []pagemodel.Line{l}))
		}
	}
	parts := []pagemodel.Part{pagemodel.NewPart("", stanzas)}
	return source{parts: parts, lines: linesOf(parts)}
}

// extract is the parts of a poem from one of its lines to another; false where it
// is the whole poem, or the lines are no longer in it.
func extract(p *pagemodel.Poem, from, to pagemodel.LineID) ([]pagemodel.Part, bool) {
	_, begins := p.Find(from)
	_, ends := p.Find(to)
	if !begins && !ends {
		return nil, false
	}
	inside, over := !begins, false
	var parts []pagemodel.Part
	for _, part := range p.Parts() {
		heading, stanzas := part.Heading(), []pagemodel.Stanza(nil)
		if !inside {
			heading = ""
		}
		for _, s := range part.Stanzas() {
			var lines []pagemodel.Line
			for _, l := range s.Lines() {
				inside = inside || l.ID() == from
				if inside && !over {
					lines = append(lines, l)
				}
				over = over || inside && l.ID() == to
			}
			if len(lines) > 0 {
				stanzas = append(stanzas, pagemodel.NewStanza(s.Kind(), lines))
			}
		}
		if len(stanzas) > 0 {
			parts = append(parts, pagemodel.NewPart(heading, stanzas))
		}
	}
	return parts, true
}

func linesOf(parts []pagemodel.Part) []pagemodel.Line {
	var lines []pagemodel.Line
	for _, part := range parts {
		for _, s := range part.Stanzas() {
			lines = append(lines, s.Lines()...)
		}
	}
	return lines
}

// printedPage is the folio of the book's page on which a line of the source stands,
// "" where it stands in none.
func (s *source) printedPage(book *typeset.Setting, line pagemodel.LineID) string {
	if page, ok := book.PageOfLine(pagemodel.LineRef{Poem: s.poem, Line: line}); ok {
		return book.FolioOf(page)
	}
	if page, ok := book.PageOfPoem(s.poem); ok {
		return book.FolioOf(page)
	}
	return ""
}
