package ui

import (
	"slices"

	"headland/pagemodel"
	"headland/typeset"
)

// signs are all marks about a page that are no part of it: nothing of them is
// printed. Rows are indexes into the page's rows.
type signs struct {
	strokes  []stroke      // overlong lines
	faults   []faultSign   // what is faulty
	ties     []tieSign     // lines that the poet keeps together
	begins   []int         // rows with which the poet has a page begin
	openings []openingSign // what the poet says of a poem that opens here
	end      string        // what the page end falls on, where it is in mid poem
}

// faultSign is the faults of one row, a letter for each.
type faultSign struct {
	row     int
	letters string
}

// tieSign is lines that are kept together, from a row through another. above
// and below say that they go on over the page's edge.
type tieSign struct {
	from, to     int
	above, below bool
}

// openingSign is what the poet says of the poem that opens at a row, a word or
// two for each thing, one below the other.
type openingSign struct {
	row   int
	words string
}

// same says that two pages' signs look alike.
func (s *signs) same(o *signs) bool {
	return s.end == o.end && slices.Equal(s.strokes, o.strokes) && slices.Equal(s.faults, o.faults) &&
		slices.Equal(s.ties, o.ties) && slices.Equal(s.begins, o.begins) && slices.Equal(s.openings, o.openings)
}

// signsOf finds the signs of a page of a setting, with those of the book's
// faults that are on it.
func signsOf(set *typeset.Setting, faults []typeset.Fault, page *typeset.Page, end typeset.PageEnd) signs {
	s := signs{strokes: strokesOf(set, page), faults: faultSigns(page, faults), end: endWords(end)}
	for _, id := range poemsOf(page) {
		poem, _, ok := set.Collection().Poem(id)
		if !ok {
			continue
		}
		s.ties = append(s.ties, tiesOf(page, poem)...)
		s.begins = append(s.begins, beginsOf(page, poem)...)
		if first, ok := set.PageOfPoem(id); ok && first == page.Number {
			if words := openingWords(poem.Head()); words != "" {
				s.openings = append(s.openings, openingSign{firstRowOf(page, id), words})
			}
		}
	}
	return s
}

// endWords say what a page end falls on, where it is in mid poem.
func endWords(e typeset.PageEnd) string {
	switch {
	case e.Kind == typeset.NoEnd || e.Kind == typeset.EndOfPoem:
		return ""
	case e.HidesBreak:
		return "stanza break"
	case e.Kind == typeset.BeforePart:
		return "the next part follows"
	}
	return "stanza goes on"
}

// poemsOf are the poems that stand on a page, from the head down.
func poemsOf(page *typeset.Page) []pagemodel.PoemID {
	var ids []pagemodel.PoemID
	for i := range page.Rows {
		if id := page.Rows[i].Poem; id != 0 && !slices.Contains(ids, id) {
			ids = append(ids, id)
		}
	}
	return ids
}

// firstRowOf is the poem's first row on the page, or 0.
func firstRowOf(page *typeset.Page, id pagemodel.PoemID) int {
	return max(0, slices.IndexFunc(page.Rows, func(r typeset.Row) bool { return r.Poem == id }))
}

// rowSpan is the first and last row of each line on a page.
type rowSpan struct{ first, last int }

func spansOf(page *typeset.Page) map[pagemodel.LineID]rowSpan {
	spans := map[pagemodel.LineID]rowSpan{}
	for i := range page.Rows {
		id := page.Rows[i].Line
		if id == 0 {
			continue
		}
		span, seen := spans[id]
		if !seen {
			span.first = i
		}
		span.last = i
		spans[id] = span
	}
	return spans
}

// tiesOf finds what of a poem's tied lines stands on a page.
func tiesOf(page *typeset.Page, poem *pagemodel.Poem) []tieSign {
	var found []tieSign
	var run []pagemodel.LineID
	spans := spansOf(page)
	for _, l := range poem.Lines() {
		run = append(run, l.ID())
		if l.Tied() {
			continue
		}
		if t, ok := tieOf(run, spans); ok {
			found = append(found, t)
		}
		run = run[:0]
	}
	return found
}

// tieOf is the sign of a run of lines that are kept together; false where there
// is only one, or none on the page.
func tieOf(run []pagemodel.LineID, spans map[pagemodel.LineID]rowSpan) (t tieSign, ok bool) {
	if len(run) < 2 {
		return t, false
	}
	for i, id := range run {
		span, here := spans[id]
		if !here {
			continue
		}
		if !ok {
			t.from, t.above, ok = span.first, i > 0, true
		}
		t.to, t.below = span.last, i+1 < len(run)
	}
	return t, ok
}

// beginsOf finds the rows of a poem with which the poet has a page begin.
func beginsOf(page *typeset.Page, poem *pagemodel.Poem) []int {
	var rows []int
	spans := spansOf(page)
	for _, l := range poem.Lines() {
		if span, here := spans[l.ID()]; here && l.OpensPage() {
			rows = append(rows, span.first)
		}
	}
	return rows
}
