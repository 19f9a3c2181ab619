package ui

import (
	"fmt"
	"strings"

	"headland/pagemodel"
	"headland/typeset"
)

// meets says how two edges meet, and on what pages.
func (h *hinge) meets(set *typeset.Setting) string {
	a, b := set.FolioOf(h.edges[0].page), set.FolioOf(h.edges[1].page)
	switch h.way() {
	case onOnePage:
		return "both on page " + a
	case overGutter:
		return fmt.Sprintf("page %s faces page %s", a, b)
	case overLeaf:
		return fmt.Sprintf("page %s, and over the leaf page %s", a, b)
	case sideBySide:
		return fmt.Sprintf("side by side: ends on page %s, begins on page %s", a, b)
	}
	return fmt.Sprintf("page %s, then page %s", a, b)
}

// between says what comes between two edges: sections that begin, pages, and
// what faces them where that is blank.
func (h *hinge) between(set *typeset.Setting) string {
	var said []string
	for _, title := range h.sections {
		said = append(said, "the section "+quoted(title)+" begins")
	}
	if h.way() == pagesApart {
		var blank []string
		for n := h.edges[0].page + 1; n < h.edges[1].page; n++ {
			if len(set.Page(n).Rows) == 0 {
				blank = append(blank, set.FolioOf(n))
			}
		}
		if len(blank) > 0 {
			said = append(said, h.blankWords(set, blank))
		}
	}
	return strings.Join(said, " · ")
}

// blankWords say which pages are blank, and what faces one of them.
func (h *hinge) blankWords(set *typeset.Setting, blank []string) string {
	words, one := "page "+blank[0]+" is blank", "it"
	if len(blank) > 1 {
		words = "pages " + strings.Join(blank[:len(blank)-1], ", ") + " and " + blank[len(blank)-1] + " are blank"
		one = "one of them"
	}
	for _, e := range h.edges {
		faces := e.page ^ 1
		if faces > h.edges[0].page && faces < h.edges[1].page && len(set.Page(faces).Rows) == 0 {
			words += ", and page " + set.FolioOf(e.page) + " faces " + one
		}
	}
	return words
}

// title is what stands over an edge: the poem's name, and which of its lines.
func (e *hingeEdge) title(edge int) string {
	switch {
	case e.line.Line == 0:
		return e.poem.Name() + ", without a line"
	case edge == 0:
		return "end of " + nameInWords(e.poem)
	}
	return nameInWords(e.poem)
}

// nameInWords is a poem's title, or that it has none: its first line is seen.
func nameInWords(p *pagemodel.Poem) string {
	if p.Head().Title == "" {
		return "a poem without a title"
	}
	return p.Head().Title
}

// tell says at the foot where one is and what can be done.
func (v *hingeView) tell() {
	d := v.w.desk
	if v.over.hinge >= 0 {
		e := &v.all[v.over.hinge].edges[v.over.edge]
		d.tell("Press: the book opens at page " + d.of.FolioOf(e.page) + " · " + e.poem.Name())
		return
	}
	words := fmt.Sprintf("Hinge %d of %d · ↑ ↓ walk them", v.at+1, len(v.all))
	if !d.brief() {
		words += " · ← → the one edge or the other"
	}
	d.tell(words + " · Enter opens the book there · Esc leaves them")
}
