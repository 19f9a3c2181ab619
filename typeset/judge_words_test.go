package typeset_test

import (
	"fmt"

	"headland/typeset"
)

// How the judge says what it disagrees about.

// String is the book's poems in a form that shows what the judge goes by.
func (b *book) String() string {
	d := b.design
	s := fmt.Sprintf("%d rows, title %d, poem %d, gap %d, section open %v\n", d.Rows(), d.TitleRow, d.PoemRow, d.StanzaGap, d.SectionOpen)
	next := 0
	for _, e := range b.order {
		if e.Poem == nil {
			s += "section\n"
			continue
		}
		h := e.Poem.Head()
		s += fmt.Sprintf("poem: %v, %v, blank %v, form %q, run %d\n", h.Start, h.Lie, h.Blank, h.Form, h.Run)
		for ; next < len(b.pieces) && b.poems[b.pieces[next].poem] == e.Poem; next++ {
			s += fmt.Sprintf("  %3d %s\n", next, b.pieces[next].String())
		}
	}
	return s
}

func (p *piece) String() string {
	s := fmt.Sprintf("%v, %d rows, gap %d", p.role, p.rows, p.gap)
	if p.stanza >= 0 {
		s += fmt.Sprintf(", part %d stanza %d, %d of %d", p.part, p.stanza, p.at, p.of)
	}
	if p.line.Tied() {
		s += ", tied"
	}
	if p.line.OpensPage() {
		s += ", opens a page"
	}
	return s
}

func sheetList(sheets []sheet) string {
	s := ""
	for _, x := range sheets {
		s += fmt.Sprintf(" %d:[%d,%d)%v", x.number, x.from, x.to, x.grids)
	}
	return s
}

func rowList(rows []typeset.Row) string {
	s := ""
	for _, r := range rows {
		s += fmt.Sprintf(" [%d %v line %d]", r.Grid, r.Role, r.Line)
	}
	return s
}
