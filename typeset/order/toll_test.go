package order

import (
	"testing"

	"headland/pagemodel"
	"headland/typeset"
)

// TestTollOf: counted by hand. On a page of eight rows a poem of two stanzas of
// four lines under a title takes two pages, one stanza on each; a poem of three
// lines takes one.
func TestTollOf(t *testing.T) {
	d := pagemodel.DefaultDesign()
	d.TitleRow, d.PoemRow, d.Signature = 1, 2, 8
	d.Trim.Height = d.Margins.Head + d.Margins.Foot + d.Size + 7*d.Leading
	b := pagemodel.NewBuilder(pagemodel.About{Title: "Night Bakery"}, d)
	poem := func(title string, stanzas ...int) {
		var all []pagemodel.Stanza
		for _, n := range stanzas {
			var lines []pagemodel.Line
			for range n {
				lines = append(lines, b.Line("flour on a coat"))
			}
			all = append(all, pagemodel.NewStanza(pagemodel.Verse, lines))
		}
		b.Poem(pagemodel.PoemHead{Title: title}, []pagemodel.Part{pagemodel.NewPart("", all)})
	}
	b.Section("Street", nil) // pages 1 and 2, which is blank
	poem("Oven", 4, 4)       // 3 and 4: the leaf turns within it
	poem("Crust", 3)         // 5
	poem("Salt", 12)         // 6 and 7: parted
	b.Section("Yard", nil)   // a blank, 9 and 10, which is blank
	poem("Rain", 3)          // 11
	set := typeset.NewSetter(typeset.Bundled()).Set(nil, b.Collection())
	got := TollOf(set)
	want := Toll{Blanks: 3, Unfaced: 1, Parted: 1, Extent: 11, Signatures: 2, OverSignature: 3, ToEven: 5, Faults: len(set.Faults())}
	if got != want || got.Faults == 0 {
		t.Errorf("%+v, want %+v", got, want)
	}
}

func TestBeside(t *testing.T) {
	before := Toll{Blanks: 3, Unfaced: 1, Parted: 2, Extent: 96, Signatures: 6, Faults: 4}
	for _, c := range []struct {
		is   Toll
		want string
	}{
		{Toll{1, 2, 2, 96, 6, 0, 0, 4}, "2 blanks fewer, 1 unfaced poem more, the same extent"},
		{Toll{3, 1, 1, 97, 7, 1, 15, 1}, "1 parted stanza fewer, 1 page more, 1 signature more, 3 faults fewer"},
		{Toll{3, 0, 2, 96, 6, 0, 0, Uncounted}, "1 unfaced poem fewer, the same extent"},
		{before, "the same extent"},
	} {
		if got := c.is.Beside(before); got != c.want {
			t.Errorf("%+v: %q, want %q", c.is, got, c.want)
		}
	}
}

// TestSearchNeedsNothing: a book that can be no better is left as it is, however
// large, and the search ends of itself.
func TestSearchNeedsNothing(t *testing.T) {
	book := titled("Oven", "Crust", "Salt", "Rain", "Peel", "Rye", "Lamp", "Sack", "Scale", "Dough")
	set := typeset.NewSetter(typeset.Bundled()).Set(nil, book)
	long := &stopAfter{t.Context(), 100_000}
	found := searchOf(t, long, set, []Condition{First(named(t, book, "Oven"))})
	if len(found) != 1 || len(found[0].Moved) != 0 || found[0].Says[0] != "nothing is moved" || found[0].Says[1] != "the same extent" {
		t.Errorf("found %+v", found)
	}
	found = searchOf(t, long, set, []Condition{First(named(t, book, "Salt"))})
	last := found[len(found)-1]
	if long.left < 0 {
		t.Error("the search went on although nothing can be better")
	}
	if len(last.Moved) != 1 || last.Says[0] != "“Salt” from behind “Crust” to the beginning of the book" {
		t.Errorf("found %+v", last)
	}
}

// TestLeftOutStaysOut: poems that are not in the book stay out of what is found.
func TestLeftOutStaysOut(t *testing.T) {
	book := titled("Oven", "Crust", "Salt")
	crust := named(t, book, "Crust")
	now := book.Arrangement().Order
	out, err := pagemodel.Rearrange{Arrangement: pagemodel.Arrangement{Order: []int64{now[0], now[2]}, LeftOut: []int64{now[1]}}}.Apply(book)
	if err != nil {
		t.Fatal(err)
	}
	set := typeset.NewSetter(typeset.Bundled()).Set(nil, out)
	found := searchOf(t, t.Context(), set, []Condition{Last(pagemodel.PoemID(now[0]))})
	a := found[len(found)-1].Arrangement
	if len(a.Order) != 2 || a.Order[1] != now[0] || len(a.LeftOut) != 1 || a.LeftOut[0] != now[1] {
		t.Errorf("found %+v", a)
	}
	err = Search(t.Context(), set, []Condition{First(crust)}, func(Found) {})
	if err == nil || err.Error() != "“Crust” first: “Crust” is not in the book: put it in, or leave it out of the condition" {
		t.Errorf("the error is %v", err)
	}
}
