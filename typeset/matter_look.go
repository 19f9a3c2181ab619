package typeset

import (
	"slices"
	"strconv"

	"headland/pagemodel"
)

// matterRows are the rows of a page of matter as they stand on page p, their
// numbers put in: folio says what number the page has that a row refers to.
func (s *Setting) matterRows(p *Page, m *matterPage, folio func(pageReference) string) []Row {
	d := &s.design
	rows := make([]Row, len(m.rows))
	for i := range m.rows {
		row := m.rows[i].Row
		if to := m.rows[i].to; to != (pageReference{}) {
			row = s.withFolio(row, folio(to))
		}
		row.X += p.Text.X
		row.Baseline = d.Baseline(row.Grid)
		rows[i] = row
	}
	return rows
}

// withFolio is the row with a number at the right end of the measure.
func (s *Setting) withFolio(row Row, folio string) Row {
	d := &s.design
	run := s.setter.Words(folio, WordStyle{Family: d.Face, Size: d.Size})
	run.X = d.Measure() - row.X - run.Width
	run.Start = row.End
	row.Runs = append(row.Runs[:len(row.Runs):len(row.Runs)], run)
	row.End += len(folio)
	row.Width, row.Room = d.Measure()-row.X, d.Measure()-row.X
	return row
}

// faults are the characters on the page that the face has not, and the words
// wider than the measure. Neither page nor row is set.
func (p *matterPage) faults() []poemFault {
	var all []poemFault
	for i := range p.rows {
		r := &p.rows[i]
		for _, run := range r.Runs {
			for _, g := range run.Glyphs {
				if g.ID == 0 {
					all = append(all, poemFault{kind: MissingGlyph, text: missingText(run, g)})
				}
			}
		}
		if r.Width > r.Room {
			all = append(all, poemFault{kind: OverMeasure, text: rowText(&r.Row)})
		}
	}
	return all
}

// sameMatter says that an entry could take another's place without a change to
// the prelims or the end matter.
func sameMatter(a, b pagemodel.Entry, m pagemodel.Matter) bool {
	return a == b || slices.Equal(matterWords(a, m), matterWords(b, m))
}

// matterWords are what an entry gives to the contents, the notes and the index.
func matterWords(e pagemodel.Entry, m pagemodel.Matter) []string {
	if e.Section != nil {
		return []string{"section", e.Section.Title}
	}
	p, h := e.Poem, e.Poem.Head()
	words := []string{strconv.FormatInt(int64(p.ID()), 10), p.ShortName(), p.Name(), h.Title, h.Note, openingWords(p)}
	if m.Parts {
		for _, part := range headedParts(p) {
			words = append(words, part.heading, strconv.FormatInt(int64(part.line), 10))
		}
	}
	return words
}
