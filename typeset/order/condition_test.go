package order

import (
	"context"
	"slices"
	"strings"
	"testing"

	"headland/pagemodel"
	"headland/typeset"
)

// titled is a book of poems of one line in sections: "Oven" is a poem, "# Street" a
// section's head, "+ Crust" a poem that shares the page of the one before it.
func titled(titles ...string) *pagemodel.Collection {
	b := pagemodel.NewBuilder(pagemodel.About{Title: "Night Bakery"}, pagemodel.DefaultDesign())
	for _, title := range titles {
		if section, ok := strings.CutPrefix(title, "# "); ok {
			b.Section(section, nil)
			continue
		}
		h := pagemodel.PoemHead{Title: title}
		if shared, ok := strings.CutPrefix(title, "+ "); ok {
			h = pagemodel.PoemHead{Title: shared, Start: pagemodel.SharedPage}
		}
		line := []pagemodel.Line{b.Line("flour on a coat")}
		b.Poem(h, []pagemodel.Part{pagemodel.NewPart("", []pagemodel.Stanza{pagemodel.NewStanza(pagemodel.Verse, line)})})
	}
	return b.Collection()
}

func named(t *testing.T, book *pagemodel.Collection, title string) pagemodel.PoemID {
	p, err := book.PoemCalled(title)
	if err != nil {
		t.Fatal(err)
	}
	return p.ID()
}

// TestContradictions: conditions that can't all hold are named, and only those,
// in small books and in ones too large for trying all orders.
func TestContradictions(t *testing.T) {
	few := []string{"# Street", "Oven", "Crust", "+ Crumb", "# Yard", "Salt", "Rain"}
	many := append(slices.Clone(few), strings.Fields("Peel Rye Lamp Sack Scale Dough Steam Tray Bell Cart Dawn Wheel Mill Sieve")...)
	for _, titles := range [][]string{few, many} {
		book := titled(titles...)
		set := typeset.NewSetter(typeset.Bundled()).Set(nil, book)
		id := func(title string) pagemodel.PoemID { return named(t, book, title) }
		harmless := Apart(id("Oven"), id("Salt"))
		for want, conditions := range map[string][]Condition{
			"“Oven” first and “Salt” first;":                                                              {harmless, First(id("Oven")), First(id("Salt"))},
			"“Oven” and “Crust” together, “Oven” first and “Crumb” last;":                                 {Together(id("Oven"), id("Crust")), First(id("Oven")), harmless, Last(id("Crumb"))},
			"“Crumb” first can't be had":                                                                  {harmless, First(id("Crumb"))},
			"“Crust” and “Crumb” never side by side can't be had":                                         {Apart(id("Crust"), id("Crumb"))},
			"“Salt” first and sections as they are;":                                                      {harmless, First(id("Salt")), SectionsStay()},
			"“Oven” and “Salt” one after another in that order and “Oven” and “Salt” never side by side;": {InOrder(id("Oven"), id("Salt")), harmless},
			"“Oven” and “Salt” together, “Oven” and “Crust” together and “Oven” and “Rain” together;": {
				Together(id("Oven"), id("Salt")), Together(id("Oven"), id("Crust")), Together(id("Oven"), id("Rain"))},
			"“Oven” is named twice":       {Together(id("Oven"), id("Oven"))},
			"poem 999 is not in the book": {First(999)},
			"name another":                {Together(id("Oven"))},
		} {
			err := Search(context.Background(), set, conditions, func(f Found) { t.Errorf("%s: found %+v", want, f) })
			if err == nil || !strings.Contains(err.Error(), want) {
				t.Errorf("the error is %v, and should say %q", err, want)
			}
		}
	}
}

// TestWords: what a condition says of itself.
func TestWords(t *testing.T) {
	book := titled("Oven", "Crust", "Salt", "Rain", "Peel", "Rye")
	var id []pagemodel.PoemID
	for _, p := range book.Poems() {
		id = append(id, p.ID())
	}
	for want, c := range map[string]Condition{
		"“Oven” and “Crust” together":                                Together(id[0], id[1]),
		"“Oven”, “Crust”, “Salt” and “Rain” together":                Together(id[:4]...),
		"“Oven”, “Crust”, “Salt” and 3 poems more together":          Together(id...),
		"“Crust”, “Oven” and “Salt” one after another in that order": InOrder(id[1], id[0], id[2]),
		"“Rye” first": First(id[5]),
		"“Rye” last":  Last(id[5]),
		"“Oven” and “Rye” never side by side": Apart(id[0], id[5]),
		"sections as they are":                SectionsStay(),
	} {
		if got := c.Words(book); got != want {
			t.Errorf("%q, want %q", got, want)
		}
	}
}
