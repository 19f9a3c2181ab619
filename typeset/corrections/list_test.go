package corrections

import (
	"fmt"
	"testing"

	"headland/pagemodel"
	"headland/typeset"
)

const overlong = "the ovens breathe and someone counts the trays that the street has not yet asked for, and counts them again"

// loaves is a book of three poems of 24 lines in six stanzas; the second begins
// with an overlong line.
func loaves(t *testing.T) *pagemodel.Collection {
	t.Helper()
	b := pagemodel.NewBuilder(pagemodel.About{Title: "Night Bakery"}, pagemodel.DefaultDesign())
	b.Section("Before light", nil)
	for n := range 3 {
		var stanzas []pagemodel.Stanza
		for s := range 6 {
			var lines []pagemodel.Line
			for k := range 4 {
				text := fmt.Sprintf("loaf %d on the shelf", 4*s+k+1)
				if n == 1 && s+k == 0 {
					text = overlong
				}
				lines = append(lines, b.Line(text))
			}
			stanzas = append(stanzas, pagemodel.NewStanza(pagemodel.Verse, lines))
		}
		b.Poem(pagemodel.PoemHead{Title: fmt.Sprint("Loaf ", n+1)}, []pagemodel.Part{pagemodel.NewPart("", stanzas)})
	}
	if err := b.Matter(pagemodel.UsualMatter()); err != nil {
		t.Fatal(err)
	}
	return b.Collection()
}

// lineOf is a line by its poem, stanza and number, from 1.
func lineOf(t *testing.T, c *pagemodel.Collection, poem, stanza, line int) pagemodel.LineRef {
	t.Helper()
	for n, p := range c.Poems() {
		if n == poem {
			at, err := p.At(stanza, line)
			if err != nil {
				t.Fatal(err)
			}
			return pagemodel.LineRef{Poem: p.ID(), Line: p.Line(at).ID()}
		}
	}
	t.Fatalf("there is no poem %d", poem)
	return pagemodel.LineRef{}
}

func noReply(string) pagemodel.Reply { return pagemodel.Reply{} }

// after is the list of a book after some edits.
func after(t *testing.T, was *pagemodel.Collection, replies func(string) pagemodel.Reply, edits ...pagemodel.Edit) *List {
	t.Helper()
	is := was
	for _, e := range edits {
		next, err := e.Apply(is)
		if err != nil {
			t.Fatal(err)
		}
		is = next
	}
	setter := typeset.NewSetter(typeset.Bundled())
	sent := setter.Set(nil, was)
	return Of(sent, setter.Set(sent, is), PlacesOf(sent), pagemodel.Round{Name: "first proofs"}, "", replies)
}

// told is a correction in a line of words.
func told(c *Correction) string {
	return fmt.Sprintf("%d %s, %s %d:%d, page %s row %d, %s, moves %q, reason %q", c.Number, c.Change.Kind, c.Title, c.Stanza, c.LineNumber, c.Page, c.Row, c.Whose, c.Moves, c.Reason)
}

func mustTell(t *testing.T, l *List, want ...string) {
	t.Helper()
	for i := range l.All {
		if i >= len(want) || told(&l.All[i]) != want[i] {
			t.Errorf("correction %d is\n%s", i+1, told(&l.All[i]))
		}
	}
	if len(l.All) != len(want) {
		t.Errorf("got %d corrections, want %d", len(l.All), len(want))
	}
}

// TestPlaces sees that every line has the page that the setting says.
func TestPlaces(t *testing.T) {
	c := loaves(t)
	set := typeset.NewSetter(typeset.Bundled()).Set(nil, c)
	places := PlacesOf(set)
	for _, p := range c.Poems() {
		for _, l := range p.Lines() {
			n, _ := set.PageOfLine(pagemodel.LineRef{Poem: p.ID(), Line: l.ID()})
			if at := places[l.ID()]; at.Page != set.FolioOf(n) || at.Row < 1 {
				t.Errorf("%q is at %v and on page %d", l.Text(), at, n)
			}
		}
	}
	if len(places) != 72 {
		t.Errorf("%d lines of 72 have a place", len(places))
	}
}

func TestOf(t *testing.T) {
	c := loaves(t)
	two, last := lineOf(t, c, 2, 1, 1), lineOf(t, c, 3, 6, 4)
	list := after(t, c, noReply,
		pagemodel.Retype{LineRef: two, Text: "the ovens breathe and nobody counts the trays that the street has not yet asked for, and counts them over"},
		pagemodel.SetReason{LineRef: two, Reason: "the count goes on", Shown: true},
		pagemodel.SetReason{LineRef: last, Reason: "private"},
		pagemodel.Indent{LineRef: last, To: pagemodel.OneEm},
	)
	mustTell(t, list,
		`1 substitute, Loaf 2 1:1, page 11 row 1, AA, moves "", reason "the count goes on"`,
		`2 substitute, Loaf 2 1:1, page 11 row 2, AA, moves "", reason "the count goes on"`,
		`3 indent, Loaf 3 6:4, page 14 row 4, AA, moves "", reason ""`,
	)
	if list.Round.Name != "first proofs" || list.Until != "" || list.About.Title != "Night Bakery" || list.Rule == "" {
		t.Errorf("the list is of %v until %q of %v", list.Round, list.Until, list.About)
	}
}

