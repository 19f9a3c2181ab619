package typeset

import (
	"cmp"
	"math"
	"math/rand"
	"slices"
	"testing"
)

// TestKnuthPlassValues are values of the paper's formulas: 100 |r|³ rounded with
// halves up, so that r = 0.5 is 13 and not 12, and (1 + b + p)².
func TestKnuthPlassValues(t *testing.T) {
	for _, test := range []struct {
		by, of Length
		want   int64
	}{{1, 2, 13}, {1, 1, 100}, {0, 5, 0}, {0, 0, 0}, {3, 2, 338}, {2, 1, 800}, {1, 10, 0}, {181_417, 181_417, 100}, {1, 0, awful}, {400_000, 18_300, awful}} {
		if got := badness(test.by, test.of); got != test.want {
			t.Errorf("badness(%d/%d) = %d, want %d", test.by, test.of, got, test.want)
		}
	}
	if a, b := demerits(0, 0), demerits(100, 50); a != 1 || b != 22801 {
		t.Errorf("demerits(0, 0) = %d, demerits(100, 50) = %d; want 1 and 22801", a, b)
	}
}

// randomParagraph is a paragraph of so many words and parts of words, some with
// an end of a row forced, in few different widths, so that ties come up.
func randomParagraph(rnd *rand.Rand, places int) *paragraph {
	p := &paragraph{measure: 60, em: 8, justified: rnd.Intn(2) == 0, points: []breakpoint{{}}}
	x, glue := Length(0), Length(0)
	for i := range places {
		x += Length(1+rnd.Intn(9)) * 2
		if rnd.Intn(30) == 0 {
			x += 50
		}
		at := breakpoint{end: x, next: x, glue: glue, nextGlue: glue}
		switch kind := rnd.Intn(12); {
		case i == places-1:
		case kind < 4:
			at.hyphen, at.flagged = 4, true
		case kind == 4:
			at.flagged = true
		default:
			x, glue = x+8, glue+8
			at.next, at.nextGlue, at.forced = x, glue, kind == 11 && rnd.Intn(4) == 0
		}
		p.points = append(p.points, at)
	}
	p.width = func(from, to int) Length { return p.points[to].end + p.points[to].hyphen - p.points[from].next }
	return p
}

// price is what a way to break a paragraph costs: rows too wide, hyphens below
// two, rows too loose, demerits.
type price [4]int64

// priceOf is false for a way that is not allowed. It shares nothing with what it
// judges but the parameters.
func priceOf(p *paragraph, rows []int) (sum price, ok bool) {
	from, running := 0, 0
	for _, to := range rows {
		row := priceOfRow(p, from, to, running)
		if passesForced(p, from, to) || row[0] > 0 && to > from+1 {
			return sum, false
		}
		for i := range row {
			sum[i] += row[i]
		}
		running++
		if !p.points[to].flagged {
			running = 0
		}
		from = to
	}
	return sum, true
}

func passesForced(p *paragraph, from, to int) bool {
	return slices.ContainsFunc(p.points[from+1:to], func(b breakpoint) bool { return b.forced })
}

// priceOfRow is the price of one row below so many with a hyphen.
func priceOfRow(p *paragraph, from, to, running int) (row price) {
	a, b := p.points[from], p.points[to]
	short := float64(p.measure - (b.end + b.hyphen - a.next))
	glue := float64(b.glue - a.nextGlue)
	last := to == len(p.points)-1 || b.forced
	if b.flagged && running >= 2 {
		row[1] = 1
	}
	switch {
	case short < 0 && (!p.justified || last || -short > glue/3):
		row[0] = 1
	case last && p.justified:
		row[3] = 1
	case last:
	case p.justified:
		bad := stretchedBadness(short, glue)
		if bad > 200 {
			row[2] = 1
		}
		row[3] = (1 + bad) * (1 + bad)
		if b.flagged {
			row[3] = (1 + bad + 50) * (1 + bad + 50)
		}
		if b.flagged && running > 0 {
			row[3] += 10_000
		}
	default:
		row[3] = int64(short * short)
		if b.flagged {
			row[3] += int64(p.em) * int64(p.em)
		}
	}
	return row
}

func stretchedBadness(short, glue float64) int64 {
	r := short / (glue / 2)
	if short < 0 {
		r = short / (glue / 3)
	}
	if short == 0 {
		return 0
	}
	return int64(math.Min(math.Floor(100*math.Pow(math.Abs(r), 3)+0.5), awful))
}

