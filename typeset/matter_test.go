package typeset

import (
	"reflect"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"headland/pagemodel"
)

// poemNamed is a poem of so many lines; the first is opening.
type poemNamed struct {
	head    pagemodel.PoemHead
	opening string
	lines   int
}

// bakery is a book of poems, the words its own.
func bakery(poems ...poemNamed) *pagemodel.Builder {
	b := pagemodel.NewBuilder(pagemodel.About{Title: "The Night Oven", Poet: "Ada Field"}, testDesign())
	for _, p := range poems {
		lines := []pagemodel.Line{b.Line(p.opening)}
		for len(lines) < p.lines {
			lines = append(lines, b.Line("the dough comes up in the dark"))
		}
		b.Poem(p.head, []pagemodel.Part{pagemodel.NewPart("", []pagemodel.Stanza{pagemodel.NewStanza(pagemodel.Verse, lines)})})
	}
	return b
}

func withMatter(t interface{ Fatal(...any) }, c *pagemodel.Collection, m pagemodel.Matter) *pagemodel.Collection {
	next, err := pagemodel.SetMatter{Matter: m}.Apply(c)
	if err != nil {
		t.Fatal(err)
	}
	return next
}

func matterOf(kinds ...pagemodel.MatterKind) pagemodel.Matter {
	var m pagemodel.Matter
	for _, k := range kinds {
		m = m.With(pagemodel.MatterPage{Kind: k, Text: []string{"words of the poet’s"}})
	}
	return m
}

func kindsOf(pages []matterPage) []pagemodel.MatterKind {
	var kinds []pagemodel.MatterKind
	for i := range pages {
		kinds = append(kinds, pages[i].kind)
	}
	return kinds
}

// TestMatterOrder: what stands on which page. Rectos are the odd ones. (Half
// title i, title iii, imprint iv, dedication v, epigraph vi or v, contents vii or
// v: the order of The Chicago Manual of Style.)
func TestMatterOrder(t *testing.T) {
	const blank = ""
	book := bakery(poemNamed{pagemodel.PoemHead{Title: "Proving", Note: "A note."}, "All night", 4}).Collection()
	for _, tc := range []struct {
		name         string
		matter       pagemodel.Matter
		prelims, end []pagemodel.MatterKind
	}{
		{"everything", matterOf(pagemodel.MatterKinds...), []pagemodel.MatterKind{
			pagemodel.HalfTitle, pagemodel.AlsoBy, pagemodel.TitlePage, pagemodel.Imprint,
			pagemodel.DedicationPage, pagemodel.EpigraphPage, pagemodel.ContentsPage, blank,
		}, []pagemodel.MatterKind{pagemodel.Acknowledgements, blank, pagemodel.NotesPage, blank, pagemodel.IndexPage}},
		{"the usual", pagemodel.UsualMatter(), []pagemodel.MatterKind{
			pagemodel.HalfTitle, blank, pagemodel.TitlePage, blank, pagemodel.ContentsPage, blank,
		}, nil},
		{"an epigraph without a dedication", matterOf(pagemodel.TitlePage, pagemodel.EpigraphPage), []pagemodel.MatterKind{
			pagemodel.TitlePage, blank, pagemodel.EpigraphPage, blank,
		}, nil},
		{"a dedication alone", matterOf(pagemodel.DedicationPage), []pagemodel.MatterKind{pagemodel.DedicationPage, blank}, nil},
		{"pages without words", pagemodel.Matter{Pages: []pagemodel.MatterPage{
			{Kind: pagemodel.AlsoBy}, {Kind: pagemodel.Imprint}, {Kind: pagemodel.DedicationPage}, {Kind: pagemodel.EpigraphPage}, {Kind: pagemodel.Acknowledgements},
		}}, nil, nil},
	} {
		m := setOf(withMatter(t, book, tc.matter)).matter
		if got := kindsOf(m.prelims); !slices.Equal(got, tc.prelims) {
			t.Errorf("%s: prelims %q, want %q", tc.name, got, tc.prelims)
		}
		if got := kindsOf(m.end); !slices.Equal(got, tc.end) {
			t.Errorf("%s: end matter %q, want %q", tc.name, got, tc.end)
		}
	}
}

