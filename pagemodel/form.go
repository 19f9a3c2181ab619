package pagemodel

import "strings"

// Form is how a poem's lines go together, declared by the poet. It decides
// where a page may end within a stanza; a poem that declares none is judged by
// its stanzas alone.
type Form string

// The forms that have a rule for page ends.
const (
	NoForm     Form = ""
	Couplets   Form = "couplets"
	Tercets    Form = "tercets"
	Quatrains  Form = "quatrains"
	Sestets    Form = "sestets"
	Stanzaless Form = "stanza-less"
)

// Forms are the forms in the order in which they are offered.
var Forms = []Form{NoForm, Couplets, Tercets, Quatrains, Sestets, Stanzaless}

// Group is how many lines of the form belong together, 0 where it does not
// say.
func (f Form) Group() int {
	return map[Form]int{Couplets: 2, Tercets: 3, Quatrains: 4, Sestets: 6}[f]
}

// ParseForm reads a form by its name. A word that is none of the forms is kept
// as the poet wrote it and has no rule.
func ParseForm(s string) Form {
	word := strings.TrimSpace(s)
	for _, f := range Forms {
		if strings.EqualFold(word, string(f)) {
			return f
		}
	}
	return Form(word)
}

// ProposedForm is the form that the shape of the poem suggests, NoForm where it
// suggests none: stanzas all of two, three, four or six lines, or verse without
// any stanza break that runs over more than fourteen lines. It is offered, never
// taken unasked.
func ProposedForm(p *Poem) Form {
	length, stanzas := 0, 0
	for _, part := range p.parts {
		for _, s := range part.stanzas {
			if s.kind == Prose || length != 0 && len(s.lines) != length {
				return NoForm
			}
			length = len(s.lines)
			stanzas++
		}
	}
	for _, f := range [...]Form{Couplets, Tercets, Quatrains, Sestets} {
		if f.Group() == length && stanzas > 1 {
			return f
		}
	}
	if stanzas == 1 && length > 14 {
		return Stanzaless
	}
	return NoForm
}

// Lie is how a poem lies on its pages.
type Lie int

// The ways that a poem may lie.
const (
	Upright Lie = iota
	Across      // over both pages of the spread, the gutter in its midst
	Turned      // on its side, its head at the left edge of the page
)

var lieNames = [...]string{Upright: "upright", Across: "across the spread", Turned: "turned"}

// String is the lie in words.
func (l Lie) String() string { return nameOf(lieNames[:], int(l)) }

// ParseLie reads a lie by its words.
func ParseLie(s string) (Lie, error) {
	n, err := indexOf(lieNames[:], "lie of a poem", s)
	return Lie(n), err
}

// Edge is where a poem's left edge stands in the measure.
type Edge int

// The left edges. A design can't have EdgeOfBook, and takes it for EdgeLeft.
const (
	EdgeOfBook Edge = iota // as the design says
	EdgeLeft               // at the left of the measure: one edge for the whole book
	EdgeCentre             // the longest line of each page in the middle (New Hart's Rules 9.4.2)
	EdgeOptic              // likewise, but by the body of the lines where one is disproportionately long (9.4.2)
)

var edgeNames = [...]string{EdgeOfBook: "as the book", EdgeLeft: "left", EdgeCentre: "centred", EdgeOptic: "optical"}

// String is the edge in words.
func (e Edge) String() string { return nameOf(edgeNames[:], int(e)) }

// ParseEdge reads an edge by its words.
func ParseEdge(s string) (Edge, error) {
	n, err := indexOf(edgeNames[:], "left edge", s)
	return Edge(n), err
}
