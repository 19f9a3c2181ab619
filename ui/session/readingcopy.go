package session

import (
	"fmt"
	"io"

	"headland/pagemodel"
	"headland/typeset"
	"headland/typeset/aloud"
	"headland/typeset/pdf"
	"headland/typeset/sheet"
)

// LargeType sets running orders in large type with the book's face and the pages of
// the committed book. It has a setter of its own and belongs to the session's
// goroutine.
type LargeType struct {
	s      *Session
	setter *typeset.Setter
}

// LargeType makes one.
func (s *Session) LargeType() *LargeType { return &LargeType{s, typeset.NewSetter(s.faces)} }

// Copy is a running order in a format, by its plan.
func (l *LargeType) Copy(p aloud.Plan, f sheet.Format) *sheet.Copy {
	return sheet.New(l.s.committed, p, f, l.setter)
}

// ReadingCopy is a running order in large type on paper, printed on one side. It
// reads nothing of the session, so it may be written on another goroutine.
type ReadingCopy struct {
	export *Export
	title  string
}

// ReadingCopy sets a running order on a paper: A4, A5 or Letter. It is refused
// where there is nothing to read.
func (s *Session) ReadingCopy(r pagemodel.Reading, paper string) (*ReadingCopy, error) {
	f, err := sheet.OnPaper(paper)
	if err != nil {
		return nil, err
	}
	plan := s.Plan(r)
	set := s.LargeType().Copy(plan, f)
	if len(set.Leaves) == 0 {
		return nil, emptyReading(r)
	}
	x := &Export{about: s.Collection().About(), pages: set.Pages(), own: s.file(), outline: itemsOf(set, plan)}
	return &ReadingCopy{x, titleOf(x.about, r)}, nil
}

func emptyReading(r pagemodel.Reading) error {
	return fmt.Errorf("there is nothing to read in %q yet: put a poem into it", r.Name)
}

// titleOf is what a copy or a card is called.
func titleOf(about pagemodel.About, r pagemodel.Reading) string {
	if about.Title == "" || about.Title == r.Name {
		return r.Name
	}
	return about.Title + ": " + r.Name
}

// itemsOf are the items of a copy as an outline.
func itemsOf(set *sheet.Copy, plan aloud.Plan) []pdf.Bookmark {
	var all []pdf.Bookmark
	for i := range set.Leaves {
		if l := &set.Leaves[i]; l.First && plan.Items[l.Item].Title != "" {
			all = append(all, pdf.Bookmark{Title: plan.Items[l.Item].Title, Page: i})
		}
	}
	return all
}

// PDF writes the copy to path as [Export.PDF] writes the book.
func (c *ReadingCopy) PDF(path string, progress func(done, of int) bool) error {
	x := c.export
	doc := pdf.Document{Title: c.title, Author: x.about.Poet, Lang: languageOf(x.about), Pages: x.pages, Outline: x.outline}
	return x.writePDF(path, doc, progress)
}

// ExportCard writes a running order to path as a card to lie in the book: pages to
// turn to, first words and times. What was at path is replaced once all is written.
func (s *Session) ExportCard(path string, r pagemodel.Reading) error {
	if err := notItself(s.file(), path); err != nil {
		return err
	}
	if len(r.Items) == 0 {
		return emptyReading(r)
	}
	about := s.Collection().About()
	doc := pdf.Document{
		Title: titleOf(about, r), Author: about.Poet, Lang: languageOf(about),
		Pages: sheet.Card(s.committed, s.Plan(r), s.LargeType().setter),
	}
	return writeWhole(path, func(w io.Writer) error { return pdf.Write(w, doc) })
}
