package manuscript

import (
	"bytes"
	"fmt"
	"slices"
	"strings"
	"testing"

	"headland/assets"
	"headland/pagemodel"

	"pgregory.net/rapid"
)

// flat is a line without what a manuscript does not keep: its identity, its
// seams and what was decided about its length.
func flat(l pagemodel.Line) string {
	return fmt.Sprintf("%q spans %v indent %v range %v dropped %v gaps %v opens %v tied %v above %d",
		l.Text(), l.Spans(), l.Indent(), l.Range(), l.Dropped(), l.Gaps(), l.OpensPage(), l.Tied(), l.Above())
}

// outline is all that a manuscript keeps of a collection, line by line.
func outline(c *pagemodel.Collection) []string {
	out := []string{fmt.Sprintf("%q", c.About()), matterOutline(c.Matter())}
	for _, e := range c.Order() {
		if s := e.Section; s != nil {
			out = append(out, fmt.Sprintf("section %q %q", s.Title, s.Epigraph))
			continue
		}
		out = append(out, fmt.Sprintf("poem %+v", e.Poem.Head()))
		for _, part := range e.Poem.Parts() {
			out = append(out, fmt.Sprintf("part %q", part.Heading()))
			for _, s := range part.Stanzas() {
				out = append(out, fmt.Sprintf("stanza %d", s.Kind()))
				for _, l := range s.Lines() {
					out = append(out, flat(l))
				}
			}
		}
	}
	return out
}

func matterOutline(m pagemodel.Matter) string {
	return fmt.Sprintf("%q roman %v parts %v %v", m.Pages, m.Roman, m.Parts, m.Alphabet)
}

// failer is what a test, a fuzz target and a property have in common.
type failer interface {
	Helper()
	Fatalf(format string, args ...any)
}

func nameFor(k Kind) string {
	return map[Kind]string{Markdown: "book.md", Text: "book.txt"}[k]
}

func write(t failer, c *pagemodel.Collection, opts Options) string {
	t.Helper()
	var b bytes.Buffer
	if _, err := Write(&b, c, opts); err != nil {
		t.Fatalf("write: %v", err)
	}
	return b.String()
}

// mustReturn holds that what is written is read back the same, that nothing in
// it gives a notice, and that it is written the same again.
func mustReturn(t failer, c *pagemodel.Collection, k Kind) {
	t.Helper()
	first := write(t, c, Options{Kind: k})
	again, notices, err := Read(nameFor(k), []byte(first), c.Design())
	if err != nil {
		t.Fatalf("%v: %v\n%s", k, err, first)
	}
	if len(notices) > 0 {
		t.Fatalf("%v: what was written gave notice: %v\n%s", k, notices, first)
	}
	if want, got := outline(c), outline(again); !slices.Equal(want, got) {
		t.Fatalf("%v:\n%s\nwas read as\n%s\nwant\n%s", k, first, strings.Join(got, "\n"), strings.Join(want, "\n"))
	}
	if second := write(t, again, Options{Kind: k}); second != first {
		t.Fatalf("%v: written again, differs:\n%s\nwas\n%s", k, second, first)
	}
}

// The pieces of texts that have a meaning somewhere in a manuscript.
var awkward = []string{
	" ", "  ", "\t", "\u00a0", "\u2003", "\u202f", "#", "##", "# ", "#7", "####", ">", "> ", "[", "]", "[gap 2]", "[gap 900]", "[tab 3]", "[tab x]", "[drop]",
	"[page]", "[together]", "[white 2]", "[white 99]", "\u2005", "[page end: stanza break]", "[page end", "[lie: turned]", "[short_title: x]", "page: imprint", "text: x",
	"[centre]", "[right]", "[indent 1.3]", "[indent x]", "[prose]", "[caps]", "[/caps]", "[italic]", "[/bold]", "[place: x]",
	"[note: x]", "[foo: x]", "[start: nowhere]", "*", "**", "***", "_", "__", `\`, `\\`, "---", "—", "–", "é", "e\u0301", "“", "’", "a", "b c",
	"title: x", "\ufeff", "\u200b", "\u200f", "1.", "`", "<b>", "&amp;", "🌊", ":", "\"", "x",
}

func drawText(t *rapid.T, label string) string {
	return strings.Join(rapid.SliceOfN(rapid.SampledFrom(awkward), 0, 6).Draw(t, label), "")
}

