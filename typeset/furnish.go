package typeset

import "headland/pagemodel"

// What stands about a page's text is made when the page is looked at, so that
// no folio can move a line.

// FolioOf is the number of page n, as it is printed or would be were the folio
// not blind; "" outside the book.
func (s *Setting) FolioOf(n int) string {
	if n < 1 || n > s.Extent() {
		return ""
	}
	return folioText(n, s.before(), s.collection.Matter().Roman)
}

// PageOfMatter is the first page of a piece of the prelims or the end matter, or
// false where the book has none that takes a page.
func (s *Setting) PageOfMatter(kind pagemodel.MatterKind) (int, bool) {
	for n := 1; n <= s.Extent(); n++ {
		if m := s.matterAt(n); m != nil && m.kind == kind && m.opens {
			return n, true
		}
	}
	return 0, false
}

// fillMatter puts a page of the prelims or the end matter on the page.
func (s *Setting) fillMatter(p *Page, m *matterPage) {
	p.Rows = s.matterRows(p, m, s.folioReferred)
	if m.folio {
		s.addFolio(p)
	}
	if head := m.runningHead(); head != "" && s.design.Running != pagemodel.HeadsOff {
		s.addRunningHead(p, head, head)
	}
}

// folioReferred is the number of the page that a row of the contents or the
// index refers to.
func (s *Setting) folioReferred(to pageReference) string {
	switch {
	case to.piece != "":
		i, _ := s.matter.opening(to.piece)
		return s.FolioOf(s.behind() + 1 + i)
	case to.line != 0:
		unit := s.entries.At(to.entry - 1).unitOf(to.line)
		return s.FolioOf(s.placed(to.entry - 1).pageOfUnit(max(0, unit)))
	}
	return s.FolioOf(s.firstPage(to.entry - 1))
}

// furnish gives a page of the poems its folio and its running head, which never
// stands over the opening of a poem.
func (s *Setting) furnish(p *Page, ref pageRef) {
	s.addFolio(p)
	if s.design.Running == pagemodel.HeadsOff || s.opensPoem(p.Number) {
		return
	}
	entry := int(s.entryOn(ref))
	order := s.collection.Order()
	section := ""
	for i := entry; i >= 0 && section == ""; i-- {
		if order[i].Section != nil {
			section = order[i].Section.Title
		}
	}
	verso, recto := runningTexts(s.design.Running, s.collection.About(), section, order[entry].Poem.ShortName())
	s.addRunningHead(p, verso, recto)
}

// opensPoem says that a poem opens on the page.
func (s *Setting) opensPoem(page int) bool {
	for entry := range s.entriesOn(page) {
		first := s.firstPage(entry)
		if first == page || s.placed(entry).kind == across && first+1 == page {
			return true
		}
	}
	return false
}

func (s *Setting) addFolio(p *Page) {
	if s.design.Folios == pagemodel.FolioNone {
		return
	}
	p.Folio = s.FolioOf(p.Number)
	p.Rows = append(p.Rows, s.folio(p))
}

func (s *Setting) addRunningHead(p *Page, verso, recto string) {
	if head, ok := s.runningHead(p, verso, recto); ok {
		p.Rows = append(p.Rows, head)
	}
}
