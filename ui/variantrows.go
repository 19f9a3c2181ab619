package ui

import (
	"headland/pagemodel"
	"headland/typeset"
)

// setVersion is the book set with one version of a poem in it, and the rows of
// that poem, whose X counts from the left of the measure.
type setVersion struct {
	set   *typeset.Setting
	lines map[pagemodel.LineID][]typeset.Row
	heads map[typeset.Role][]typeset.Row
}

// newSetVersion finds the rows of a poem.
func newSetVersion(set *typeset.Setting, id pagemodel.PoemID) *setVersion {
	v := &setVersion{set, map[pagemodel.LineID][]typeset.Row{}, map[typeset.Role][]typeset.Row{}}
	poem, _, ok := set.Collection().Poem(id)
	if !ok {
		return v
	}
	first, _ := set.PageOfPoem(id)
	last := first
	for _, l := range poem.Lines() {
		if page, ok := set.PageOfLine(pagemodel.LineRef{Poem: id, Line: l.ID()}); ok {
			last = max(last, page)
		}
	}
	for n := first; n <= min(last+1, set.Extent()); n++ {
		v.take(set.Page(n), poem)
	}
	return v
}

// take sorts the rows of a page that are the poem's: what stands over its lines
// is its head, and what stands between them, and right below the last.
func (v *setVersion) take(page *typeset.Page, poem *pagemodel.Poem) {
	var heads []typeset.Row
	own := false
	for _, row := range page.Rows {
		switch {
		case row.Role == typeset.RolePlace && own:
			v.heads[row.Role] = append(v.heads[row.Role], v.fromMeasure(row, page, poem))
		case row.Number == 0 && row.Role >= typeset.RoleTitle && row.Role <= typeset.RoleHeading:
			heads = append(heads, v.fromMeasure(row, page, poem))
		case row.Number > 0:
			own = row.Poem == poem.ID()
			if own {
				for _, h := range heads {
					v.heads[h.Role] = append(v.heads[h.Role], h)
				}
				v.lines[row.Line] = append(v.lines[row.Line], v.fromMeasure(row, page, poem))
			}
			heads = nil
		}
	}
}

// fromMeasure is a row whose X counts from the left of the measure. A poem on its
// side has its measure up from the foot, one across the spread from the left of
// the verso.
func (v *setVersion) fromMeasure(row typeset.Row, page *typeset.Page, poem *pagemodel.Poem) typeset.Row {
	design := v.set.Collection().Design()
	switch {
	case row.Turned:
		row.X -= design.Margins.Foot
		row.Turned = false
	case poem.Head().Lie == pagemodel.Across && page.Side == pagemodel.Recto:
		row.X += design.Trim.Width - design.Margins.Left(pagemodel.Verso)
	default:
		row.X -= page.Text.X
	}
	return row
}

// rowsOf are the rows of one version's part of a difference, line by line, and of
// each the line that it is of; -1 in the head. Of a paragraph they are those with
// words that differ, where there are such.
func (v *setVersion) rowsOf(d *versionDiff, side int) (rows []typeset.Row, of []int) {
	for i, l := range d.lines[side] {
		for _, row := range v.lines[l.ID()] {
			if row.Role != typeset.RoleProse || d.only != onlyNowhere || d.differsIn(&row, side, i) {
				rows, of = append(rows, row), append(of, i)
			}
		}
	}
	if d.anyLine() == 0 {
		for _, row := range v.heads[d.role] {
			rows, of = append(rows, row), append(of, -1)
		}
	}
	return rows, of
}

// differsIn says that a row of a line has a word that differs, or that the line
// has none at all.
func (d *versionDiff) differsIn(row *typeset.Row, side, line int) bool {
	for word := range d.differ[side][line] {
		if word[0] < row.End && word[1] > row.Start {
			return true
		}
	}
	return len(d.differ[side][line]) == 0
}

// pageOfDiff is the page on which a setting has a difference: its first line, or
// the line that it follows, or the poem's first.
func pageOfDiff(set *typeset.Setting, d *versionDiff, side int, id pagemodel.PoemID) int {
	page, _ := set.PageOfPoem(id)
	if d == nil {
		return max(1, page)
	}
	line := d.after[side]
	if len(d.lines[side]) > 0 {
		line = d.lines[side][0].ID()
	}
	if at, ok := set.PageOfLine(pagemodel.LineRef{Poem: id, Line: line}); ok && line != 0 {
		page = at
	}
	return max(1, page)
}
