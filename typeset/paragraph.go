package typeset

import "cmp"

// A paragraph is broken into rows by total fit: of all the ways to break it, the
// one whose rows together cost least (D. E. Knuth and M. F. Plass, Breaking
// Paragraphs into Lines, Software: Practice and Experience 11, 1981). Nothing is
// shaped here; all that this file knows of words is how wide they are.

// breakpoint is a place where a row may end. Its lengths count along the whole
// paragraph set on one row.
type breakpoint struct {
	end, next      Length // x of the end of a row that ends here, its hyphen left out, and x of what begins the next
	glue, nextGlue Length // the word spaces before each, all together
	hyphen         Length // of a divided word: what its hyphen takes; else 0
	flagged        bool   // the row ends with a hyphen, put there or the poet's
	forced         bool   // a row ends here whatever it costs
}

// paragraph is what is to be broken. Its first breakpoint is its beginning and
// its last one its end.
type paragraph struct {
	points    []breakpoint
	measure   Length
	em        Length
	justified bool // rows fill the measure, but for the last; else the right edge is ragged
	anyhow    bool // rows looser than the tolerance cost no more than their demerits

	// width is the width of the row between two breakpoints, its word spaces as
	// the face has them and its hyphen counted.
	width func(from, to int) Length
}

// cost is what rows cost, compared in the order of its fields. Where all of it
// is equal the row that begins first and holds more is better, then the next.
type cost struct {
	over     int   // rows wider than the measure: words that it does not hold
	hyphens  int   // rows with a hyphen below two others with one
	loose    int   // justified rows looser than the tolerance
	demerits int64 // see raggedDemerits and justifiedDemerits
	rows     int
}

func (c cost) plus(d cost) cost {
	return cost{c.over + d.over, c.hyphens + d.hyphens, c.loose + d.loose, c.demerits + d.demerits, c.rows + d.rows}
}

func (c cost) compare(d cost) int {
	return cmp.Or(
		cmp.Compare(c.over, d.over), cmp.Compare(c.hyphens, d.hyphens), cmp.Compare(c.loose, d.loose),
		cmp.Compare(c.demerits, d.demerits), cmp.Compare(c.rows, d.rows),
	)
}

// mostHyphens is how many rows running may end with a hyphen (Hart's Rules,
// appendix). Its other rule, no divided word at the foot of a recto, can't be
// kept here: which page a row comes to stand on is not known yet.
const mostHyphens = 2

// rest is the best way to break what is left of a paragraph.
type rest struct {
	cost cost
	row  int // the breakpoint at which the first row of it ends
}

// breaks are the breakpoints at which the rows end, in order, the paragraph's
// end among them. Where a justified one can't be broken without a row looser
// than the tolerance, it is broken as if there were none: else all looseness
// would be put into one row of a word or two.
func (p *paragraph) breaks() []int {
	p.anyhow = false
	best := p.rests()
	if best[0][0].cost.loose > 0 {
		p.anyhow = true
		best = p.rests()
	}
	var rows []int
	for at, above := 0, 0; at < len(p.points)-1; {
		at, above = best[at][above].row, p.running(above, best[at][above].row)
		rows = append(rows, at)
	}
	return rows
}

// rests are the best rests from each breakpoint, below no, one or two rows
// running with a hyphen. The work grows with the breakpoints times those of one
// row.
func (p *paragraph) rests() [][mostHyphens + 1]rest {
	best := make([][mostHyphens + 1]rest, len(p.points))
	for from := len(p.points) - 2; from >= 0; from-- {
		p.breakFrom(best, from)
	}
	return best
}

// running is how many rows running end with a hyphen, up to the most that may,
// at one that ends at a breakpoint below so many others.
func (p *paragraph) running(above, at int) int {
	if !p.points[at].flagged {
		return 0
	}
	return min(above+1, mostHyphens)
}

// states is how many states there are at a breakpoint, from no row running with
// a hyphen upwards.
func (p *paragraph) states(at int) int {
	if p.points[at].flagged {
		return mostHyphens + 1
	}
	return 1
}

// breakFrom finds the best rest from a breakpoint, those from all later ones
// being known. A row may be too wide only if it could not end sooner.
func (p *paragraph) breakFrom(best [][mostHyphens + 1]rest, from int) {
	for to := from + 1; to < len(p.points); to++ {
		width := p.width(from, to)
		if p.fits(from, to, width) || to == from+1 {
			for above := range p.states(from) {
				c := p.row(from, to, width, above).plus(best[to][p.running(above, to)].cost)
				if b := &best[from][above]; b.row == 0 || c.compare(b.cost) <= 0 {
					*b = rest{c, to}
				}
			}
		}
		if p.points[to].forced || p.full(from, to, width) {
			return
		}
	}
}

