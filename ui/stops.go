package ui

import (
	"strings"
	"unicode/utf8"

	"headland/pagemodel"
	"headland/typeset"
)

// stop is a spot where the setting rule of a line can stand, in the geometry of
// the moment at which it was taken.
type stop struct {
	row    int            // of the page's rows
	x      typeset.Length // from the left of the trim
	at     int            // byte offset in the line's text at which it would end
	words  int            // words shed, or, negative, gathered; 0 where the line ends
	inside bool           // after a dash or hyphen within a word, where words can't be counted
}

// home says that the rule stands where the line ends anyway.
func (s stop) home() bool { return s.words == 0 && !s.inside }

// below is the poet's line that follows in the stanza, as it is set.
type below struct {
	line pagemodel.Line
	rows []*typeset.Row
}

// shedStops are the stops at which words are shed, from the one that sheds
// most, and last the end of the line.
func shedStops(page *typeset.Page, line pagemodel.Line, own []int) []stop {
	words := pagemodel.Words(line.Text())
	var stops []stop
	for i, w := range words {
		for _, at := range insideDashes(line.Text(), w) {
			stops = appendStop(stops, page, own, stop{at: at, words: len(words) - 1 - i, inside: true})
		}
		stops = appendStop(stops, page, own, stop{at: w.End, words: len(words) - 1 - i})
	}
	return stops
}

// appendStop adds a stop if what ends there stands on the page.
func appendStop(stops []stop, page *typeset.Page, own []int, s stop) []stop {
	for _, i := range own {
		if r := &page.Rows[i]; r.Start < s.at && s.at <= r.End {
			s.row, s.x = i, r.XAt(s.at)
			return append(stops, s)
		}
	}
	return stops
}

// insideDashes are the byte offsets within a word after a dash or hyphen that
// something follows: a poet may break there.
func insideDashes(text string, w pagemodel.Word) []int {
	var after []int
	for i, r := range text[w.Start:w.End] {
		at := w.Start + i + utf8.RuneLen(r)
		if strings.ContainsRune("-‐–—", r) && at > w.Start+utf8.RuneLen(r) && at < w.End && !strings.ContainsRune("-‐–—", next(text[at:])) {
			after = append(after, at)
		}
	}
	return after
}

func next(text string) rune {
	r, _ := utf8.DecodeRuneInString(text)
	return r
}

// gatherStops are the stops at which words of the line below are drawn up to
// the end of this one, from the first word to all of them.
func gatherStops(end stop, b *below) []stop {
	if b == nil || len(b.rows) == 0 {
		return nil
	}
	var stops []stop
	x := end.x + wordSpace(b.rows[0])
	row := 0
	for i, w := range pagemodel.Words(b.line.Text()) {
		for row+1 < len(b.rows) && w.End > b.rows[row].End {
			x += b.rows[row].Width + wordSpace(b.rows[row])
			row++
		}
		r := b.rows[row]
		stops = append(stops, stop{row: end.row, x: x + r.XAt(w.End) - r.X, at: end.at, words: -i - 1})
	}
	return stops
}

// wordSpace is about the width of a word space in the row: a quarter of an em.
func wordSpace(r *typeset.Row) typeset.Length { return sizeOf(r) / 4 }

// sizeOf is the size of the row's type.
func sizeOf(r *typeset.Row) typeset.Length {
	if len(r.Runs) == 0 {
		return 11 * pagemodel.Point
	}
	return r.Runs[0].Size
}

// rowsOf are the indexes of the page's rows that show the line.
func rowsOf(page *typeset.Page, ref pagemodel.LineRef) []int {
	var own []int
	for i := range page.Rows {
		if page.Rows[i].Line != 0 && page.Rows[i].Ref() == ref {
			own = append(own, i)
		}
	}
	return own
}
