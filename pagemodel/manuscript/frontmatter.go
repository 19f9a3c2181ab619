package manuscript

import (
	"strings"

	"headland/pagemodel"
)

const fence = "---"

// readFrontMatter takes the front matter off the top, if there is any: two
// fences with nothing but known keys between them. Anything else is text.
func (m *source) readFrontMatter() {
	end := m.frontMatterEnd()
	if end < 0 {
		return
	}
	for _, r := range m.rows[1:end] {
		key, value, _ := aboutLine(r.text)
		m.say(key, m.field(unquoted(value), r.number), r.number)
	}
	m.rows = m.rows[end+1:]
}

// frontMatterEnd is the index of the closing fence, or -1.
func (m *source) frontMatterEnd() int {
	if len(m.rows) < 3 || m.rows[0].text != fence {
		return -1
	}
	for i, r := range m.rows[1:] {
		if r.text == fence && i > 0 {
			return i + 1
		}
		if _, _, ok := aboutLine(r.text); !ok {
			return -1
		}
	}
	return -1
}

// aboutKeys are the known keys and the names that they go by.
var aboutKeys = map[string]string{
	"title": "title", "poet": "poet", "author": "poet", "language": "language", "lang": "language", "epigraph": "epigraph",
	pageKey: pageKey, headingKey: headingKey, textKey: textKey, romanKey: romanKey, partsKey: partsKey, alphabetKey: alphabetKey,
}

func aboutLine(s string) (key, value string, ok bool) {
	key, value, found := strings.Cut(s, ":")
	key, ok = aboutKeys[strings.ToLower(key)]
	return key, trim(value), found && ok
}

// say takes what one line of the front matter says.
func (m *source) say(key, value string, line int) {
	switch key {
	case "title":
		m.about.Title = value
	case "poet":
		m.about.Poet = value
	case "language":
		m.about.Language = value
	case "epigraph":
		m.about.Epigraph = append(m.about.Epigraph, value)
	default:
		m.setMatter(key, value, line)
	}
}

// unquoted takes off a pair of double quotes, which some put about a value.
func unquoted(s string) string {
	if isQuoted(s) {
		return s[1 : len(s)-1]
	}
	return s
}

func isQuoted(s string) bool {
	return len(s) >= 2 && s[0] == '"' && s[len(s)-1] == '"'
}

// firstSaid is what is true of the whole book, each thing from the first
// manuscript that says it.
func firstSaid(sources []*source) pagemodel.About {
	var a pagemodel.About
	for _, m := range sources {
		a.Title = orElse(a.Title, m.about.Title)
		a.Poet = orElse(a.Poet, m.about.Poet)
		a.Language = orElse(a.Language, m.about.Language)
		if a.Epigraph == nil {
			a.Epigraph = m.about.Epigraph
		}
	}
	return a
}

func orElse(a, b string) string {
	if a != "" {
		return a
	}
	return b
}

// frontMatter writes what is true of the whole book.
func (w *writer) frontMatter(a pagemodel.About, m pagemodel.Matter) {
	if a.Title == "" && a.Poet == "" && a.Language == "" && len(a.Epigraph) == 0 && !saysMatter(m) {
		return
	}
	w.line(fence)
	w.said("title", a.Title)
	w.said("poet", a.Poet)
	w.said("language", a.Language)
	for _, line := range a.Epigraph {
		w.line("epigraph: " + w.quotable(line))
	}
	w.matter(m)
	w.line(fence)
}

func (w *writer) said(key, value string) {
	if value != "" {
		w.line(key + ": " + w.quotable(value))
	}
}

// quotable is a field that keeps its own quotes when one pair is taken off; ""
// is a pair with nothing in it.
func (w *writer) quotable(value string) string {
	field := w.field(value)
	if field == "" || isQuoted(field) {
		return `"` + field + `"`
	}
	return field
}
