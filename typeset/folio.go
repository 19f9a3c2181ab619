package typeset

import (
	"strconv"
	"strings"

	"headland/pagemodel"
)

// folio sets the page's number at the foot, at the outer edge of the text or in
// its middle.
func (s *Setting) folio(p *Page) Row {
	d := &s.design
	run := s.setter.Words(p.Folio, WordStyle{Family: d.Face, Size: d.Size})
	return Row{
		Role: RoleFolio, X: p.Text.X + besideText(p, run.Width, d.Folios == pagemodel.FolioCentre),
		Baseline: p.Text.Y + p.Text.H + s.folioBelow(),
		Width:    run.Width, Room: p.Text.W, End: len(p.Folio), Runs: []Run{run},
	}
}

// folioBelow is how far below the text a folio's baseline is: two lines, or half
// the foot margin where that is less.
func (s *Setting) folioBelow() Length { return min(2*s.design.Leading, s.design.Margins.Foot/2) }

// besideText is where, from the left of the text, something of that width
// begins that stands at the text's outer edge, or in its middle.
func besideText(p *Page, width Length, centred bool) Length {
	switch {
	case centred:
		return (p.Text.W - width) / 2
	case p.Side == pagemodel.Recto:
		return p.Text.W - width
	}
	return 0
}

// folioText is the number of page n, from 1, of a book that begins with so many
// pages of prelims: arabic through the whole book, or lower-case roman for the
// prelims and arabic from the first page behind them (New Hart's Rules 1.2.1).
func folioText(n, prelims int, roman bool) string {
	switch {
	case !roman:
		return strconv.Itoa(n)
	case n <= prelims:
		return romanNumeral(n)
	}
	return strconv.Itoa(n - prelims)
}

var romanValues = [...]struct {
	value  int
	letter string
}{
	{1000, "m"}, {900, "cm"}, {500, "d"}, {400, "cd"}, {100, "c"}, {90, "xc"},
	{50, "l"}, {40, "xl"}, {10, "x"}, {9, "ix"}, {5, "v"}, {4, "iv"}, {1, "i"},
}

// romanNumeral is a number from 1 in lower-case roman.
func romanNumeral(n int) string {
	var b strings.Builder
	for _, r := range romanValues {
		for n >= r.value {
			b.WriteString(r.letter)
			n -= r.value
		}
	}
	return b.String()
}