// glue is the word spaces of a row, all together.
func (p *paragraph) glue(from, to int) Length { return p.points[to].glue - p.points[from].nextGlue }

// free says that the row that ends at a breakpoint need not fill the measure.
func (p *paragraph) free(to int) bool { return to == len(p.points)-1 || p.points[to].forced }

// fits says that the measure holds a row, its word spaces narrowed where they
// may be.
func (p *paragraph) fits(from, to int, width Length) bool {
	if p.justified && !p.free(to) {
		return shrinkParts*(width-p.measure) <= p.glue(from, to)
	}
	return width <= p.measure
}

// full says that no row from there that goes further will fit.
func (p *paragraph) full(from, to int, width Length) bool {
	over := width - p.points[to].hyphen - p.measure
	if p.justified {
		return shrinkParts*over > p.glue(from, to)
	}
	return over > 0
}

// row is the cost of a row below so many others running with a hyphen.
func (p *paragraph) row(from, to int, width Length, above int) cost {
	c := cost{rows: 1}
	flagged := p.points[to].flagged
	if flagged && above == mostHyphens {
		c.hyphens = 1
	}
	switch {
	case !p.fits(from, to, width):
		c.over = 1
	case p.free(to) && p.justified:
		c.demerits = demerits(0, 0)
	case p.free(to):
	case p.justified:
		b := rowBadness(p.measure-width, p.glue(from, to))
		if b > tolerance && !p.anyhow {
			c.loose = 1
		}
		c.demerits = justifiedDemerits(b, flagged, above > 0)
	default:
		c.demerits = raggedDemerits(p.measure-width, p.em, flagged)
	}
	return c
}

// raggedDemerits are those of a row with a ragged edge: the square of what it
// leaves of the measure, in 1/64 pt, and with a hyphen the square of an em more,
// so that one is worth its place where it saves a shortfall and not for a trifle
// (our own price). A last row costs nothing.
func raggedDemerits(short, em Length, flagged bool) int64 {
	d := int64(short) * int64(short)
	if flagged {
		d += int64(em) * int64(em)
	}
	return d
}

// A word space may be narrowed by a third, and widened by a half before the
// row counts as set to its full stretch (Knuth and Plass 1981, whose space of a
// third of an em stretches by a sixth and shrinks by a ninth; from memory).
const (
	shrinkParts  = 3
	stretchParts = 2
)

// The parameters of justified rows are plain TeX's (The TeXbook, appendix B;
// from memory), but for the 1 of a line, which is the paper's. Its classes of
// fitness are left out.
const (
	hyphenPenalty = 50
	doubleHyphens = 10_000 // demerits of a row with a hyphen below another with one
	tolerance     = 200    // the badness of the loosest row that is not too loose
	awful         = 1_000_000
)

// rowBadness is the badness of a row that is short of the measure by so much, or
// over it where that is negative, with word spaces of so much in all.
func rowBadness(short, glue Length) int64 {
	if short < 0 {
		return badness(-short*shrinkParts, glue)
	}
	return badness(short*stretchParts, glue)
}

// justifiedDemerits are those of a row of that badness, with a hyphen or not.
func justifiedDemerits(badness int64, flagged, belowHyphen bool) int64 {
	switch {
	case !flagged:
		return demerits(badness, 0)
	case belowHyphen:
		return demerits(badness, hyphenPenalty) + doubleHyphens
	}
	return demerits(badness, hyphenPenalty)
}

// badness is 100 |r|³ rounded, halves up, where r is the share of what it could
// stretch or shrink that a row does (Knuth and Plass 1981). It is never more
// than awful: what nothing can stretch is.
func badness(by, of Length) int64 {
	if by == 0 {
		return 0
	}
	if of <= 0 || by > 22*of { // 22³ is over a hundredth of awful
		return awful
	}
	n, d := uint64(by), uint64(of)
	n, d = n*n*n, d*d*d
	return int64(min(awful, (200*n+d)/(2*d)))
}

// demerits are those of a row of that badness that ends at a place with that
// penalty, which is not negative (Knuth and Plass 1981).
func demerits(badness, penalty int64) int64 {
	sum := 1 + badness + penalty
	return sum * sum
}