// drawMatter is prelims and end matter of any kinds, some with long texts.
func drawMatter(t *rapid.T) pagemodel.Matter {
	m := pagemodel.Matter{Roman: rapid.Bool().Draw(t, "roman"), Parts: rapid.Bool().Draw(t, "parts")}
	for _, kind := range pagemodel.MatterKinds {
		if rapid.Bool().Draw(t, string(kind)) {
			page := pagemodel.MatterPage{Kind: kind}
			for range rapid.IntRange(0, 40).Draw(t, "lines") {
				page.Text = append(page.Text, strings.Repeat("crust and crumb ", rapid.IntRange(0, 12).Draw(t, "words")))
			}
			m = m.With(page)
		}
	}
	return m
}

// TestPrelimsAreEven: whatever the matter, the prelims are an even number of
// pages, every piece begins on its own side, every row stands on the grid below
// the one above it, and no page but a blank is empty.
func TestPrelimsAreEven(t *testing.T) {
	setter := NewSetter(Bundled())
	book := smallBook()
	rapid.Check(t, func(t *rapid.T) {
		s := setter.Set(nil, withMatter(t, book, drawMatter(t)))
		if len(s.matter.prelims)%2 == 1 {
			t.Fatalf("%d pages of prelims", len(s.matter.prelims))
		}
		for _, pages := range [][]matterPage{s.matter.prelims, s.matter.end} {
			before := pagemodel.MatterKind("")
			for i := range pages {
				p := &pages[i]
				if p.opens && pagemodel.SideOf(i+1) != opensOn(p.kind, before) {
					t.Fatalf("%q begins on page %d", p.kind, i+1)
				}
				onGrid(t, p, s.design.Rows())
				if p.kind != "" {
					before = p.kind
				}
			}
		}
	})
}

func onGrid(t *rapid.T, p *matterPage, rows int) {
	last := 0
	for _, r := range p.rows {
		if r.Grid <= last || r.Grid > rows {
			t.Fatalf("%q: a row on line %d of %d, below line %d", p.kind, r.Grid, rows, last)
		}
		last = r.Grid
	}
	if (last == 0) != (p.kind == "") {
		t.Fatalf("a page of the kind %q with its last row on line %d", p.kind, last)
	}
}

// TestRomanPrelims: prelims i–viii and 56 arabic pages are 64; the first part
// title is page 1, 2 is blank, the first poem is page 3 (arithmetic, no source
// needed).
func TestRomanPrelims(t *testing.T) {
	b := bakery()
	b.Section("One", nil)
	for range 54 {
		verse := pagemodel.NewStanza(pagemodel.Verse, []pagemodel.Line{b.Line("the dough comes up"), b.Line("in the dark")})
		b.Poem(pagemodel.PoemHead{Title: "Loaf"}, []pagemodel.Part{pagemodel.NewPart("", []pagemodel.Stanza{verse})})
	}
	kinds := []pagemodel.MatterKind{
		pagemodel.HalfTitle, pagemodel.TitlePage, pagemodel.Imprint, pagemodel.DedicationPage, pagemodel.EpigraphPage,
	}
	m := matterOf(kinds...).With(pagemodel.MatterPage{Kind: pagemodel.ContentsPage})
	m.Roman = true
	s := setOf(withMatter(t, b.Collection(), m))
	if s.Extent() != 64 {
		t.Errorf("%d pages, want 64", s.Extent())
	}
	for n, want := range map[int]string{1: "i", 7: "vii", 8: "viii", 9: "1", 10: "2", 11: "3", 64: "56"} {
		if got := s.FolioOf(n); got != want {
			t.Errorf("page %d has the number %q, want %q", n, got, want)
		}
	}
	first := s.Contents()
	if s.FolioOf(first[0].Page) != "1" || s.FolioOf(first[1].Page) != "3" || len(s.Page(10).Rows) != 0 {
		t.Errorf("the part title and the first poem are on pages %d and %d", first[0].Page, first[1].Page)
	}
	var printed []string
	for n := 1; n <= 11; n++ {
		printed = append(printed, s.Page(n).Folio)
	}
	if want := []string{"", "", "", "", "", "", "vii", "viii", "", "", "3"}; !slices.Equal(printed, want) {
		t.Errorf("folios printed: %q, want %q", printed, want)
	}
}

