package ui

import (
	"headland/pagemodel"
	"headland/typeset"
)

// hinge is the edge where two poems meet: the last line of the one and the first
// of the next.
type hinge struct {
	edges    [2]hingeEdge
	sections []string // titles of the sections that begin between them
}

// hingeEdge is the line of a poem that stands at a hinge.
type hingeEdge struct {
	poem *pagemodel.Poem
	line pagemodel.LineRef // zero in a poem without lines
	page int
}

// hingeWay is how the two edges of a hinge lie to each other.
type hingeWay int

const (
	onOnePage  hingeWay = iota
	overGutter          // they face each other
	overLeaf            // back to back: the leaf turns between them
	pagesApart          // other pages lie between them
	sideBySide          // each on its own side of the same openings
)

// hingesOf are all the hinges of a book, in its order.
func hingesOf(set *typeset.Setting) []hinge {
	var all []hinge
	var before *pagemodel.Poem
	var sections []string
	for _, e := range set.Collection().Order() {
		if e.Poem == nil {
			sections = append(sections, e.Section.Title)
			continue
		}
		if before != nil {
			h := hinge{sections: sections}
			h.edges[0], h.edges[1] = edgeOf(set, before, true), edgeOf(set, e.Poem, false)
			all = append(all, h)
		}
		before, sections = e.Poem, nil
	}
	return all
}

// edgeOf is the last line of a poem, or its first, and its page.
func edgeOf(set *typeset.Setting, p *pagemodel.Poem, last bool) hingeEdge {
	e := hingeEdge{poem: p}
	e.page, _ = set.PageOfPoem(p.ID())
	for _, l := range p.Lines() {
		if last || e.line.Line == 0 {
			e.line = pagemodel.LineRef{Poem: p.ID(), Line: l.ID()}
		}
	}
	if page, ok := set.PageOfLine(e.line); ok && e.line.Line != 0 {
		e.page = page
	}
	return e
}

// way is how the edges lie to each other.
func (h *hinge) way() hingeWay {
	a, b := h.edges[0].page, h.edges[1].page
	switch {
	case a == b:
		return onOnePage
	case b < a:
		return sideBySide
	case b > a+1:
		return pagesApart
	case pagemodel.SideOf(a) == pagemodel.Verso:
		return overGutter
	}
	return overLeaf
}

// faces says that the edges lie on two sides of one opening, or of several.
func (h *hinge) faces() bool {
	return h.way() == overGutter || h.way() == sideBySide && pagemodel.SideOf(h.edges[0].page) != pagemodel.SideOf(h.edges[1].page)
}

// hingeRows are the rows in which the line of an edge is set, on whatever pages.
func (d *desk) hingeRows(e *hingeEdge) []typeset.Row {
	var rows []typeset.Row
	for page := e.page; page <= e.page+1; page++ {
		p := d.page(page)
		for _, i := range rowsOf(p, e.line) {
			rows = append(rows, p.Rows[i])
		}
		if len(rows) > 0 && rows[len(rows)-1].Last {
			break
		}
	}
	return rows
}
