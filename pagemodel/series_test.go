package pagemodel

import (
	"slices"
	"testing"

	"pgregory.net/rapid"
)

// TestSeries holds a series to a plain slice: after any replacements it has
// the same items, it names exactly the indexes that changed since any older
// one, and no older one has changed.
func TestSeries(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.IntRange(1, 40).Draw(t, "length")
		series := []Series[int]{SeriesOf(make([]int, n))}
		plain := [][]int{make([]int, n)}
		for range rapid.IntRange(0, 60).Draw(t, "replacements") {
			i, v := rapid.IntRange(0, n-1).Draw(t, "index"), rapid.IntRange(0, 3).Draw(t, "item")
			from := rapid.IntRange(0, len(series)-1).Draw(t, "from")
			next := slices.Clone(plain[from])
			next[i] = v
			series, plain = append(series, series[from].With(i, v)), append(plain, next)
		}
		a, b := rapid.IntRange(0, len(series)-1).Draw(t, "a"), rapid.IntRange(0, len(series)-1).Draw(t, "b")
		for i := range series {
			if !slices.Equal(series[i].All(), plain[i]) {
				t.Fatalf("series %d is %v, want %v", i, series[i].All(), plain[i])
			}
		}
		var want []int
		for i := range n {
			if plain[a][i] != plain[b][i] {
				want = append(want, i)
			}
		}
		got := slices.Sorted(series[a].Changed(series[b]))
		if !slices.Equal(got, want) {
			t.Fatalf("changed %v, want %v", got, want)
		}
	})
}
