package aloud

import (
	"math"
	"math/bits"
	"testing"
	"time"

	"pgregory.net/rapid"

	"headland/pagemodel"
	"headland/typeset/prosody"
)

// drawReading is a running order of poems of the file, texts from elsewhere and
// talk.
func drawReading(t *rapid.T, c *pagemodel.Collection) pagemodel.Reading {
	poems := Book(c).Items
	item := rapid.Custom(func(t *rapid.T) pagemodel.Item {
		i := pagemodel.Item{Talk: rapid.IntRange(0, 90).Draw(t, "talk"), Drop: rapid.Bool().Draw(t, "drop")}
		switch rapid.IntRange(0, 2).Draw(t, "kind") {
		case 0:
			i.Poem = rapid.SampledFrom(poems).Draw(t, "poem").Poem
		case 1:
			i.Text = rapid.SampledFrom([]string{oven, sonnet18, "bread"}).Draw(t, "text")
		default:
			i.Before = "And now for something quite short."
		}
		return i
	})
	return pagemodel.Reading{Slot: rapid.IntRange(0, 900).Draw(t, "slot"), Items: rapid.SliceOfN(item, 0, 9).Draw(t, "items")}
}

// TestPlan holds of any running order that its items follow one another, that its
// times add up, and that what is dropped is what has to be.
func TestPlan(t *testing.T) {
	s := newShelf()
	s.poem("Oven", oven)
	s.poem("", ozymandias)
	c := s.Collection()
	rapid.Check(t, func(t *rapid.T) {
		r := drawReading(t, c)
		plan := PlanOf(c, r, prosody.English(), pagemodel.Voice{}, nil)
		total, whole, dropped := 0.0, 0.0, 0
		for i, item := range plan.Items {
			if item.Starts != total || item.Seconds <= 0 {
				t.Fatalf("item %d starts at %g and takes %g; those before it take %g", i+1, item.Starts, item.Seconds, total)
			}
			whole += item.Seconds
			if item.Dropped {
				dropped |= 1 << i
			} else {
				total += item.Seconds
			}
		}
		if plan.Total != total || plan.Whole != whole || len(plan.Items) != len(r.Items) {
			t.Fatalf("the total is %g of %g, want %g of %g", plan.Total, plan.Whole, total, whole)
		}
		if over := max(0, total-plan.Slot); r.Slot > 0 && plan.Over != over || r.Slot == 0 && (plan.Over != 0 || dropped != 0) {
			t.Fatalf("over by %g, want %g", plan.Over, over)
		}
		if want := bestDrop(plan); dropped != want {
			t.Fatalf("dropped %b, want %b (bit 0 is the first item)", dropped, want)
		}
	})
}

// bestDrop tries every set of items that may be dropped: of those after which the
// rest fits the one of the fewest, and of these the one with the latest, which as
// a number is the greatest. Where none fits, it is all.
func bestDrop(plan Plan) int {
	all, best, found := 0, 0, plan.Slot == 0
	for i, item := range plan.Items {
		if item.Item.Drop && item.Seconds > 0 {
			all |= 1 << i
		}
	}
	if found {
		return 0
	}
	for set := range 1 << len(plan.Items) {
		rest := plan.Whole
		for i, item := range plan.Items {
			if set>>i&1 == 1 {
				rest -= item.Seconds
			}
		}
		size, least := bits.OnesCount(uint(set)), bits.OnesCount(uint(best))
		if set&^all == 0 && rest <= plan.Slot && (!found || size < least || size == least && set > best) {
			best, found = set, true
		}
	}
	if !found {
		return all
	}
	return best
}

// TestDrop holds the choice among few items by hand: seconds a talk of so many.
func TestDrop(t *testing.T) {
	c := newShelf().Collection()
	talk := func(seconds int, drop bool) pagemodel.Item {
		return pagemodel.Item{Before: "so", Talk: seconds, Drop: drop}
	}
	for _, test := range []struct {
		name  string
		slot  int
		items []pagemodel.Item
		want  string // a letter an item: d for dropped
		over  float64
	}{
		{"an empty reading", 60, nil, "", 0},
		{"talk only, it fits", 60, []pagemodel.Item{talk(60, true)}, "-", 0},
		{"the last of two alike", 90, []pagemodel.Item{talk(40, true), talk(40, true), talk(40, false)}, "-d-", 0},
		{"one long one rather than two short", 100, []pagemodel.Item{talk(60, true), talk(30, true), talk(30, true), talk(30, false)}, "d---", 0},
		{"never one that is not marked", 50, []pagemodel.Item{talk(40, false), talk(20, true), talk(40, false)}, "-d-", 30},
		{"no slot", 0, []pagemodel.Item{talk(4000, true)}, "-", 0},
	} {
		plan := PlanOf(c, pagemodel.Reading{Slot: test.slot, Items: test.items}, nil, pagemodel.Voice{}, nil)
		got := ""
		for _, item := range plan.Items {
			got += map[bool]string{true: "d", false: "-"}[item.Dropped]
		}
		if got != test.want || math.Abs(plan.Over-test.over) > 1e-9 {
			t.Errorf("%s: %q, over by %g; want %q, %g", test.name, got, plan.Over, test.want, test.over)
		}
	}
}

