package document

import (
	"fmt"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"headland/assets"
	"headland/pagemodel"
	"headland/pagemodel/manuscript"
)

// Every style that a reader tells. Pandoc does not know small capitals in a .odt.
const (
	allStyles = 7
	odtKnown  = 3
)

// sameBlocks holds that two lists of blocks are the same, showing the first that
// differs.
func sameBlocks(t testing.TB, reader string, got, want []string) {
	t.Helper()
	for i := range max(len(got), len(want)) {
		if i >= len(got) || i >= len(want) || got[i] != want[i] {
			t.Fatalf("%s, paragraph %d of %d, want %d:\n%q\nwant\n%q", reader, i+1, len(got), len(want), at(got, i), at(want, i))
		}
	}
}

func at(list []string, i int) string {
	if i < len(list) {
		return list[i]
	}
	return "(nothing)"
}

// mustRead holds that both readers read all that the collection says, in its order:
// python-docx every character, pandoc all but what it takes for one space.
func mustRead(t *testing.T, c *pagemodel.Collection, o Options) {
	t.Helper()
	d, want := FromCollection(c, o), expected(c, o)
	docx := saved(t, d, "docx")
	read := pythonDocx(t, docx)
	sameBlocks(t, "python-docx", exact(blocksOf(t, read.Blocks)), exact(want))
	if about := []string{c.About().Title, c.About().Poet, c.About().Language}; !slices.Equal(read.Core, about) {
		t.Errorf("the file is said to be %q, want %q", read.Core, about)
	}
	got, meta := pandoc(t, docx)
	if meta["title"] != c.About().Title || meta["author"] != c.About().Poet {
		t.Errorf("pandoc takes %q for what the file is", meta)
	}
	sameBlocks(t, "pandoc, .docx", loose(got, allStyles), loose(want[2:], allStyles))
	got, _ = pandoc(t, saved(t, d, "odt"))
	sameBlocks(t, "pandoc, .odt", loose(got, odtKnown), loose(want, odtKnown))
}

func demo(t testing.TB) *pagemodel.Collection {
	t.Helper()
	c, _, err := manuscript.Read("demo.md", assets.Demo(), pagemodel.DefaultDesign())
	if err != nil {
		t.Fatal(err)
	}
	b := pagemodel.NewBuilder(pagemodel.About{Title: c.About().Title, Poet: c.About().Poet, Language: "en-GB"}, c.Design())
	for _, e := range c.Order() {
		if e.Section != nil {
			b.Section(e.Section.Title, e.Section.Epigraph)
			continue
		}
		b.Poem(e.Poem.Head(), e.Poem.Parts())
	}
	return b.Collection()
}

func TestReadersReadTheDemo(t *testing.T) {
	c := demo(t)
	n := 0
	ends := map[pagemodel.LineID]string{}
	for _, p := range c.Poems() {
		for place, l := range p.Lines() {
			if n++; n%7 == 0 && place.Line == 0 && place.Stanza > 0 {
				ends[l.ID()] = fmt.Sprint(n)
			}
		}
	}
	mustRead(t, c, Options{PageEnds: ends})
}

// pieces are what random lines are made of: what has a meaning in XML, in a reader
// or in a manuscript, and characters that are easily lost.
var pieces = []string{
	"a", "b c", " ", "  ", "\t", "\u00a0", "\u00ad", "\u2003", "\u202f", "\u200b", "\u200d", "\ufeff", "\u2011", "\u2028", "\u0085", "\u009c",
	"<b>", "</w:t>", "&amp;", "]]>", "&#65;", "\"", "'", "’", "“", "--", "—", "…", "*", "_", "#", "[gap 2]", "\\", "é", "e\u0301", "🌊", "\u202e", "\ufffd", "שלום", "1.", "- ", "=1+1",
}

// randomText is short enough for a line, and no reader's idea of white stands at its
// ends or alone in it.
func randomText(r *rand.Rand) string {
	var b strings.Builder
	b.WriteString("x")
	for range r.IntN(8) {
		b.WriteString(pieces[r.IntN(len(pieces))])
	}
	return b.String() + "z"
}

func randomTexts(r *rand.Rand) []string {
	var list []string
	for range r.IntN(3) {
		list = append(list, randomText(r))
	}
	return list
}

// randomLine has styles, gaps, a tab, an indent, white above and breaks of this
// edition.
func randomLine(r *rand.Rand, b *pagemodel.Builder) pagemodel.Line {
	text := randomText(r)
	if r.IntN(9) == 0 {
		return b.Line("")
	}
	l := b.Line(text)
	offsets := []int{}
	for i := range text {
		offsets = append(offsets, i)
	}
	cut := func() int { return offsets[r.IntN(len(offsets))] }
	cuts := []int{cut(), cut(), cut()}
	slices.Sort(cuts)
	l = l.WithSpans([]pagemodel.Span{{Start: cuts[0], End: cuts[1], Style: pagemodel.Style(r.IntN(8))}, {Start: cuts[1], End: cuts[2], Style: pagemodel.Style(r.IntN(8))}})
	if r.IntN(2) == 0 {
		l = l.WithGap(cut(), pagemodel.Em(1+r.IntN(5000)))
	}
	if r.IntN(4) == 0 {
		l = l.WithTab(len(text), 30*pagemodel.OneEm)
	}
	if r.IntN(2) == 0 {
		l = l.WithIndent(pagemodel.Em(r.IntN(6000)))
	}
	return l
}

func randomPoem(r *rand.Rand, b *pagemodel.Builder) {
	joined := func() string { return strings.Join(randomTexts(r), "\n") }
	head := pagemodel.PoemHead{Title: joined(), Subtitle: joined(), Dedication: joined(), Epigraph: randomTexts(r), Place: joined(), Note: joined()}
	var parts []pagemodel.Part
	for range 1 + r.IntN(3) {
		var stanzas []pagemodel.Stanza
		for range r.IntN(4) {
			if r.IntN(4) == 0 {
				stanzas = append(stanzas, pagemodel.NewStanza(pagemodel.Prose, []pagemodel.Line{randomLine(r, b)}))
				continue
			}
			var lines []pagemodel.Line
			for range 1 + r.IntN(4) {
				lines = append(lines, randomLine(r, b).WithAbove(max(0, r.IntN(6)-3)))
			}
			stanzas = append(stanzas, pagemodel.NewStanza(pagemodel.Verse, lines))
		}
		heading := ""
		if r.IntN(2) == 0 {
			heading = randomText(r)
		}
		parts = append(parts, pagemodel.NewPart(heading, stanzas))
	}
	b.Poem(head, parts)
}

func randomBook(r *rand.Rand) *pagemodel.Collection {
	b := pagemodel.NewBuilder(pagemodel.About{Title: "A <Book> & more", Poet: "W. “T”", Language: "cy"}, pagemodel.DefaultDesign())
	for range 12 {
		if r.IntN(3) == 0 {
			b.Section(randomText(r), randomTexts(r))
		}
		randomPoem(r, b)
	}
	return b.Collection()
}

func TestReadersReadRandomBooks(t *testing.T) {
	for seed := range uint64(8) {
		mustRead(t, randomBook(rand.New(rand.NewPCG(seed, 4))), Options{})
	}
}