// TestLongTexts: an acknowledgement as long as three pages keeps every word, in
// order, and leaves no row of a paragraph alone on a page.
func TestLongTexts(t *testing.T) {
	words := strings.Fields(strings.Repeat("thanks to the editors of the journals in which some of these poems stood first ", 8))
	text := slices.Repeat([]string{strings.Join(words, " ")}, 6)
	c := withMatter(t, bakery().Collection(), pagemodel.Matter{Pages: []pagemodel.MatterPage{{Kind: pagemodel.Acknowledgements, Text: text}}})
	s := setOf(c)
	var got []string
	for _, p := range s.matter.end {
		for i := range p.rows {
			got = append(got, strings.Fields(rowText(&p.rows[i].Row))...)
		}
	}
	if want := slices.Concat([]string{"Acknowledgements"}, slices.Repeat(words, 6)); !slices.Equal(got, want) {
		t.Errorf("%d words stand, want %d", len(got), len(want))
	}
	if len(s.matter.end) < 3 {
		t.Fatalf("%d pages, want three or more", len(s.matter.end))
	}
	for i, p := range s.matter.end[1:] {
		above := s.matter.end[i].rows
		if p.rows[0].Last || above[len(above)-1].Start == 0 && !above[len(above)-1].Last {
			t.Errorf("page %d ends within a paragraph and leaves one row of it alone", i+1)
		}
	}
}

// TestImprintStandsLow: an imprint ends on the last row of its page, in smaller
// type than the verse.
func TestImprintStandsLow(t *testing.T) {
	s := setOf(withMatter(t, bakery().Collection(), matterOf(pagemodel.TitlePage, pagemodel.Imprint)))
	rows := s.matter.prelims[1].rows
	last := rows[len(rows)-1]
	if last.Grid != s.design.Rows() || last.Runs[0].Size >= s.design.Size {
		t.Errorf("it ends on row %d of %d, in type of %v", last.Grid, s.design.Rows(), last.Runs[0].Size)
	}
}

// textOf is the words on a page of the prelims or end matter, row by row.
func textOf(pages ...matterPage) []string {
	var rows []string
	for _, p := range pages {
		for i := range p.rows {
			rows = append(rows, rowText(&p.rows[i].Row))
		}
	}
	return rows
}

// TestTitlePages: the half-title and the title come from the book unless the
// poet wrote others, and an epigraph too.
func TestTitlePages(t *testing.T) {
	c := bakery().Collection()
	s := setOf(withMatter(t, c, pagemodel.UsualMatter()))
	if got := textOf(s.matter.prelims...); !slices.Equal(got, []string{"The Night Oven", "The Night Oven", "Ada Field"}) {
		t.Errorf("made of the book: %q", got)
	}
	m := pagemodel.UsualMatter().With(pagemodel.MatterPage{Kind: pagemodel.TitlePage, Text: []string{"Night", "", "poems"}})
	if got := textOf(setOf(withMatter(t, c, m)).matter.prelims...); !slices.Equal(got, []string{"The Night Oven", "Night", "poems"}) {
		t.Errorf("the poet’s own: %q", got)
	}
	about := c.About()
	about.Epigraph = []string{"bread", "— a proverb"}
	c = mustApply(t, c, pagemodel.SetAbout{About: about})
	m = pagemodel.Matter{}.With(pagemodel.MatterPage{Kind: pagemodel.EpigraphPage})
	if got := textOf(setOf(withMatter(t, c, m)).matter.prelims...); !slices.Equal(got, about.Epigraph) {
		t.Errorf("the epigraph: %q", got)
	}
}

// TestNotes: the poems' notes under their names, in the order of the book, and
// then the page's own words.
func TestNotes(t *testing.T) {
	c := bakery(
		poemNamed{pagemodel.PoemHead{Title: "Proving", Note: "After a walk.\nTwice."}, "All night", 3},
		poemNamed{pagemodel.PoemHead{Title: "Silent"}, "No note", 3},
		poemNamed{pagemodel.PoemHead{Note: "For the street."}, "Lamps, lamps,", 3},
	).Collection()
	got := textOf(setOf(withMatter(t, c, matterOf(pagemodel.NotesPage))).matter.end...)
	want := []string{"Notes", "Proving", "After a walk.", "Twice.", "“Lamps, lamps”", "For the street.", "words of the poet’s"}
	if !slices.Equal(got, want) {
		t.Errorf("%q, want %q", got, want)
	}
}

// TestMatterFaults: what the face has not is named there too.
func TestMatterFaults(t *testing.T) {
	m := pagemodel.Matter{}.With(pagemodel.MatterPage{Kind: pagemodel.DedicationPage, Text: []string{"for 漢"}})
	s := setOf(withMatter(t, bakery().Collection(), m))
	if got := s.matter.prelims[0].faults(); len(got) != 1 || got[0].kind != MissingGlyph || got[0].text != "漢" {
		t.Errorf("faults: %+v", got)
	}
}

