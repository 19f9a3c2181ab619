package order

import "headland/pagemodel"

// A Sheet is a sheet of paper with two pages on each side, to be folded once
// between them. Sheets of one section lie folded one in another.
type Sheet struct {
	Section     int // from 1
	Number      int // within the section, from 1, the outermost
	Front, Back Side
}

// A Side is the pages, by their numbers from 1, on one side of a sheet that lies
// with its long edges at head and foot. A number past the last page of the book
// is a blank.
type Side struct{ Left, Right int }

// sheetPages is how many pages a sheet has, two on each side.
const sheetPages = 4

// Impose puts the pages of a book on sheets, in the order in which they are
// printed and gathered: section after section, in each the outermost sheet
// first. Section is how many pages a section has, a multiple of four; 0 makes
// the whole book one section, to be stapled through its fold. The last section
// is as short as it can be, and blanks fill it up at the back.
//
// The page order of a section of N pages is the usual one of folded sheets: on
// sheet k the front has pages N-2k+2 and 2k-1, the back 2k and N-2k+1 (common
// practice, no source; a printer's help page has the case N = 4).
func Impose(pages, section int) []Sheet {
	var sheets []Sheet
	for _, s := range sections(pages, section) {
		for k := 1; k <= s.pages/sheetPages; k++ {
			first, last := s.before+2*k-1, s.before+s.pages-2*k+2
			sheets = append(sheets, Sheet{
				Section: s.number, Number: k,
				Front: Side{Left: last, Right: first},
				Back:  Side{Left: first + 1, Right: last - 1},
			})
		}
	}
	return sheets
}

// OneSheetSpreads are the spreads whose two pages are printed side by side on
// one sheet: the one in the middle of each section, and no other. What crosses
// the gutter anywhere else is put together of two sheets, and may be out where
// they meet.
func OneSheetSpreads(pages, section int) []pagemodel.Spread {
	var middles []pagemodel.Spread
	for _, s := range sections(pages, section) {
		verso := s.before + s.pages/2
		if verso < pages {
			middles = append(middles, pagemodel.Spread{Verso: verso, Recto: verso + 1})
		}
	}
	return middles
}

// A part is one section of a book.
type part struct {
	number int // from 1
	before int // pages that stand before it
	pages  int // a multiple of four, blanks included
}

// sections are the sections of a book.
func sections(pages, section int) []part {
	whole := fill(max(0, pages))
	if section <= 0 {
		section = max(whole, sheetPages)
	}
	section = fill(section)
	var all []part
	for before := 0; before < whole; before += section {
		all = append(all, part{len(all) + 1, before, min(section, whole-before)})
	}
	return all
}

// fill is the least number of pages, n or more, that are whole sheets.
func fill(n int) int { return n + pagemodel.Blanks(n, sheetPages) }
