package difference

import (
	"fmt"
	"math/rand/v2"
	"slices"
	"testing"
	"unicode/utf8"

	"headland/pagemodel"
)

// bakery is a book with sections, parts, prose, styles, spaces and matter.
func bakery() *pagemodel.Collection {
	b := pagemodel.NewBuilder(pagemodel.About{Title: "Night Bakery", Poet: "A Poet"}, pagemodel.DefaultDesign())
	verse := func(lines ...string) pagemodel.Stanza {
		var all []pagemodel.Line
		for _, text := range lines {
			all = append(all, b.Line(text))
		}
		return pagemodel.NewStanza(pagemodel.Verse, all)
	}
	b.Section("Before light", []string{"flour on the sill", "nobody"})
	b.Poem(pagemodel.PoemHead{Title: "Ovens", Epigraph: []string{"warm, then warmer"}, Place: "Mill Lane"}, []pagemodel.Part{
		pagemodel.NewPart("", []pagemodel.Stanza{
			verse("the ovens breathe and someone counts the trays", "a door, — a dark—light hinge", "and bread", "and bread again"),
			verse("crème and naïve crumbs", "two  spaces   here", "last"),
		}),
	})
	styled := b.Line("the oven is the only moon we have").WithSpans([]pagemodel.Span{{Start: 4, End: 15, Style: pagemodel.Italic}}).WithGap(16, 2*pagemodel.OneEm)
	tabbed := b.Line("flour salt water").WithTab(6, 4*pagemodel.OneEm).WithIndent(pagemodel.OneEm)
	b.Poem(pagemodel.PoemHead{Form: pagemodel.Couplets, Note: "a note"}, []pagemodel.Part{
		pagemodel.NewPart("1", []pagemodel.Stanza{pagemodel.NewStanza(pagemodel.Verse, []pagemodel.Line{styled, tabbed}), verse("the street", "the street")}),
		pagemodel.NewPart("2", []pagemodel.Stanza{verse("a cat crosses", "twice"), pagemodel.NewStanza(pagemodel.Prose, []pagemodel.Line{
			b.Line("When the van comes at four the driver says nothing, and we say nothing, and the trays slide out."),
		})}),
	})
	b.Section("Morning", nil)
	for n := range 3 {
		b.Poem(pagemodel.PoemHead{Title: fmt.Sprint("Loaf ", n+1)}, []pagemodel.Part{pagemodel.NewPart("", []pagemodel.Stanza{verse("one loaf on the shelf", "one in the hand"), verse("")})})
	}
	if err := b.Matter(pagemodel.UsualMatter()); err != nil {
		panic(err)
	}
	return b.Collection()
}

// chooser draws edits from a seed.
type chooser struct{ *rand.Rand }

func (r chooser) line(c *pagemodel.Collection) (pagemodel.LineRef, pagemodel.Line) {
	var refs []pagemodel.LineRef
	var lines []pagemodel.Line
	for _, p := range c.Poems() {
		for _, l := range p.Lines() {
			refs, lines = append(refs, pagemodel.LineRef{Poem: p.ID(), Line: l.ID()}), append(lines, l)
		}
	}
	i := r.IntN(len(refs))
	return refs[i], lines[i]
}

func (r chooser) poem(c *pagemodel.Collection) *pagemodel.Poem {
	var all []*pagemodel.Poem
	for _, p := range c.Poems() {
		all = append(all, p)
	}
	return all[r.IntN(len(all))]
}

var vocabulary = []string{"the", "and", "oven", "bread", "a", "tray,", "dark—light", "salt", "moon", "street."}