// TestMatterOnNarrowPages: on the narrowest measure that can be set everything
// still stands, and setting it ends.
func TestMatterOnNarrowPages(t *testing.T) {
	b := bakery(poemNamed{pagemodel.PoemHead{Title: "Incomprehensibilities of proving"}, "Unquestionably", 3})
	c := b.Collection()
	d := c.Design()
	d.Margins.Outer = d.Trim.Width - d.Margins.Inner - 4*d.Size
	c = mustApply(t, c, pagemodel.SetDesign{Design: d})
	s := setOf(withMatter(t, c, matterOf(pagemodel.MatterKinds...)))
	all := strings.Join(textOf(slices.Concat(s.matter.prelims, s.matter.end)...), " ")
	if n := strings.Count(all, "Incomprehensibilities"); n != 2 {
		t.Errorf("the title stands %d times in contents and index: %s", n, all)
	}
}

// TestMatterFollows: after each edit of what the prelims and end matter name or
// are set by, they are in a warm set what they are in a cold one.
func TestMatterFollows(t *testing.T) {
	c := bakery(
		poemNamed{pagemodel.PoemHead{Title: "Proving", Note: "A note."}, "All night", 3},
		poemNamed{pagemodel.PoemHead{}, "Lamps, lamps,", 3},
	).Collection()
	poems := c.Order()
	head := poems[0].Poem.Head()
	retitled, noted, short := head, head, head
	retitled.Title, noted.Note, short.Short = "Crust", "Another.", "Pr."
	first, design := pagemodel.LineRef{}, c.Design()
	for _, l := range poems[1].Poem.Lines() {
		first = pagemodel.LineRef{Poem: poems[1].Poem.ID(), Line: l.ID()}
		break
	}
	centred, larger, italic := design, design, design
	centred.TitleCentred, larger.TitleSize, italic.Titles = true, pagemodel.Pt(20), pagemodel.TitleItalic
	id := poems[0].Poem.ID()
	setter := NewSetter(Bundled())
	c = withMatter(t, c, pagemodel.UsualMatter().With(pagemodel.MatterPage{Kind: pagemodel.NotesPage}).With(pagemodel.MatterPage{Kind: pagemodel.IndexPage}))
	before := setter.Set(nil, c)
	for name, edit := range map[string]pagemodel.Edit{
		"a title": pagemodel.SetHead{Poem: id, Head: retitled}, "a note": pagemodel.SetHead{Poem: id, Head: noted},
		"a short title": pagemodel.SetHead{Poem: id, Head: short}, "a first line": pagemodel.Retype{LineRef: first, Text: "Doors"},
		"the order": pagemodel.Move{Poem: poems[1].Poem.ID(), Before: id}, "the book": pagemodel.SetAbout{About: pagemodel.About{Title: "Crumbs"}},
		"titles in the middle": pagemodel.SetDesign{Design: centred}, "larger titles": pagemodel.SetDesign{Design: larger},
		"italic titles": pagemodel.SetDesign{Design: italic}, "the matter": pagemodel.SetMatter{Matter: matterOf(pagemodel.ContentsPage)},
	} {
		next := mustApply(t, c, edit)
		warm, cold := setter.Set(before, next), setter.Set(nil, next)
		if !reflect.DeepEqual(warm.matter, cold.matter) {
			t.Errorf("%s: the matter did not follow", name)
		}
		if reflect.DeepEqual(before.matter, cold.matter) {
			t.Errorf("%s: the edit says nothing to the matter, so it tests nothing", name)
		}
	}
}

// TestLargeTitles: type that is larger than the leading is given as many rows as
// keep it clear of the row above.
func TestLargeTitles(t *testing.T) {
	c := bakery().Collection()
	d := c.Design()
	d.TitleSize = 2 * d.Leading
	c = mustApply(t, c, pagemodel.SetDesign{Design: d})
	m := pagemodel.Matter{}.With(pagemodel.MatterPage{Kind: pagemodel.HalfTitle, Text: []string{"The Night Oven and the Street", "Other Poems"}})
	rows := setOf(withMatter(t, c, m)).matter.prelims[0].rows
	if len(rows) != 3 {
		t.Fatalf("%d rows, want three", len(rows))
	}
	for i := range rows[1:] {
		if apart := rows[i+1].Grid - rows[i].Grid; apart != 2 {
			t.Errorf("row %d stands %d lines below the one above, want 2", i+1, apart)
		}
	}
}
