package sheet

import (
	"headland/pagemodel"
	"headland/typeset"
)

// side lays blocks of rows down the sides of a card.
type side struct {
	trim  pagemodel.Trim
	lead  typeset.Length
	sides []*typeset.Page
	base  typeset.Length // of the last row
}

// add adds a block, on a new side where this one has no room for it; one that is
// deeper than a side goes on over its foot to the next.
func (s *side) add(block []typeset.Row) {
	foot := s.trim.Height - cardMargin
	depth := deepest(block)
	if len(s.sides) == 0 || s.base+s.lead*3/2+depth > foot {
		s.turn()
	} else {
		s.base += s.lead / 2
	}
	from := s.base + s.lead
	for _, row := range block {
		if from+row.Baseline > foot {
			s.turn()
			from = s.base + s.lead - row.Baseline
		}
		row.Baseline += from
		page := s.sides[len(s.sides)-1]
		page.Rows = append(page.Rows, row)
		s.base = max(s.base, row.Baseline)
	}
}

// deepest is the lowest baseline among rows.
func deepest(rows []typeset.Row) typeset.Length {
	depth := typeset.Length(0)
	for i := range rows {
		depth = max(depth, rows[i].Baseline)
	}
	return depth
}

// turn begins a side.
func (s *side) turn() {
	n := len(s.sides) + 1
	s.sides = append(s.sides, &typeset.Page{
		Number: n, Trim: s.trim, Side: pagemodel.SideOf(n),
		Text: typeset.Rect{X: cardMargin, Y: cardMargin, W: s.trim.Width - 2*cardMargin, H: s.trim.Height - 2*cardMargin},
	})
	s.base = cardMargin
}
