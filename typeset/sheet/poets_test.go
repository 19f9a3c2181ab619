package sheet

import (
	"strings"
	"testing"

	"headland/assets"
	"headland/pagemodel"
	"headland/typeset"
)

// TestWhatThePoetPutsIn: indents, gaps, ranges, dropped lines, empty ones, prose,
// headings of parts and what stands about a poem are kept; a break that only this
// edition makes is none here.
func TestWhatThePoetPutsIn(t *testing.T) {
	d := pagemodel.DefaultDesign()
	d.Face = assets.EBGaramond
	b := pagemodel.NewBuilder(pagemodel.About{Title: "Night Bakery"}, d)
	broken := b.Line("flour and salt, and the lamp is lit")
	first := []pagemodel.Line{
		broken, b.Line("indented").WithIndent(2 * pagemodel.OneEm), b.Line("to the right").WithRange(pagemodel.RangeRight),
		b.Line("a gap here").WithGap(len("a gap "), 3*pagemodel.OneEm), b.Line("dropped").WithDropped(true), b.Line(""), b.Line("after white").WithAbove(2),
	}
	second := []pagemodel.Stanza{
		pagemodel.NewStanza(pagemodel.Prose, []pagemodel.Line{b.Line(strings.Repeat("The baker says nothing at all about it. ", 12))}),
		pagemodel.NewStanza(pagemodel.Verse, []pagemodel.Line{b.Line("last of all")}),
	}
	b.Poem(pagemodel.PoemHead{Title: "All", Subtitle: "a subtitle", Epigraph: []string{"words", "of another"}, Place: "Mill Street"},
		[]pagemodel.Part{pagemodel.NewPart("one", []pagemodel.Stanza{pagemodel.NewStanza(pagemodel.Verse, first)}), pagemodel.NewPart("two", second)})
	c := b.Collection()
	r := readingOf(c)
	c, err := pagemodel.Break{LineRef: pagemodel.LineRef{Poem: r.Items[0].Poem, Line: broken.ID()}, At: len("flour and salt, "), In: pagemodel.InEdition}.Apply(c)
	if err != nil {
		t.Fatal(err)
	}
	for _, f := range formats(t) {
		copied := copyOf(t, c, r, f)
		wantPoets(t, copied)
	}
}

// wantPoets sees that the leaves have the lines of the poem above as they are, and
// that none ends with a heading.
func wantPoets(t *testing.T, c *Copy) {
	t.Helper()
	var rows []typeset.Row
	for i := range c.Leaves {
		l := &c.Leaves[i]
		if last := l.Verse[len(l.Verse)-1]; last.Role == typeset.RoleHeading || last.Role == typeset.RoleEpigraph {
			t.Errorf("a leaf ends with the %v %q", last.Role, textOf(&last))
		}
		rows = append(rows, l.Verse...)
	}
	at := func(text string) (typeset.Row, int) {
		for i := range rows {
			if strings.TrimSpace(textOf(&rows[i])) == text {
				return rows[i], i
			}
		}
		t.Fatalf("%q is not on the leaves", text)
		return typeset.Row{}, 0
	}
	f := &c.Format
	for _, text := range []string{"a subtitle", "words", "of another", "one", "two", "flour and salt, and the lamp is lit", "last of all", "Mill Street"} {
		at(text)
	}
	size := c.Leaves[0].Size
	if row, _ := at("indented"); row.X != f.Side+2*size {
		t.Errorf("the indented line begins at %v, want %v", row.X, f.Side+2*size)
	}
	if row, _ := at("to the right"); row.X+row.Width < f.Trim.Width-f.Side-2 {
		t.Errorf("the line ranged right ends at %v", row.X+row.Width)
	}
	gap, i := at("a gap here")
	if dropped := rows[i+1]; textOf(&dropped) != "dropped" || dropped.X < gap.X+gap.Width-1 || gap.XAt(len("a gap "))-gap.XAt(len("a gap")) < 3*size {
		t.Errorf("%q begins at %v, and the line above ends at %v", textOf(&dropped), dropped.X, gap.X+gap.Width)
	}
}
