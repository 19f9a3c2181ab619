package typeset

import (
	"cmp"
	"slices"
	"strings"
	"unicode/utf8"

	"headland/pagemodel"
)

var (
	indexTitleStyle = headStyle{role: RoleContents, style: pagemodel.Italic, size: same}
	indexLineStyle  = headStyle{role: RoleContents, size: same}
)

// indexed is a line of the index.
type indexed struct {
	key, text string
	title     bool
	poem      pagemodel.PoemID
	to        pageReference
}

// index lists titles and first lines in one sequence, the titles in italic,
// with a blank row where the initial changes. Words of the poet's stand below
// the heading.
func (f *matterFlow) index(c *pagemodel.Collection, page pagemodel.MatterPage) {
	lines := indexOf(c)
	if len(lines) == 0 && wordless(page.Text) {
		return
	}
	f.head()
	f.paragraphs(matterStyle, 0, page.Text)
	for i, line := range lines {
		gap := 0
		if i == 0 && !wordless(page.Text) || i > 0 && initial(line.key) != initial(lines[i-1].key) {
			gap = 1
		}
		s := indexLineStyle
		if line.title {
			s = indexTitleStyle
		}
		rows := f.refer(s, line.text, line.to)
		for j := range rows {
			rows[j].Poem = line.poem
		}
		f.add(chunk{gap: gap, rows: rows})
	}
}

func initial(key string) rune {
	r, _ := utf8.DecodeRuneInString(key)
	return r
}

// indexOf is the index of a book in its alphabet. Two poems with one title
// stand one below the other, as they follow in the book. A title that is the
// first line too stands once.
func indexOf(c *pagemodel.Collection) []indexed {
	alphabet, language := c.Matter().Alphabet, c.About().Language
	var all []indexed
	for i, e := range c.Order() {
		if e.Poem == nil {
			continue
		}
		at := indexed{poem: e.Poem.ID(), to: pageReference{entry: i + 1}}
		title, opening := e.Poem.Head().Title, openingWords(e.Poem)
		bare := func(text string) string { return alphabet.Key(text, pagemodel.AsFirstLine, language) }
		if title != "" {
			at.text, at.title, at.key = title, true, alphabet.Key(title, pagemodel.AsTitle, language)
			all = append(all, at)
		}
		if opening != "" && bare(opening) != bare(title) {
			at.text, at.title, at.key = opening, false, bare(opening)
			all = append(all, at)
		}
	}
	slices.SortStableFunc(all, func(a, b indexed) int {
		return cmp.Or(strings.Compare(a.key, b.key), strings.Compare(a.text, b.text))
	})
	return all
}

// mostOpeningWords is how much of a paragraph stands for its first line.
const mostOpeningWords = 8

// openingWords are a poem's first line as an index has it, without the stop
// that runs on; of a prose poem, its first words. It is "" for an empty poem.
func openingWords(p *pagemodel.Poem) string {
	for at, l := range p.Lines() {
		text := strings.TrimRight(l.Text(), ",;:—– ")
		if text == "" {
			continue
		}
		words := strings.Fields(text)
		if p.Stanza(at).Kind() == pagemodel.Prose && len(words) > mostOpeningWords {
			return strings.Join(words[:mostOpeningWords], " ") + " …"
		}
		return text
	}
	return ""
}
