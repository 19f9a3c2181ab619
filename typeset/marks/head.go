package marks

import (
	"headland/pagemodel"
	"headland/pagemodel/difference"
	"headland/typeset"
	"headland/typeset/corrections"
)

// head.go finds what stands in no line: in a poem's head, or in the book.

// headRoles are the rows in which the fields of a poem's head are printed.
var headRoles = map[string]typeset.Role{
	"title": typeset.RoleTitle, "subtitle": typeset.RoleSubtitle, "dedication": typeset.RoleDedication,
	"epigraph": typeset.RoleEpigraph, difference.FieldPlace: typeset.RolePlace,
}

// findInHead finds words of a poem's head.
func (m *marker) findInHead(c *difference.Change) []stretch {
	role, ok := headRoles[c.Field]
	poem := m.poem(c.Poem)
	if !ok || poem == nil {
		return nil
	}
	from, to, line := c.From, c.To, 0
	for _, text := range headField(poem.Head(), role) {
		if from <= len(text) {
			break
		}
		from, to, line = from-len(text)-1, to-len(text)-1, line+1
	}
	var rows []int
	for i := range m.page.Rows {
		r := &m.page.Rows[i]
		if r.Poem != c.Poem || r.Role != role {
			continue
		}
		if r.Start == 0 {
			line--
		}
		if line == -1 {
			rows = append(rows, i)
		}
	}
	return m.stretches(rows, from, to)
}

// headField is what a poem's head says in a role, line by line.
func headField(h pagemodel.PoemHead, role typeset.Role) []string {
	switch role {
	case typeset.RoleTitle:
		return []string{h.Title}
	case typeset.RoleSubtitle:
		return []string{h.Subtitle}
	case typeset.RoleDedication:
		return []string{h.Dedication}
	case typeset.RoleEpigraph:
		return h.Epigraph
	}
	return []string{h.Place}
}

// notedHere says that a correction which stands in no row is noted on this page:
// the one that the list gives, else the first of its poem, or of the book.
func (m *marker) notedHere(c *corrections.Correction) bool {
	if line := c.Change.Line; line.Line != 0 {
		n, ok := m.set.PageOfLine(line)
		return ok && n == m.page.Number && len(m.rowsOf(line)) == 0
	}
	if c.Page != "" {
		return m.set.FolioOf(m.page.Number) == c.Page
	}
	if first, ok := m.set.PageOfPoem(c.Change.Poem); ok && c.Change.Poem != 0 {
		return m.page.Number == first
	}
	return m.page.Number == 1
}

// headOf is where a correction of no row is noted: beside the first row of its
// poem or section, or at the head of the page.
func (m *marker) headOf(c *corrections.Correction) stretch {
	for i := range m.page.Rows {
		r := &m.page.Rows[i]
		if c.Change.Poem != 0 && r.Poem == c.Change.Poem || c.Change.Section != 0 && r.Role == typeset.RoleSection {
			return stretch{row: r, from: r.X, to: r.X + r.Width, end: r.End, begins: true, index: i}
		}
	}
	row := &typeset.Row{X: m.page.Text.X, Baseline: m.design.Baseline(1)}
	return stretch{row: row, from: row.X, to: row.X, begins: true, index: -1}
}
