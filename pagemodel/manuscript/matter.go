package manuscript

import (
	"fmt"
	"slices"
	"strings"

	"headland/pagemodel"
)

// The prelims and the end matter stand in the front matter, page by page:
//
//	page: imprint
//	heading: …          (where it is not the usual one)
//	text: First published …
//	text: ""            (white)
//	roman: yes          (roman numerals for the prelims)
//	parts: yes          (parts of poems in the contents)
//	alphabet: letter by letter

// The keys of the prelims and end matter.
const (
	pageKey     = "page"
	headingKey  = "heading"
	textKey     = "text"
	romanKey    = "roman"
	partsKey    = "parts"
	alphabetKey = "alphabet"
)

// yes is what is written where something is wanted.
const yes = "yes"

// setMatter takes one line of the front matter that says something of the prelims
// or the end matter. What can't be taken is said in a notice, words and all.
func (m *source) setMatter(key, value string, line int) {
	var err error
	switch key {
	case pageKey:
		err = m.beginPage(pagemodel.MatterKind(value))
	case headingKey, textKey:
		err = m.onPage(key, value)
	case romanKey:
		err = parsed(&m.matter.Roman, value, parseYes)
	case partsKey:
		err = parsed(&m.matter.Parts, value, parseYes)
	case alphabetKey:
		err = parsed(&m.matter.Alphabet, value, pagemodel.ParseAlphabet)
	}
	if err != nil {
		m.notice(line, "%v; “%s: %s” was left out", err, key, value)
	}
}

func parseYes(s string) (bool, error) {
	switch strings.ToLower(s) {
	case yes:
		return true, nil
	case "no":
		return false, nil
	}
	return false, fmt.Errorf("%q says neither yes nor no", s)
}

// beginPage begins a page, or goes on with one that is there.
func (m *source) beginPage(kind pagemodel.MatterKind) error {
	m.onKind = ""
	if !slices.Contains(pagemodel.MatterKinds, kind) {
		return fmt.Errorf("%q is no page of a book's prelims or end matter: write one of %s", string(kind), matterKinds())
	}
	m.onKind = kind
	if _, there := m.matter.Page(kind); !there {
		m.matter = m.matter.With(pagemodel.MatterPage{Kind: kind})
	}
	return nil
}

func matterKinds() string {
	names := make([]string, len(pagemodel.MatterKinds))
	for i, k := range pagemodel.MatterKinds {
		names[i] = string(k)
	}
	return strings.Join(names, ", ")
}

// onPage puts a heading or a line of words on the page that was begun last.
func (m *source) onPage(key, value string) error {
	page, ok := m.matter.Page(m.onKind)
	if !ok {
		return fmt.Errorf("it belongs to no page: write “page: …” above it")
	}
	if key == headingKey {
		page.Title = value
	} else {
		page.Text = append(page.Text, value)
	}
	m.matter = m.matter.With(page)
	return nil
}

// firstMatter is the prelims and end matter of the first manuscript that says
// anything of them.
func firstMatter(sources []*source) pagemodel.Matter {
	for _, m := range sources {
		if saysMatter(m.matter) {
			return m.matter
		}
	}
	return pagemodel.Matter{}
}

func saysMatter(m pagemodel.Matter) bool {
	return len(m.Pages) > 0 || m.Roman || m.Parts || m.Alphabet != pagemodel.WordByWord
}

// matter writes the prelims and the end matter.
func (w *writer) matter(m pagemodel.Matter) {
	for _, page := range m.Pages {
		w.line(pageKey + ": " + string(page.Kind))
		w.said(headingKey, page.Title)
		for _, line := range page.Text {
			w.line(textKey + ": " + w.quotable(line))
		}
	}
	if m.Roman {
		w.line(romanKey + ": " + yes)
	}
	if m.Parts {
		w.line(partsKey + ": " + yes)
	}
	if m.Alphabet != pagemodel.WordByWord {
		w.line(alphabetKey + ": " + m.Alphabet.String())
	}
}
