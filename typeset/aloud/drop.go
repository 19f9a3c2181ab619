package aloud

import "slices"

// drop marks what is left out so that a running order becomes shorter by some
// seconds: of the items that may be, as few as will do, and of those sets the one
// whose last item comes latest, then the last but one, and so on.
func drop(items []Timed, seconds float64) {
	var may []int
	for i, item := range items {
		if item.Item.Drop && item.Seconds > 0 {
			may = append(may, i)
		}
	}
	for left := fewest(items, may, seconds); left > 0; {
		last := len(may) - 1
		at := may[last]
		may = may[:last]
		if len(may) < left || longest(items, may, left-1)+items[at].Seconds >= seconds {
			items[at].Dropped = true
			seconds -= items[at].Seconds
			left--
		}
	}
}

// fewest is how many of the items must go to gain some seconds; all of them where
// they don't suffice.
func fewest(items []Timed, may []int, seconds float64) int {
	n := 0
	for n < len(may) && longest(items, may, n) < seconds {
		n++
	}
	return n
}

// longest is the time of the n longest of the items.
func longest(items []Timed, may []int, n int) (seconds float64) {
	times := make([]float64, len(may))
	for i, at := range may {
		times[i] = items[at].Seconds
	}
	slices.Sort(times)
	for _, t := range times[len(times)-n:] {
		seconds += t
	}
	return seconds
}
