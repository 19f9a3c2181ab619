package pagemodel

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

// TestTrimSizes checks the presets against sizes in points worked out from
// their sources: A4 to A6 from ISO 216:2007 (595.28 x 841.89, 419.53 x 595.28,
// 297.64 x 419.53 pt), the US sizes from inches, the UK ones from printers'
// lists of trade sizes.
func TestTrimSizes(t *testing.T) {
	for name, want := range map[string][2]float64{
		"A4": {595.28, 841.89}, "A5": {419.53, 595.28}, "A6": {297.64, 419.53},
		"A-format": {314.6, 504.6}, "B-format": {365.7, 561.3}, "Demy octavo": {391.2, 612.3},
		"Royal octavo": {442.2, 663.3}, "US 5 × 8 in": {360, 576}, "US 5½ × 8½ in": {396, 612}, "US 6 × 9 in": {432, 648},
	} {
		trim, ok := TrimNamed(name)
		if !ok || math.Abs(trim.Width.Points()-want[0]) > 0.05 || math.Abs(trim.Height.Points()-want[1]) > 0.05 {
			t.Errorf("%s is %v by %v, want %v pt", name, trim.Width, trim.Height, want)
		}
	}
}

// TestISO216 holds the standard's rule: the long side halved, rounded down to
// a millimetre, is the next size's short side.
func TestISO216(t *testing.T) {
	a4, _ := TrimNamed("A4")
	a5, _ := TrimNamed("A5")
	a6, _ := TrimNamed("A6")
	for _, pair := range [][2]Trim{{a4, a5}, {a5, a6}} {
		if got, want := math.Round(pair[1].Width.Millimetres()), math.Floor(pair[0].Height.Millimetres()/2+1e-9); got != want {
			t.Errorf("half of %v mm is %v mm", pair[0].Height.Millimetres(), got)
		}
	}
}

// TestCanon holds what the canon of page construction promises on any page:
// the text has the page's shape and 4/9 of its area, two inner margins make an
// outer one; and on a 2:3 page inner, head, outer and foot stand as 2:3:4:6 and
// the text is as deep as the page is wide. The row of a 120 by 180 mm page is
// worked from the canon: 13.33, 20, 26.67, 40 mm.
func TestCanon(t *testing.T) {
	near := func(a, b Length) bool { return a-b < 10 && b-a < 10 } // ninths are cut to 1/64 pt
	rapid.Check(t, func(t *rapid.T) {
		trim := Trim{MM(rapid.Float64Range(80, 300).Draw(t, "w")), MM(rapid.Float64Range(100, 400).Draw(t, "h"))}
		m := Canon(trim)
		w, h := trim.Width-m.Inner-m.Outer, trim.Height-m.Head-m.Foot
		if m.Outer != 2*m.Inner || m.Foot != 2*m.Head || !near(3*w, 2*trim.Width) || !near(3*h, 2*trim.Height) {
			t.Fatalf("%v gives %v with text %v by %v", trim, m, w, h)
		}
	})
	m := Canon(Trim{MM(120), MM(180)})
	for i, pair := range [][2]Length{{m.Inner, MM(13.333)}, {m.Head, MM(20)}, {m.Outer, MM(26.667)}, {m.Foot, MM(40)}} {
		if !near(pair[0], pair[1]) {
			t.Errorf("margin %d of 120 x 180 mm is %v, want %v", i, pair[0], pair[1])
		}
	}
	if depth := MM(180) - m.Head - m.Foot; !near(depth, MM(120)) {
		t.Errorf("the text of a 2:3 page is %v deep, want the page's width", depth)
	}
}

// TestMarginsMirror: a recto's left margin is its inner one, a verso's is its
// outer one, and recto pages are odd (New Hart's Rules 1.1).
func TestMarginsMirror(t *testing.T) {
	m := Margins{Inner: MM(16), Outer: MM(19)}
	for page := 1; page < 6; page++ {
		left, right := m.Inner, m.Outer
		if page%2 == 0 {
			left, right = right, left
		}
		if s := SideOf(page); m.Left(s) != left || m.Right(s) != right {
			t.Errorf("page %d, a %v: left %v, right %v", page, s, m.Left(s), m.Right(s))
		}
	}
}

// TestMeasureTakesTheRemainder: whatever millimetres round to, margins and
// measure fill the trim exactly.
func TestMeasureTakesTheRemainder(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := DefaultDesign()
		d.Trim.Width = MM(rapid.Float64Range(100, 200).Draw(t, "trim"))
		d.Margins.Inner = MM(rapid.Float64Range(5, 30).Draw(t, "inner"))
		d.Margins.Outer = MM(rapid.Float64Range(5, 30).Draw(t, "outer"))
		if d.Margins.Inner+d.Measure()+d.Margins.Outer != d.Trim.Width {
			t.Fatal("the margins and the measure do not fill the trim")
		}
	})
}