func drawOffset(t *rapid.T, text string) int {
	offsets := []int{len(text)}
	for i := range text {
		offsets = append(offsets, i)
	}
	return rapid.SampledFrom(offsets).Draw(t, "offset")
}

func drawLine(t *rapid.T, b *pagemodel.Builder, styled bool) pagemodel.Line {
	l := b.Line(drawText(t, "line"))
	if styled {
		l = l.WithSpans(drawSpans(t, l.Text()))
	}
	for range rapid.IntRange(0, 2).Draw(t, "gaps") {
		gap := pagemodel.Gap{At: drawOffset(t, l.Text()), Width: pagemodel.Em(rapid.IntRange(1, 60000).Draw(t, "gap")), Tab: rapid.Bool().Draw(t, "tab")}
		l = withGap(l, gap)
	}
	if rapid.Bool().Draw(t, "indented") {
		l = l.WithIndent(rapid.SampledFrom([]pagemodel.Em{250, 500, 1000, 1300, 4000, 60000, 1}).Draw(t, "indent"))
	}
	rng := rapid.SampledFrom([]pagemodel.Range{pagemodel.RangeLeft, pagemodel.RangeLeft, pagemodel.RangeCentre, pagemodel.RangeRight}).Draw(t, "range")
	white := rapid.SampledFrom([]int{0, 0, 0, 1, 2, 60}).Draw(t, "white")
	return l.WithRange(rng).WithAbove(white).WithDropped(rapid.IntRange(0, 4).Draw(t, "dropped") == 0)
}

func drawSpans(t *rapid.T, text string) []pagemodel.Span {
	var cuts []int
	for range rapid.IntRange(0, 4).Draw(t, "cuts") {
		cuts = append(cuts, drawOffset(t, text))
	}
	slices.Sort(cuts)
	var spans []pagemodel.Span
	for i := 1; i < len(cuts); i++ {
		style := pagemodel.Style(rapid.IntRange(0, 7).Draw(t, "style"))
		spans = append(spans, pagemodel.Span{Start: cuts[i-1], End: cuts[i], Style: style})
	}
	return spans
}

func drawStanzas(t *rapid.T, b *pagemodel.Builder, styled bool) []pagemodel.Stanza {
	var stanzas []pagemodel.Stanza
	for range rapid.IntRange(0, 3).Draw(t, "stanzas") {
		kind := rapid.SampledFrom([]pagemodel.StanzaKind{pagemodel.Verse, pagemodel.Verse, pagemodel.Prose}).Draw(t, "kind")
		n := 1
		if kind == pagemodel.Verse {
			n = rapid.IntRange(1, 3).Draw(t, "lines")
		}
		var lines []pagemodel.Line
		for range n {
			lines = append(lines, drawLine(t, b, styled))
		}
		stanzas = append(stanzas, pagemodel.NewStanza(kind, lines))
	}
	return stanzas
}

func drawTexts(t *rapid.T, label string) []string {
	var texts []string
	for range rapid.IntRange(0, 2).Draw(t, label) {
		texts = append(texts, drawText(t, label))
	}
	return texts
}

func drawPoem(t *rapid.T, b *pagemodel.Builder, styled bool) {
	lines := func(label string) string { return strings.Join(drawTexts(t, label), "\n") }
	head := pagemodel.PoemHead{
		Title: drawText(t, "title"), Subtitle: lines("subtitle"), Dedication: lines("dedication"),
		Epigraph: drawTexts(t, "epigraph"), Place: lines("place"), Note: lines("note"), Form: pagemodel.ParseForm(drawText(t, "form")),
		Short: lines("short title"), Start: pagemodel.Start(rapid.IntRange(0, 4).Draw(t, "start")), Blank: rapid.Bool().Draw(t, "blank"),
		Run: rapid.IntRange(-2, 2).Draw(t, "run"), Edge: pagemodel.Edge(rapid.IntRange(0, 3).Draw(t, "edge")), Lie: pagemodel.Lie(rapid.IntRange(0, 2).Draw(t, "lie")),
		Size: rapid.SampledFrom([]pagemodel.Length{0, pagemodel.Pt(4), pagemodel.Pt(10.5), pagemodel.MM(3), pagemodel.Pt(72)}).Draw(t, "size"),
	}
	var parts []pagemodel.Part
	for range rapid.IntRange(1, 3).Draw(t, "parts") {
		heading := ""
		if rapid.Bool().Draw(t, "headed") {
			heading = drawText(t, "heading")
		}
		parts = append(parts, pagemodel.NewPart(heading, drawStanzas(t, b, styled)))
	}
	drawPages(t, parts)
	b.Poem(head, parts)
}

