package pdf

import (
	"fmt"
	"slices"
	"strconv"
	"strings"
)

// numberStyles are the names of the styles in a PDF (ISO table 159).
var numberStyles = map[NumberStyle]string{Arabic: "/S /D ", Roman: "/S /r ", Unnumbered: ""}

// checkNumbering sees to it that the numberings start at the first page, follow
// each other and end within the book.
func checkNumbering(d *Document) error {
	for i, n := range d.Numbering {
		first, late := i == 0 && n.From != 0, n.From >= len(d.Pages)
		if first || late || i > 0 && n.From <= d.Numbering[i-1].From {
			return fmt.Errorf("page numbering %d starts at page %d of %d; the first must start at page 1 and each after the one before",
				i+1, n.From+1, len(d.Pages))
		}
	}
	return nil
}

// pageLabels is the number tree of what readers call the sheets (ISO 12.4.2).
func pageLabels(d *Document, sheets []side) string {
	switch {
	case len(d.Sides) > 0:
		return ownLabels(sheets)
	case d.Sheet.Spreads:
		return spreadLabels(d, sheets)
	}
	all := d.Numbering
	if len(all) == 0 {
		all = []Numbering{{}}
	}
	var b strings.Builder
	for _, n := range all {
		fmt.Fprintf(&b, "%d << %s/St %d >> ", n.From, numberStyles[n.Style], max(n.First, 1))
	}
	return "<< /Nums [" + b.String() + "] >>"
}

// spreadLabels calls each sheet by both its pages, as "ii–iii".
func spreadLabels(d *Document, sheets []side) string {
	var b strings.Builder
	for i, s := range sheets {
		var folios []string
		for _, p := range s.placed {
			folios = append(folios, folio(d.Numbering, p.Page))
		}
		folios = slices.DeleteFunc(folios, func(f string) bool { return f == "" })
		fmt.Fprintf(&b, "%d << /P %s >> ", i, textString(strings.Join(folios, "–")))
	}
	return "<< /Nums [" + b.String() + "] >>"
}

// ownLabels calls each side what the document calls it.
func ownLabels(sheets []side) string {
	var b strings.Builder
	for i, s := range sheets {
		fmt.Fprintf(&b, "%d << /P %s >> ", i, textString(s.label))
	}
	return "<< /Nums [" + b.String() + "] >>"
}

// folio is what a page, by its index, is called.
func folio(all []Numbering, page int) string {
	var last Numbering
	for _, n := range all {
		if n.From <= page {
			last = n
		}
	}
	number := max(last.First, 1) + page - last.From
	switch last.Style {
	case Roman:
		return roman(number)
	case Unnumbered:
		return ""
	}
	return strconv.Itoa(number)
}

var romanFigures = []struct {
	value  int
	figure string
}{
	{1000, "m"}, {900, "cm"}, {500, "d"}, {400, "cd"}, {100, "c"}, {90, "xc"},
	{50, "l"}, {40, "xl"}, {10, "x"}, {9, "ix"}, {5, "v"}, {4, "iv"}, {1, "i"},
}

// roman is n in lower-case roman figures.
func roman(n int) string {
	var b strings.Builder
	for _, r := range romanFigures {
		for ; n >= r.value; n -= r.value {
			b.WriteString(r.figure)
		}
	}
	return b.String()
}
