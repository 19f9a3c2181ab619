package ui

import (
	"strings"

	"headland/pagemodel"
	"headland/typeset"
)

// headDiffs are what differs in the heads of two versions.
func headDiffs(a, b *pagemodel.Poem) []versionDiff {
	x, y := a.Head(), b.Head()
	var diffs []versionDiff
	for _, what := range [...]struct {
		role  typeset.Role
		words string
		a, b  any
	}{
		{typeset.RoleTitle, "the title", x.Title, y.Title},
		{typeset.RoleSubtitle, "the subtitle", x.Subtitle, y.Subtitle},
		{typeset.RoleDedication, "the dedication", x.Dedication, y.Dedication},
		{typeset.RoleEpigraph, "the epigraph", strings.Join(x.Epigraph, "\n"), strings.Join(y.Epigraph, "\n")},
		{typeset.RoleHeading, "the headings of its parts", headings(a), headings(b)},
		{typeset.RolePlace, "the closing place or date", x.Place, y.Place},
		{noRows, "the short title", x.Short, y.Short},
		{noRows, "the note", x.Note, y.Note},
		{noRows, "the form", x.Form, y.Form},
		{noRows, "how its pages begin and run", [...]any{x.Start, x.Blank, x.Run}, [...]any{y.Start, y.Blank, y.Run}},
		{noRows, "its size, left edge or lie", [...]any{x.Size, x.Edge, x.Lie}, [...]any{y.Size, y.Edge, y.Lie}},
	} {
		if what.a == what.b {
			continue
		}
		d := versionDiff{role: what.role, says: what.words, only: onlyNowhere}
		switch {
		case what.a == "":
			d.only = 1
		case what.b == "":
			d.only = 0
		}
		if d.only != onlyNowhere {
			d.says += ": only in " + sigla[d.only]
		}
		diffs = append(diffs, d)
	}
	return diffs
}

// noRows is the role of what no row shows.
const noRows = typeset.Role(-1)

// headings are the headings of a poem's parts, row by row; "" where it is one part
// without any.
func headings(p *pagemodel.Poem) string {
	var all []string
	for _, part := range p.Parts() {
		all = append(all, part.Heading())
	}
	return strings.Join(all, "\n")
}
