package typeset_test

import (
	"testing"

	"pgregory.net/rapid"

	"headland/pagemodel"
	"headland/typeset"
)

// TestTrialOrderIsTheBook: in the order that a book is set in, the trial counts the
// pages that are there, and finds each poem where its rows are.
func TestTrialOrderIsTheBook(t *testing.T) {
	setter := typeset.NewSetter(typeset.Bundled())
	for name, what := range map[string]said{
		"starts":  {poems: 6, pieces: 14, forms: true, starts: true, heads: true},
		"shares":  {poems: 6, pieces: 14, starts: true, shares: true, overrules: true},
		"spreads": {poems: 4, pieces: 14, starts: true, spreads: true},
	} {
		t.Run(name, func(t *testing.T) {
			rapid.Check(t, func(t *rapid.T) {
				book := drawBook(t, what)
				checkTrial(t, setter.Set(nil, book))
			})
		})
	}
}

func checkTrial(t *rapid.T, set *typeset.Setting) {
	trial := set.TrialOrder()
	order := make([]int32, set.Collection().Entries().Len())
	for i := range order {
		order[i] = int32(i)
	}
	got, cost := trial.Tally(order), set.Cost()
	want := typeset.OrderTally{Blanks: blankPages(set), Unfaced: cost.Unfaced, Parted: cost.Turned + cost.Split, Extent: set.Extent()}
	if got != want || got.Blanks+got.Unfaced < trial.Least() {
		t.Fatalf("the trial counts %+v, the pages are %+v; no order is said to have less than %d", got, want, trial.Least())
	}
	for i, e := range set.Collection().Order() {
		if e.Poem == nil || e.Poem.LineCount() == 0 {
			continue
		}
		first, last := trial.Pages(i)
		if from, to := pagesWith(set, e.Poem.ID()); first != from || last < to || last > to && e.Poem.Head().Lie != pagemodel.Across {
			t.Fatalf("poem %d is said to stand on pages %d to %d and stands on %d to %d", i, first, last, from, to)
		}
		if e.Poem.Head().Lie == pagemodel.Across && last%2 == 0 {
			t.Fatalf("poem %d across the spread is said to end on a verso, %d", i, last)
		}
	}
}

// blankPages are the pages without a row.
func blankPages(set *typeset.Setting) int {
	n := 0
	for page := 1; page <= set.Extent(); page++ {
		if len(set.Page(page).Rows) == 0 {
			n++
		}
	}
	return n
}

// pagesWith are the first and last page with a row of the poem's lines or head.
func pagesWith(set *typeset.Setting, id pagemodel.PoemID) (first, last int) {
	for page := 1; page <= set.Extent(); page++ {
		for _, r := range set.Page(page).Rows {
			if r.Poem != id {
				continue
			}
			if first == 0 {
				first = page
			}
			last = page
		}
	}
	return first, last
}
