package choices

import (
	"cmp"
	"fmt"
	"slices"
	"strings"
)

// Measure is what choices are put in order by. None says what is good or bad.
type Measure int

// The measures.
const (
	ByPlace     Measure = iota // as Of gives them: along the line
	ByOverrun                  // by how much all parts overrun together, least first
	ByRows                     // how many rows it takes, fewest first
	ByEnd                      // how the first part ends: stopped, at a phrase, without a stop, against the syntax
	ByMoves                    // how many other poems move, fewest first
	BySyllables                // how far the longest part and the shortest are apart, least first
)

var measureNames = [...]string{"place", "overrun", "rows", "end", "moves", "syllables"}

// String is the measure in a word.
func (m Measure) String() string { return measureNames[m] }

// ParseMeasure reads a measure by its word. The error says which there are.
func ParseMeasure(word string) (Measure, error) {
	if i := slices.Index(measureNames[:], word); i >= 0 {
		return Measure(i), nil
	}
	return 0, fmt.Errorf("there is no measure %q: it is one of %s", word, strings.Join(measureNames[:], ", "))
}

// Order puts the choices of one line in order: head by head, within a head by
// the measure, and what measures alike by place.
func Order(all []Choice, by Measure) {
	slices.SortStableFunc(all, func(a, b Choice) int {
		return cmp.Or(cmp.Compare(a.Head, b.Head), cmp.Compare(a.measured(by), b.measured(by)), cmp.Compare(a.place, b.place))
	})
}

// measured is what a choice measures, as a number.
func (c *Choice) measured(by Measure) int {
	switch by {
	case ByOverrun:
		return c.overrun()
	case ByRows:
		return len(c.Rows)
	case ByEnd:
		if len(c.Parts) > 0 {
			return int(c.Parts[0].End)
		}
	case ByMoves:
		return c.moved
	case BySyllables:
		return c.unevenness()
	}
	return 0
}

func (c *Choice) overrun() int {
	sum := 0
	for i := range c.Parts {
		sum += int(c.Parts[i].Overrun)
	}
	return sum
}

func (c *Choice) unevenness() int {
	if len(c.Parts) == 0 {
		return 0
	}
	least, most := c.Parts[0].Syllables, c.Parts[0].Syllables
	for i := range c.Parts {
		least, most = min(least, c.Parts[i].Syllables), max(most, c.Parts[i].Syllables)
	}
	return most - least
}