// drawPages says of some lines that a page begins with them, or that they keep to
// the line below. As in a book, no page begins with a poem's first line, nor below
// one that is kept with the next.
func drawPages(t *rapid.T, parts []pagemodel.Part) {
	first, tied := true, false
	for _, part := range parts {
		for _, s := range part.Stanzas() {
			for i, l := range s.Lines() {
				opens := !first && !tied && rapid.IntRange(0, 3).Draw(t, "opens") == 0
				tied = rapid.IntRange(0, 3).Draw(t, "tied") == 0
				s.Lines()[i], first = l.WithOpensPage(opens).WithTied(tied), false
			}
		}
	}
}

func drawMatter(t *rapid.T) pagemodel.Matter {
	m := pagemodel.Matter{
		Roman: rapid.Bool().Draw(t, "roman"), Parts: rapid.Bool().Draw(t, "parts listed"), Alphabet: pagemodel.Alphabet(rapid.IntRange(0, 1).Draw(t, "alphabet")),
	}
	for _, kind := range rapid.SliceOfN(rapid.SampledFrom(pagemodel.MatterKinds), 0, 4).Draw(t, "kinds") {
		m = m.With(pagemodel.MatterPage{Kind: kind, Title: drawText(t, "heading of a page"), Text: drawTexts(t, "words of a page")})
	}
	return m
}

func drawBook(t *rapid.T, styled bool) *pagemodel.Collection {
	about := pagemodel.About{Title: drawText(t, "book"), Poet: drawText(t, "poet"), Language: "cy", Epigraph: drawTexts(t, "book epigraph")}
	if rapid.Bool().Draw(t, "nameless") {
		about = pagemodel.About{}
	}
	b := pagemodel.NewBuilder(about, pagemodel.DefaultDesign())
	if rapid.Bool().Draw(t, "matter") {
		if err := b.Matter(drawMatter(t)); err != nil {
			t.Fatal(err)
		}
	}
	for range rapid.IntRange(0, 2).Draw(t, "sections") {
		b.Section(drawText(t, "section"), drawTexts(t, "section epigraph"))
		if rapid.Bool().Draw(t, "filled") {
			drawPoem(t, b, styled)
		}
	}
	drawPoem(t, b, styled)
	return b.Collection()
}

func TestWriteThenReadMarkdown(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) { mustReturn(t, drawBook(t, true), Markdown) })
}

func TestWriteThenReadText(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) { mustReturn(t, drawBook(t, false), Text) })
}

// TestDemo holds that the demo collection is read without a doubt.
func TestDemo(t *testing.T) {
	c, notices, err := Read("collection.md", assets.Demo(), pagemodel.DefaultDesign())
	if err != nil {
		t.Fatal(err)
	}
	for _, n := range notices {
		t.Error(n)
	}
	mustReturn(t, c, Markdown)
}

// FuzzRead holds that nothing makes Read panic, and that what is read can be
// written and read again the same.
func FuzzRead(f *testing.F) {
	for _, s := range awkward {
		f.Add([]byte("## T\n"+s+"\n\n"+s+" x\n"), true)
	}
	f.Add(assets.Demo(), true)
	f.Add([]byte("---\ntitle: \"x\"\nepigraph:\n---\n> y\n### *\n[prose]\n  a\n b\\\n[place: z]"), false)
	f.Add([]byte("---\npage: imprint\ntext: \"\"\nroman: yes\n---\n## x\n[run: -1]\n[blank: before]\n[together] a\n[page end: stanza break]\n[tab 2] b\n[white 3] [white 0] c\n\u2005d"), true)
	f.Add([]byte("\xff\xfe#\x00 \x00a\x00"), false)
	f.Add([]byte("*one\n**two* three** _four_\x93 \f[gap 2] \\"), true)
	f.Fuzz(func(t *testing.T, data []byte, markdown bool) {
		kind := Text
		if markdown {
			kind = Markdown
		}
		c, _, err := Read(nameFor(kind), data, pagemodel.DefaultDesign())
		if err == nil {
			mustReturn(t, c, kind)
		}
	})
}
