package manuscript

import (
	"slices"
	"strings"

	"headland/pagemodel"
)

// poem reads a poem, whose heading, if it had one, has been taken.
func (m *source) poem(head pagemodel.PoemHead, headed bool) error {
	m.poems++
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

const (
	headKeys = "subtitle, dedication, form, start and note"
	placeKey = "place"
)

// head reads the attributes and the epigraph below a poem's heading. White
// between them is let pass.
func (m *source) head(head *pagemodel.PoemHead, rows []row) []row {
	said := map[string][]string{}
	for len(rows) > 0 {
		r := rows[0]
		key, value, ok := attributeOf(r.text)
		switch {
		case r.blank():
			rows = rows[1:]
		case ok && isHeadKey(key):
			said[key] = append(said[key], m.field(value, r.number))
			m.checkStart(key, said, r.number)
			rows = rows[1:]
		case r.text[0] == '>' && head.Epigraph == nil:
			rows, head.Epigraph = m.epigraph(rows)
		default:
			setHead(head, said)
			return rows
		}
	}
	setHead(head, said)
	return nil
}

func isHeadKey(key string) bool {
	return slices.Contains([]string{"subtitle", "dedication", "form", "start", "note"}, key)
}

// checkStart leaves out a start that there is none of.
func (m *source) checkStart(key string, said map[string][]string, line int) {
	if key != "start" {
		return
	}
	last := said[key][len(said[key])-1]
	if _, err := pagemodel.ParseStart(last); err != nil {
		m.notice(line, "%v; the poem was left to start as usual", err)
		delete(said, key)
	}
}

// setHead sets what was said: several lines with one key are lines of it.
func setHead(head *pagemodel.PoemHead, said map[string][]string) {
	text := func(key string) string { return strings.Join(said[key], "\n") }
	head.Subtitle, head.Dedication = text("subtitle"), text("dedication")
	head.Form, head.Note = pagemodel.ParseForm(text("form")), text("note")
	if starts := said["start"]; len(starts) > 0 {
		head.Start, _ = pagemodel.ParseStart(starts[len(starts)-1]) // checked when it was said
	}
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
