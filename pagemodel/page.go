package pagemodel

// Side is the side of the leaf that a page is on.
type Side int

// Recto pages are odd and stand on the right of a spread; verso pages are even
// and stand on the left (New Hart's Rules 1.1).
const (
	Recto Side = iota
	Verso
)

// String is "recto" or "verso".
func (s Side) String() string {
	if s == Verso {
		return "verso"
	}
	return "recto"
}

// Facing is the other side of the gutter.
func (s Side) Facing() Side { return 1 - s }

// SideOf is the side of the page with that number, counted from 1.
func SideOf(page int) Side {
	if page%2 == 0 {
		return Verso
	}
	return Recto
}

// Spread is what lies open at once: a verso and the recto that faces it. The
// first spread has page 1 only, and no verso.
type Spread struct {
	Verso, Recto int // page numbers from 1; 0 where there is no page
}

// SpreadOf is the spread that the page stands in, in a book of extent pages.
func SpreadOf(page, extent int) Spread {
	v := page &^ 1
	s := Spread{Verso: v, Recto: v + 1}
	if s.Recto > extent {
		s.Recto = 0
	}
	return s
}

// Leaf is the number, from 1, of the leaf whose recto or verso the page is.
func Leaf(page int) int { return (page + 1) / 2 }

// Blanks is how many blank pages fill extent up to a whole number of
// signatures of that many pages: the next even working.
func Blanks(extent, signature int) int {
	if signature <= 0 || extent%signature == 0 {
		return 0
	}
	return signature - extent%signature
}
