package manuscript

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"headland/pagemodel"
)

// read reads a manuscript that must be readable.
func read(t testing.TB, name, text string) (*pagemodel.Collection, []Notice) {
	t.Helper()
	c, notices, err := Read(name, []byte(text), pagemodel.DefaultDesign())
	if err != nil {
		t.Fatal(err)
	}
	return c, notices
}

// sketch is a collection in few words: a title, then each stanza in braces, its
// lines parted by bars, with what is unusual about a line before it.
func sketch(c *pagemodel.Collection) string {
	var words []string
	for _, e := range c.Order() {
		if e.Section != nil {
			words = append(words, "§"+strings.Join(append([]string{e.Section.Title}, e.Section.Epigraph...), ">"))
			continue
		}
		h := e.Poem.Head()
		words = append(words, "¶"+strings.Join(append([]string{h.Title}, h.Epigraph...), ">"))
		for i, part := range e.Poem.Parts() {
			if i > 0 || part.Heading() != "" || len(part.Stanzas()) == 0 && len(e.Poem.Parts()) > 1 {
				words = append(words, "("+part.Heading()+")")
			}
			for _, s := range part.Stanzas() {
				words = append(words, sketchStanza(s))
			}
		}
	}
	return strings.Join(words, " ")
}

func sketchStanza(s pagemodel.Stanza) string {
	var lines []string
	for _, l := range s.Lines() {
		lines = append(lines, sketchLine(l))
	}
	text := "{" + strings.Join(lines, "|") + "}"
	if s.Kind() == pagemodel.Prose {
		text = "prose" + text
	}
	return text
}

func sketchLine(l pagemodel.Line) string {
	var b strings.Builder
	if l.Indent() != 0 {
		fmt.Fprintf(&b, "<%v>", l.Indent())
	}
	if l.OpensPage() {
		b.WriteString("<page>")
	}
	if l.Tied() {
		b.WriteString("<together>")
	}
	if l.Dropped() {
		b.WriteString("<drop>")
	}
	if l.Range() != pagemodel.RangeLeft {
		fmt.Fprintf(&b, "<%v>", l.Range())
	}
	b.WriteString(l.Text())
	for _, s := range l.Spans() {
		fmt.Fprintf(&b, " %s:%q", [...]string{"", "i", "b", "ib", "c", "ic", "bc", "ibc"}[s.Style], l.Text()[s.Start:s.End])
	}
	for _, g := range l.Gaps() {
		if g.Tab {
			b.WriteString(" tab")
		}
		fmt.Fprintf(&b, " %v@%d", g.Width, g.At)
	}
	return b.String()
}

func TestStructure(t *testing.T) {
	for _, tc := range []struct{ name, text, want string }{
		{"one poem without a title", "a\nb\n\nc\n", "¶ {a|b} {c}"},
		{"white lines count as one", "a\n \t\n\n\u00a0\nb", "¶ {a} {b}"},
		{"single # alone is a poem", "# A\na\n# B\nb", "¶A {a} ¶B {b}"},
		{"double # alone is a poem", "## A\na\n## B\nb", "¶A {a} ¶B {b}"},
		{"both: section and poem", "# S\n> e\n\n## A\na", "§S>e ¶A {a}"},
		{"verse below a section", "# S\na\n## A\nb", "§S ¶ {a} ¶A {b}"},
		{"text before any heading", "a\n## B\nb", "¶ {a} ¶B {b}"},
		{"bare heading", "##\na\n##\nb", "¶ {a} ¶ {b}"},
		{"# without white is verse", "#7\n##8", "¶ {#7|##8}"},
		{"parts", "## A\n### 1\na\n\n### *\nb\n###\nc", "¶A (1) {a} (*) {b} () {c}"},
		{"lines before the first part", "## A\na\n### 2\nb", "¶A {a} (2) {b}"},
		{"first part of nothing", "## A\n###\n### 2\nb", "¶A () (2) {b}"},
		{"epigraph", "## A\n> one\n> two\n>\n> — three\n\na", "¶A>one>two>>— three {a}"},
		{"epigraph after white", "## A\n\n> one\n\na", "¶A>one {a}"},
		{"prose", "## A\n[prose]\na long\n  paragraph\n\nb", "¶A prose{a long paragraph} {b}"},
		{"the label of a page end", "a\n\n[page end: stanza break]\n\nb\n[page end: stanza break]\nc", "¶ {a} {b} {c}"},
		{"prose between verse", "a\n[prose]\nb\n\nc", "¶ {a} prose{b} {c}"},
		{"no lines", "## A\n## B\nb", "¶A ¶B {b}"},
	} {
		c, notices := read(t, "a.md", tc.text)
		if got := sketch(c); got != tc.want || len(notices) > 0 {
			t.Errorf("%s: got %s %v, want %s", tc.name, got, notices, tc.want)
		}
	}
}