// TestBindings: what is swallowed grows with the extent and with the binding's
// hold; a stapled book swallows nothing (a printer's guide); and the default
// inner margin is never under a perfect binder's stated minimum of 15 mm.
func TestBindings(t *testing.T) {
	for _, b := range []Binding{Sewn, PerfectBound, Stapled} {
		for pages := 8; pages < 700; pages += 4 {
			if Swallowed(b, pages) > Swallowed(b, pages+4) || DefaultInner(b, pages) > DefaultInner(b, pages+4) {
				t.Errorf("%v: %d pages swallow more than %d, or ask a wider margin", b, pages, pages+4)
			}
			if Swallowed(b, pages) >= DefaultInner(b, pages) {
				t.Errorf("%v, %d pages: the gutter swallows the whole margin", b, pages)
			}
		}
	}
	if Swallowed(Stapled, 64) != 0 || Swallowed(PerfectBound, 64) <= Swallowed(Sewn, 64) {
		t.Error("stapled books swallow nothing, perfect-bound ones the most")
	}
	if DefaultInner(PerfectBound, 40) < MM(15) {
		t.Error("the inner margin of a perfect-bound book is under 15 mm")
	}
}

// TestBlanks checks even workings against worked figures: 52 pages need 12, 4
// or 0 blanks to reach the next 16, 8 or 4; 58 need 6, 6, 2; 66: 14, 6, 2; 70:
// 10, 2, 2; 258 pages make 272 in sixteens (after Ritter, Oxford Guide to
// Style, 2002, p. 1: 256 and 272 are even workings, 254 is none).
func TestBlanks(t *testing.T) {
	for extent, want := range map[int][3]int{52: {12, 4, 0}, 58: {6, 6, 2}, 66: {14, 6, 2}, 70: {10, 2, 2}, 256: {0, 0, 0}, 258: {14, 6, 2}} {
		for i, signature := range []int{16, 8, 4} {
			if got := Blanks(extent, signature); got != want[i] {
				t.Errorf("%d pages in signatures of %d need %d blanks, want %d", extent, signature, got, want[i])
			}
		}
	}
}

func TestSpreads(t *testing.T) {
	for page, want := range map[int]Spread{1: {0, 1}, 2: {2, 3}, 3: {2, 3}, 8: {8, 9}, 10: {10, 0}} {
		if got := SpreadOf(page, 10); got != want {
			t.Errorf("page %d of 10 stands in %v, want %v", page, got, want)
		}
	}
	if Leaf(1) != 1 || Leaf(2) != 1 || Leaf(3) != 2 {
		t.Error("pages 1 and 2 are leaf 1, page 3 begins leaf 2")
	}
}

func TestLengths(t *testing.T) {
	for s, want := range map[string]Length{"4.5pt": 288, "1in": 4608, "25.4 mm": 4608, "2.54cm": 4608, "-1pt": -64} {
		if got, err := ParseLength(s); err != nil || got != want {
			t.Errorf("%q is %d/64 pt (%v), want %d", s, got, err, want)
		}
	}
	for _, s := range []string{"", "12", "pt", "1e9mm", "NaNpt", "3 furlongs"} {
		if got, err := ParseLength(s); err == nil {
			t.Errorf("%q was read as %v", s, got)
		}
	}
	if got := Length(291).String(); got != "4.546875pt" {
		t.Errorf("291/64 pt reads %q", got)
	}
}

// TestDesignCheck: each way to make a design impossible is refused, and the
// default is not.
func TestDesignCheck(t *testing.T) {
	if err := DefaultDesign().Check(); err != nil {
		t.Fatal(err)
	}
	for name, spoil := range map[string]func(*Design){
		"size": func(d *Design) { d.Size = 0 }, "leading": func(d *Design) { d.Leading = 0 },
		"trim": func(d *Design) { d.Trim.Width = MM(10) }, "margin": func(d *Design) { d.Margins.Head = -1 },
		"measure": func(d *Design) { d.Margins.Outer = MM(100) }, "gap": func(d *Design) { d.StanzaGap = 0 },
		"sink": func(d *Design) { d.PoemRow = d.Rows() }, "run-out": func(d *Design) { d.RunOut = MM(50) },
	} {
		d := DefaultDesign()
		if spoil(&d); d.Check() == nil {
			t.Errorf("a design with a bad %s was let through", name)
		}
	}
}
