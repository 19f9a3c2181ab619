package order

import (
	"fmt"
	"math/rand/v2"
	"slices"
	"testing"

	"headland/pagemodel"
)

// The order of 4, 8 and 16 pages, and of 16 in two sections, worked out by hand
// from the formula (common practice, no source; for 4 pages a printer's help
// page has the same).
func TestImposeWorkedOrders(t *testing.T) {
	for _, c := range []struct {
		pages, section int
		want           string
	}{
		{4, 0, "[{1 1 {4 1} {2 3}}]"},
		{8, 0, "[{1 1 {8 1} {2 7}} {1 2 {6 3} {4 5}}]"},
		{16, 0, "[{1 1 {16 1} {2 15}} {1 2 {14 3} {4 13}} {1 3 {12 5} {6 11}} {1 4 {10 7} {8 9}}]"},
		{16, 16, "[{1 1 {16 1} {2 15}} {1 2 {14 3} {4 13}} {1 3 {12 5} {6 11}} {1 4 {10 7} {8 9}}]"},
		{16, 8, "[{1 1 {8 1} {2 7}} {1 2 {6 3} {4 5}} {2 1 {16 9} {10 15}} {2 2 {14 11} {12 13}}]"},
		{0, 8, "[]"},
	} {
		if got := fmt.Sprint(Impose(c.pages, c.section)); got != c.want {
			t.Errorf("%d pages in sections of %d:\n got %s\nwant %s", c.pages, c.section, got, c.want)
		}
	}
}

// What a folded book must have, for many extents: every page once, versos left
// and rectos right, a sheet for four pages, one sum in a section, and no more
// blanks than the last sheet needs.
func TestImposeInvariants(t *testing.T) {
	for pages := 1; pages <= 130; pages++ {
		for _, section := range []int{0, 4, 8, 16, 32} {
			checkSheets(t, Impose(pages, section), pages, section)
		}
	}
}

func checkSheets(t *testing.T, sheets []Sheet, pages, section int) {
	t.Helper()
	var all []int
	sums := map[int]int{}
	for _, s := range sheets {
		for _, side := range []Side{s.Front, s.Back} {
			if side.Left%2 != 0 || side.Right%2 != 1 {
				t.Errorf("%d in %d: a verso stands left and a recto right, and %v is on a side", pages, section, side)
			}
			if sum, ok := sums[s.Section]; ok && sum != side.Left+side.Right {
				t.Errorf("%d in %d: section %d has sides of sum %d and %d", pages, section, s.Section, sum, side.Left+side.Right)
			}
			sums[s.Section] = side.Left + side.Right
			all = append(all, side.Left, side.Right)
		}
		if s.Back.Left != s.Front.Right+1 || s.Back.Right != s.Front.Left-1 {
			t.Errorf("%d in %d: turned over, %v is not a leaf's back on its front", pages, section, s)
		}
	}
	slices.Sort(all)
	for i, page := range all {
		if page != i+1 {
			t.Fatalf("%d in %d: the pages are %v", pages, section, all)
		}
	}
	if want := (pages + 3) / 4; len(sheets) != want {
		t.Errorf("%d in %d: %d sheets, want %d", pages, section, len(sheets), want)
	}
}

// Sheets folded one in another, section upon section, and leafed through give
// the pages in sequence: done by hand, as a binder would, not by the formula.
func TestImposeFoldsIntoTheBook(t *testing.T) {
	dice := rand.New(rand.NewPCG(5, 8))
	for range 300 {
		pages, section := 1+dice.IntN(400), []int{0, 4, 8, 16, 32}[dice.IntN(5)]
		for i, page := range leafed(Impose(pages, section)) {
			if page != i+1 {
				t.Fatalf("%d pages in sections of %d: page %d of the folded book is %d", pages, section, i+1, page)
			}
		}
	}
}

// leafed are the page numbers as one meets them in the folded book: the right
// halves of a section's sheets from the outermost in, each front before its
// back, and then the left halves out again.
func leafed(sheets []Sheet) []int {
	var book []int
	for i := 0; i < len(sheets); {
		from := i
		for ; i < len(sheets) && sheets[i].Section == sheets[from].Section; i++ {
			book = append(book, sheets[i].Front.Right, sheets[i].Back.Left)
		}
		for k := i - 1; k >= from; k-- {
			book = append(book, sheets[k].Back.Right, sheets[k].Front.Left)
		}
	}
	return book
}

// The only spread on one sheet is the middle of a section: 8-9 of 16; and the
// sheets say the same.
func TestOneSheetSpreads(t *testing.T) {
	for _, c := range []struct {
		pages, section int
		want           string
	}{
		{16, 0, "[{8 9}]"},
		{16, 8, "[{4 5} {12 13}]"},
		{24, 16, "[{8 9} {20 21}]"},
		{3, 0, "[{2 3}]"},
		{17, 16, "[{8 9}]"}, // 18 and 19 are blanks
	} {
		if got := fmt.Sprint(OneSheetSpreads(c.pages, c.section)); got != c.want {
			t.Errorf("%d pages in sections of %d: %s, want %s", c.pages, c.section, got, c.want)
		}
	}
	for pages := 1; pages <= 100; pages++ {
		checkOneSheet(t, pages, 16)
	}
}

func checkOneSheet(t *testing.T, pages, section int) {
	t.Helper()
	var want []pagemodel.Spread
	for _, s := range Impose(pages, section) {
		if b := s.Back; b.Left+1 == b.Right && b.Right <= pages {
			want = append(want, pagemodel.Spread{Verso: b.Left, Recto: b.Right})
		}
	}
	if got := OneSheetSpreads(pages, section); !slices.Equal(got, want) {
		t.Errorf("%d pages: %v, the sheets say %v", pages, got, want)
	}
}
