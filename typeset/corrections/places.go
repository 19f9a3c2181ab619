package corrections

import (
	"headland/pagemodel"
	"headland/pagemodel/difference"
	"headland/typeset"
)

// Place is where a line's first row stood on the pages that went out.
type Place struct {
	Page string `json:"page"` // the folio as printed, or as it would be printed were it not blind
	Row  int    `json:"row"`  // among the page's rows of verse and prose, from 1
}

// Places are the places of all lines of a round.
type Places map[pagemodel.LineID]Place

// PlacesOf are the places of all lines as they are set.
func PlacesOf(set *typeset.Setting) Places {
	places := Places{}
	first, last := set.Body()
	for n := first; n <= last; n++ {
		rows := set.Page(n).Rows
		for i := range rows {
			r := &rows[i]
			if _, known := places[r.Line]; r.Number > 0 && !known {
				places[r.Line] = Place{set.FolioOf(n), r.Number}
			}
		}
	}
	return places
}

// finder finds where changes stand on the pages as sent. It keeps the pages that
// it has looked at.
type finder struct {
	sent     *typeset.Setting
	places   Places
	pages    map[int]*typeset.Page
	sections map[pagemodel.SectionID]int // the pages of their heads
}

func newFinder(sent *typeset.Setting, places Places) *finder {
	f := &finder{sent: sent, places: places, pages: map[int]*typeset.Page{}, sections: map[pagemodel.SectionID]int{}}
	contents := sent.Contents()
	for i, e := range sent.Collection().Order() {
		if e.Section != nil {
			f.sections[e.Section.ID] = contents[i].Page
		}
	}
	return f
}

// place is where a change stands: of a line the row that holds its first word, of
// a head the page that it stands on.
func (f *finder) place(ch *difference.Change) Place {
	if ch.Line.Line != 0 {
		return f.placeOfLine(ch)
	}
	if n, ok := f.pageOfField(ch); ok {
		return Place{Page: f.sent.FolioOf(n)}
	}
	return Place{}
}

// placeOfLine is the recorded place of the line, moved on to the piece of it in
// which the change stands where the pages set again agree with what was recorded.
func (f *finder) placeOfLine(ch *difference.Change) Place {
	recorded, ok := f.places[ch.Line.Line]
	n, here := f.sent.PageOfLine(ch.Line)
	if !here {
		return recorded
	}
	begins, found := Place{}, Place{}
	for rows := f.rows(n, ch.Line.Line); len(rows) > 0; rows = f.rows(n, ch.Line.Line) {
		if begins == (Place{}) {
			begins = Place{f.sent.FolioOf(n), rows[0].Number}
			found = begins
		}
		for _, r := range rows {
			if r.Start <= ch.From {
				found = Place{f.sent.FolioOf(n), r.Number}
			}
		}
		n++
	}
	if ok && begins != recorded {
		return recorded
	}
	return found
}

// rows are the numbered rows of a line on a page.
func (f *finder) rows(page int, line pagemodel.LineID) []*typeset.Row {
	if f.pages[page] == nil {
		f.pages[page] = f.sent.Page(page)
	}
	var rows []*typeset.Row
	for i := range f.pages[page].Rows {
		if r := &f.pages[page].Rows[i]; r.Line == line && r.Number > 0 {
			rows = append(rows, r)
		}
	}
	return rows
}

// pageOfField is the page that a head, a section's page or a piece of the prelims
// or end matter stands on, or begins on.
func (f *finder) pageOfField(ch *difference.Change) (int, bool) {
	switch {
	case ch.Section != 0:
		n, ok := f.sections[ch.Section]
		return n, ok
	case ch.Poem != 0 && ch.Field == difference.FieldNote:
		return f.sent.PageOfMatter(pagemodel.NotesPage)
	case ch.Poem != 0 && ch.Field == difference.FieldPlace:
		return f.lastPage(ch.Poem)
	case ch.Poem != 0:
		return f.sent.PageOfPoem(ch.Poem)
	}
	if kind, ok := difference.MatterOf(ch.Field); ok {
		return f.sent.PageOfMatter(kind)
	}
	return 0, false
}

// lastPage is the page on which a poem ends.
func (f *finder) lastPage(id pagemodel.PoemID) (int, bool) {
	n, ok := f.sent.PageOfPoem(id)
	p, _, here := f.sent.Collection().Poem(id)
	if !ok || !here {
		return 0, false
	}
	for _, l := range p.Lines() {
		if m, ok := f.sent.PageOfLine(pagemodel.LineRef{Poem: id, Line: l.ID()}); ok {
			n = max(n, m)
		}
	}
	return n, true
}
