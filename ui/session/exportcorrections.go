package session

import (
	"io"
	"path/filepath"
	"strings"

	"headland/pagemodel"
	"headland/pagemodel/document"
	"headland/typeset"
	"headland/typeset/corrections"
	"headland/typeset/pdf"
)

// ExportCorrections writes the list of a round's corrections to path, by the
// ending of its name: .pdf, .docx, .odt, .csv, or .txt for a mail. What was at path
// is replaced once all is written.
func (s *Session) ExportCorrections(path string, id pagemodel.RoundID) error {
	if err := notItself(s.file(), path); err != nil {
		return err
	}
	list, err := s.proven(id)
	if err != nil {
		return err
	}
	write := s.listWriter(strings.ToLower(filepath.Ext(path)))
	if write == nil {
		return cannotWrite(path, ".pdf, .docx, .odt, .csv or .txt")
	}
	return writeWhole(path, func(w io.Writer) error { return write(list, w) })
}

// listWriter writes a list as files of that ending have it, or is nil.
func (s *Session) listWriter(ending string) func(*corrections.List, io.Writer) error {
	switch ending {
	case ".pdf":
		return s.listAsPDF
	case ".docx":
		return func(l *corrections.List, w io.Writer) error { return document.Document.WriteDOCX(l.Document(), w) }
	case ".odt":
		return func(l *corrections.List, w io.Writer) error { return document.Document.WriteODT(l.Document(), w) }
	case ".csv":
		return (*corrections.List).WriteCSV
	case ".txt":
		return (*corrections.List).WriteText
	}
	return nil
}

// listAsPDF sets the list in the book's face.
func (s *Session) listAsPDF(l *corrections.List, w io.Writer) error {
	pages, err := l.Pages(typeset.NewSetter(s.faces), s.Collection().Design().Face)
	if err != nil {
		return err
	}
	d := l.Document()
	return pdf.Write(w, pdf.Document{Title: d.Title, Author: d.Author, Lang: languageOf(l.About), Pages: pages})
}
