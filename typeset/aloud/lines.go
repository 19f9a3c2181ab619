package aloud

import (
	"slices"
	"strings"
	"unicode"

	"headland/pagemodel"
)

// line is one line as it is read: of verse, a paragraph or a heading.
type line struct {
	text  string
	verse bool
	white bool // white stands below it
	steps bool // the next begins below its end
}

// linesOf are the lines of an item as they are said: of a poem, of lines of one,
// or of a text from elsewhere. p is the item's poem, nil for none.
func linesOf(p *pagemodel.Poem, item pagemodel.Item) []line {
	var b builder
	switch {
	case p != nil:
		b.poem(p, item)
	case item.Poem == 0:
		b.text(item)
	}
	return b.lines
}

// builder puts lines one below another.
type builder struct{ lines []line }

// add puts a line below the others; one without words is white.
func (b *builder) add(l line) {
	if wordsIn(l.text) == 0 {
		b.white()
		return
	}
	b.lines = append(b.lines, l)
}

// white puts white below the last line.
func (b *builder) white() {
	if last := len(b.lines) - 1; last >= 0 {
		b.lines[last].white = true
	}
}

// poem adds the lines from the item's first to its last.
func (b *builder) poem(p *pagemodel.Poem, item pagemodel.Item) {
	first, last := extent(p, item)
	n := 0
	for at, l := range p.Lines() {
		if first <= n && n <= last {
			b.open(p, at)
			b.line(l, p.Stanza(at).Kind(), item)
		}
		n++
	}
}

// open begins what begins at a place: a stanza below white, or a part with its
// heading, which is not read where an extract begins further down.
func (b *builder) open(p *pagemodel.Poem, at pagemodel.Place) {
	if at.Line > 0 {
		return
	}
	b.white()
	if heading := p.Parts()[at.Part].Heading(); at.Stanza == 0 && heading != "" {
		b.add(line{text: heading, white: true})
	}
}

// line adds one of the poem's lines.
func (b *builder) line(l pagemodel.Line, kind pagemodel.StanzaKind, item pagemodel.Item) {
	if last := len(b.lines) - 1; last >= 0 {
		b.lines[last].white = b.lines[last].white || l.Above() > 0
		b.lines[last].steps = l.Dropped()
	}
	verse := kind == pagemodel.Verse
	b.add(line{text: asSaid(l.Text(), l.ID(), item.Said), verse: verse, white: !verse})
}

// extent is the first and the last line of an item, counted through the poem from
// 0. An end that is not given, or no longer in the poem, is the poem's own.
func extent(p *pagemodel.Poem, item pagemodel.Item) (first, last int) {
	first, last = 0, p.LineCount()-1
	n := 0
	for _, l := range p.Lines() {
		if holds(l, item.From) {
			first = n
		}
		if holds(l, item.To) {
			last = n
		}
		n++
	}
	return min(first, last), max(first, last)
}

// holds says whether a line is the one of that identity, or took it in.
func holds(l pagemodel.Line, id pagemodel.LineID) bool {
	return id != 0 && (l.ID() == id || slices.ContainsFunc(l.Absorbed(), func(s pagemodel.Seam) bool { return s.Line == id }))
}

// text adds the lines of a poem from elsewhere.
func (b *builder) text(item pagemodel.Item) {
	for text := range strings.SplitSeq(asSaid(item.Text, 0, item.Said), "\n") {
		b.add(line{text: text, verse: true})
	}
}

// asSaid is a text with the words that are said otherwise put in for those that
// are printed. A word that no longer stands there is passed over.
func asSaid(text string, id pagemodel.LineID, said []pagemodel.Saying) string {
	here := slices.DeleteFunc(slices.Clone(said), func(s pagemodel.Saying) bool { return s.Line != id || s.Word == "" })
	slices.SortFunc(here, func(a, b pagemodel.Saying) int { return b.At - a.At })
	for _, s := range here {
		if s.At >= 0 && s.At < len(text) && strings.HasPrefix(text[s.At:], s.Word) {
			text = text[:s.At] + s.As + text[s.At+len(s.Word):]
		}
	}
	return text
}

// tokens are the words of a text with the signs about them: what spaces and dashes
// part.
func tokens(text string) []string {
	found := strings.FieldsFunc(text, func(r rune) bool { return unicode.IsSpace(r) || r == '—' || r == '–' || r == '―' })
	return slices.DeleteFunc(found, func(token string) bool {
		return !strings.ContainsFunc(token, func(r rune) bool { return unicode.IsLetter(r) || unicode.IsDigit(r) || r == '&' })
	})
}

// wordsIn counts the words of a text.
func wordsIn(text string) int { return len(tokens(text)) }
