package ui

import (
	"image"
	"strings"
)

// listRow is one row of a listing.
type listRow struct {
	words string
	aside string // at the right: a page, a kind
	under string // smaller, below the words
	quiet bool   // set in italic
}

// has says that every one of some words, in small letters, is among the row's.
func (r *listRow) has(words []string) bool {
	all := strings.ToLower(r.words + " " + r.under)
	for _, w := range words {
		if !strings.Contains(all, w) {
			return false
		}
	}
	return true
}

// Depths in the toolkit's units: of a listing's row, of a second row of its words,
// of each row of small words under it, and of the white below those.
const (
	rowDepth   = 27
	wordsDepth = 22
	underDepth = 19
	underWhite = 6
)

// Sizes of a listing's words, in the toolkit's units.
const (
	listSize  = 17
	underSize = 15
)

// rowsMost is how many rows the words have at most, and those under them.
const rowsMost = 2

// deep is the depth of a row.
func (l *listing) deep(row *listRow) float32 {
	words, under := l.wrapped(row)
	deep := rowDepth + float32(max(0, len(words)-1))*wordsDepth + float32(len(under))*underDepth
	if len(under) > 0 {
		deep += underWhite
	}
	return deep
}

// rowMargin is the white at either side of a row, in the toolkit's units.
const rowMargin = 8

func (l *listing) drawRow(s *slate, row *listRow, r image.Rectangle, chosen bool) {
	if chosen {
		s.fill(r, l.colors.wash)
		s.fill(image.Rect(0, r.Min.Y, max(2, int(2*s.density)), r.Max.Y), l.colors.panelInk)
	}
	margin, base := int(rowMargin*s.density), r.Min.Y+int(rowDepth*s.density)*7/10
	aside := l.k.words(row.aside, underSize, false)
	s.write(aside, r.Max.X-margin-s.px(aside.Width), base, l.colors.panelAside)
	words, under := l.wrapped(row)
	for i, w := range words {
		if i > 0 {
			base += int(wordsDepth * s.density)
		}
		s.write(l.k.words(w, listSize, row.quiet), margin, base, l.colors.panelInk)
	}
	for _, w := range under {
		base += int(underDepth * s.density)
		s.write(l.k.words(w, underSize, false), margin, base, l.colors.panelAside)
	}
}

// wrapped is a row's words and those under them in as many rows as they need.
func (l *listing) wrapped(row *listRow) (words, under []string) {
	room := float64(l.Size().Width) - 2*rowMargin
	beside := l.k.words(row.aside, underSize, false).Width.Points()
	if beside > 0 {
		beside += rowMargin
	}
	words = inRows(row.words, func(w string) bool {
		return l.k.words(w, listSize, row.quiet).Width.Points() <= room-beside
	})
	under = inRows(row.under, func(w string) bool { return l.k.words(w, underSize, false).Width.Points() <= room })
	return words, under
}

// inRows is words in as many rows as they need for each to fit, but in no more
// than there may be: then the last is shortened.
func inRows(words string, fits func(string) bool) []string {
	var rows []string
	for _, word := range strings.Fields(words) {
		n := len(rows)
		switch {
		case n > 0 && fits(rows[n-1]+" "+word):
			rows[n-1] += " " + word
		case n < rowsMost:
			rows = append(rows, word)
		default:
			rows[n-1] += " …"
			return rows
		}
	}
	return rows
}
