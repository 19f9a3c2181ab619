package ui

import (
	"slices"

	"headland/pagemodel"
	"headland/typeset"
)

// stroke is a proof mark in a page's outer margin, beside the first row of a
// line that is longer than the measure.
type stroke struct {
	row   int // of the page's rows
	state pagemodel.State
}

// letter is what stands beside the stroke: t for a line that turns and that
// nobody has dealt with, k for one kept, e for one broken in this edition.
func (s stroke) letter() string {
	switch s.state {
	case pagemodel.Kept:
		return "k"
	case pagemodel.Broken:
		return "e"
	}
	return "t"
}

// strokesOf finds the marks of a page of a setting.
func strokesOf(set *typeset.Setting, page *typeset.Page) []stroke {
	var found []stroke
	for i := range page.Rows {
		r := &page.Rows[i]
		if r.Role != typeset.RoleVerse || r.Turn != typeset.LineStart || r.Number == 0 {
			continue // of what runs over from the page before, that page has the mark
		}
		broken := i+1 < len(page.Rows) && page.Rows[i+1].Turn == typeset.EditionBreak && page.Rows[i+1].Ref() == r.Ref()
		if r.Overrun <= 0 && !broken {
			continue
		}
		state, _ := set.StateOf(r.Ref())
		found = append(found, stroke{i, state})
	}
	return found
}

// samePage says that a page looks alike in two settings, the poet's marks
// included.
func samePage(a, b *typeset.Setting, number int) bool {
	one, other := a.Page(number), b.Page(number)
	s, o := signsOf(a, nil, one, typeset.PageEnd{}), signsOf(b, nil, other, typeset.PageEnd{})
	return sameInk(one, other) && s.same(&o)
}

// sameInk says that two pages look alike.
func sameInk(a, b *typeset.Page) bool {
	if a == b {
		return true
	}
	if a == nil || b == nil || a.Number != b.Number || a.Trim != b.Trim || a.Text != b.Text {
		return false
	}
	return slices.EqualFunc(a.Rows, b.Rows, sameRow)
}

func sameRow(a, b typeset.Row) bool {
	return a.Poem == b.Poem && a.Line == b.Line && a.Role == b.Role && a.Turn == b.Turn && a.Start == b.Start && a.End == b.End &&
		a.X == b.X && a.Baseline == b.Baseline && a.Turned == b.Turned && a.Width == b.Width && a.Overrun == b.Overrun && a.Last == b.Last &&
		slices.EqualFunc(a.Runs, b.Runs, sameRun)
}

func sameRun(a, b typeset.Run) bool {
	return a.Face == b.Face && a.Size == b.Size && a.X == b.X && a.Text == b.Text && len(a.Glyphs) == len(b.Glyphs) && a.Width == b.Width
}
