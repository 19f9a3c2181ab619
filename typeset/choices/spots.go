package choices

import "headland/pagemodel"

// spot is where a line stands: the page and the row of the grid that its first row
// is on, and the page of its last.
type spot struct {
	ref             pagemodel.LineRef
	page, row, last int
}

// spots are the lines on a poem's pages in order, those of other poems that share
// the pages among them. through is a page up to which it looks at least.
func (l *look) spots(id pagemodel.PoemID, through int) []spot {
	p, _, _ := l.Collection().Poem(id)
	first, _ := l.PageOfPoem(id)
	last := first + l.poemPages(id) - 1
	if p.Head().Lie == pagemodel.Across {
		last++ // it is the verso of the spread
	}
	var all []spot
	for n := first; n <= max(last, through); n++ {
		rows := l.page(n).Rows
		for i := range rows {
			row := &rows[i]
			if row.Number == 0 || row.Line == 0 {
				continue
			}
			if k := len(all) - 1; k >= 0 && all[k].ref == row.Ref() {
				all[k].last = n
				continue
			}
			all = append(all, spot{row.Ref(), n, row.Grid, n})
		}
	}
	return all
}

// spotted are spots before any choice, and the place of each line among them.
type spotted struct {
	all []spot
	at  map[pagemodel.LineRef]int
}

func spotsOf(l *look, id pagemodel.PoemID) spotted {
	s := spotted{all: l.spots(id, 0)}
	s.at = make(map[pagemodel.LineRef]int, len(s.all))
	for i := range s.all {
		s.at[s.all[i].ref] = i
	}
	return s
}

// through is the last page that was looked at.
func (s *spotted) through() int {
	if len(s.all) == 0 {
		return 0
	}
	return s.all[len(s.all)-1].last
}

// was is where a line stood, or false for one that is new.
func (s *spotted) was(ref pagemodel.LineRef) (spot, bool) {
	if i, ok := s.at[ref]; ok {
		return s.all[i], true
	}
	return spot{}, false
}
