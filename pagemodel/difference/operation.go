package difference

import "headland/pagemodel"

// operation is what a change does to a text as it was. Operations name places of
// that text only, so that any of them can be done without the others.
type operation interface{ isOperation() }

// target is the tokens that an operation works on: an entry's lines, or one of its
// fields. Their atoms are numbered from 0: the boundary of token i is 2i, its word
// is 2i+1.
type target struct {
	name  name
	field int // ofLines, or an index of the entry's fields
}

const ofLines = -1

// atom is a boundary or a word.
type atom struct {
	isWord   bool
	boundary boundary
	word     word
}

// replacing puts atoms in place of those from one up to another.
type replacing struct {
	target
	from, to int
	with     []atom
}

// altering changes parts of boundaries.
type altering []alteration

// alteration gives a boundary one part of another.
type alteration struct {
	target
	at   int
	part part
	to   boundary
}

// part is what of a boundary is changed together.
type part int

// The parts. A change of level is done before all others, and brings all parts
// along that go with the level.
const (
	partLevel part = iota
	partIndent
	partRange
	partDropped
	partAbove
	partOpens
	partTied
	partSpace
	partTurn
	partKind
	partHeading
)

// restyling gives a style to bytes of words and boundaries, or takes it away.
type restyling struct {
	target
	style pagemodel.Style
	off   bool
	spots []spot
}

// spot is some bytes of an atom.
type spot struct{ atom, from, to int }

// valuing gives an entry another value.
type valuing struct {
	name  name
	value int
	to    string
}

// placing puts an entry behind another, or at the head of the book where that is
// the book itself. Where there is none such it goes behind one that stays in its
// place.
type placing struct {
	name          name
	behind, stays name
	entry         *entry // one that was not in the book, or nil
}

// removing takes an entry out of the book.
type removing struct{ name name }

// together are operations of one change.
type together []operation

func (together) isOperation()  {}
func (replacing) isOperation() {}
func (altering) isOperation()  {}
func (restyling) isOperation() {}
func (valuing) isOperation()   {}
func (placing) isOperation()   {}
func (removing) isOperation()  {}

func (a *atom) restyle(s spot, style pagemodel.Style, off bool) {
	if a.isWord {
		a.word.styles = restyled(a.word.styles, len(a.word.text), s.from, s.to, style, off)
		return
	}
	a.boundary.leadStyles = restyled(a.boundary.leadStyles, len(a.boundary.lead), s.from, s.to, style, off)
}

// take gives the boundary a part of another.
func (b *boundary) take(p part, from *boundary) {
	switch p {
	case partLevel:
		*b = *from
	case partIndent:
		b.look.indent = from.look.indent
	case partRange:
		b.look.rng = from.look.rng
	case partDropped:
		b.look.dropped = from.look.dropped
	case partAbove:
		b.look.above = from.look.above
	case partOpens:
		b.look.opens = from.look.opens
	case partTied:
		b.look.tied = from.look.tied
	case partSpace:
		b.lead, b.leadStyles, b.gap = from.lead, from.leadStyles, from.gap
	case partTurn:
		b.turn = from.turn
	case partKind:
		b.kind = from.kind
	case partHeading:
		b.heading = from.heading
	}
}
