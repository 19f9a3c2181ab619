package manuscript

import (
	"strings"
	"unicode"

	"headland/pagemodel"
)

const proseMark = "[prose]"

// stanzas reads the stanzas of a part.
func (m *source) stanzas(rows []row) ([]pagemodel.Stanza, error) {
	var stanzas []pagemodel.Stanza
	for len(rows) > 0 {
		prose := 0
		for len(rows) > 0 && (rows[0].blank() || isProse(rows[0])) {
			if isProse(rows[0]) {
				prose = rows[0].number
			}
			rows = rows[1:]
		}
		n := stanzaLength(rows)
		if n == 0 {
			if prose > 0 {
				m.notice(prose, "nothing follows %s: it was left out", proseMark)
			}
			break
		}
		s, err := m.stanza(rows[:n], prose > 0)
		if err != nil {
			return nil, err
		}
		stanzas, rows = append(stanzas, s), rows[n:]
	}
	return stanzas, nil
}

func isProse(r row) bool { return strings.TrimSpace(r.text) == proseMark }

// stanzaLength is how many rows the stanza has that the rows begin with.
func stanzaLength(rows []row) int {
	for i, r := range rows {
		if r.blank() || isProse(r) {
			return i
		}
	}
	return len(rows)
}

func (m *source) stanza(rows []row, prose bool) (pagemodel.Stanza, error) {
	kind := pagemodel.Verse
	if prose {
		kind, rows = pagemodel.Prose, []row{joined(rows)}
	}
	starts := make([]lineStart, len(rows))
	raw := make([]string, len(rows))
	for i, r := range rows {
		starts[i], raw[i] = readStart(r.text)
		m.doubt(r, starts[i])
		m.onPages(r, &starts[i])
	}
	inside, odd := readInline(strings.Join(raw, "\n"), m.kind.lines())
	for _, o := range odd {
		m.notice(rows[o.line].number, "%s", o.text)
	}
	lines := make([]pagemodel.Line, len(rows))
	for i, in := range inside {
		if len(in.text) > maxLine {
			return pagemodel.Stanza{}, tooLong(m.name, rows[i].number)
		}
		lines[i] = m.line(in, starts[i])
	}
	return pagemodel.NewStanza(kind, lines), nil
}

// joined is a paragraph of prose as one row.
func joined(rows []row) row {
	texts := make([]string, len(rows))
	for i, r := range rows {
		texts[i] = r.text
		if i > 0 {
			texts[i] = strings.TrimLeftFunc(r.text, unicode.IsSpace)
		}
	}
	return row{rows[0].number, strings.Join(texts, " ")}
}

func (m *source) line(in inline, start lineStart) pagemodel.Line {
	l := m.build.Line(in.text).WithSpans(in.spans).WithRange(start.rng).WithDropped(start.dropped)
	l = l.WithOpensPage(start.opens).WithTied(start.tied).WithAbove(start.white)
	for _, g := range in.gaps {
		l = withGap(l, g)
	}
	return l.WithIndent(min(maxEms, start.indent))
}

// above is what is known of the lines of the poem above the one being read.
type above struct{ any, tied bool }

// onPages leaves out a page that can't begin with a line: how a poem opens is said
// below its heading, and the line above may be kept together with this one.
func (m *source) onPages(r row, start *lineStart) {
	switch {
	case start.opens && !m.above.any:
		m.notice(r.number, "[page] before a poem's first line was left out: say below its heading how it starts")
		start.opens = false
	case start.opens && m.above.tied:
		m.notice(r.number, "[page] was left out: the line above is kept together with this one")
		start.opens = false
	}
	m.above = above{any: true, tied: start.tied}
}

// doubt gives notice of a line that looks as if more had been meant by it.
func (m *source) doubt(r row, start lineStart) {
	key, _, attribute := attributeOf(r.text)
	switch {
	case strings.HasPrefix(start.odd, "[white"):
		m.notice(r.number, "%s is no white of 1 to %d lines: it was kept as text", start.odd, maxWhite)
	case start.odd != "":
		m.notice(r.number, "%s is no indent of up to 60 ems: it was kept as text", start.odd)
	case start.indent > maxEms:
		m.notice(r.number, "an indent of %v was made %v, the deepest there is", start.indent, maxEms)
	case attribute && key == placeKey:
		m.notice(r.number, "[place: …] is read as a poem's last line only: it was kept as verse")
	case attribute && headAttribute(key) != nil:
		m.notice(r.number, "[%s: …] is read below a poem's heading only: it was kept as verse", key)
	case attribute:
		m.notice(r.number, "there is no [%s: …]; a poem's heading has %s, and its end has place: it was kept as verse", key, headKeys())
	case strings.HasPrefix(r.text, ">"):
		m.notice(r.number, "> makes an epigraph below a heading only: it was kept as verse; write \\> if it is meant")
	case looksLikeHeading(r.text):
		m.notice(r.number, "headings have one, two or three #: it was kept as verse; write \\# if it is meant")
	}
}
