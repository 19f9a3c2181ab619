package typeset

import (
	"strings"

	"headland/pagemodel"
)

// The type of the prelims and the end matter. Headings look like the titles of
// the poems; lists and prose are set in the verse's size.
var (
	bookTitleStyle  = headStyle{role: RoleMatter, size: func(size Length) Length { return size * 7 / 4 }}
	bookPoetStyle   = headStyle{role: RoleMatter, style: pagemodel.SmallCaps, size: larger}
	matterStyle     = headStyle{role: RoleMatter, size: same}
	matterItalic    = headStyle{role: RoleMatter, style: pagemodel.Italic, size: same}
	matterSaying    = headStyle{role: RoleMatter, style: pagemodel.Italic, size: same, indent: 2 * pagemodel.OneEm}
	matterSmallCaps = headStyle{role: RoleMatter, style: pagemodel.SmallCaps, size: same}
	imprintStyle    = headStyle{role: RoleMatter, size: func(size Length) Length { return size * 4 / 5 }}
)

// usualHeadings are the headings of the pieces that have one.
var usualHeadings = map[pagemodel.MatterKind]string{
	pagemodel.ContentsPage:     "Contents",
	pagemodel.Acknowledgements: "Acknowledgements",
	pagemodel.NotesPage:        "Notes",
	pagemodel.IndexPage:        "Index of titles and first lines",
}

// setPiece sets one piece. A piece with nothing to say takes no page.
func (b *blocks) setPiece(c *pagemodel.Collection, page pagemodel.MatterPage) []matterPage {
	f := &matterFlow{blocks: b, kind: page.Kind, heading: headingOf(page, c.About())}
	switch page.Kind {
	case pagemodel.HalfTitle:
		f.halfTitle(page, c.About())
	case pagemodel.TitlePage:
		f.titlePage(page, c.About())
	case pagemodel.Imprint:
		f.imprint(page)
	case pagemodel.DedicationPage:
		f.low(matterItalic, page.Text)
	case pagemodel.EpigraphPage:
		f.epigraph(page, c.About())
	case pagemodel.AlsoBy:
		f.headed(matterItalic, page.Text)
	case pagemodel.Acknowledgements:
		f.headed(matterStyle, page.Text)
	case pagemodel.ContentsPage:
		f.contents(c, page)
	case pagemodel.NotesPage:
		f.notes(c, page)
	case pagemodel.IndexPage:
		f.index(c, page)
	}
	return f.pages
}

// headingOf is the heading of a piece: the poet's own, or the usual one.
func headingOf(page pagemodel.MatterPage, about pagemodel.About) string {
	switch {
	case page.Title != "":
		return page.Title
	case page.Kind == pagemodel.AlsoBy && about.Poet != "":
		return "Also by " + about.Poet
	case page.Kind == pagemodel.AlsoBy:
		return "By the same author"
	}
	return usualHeadings[page.Kind]
}

// third is the row of the grid a third of the way down the page.
func (f *matterFlow) third() int { return max(1, f.design.Rows()/3) }

// head sets the heading, as a poem's title stands, and sinks what follows as a
// poem's first line.
func (f *matterFlow) head() {
	if f.heading == "" {
		return
	}
	f.sink(f.design.TitleRow)
	f.display(f.headingStyle(), 0, f.heading)
	f.sink(f.design.PoemRow)
}

// headingStyle is the type of a heading.
func (f *matterFlow) headingStyle() headStyle {
	s := headStyle{role: RoleMatter, size: larger}
	if size := f.design.TitleSize; size != 0 {
		s.size = func(Length) Length { return size }
	}
	switch f.design.Titles {
	case pagemodel.TitleItalic:
		s.style = pagemodel.Italic
	case pagemodel.TitleSmallCaps:
		s.style = pagemodel.SmallCaps
	}
	return s
}

// headed sets lines under the heading.
func (f *matterFlow) headed(s headStyle, lines []string) {
	if wordless(lines) {
		return
	}
	f.head()
	f.paragraphs(s, 0, lines)
}

func wordless(lines []string) bool {
	return strings.TrimSpace(strings.Join(lines, "")) == ""
}

// halfTitle is the book's title alone, or what the poet wrote instead.
func (f *matterFlow) halfTitle(page pagemodel.MatterPage, about pagemodel.About) {
	lines := ownWords(page)
	if lines == nil {
		lines = []string{about.Title}
	}
	f.sink(f.third())
	each(lines, func(white int, line string) { f.display(f.headingStyle(), white, line) })
}

// titlePage is the book's title and the poet, or what the poet wrote instead:
// the first line as a title, the others as the poet's name.
func (f *matterFlow) titlePage(page pagemodel.MatterPage, about pagemodel.About) {
	lines := ownWords(page)
	if lines == nil {
		lines = []string{about.Title, "", "", about.Poet}
	}
	f.sink(f.third())
	s := bookTitleStyle
	each(lines, func(white int, line string) {
		f.display(s, white, line)
		s = bookPoetStyle
	})
}

// ownWords are the poet's words for a page that is else made, or nil.
func ownWords(page pagemodel.MatterPage) []string {
	if page.Title == "" && wordless(page.Text) {
		return nil
	}
	if page.Title == "" {
		return page.Text
	}
	return append([]string{page.Title, ""}, page.Text...)
}

// imprint stands small, at the foot of its page (common practice, no source).
func (f *matterFlow) imprint(page pagemodel.MatterPage) {
	f.paragraphs(imprintStyle, 0, ownWords(page))
	f.drop()
}

// low sets lines a third of the way down, under the poet's own heading where
// there is one: a dedication.
func (f *matterFlow) low(s headStyle, lines []string) {
	if wordless(lines) {
		return
	}
	f.sink(f.third())
	if f.heading != "" {
		f.display(f.headingStyle(), 0, f.heading)
		f.grid++
	}
	each(lines, func(white int, line string) { f.display(s, white, line) })
}

// epigraph is the page's words, or the book's epigraph.
func (f *matterFlow) epigraph(page pagemodel.MatterPage, about pagemodel.About) {
	lines := page.Text
	if wordless(lines) {
		lines = about.Epigraph
	}
	if wordless(lines) {
		return
	}
	f.sink(f.third())
	if f.heading != "" {
		f.display(f.headingStyle(), 0, f.heading)
		f.grid++
	}
	f.paragraphs(matterSaying, 0, lines)
}

// notes are the poems' own notes under the poems' names, in the order of the
// book, and then the words of the page.
func (f *matterFlow) notes(c *pagemodel.Collection, page pagemodel.MatterPage) {
	begin := f.head
	for _, p := range c.Poems() {
		note := strings.Split(p.Head().Note, "\n")
		if wordless(note) {
			continue
		}
		begin()
		begin = func() { f.grid++ }
		f.add(chunk{rows: f.set(matterItalic, p.Name()), below: leastPiece})
		f.paragraphs(matterStyle, 0, note)
	}
	if !wordless(page.Text) {
		begin()
		f.paragraphs(matterStyle, 0, page.Text)
	}
}
