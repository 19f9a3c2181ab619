package pagemodel

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

// TestEvenWorkings: 256, 272 and 288 pages are even workings of sixteen, 254 and
// 286 are none, and 258 pages make 272 with 14 blanks (after R. Ritter, The Oxford
// Guide to Style, 2002, p. 1).
func TestEvenWorkings(t *testing.T) {
	for extent, want := range map[int][2]int{256: {16, 0}, 272: {17, 0}, 288: {18, 0}, 254: {16, 2}, 286: {18, 2}, 258: {17, 14}} {
		if got := [2]int{Signatures(extent, 16), Blanks(extent, 16)}; got != want {
			t.Errorf("%d pages take %d sixteens with %d blanks, want %v", extent, got[0], got[1], want)
		}
	}
	if Signatures(0, 16) != 0 || Signatures(64, 0) != 0 {
		t.Error("a book of no pages, or of no signature, is folded into something")
	}
}

func TestSignaturesHoldEveryPage(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		extent := rapid.IntRange(0, 2000).Draw(t, "extent")
		for _, size := range FoldedSizes {
			n := Signatures(extent, size)
			if n*size != extent+Blanks(extent, size) || n*size-extent >= size {
				t.Fatalf("%d signatures of %d for %d pages", n, size, extent)
			}
		}
	})
}

// TestSpineUK checks the formula against figures worked by hand from it: 64, 96,
// 48, 128 and 80 pages.
func TestSpineUK(t *testing.T) {
	for _, tc := range []struct {
		pages int
		paper Paper
		want  float64
	}{
		{64, Paper{80, 18}, 4.608}, {96, Paper{80, 18}, 6.912}, {48, Paper{100, 13}, 3.120},
		{128, Paper{90, 13}, 7.488}, {80, Paper{80, 16}, 5.120}, {64, Paper{}, 4.608}, {0, Paper{80, 18}, 0},
	} {
		if got := SpineUK(tc.pages, tc.paper).Millimetres(); got != tc.want {
			t.Errorf("%d pages of %+v are %g mm, want %g", tc.pages, tc.paper, got, tc.want)
		}
	}
}

// TestSpineByLeaves: a printer's table for 80 gsm paper, of which ten leaves make a
// millimetre, gives 5, 10 and 20.5 mm for 50, 100 and 200 leaves; it goes by halves.
func TestSpineByLeaves(t *testing.T) {
	tenth := Paper{100, 10} // a leaf of 0.1 mm
	for leaves, want := range map[int]float64{50: 5, 100: 10, 200: 20.5} {
		if got := SpineUK(2*leaves, tenth).Millimetres(); math.Abs(got-want) > 0.5 {
			t.Errorf("%d leaves are %g mm thick, want %g", leaves, got, want)
		}
	}
}

// TestSpineGlued: 200 pages of 138 micrometres a leaf are 13.8 + 0.5 mm, rounded up
// to 14.5 (a cover maker's rule; the page that gives it says 15 in its example, which
// its own rule does not).
func TestSpineGlued(t *testing.T) {
	bulky := Paper{138, 10} // a leaf of 138 micrometres
	if bulky.Leaf() != 138 {
		t.Fatalf("the leaf is %d micrometres thick", bulky.Leaf())
	}
	for pages, want := range map[int]float64{200: 14.5, 0: 0.5, 1000: 69.5} {
		if got := SpineGlued(pages, bulky).Millimetres(); got != want {
			t.Errorf("%d pages glued are %g mm, want %g", pages, got, want)
		}
	}
}

