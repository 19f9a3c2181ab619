package session

import (
	"errors"
	"fmt"
	"io"
	"os"

	"headland/pagemodel"
	"headland/typeset"
	"headland/typeset/pdf"
)

// ErrCancelled says that an export was stopped by its progress function.
var ErrCancelled = errors.New("the export was stopped")

// PDFOptions say how the pages lie on a PDF's sheets. Where something runs over
// the trim, single pages have the usual bleed without being asked.
type PDFOptions struct {
	Spreads bool // a verso and the recto facing it on one sheet, for reading; printers want single pages
	Marks   bool // crop marks at the corners of single pages
}

// Export is the book as it stood when it was asked for, its pages made, to be
// written out. It reads nothing of the session, so it may be used on another
// goroutine, by one at a time.
type Export struct {
	about   pagemodel.About
	pages   []*typeset.Page
	folios  []string // of the pages, blind or not
	outline []pdf.Bookmark
	own     os.FileInfo // the collection's file
}

// Export is the committed book, to be written out. It is refused where the book
// is set in another face than its design asks for, as that is not how the book
// looks.
func (s *Session) Export() (*Export, error) {
	return s.exportOf(s.committed)
}

// exportOf is a setting of the book, to be written out.
func (s *Session) exportOf(setting *typeset.Setting) (*Export, error) {
	c := setting.Collection()
	if !setting.FaceHere() {
		return nil, fmt.Errorf("export %s: the face %q of its design is not here, and pages set in another would not be the book's: add the face to the file, or choose another in the design", s.Path(), c.Design().Face)
	}
	if setting.Extent() == 0 {
		return nil, fmt.Errorf("export %s: the book has no pages yet: add a manuscript first", s.Path())
	}
	x := &Export{about: c.About(), outline: outlineOf(setting), own: s.file()}
	for n := 1; n <= setting.Extent(); n++ {
		x.pages, x.folios = append(x.pages, setting.Page(n)), append(x.folios, setting.FolioOf(n))
	}
	return x, nil
}

// ExportPDF writes the committed book to path: see [Export.PDF].
func (s *Session) ExportPDF(path string, o PDFOptions, progress func(done, of int) bool) error {
	x, err := s.Export()
	if err != nil {
		return err
	}
	return x.PDF(path, o, progress)
}

// ExportPNG writes pictures of the committed book into dir: see [Export.PNG].
func (s *Session) ExportPNG(dir string, scale float64, spreads bool, progress func(done, of int) bool) error {
	x, err := s.Export()
	if err != nil {
		return err
	}
	return x.PNG(dir, scale, spreads, progress)
}

// PDF writes the book to path, which is replaced once all is written. progress,
// which may be nil, is told how many pages are done, before the work and before
// the file is put in its place; false from it stops the export with
// [ErrCancelled] and nothing written.
func (x *Export) PDF(path string, o PDFOptions, progress func(done, of int) bool) error {
	return x.writePDF(path, x.document(o), progress)
}

// writePDF writes a document to path.
func (x *Export) writePDF(path string, d pdf.Document, progress func(done, of int) bool) error {
	if err := notItself(x.own, path); err != nil {
		return err
	}
	if progress == nil {
		progress = func(int, int) bool { return true }
	}
	if !progress(0, len(x.pages)) {
		return ErrCancelled
	}
	return writeWhole(path, func(w io.Writer) error {
		if err := pdf.Write(w, d); err != nil {
			return err
		}
		if !progress(len(x.pages), len(x.pages)) {
			return ErrCancelled
		}
		return nil
	})
}

// document is the book as a PDF holds it.
func (x *Export) document(o PDFOptions) pdf.Document {
	d := pdf.Document{
		Title: x.about.Title, Author: x.about.Poet, Lang: languageOf(x.about), Pages: x.pages,
		Numbering: pdf.NumberingOf(x.folios), Outline: x.outline, Sheet: pdf.Sheet{Spreads: o.Spreads, Marks: o.Marks && !o.Spreads},
	}
	if !o.Spreads && pdf.Bleeds(x.pages) {
		d.Sheet.Bleed = pdf.UsualBleed
	}
	return d
}

// languageOf is the language of the book; one that says none is English.
func languageOf(about pagemodel.About) string {
	if about.Language == "" {
		return "en"
	}
	return about.Language
}