func TestLines(t *testing.T) {
	for _, tc := range []struct{ text, want string }{
		{"a  \nb\\\nc", "a|b|c"},
		{"\ta", "<1em>a"},
		{"    a", "<1em>a"},
		{" \t\u2003\u00a0a", "<2.5em>a"},
		{"[indent 1.3] a", "<1.3em>a"},
		{"    [drop][right] a", "<1em><drop><right>a"},
		{"[centre] a", "<centre>a"},
		{"[center] a", "<centre>a"},
		{`\[drop] a`, "[drop] a"},
		{`\ a\ `, " a "},
		{"a\n\\\nb", "a||b"},
		{"door [gap 2] closes", "door closes 2em@5"},
		{"door[gap 2] closes", "door closes 2em@4"},
		{"do[gap .5]or", "door 0.5em@2"},
		{"door [gap 2]closes", "door closes 2em@5"},
		{"door [gap 2]  closes", "door  closes 2em@5"},
		{"[gap 2] closes", "closes 2em@0"},
		{"[gap 1][gap 2]x", "x 3em@0"},
		{"flour [tab 12] eggs", "flour eggs tab 12em@6"},
		{"[tab 3.5] x", "x tab 3.5em@0"},
		{"a[gap 1][tab 4][gap 2]b", "ab tab 4em@1"},
		{"a\n[page] b", "a|<page>b"},
		{"  [together] [drop] a\nb", "<0.5em><together><drop>a|b"},
		{"a\n[page end] b", "a|[page end] b"},
		{`\[page] a`, "[page] a"},
		{"an *italic* word", `an italic word i:"italic"`},
		{"an _italic_ word", `an italic word i:"italic"`},
		{"a **bold** word", `a bold word b:"bold"`},
		{"***both***", `both ib:"both"`},
		{"*one **two** three*", `one two three i:"one " ib:"two" i:" three"`},
		{"[caps]anno domini[/caps] 1", `anno domini 1 c:"anno domini"`},
		{"*over\nthe line*", `over i:"over"|the line i:"the line"`},
		{"wo*r*d and snake_case_here", `word and snake_case_here i:"r"`},
		{"2 * 3 * 4, **, *alone", "2 * 3 * 4, **, *alone"},
		{`\*plain\* and \_plain\_ and \\`, `*plain* and _plain_ and \`},
		{"it\\'s c:\\dir", "it's c:\\dir"},
		{"[italic]a[/italic][bold]b[/bold]", `ab i:"a" b:"b"`},
		{"“*speech*,” she said—*no*—", `“speech,” she said—no— i:"speech" i:"no"`},
		{"a  b\tc\u00a0d", "a  b\tc\u00a0d"},
		{"e\u0301 é \u200f", "e\u0301 é \u200f"},
		{"[link](x) <b> &amp; `c`", "[link](x) <b> &amp; `c`"},
	} {
		c, notices := read(t, "a.md", "##\n\n"+tc.text)
		want := "¶ {" + tc.want + "}"
		if got := sketch(c); got != want || len(notices) > 0 {
			t.Errorf("%q: got %s %v, want %s", tc.text, got, notices, want)
		}
	}
}

func TestPlainText(t *testing.T) {
	for _, tc := range []struct{ text, want string }{
		{"*a* __b__ [caps]c[/caps]", "*a* __b__ [caps]c[/caps]"},
		{`\*a`, `\*a`},
		{`a\`, `a\`},
		{"a\n\\\nb", "a||b"},
		{`\[gap 2] [gap 2] b`, "[gap 2] b 2em@8"},
		{`\# a`, "# a"},
		{"\t[drop] a", "<1em><drop>a"},
	} {
		c, notices := read(t, "a.txt", tc.text)
		want := "¶ {" + tc.want + "}"
		if got := sketch(c); got != want || len(notices) > 0 {
			t.Errorf("%q: got %s %v, want %s", tc.text, got, notices, want)
		}
	}
}

func TestHead(t *testing.T) {
	text := "---\ntitle: \"A Book\"\nauthor: A. Poet\nlanguage: cy\nepigraph: one\nepigraph: two\n---\n" +
		"## A\n[short_title: a]\n[subtitle: sub]\n[dedication: for B.]\n[form: Tercets]\n[start: recto]\n[start: facing]\n[blank: before]\n[run: -1]\n" +
		"[size: 10.5pt]\n[edge: centred]\n[lie: turned]\n[note: one [1]]\n[note: two]\n> e\n\na\n\n[place: Here, 1911]\n"
	c, notices := read(t, "a.md", text)
	about := fmt.Sprintf("%q", c.About())
	if want := `{"A Book" "A. Poet" "cy" ["one" "two"]}`; about != want || len(notices) > 0 {
		t.Errorf("got %s %v, want %s", about, notices, want)
	}
	head := fmt.Sprintf("%+v", c.Order()[0].Poem.Head())
	want := "{Title:A Short:a Subtitle:sub Dedication:for B. Epigraph:[e] Place:Here, 1911 Note:one [1]\ntwo Form:tercets Start:facing Blank:true Run:-1 Size:10.5pt Edge:centred Lie:turned}"
	if head != want {
		t.Errorf("got %s, want %s", head, want)
	}
}

func TestFrontMatterOrText(t *testing.T) {
	for _, tc := range []struct{ text, title, want string }{
		{"---\ntitle: T\n---\na", "T", "¶ {a}"},
		{"---\ntitle: T\nthe rain: it falls\n---\na", "", "¶ {---|title: T|the rain: it falls|---|a}"},
		{"---\ntitle: T\na", "", "¶ {---|title: T|a}"},
		{"---\n---\na", "", "¶ {---|---|a}"},
		{"\n---\ntitle: T\n---\na", "", "¶ {---|title: T|---|a}"},
	} {
		c, _ := read(t, "a.md", tc.text)
		if got := sketch(c); c.About().Title != tc.title || got != tc.want {
			t.Errorf("%q: got title %q, %s; want %q, %s", tc.text, c.About().Title, got, tc.title, tc.want)
		}
	}
}

func TestNotices(t *testing.T) {
	for _, tc := range []struct{ text, want string }{
		{"## *Ulysses*\na", "a.md, line 1: the emphasis in “Ulysses” can't be kept: only lines of a poem have italic, bold or small capitals"},
		{"## A\na\n[place: x]\nb", "a.md, line 3: [place: …] is read as a poem's last line only: it was kept as verse"},
		{"## A\na\n[note: x]", "a.md, line 3: [note: …] is read below a poem's heading only: it was kept as verse"},
		{"## A\n[dedicaton: x]\na", "a.md, line 2: there is no [dedicaton: …]; a poem's heading has short_title, subtitle, dedication, form, start, blank, run, size, edge, lie and note, and its end has place: it was kept as verse"},
		{"## A\n[start: left]\na", `a.md, line 2: "left" is no start: write one of fresh page, verso, recto, shared page, facing; [start: …] was left out`},
		{"## A\n[blank: after]\na", `a.md, line 2: "after" is no place for a blank page: write before; [blank: …] was left out`},
		{"## A\n[run: 3]\na", `a.md, line 2: "3" is no number of lines that pages can run long or short: write one from -2 to 2; [run: …] was left out`},
		{"## A\n[size: 3pt]\na", "a.md, line 2: type of 3pt can't be set: write a size from 4pt to 72pt; [size: …] was left out"},
		{"## A\n[size: large]\na", `a.md, line 2: "large" is not a length: write a number and pt, mm, cm or in, such as 11.5pt; [size: …] was left out`},
		{"## A\n[edge: right]\na", `a.md, line 2: "right" is no left edge: write one of as the book, left, centred, optical; [edge: …] was left out`},
		{"## A\n[lie: down]\na", `a.md, line 2: "down" is no lie of a poem: write one of upright, across the spread, turned; [lie: …] was left out`},
		{"## A\n[page] a\nb", "a.md, line 2: [page] before a poem's first line was left out: say below its heading how it starts"},
		{"## A\n[together] a\n[page] b", "a.md, line 3: [page] was left out: the line above is kept together with this one"},
		{"## A\na [tab 0] b", "a.md, line 2: [tab 0] is no tab of up to 60 ems: it was kept as text"},
		{"---\npage: colophon\n---\na", `a.md, line 2: "colophon" is no page of a book's prelims or end matter: write one of half-title, also by, title, imprint, dedication, epigraph, contents, acknowledgements, notes, index; “page: colophon” was left out`},
		{"---\ntext: for R.\n---\na", "a.md, line 2: it belongs to no page: write “page: …” above it; “text: for R.” was left out"},
		{"---\nroman: perhaps\n---\na", `a.md, line 2: "perhaps" says neither yes nor no; “roman: perhaps” was left out`},
		{"---\nalphabet: backwards\n---\na", `a.md, line 2: "backwards" is no order of an index: write one of word by word, letter by letter; “alphabet: backwards” was left out`},
		{"## A\na\n> b", "a.md, line 3: > makes an epigraph below a heading only: it was kept as verse; write \\> if it is meant"},
		{"## A\n#### b", "a.md, line 2: headings have one, two or three #: it was kept as verse; write \\# if it is meant"},
		{"## A\na [gap 99]", "a.md, line 2: [gap 99] is no gap of up to 60 ems: it was kept as text"},
		{"## A\n[indent -1] a", "a.md, line 2: [indent -1] is no indent of up to 60 ems: it was kept as text"},
		{"## A\nb\n[caps]a", "a.md, line 3: [caps] is never closed in its stanza: it was kept as text"},
		{"## A\na[/italic]", "a.md, line 2: [/italic] closes nothing: it was kept as text"},
		{"## A\na\n\n[prose]\n", "a.md, line 4: nothing follows [prose]: it was left out"},
		{"## A\n" + strings.Repeat("\t", 61) + "a", "a.md, line 2: an indent of 61em was made 60em, the deepest there is"},
	} {
		_, notices := read(t, "a.md", tc.text)
		if len(notices) != 1 || notices[0].String() != tc.want {
			t.Errorf("%q: got %v, want %s", tc.text, notices, tc.want)
		}
	}
}

// TestMatter holds that the prelims and end matter are read in whatever order they
// are said, and stand in the book's own.
func TestMatter(t *testing.T) {
	text := "---\ntitle: Short Weight\npage: notes\npage: imprint\ntext: First kneaded 1911\ntext: \"\"\ntext: at the corner\n" +
		"alphabet: letter by letter\npage: contents\nheading: What Is In It\nparts: yes\nroman: Yes\npage: imprint\ntext: twice proved\n---\na\n"
	for _, k := range []Kind{Markdown, Text} {
		c, notices := read(t, nameFor(k), text)
		got := matterOutline(c.Matter())
		want := `[{"imprint" "" ["First kneaded 1911" "" "at the corner" "twice proved"]} {"contents" "What Is In It" []} {"notes" "" []}] roman true parts true letter by letter`
		if got != want || len(notices) > 0 {
			t.Errorf("%v: got %s %v, want %s", k, got, notices, want)
		}
		mustReturn(t, c, k)
	}
	if c, _ := read(t, "a.md", "---\ntitle: T\n---\na"); saysMatter(c.Matter()) {
		t.Errorf("a manuscript that says nothing of prelims has %v", c.Matter())
	}
}

func TestReadAll(t *testing.T) {
	c, _, err := ReadAll([]Source{
		{"a.md", []byte("---\npoet: P\n---\n# S\n## A\n*a*")},
		{"b.txt", []byte("---\ntitle: T\npoet: Q\npage: imprint\n---\n# B\n*b*")},
		{"c.txt", []byte("---\npage: index\n---\nc")},
	}, pagemodel.DefaultDesign())
	if err != nil {
		t.Fatal(err)
	}
	if got, want := sketch(c), `§S ¶A {a i:"a"} ¶B {*b*} ¶ {c}`; got != want {
		t.Errorf("got %s, want %s", got, want)
	}
	if a := c.About(); a.Title != "T" || a.Poet != "P" {
		t.Errorf("got %+v", a)
	}
	if m := c.Matter(); len(m.Pages) != 1 || m.Pages[0].Kind != pagemodel.Imprint {
		t.Errorf("got the matter %+v, want the first that is said", m)
	}
	if _, _, err := ReadAll(nil, pagemodel.DefaultDesign()); err == nil {
		t.Error("no manuscript gave no error")
	}
}

// TestIdentities holds that no two things get the same identity.
func TestIdentities(t *testing.T) {
	c, _ := read(t, "a.md", "# S\n## A\na\nb\n\nc\n## B\nd")
	var ids []int64
	for _, p := range c.Poems() {
		ids = append(ids, int64(p.ID()))
		for _, l := range p.Lines() {
			ids = append(ids, int64(l.ID()))
		}
	}
	slices.Sort(ids)
	if n := len(slices.Compact(slices.Clone(ids))); n != 6 || ids[5] >= c.NextID() {
		t.Errorf("identities %v, next %d", ids, c.NextID())
	}
}
