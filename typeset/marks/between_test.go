package marks

import (
	"fmt"
	"slices"
	"testing"

	"headland/pagemodel"
	"headland/typeset"
	"headland/typeset/corrections"
)

// Whatever differs between the book as sent and the book as it is now has its
// number in a margin just once, and, where it stands in a line, a mark in the text.
func TestEveryDifferenceIsMarked(t *testing.T) {
	p := newProof(pagemodel.Upright)
	sent := p.set.Collection()
	poems := [2]*pagemodel.Poem{sent.Order()[0].Poem, sent.Order()[1].Poem}
	at := func(poem, stanza, line int) pagemodel.LineRef {
		where, err := poems[poem].At(stanza, line)
		if err != nil {
			t.Fatal(err)
		}
		return pagemodel.LineRef{Poem: poems[poem].ID(), Line: poems[poem].Line(where).ID()}
	}
	design := sent.Design()
	design.Leading += pagemodel.Pt(0.5)
	tests := map[string][]pagemodel.Edit{
		"break":      {pagemodel.Break{LineRef: at(0, 1, 4), At: 18}},
		"in edition": {pagemodel.Break{LineRef: at(0, 2, 2), At: 14, In: pagemodel.InEdition}},
		"join":       {pagemodel.Join{LineRef: at(0, 3, 1)}},
		"turn":       {pagemodel.Keep{LineRef: at(0, 2, 2), Turns: []int{14}}},
		"indent":     {pagemodel.Indent{LineRef: at(0, 1, 2), To: 2 * pagemodel.OneEm}},
		"open":       {pagemodel.StanzaBreak{LineRef: at(0, 1, 2), Open: true}},
		"close":      {pagemodel.StanzaBreak{LineRef: at(0, 1, 4)}},
		"gap":        {pagemodel.SetGap{LineRef: at(1, 1, 1), At: 4, Width: 2 * pagemodel.OneEm}},
		"ranged":     {pagemodel.SetRange{LineRef: at(1, 1, 1), To: pagemodel.RangeRight}},
		"dropped":    {pagemodel.Drop{LineRef: at(1, 1, 2), Dropped: true}},
		"white":      {pagemodel.SetAbove{LineRef: at(1, 1, 2), Lines: 2}},
		"page":       {pagemodel.PageBreak{LineRef: at(1, 2, 1)}},
		"together":   {pagemodel.KeepTogether{LineRef: at(1, 1, 1), Through: at(1, 1, 2).Line}},
		"words":      {pagemodel.Retype{LineRef: at(1, 2, 2), Text: "but crust and morning, and some bread."}},
		"two lines":  {pagemodel.Retype{LineRef: at(1, 1, 1), Text: "Two loaves on the sill"}, pagemodel.Retype{LineRef: at(1, 1, 2), Text: "and none for anyone."}},
		"line in":    {pagemodel.Retype{LineRef: at(1, 2, 1), Text: "Nothing is owed at the end of the round all night, all night"}, pagemodel.Break{LineRef: at(1, 2, 1), At: 39}},
		"line out":   {pagemodel.Join{LineRef: at(1, 1, 1)}, pagemodel.Retype{LineRef: at(1, 1, 1), Text: "One loaf for the house with the blue gate,"}},
		"italic":     {pagemodel.Restyle{LineRef: at(0, 1, 1), Start: 0, End: 6, Style: pagemodel.Italic}},
		"bold":       {pagemodel.Restyle{LineRef: at(0, 1, 1), Start: 0, End: 6, Style: pagemodel.Bold}},
		"caps":       {pagemodel.Restyle{LineRef: at(0, 1, 1), Start: 0, End: 6, Style: pagemodel.SmallCaps}},
		"changed":    {pagemodel.Retype{LineRef: at(1, 1, 3), Text: poems[1].Parts()[0].Stanzas()[0].Lines()[3].Text()}, pagemodel.Retype{LineRef: at(1, 1, 4), Text: poems[1].Parts()[0].Stanzas()[0].Lines()[2].Text()}},
		"title":      {pagemodel.SetHead{Poem: poems[0].ID(), Head: pagemodel.PoemHead{Title: "The Drawer", Dedication: "for the van"}}},
		"title gone": {pagemodel.SetHead{Poem: poems[0].ID(), Head: pagemodel.PoemHead{}}},
		"form":       {pagemodel.SetForm{Poem: poems[1].ID(), Form: pagemodel.Couplets}},
		"book":       {pagemodel.SetAbout{About: pagemodel.About{Title: "Bakery at Night"}}},
		"design":     {pagemodel.SetDesign{Design: design}},
	}
	for name, edits := range tests {
		t.Run(name, func(t *testing.T) {
			now := sent
			for _, e := range edits {
				next, err := e.Apply(now)
				if err != nil {
					t.Fatal(err)
				}
				now = next
			}
			set := typeset.NewSetter(typeset.Bundled()).Set(nil, now)
			nothing := func(key string) pagemodel.Reply { return pagemodel.Reply{Key: key} }
			mustMark(t, p.set, p.setter, corrections.Of(p.set, set, corrections.PlacesOf(p.set), pagemodel.Round{}, "", nothing))
		})
	}
}

