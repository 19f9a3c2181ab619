package pdf

import (
	"time"

	"headland/pagemodel"
	"headland/typeset"
	"headland/typeset/marks/overlay"
)

// A Document is what goes into one PDF file. [Write] only reads it.
type Document struct {
	// Title and Author are shown by readers and catalogued by libraries.
	Title, Author string

	// Lang is the language of the text as a BCP 47 tag, such as "en-GB";
	// empty if not known. Screen readers choose their voice by it.
	Lang string

	// Created is the date that the file carries; none if zero. It is the only
	// clock that the writer knows.
	Created time.Time

	// Pages are the pages in order, all of one trim. None is nil: a blank is a
	// page without rows.
	Pages []*typeset.Page

	// Numbering says what readers call the pages: roman prelims, then arabic.
	// Empty means 1, 2, 3 and on.
	Numbering []Numbering

	// Outline is the list of contents beside the pages.
	Outline []Bookmark

	// Sheet says what paper the pages lie on, where Sides is empty.
	Sheet Sheet

	// Overlays are marks that lie over the pages, by the pages' indices in
	// Pages. They are drawn in colour, and wherever on the sheet they reach.
	Overlays map[int]overlay.Overlay

	// Sides are the sides of the sheets, front and back in turn, of pages laid
	// out to be printed on both sides of the paper, flipped on its short edge,
	// and folded.
	Sides []Side
}

// A Side is one side of a sheet that pages have been laid on. Places on it count
// from the paper's top left corner, y down.
type Side struct {
	// Label is what readers call the side.
	Label string

	// Paper is its size as it is read.
	Paper pagemodel.Trim

	// Area is what is left when it has been cut.
	Area typeset.Rect

	// Pages lie within Area; what of them reaches over their own trim is cut off.
	Pages []Placed

	// Rules and Rows are ink of the sheet's own: marks, and words beside the
	// pages.
	Rules []typeset.Rect
	Rows  []typeset.Row
}

// A Placed is a page on a side of a sheet.
type Placed struct {
	Page    int           // an index in the document's Pages
	Corner  typeset.Point // where the top left corner of its trim lies
	Percent int           // its size there, in hundredths of its full size
}

// A Sheet says what paper the pages lie on. The zero Sheet is a page to a
// sheet and the sheet as large as the page.
type Sheet struct {
	// Spreads lays a verso and the recto facing it on one sheet, for reading.
	// Printers want single pages (ISO 15930-1).
	Spreads bool

	// Bleed is how far the ink of the page may run over each edge of the trim;
	// 3 mm is usual where something bleeds.
	Bleed pagemodel.Length

	// Marks puts crop marks at the corners, outside the bleed, and makes the
	// sheet larger to hold them.
	Marks bool

	// Proof is how much white paper is left on all four sides of the trim, for
	// marks and notes; hairlines show the trim's corners. 0 is none.
	Proof pagemodel.Length
}

// A Numbering says how pages are numbered from one of them on.
type Numbering struct {
	// From is the index in Pages of the first page numbered so. The first
	// Numbering starts at 0, and each starts after the one before.
	From int

	// Style is arabic, roman or none.
	Style NumberStyle

	// First is the number of page From; 0 means 1.
	First int
}

// NumberStyle is the kind of figures that pages are numbered with.
type NumberStyle int

// The styles of page numbers.
const (
	Arabic     NumberStyle = iota // 1, 2, 3
	Roman                         // i, ii, iii: prelims
	Unnumbered                    // no number
)

// A Bookmark is an entry of the outline.
type Bookmark struct {
	Title string

	// Page is an index in the document's Pages.
	Page int

	// Under are the entries that belong to this one, such as the poems of a
	// section.
	Under []Bookmark
}
