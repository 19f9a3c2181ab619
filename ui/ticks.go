package ui

import (
	"slices"

	"headland/pagemodel"
	"headland/typeset"
)

// ticksOf are the ticks of a setting, in the order of their height on the page.
func ticksOf(set *typeset.Setting, faults []typeset.Fault) []tick {
	var ticks []tick
	rows := float64(max(1, set.Collection().Design().Rows()))
	add := func(page, row int, faulty bool) {
		if page > 0 {
			ticks = append(ticks, tick{page, faulty, 0.1 + 0.75*min(1, float64(row)/rows)})
		}
	}
	for _, o := range set.Turnovers() {
		if o.State == pagemodel.Unsettled {
			add(o.Page, o.Row, false)
		}
	}
	for _, f := range faults {
		add(f.Page, f.Row, true)
	}
	slices.SortStableFunc(ticks, func(a, b tick) int {
		switch {
		case a.depth < b.depth:
			return -1
		case a.depth > b.depth:
			return 1
		}
		return 0
	})
	return onePerPage(ticks)
}

// movedPoems are the first pages of the poems that begin on another page in a
// setting than in the one it was made from.
func movedPoems(from, to *typeset.Setting) []int {
	if from == to {
		return nil
	}
	var moved []int
	was, now := from.Contents(), to.Contents()
	for i := range min(len(was), len(now)) {
		if was[i].Page != now[i].Page {
			moved = append(moved, now[i].Page)
		}
	}
	return moved
}

// onePerPage leaves one bar and one ring to a page.
func onePerPage(ticks []tick) []tick {
	type kind struct {
		page   int
		faulty bool
	}
	seen := map[kind]bool{}
	return slices.DeleteFunc(ticks, func(t tick) bool {
		k := kind{t.page, t.faulty}
		was := seen[k]
		seen[k] = true
		return was
	})
}
