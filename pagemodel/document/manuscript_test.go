package document

import (
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"headland/assets"
	"headland/pagemodel"
	"headland/pagemodel/manuscript"
)

// poemOf is a book of one poem, written as a manuscript is.
func poemOf(t testing.TB, lines string) *pagemodel.Collection {
	t.Helper()
	c, _, err := manuscript.Read("a.md", []byte("---\ntitle: A Book\npoet: A Poet\nlanguage: en-GB\n---\n\n## T\n\n"+lines), pagemodel.DefaultDesign())
	if err != nil {
		t.Fatal(err)
	}
	return c
}

// TestEditionInTheDocument: this edition's breaks are line ends only where they are
// asked for.
func TestEditionInTheDocument(t *testing.T) {
	c := poemOf(t, "    The van *backs up to the dock* and the dock takes it\n\nin the dark")
	p := c.Order()[0].Poem
	ref := pagemodel.LineRef{Poem: p.ID(), Line: p.Line(pagemodel.Place{}).ID()}
	for _, at := range []int{17, 29} { // before "to", before "and"
		next, err := pagemodel.Break{LineRef: ref, At: at, In: pagemodel.InEdition}.Apply(c)
		if err != nil {
			t.Fatal(err)
		}
		c = next
	}
	mustRead(t, c, Options{})
	mustRead(t, c, Options{Edition: true})
	want := "\u2003The van backs up\n\u2003to the dock\n\u2003and the dock takes it"
	got := pythonDocx(t, saved(t, FromCollection(c, Options{Edition: true}), "docx"))
	if text := plainText(blocksOf(t, got.Blocks)[3]); text != want {
		t.Errorf("in this edition the stanza is %q, want %q", text, want)
	}
}

// TestLinesOfTheManuscriptComeBack: what pandoc makes of the demo's file is read as
// a manuscript again, line for line, with indents to a quarter of an em.
func TestLinesOfTheManuscriptComeBack(t *testing.T) {
	c, _, err := manuscript.Read("demo.md", assets.Demo(), pagemodel.DefaultDesign())
	if err != nil {
		t.Fatal(err)
	}
	for _, ending := range []string{"docx", "odt"} {
		text := run(t, "pandoc", "--to=markdown-smart", "--wrap=none", saved(t, FromCollection(c, Options{}), ending))
		again, _, err := manuscript.Read("again.md", text, pagemodel.DefaultDesign())
		if err != nil {
			t.Fatal(err)
		}
		got, want := indented(again), indented(c)
		for _, line := range want {
			if !slices.Contains(got, line) {
				t.Errorf("%s: %q did not come back", ending, line)
			}
		}
	}
}

// indented are the indented lines of a book's verse without gaps and styles, whose
// signs pandoc writes otherwise.
func indented(c *pagemodel.Collection) []string {
	var list []string
	for _, p := range c.Poems() {
		for _, l := range p.Lines() {
			if l.Indent() > 0 && len(l.Gaps()) == 0 && len(l.Spans()) == 0 {
				list = append(list, l.Indent().String()+" "+l.Text())
			}
		}
	}
	return list
}

// content is one file of an archive as it is written.
func content(t *testing.T, d Document, ending, name string) string {
	t.Helper()
	return string(files(t, d, ending)[name])
}

// TestRangesAndStops: lines all set to one edge make the paragraph so; where they
// differ the edges are tab stops, and a tab goes to the stop that it is for.
func TestRangesAndStops(t *testing.T) {
	d := FromCollection(poemOf(t, "[right] a\n[right] b"), Options{})
	if p := d.Blocks[3].Paragraph; p.Range != pagemodel.RangeRight || len(p.Stops) != 0 {
		t.Errorf("a stanza ranged right is %+v", p)
	}
	d = FromCollection(poemOf(t, "a\n[centre] b\n[right] c\nd [tab 20] e"), Options{})
	p := d.Blocks[3].Paragraph
	want := []Stop{{pagemodel.RangeCentre, measure / 2}, {pagemodel.RangeLeft, 20 * pagemodel.OneEm}, {pagemodel.RangeRight, measure}}
	slices.SortFunc(want, func(a, b Stop) int { return int(a.At - b.At) })
	if p.Range != pagemodel.RangeLeft || !slices.Equal(p.Stops, want) {
		t.Fatalf("the stops are %v, want %v", p.Stops, want)
	}
	got := pythonDocx(t, saved(t, d, "docx"))
	if text, want := plainText(blocksOf(t, got.Blocks)[3]), "a\n\tb\n\t\t\tc\nd \t\te"; text != want {
		t.Errorf("the tabs are %q, want %q", text, want)
	}
	xml := content(t, d, "docx", "word/document.xml")
	for _, s := range []string{`w:val="center"`, `w:val="right"`, `<w:tab w:val="left" w:pos="4800"/>`} { // 20 ems of 12 pt
		if !strings.Contains(xml, s) {
			t.Errorf("there is no %s in\n%s", s, xml)
		}
	}
}

// TestDroppedLines: a dropped line begins about where the one above it ended, after
// a stanza break too.
func TestDroppedLines(t *testing.T) {
	d := FromCollection(poemOf(t, "Then the door\n[drop] closes\n\n[drop] and opens"), Options{})
	first := d.Blocks[3].Runs
	second := d.Blocks[4].Runs
	if first[2].Mark != White || first[2].Width < 4*pagemodel.OneEm || first[2].Width > 8*pagemodel.OneEm {
		t.Errorf("the dropped line begins %v", first[2])
	}
	if second[0].Mark != White || second[0].Width <= first[2].Width {
		t.Errorf("the next one begins %v, no farther in than the one above", second[0])
	}
}

// TestWhiteIsExact: the spaces of an indent, with what they are let out by, are as
// wide as the indent, to a tenth of a point at the text's size.
func TestWhiteIsExact(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 1))
	ems := map[rune]pagemodel.Em{'\u2003': 1000, '\u2002': 500, '\u2005': 250}
	for range 2000 {
		width := pagemodel.Em(1 + r.IntN(60000))
		text, each := spaces(width)
		var sum pagemodel.Em
		for _, c := range text {
			sum += ems[c] + each
		}
		if off := (sum - width).Ems() * typeSize.Points(); off > 0.8 || off < -0.8 || text == "" {
			t.Errorf("%v is %q, each let out by %v: out by %.2f points", width, text, each, off)
		}
		if text != white(width) {
			t.Errorf("%v is %q, want %q", width, text, white(width))
		}
	}
}

// TestOutline: sections, poems and parts stand in the outline of both files.
func TestOutline(t *testing.T) {
	d := FromCollection(demo(t), Options{})
	for name, want := range map[string]string{"Heading1": "0", "Heading2": "1", "Heading3": "2"} {
		_, style, _ := strings.Cut(content(t, d, "docx", "word/styles.xml"), `w:styleId="`+name+`"`)
		style, _, _ = strings.Cut(style, "</w:style>")
		if !strings.Contains(style, `<w:outlineLvl w:val="`+want+`"/>`) {
			t.Errorf("%s is not on level %s: %s", name, want, style)
		}
	}
	if text := content(t, d, "odt", "content.xml"); !strings.Contains(text, `<text:h text:style-name="Heading_20_2" text:outline-level="2">Sign</text:h>`) {
		t.Error("a poem's title is no heading of the second level")
	}
	if text := content(t, d, "odt", "content.xml"); !strings.Contains(text, `fo:font-variant="small-caps"`) {
		t.Error("small capitals, which pandoc does not look for in a .odt, are not in it")
	}
}
