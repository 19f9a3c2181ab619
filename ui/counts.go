package ui

import (
	"fmt"
	"strconv"

	"headland/pagemodel"
)

// count is how much of something there is, in words that can be pressed.
type count struct {
	words   string
	pressed overKind // overNothing where there is nowhere to go
}

// countGap is the white between the counts, in the toolkit's units.
const countGap = 22

// counts are what wants the poet: lines unsettled, and faults if there are any.
func (d *desk) counts() []count {
	all := []count{{unsettledWords(d.of.Unsettled()), overUnsettled}}
	if d.of.Unsettled() == 0 {
		all[0].pressed = overSettled
	}
	switch n := len(d.faults); n {
	case 0:
	case 1:
		all = append(all, count{"1 fault", overFaults})
	default:
		all = append(all, count{fmt.Sprintf("%d faults", n), overFaults})
	}
	return all
}

// unsettledWords say how many lines want the poet.
func unsettledWords(n int) string {
	switch n {
	case 0:
		return "every line settled"
	case 1:
		return "1 line unsettled"
	}
	return fmt.Sprintf("%d lines unsettled", n)
}

// pageWords say where the book lies open: by folios, and, while those are the
// numbers of the pages, of how many.
func (d *desk) pageWords(s pagemodel.Spread) string {
	last := max(s.Verso, s.Recto)
	words := "page " + d.of.FolioOf(last)
	if s.Verso > 0 && s.Recto > 0 {
		words = "pages " + d.of.FolioOf(s.Verso) + "–" + d.of.FolioOf(s.Recto)
	}
	if d.of.FolioOf(last) != strconv.Itoa(last) {
		return fmt.Sprintf("%s · %d in all", words, d.of.Extent())
	}
	return fmt.Sprintf("%s of %d", words, d.of.Extent())
}
