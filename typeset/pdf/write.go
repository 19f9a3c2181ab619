package pdf

import (
	"errors"
	"fmt"
	"io"
	"slices"
	"strings"

	"headland/pagemodel"
	"headland/typeset"
)

// Write writes the document as a PDF file to w. Nothing is written unless the
// whole file could be made. Equal documents give equal bytes.
//
// Each face travels as a subset of the glyphs shown, or whole where its maker
// forbids subsets or it can't be subset. It fails, saying what to do, where a
// face may not be embedded or is no font, where a page shows a glyph that its
// face lacks, or where numbering or outline don't fit the pages; and with
// whatever w fails with.
func Write(w io.Writer, d Document) error {
	whole, err := build(&d)
	if err != nil {
		return fmt.Errorf("write PDF: %w", err)
	}
	if _, err := w.Write(whole); err != nil {
		return fmt.Errorf("write PDF: %w", err)
	}
	return nil
}

// A book is a document on its way into a file.
type book struct {
	*Document
	file   *file
	faces  *faces
	sheets []side
	refs   []ref // the page object of each sheet
	pages  []ref // the page object that each page of the book is on
}

// build makes the whole file.
func build(d *Document) ([]byte, error) {
	trim, err := trimOf(d.Pages)
	if err != nil {
		return nil, err
	}
	if err := errors.Join(checkNumbering(d), checkSides(d), checkOverlays(d)); err != nil {
		return nil, err
	}
	f := newFile()
	b := &book{Document: d, file: f, faces: newFaces(f), sheets: sides(d, trim), pages: make([]ref, len(d.Pages))}
	catalog := f.reserve()
	tree, err := b.writeSheets()
	if err != nil {
		return nil, err
	}
	outline, err := outliner{f, b.pages}.outline(d.Outline)
	if err != nil {
		return nil, err
	}
	f.put(catalog, b.catalog(tree, outline))
	return f.finish(catalog, f.info(d)), nil
}

// trimOf is the size of the pages, which must be of one size.
func trimOf(pages []*typeset.Page) (pagemodel.Trim, error) {
	if len(pages) == 0 {
		return pagemodel.Trim{}, errors.New("there are no pages; set the collection first")
	}
	trim := pages[0].Trim
	if trim.Width <= 0 || trim.Height <= 0 {
		return trim, fmt.Errorf("the pages are %v by %v; give them a trim", trim.Width, trim.Height)
	}
	for i, p := range pages {
		if p.Trim != trim {
			return trim, fmt.Errorf("page %d is %v by %v and page 1 %v by %v; give all pages one trim",
				i+1, p.Trim.Width, p.Trim.Height, trim.Width, trim.Height)
		}
	}
	return trim, nil
}

// checkSides sees to it that the sides hold pages of the document, each at some
// size, and each on one of them.
func checkSides(d *Document) error {
	on := make([]bool, len(d.Pages))
	for i := range d.Sides {
		for _, p := range d.Sides[i].Pages {
			if p.Page < 0 || p.Page >= len(d.Pages) || p.Percent <= 0 || on[p.Page] {
				return fmt.Errorf("side %d has page %d of %d at %d per cent; lay each page on one side, at a size above 0",
					i+1, p.Page+1, len(d.Pages), p.Percent)
			}
			on[p.Page] = true
		}
	}
	if missing := slices.Index(on, false); len(d.Sides) > 0 && missing >= 0 {
		return fmt.Errorf("page %d of %d is on no side; lay each page on one", missing+1, len(d.Pages))
	}
	return nil
}

// writeSheets writes the page tree with all that hangs on it, and gives its
// root.
func (b *book) writeSheets() (ref, error) {
	tree, resources := b.file.reserve(), b.file.reserve()
	for i := range b.sheets {
		s, c := &b.sheets[i], &content{faces: b.faces}
		if err := c.side(b.Document, s); err != nil {
			return 0, err
		}
		r := b.file.add(fmt.Sprintf("<< /Type /Page /Parent %v %s /Resources %v /Contents %v >>",
			tree, s.boxes(), resources, b.file.addStream("", c.b.Bytes())))
		b.refs = append(b.refs, r)
		for _, p := range s.placed {
			b.pages[p.Page] = r
		}
	}
	if err := b.faces.embed(); err != nil {
		return 0, err
	}
	b.file.put(resources, b.faces.resources())
	b.file.put(tree, fmt.Sprintf("<< /Type /Pages /Count %d /Kids %v >>", len(b.refs), b.refs))
	return tree, nil
}

// layout is how a reader opens the file: as a book, rectos right, except where
// two pages lie on a sheet already.
func (b *book) layout() string {
	switch {
	case b.Sheet.Spreads, len(b.Sides) > 0:
		return "/SinglePage"
	case b.Pages[0].Side == pagemodel.Verso:
		return "/TwoPageLeft"
	}
	return "/TwoPageRight"
}

// catalog is the document's root (ISO 7.7.2). Scaling is off, since a page
// printed "to fit" would give wrong measures; sheets to be folded ask for the
// back to be printed as their fold needs it (ISO table 150).
func (b *book) catalog(tree, outline ref) string {
	var s strings.Builder
	fmt.Fprintf(&s, "<< /Type /Catalog /Pages %v /PageLayout %s /PageLabels %s /Metadata %v /ViewerPreferences << /DisplayDocTitle true /PrintScaling /None%s >>",
		tree, b.layout(), pageLabels(b.Document, b.sheets), b.file.metadata(b.Document), b.duplex())
	if b.Lang != "" {
		fmt.Fprintf(&s, " /Lang %s", textString(b.Lang))
	}
	if outline != 0 {
		fmt.Fprintf(&s, " /Outlines %v", outline)
	}
	s.WriteString(" >>")
	return s.String()
}

// duplex is how sheets that have two sides are turned over.
func (b *book) duplex() string {
	if len(b.Sides) == 0 {
		return ""
	}
	return " /Duplex /DuplexFlipShortEdge"
}