// allBreaks calls try with every set of breaks that a paragraph of so many
// places has.
func allBreaks(places int, try func(rows []int)) {
	for set := range 1 << (places - 1) {
		var rows []int
		for i := 1; i < places; i++ {
			if set>>(i-1)&1 == 1 {
				rows = append(rows, i)
			}
		}
		try(append(rows, places))
	}
}

// exhaustive is the best of all ways to break a paragraph, and what it costs.
// Rows are counted as too loose only if there is a way without any.
func exhaustive(p *paragraph, countLoose bool) (best []int, least price) {
	allBreaks(len(p.points)-1, func(rows []int) {
		price, ok := priceOf(p, rows)
		if !ok {
			return
		}
		if !countLoose {
			price[2] = 0
		}
		// Below zero: these rows are better than the best so far.
		c := cmp.Or(slices.Compare(price[:], least[:]), cmp.Compare(len(rows), len(best)), slices.Compare(best, rows))
		if best == nil || c < 0 {
			best, least = rows, price
		}
	})
	if least[2] > 0 {
		return exhaustive(p, false)
	}
	return best, least
}

// TestTotalFitIsExhaustiveSearch: of all sets of breaks, the one found costs
// least; where several do it has the fewest rows, and then the fullest first.
func TestTotalFitIsExhaustiveSearch(t *testing.T) {
	rnd := rand.New(rand.NewSource(1))
	for range 500 {
		p := randomParagraph(rnd, 1+rnd.Intn(14))
		best, _ := exhaustive(p, true)
		if got := p.breaks(); !slices.Equal(got, best) {
			t.Fatalf("rows end at %v, the best at %v, of %+v", got, best, p.points)
		}
	}
}

// TestFewestRowsOfEqualCost: where two ways cost the same, the one with fewer
// rows is taken, though its first row holds less. Words whose widths add up hardly
// give such a pair; these do not.
func TestFewestRowsOfEqualCost(t *testing.T) {
	widths := [][]Length{{0, 60, 60, 61, 61}, {0, 0, 59, 59, 60}, {0, 0, 0, 60, 61}, {0, 0, 0, 0, 60}}
	p := &paragraph{measure: 60, em: 8, points: make([]breakpoint, 5)}
	p.width = func(from, to int) Length { return widths[from][to] }
	if got := p.breaks(); !slices.Equal(got, []int{1, 4}) {
		t.Errorf("rows end at %v", got)
	}
}

// fillRowByRow is how a paragraph is broken that fills row by row.
func fillRowByRow(p *paragraph) []int {
	var rows []int
	for from := 0; from < len(p.points)-1; {
		to := from + 1
		for i := from + 1; i < len(p.points) && !passesForced(p, from, i); i++ {
			if priceOfRow(p, from, i, 0)[0] == 0 {
				to = i
			}
		}
		rows, from = append(rows, to), to
	}
	return rows
}

// TestNeverWorseThanFilling: nor in paragraphs which are too long to try all
// ways.
func TestNeverWorseThanFilling(t *testing.T) {
	rnd := rand.New(rand.NewSource(2))
	better := 0
	for range 300 {
		p := randomParagraph(rnd, 20+rnd.Intn(100))
		got, ok := priceOf(p, p.breaks())
		plain, also := priceOf(p, fillRowByRow(p))
		if !ok || !also {
			t.Fatalf("not allowed: %v or %v", p.breaks(), fillRowByRow(p))
		}
		if got[2] > 0 { // then looseness does not count by itself
			got[2], plain[2] = 0, 0
		}
		switch c := slices.Compare(got[:], plain[:]); {
		case c > 0:
			t.Fatalf("%v costs %v, but filling row by row %v", p.breaks(), got, plain)
		case c < 0:
			better++
		}
	}
	if better < 200 {
		t.Errorf("only %d of 300 paragraphs come out better than by filling row by row", better)
	}
}

// TestWorkOfALongParagraph: how often a width is asked for grows with the
// paragraph's length, not with its square.
func TestWorkOfALongParagraph(t *testing.T) {
	asked := func(words int) (n int) {
		p := &paragraph{measure: 100, justified: true, points: []breakpoint{{}}}
		for i := range Length(words) {
			p.points = append(p.points, breakpoint{end: 12*i + 9, next: 12*i + 12, glue: 3 * i, nextGlue: 3*i + 3})
		}
		p.width = func(from, to int) Length {
			n++
			return p.points[to].end - p.points[from].next
		}
		p.breaks()
		return n
	}
	if a, b := asked(1_000), asked(100_000); b > 101*a {
		t.Errorf("%d widths for a thousand words, %d for a hundred thousand", a, b)
	}
}
