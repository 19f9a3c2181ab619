package sheet

import (
	"strings"
	"unicode/utf8"
)

// price is what cutting units into leaves costs; the first number that differs
// decides.
type price struct {
	torn   int // leaves that end where none should: after a heading, within a stanza that would fit a leaf, or over their foot
	within int // leaves that end within a stanza that fits none
	leaves int
	pauses int // how slight the pauses are at those ends
	slack  int // the sum of the squares of empty rows, last leaf included: leaves are filled evenly
}

func (p price) less(q price) bool {
	for _, d := range [...]int{p.torn - q.torn, p.within - q.within, p.leaves - q.leaves, p.pauses - q.pauses, p.slack - q.slack} {
		if d != 0 {
			return d < 0
		}
	}
	return false
}

func (p price) plus(q price) price {
	return price{p.torn + q.torn, p.within + q.within, p.leaves + q.leaves, p.pauses + q.pauses, p.slack + q.slack}
}

// cut parts units into leaves, the first with room for so many rows, the others for
// others. It gives where each leaf begins, the first at 0. Of all ways it is the one
// of the least price, found from the last unit backwards: what a leaf costs depends
// on nothing but where it begins and ends.
func cut(units []unit, first, others int) []int {
	n := len(units)
	deep := deepStanzas(units, others)
	best, next := make([]price, n+1), make([]int, n+1)
	for from := n - 1; from >= 0; from-- {
		room := others
		if from == 0 {
			room = first
		}
		rows := 0
		for to := from + 1; to <= n; to++ {
			u := &units[to-1]
			if rows += len(u.rows); to-1 > from {
				rows += u.before
			}
			if rows > room && to > from+1 {
				break
			}
			p := best[to].plus(leafPrice(units, to, room-rows, deep))
			if next[from] == 0 || p.less(best[from]) {
				best[from], next[from] = p, to
			}
		}
	}
	var starts []int
	for from := 0; from < n; from = next[from] {
		starts = append(starts, from)
	}
	return starts
}

// leafPrice is what a leaf costs that ends before unit to with that many rows
// empty.
func leafPrice(units []unit, to, empty int, deep map[int]bool) price {
	p := price{leaves: 1, slack: empty * empty}
	if empty < 0 {
		p.torn, p.slack = 1, 0
	}
	if to == len(units) {
		return p
	}
	above, below := &units[to-1], &units[to]
	switch {
	case above.keep:
		p.torn++
	case below.opens:
	case below.stanza >= 0 && deep[below.stanza]:
		p.within, p.pauses = 1, above.pause
	default:
		p.torn++
	}
	return p
}

// deepStanzas are the stanzas that no leaf has room for.
func deepStanzas(units []unit, room int) map[int]bool {
	rows, deep := map[int]int{}, map[int]bool{}
	for i := range units {
		if s := units[i].stanza; s >= 0 {
			if rows[s] > 0 {
				rows[s] += units[i].before
			}
			rows[s] += len(units[i].rows)
			deep[s] = rows[s] > room
		}
	}
	return deep
}

// pauseAfter is how slight the pause at a line's end is by its sign: 0 after a full
// stop and its like, 1 after a semicolon, a colon or a dash, 2 after a comma, 3
// where there is none.
func pauseAfter(text string) int {
	text = strings.TrimRight(text, " ’”'\")]»")
	switch r, _ := utf8.DecodeLastRuneInString(text); r {
	case '.', '!', '?', '…':
		return 0
	case ';', ':', '—', '–':
		return 1
	case ',':
		return 2
	}
	return 3
}
