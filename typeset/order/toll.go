package order

import (
	"fmt"
	"strings"

	"headland/pagemodel"
	"headland/typeset"
)

// Toll is what an order of the book costs in paper and in the shape of its
// poems.
type Toll struct {
	Blanks        int // blank pages among the poems, and between them and the end matter
	Unfaced       int // poems of two pages that do not face each other
	Parted        int // page ends within a stanza
	Extent        int // pages of the book
	Signatures    int // that the pages take, the last one whether full or not
	OverSignature int // pages over the last full signature
	ToEven        int // pages to the next even working
	Faults        int // of all kinds, or [Uncounted]
}

// Uncounted stands for the faults of an order that was not set: what lies too near
// an edge, and more, is known only of laid pages.
const Uncounted = -1

// TollOf is the toll of a setting. It looks at its pages, so it must be called
// where the setter may be used.
func TollOf(set *typeset.Setting) Toll {
	t := tollOf(set, set.TrialOrder().Tally(present(set)))
	t.Faults = len(set.Faults())
	return t
}

// present is the order of a setting's own entries.
func present(set *typeset.Setting) []int32 {
	order := make([]int32, set.Collection().Entries().Len())
	for i := range order {
		order[i] = int32(i)
	}
	return order
}

func tollOf(set *typeset.Setting, n typeset.OrderTally) Toll {
	pages := set.Collection().Design().SignaturePages()
	return Toll{
		Blanks: n.Blanks, Unfaced: n.Unfaced, Parted: n.Parted, Extent: n.Extent,
		Signatures: pagemodel.Signatures(n.Extent, pages), OverSignature: n.Extent % pages, ToEven: pagemodel.Blanks(n.Extent, pages),
		Faults: Uncounted,
	}
}

// Beside says in words how a toll differs from another, most often that of the
// order before: "2 blanks fewer, 1 unfaced poem more, the same extent". What is
// alike is not said, but for the extent.
func (t Toll) Beside(other Toll) string {
	said := differences([]difference{
		{t.Blanks, other.Blanks, "blank"},
		{t.Unfaced, other.Unfaced, "unfaced poem"},
		{t.Parted, other.Parted, "parted stanza"},
	})
	if t.Extent == other.Extent {
		said = append(said, "the same extent")
	}
	said = append(said, differences([]difference{
		{t.Extent, other.Extent, "page"},
		{t.Signatures, other.Signatures, "signature"},
	})...)
	if t.Faults != Uncounted && other.Faults != Uncounted {
		said = append(said, differences([]difference{{t.Faults, other.Faults, "fault"}})...)
	}
	return strings.Join(said, ", ")
}

// difference is a count of two tolls and what it counts.
type difference struct {
	is, was int
	what    string
}

// differences are those that there are, in words.
func differences(all []difference) []string {
	var said []string
	for _, d := range all {
		switch {
		case d.is < d.was:
			said = append(said, fmt.Sprint(counted(d.was-d.is, d.what), " fewer"))
		case d.is > d.was:
			said = append(said, fmt.Sprint(counted(d.is-d.was, d.what), " more"))
		}
	}
	return said
}
