package pdf

import (
	"strconv"
	"strings"
)

// NumberingOf is the numbering of pages that have these folios, in order: arabic
// figures, lower-case roman figures, or none. A folio that is neither is taken
// for none.
func NumberingOf(folios []string) []Numbering {
	var all []Numbering
	var next Numbering // what would go on the numbering before
	for i, f := range folios {
		n := Numbering{From: i}
		n.Style, n.First = readFolio(f)
		if i == 0 || n.Style != next.Style || n.First != next.First {
			all = append(all, n)
		}
		next = n
		if n.Style != Unnumbered {
			next.First++
		}
	}
	return all
}

// readFolio reads a folio's style and number.
func readFolio(f string) (NumberStyle, int) {
	if n, err := strconv.Atoi(f); err == nil && n > 0 {
		return Arabic, n
	}
	if n := romanNumber(f); n > 0 {
		return Roman, n
	}
	return Unnumbered, 0
}

// romanNumber is the number that lower-case roman figures stand for; 0 where
// they stand for none.
func romanNumber(f string) int {
	n := 0
	for _, r := range romanFigures {
		for strings.HasPrefix(f, r.figure) {
			n, f = n+r.value, f[len(r.figure):]
		}
	}
	if f != "" {
		return 0
	}
	return n
}