// TestReplies sees that what was noted about a correction is on the list, and that
// a reason goes out only where it may.
func TestReplies(t *testing.T) {
	c := loaves(t)
	ref := lineOf(t, c, 1, 1, 1)
	reply := pagemodel.Reply{State: pagemodel.Queried, Whose: pagemodel.Editors, Reason: "house style", Question: "sure?", Answer: "yes"}
	for _, shown := range []bool{true, false} {
		reply.Shown = shown
		replies := func(key string) pagemodel.Reply {
			if key == "" {
				t.Error("a correction has no key")
			}
			return reply
		}
		got := after(t, c, replies, pagemodel.Indent{LineRef: ref, To: pagemodel.OneEm}).All[0]
		if got.State != pagemodel.Queried || got.Whose != pagemodel.Editors || got.Question != "sure?" || got.Answer != "yes" || (got.Reason == "house style") != shown {
			t.Errorf("shown %v: got %+v", shown, got)
		}
	}
}

// TestMoves pins what is said of pages that move.
func TestMoves(t *testing.T) {
	c := loaves(t)
	first := c.Order()[1].Poem
	white := func(poem, lines int, stanzas ...int) (all []pagemodel.Edit) {
		for _, n := range stanzas {
			all = append(all, pagemodel.SetAbove{LineRef: lineOf(t, c, poem, n, 4), Lines: lines})
		}
		return all
	}
	wide := c.Design()
	wide.StanzaGap = 8
	for _, tc := range []struct {
		name  string
		edits []pagemodel.Edit
		want  string
	}{
		{"lines go over", white(1, 3, 5), "stanza 5, lines 1–4 go over to page 10"},
		{"a line goes over and later poems move", white(1, 9, 1, 2, 3, 4),
			"with all corrections: the lines from stanza 2, line 1, to stanza 3, line 4 go over to page 10; the lines from stanza 4, line 1, to stanza 6, line 4 go over to page 11; 2 later poems move on by a page"},
		{"another start", []pagemodel.Edit{pagemodel.SetStart{Poem: first.ID(), Start: pagemodel.OnVerso}},
			"the poem begins on page 10 instead of page 9; 2 later poems move on by a page"},
		{"a blank", []pagemodel.Edit{pagemodel.SetStart{Poem: first.ID(), Blank: true}},
			"the poem begins on page 10 instead of page 9; 2 later poems move on by a page"},
		{"a poem moved", []pagemodel.Edit{pagemodel.Move{Poem: first.ID()}}, "the poem goes from page 9 to page 13"},
		{"design", []pagemodel.Edit{pagemodel.SetDesign{Design: wide}}, "with all corrections the book has 17 pages instead of 14"},
		{"nothing moves", []pagemodel.Edit{pagemodel.Indent{LineRef: lineOf(t, c, 1, 1, 1), To: 1000}}, ""},
		{"book title", []pagemodel.Edit{pagemodel.SetAbout{About: pagemodel.About{Title: "The Night Bakery"}}}, ""},
	} {
		for i, got := range after(t, c, noReply, tc.edits...).All {
			want := tc.want
			if i > 0 {
				want = "with all corrections: see 1"
			}
			if got.Moves != want {
				t.Errorf("%s, %d: got %q, want %q", tc.name, i+1, got.Moves, want)
			}
		}
	}
}

// TestPoemThatStays sees that nothing is said to move to the page where it was,
// though the poem before it begins a page later: a blank goes between the two.
func TestPoemThatStays(t *testing.T) {
	b := pagemodel.NewBuilder(pagemodel.About{}, pagemodel.DefaultDesign())
	for _, start := range []pagemodel.Start{pagemodel.FreshPage, pagemodel.OnRecto, pagemodel.FreshPage} {
		stanzas := []pagemodel.Stanza{pagemodel.NewStanza(pagemodel.Verse, []pagemodel.Line{b.Line("salt on the sill")})}
		b.Poem(pagemodel.PoemHead{Title: "Loaf", Start: start}, []pagemodel.Part{pagemodel.NewPart("", stanzas)})
	}
	c := b.Collection()
	list := after(t, c, noReply, pagemodel.SetStart{Poem: c.Order()[0].Poem.ID(), Start: pagemodel.OnVerso}, pagemodel.Indent{LineRef: lineOf(t, c, 2, 1, 1), To: pagemodel.OneEm})
	mustTell(t, list,
		`1 design, Loaf 0:0, page 1 row 0, DA, moves "with all corrections: the poem begins on page 2 instead of page 1", reason ""`,
		`2 indent, Loaf 1:1, page 3 row 1, AA, moves "", reason ""`,
	)
}

