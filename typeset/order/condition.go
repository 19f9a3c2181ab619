package order

import (
	"fmt"
	"slices"
	"strings"

	"headland/pagemodel"
)

// Condition is something that an order must meet. It is made by one of the
// functions below.
type Condition struct {
	kind  conditionKind
	poems []pagemodel.PoemID
}

type conditionKind int

const (
	together conditionKind = iota
	inOrder
	first
	last
	apart
	sectionsStay
)

// Together wants poems one after another, whichever comes first, with no other
// poem and no section's head between them.
func Together(poems ...pagemodel.PoemID) Condition { return Condition{together, poems} }

// InOrder wants poems one after another as they are named, with nothing between
// them.
func InOrder(poems ...pagemodel.PoemID) Condition { return Condition{inOrder, poems} }

// First wants a poem to be the first of the book's poems.
func First(poem pagemodel.PoemID) Condition {
	return Condition{first, []pagemodel.PoemID{poem}}
}

// Last wants a poem to be the last of the book's poems.
func Last(poem pagemodel.PoemID) Condition {
	return Condition{last, []pagemodel.PoemID{poem}}
}

// Apart wants two poems never side by side: neither one straight after the
// other, whether the leaf turns between them or not, nor anything of both on one
// opening. A section's head between them keeps them from being one after the
// other.
func Apart(a, b pagemodel.PoemID) Condition {
	return Condition{apart, []pagemodel.PoemID{a, b}}
}

// SectionsStay wants every poem to stay in its section.
func SectionsStay() Condition { return Condition{kind: sectionsStay} }

// mostNamed is how many poems a condition names in words; of more it says the number.
const mostNamed = 4

// Words say what the condition wants of a book: "“Oven” and “Crust” together".
func (c Condition) Words(book *pagemodel.Collection) string {
	var names []string
	for i, id := range c.poems {
		if more := len(c.poems) - i; i >= mostNamed-1 && more > 1 {
			names = append(names, counted(more, "poem")+" more")
			break
		}
		names = append(names, nameOf(book, id))
	}
	switch c.kind {
	case together:
		return listed(names) + " together"
	case inOrder:
		return listed(names) + " one after another in that order"
	case first:
		return listed(names) + " first"
	case last:
		return listed(names) + " last"
	case apart:
		return listed(names) + " never side by side"
	}
	return "sections as they are"
}

func nameOf(book *pagemodel.Collection, id pagemodel.PoemID) string {
	if p, _, ok := book.Poem(id); ok {
		return "“" + p.Name() + "”"
	}
	for _, p := range book.LeftOut() {
		if p.ID() == id {
			return "“" + p.Name() + "”"
		}
	}
	return fmt.Sprint("poem ", id)
}

// listed is words in a row: "a, b and c".
func listed(words []string) string {
	if len(words) < 2 {
		return strings.Join(words, "")
	}
	return strings.Join(words[:len(words)-1], ", ") + " and " + words[len(words)-1]
}

// bound is a condition on the entries of a book, by their indexes in its order.
type bound struct {
	Condition
	entries []int32
}

// bind looks up what a condition names. The error says what it names in vain.
func bind(book *pagemodel.Collection, c Condition) (bound, error) {
	b := bound{Condition: c}
	for i, id := range c.poems {
		at, ok := book.IndexOf(id)
		if !ok {
			return b, fmt.Errorf("%s: %s is not in the book: put it in, or leave it out of the condition", c.Words(book), nameOf(book, id))
		}
		if slices.Contains(c.poems[:i], id) {
			return b, fmt.Errorf("%s: %s is named twice: name each poem once", c.Words(book), nameOf(book, id))
		}
		b.entries = append(b.entries, int32(at))
	}
	if (c.kind == together || c.kind == inOrder) && len(c.poems) < 2 {
		return b, fmt.Errorf("poems can only be kept together where there are two: name another")
	}
	return b, nil
}

// amiss says by how much an order does not meet the condition, 0 where it does.
// pos is where each entry stands; the poems of the book begin and end at from and
// to. Of poems that are to be apart it knows only whether one follows the other.
func (b *bound) amiss(pos []int32, from, to int32) int {
	switch b.kind {
	case together:
		low, high := pos[b.entries[0]], pos[b.entries[0]]
		for _, e := range b.entries[1:] {
			low, high = min(low, pos[e]), max(high, pos[e])
		}
		return int(high-low) + 1 - len(b.entries)
	case inOrder:
		n := 0
		for i, e := range b.entries[1:] {
			if pos[e] != pos[b.entries[i]]+1 {
				n++
			}
		}
		return n
	case first:
		return int(pos[b.entries[0]] - from)
	case last:
		return int(to - pos[b.entries[0]])
	case apart:
		if d := pos[b.entries[0]] - pos[b.entries[1]]; d == 1 || d == -1 {
			return 1
		}
	}
	return 0
}
