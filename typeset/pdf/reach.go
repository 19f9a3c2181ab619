package pdf

import (
	"slices"

	"headland/pagemodel"
	"headland/typeset"
)

// UsualBleed is how far what bleeds runs over the trim: 3 mm (printers' terms;
// common practice).
var UsualBleed = pagemodel.MM(3)

// Bleeds says whether anything on the pages runs over the head, the foot or the
// fore-edge, so that the sheets need a [Sheet.Bleed]. What runs over the spine
// is on its way to the facing page, and is no bleed.
func Bleeds(pages []*typeset.Page) bool { return slices.ContainsFunc(pages, bleeds) }

func bleeds(p *typeset.Page) bool {
	for i := range p.Rows {
		r := reach(&p.Rows[i], p.Trim.Height)
		foreEdge := r.X+r.W > p.Trim.Width
		if p.Side == pagemodel.Verso {
			foreEdge = r.X < 0
		}
		if foreEdge || r.Y < 0 || r.Y+r.H > p.Trim.Height {
			return true
		}
	}
	return false
}

// reach is the part of the page that a row's ink may cover, on a page that is
// height high: all its advance, by three quarters of an em above the baseline
// and one below, as in most book faces (common practice, no source).
func reach(r *typeset.Row, height typeset.Length) typeset.Rect {
	var em typeset.Length
	for i := range r.Runs {
		em = max(em, r.Runs[i].Size)
	}
	if r.Turned {
		return typeset.Rect{X: r.Baseline - em*3/4, Y: height - r.X - r.Width, W: em, H: r.Width}
	}
	return typeset.Rect{X: r.X, Y: r.Baseline - em*3/4, W: r.Width, H: em}
}

// within says whether all rows of a page lie inside the area, by the page's own
// coordinates.
func within(rows []typeset.Row, height typeset.Length, area typeset.Rect) bool {
	return !slices.ContainsFunc(rows, func(row typeset.Row) bool {
		r := reach(&row, height)
		return r.X < area.X || r.Y < area.Y || r.X+r.W > area.X+area.W || r.Y+r.H > area.Y+area.H
	})
}

// ownRows are a recto's rows without those that run over onto it from the verso
// facing it, which has them too.
func ownRows(recto, verso *typeset.Page) []typeset.Row {
	over := func(row typeset.Row) bool { return row.X < 0 && runsOver(&row, verso) }
	if !slices.ContainsFunc(recto.Rows, over) {
		return recto.Rows
	}
	return slices.DeleteFunc(slices.Clone(recto.Rows), over)
}

// runsOver says whether a row of a recto is one that the verso facing it has, by
// the width of a page farther right.
func runsOver(row *typeset.Row, verso *typeset.Page) bool {
	return slices.ContainsFunc(verso.Rows, func(v typeset.Row) bool {
		return v.Ref() == row.Ref() && v.Role == row.Role && v.Start == row.Start && v.End == row.End &&
			v.X == row.X+verso.Trim.Width && v.Baseline == row.Baseline
	})
}
