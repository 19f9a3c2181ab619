package pagemodel

// Binding is how the leaves are held together. It decides how much of the
// inner margin the eye loses.
type Binding int

// The bindings that a book of verse usually has.
const (
	Sewn         Binding = iota // folded sections sewn through the fold
	PerfectBound                // single leaves glued at the spine
	Stapled                     // one folded section, stapled through the fold
)

var bindingNames = [...]string{Sewn: "sewn", PerfectBound: "perfect bound", Stapled: "stapled"}

// String is the binding's name in the trade.
func (b Binding) String() string { return nameOf(bindingNames[:], int(b)) }

// ParseBinding reads a binding by its name.
func ParseBinding(s string) (Binding, error) {
	n, err := indexOf(bindingNames[:], "binding", s)
	return Binding(n), err
}

// innerStep is one row of a printer's table: books of at most pages have this
// inner margin.
type innerStep struct {
	pages int
	inner Length
}

// perfectInner is a digital printer's advice for perfect-bound books: a 13 mm
// margin plus an allowance for the gutter by page count. (One printer's help
// page, read 2026; other printers ask at least 15 mm of every perfect-bound
// book, which the first row is raised to.)
var perfectInner = []innerStep{
	{60, MM(15)}, {150, MM(16)}, {400, MM(25)}, {600, MM(29)}, {1 << 30, MM(32)},
}

// sewnInner is lighter: a sewn book opens to the fold and nothing is milled
// off its spine. Common practice, no source: never under 13 mm, and half of
// the perfect-bound allowance.
var sewnInner = []innerStep{
	{60, MM(13)}, {150, MM(15)}, {400, MM(19)}, {600, MM(21)}, {1 << 30, MM(23)},
}

// stapledInner: a stapled book needs no allowance for the gutter (a printer's
// guide: "no gutter loss; creep instead").
var stapledInner = []innerStep{{1 << 30, MM(13)}}

// DefaultInner is the inner margin to begin with for a book of that many
// pages. It is chosen once, when a design is made: the extent that comes out
// is never fed back into it.
func DefaultInner(b Binding, extent int) Length {
	table := map[Binding][]innerStep{Sewn: sewnInner, PerfectBound: perfectInner}[b]
	if table == nil {
		table = stapledInner
	}
	return stepFor(table, extent)
}

// swallowed is what the eye loses at the fold. Perfect bound: 6 to 13 mm are
// quoted for thick books (one printer's guide, low confidence), less for thin
// ones. Sewn: a third of that, by common practice, no source. Stapled: none.
var swallowed = map[Binding][]innerStep{
	PerfectBound: {{60, MM(3)}, {150, MM(5)}, {400, MM(8)}, {600, MM(10)}, {1 << 30, MM(13)}},
	Sewn:         {{60, MM(1)}, {150, MM(1.5)}, {400, MM(2.5)}, {600, MM(3.5)}, {1 << 30, MM(4.5)}},
}

// Swallowed is how much of each inner margin disappears into the gutter of a
// book of that many pages. It is drawn and reported, never taken from the
// measure.
func Swallowed(b Binding, extent int) Length {
	table := swallowed[b]
	if table == nil {
		return 0
	}
	return stepFor(table, extent)
}

func stepFor(table []innerStep, extent int) Length {
	for _, row := range table {
		if extent <= row.pages {
			return row.inner
		}
	}
	return table[len(table)-1].inner
}
