package typeset

import (
	"headland/pagemodel"
)

// The prelims and the end matter are set apart from the poems and from all page
// numbers: what refers to a page leaves room for the number, in a column of its
// own, and the number is put in when the page is looked at. So no number can
// change how many pages there are.

// matterPage is one page of the prelims or the end matter before it is known
// what number it has.
type matterPage struct {
	kind    pagemodel.MatterKind // "" for a blank
	heading string               // of the piece that it belongs to; "" for none
	opens   bool                 // the piece begins here
	folio   bool                 // its folio is printed, or blind
	rows    []matterRow
}

// matterRow is a row with X from the left of the measure and its row of the
// grid.
type matterRow struct {
	Row
	to pageReference
}

// pageReference is what a row sends the reader to: one of the entries of the
// order, or a piece of the end matter. The zero one sends nowhere.
type pageReference struct {
	entry int                  // by place in the order, from 1
	line  pagemodel.LineID     // within the poem; 0 for where it opens
	piece pagemodel.MatterKind // else
}

// matterSetting is the prelims and the end matter of a book. It never changes.
type matterSetting struct {
	prelims []matterPage // an even number of them, so that the poems begin on a recto
	end     []matterPage // the first of them a recto
}

// setMatter sets the prelims and the end matter.
func (b *blocks) setMatter(c *pagemodel.Collection) *matterSetting {
	m := &matterSetting{}
	for _, kind := range pagemodel.MatterKinds {
		page, ok := c.Matter().Page(kind)
		if !ok {
			continue
		}
		piece := b.setPiece(c, page)
		if kind.Prelim() {
			m.prelims = withPiece(m.prelims, piece)
		} else {
			m.end = withPiece(m.end, piece)
		}
	}
	if len(m.prelims)%2 == 1 {
		m.prelims = append(m.prelims, matterPage{})
	}
	return m
}

// withPiece puts a piece behind what is there, on its own side.
func withPiece(pages, piece []matterPage) []matterPage {
	if len(piece) == 0 {
		return pages
	}
	var before pagemodel.MatterKind
	if len(pages) > 0 {
		before = pages[len(pages)-1].kind
	}
	for pagemodel.SideOf(len(pages)+1) != opensOn(piece[0].kind, before) {
		pages = append(pages, matterPage{})
	}
	return append(pages, piece...)
}

// opensOn is the side on which a piece begins that comes after another. The
// main pieces begin on rectos (New Hart's Rules 1.1). What backs the half-title
// and the title stands on versos (Hart's 1.2.1: half-title verso, title page
// verso), and an epigraph backs the dedication where there is one (The Chicago
// Manual of Style's order: dedication v, epigraph v or vi).
func opensOn(kind, before pagemodel.MatterKind) pagemodel.Side {
	switch {
	case kind == pagemodel.AlsoBy, kind == pagemodel.Imprint:
		return pagemodel.Verso
	case kind == pagemodel.EpigraphPage && before == pagemodel.DedicationPage:
		return pagemodel.Verso
	}
	return pagemodel.Recto
}

// printsFolio says that the folio is printed on the pages of a kind. It is blind
// on blanks, and on the pages up to the contents (The Chicago Manual of Style,
// 17th edition, 1.5-1.8; from memory).
func printsFolio(kind pagemodel.MatterKind) bool {
	switch kind {
	case pagemodel.ContentsPage, pagemodel.Acknowledgements, pagemodel.NotesPage, pagemodel.IndexPage:
		return true
	}
	return false
}

// runningHead is what stands over the page, "" where nothing may: a piece's
// heading over its later pages.
func (p *matterPage) runningHead() string {
	if p.opens || !p.folio {
		return ""
	}
	return p.heading
}

// opening is the index in the end matter of the page on which a piece begins,
// or false.
func (m *matterSetting) opening(kind pagemodel.MatterKind) (int, bool) {
	for i := range m.end {
		if m.end[i].kind == kind {
			return i, true
		}
	}
	return 0, false
}