// retyped is a line's text with some words changed, put in, taken out or exchanged.
func (r chooser) retyped(text string) string {
	words := pagemodel.Words(text)
	if len(words) < 2 {
		return text + " " + vocabulary[r.IntN(len(vocabulary))]
	}
	w, other := words[r.IntN(len(words))], vocabulary[r.IntN(len(vocabulary))]
	switch r.IntN(6) {
	case 0:
		return text[:w.Start] + other + text[w.End:]
	case 1:
		return text[:w.Start] + other + " " + text[w.Start:]
	case 2:
		return text[:w.Start] + text[min(len(text), w.End+1):]
	case 3:
		i := r.IntN(len(words) - 1)
		a, b := words[i], words[i+1]
		return text[:a.Start] + text[b.Start:b.End] + text[a.End:b.Start] + text[a.Start:a.End] + text[b.End:]
	case 4:
		return text[:w.Start] + " " + text[w.Start:]
	}
	return text[:w.Start]
}

// edit is any edit, possible or not.
func (r chooser) edit(first, c *pagemodel.Collection) pagemodel.Edit {
	ref, l := r.line(c)
	other, _ := r.line(c)
	at := r.IntN(len(l.Text()) + 1)
	for at > 0 && at < len(l.Text()) && !utf8.RuneStart(l.Text()[at]) {
		at--
	}
	from := min(at, 4)
	for from > 0 && from < len(l.Text()) && !utf8.RuneStart(l.Text()[from]) {
		from--
	}
	em := pagemodel.Ems(float64(r.IntN(6)) / 2)
	design := c.Design()
	design.Size = pagemodel.Pt(float64(9 + r.IntN(5)))
	head := r.poem(c).Head()
	head.Title, head.Epigraph = r.retyped(head.Title), append(slices.Clone(head.Epigraph), "a line more")
	old := r.poem(first)
	matter := c.Matter().With(pagemodel.MatterPage{Kind: pagemodel.Acknowledgements, Text: []string{"Thanks to", r.retyped("the night shift of Mill Lane")}})
	style := []pagemodel.Style{pagemodel.Italic, pagemodel.Bold, pagemodel.SmallCaps}[r.IntN(3)]
	edits := []pagemodel.Edit{
		pagemodel.Break{LineRef: ref, At: at}, pagemodel.Break{LineRef: ref, At: at, In: pagemodel.InEdition}, pagemodel.Break{LineRef: ref, At: at, In: pagemodel.InEdition},
		pagemodel.Join{LineRef: ref}, pagemodel.Join{LineRef: ref, In: pagemodel.InEdition}, pagemodel.Carry{LineRef: ref, Count: r.IntN(9) - 4}, pagemodel.Carry{LineRef: ref, Count: r.IntN(9) - 4},
		pagemodel.Keep{LineRef: ref, Turns: []int{at}}, pagemodel.Keep{LineRef: ref, Reason: "so"}, pagemodel.Unsettle{LineRef: ref},
		pagemodel.SetAbove{LineRef: ref, Lines: r.IntN(3)}, pagemodel.Indent{LineRef: ref, To: em}, pagemodel.SetGap{LineRef: ref, At: at, Width: em}, pagemodel.SetTab{LineRef: ref, At: at, Stop: em},
		pagemodel.Drop{LineRef: ref, Dropped: r.IntN(2) == 0}, pagemodel.SetRange{LineRef: ref, To: pagemodel.Range(r.IntN(3))},
		pagemodel.Retype{LineRef: ref, Text: r.retyped(l.Text())}, pagemodel.Retype{LineRef: ref, Text: r.retyped(l.Text())}, pagemodel.Retype{LineRef: ref, Text: r.retyped(l.Text())},
		pagemodel.Retype{LineRef: ref, Text: ""},
		pagemodel.Restyle{LineRef: ref, Start: from, End: at, Style: style, Off: r.IntN(3) == 0},
		pagemodel.StanzaBreak{LineRef: ref, Open: true}, pagemodel.StanzaBreak{LineRef: ref},
		pagemodel.KeepTogether{LineRef: ref, Through: other.Line, Off: r.IntN(2) == 0}, pagemodel.PageBreak{LineRef: ref, Off: r.IntN(3) == 0},
		pagemodel.SetStart{Poem: ref.Poem, Start: pagemodel.OnRecto}, pagemodel.SetForm{Poem: ref.Poem, Form: pagemodel.Tercets}, pagemodel.SetRun{Poem: ref.Poem, Lines: 1},
		pagemodel.SetDesign{Design: design}, pagemodel.SetMatter{Matter: matter}, pagemodel.SetAbout{About: pagemodel.About{Title: r.retyped(c.About().Title), Poet: c.About().Poet}},
		pagemodel.Move{Poem: ref.Poem, Before: other.Poem}, pagemodel.Move{Poem: ref.Poem}, pagemodel.SetHead{Poem: ref.Poem, Head: head},
		pagemodel.BringBack{Poem: old}, pagemodel.BringBack{Poem: pagemodel.NewPoem(old.ID(), old.Head(), []pagemodel.Part{pagemodel.NewPart("3", nil)})},
		pagemodel.KeepVariant{Poem: ref.Poem, Name: "short"}, pagemodel.UseVariant{Poem: ref.Poem, Name: "short"}, pagemodel.MarkSent{},
	}
	if r.IntN(40) == 0 {
		return pagemodel.Add{From: bakery(), Name: "more"}
	}
	return edits[r.IntN(len(edits))]
}

