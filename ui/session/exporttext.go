package session

import (
	"fmt"
	"io"
	"path/filepath"
	"slices"
	"strings"

	"headland/pagemodel"
	"headland/pagemodel/document"
	"headland/pagemodel/manuscript"
)

// ExportManuscript writes the text of the book to path, by the ending of its
// name: .docx and .odt for a word processor, .md for Markdown, anything else plain
// text. With edition it has this edition's breaks too. Where a page end hides a
// stanza break it says so. What was at path is replaced once all is written. The
// notices say what the kind of file can't hold.
func (s *Session) ExportManuscript(path string, edition bool) ([]manuscript.Notice, error) {
	if err := notItself(s.file(), path); err != nil {
		return nil, err
	}
	switch strings.ToLower(filepath.Ext(path)) {
	case ".docx":
		return s.exportDocument(path, edition, document.Document.WriteDOCX)
	case ".odt":
		return s.exportDocument(path, edition, document.Document.WriteODT)
	}
	kind, err := manuscript.KindOf(path)
	if err != nil {
		return nil, cannotWrite(path, ".docx, .odt, .md or .txt")
	}
	ends := map[pagemodel.LineID]bool{}
	for line := range s.hiddenBreaks() {
		ends[line] = true
	}
	var notices []manuscript.Notice
	err = writeWhole(path, func(w io.Writer) (err error) {
		notices, err = manuscript.Write(w, s.Collection(), manuscript.Options{Kind: kind, Edition: edition, PageEnds: ends})
		return err
	})
	return notices, err
}

// exportDocument writes the manuscript for a word processor.
func (s *Session) exportDocument(path string, edition bool, write func(document.Document, io.Writer) error) ([]manuscript.Notice, error) {
	if !slices.ContainsFunc(s.Collection().Order(), func(e pagemodel.Entry) bool { return e.Poem != nil }) {
		return nil, fmt.Errorf("write %s: the book has no poem: there is nothing to write", path)
	}
	d := document.FromCollection(s.Collection(), document.Options{Edition: edition, PageEnds: s.hiddenBreaks(), Name: s.revision()})
	var notices []manuscript.Notice
	for _, words := range d.Notices() {
		notices = append(notices, manuscript.Notice{Text: words})
	}
	return notices, writeWhole(path, func(w io.Writer) error { return write(d, w) })
}

// revision says which state of the text a manuscript is.
func (s *Session) revision() string {
	last, ok := s.LastRound()
	if !ok {
		return ""
	}
	return "as revised after " + last.Name
}

// cannotWrite says that a name has the ending of no kind of file that can be
// written there.
func cannotWrite(path, kinds string) error {
	return fmt.Errorf("write %s: it can't be written as %q: let the name end in %s", path, filepath.Ext(path), kinds)
}

// hiddenBreaks are the lines with which a page begins that hides the stanza break
// above it, each with the folio of the page that ends.
func (s *Session) hiddenBreaks() map[pagemodel.LineID]string {
	hidden := map[pagemodel.LineID]string{}
	first, last := s.committed.Body()
	for n := first; n <= last; n++ {
		if end := s.committed.PageEnd(n); end.HidesBreak {
			hidden[end.Line.Line] = s.committed.FolioOf(n)
		}
	}
	return hidden
}