// TestSpineUS: 200 pages at 400 an inch are 0.5 in, 64 are 0.16 in (a US printer's
// formula). On either side of the ocean one book is as thick, but for the whole
// pages of the quoted bulk.
func TestSpineUS(t *testing.T) {
	for pages, want := range map[int]float64{200: 0.5, 64: 0.16} {
		if got := SpineUS(pages, 400); got != want {
			t.Errorf("%d pages at 400 an inch are %g in, want %g", pages, got, want)
		}
	}
	if SpineUS(64, 0) != 0 || PagesPerInch(Paper{80, 0}) != 0 {
		t.Error("paper of no thickness makes a spine")
	}
	rapid.Check(t, func(t *rapid.T) {
		p := Paper{rapid.IntRange(40, 200).Draw(t, "gsm"), rapid.IntRange(8, 25).Draw(t, "volume")}
		pages := rapid.IntRange(1, 800).Draw(t, "pages")
		uk, us := SpineUK(pages, p).Millimetres(), SpineUS(pages, PagesPerInch(p))*25.4
		if math.Abs(uk-us) > 0.001+uk/float64(2*PagesPerInch(p)-1) {
			t.Fatalf("%d pages of %+v are %g mm here and %g mm there", pages, p, uk, us)
		}
	})
}

// TestCreep checks figures worked by hand from the geometry of nested sheets: pages,
// a leaf in micrometres, the creep of a square and of a round spine in millimetres.
func TestCreep(t *testing.T) {
	for _, tc := range []struct {
		pages, leaf   int
		square, round float64
	}{
		{16, 100, 0.30, 0.47}, {32, 100, 0.70, 1.10}, {48, 120, 1.32, 2.07}, {64, 120, 1.80, 2.83}, {4, 100, 0, 0}, {0, 100, 0, 0}, {5, 100, 0.10, 0.16},
	} {
		square, round := Creep(tc.pages, Paper{tc.leaf, 10})
		if square.Millimetres() != tc.square || math.Abs(round.Millimetres()-tc.round) > 0.005 {
			t.Errorf("%d pages of %d micrometres creep %g mm square and %g mm round, want %g and %g",
				tc.pages, tc.leaf, square.Millimetres(), round.Millimetres(), tc.square, tc.round)
		}
	}
}

// TestInnerMargins: a digital printer's table of inner margins for perfect-bound
// books, by page count; under 61 pages its 13 mm are raised to the 15 mm that other
// printers ask of every perfect-bound book. None is under the least margins of a
// print-on-demand house: 9.6, 12.7 and 15.9 mm to 150, 300 and 500 pages.
func TestInnerMargins(t *testing.T) {
	for pages, want := range map[int]float64{40: 15, 61: 16, 150: 16, 151: 25, 400: 25, 401: 29, 600: 29, 601: 32, 900: 32} {
		if got := DefaultInner(PerfectBound, pages); got != MM(want) {
			t.Errorf("%d pages perfect bound ask %v, want %g mm", pages, got, want)
		}
	}
	for pages, least := range map[int]float64{24: 9.6, 150: 9.6, 300: 12.7, 500: 15.9} {
		for _, b := range []Binding{Sewn, PerfectBound} {
			if got := DefaultInner(b, pages); got < MM(least) {
				t.Errorf("%d pages %v have an inner margin of %v, under %g mm", pages, b, got, least)
			}
		}
	}
}

// TestCanonTable checks the canon of page construction on the trade's trims, worked
// from its ninths: inner, head, outer and foot margins in millimetres.
func TestCanonTable(t *testing.T) {
	for name, want := range map[string][4]float64{
		"A5": {16.44, 23.33, 32.89, 46.67}, "A6": {11.67, 16.44, 23.33, 32.89}, "B-format": {14.33, 22, 28.67, 44},
		"Demy octavo": {15.33, 24, 30.67, 48}, "Royal octavo": {17.33, 26, 34.67, 52}, "US 6 × 9 in": {16.93, 25.40, 33.87, 50.80},
	} {
		trim, ok := TrimNamed(name)
		if !ok {
			t.Fatalf("no trim is called %s", name)
		}
		m := Canon(trim)
		for i, got := range [4]Length{m.Inner, m.Head, m.Outer, m.Foot} {
			if math.Abs(got.Millimetres()-want[i]) > 0.02 {
				t.Errorf("margin %d of %s is %.2f mm, want %.2f", i, name, got.Millimetres(), want[i])
			}
		}
	}
}
