package sheet

import (
	"math/rand/v2"
	"slices"
	"testing"

	"headland/typeset"
)

// TestCutsAreTheBest cuts small random poems and sees that no other way to cut them
// costs less: all of them are tried, and priced by hand.
func TestCutsAreTheBest(t *testing.T) {
	rnd := rand.New(rand.NewPCG(5, 3))
	for n := range 400 {
		units := randomUnits(rnd)
		first, others := 3+rnd.IntN(4), 3+rnd.IntN(5)
		others = max(first, others)
		got := priceOfCuts(units, cut(units, first, others), first, others)
		for mask := range 1 << (len(units) - 1) {
			starts := []int{0}
			for i := 1; i < len(units); i++ {
				if mask>>(i-1)&1 == 1 {
					starts = append(starts, i)
				}
			}
			if p := priceOfCuts(units, starts, first, others); slices.Compare(p, got) < 0 {
				t.Fatalf("case %d: cut at %v it costs %v, and %v was chosen, at %v", n, starts, p, got, cut(units, first, others))
			}
		}
	}
}

func randomUnits(rnd *rand.Rand) []unit {
	var units []unit
	stanza := 0
	for i := range 1 + rnd.IntN(11) {
		u := unit{rows: make([]typeset.Row, 1+rnd.IntN(8)/7), stanza: stanza, pause: rnd.IntN(4), keep: rnd.IntN(12) == 0}
		if i > 0 && rnd.IntN(3) == 0 {
			stanza++
			u.stanza, u.opens, u.before = stanza, true, 1
		}
		units = append(units, u)
	}
	return units
}

// priceOfCuts prices finished leaves.
func priceOfCuts(units []unit, starts []int, first, others int) []int {
	p := make([]int, 5)
	for i, from := range starts {
		to := len(units)
		if i+1 < len(starts) {
			to = starts[i+1]
		}
		room := others
		if i == 0 {
			room = first
		}
		empty := room - depth(units[from:to])
		p[2]++
		if empty < 0 {
			p[0]++
		} else {
			p[4] += empty * empty
		}
		if empty < 0 && to > from+1 {
			p[0] += 1000 // never of more than one unit
		}
		if to == len(units) {
			continue
		}
		end, next := units[to-1], units[to]
		var whole []unit
		for _, u := range units {
			if u.stanza == next.stanza {
				whole = append(whole, u)
			}
		}
		switch {
		case end.keep:
			p[0]++
		case end.stanza != next.stanza:
		case depth(whole) > others:
			p[1]++
			p[3] += end.pause
		default:
			p[0]++
		}
	}
	return p
}
