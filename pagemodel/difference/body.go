package difference

import (
	"slices"
	"strings"

	"headland/pagemodel"
)

// linesOf are a poem's lines as they are printed in this edition, read into the
// room of a body that is done with. Sources are noted only where they are wanted.
func linesOf(p *pagemodel.Poem, sources bool, room body) body {
	r := reader{noted: sources, body: body{room.tokens[:0], room.sources[:0]}}
	for _, part := range p.Parts() {
		r.part(part)
	}
	return r.body
}

// textOf is a field's lines.
func textOf(lines []string, sources bool) body {
	r := reader{noted: sources}
	for i, text := range lines {
		l := pagemodel.NewLine(0, text)
		first := boundary{level: lineEnd}
		if i == 0 {
			first = boundary{level: partEnds}
		}
		r.line(&l, first)
		r.offset += len(text) + 1
	}
	if len(lines) == 0 {
		r.add(boundary{level: partEnds}, word{void: emptyLine}, source{})
	}
	return r.body
}

// reader reads lines as tokens.
type reader struct {
	body
	noted  bool
	offset int              // of a field's line in its text
	tied   bool             // the line above is tied to the one to come
	below  bool             // something of the poem stands above, in its lines or headings
	words  []pagemodel.Word // of the line at hand
}

func (r *reader) add(b boundary, w word, s source) {
	r.tokens = append(r.tokens, token{b, w})
	if r.noted {
		s.start, s.end = s.start+r.offset, s.end+r.offset
		r.sources = append(r.sources, s)
	}
}

func (r *reader) part(part pagemodel.Part) {
	first := boundary{level: partEnds, heading: part.Heading()}
	r.below = r.below || part.Heading() != ""
	for _, s := range part.Stanzas() {
		first.kind = int8(s.Kind())
		for i := range s.Lines() {
			r.line(&s.Lines()[i], first)
			first = boundary{level: lineEnd}
		}
		if len(s.Lines()) == 0 {
			r.add(first, word{void: emptyStanza}, source{})
		}
		first = boundary{level: stanza}
	}
	if len(part.Stanzas()) == 0 {
		r.add(first, word{void: emptyPart}, source{})
	}
}

// line reads one of the poet's lines: as many printed lines as this edition
// makes of it. White at its end is not printed, nor is white above the line that a
// poem begins with.
func (r *reader) line(l *pagemodel.Line, first boundary) {
	first.look = look{l.Indent(), int32(l.Above()), int8(l.Range()), l.Dropped(), l.OpensPage(), r.tied}
	if !r.below {
		first.look.above = 0
	}
	r.tied, r.below = l.Tied(), true
	text, styles := l.Text(), stylesOf(l)
	r.words = wordsOf(l, r.words[:0])
	words := r.words
	if len(words) == 0 {
		r.add(first, word{void: emptyLine}, source{line: l.ID()})
		return
	}
	plain := len(l.Breaks()) == 0 && len(l.Gaps()) == 0 && len(l.Turns()) == 0
	before, end := -1, 0
	for i, w := range words {
		b := boundary{}
		if i == 0 {
			b = first
		}
		if !plain {
			b = marked(l, b, i == 0, before, w.Start)
		}
		if i == 0 || b.level == within {
			b.lead, b.leadStyles = text[end:w.Start], cutStyles(styles, end, w.Start)
		}
		r.add(b, word{text: text[w.Start:w.End], styles: cutStyles(styles, w.Start, w.End)}, source{l.ID(), w.Start, w.End})
		before, end = w.Start, w.End
	}
}

// marked is a boundary with what the line has there: a break of this edition, a
// gap, a turn. They belong to the word that begins at or next after them. A printed
// line has no gap before its first character, and none turns there.
func marked(l *pagemodel.Line, b boundary, first bool, before, start int) boundary {
	here := func(at int) bool { return max(0, before) < at && at <= start }
	if !first && slices.ContainsFunc(l.Breaks(), here) {
		b.level, b.look = lineEnd, look{indent: l.Indent(), rng: int8(l.Range())}
		return b
	}
	var gaps []string
	for _, g := range l.Gaps() {
		switch {
		case here(g.At) && g.Tab:
			gaps = append(gaps, "a tab to "+ems(g.Width))
		case here(g.At):
			gaps = append(gaps, ems(g.Width)+" of white")
		}
	}
	b.gap = strings.Join(gaps, " and ")
	b.turn = !first && slices.ContainsFunc(l.Turns(), here)
	return b
}

// wordsOf adds the line's words to others, parted where it has a gap, a break or a
// turn within one.
func wordsOf(l *pagemodel.Line, words []pagemodel.Word) []pagemodel.Word {
	words = appendWords(words, l.Text())
	for _, g := range l.Gaps() {
		words = parted(words, g.At)
	}
	for _, at := range l.Breaks() {
		words = parted(words, at)
	}
	for _, at := range l.Turns() {
		words = parted(words, at)
	}
	return words
}

func parted(words []pagemodel.Word, at int) []pagemodel.Word {
	for i, w := range words {
		if w.Start < at && at < w.End {
			words[i].End = at
			return slices.Insert(words, i+1, pagemodel.Word{Start: at, End: w.End})
		}
	}
	return words
}

// appendWords is [pagemodel.Words] for a great many lines: it makes no room of its
// own, and tells the commonest characters from spaces at a glance.
func appendWords(words []pagemodel.Word, text string) []pagemodel.Word {
	start := -1
	for i, r := range text {
		switch {
		case (r <= ' ' || r > '~') && pagemodel.IsSpace(r):
			if start >= 0 {
				words = append(words, pagemodel.Word{Start: start, End: i})
			}
			start = -1
		case start < 0:
			start = i
		}
	}
	if start >= 0 {
		words = append(words, pagemodel.Word{Start: start, End: len(text)})
	}
	return words
}