// history is a book after some edits.
func (r chooser) history(first *pagemodel.Collection, edits int) *pagemodel.Collection {
	c := first
	for range edits {
		if next, err := r.edit(first, c).Apply(c); err == nil {
			c = next
		}
		if r.IntN(60) == 0 {
			c = leftOut(c, r.poem(c).ID())
		}
	}
	return c
}

// leftOut is the book without one of its poems, as a history that undid its coming
// in would have it.
func leftOut(c *pagemodel.Collection, id pagemodel.PoemID) *pagemodel.Collection {
	if at, ok := c.IndexOf(id); ok && len(c.Order()) > 4 && at == len(c.Order())-1 {
		return c.Only(0, at)
	}
	return c
}

// TestHistories holds that the changes between two states, made in the text of the
// first, give the text of the second, in ten thousand random histories, forwards and
// backwards.
func TestHistories(t *testing.T) {
	first := bakery()
	found := map[Kind]int{}
	for seed := range uint64(10000) {
		r := chooser{rand.New(rand.NewPCG(seed, 5))}
		was := r.history(first, r.IntN(4))
		is := r.history(was, 1+r.IntN(8))
		if seed%2 == 1 {
			was, is = is, was
		}
		changes := Between(was, is)
		mustGive(t, seed, was, is, changes)
		for i := range changes {
			found[changes[i].Kind]++
		}
	}
	for _, kind := range []Kind{
		NewLine, RunOn, TurnAt, IndentLine, CancelIndent, OpenStanza, CloseStanza, Delete, Insert, Substitute, Transpose, Italic, Roman, Bold, SmallCapitals, Space, MovePoem, Design,
	} {
		if found[kind] == 0 {
			t.Errorf("no history came to a change of the kind %q", kind)
		}
	}
	t.Log(found)
}

func mustGive(t *testing.T, seed uint64, was, is *pagemodel.Collection, changes []Change) {
	t.Helper()
	want := TextOf(is)
	got, err := Apply(TextOf(was), changes)
	if err != nil {
		t.Fatalf("history %d: %v\n%s", seed, err, listed(changes))
	}
	if !got.Equal(want) {
		t.Fatalf("history %d: the changes\n%s\ngave\n%s\nwant\n%s", seed, listed(changes), got, want)
	}
	keys := map[string]bool{}
	for i := range changes {
		if keys[changes[i].Key] {
			t.Fatalf("history %d: two changes have the key %q", seed, changes[i].Key)
		}
		keys[changes[i].Key] = true
	}
	if same := TextOf(was).Equal(want); same != (len(changes) == 0) {
		t.Fatalf("history %d: %d changes between texts of which it holds that they are equal: %v\n%s", seed, len(changes), same, listed(changes))
	}
}

func listed(changes []Change) string {
	var all string
	for i := range changes {
		ch := &changes[i]
		all += fmt.Sprintf("%s %d/%d %q %d–%d: %s | %s\n", ch.Kind, ch.Poem, ch.Line.Line, ch.Field, ch.From, ch.To, ch.Was, ch.Is)
	}
	return all
}
