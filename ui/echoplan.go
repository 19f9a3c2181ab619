package ui

import (
	"image"

	"headland/pagemodel"
	"headland/typeset"
	"headland/typeset/echoes"
)

// Sizes of the view of the echoes, in the toolkit's units.
const (
	echoHead    = 56 // of the scale of pages and sections at the top
	echoRow     = 32 // of an echo
	echoGroup   = 30 // of the words over a group of them
	echoNames   = 250
	echoCaption = 40 // of the words over the line at hand
	echoFoot    = 8
	echoLines   = 2 // rows that the strip with the line has room for
)

// arrange lays the picture over the book.
func (v *echoView) arrange() {
	v.laidOver.arrange()
	v.strip, v.ticks = newStripPlan(&v.laidOver), make([][]int, len(v.all))
	v.keepInSight()
}

// keepInSight has the echo at hand be seen.
func (v *echoView) keepInSight() {
	if v.first > v.at {
		v.first = v.at
	}
	for v.first < v.at && v.rowTop(v.at)+v.units(echoRow) > v.rowsEnd() {
		v.first++
	}
}

// lineAt is where the strip with the line at hand lies: on the side of its page.
func (v *echoView) lineAt() image.Rectangle {
	o, ok := v.occurrence()
	if !ok {
		return image.Rectangle{}
	}
	x := v.strip.x(pagemodel.SideOf(o.Page))
	top := v.view.Dy() - v.units(echoFoot) - v.strip.deep(echoLines)
	return image.Rect(x, top, x+v.strip.wide, top+v.strip.deep(echoLines))
}

// rowsEnd is where the rows of echoes end.
func (v *echoView) rowsEnd() int {
	return v.view.Dy() - v.units(echoFoot+echoCaption) - v.strip.deep(echoLines)
}

// heads says whether words stand over an echo: over the first that the poet
// marked, and the first that was found. They are always over the first seen.
func (v *echoView) heads(i int) bool {
	return i == v.first || v.all[i].Marked != v.all[i-1].Marked
}

// rowTop is where the row of an echo begins, at or below the first seen.
func (v *echoView) rowTop(at int) int {
	y := v.units(echoHead)
	for i := v.first; i <= at; i++ {
		if v.heads(i) {
			y += v.units(echoGroup)
		}
		if i < at {
			y += v.units(echoRow)
		}
	}
	return y
}

// rowAt is the echo whose row lies at a height.
func (v *echoView) rowAt(y int) (int, bool) {
	for i := v.first; i < len(v.all); i++ {
		top := v.rowTop(i)
		if below := top + v.units(echoRow); below > v.rowsEnd() {
			break
		} else if y >= top && y < below {
			return i, true
		}
	}
	return 0, false
}

// rowsSeen is how many echoes are seen, at least one.
func (v *echoView) rowsSeen() int {
	n := 0
	for i := v.first; i < len(v.all) && v.rowTop(i)+v.units(echoRow) <= v.rowsEnd(); i++ {
		n++
	}
	return max(1, n)
}

// ends are where the line of the book's pages begins and ends.
func (v *echoView) ends() (from, to int) {
	names := min(v.units(echoNames), v.view.Dx()/3)
	return v.units(overMargin) + names, v.view.Dx() - v.units(overMargin)
}

// pageX is where a page begins on the line of the book's pages: only those of the
// poems are on it.
func (v *echoView) pageX(page int, within float64) int {
	from, to := v.ends()
	first, last := v.w.desk.of.Body()
	return from + int((float64(page-first)+within)*float64(to-from)/float64(last-first+1))
}

// x is where the tick of a place of an echo stands.
func (v *echoView) x(echo, place int) int { return v.ticksOf(echo)[place] }

// ticksOf are where the ticks of an echo stand; found once for a width.
func (v *echoView) ticksOf(echo int) []int {
	if v.ticks[echo] == nil {
		ticks := make([]int, len(v.all[echo].Found))
		for n := range ticks {
			ticks[n] = v.tickAt(&v.all[echo].Found[n])
		}
		v.ticks[echo] = ticks
	}
	return v.ticks[echo]
}

// tickAt is where a place stands: on its page, as far along it as its line is down
// the page.
func (v *echoView) tickAt(o *echoes.Occurrence) int {
	page, within := v.w.desk.page(o.Page), 0.0
	for i := range page.Rows {
		if r := &page.Rows[i]; r.Line != 0 && r.Ref() == o.Ref {
			within = float64(r.Baseline) / float64(page.Trim.Height)
			break
		}
	}
	return v.pageX(o.Page, max(0, min(within, 1)))
}

// rowsAt are the rows of the line at hand on its page, and that page.
func (v *echoView) rowsAt() (*typeset.Page, []typeset.Row) {
	o, ok := v.occurrence()
	if !ok {
		return nil, nil
	}
	ref := o.Ref
	if ref.Line == 0 {
		ref = firstLineOf(v.w.desk.of.Collection(), ref.Poem)
	}
	e := hingeEdge{line: ref, page: o.Page}
	return v.w.desk.page(o.Page), v.w.desk.hingeRows(&e)
}

// firstLineOf is the first line of a poem, or none.
func firstLineOf(c *pagemodel.Collection, id pagemodel.PoemID) pagemodel.LineRef {
	if p, _, ok := c.Poem(id); ok {
		for _, l := range p.Lines() {
			return pagemodel.LineRef{Poem: id, Line: l.ID()}
		}
	}
	return pagemodel.LineRef{}
}
