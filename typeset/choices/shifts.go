package choices

import "fmt"

// rowShift is how lines of the poem that stay on their page go down it, or up where
// it is less than 0.
type rowShift struct {
	lines, moved int // how many there are, and how many of them move
	least, most  int // rows
}

func (s *rowShift) add(rows int) {
	s.lines++
	if rows == 0 {
		return
	}
	if s.moved++; s.moved == 1 {
		s.least, s.most = rows, rows
	}
	s.least, s.most = min(s.least, rows), max(s.most, rows)
}

// by is the way and how far, in words.
func (s *rowShift) by() string {
	a, b, way := s.least, s.most, "down"
	if b < 0 {
		a, b, way = -b, -a, "up"
	}
	switch {
	case a == b:
		return way + " by " + counted(a, "row")
	case a < 0:
		return "up or down"
	}
	return fmt.Sprintf("%s by %d to %d rows", way, a, b)
}

// words says it of lines somewhere: "below", "above", "on page 39".
func (s *rowShift) words(where string) string {
	switch {
	case s.moved == 0:
		return ""
	case s.lines == 1:
		return "the line " + where + " goes " + s.by()
	case s.moved == s.lines:
		return "the lines " + where + " go " + s.by()
	}
	return counted(s.moved, "line") + " " + where + " " + verb(s.moved, "goes", "go") + " " + s.by()
}

// rowShifts are how lines of the poem move that stay on their page: those above the
// line on its page, the line itself, those below it there, and those on other pages.
type rowShifts struct {
	above, own, below, other rowShift
	pages                    []int // of the others that move
}

func (f *finder) rowShifts(now []spot) rowShifts {
	var all rowShifts
	here, passed := 0, false
	for _, s := range now {
		if s.ref == f.ref {
			here = s.page
		}
	}
	for _, s := range now {
		was, ok := f.spots.was(s.ref)
		if s.ref.Poem != f.ref.Poem {
			continue
		}
		passed = passed || s.ref == f.ref
		if !ok || was.page != s.page {
			continue
		}
		rows := s.row - was.row
		switch {
		case s.ref == f.ref:
			all.own.add(rows)
		case s.page != here:
			all.elsewhere(s.page, rows)
		case passed:
			all.below.add(rows)
		default:
			all.above.add(rows)
		}
	}
	return all
}

func (all *rowShifts) elsewhere(page, rows int) {
	all.other.add(rows)
	if n := len(all.pages); rows != 0 && (n == 0 || all.pages[n-1] != page) {
		all.pages = append(all.pages, page)
	}
}

// shiftWords says how the lines move.
func (f *finder) shiftWords(tried *look, now []spot) []string {
	all := f.rowShifts(now)
	var said []string
	own, below := all.own.by(), all.below.by()
	switch whole := all.below.moved == all.below.lines && own == below; {
	case all.own.moved > 0 && all.below.moved > 0 && whole:
		said = append(said, "the line and "+verb(all.below.lines, "the one", "those")+" below go "+own)
	case all.own.moved > 0:
		said = append(said, "the line goes "+own, all.below.words("below"))
	default:
		said = append(said, all.below.words("below"))
	}
	said = append(said, all.above.words("above"))
	if n := len(all.pages); n == 1 {
		all.other.lines = max(all.other.moved, 2)
		said = append(said, all.other.words("on page "+tried.FolioOf(all.pages[0])))
	} else if n > 1 {
		said = append(said, fmt.Sprintf("lines on page %s and %s go %s", tried.FolioOf(all.pages[0]), counted(n-1, "more page"), all.other.by()))
	}
	return said
}
