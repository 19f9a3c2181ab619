package manuscript

import (
	"slices"
	"strings"

	"headland/pagemodel"
)

// poem reads a poem, whose heading, if it had one, has been taken.
func (m *source) poem(head pagemodel.PoemHead, headed bool) error {
	m.poems++
	m.above = above{}
	body := m.body()
	if headed {
		body = m.head(&head, body)
	}
	body, head.Place = m.place(body)
	parts, err := m.parts(body)
	if err == nil {
		m.build.Poem(head, parts)
	}
	return err
}

const placeKey = "place"

// head reads the attributes and the epigraph below a poem's heading. White
// between them is let pass.
func (m *source) head(head *pagemodel.PoemHead, rows []row) []row {
	seen := map[string]bool{}
	for len(rows) > 0 {
		r := rows[0]
		key, value, ok := attributeOf(r.text)
		said := headAttribute(key)
		switch {
		case r.blank():
			rows = rows[1:]
		case ok && said != nil:
			if err := said.take(head, m.field(value, r.number), seen[key]); err != nil {
				m.notice(r.number, "%v; [%s: …] was left out", err, key)
			}
			seen[key] = true
			rows = rows[1:]
		case r.text[0] == '>' && head.Epigraph == nil:
			rows, head.Epigraph = m.epigraph(rows)
		default:
			return rows
		}
	}
	return nil
}

// epigraph reads the lines that begin with >. White between two runs of them
// is an empty line of the epigraph.
func (m *source) epigraph(rows []row) (rest []row, lines []string) {
	white := false
	rest = rows
	for i, r := range rows {
		if r.blank() {
			white = true
			continue
		}
		raw, ok := strings.CutPrefix(r.text, ">")
		if !ok {
			break
		}
		if white && lines != nil {
			lines = append(lines, "")
		}
		white = false
		lines = append(lines, m.field(trim(raw), r.number))
		rest = rows[i+1:]
	}
	return rest, lines
}

// place takes "[place: …]" off the end of a poem.
func (m *source) place(rows []row) (rest []row, place string) {
	var lines []string
	rest = rows
	for i := len(rows) - 1; i >= 0; i-- {
		if rows[i].blank() {
			continue
		}
		key, value, ok := attributeOf(rows[i].text)
		if !ok || key != placeKey {
			break
		}
		lines = append(lines, m.field(value, rows[i].number))
		rest = rows[:i]
	}
	slices.Reverse(lines)
	return rest, strings.Join(lines, "\n")
}

// parts reads the parts of a poem. Lines before the first ### are a part
// without a heading.
func (m *source) parts(rows []row) ([]pagemodel.Part, error) {
	var parts []pagemodel.Part
	heading, begin := "", 0
	finish := func(end int, last bool) error {
		stanzas, err := m.stanzas(rows[begin:end])
		if begin > 0 || last || len(stanzas) > 0 {
			parts = append(parts, pagemodel.NewPart(heading, stanzas))
		}
		return err
	}
	for i, r := range rows {
		level, raw := headingOf(r.text)
		if level != 3 {
			continue
		}
		if err := finish(i, false); err != nil {
			return nil, err
		}
		heading, begin = m.field(raw, r.number), i+1
	}
	err := finish(len(rows), true)
	return parts, err
}