// TestHeads pins the pages of what is in no line.
func TestHeads(t *testing.T) {
	c := loaves(t)
	head := pagemodel.PoemHead{Title: "Loaf the first", Place: "Mill Lane", Form: pagemodel.Quatrains}
	matter := c.Matter().With(pagemodel.MatterPage{Kind: pagemodel.ContentsPage, Title: "What is here"})
	about := pagemodel.About{Title: "Night Bakery", Poet: "A Poet"}
	mustTell(t, after(t, c, noReply, pagemodel.SetHead{Poem: c.Order()[1].Poem.ID(), Head: head}, pagemodel.SetMatter{Matter: matter}, pagemodel.SetAbout{About: about}),
		`1 insert,  0:0, page  row 0, AA, moves "", reason ""`,
		`2 insert,  0:0, page 5 row 0, AA, moves "", reason ""`,
		`3 design, Loaf 1 0:0, page 9 row 0, DA, moves "", reason ""`,
		`4 substitute, Loaf 1 0:0, page 9 row 0, AA, moves "", reason ""`,
		`5 insert, Loaf 1 0:0, page 10 row 0, AA, moves "", reason ""`,
	)
}

// TestComeAndGo pins what is said of a poem and a section that go, and, the other
// way, come in.
func TestComeAndGo(t *testing.T) {
	all := loaves(t)
	without := all.Only(2, 4)
	setter := typeset.NewSetter(typeset.Bundled())
	with, now := setter.Set(nil, all.Only(0, 4)), setter.Set(nil, without)
	mustTell(t, Of(with, now, PlacesOf(with), pagemodel.Round{}, "", noReply),
		`1 delete,  0:0, page 1 row 0, AA, moves "with all corrections the book has 4 pages instead of 8", reason ""`,
		`2 delete, Loaf 1 0:0, page 3 row 0, AA, moves "with all corrections: 2 later poems move back by 4 pages", reason ""`,
	)
	mustTell(t, Of(now, with, PlacesOf(now), pagemodel.Round{}, "first proofs", noReply),
		`1 insert,  0:0, page  row 0, AA, moves "with all corrections the book has 8 pages instead of 4", reason ""`,
		`2 insert, Loaf 1 0:0, page  row 0, AA, moves "with all corrections: the poem begins on page 3", reason ""`,
	)
}

// TestRecordedPlaceHolds sees that what was recorded goes before what the pages set
// again say.
func TestRecordedPlaceHolds(t *testing.T) {
	c := loaves(t)
	setter := typeset.NewSetter(typeset.Bundled())
	sent := setter.Set(nil, c)
	ref := lineOf(t, c, 2, 1, 1)
	is, err := pagemodel.Indent{LineRef: ref, To: pagemodel.OneEm}.Apply(c)
	if err != nil {
		t.Fatal(err)
	}
	places := Places{ref.Line: {Page: "99", Row: 7}}
	got := Of(sent, setter.Set(sent, is), places, pagemodel.Round{}, "", noReply).All[0]
	if got.Page != "99" || got.Row != 7 {
		t.Errorf("a line recorded on page 99, row 7, is said to be on page %s, row %d", got.Page, got.Row)
	}
}

// TestRowsOfProse sees that a change late in a paragraph has the row that it stands
// in, on the page that the paragraph has run on to.
func TestRowsOfProse(t *testing.T) {
	b := pagemodel.NewBuilder(pagemodel.About{}, pagemodel.DefaultDesign())
	text := ""
	for n := range 500 {
		text += fmt.Sprintf("loaf %d, ", n)
	}
	l := b.Line(text + "end")
	b.Poem(pagemodel.PoemHead{Title: "All"}, []pagemodel.Part{pagemodel.NewPart("", []pagemodel.Stanza{pagemodel.NewStanza(pagemodel.Prose, []pagemodel.Line{l})})})
	c := b.Collection()
	list := after(t, c, noReply, pagemodel.Retype{LineRef: lineOf(t, c, 1, 1, 1), Text: text + "finish"})
	set := typeset.NewSetter(typeset.Bundled()).Set(nil, c)
	rows := set.Page(set.Extent()).Rows
	last := 0
	for i := range rows {
		last = max(last, rows[i].Number)
	}
	if got := list.All[0]; got.Page != set.FolioOf(set.Extent()) || got.Row != last || set.Extent() < 2 {
		t.Errorf("the last word stands on page %d, row %d, and is said to be on page %s, row %d", set.Extent(), last, got.Page, got.Row)
	}
}
