package ui

import (
	"strconv"
	"time"
)

// differs says how many lines of a version are not as in the book.
func (v *versions) differs(i int) string {
	both, own, gone, head := 0, 0, 0, 0
	for _, d := range v.between(v.book, i) {
		switch {
		case d.anyLine() == 0:
			head++
		case d.only == 1:
			own++
		case d.only == 0:
			gone++
		default:
			both++
		}
	}
	return joined(" · ",
		some(both, "1 line differs", " lines differ"), some(own, "1 line is only here", " lines are only here"),
		some(gone, "1 line is only in the book", " lines are only in the book"), some(head, "its head differs", " things of its head differ"))
}

// some says a number of things, or nothing of none.
func some(n int, single, more string) string {
	switch n {
	case 0:
		return ""
	case 1:
		return single
	}
	return strconv.Itoa(n) + more
}

// joined is what is not empty, with something between.
func joined(between string, all ...string) string {
	words := ""
	for _, w := range all {
		if words != "" && w != "" {
			words += between
		}
		words += w
	}
	return words
}

// number is a number in figures.
func number(n int) string { return strconv.Itoa(n) }

// dayInWords is a day (ISO 8601) as one says it, with its year where that is
// another than now's; "" where it is not known.
func dayInWords(iso string, now time.Time) string {
	t, err := time.Parse(time.DateOnly, iso)
	switch {
	case err != nil:
		return ""
	case t.Year() == now.Year():
		return t.Format("2 January")
	}
	return t.Format("2 January 2006")
}

// timeInWords is a time, where the clock is now, as one says it.
func timeInWords(t, now time.Time) string {
	t = t.In(now.Location())
	return dayInWords(t.Format(time.DateOnly), now) + " " + t.Format("15:04")
}