// mustMark marks the whole book.
func mustMark(t *testing.T, set *typeset.Setting, setter *typeset.Setter, list *corrections.List) {
	t.Helper()
	if len(list.All) == 0 {
		t.Fatal("nothing differs")
	}
	var got, want []string
	inText, lines := 0, 0
	for _, c := range list.All {
		want = append(want, fmt.Sprintf("%d %s", c.Number, c.Whose))
		if c.Change.Line.Line != 0 {
			lines++
		}
	}
	for n := 1; n <= set.Extent(); n++ {
		o := OnProof(set, n, list, setter, ProofRoom)
		got = append(got, labels(&o)...)
		m := &marker{set: set, page: set.Page(n), setter: setter, design: set.Collection().Design(), entries: map[bool][]entry{}}
		for i := range list.All {
			if before := len(m.over.Strokes); list.All[i].Change.Line.Line != 0 {
				if m.mark(&list.All[i]); len(m.over.Strokes) > before {
					inText++
				}
			}
		}
	}
	slices.Sort(got)
	slices.Sort(want)
	if !slices.Equal(got, want) || inText < lines {
		t.Errorf("numbered are %q, want %q; %d of %d in lines have a mark there:\n%+v", got, want, inText, lines, list.All)
	}
}

// furnished is a book with prelims, a section and a poem with an epigraph, an empty
// line and prose.
func furnished(t *testing.T, section, imprint, source, empty string) *typeset.Setting {
	b := pagemodel.NewBuilder(pagemodel.About{Title: "Night Bakery", Poet: "A. N. Other"}, pagemodel.DefaultDesign())
	matter := pagemodel.UsualMatter().With(pagemodel.MatterPage{Kind: pagemodel.Imprint, Text: []string{imprint}})
	matter.Roman = true
	if err := b.Matter(matter); err != nil {
		t.Fatal(err)
	}
	b.Section(section, []string{"for whoever is up"})
	b.Poem(pagemodel.PoemHead{Title: "Ovens", Epigraph: []string{"What is warm is not yet bread,", source}}, []pagemodel.Part{pagemodel.NewPart("", []pagemodel.Stanza{
		pagemodel.NewStanza(pagemodel.Verse, []pagemodel.Line{b.Line("salt on the sill"), b.Line(empty), b.Line("a moon of dough")}),
		pagemodel.NewStanza(pagemodel.Prose, []pagemodel.Line{b.Line("The street sleeps, and the baker, who does not, walks up and down in it as in a room, counting what is lit.")}),
	})})
	return typeset.NewSetter(typeset.Bundled()).Set(nil, b.Collection())
}

// What differs in the prelims, a section's head or a poem's is noted on its page,
// and marked in its words where they stand in a poem's head.
func TestDifferencesOutsideTheLines(t *testing.T) {
	sent := furnished(t, "Flour", "Printed in 2026", "a baker", "")
	now := furnished(t, "Flour and Water", "Printed in 2027", "an old baker", "one more line")
	nothing := func(key string) pagemodel.Reply { return pagemodel.Reply{Key: key, State: pagemodel.Queried} }
	list := corrections.Of(sent, now, corrections.PlacesOf(sent), pagemodel.Round{}, "", nothing)
	setter := typeset.NewSetter(typeset.Bundled())
	mustMark(t, sent, setter, list)
	for _, c := range list.All {
		one := &corrections.List{All: []corrections.Correction{c}}
		for n := 1; n <= sent.Extent(); n++ {
			o := OnProof(sent, n, one, setter, ProofRoom)
			if here := sent.FolioOf(n) == c.Page; here != !o.Empty() {
				t.Errorf("%s, %s, of page %s: marked on page %s is %v", c.Change.Kind, c.Change.Field, c.Page, sent.FolioOf(n), !o.Empty())
			}
		}
	}
	var epigraph *corrections.Correction
	for i := range list.All {
		if list.All[i].Change.Field == "epigraph" {
			epigraph = &list.All[i]
		}
	}
	strokes, row := marked(t, &proof{set: sent, setter: setter}, epigraph)
	if b := boxOf(strokes...); textOf(row) != "a baker" || b.left < row.X || b.right > row.X+row.Width {
		t.Errorf("the epigraph is marked at %v in %q", b, textOf(row))
	}
}