// TestNames holds what items are known by.
func TestNames(t *testing.T) {
	s := newShelf()
	s.poem("Oven", oven)
	s.poem("", "salt,\nwater")
	c := s.Collection()
	items := append(Book(c).Items, pagemodel.Item{Title: "Night Bread"}, pagemodel.Item{Text: "\nsalt\nwater"}, pagemodel.Item{Before: "So."}, pagemodel.Item{Poem: 999})
	plan := PlanOf(c, pagemodel.Reading{Items: items}, prosody.English(), pagemodel.Voice{}, nil)
	titles := []string{"Oven", "“salt”", "Night Bread", "“salt”", "", "(a poem that is no longer in the file)"}
	for i, item := range plan.Items {
		number := i + 1
		if i > 1 {
			number = 0
		}
		if item.Title != titles[i] || item.Number != number {
			t.Errorf("item %d is %q, number %d; want %q, %d", i+1, item.Title, item.Number, titles[i], number)
		}
	}
	if book := Book(c); book.Name != "Night Bread" || book.Slot != 0 || book.ID != 0 {
		t.Errorf("the book is %+v", book)
	}
}

// TestLast holds which taking is an item's last, and which tell something.
func TestLast(t *testing.T) {
	s := newShelf()
	s.poem("Oven", oven)
	c := s.Collection()
	poem := first(c).Poem
	c = mustDo(t, c, pagemodel.SetReading{Reading: pagemodel.Reading{Name: "Thursday", Items: []pagemodel.Item{{Poem: poem}, {Text: "salt"}, {Poem: poem, Before: "Again."}}}})
	r := c.Readings()[0]
	at := func(day int) time.Time { return time.Date(2026, 3, day, 19, 0, 0, 0, time.UTC) }
	taken := []Taking{
		{Run: 2, Reading: r.ID, Item: r.Items[0].ID, Poem: poem, At: at(9), Seconds: 31},
		{Run: 1, Reading: r.ID, Item: r.Items[0].ID, Poem: poem, At: at(2), Seconds: 40},
		{Run: 1, Reading: r.ID, Item: r.Items[1].ID, At: at(2), Seconds: 3},
		{Run: 3, Reading: 0, Item: 0, Poem: poem, At: at(4), Seconds: 28},
		{Run: 4, Reading: r.ID, Item: 999, Poem: poem, At: at(12), Seconds: 99},
		{Run: 4, Reading: r.ID, Item: r.Items[1].ID, Poem: poem, At: at(11), Seconds: 98},
		{Run: 4, Reading: r.ID, Item: r.Items[0].ID, Poem: poem, At: at(1), Seconds: 0},
	}
	plan := PlanOf(c, r, prosody.English(), pagemodel.Voice{}, taken)
	if a, b, never := plan.Items[0].Last, plan.Items[1].Last, plan.Items[2].Last; a != 31 || b != 3 || never != 0 {
		t.Errorf("the last took %g, %g and %g s, want 31, 3 and 0", a, b, never)
	}
	if book := PlanOf(c, Book(c), prosody.English(), pagemodel.Voice{}, taken); book.Items[0].Last != 99 {
		t.Errorf("in the book it took %g s, want 99", book.Items[0].Last)
	}
	var seconds []float64
	for _, o := range Observe(c, prosody.English(), taken) {
		seconds = append(seconds, o.Taken)
		if want := CountsOf(c, r.Items[0], prosody.English()); o.Taken != 3 && o.Counts != want {
			t.Errorf("%g s are of %+v, want %+v", o.Taken, o.Counts, want)
		}
	}
	if len(seconds) != 4 || seconds[0] != 31 || seconds[1] != 40 || seconds[2] != 3 || seconds[3] != 28 {
		t.Errorf("observed %g", seconds)
	}
}
