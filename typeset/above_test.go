package typeset

import (
	"fmt"
	"strings"
	"testing"

	"headland/pagemodel"
)

// gridsOf are the grid rows of the poet's words, page by page.
func gridsOf(s *Setting) string {
	var pages []string
	for n := 1; n <= s.Extent(); n++ {
		var rows []string
		for _, r := range s.Page(n).Rows {
			if r.Number > 0 {
				rows = append(rows, fmt.Sprint(r.Grid))
			}
		}
		pages = append(pages, strings.Join(rows, " "))
	}
	return strings.Join(pages, " | ")
}

// TestWhiteAbove: lines of white stand above a line, on top of what parts
// stanzas, above the first row only of a line that takes several; a poem's first
// line has none, nor has one that a page begins with.
func TestWhiteAbove(t *testing.T) {
	c := poemOf(depthOf(12, 2), "", "one\ntwo\nthree\n\nfour\n"+overlongLine+"\nsix\nseven\neight")
	p := c.Order()[0].Poem
	var refs []pagemodel.LineRef
	for _, l := range p.Lines() {
		refs = append(refs, pagemodel.LineRef{Poem: p.ID(), Line: l.ID()})
	}
	for _, tc := range []struct {
		line, white int
		want        string
	}{
		{0, 0, "2 3 4 6 7 8 9 10 11"},
		{0, 3, "2 3 4 6 7 8 9 10 11"},
		{1, 1, "2 4 5 7 8 9 10 11 12"},
		{3, 1, "2 3 4 7 8 9 10 11 12"},
		{4, 1, "2 3 4 6 8 9 10 11 12"},
		{3, 8, "2 3 4 | 1 2 3 4 5 6"},
	} {
		s := setOf(mustApply(t, c, pagemodel.SetAbove{LineRef: refs[tc.line], Lines: tc.white}))
		if got := gridsOf(s); got != tc.want {
			t.Errorf("%d lines of white above line %d: %s, want %s", tc.white, tc.line+1, got, tc.want)
		}
	}
	hidden := setOf(mustApply(t, c, pagemodel.SetAbove{LineRef: refs[3], Lines: 8})).PageEnd(1)
	if hidden.HidesWhite != 8 || !hidden.HidesBreak || !strings.HasPrefix(hidden.Text, "the page ends at a stanza break, where 8 lines of white are not seen: ") {
		t.Errorf("the page end says %+v", hidden)
	}
}

// TestWhiteAboveParagraph: so it is with a paragraph of prose, and with the first
// line of a part that has a heading.
func TestWhiteAboveParagraph(t *testing.T) {
	b := pagemodel.NewBuilder(pagemodel.About{}, depthOf(20, 2))
	prose := []pagemodel.Line{b.Line("a paragraph"), b.Line(overlongLine).WithAbove(2)}
	verse := []pagemodel.Line{b.Line("a line").WithAbove(1)}
	b.Poem(pagemodel.PoemHead{}, []pagemodel.Part{
		pagemodel.NewPart("", []pagemodel.Stanza{pagemodel.NewStanza(pagemodel.Prose, prose)}),
		pagemodel.NewPart("ii", []pagemodel.Stanza{pagemodel.NewStanza(pagemodel.Verse, verse)}),
	})
	if got, want := gridsOf(setOf(b.Collection())), "2 5 6 12"; got != want {
		t.Errorf("%s, want %s", got, want)
	}
}
