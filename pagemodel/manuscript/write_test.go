package manuscript

import (
	"bytes"
	"errors"
	"fmt"
	"slices"
	"strings"
	"testing"

	"headland/pagemodel"
)

// oneLine is a book of one poem of one line.
func oneLine(change func(*pagemodel.Builder) pagemodel.Line) *pagemodel.Collection {
	b := pagemodel.NewBuilder(pagemodel.About{}, pagemodel.DefaultDesign())
	l := change(b)
	b.Poem(pagemodel.PoemHead{Title: "T"}, []pagemodel.Part{pagemodel.NewPart("", []pagemodel.Stanza{
		pagemodel.NewStanza(pagemodel.Verse, []pagemodel.Line{l}),
	})})
	return b.Collection()
}

func written(t *testing.T, c *pagemodel.Collection, opts Options) (string, string) {
	t.Helper()
	var b bytes.Buffer
	notices, err := Write(&b, c, opts)
	if err != nil {
		t.Fatal(err)
	}
	return strings.TrimPrefix(b.String(), "## T\n\n"), joinNotices(notices)
}

func TestWriteLine(t *testing.T) {
	span := func(start, end int, s pagemodel.Style) pagemodel.Span {
		return pagemodel.Span{Start: start, End: end, Style: s}
	}
	for _, tc := range []struct {
		text  string
		spans []pagemodel.Span
		want  string
	}{
		{"an italic word", []pagemodel.Span{span(3, 9, pagemodel.Italic)}, "an *italic* word"},
		{"a bold word", []pagemodel.Span{span(2, 6, pagemodel.Bold)}, "a **bold** word"},
		{"both", []pagemodel.Span{span(0, 4, pagemodel.Italic|pagemodel.Bold)}, "***both***"},
		{"AD 1", []pagemodel.Span{span(0, 2, pagemodel.SmallCaps)}, "[caps]AD[/caps] 1"},
		{"one two three", []pagemodel.Span{span(0, 4, 1), span(4, 7, 3), span(7, 13, 1)}, "*one **two** three*"},
		{"ab", []pagemodel.Span{span(0, 1, 1), span(1, 2, 2)}, "*a***b**"},
		{"abc", []pagemodel.Span{span(0, 2, 1), span(2, 3, 2)}, "*ab***c**"},
		{"one two", []pagemodel.Span{span(0, 4, 1), span(4, 7, 2)}, "[italic]one [/italic][bold]two[/bold]"},
		{"a b", []pagemodel.Span{span(0, 2, 1)}, "[italic]a [/italic]b"},
		{"5 * 3_", nil, `5 \* 3\_`},
		{"[door] #7", nil, "[door] #7"},
		{"> x", nil, `\> x`},
		{"# x", nil, `\# x`},
		{"[note: x]", nil, `\[note: x]`},
		{" a ", nil, `\ a\ `},
		{"", nil, `\`},
	} {
		c := oneLine(func(b *pagemodel.Builder) pagemodel.Line { return b.Line(tc.text).WithSpans(tc.spans) })
		if got, lost := written(t, c, Options{}); got != tc.want+"\n" || lost != "" {
			t.Errorf("%q %v: got %q %s, want %q", tc.text, tc.spans, got, lost, tc.want)
		}
		mustReturn(t, c, Markdown)
	}
}

func TestWriteGap(t *testing.T) {
	for at, want := range map[int]string{0: "[gap 2] door closes", 2: "do[gap 2]or closes", 4: "door[gap 2] closes", 5: "door [gap 2] closes", 11: "door closes[gap 2]"} {
		c := oneLine(func(b *pagemodel.Builder) pagemodel.Line { return b.Line("door closes").WithGap(at, 2*pagemodel.OneEm) })
		if got, _ := written(t, c, Options{}); got != want+"\n" {
			t.Errorf("gap at %d: got %q, want %q", at, got, want)
		}
		mustReturn(t, c, Markdown)
		mustReturn(t, c, Text)
	}
}

func TestWriteStart(t *testing.T) {
	c := oneLine(func(b *pagemodel.Builder) pagemodel.Line {
		return b.Line("a").WithIndent(1500).WithDropped(true).WithRange(pagemodel.RangeCentre)
	})
	if got, _ := written(t, c, Options{}); got != "      [drop] [centre] a\n" {
		t.Errorf("got %q", got)
	}
	c = oneLine(func(b *pagemodel.Builder) pagemodel.Line { return b.Line("a").WithIndent(1300) })
	if got, _ := written(t, c, Options{}); got != "[indent 1.3] a\n" {
		t.Errorf("got %q", got)
	}
}

func TestWritePages(t *testing.T) {
	c := oneLine(func(b *pagemodel.Builder) pagemodel.Line {
		return b.Line("flour eggs").WithIndent(1000).WithTied(true).WithTab(6, 12*pagemodel.OneEm)
	})
	if got, _ := written(t, c, Options{}); got != "    [together] flour [tab 12] eggs\n" {
		t.Errorf("got %q", got)
	}
	c, _ = read(t, "a.md", "## T\n\na\n[page] b\n[together] c")
	if got, _ := written(t, c, Options{}); got != "a\n[page] b\n[together] c\n" {
		t.Errorf("got %q", got)
	}
}

// TestWriteWhite holds that white above a line is written at its start, in this
// edition above the first piece alone, and that what can't be white is text.
func TestWriteWhite(t *testing.T) {
	white := func(b *pagemodel.Builder) pagemodel.Line { return b.Line("two words").WithIndent(1000).WithAbove(2) }
	c := oneLine(white)
	if got, _ := written(t, c, Options{}); got != "    [white 2] two words\n" {
		t.Errorf("got %q", got)
	}
	mustReturn(t, c, Markdown)
	mustReturn(t, c, Text)
	p := c.Order()[0].Poem
	ref := pagemodel.LineRef{Poem: p.ID(), Line: p.Line(pagemodel.Place{}).ID()}
	c, err := pagemodel.Break{LineRef: ref, At: 4, In: pagemodel.InEdition}.Apply(c)
	if err != nil {
		t.Fatal(err)
	}
	if got, _ := written(t, c, Options{Edition: true}); got != "    [white 2] two\n    words\n" {
		t.Errorf("in this edition, got %q", got)
	}
	c = oneLine(func(b *pagemodel.Builder) pagemodel.Line { return b.Line("[white 2] is what the file says") })
	if got, _ := written(t, c, Options{}); got != "\\[white 2] is what the file says\n" {
		t.Errorf("got %q", got)
	}
	mustReturn(t, c, Markdown)
	c = oneLine(func(b *pagemodel.Builder) pagemodel.Line { return b.Line("a").WithAbove(70) })
	if got, lost := written(t, c, Options{}); got != "[white 60] a\n" || lost == "" {
		t.Errorf("too much white: got %q %q", got, lost)
	}
}

// TestReadWhite holds that white that can't be read is kept as text and said.
func TestReadWhite(t *testing.T) {
	for raw, want := range map[string]int{"[white 1] a": 1, "[white 60] [right] a": 60, "[white 40] [white 40] a": 60} {
		c, notices := read(t, "a.md", "## T\n\n"+raw)
		if l := c.Order()[0].Poem.Line(pagemodel.Place{}); l.Above() != want || l.Text() != "a" || len(notices) > 0 {
			t.Errorf("%s: %q with %d above, %v", raw, l.Text(), l.Above(), notices)
		}
	}
	for _, raw := range []string{"[white 0] a", "[white 61] a", "[white x] a", "[white] a"} {
		c, notices := read(t, "a.md", "## T\n\n"+raw)
		if l := c.Order()[0].Poem.Line(pagemodel.Place{}); l.Above() != 0 || l.Text() != raw || len(notices) != 1 {
			t.Errorf("%s: %q with %d above, %v", raw, l.Text(), l.Above(), notices)
		}
	}
}

// TestWritePageEnds holds that a stanza break that a page end hides is labelled, and
// that the label is no part of the text when it is read again.
func TestWritePageEnds(t *testing.T) {
	c, _ := read(t, "a.md", "## T\n\na\nb\n\nc\n\n[prose]\nd\n")
	ends := map[pagemodel.LineID]bool{}
	for at, l := range c.Order()[0].Poem.Lines() {
		ends[l.ID()] = at.Stanza > 0 || at.Line == 1 // b begins no stanza: nothing is hidden above it
	}
	const want = "a\nb\n\n[page end: stanza break]\n\nc\n\n[page end: stanza break]\n\n[prose]\nd\n"
	for _, k := range []Kind{Markdown, Text} {
		got, lost := written(t, c, Options{Kind: k, PageEnds: ends})
		if got != want || lost != "" {
			t.Errorf("%v: got\n%s%s\nwant\n%s", k, got, lost, want)
		}
		again, notices := read(t, nameFor(k), "## T\n\n"+got)
		if !slices.Equal(outline(again), outline(c)) || len(notices) > 0 {
			t.Errorf("%v: read again it is %v %v", k, outline(again), notices)
		}
	}
}

func TestWriteEdition(t *testing.T) {
	c, _ := read(t, "a.md", "## T\n\n  [drop] the *long line of* the [gap 2] poem")
	p := c.Order()[0].Poem
	ref := pagemodel.LineRef{Poem: p.ID(), Line: p.Line(pagemodel.Place{}).ID()}
	for _, at := range []int{9, 21} { // before "line", before "poem"
		next, err := pagemodel.Break{LineRef: ref, At: at, In: pagemodel.InEdition}.Apply(c)
		if err != nil {
			t.Fatal(err)
		}
		c = next
	}
	got, lost := written(t, c, Options{Edition: true})
	if want := "  [drop] the *long*\n  *line of* the\n  poem\n"; got != want || lost != "" {
		t.Errorf("got %q %s, want %q", got, lost, want)
	}
	got, lost = written(t, c, Options{})
	if want := "  [drop] the *long line of* the [gap 2] poem\n"; got != want {
		t.Errorf("got %q, want %q", got, want)
	}
	if want := "2 breaks of this edition not written as line breaks: a poem keeps its long lines"; lost != want {
		t.Errorf("got %q, want %q", lost, want)
	}
}

func TestLosses(t *testing.T) {
	for _, tc := range []struct {
		line       func(*pagemodel.Builder) pagemodel.Line
		kind       Kind
		want, lost string
	}{
		{func(b *pagemodel.Builder) pagemodel.Line {
			return b.Line("a b c").WithSpans([]pagemodel.Span{{Start: 0, End: 1, Style: 1}, {Start: 2, End: 3, Style: 2}, {Start: 4, End: 5, Style: 4}})
		}, Text, "a b c", "3 styled passages can't be kept in plain text; write Markdown to keep them"},
		{func(b *pagemodel.Builder) pagemodel.Line {
			return b.Line("a\x01\u2028bc\xff").WithSpans([]pagemodel.Span{{Start: 6, End: 7, Style: 1}}).WithGap(5, 1000)
		}, Markdown, "a [gap 1] b*c*\uFFFD", "1 text held ends of lines or control characters, which became spaces or were left out"},
		{func(b *pagemodel.Builder) pagemodel.Line { return b.Line("ab").WithIndent(-1).WithGap(1, 90000) },
			Markdown, "a[gap 60]b", "1 line had an indent, a gap or a tab that is not from 0 to 60 ems, or white that is not from 0 to 60 lines, and was brought within"},
		{func(b *pagemodel.Builder) pagemodel.Line { return b.Line(strings.Repeat("a", maxLine+1)) },
			Markdown, strings.Repeat("a", maxLine+1), "1 line can't be read again: longer than 64 KB; break them first"},
	} {
		got, lost := written(t, oneLine(tc.line), Options{Kind: tc.kind})
		if got != tc.want+"\n" || lost != tc.lost {
			t.Errorf("got %q %q, want %q %q", got, lost, tc.want, tc.lost)
		}
	}
}

type brokenWriter struct{}

var errFull = errors.New("the disk is full")

func (brokenWriter) Write([]byte) (int, error) { return 0, errFull }

func TestWriteErrors(t *testing.T) {
	c := oneLine(func(b *pagemodel.Builder) pagemodel.Line { return b.Line("a") })
	if _, err := Write(brokenWriter{}, c, Options{}); !errors.Is(err, errFull) {
		t.Errorf("got %v", err)
	}
	if _, err := Write(&bytes.Buffer{}, pagemodel.NewCollection(pagemodel.About{}, pagemodel.DefaultDesign()), Options{}); err == nil {
		t.Error("an empty book was written")
	}
}

func BenchmarkHundredPoems(b *testing.B) {
	var text strings.Builder
	for n := range 100 {
		fmt.Fprintf(&text, "## Poem %d\n\n%s\n", n, strings.Repeat("A line of *verse* that goes on, [gap 2] and on\n    and on—\n\n", 15))
	}
	b.SetBytes(int64(text.Len()))
	for b.Loop() {
		c, _ := read(b, "a.md", text.String())
		if _, err := Write(&bytes.Buffer{}, c, Options{}); err != nil {
			b.Fatal(err)
		}
	}
}

// TestWriteEditionOnPages holds that of a line that this edition breaks the first
// piece begins the page, and the last keeps to the line below.
func TestWriteEditionOnPages(t *testing.T) {
	c, _ := read(t, "a.md", "## T\n\na\n[page] [together] two words\nc")
	p := c.Order()[0].Poem
	ref := pagemodel.LineRef{Poem: p.ID(), Line: p.Line(pagemodel.Place{Line: 1}).ID()}
	c, err := pagemodel.Break{LineRef: ref, At: 4, In: pagemodel.InEdition}.Apply(c)
	if err != nil {
		t.Fatal(err)
	}
	if got, _ := written(t, c, Options{Edition: true}); got != "a\n[page] two\n[together] words\nc\n" {
		t.Errorf("got %q", got)
	}
}
