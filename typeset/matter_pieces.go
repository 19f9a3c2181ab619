package typeset

import (
	"strings"

	"headland/pagemodel"
)

// The type of the prelims and the end matter. Headings look like the titles of
// the poems; lists and prose are set in the verse's size.
var (
	bookPoetStyle       = headStyle{role: RoleMatter, style: pagemodel.SmallCaps, size: larger, display: withTitle}
	bookDedicationStyle = headStyle{role: RoleMatter, style: pagemodel.Italic, size: same, display: withTitle}
	bookEpigraphStyle   = headStyle{role: RoleMatter, style: pagemodel.Italic, size: same, indent: 2 * pagemodel.OneEm}
	matterStyle         = headStyle{role: RoleMatter, size: same}
	matterTitleStyle    = headStyle{role: RoleMatter, style: pagemodel.Italic, size: same}
	imprintStyle        = headStyle{role: RoleMatter, size: smaller}
)

func smaller(size Length) Length { return size * 4 / 5 }

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
		f.low(bookDedicationStyle, page.Text)
	case pagemodel.EpigraphPage:
		f.low(bookEpigraphStyle, epigraphOf(page, c.About()))
	case pagemodel.AlsoBy:
		f.headed(matterTitleStyle, page.Text)
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
	f.line(f.headingStyle(), 0, f.heading)
	f.sink(f.design.PoemRow)
}

// headingStyle is the type of a heading.
func (f *matterFlow) headingStyle() headStyle {
	s := titleOf(f.design)
	s.role = RoleMatter
	return s
}

// bookTitleStyle is the type of the book's title on the title page: seven fifths
// of a heading's size.
func (f *matterFlow) bookTitleStyle() headStyle {
	s := f.headingStyle()
	size := f.headSize(s) * 7 / 5
	s.size, s.display = func(Length) Length { return size }, withTitle
	return s
}

// oneLine is a title without the ends of lines that the poet gave it.
func oneLine(title string) string { return strings.ReplaceAll(title, "\n", " ") }

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
	each(lines, func(white int, line string) { f.line(f.headingStyle(), white, line) })
}

// titlePage is the book's title and the poet, or what the poet wrote instead:
// the first line as a title, the others as the poet's name.
func (f *matterFlow) titlePage(page pagemodel.MatterPage, about pagemodel.About) {
	lines := ownWords(page)
	if lines == nil {
		lines = []string{about.Title, "", "", about.Poet}
	}
	f.sink(f.third())
	s := f.bookTitleStyle()
	each(lines, func(white int, line string) {
		f.line(s, white, line)
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
	f.lower()
}

// low sets lines a third of the way down, under the poet's own heading where
// there is one: a dedication, an epigraph.
func (f *matterFlow) low(s headStyle, lines []string) {
	if wordless(lines) {
		return
	}
	f.sink(f.third())
	if f.heading != "" {
		f.line(f.headingStyle(), 0, f.heading)
		f.grid++
	}
	f.paragraphs(s, 0, lines)
}

// epigraphOf is the page's words, or the book's epigraph.
func epigraphOf(page pagemodel.MatterPage, about pagemodel.About) []string {
	if wordless(page.Text) {
		return about.Epigraph
	}
	return page.Text
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
		f.add(chunk{rows: f.set(matterTitleStyle, oneLine(p.Name())), below: leastPiece})
		f.paragraphs(matterStyle, 0, note)
	}
	if !wordless(page.Text) {
		begin()
		f.paragraphs(matterStyle, 0, page.Text)
	}
}
