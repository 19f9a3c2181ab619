package sheet

import (
	"math/rand/v2"
	"strings"
	"testing"

	"headland/pagemodel"
	"headland/typeset"
	"headland/typeset/aloud"
)

func planOf(c *pagemodel.Collection, r pagemodel.Reading) aloud.Plan {
	return aloud.PlanOf(c, r, nil, pagemodel.Voice{}, nil)
}

func textsOn(pages []*typeset.Page) []string {
	var texts []string
	for _, p := range pages {
		for i := range p.Rows {
			texts = append(texts, textOf(&p.Rows[i]))
		}
	}
	return texts
}

// TestCard: a card of the book's trim or A6 names the reading and says of each item
// its page, title, first words and times, and what is said before it.
func TestCard(t *testing.T) {
	c := book("Loaves\nOne loaf on the sill,\nthe other in the oven.", "Weights\nThe scales are fair tonight", "Last\nSo that was that.", "\nNobody has told the street.")
	r := readingOf(c)
	r.Name, r.Occasion, r.Slot = "At the mill", "Mill Street", 300
	r.Items[1].Before, r.Items[1].Talk, r.Items[2].Drop = "About my uncle.", 60, true
	pages := Card(set(c), planOf(c, r), setter)
	if len(pages) != 1 || pages[0].Trim != cardTrim {
		t.Fatalf("%d sides of %v", len(pages), pages[0].Trim)
	}
	p := planOf(c, r)
	all := "\n" + strings.Join(textsOn(pages), "\n") + "\n"
	for _, want := range []string{
		"At the mill", "Mill Street · " + clock(p.Total) + " of 5:00", "Loaves", "“One loaf on …”", clock(p.Items[0].Seconds), "About my uncle.",
		"Weights", clock(p.Items[1].Seconds), "to " + clock(p.Items[1].Starts+p.Items[1].Seconds), "“So that was …” · if there is time", "“Nobody has told …”", "1", "2", "3", "4",
	} {
		if !strings.Contains(all, "\n"+want+"\n") {
			t.Errorf("the card does not say %q:%s", want, all)
		}
	}
}

// TestCardGoesOnBehind: what one side can't hold goes on, no item parted, nothing
// outside the margins.
func TestCardGoesOnBehind(t *testing.T) {
	rnd := rand.New(rand.NewPCG(5, 4))
	var poems []string
	for range 40 {
		poems = append(poems, "A Poem at Night\n"+bakeryWords[rnd.IntN(len(bakeryWords))]+" and the street")
	}
	c := book(poems...)
	r := readingOf(c)
	for i := range r.Items {
		r.Items[i].Before = strings.Repeat("Said between. ", rnd.IntN(9))
	}
	pages := Card(set(c), planOf(c, r), setter)
	if len(pages) < 2 {
		t.Fatalf("%d sides", len(pages))
	}
	titles, apart := 0, map[typeset.Length]bool{}
	for _, p := range pages {
		clear(apart)
		for i := range p.Rows {
			row := &p.Rows[i]
			if row.X > p.Text.X && row.X < p.Text.X+p.Text.W/2 {
				for at := row.Baseline - 4*64; at < row.Baseline+4*64; at++ {
					if apart[at] {
						t.Errorf("side %d: %q lies on another row", p.Number, textOf(row))
						break
					}
				}
				apart[row.Baseline] = true
			}
			if row.Baseline > p.Text.Y+p.Text.H || row.X < p.Text.X || row.X+row.Width > p.Text.X+p.Text.W+1 {
				t.Errorf("%q stands at %v, %v", textOf(row), row.X, row.Baseline)
			}
			if textOf(row) == "A Poem at Night" {
				titles++
			}
		}
		if first := textOf(&p.Rows[0]); p.Number > 1 && first != "A Poem at Night" && !strings.HasPrefix(first, "Said between.") {
			t.Errorf("side %d begins with %q", p.Number, first)
		}
	}
	if titles != 40 {
		t.Errorf("%d titles, want 40", titles)
	}
}

// TestCardTrim: a card is no larger than the book that it lies in.
func TestCardTrim(t *testing.T) {
	small := pagemodel.Trim{Width: pagemodel.MM(100), Height: pagemodel.MM(160)}
	for _, try := range []struct{ book, want pagemodel.Trim }{
		{pagemodel.DefaultDesign().Trim, cardTrim}, {small, small}, {cardTrim, cardTrim},
	} {
		if got := CardTrim(try.book); got != try.want {
			t.Errorf("for a book of %v: %v, want %v", try.book, got, try.want)
		}
	}
}
