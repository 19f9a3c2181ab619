package typeset

import (
	"strings"
	"testing"

	"headland/pagemodel"
)

// TestRomanNumerals: known values (common knowledge), and every one to 39 read
// back: ten of the letters at most, and the lesser before the greater taken off.
func TestRomanNumerals(t *testing.T) {
	for n, want := range map[int]string{
		1: "i", 2: "ii", 3: "iii", 4: "iv", 5: "v", 6: "vi", 8: "viii", 9: "ix", 10: "x", 14: "xiv", 19: "xix",
		24: "xxiv", 29: "xxix", 38: "xxxviii", 39: "xxxix", 40: "xl", 49: "xlix", 90: "xc", 400: "cd", 1990: "mcmxc", 2024: "mmxxiv",
	} {
		if got := romanNumeral(n); got != want {
			t.Errorf("%d is %q, want %q", n, got, want)
		}
	}
	value := map[byte]int{'i': 1, 'v': 5, 'x': 10}
	for n := 1; n < 40; n++ {
		sum, text := 0, romanNumeral(n)
		for i := range len(text) {
			if i+1 < len(text) && value[text[i]] < value[text[i+1]] {
				sum -= value[text[i]]
			} else {
				sum += value[text[i]]
			}
		}
		if sum != n || strings.Contains(text, "iiii") || strings.Contains(text, "xxxx") {
			t.Errorf("%d is %q, which reads %d", n, text, sum)
		}
	}
}

// TestFolioText: one sequence through the book, or two.
func TestFolioText(t *testing.T) {
	for _, tc := range []struct {
		n, prelims int
		roman      bool
		want       string
	}{
		{1, 8, true, "i"}, {8, 8, true, "viii"}, {9, 8, true, "1"}, {64, 8, true, "56"},
		{8, 8, false, "8"}, {9, 8, false, "9"}, {1, 0, true, "1"},
	} {
		if got := folioText(tc.n, tc.prelims, tc.roman); got != tc.want {
			t.Errorf("page %d behind %d pages of prelims, roman %v: %q, want %q", tc.n, tc.prelims, tc.roman, got, tc.want)
		}
	}
}

func rowsOfRole(p *Page, role Role) []Row {
	var rows []Row
	for _, r := range p.Rows {
		if r.Role == role {
			rows = append(rows, r)
		}
	}
	return rows
}

// TestFolioPlaces: in the middle of the text, or nowhere.
func TestFolioPlaces(t *testing.T) {
	c := poemOf(testDesign(), "Lamp", "a line of verse")
	d := c.Design()
	d.Folios = pagemodel.FolioCentre
	p := setOf(mustApply(t, c, pagemodel.SetDesign{Design: d})).Page(1)
	f := rowsOfRole(p, RoleFolio)
	if len(f) != 1 || abs(f[0].X-p.Text.X-(p.Text.X+p.Text.W-f[0].X-f[0].Width)) > 1 {
		t.Errorf("a centred folio: %+v", f)
	}
	d.Folios = pagemodel.FolioNone
	p = setOf(mustApply(t, c, pagemodel.SetDesign{Design: d})).Page(1)
	if len(rowsOfRole(p, RoleFolio)) != 0 || p.Folio != "" {
		t.Errorf("no folios: %q stands", p.Folio)
	}
}
