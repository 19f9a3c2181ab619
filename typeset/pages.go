package typeset

// Where a poem's pages end. The rule here is a plain one: a page is filled, and
// ends before the stanza that would not fit; a stanza is parted only where it
// fits no page, and then as the trade allows. The best breaks of the whole book
// can take the place of [cutPages] without anything else knowing.

// cutPages says before which units a poem's pages end. first is the number of
// rows on the first page, rows on the others.
func cutPages(units []unit, first, rows int) []int {
	var cuts []int
	for start, room := 0, first; start < len(units); room = rows {
		next := fill(units, start, room)
		if next < len(units) {
			next = pageEnd(units, start, next, rows)
			cuts = append(cuts, next)
		}
		start = next
	}
	return cuts
}

// fill is the first unit, after start, that does not fit the room. A unit too
// deep for any page stands on one all the same.
func fill(units []unit, start, room int) int {
	used := len(units[start].rows)
	for i := start + 1; i < len(units); i++ {
		used += units[i].before + len(units[i].rows)
		if used > room {
			return i
		}
	}
	return len(units)
}

// pageEnd is where a page ends that begins at start and has room up to full.
func pageEnd(units []unit, start, full, rows int) int {
	whole, parted := 0, 0
	for i := full; i > start; i-- {
		switch cutAt(units, i) {
		case betweenStanzas:
			whole = max(whole, i)
		case withinStanza:
			parted = max(parted, i)
		}
	}
	switch {
	case whole == full || whole > 0 && stanzaRows(units, whole) <= rows:
		return whole
	case parted > 0:
		return parted
	case whole > 0:
		return whole
	}
	return full // nothing else fits
}

// cut says what a page end before a unit would part.
type cut int

const (
	noCut          cut = iota // never, unless nothing else fits
	withinStanza              // a stanza that may be parted there
	betweenStanzas            // nothing
)

// The least number of lines that a stanza may leave on either page: "no piece
// under 2 lines" (Brossard 1934, 158-159). A tercet is never split (156), and
// so neither is anything shorter.
const leastPiece = 2

// cutAt judges a page end before unit i.
func cutAt(units []unit, i int) cut {
	u, above := &units[i], &units[i-1]
	switch {
	case above.keep:
		return noCut
	case u.at == 0:
		return betweenStanzas
	case u.at < leastPiece || u.of-u.at < leastPiece:
		return noCut
	}
	return withinStanza
}

// stanzaRows is how many rows the stanza that begins at unit i takes, with
// whatever is kept with it.
func stanzaRows(units []unit, i int) int {
	n := len(units[i].rows)
	for j := i + 1; j < len(units); j++ {
		if u := &units[j]; u.at == 0 && !units[j-1].keep {
			break
		}
		n += units[j].before + len(units[j].rows)
	}
	return n
}

// place gives every row its place on the grid and cuts the poem into pages:
// the rows of each page, in order.
func place(units []unit, cuts []int, top func(unit int) int) [][]Row {
	pages := make([][]Row, 0, len(cuts)+1)
	start := 0
	for _, end := range append(cuts[:len(cuts):len(cuts)], len(units)) {
		if start < end {
			pages = append(pages, placePage(units[start:end], start == 0, top))
		}
		start = end
	}
	return pages
}

// placePage puts the units of one page one below another. On a poem's first
// page top says how high each unit of its head, and the first below it, may
// stand.
func placePage(units []unit, first bool, top func(unit int) int) []Row {
	n := 0
	for i := range units {
		n += len(units[i].rows)
	}
	rows := make([]Row, 0, n)
	grid := 0
	for i := range units {
		if i > 0 {
			grid += units[i].before
		}
		grid++
		if first {
			grid = max(grid, top(i))
		}
		for j := range units[i].rows {
			row := units[i].rows[j]
			row.Grid = grid + j
			rows = append(rows, row)
		}
		grid += len(units[i].rows) - 1
	}
	return number(rows)
}

// number counts a page's rows of the poet's words from its head.
func number(rows []Row) []Row {
	n := 0
	for i := range rows {
		if rows[i].Line != 0 {
			n++
			rows[i].Number = n
		}
	}
	return rows
}
