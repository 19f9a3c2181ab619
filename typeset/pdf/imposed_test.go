package pdf

import (
	"fmt"
	"math"
	"regexp"
	"strings"
	"testing"

	"headland/assets"
	"headland/pagemodel"
	"headland/typeset"
)

// folded is four pages on the two sides of a sheet, at 80 in the hundred, with a
// rule and a word of the sheet's own.
func folded(t testing.TB, s *setter) Document {
	pages := blankPages(4)
	for i, p := range pages {
		p.Rows = []typeset.Row{s.spoken(t, fmt.Sprint("page", i+1), 40, 60, 11)}
	}
	a4 := pagemodel.Trim{Width: pagemodel.Pt(842), Height: pagemodel.Pt(595)}
	area := typeset.Rect{X: pagemodel.Pt(120), Y: pagemodel.Pt(60), W: pagemodel.Pt(600), H: pagemodel.Pt(450)}
	left, right := typeset.Point{X: pagemodel.Pt(120), Y: pagemodel.Pt(60)}, typeset.Point{X: pagemodel.Pt(420), Y: pagemodel.Pt(60)}
	side := func(label string, verso, recto int) Side {
		return Side{
			Label: label, Paper: a4, Area: area, Rules: []typeset.Rect{{X: pagemodel.Pt(10), Y: pagemodel.Pt(20), W: 640, H: 64}},
			Pages: []Placed{{Page: verso, Corner: left, Percent: 80}, {Page: recto, Corner: right, Percent: 80}},
			Rows:  []typeset.Row{s.spoken(t, label, 30, 580, 6)},
		}
	}
	return Document{
		Pages: pages, Outline: []Bookmark{{Title: "Last", Page: 3}},
		Sides: []Side{side("outside", 3, 0), side("inside", 1, 2)},
	}
}

var wordPlace = regexp.MustCompile(`xMin="([0-9.]+)" yMin="([0-9.]+)" xMax="[0-9.]+" yMax="([0-9.]+)">([^<]+)<`)

// Pages lie on their sides where they were put, reduced, and the side's own words
// beside them at their full size (pdftotext -bbox); labels, outline, boxes and
// how the sheet is to be turned read back (qpdf, pdfinfo).
func TestImposedSides(t *testing.T) {
	s := newSetter(t, faceNamed(t, assets.EBGaramond, false))
	path := saved(t, folded(t, s))
	var got []string
	for _, m := range wordPlace.FindAllStringSubmatch(tool(t, "pdftotext", "-raw", "-bbox", path, "-"), -1) {
		got = append(got, fmt.Sprintf("%s %.1f", m[4], float(t, m[1])))
	}
	want := "page4 152.0, page1 452.0, outside 30.0, page2 152.0, page3 452.0, inside 30.0"
	if strings.Join(got, ", ") != want {
		t.Errorf("got  %s\nwant %s", strings.Join(got, ", "), want)
	}
	r := qpdfJSON(t, path)
	if labels(r) != "1outside 1inside" || fmt.Sprint(r.Outlines) != "[{Last 1 []}]" {
		t.Errorf("labels %s, outline %v", labels(r), r.Outlines)
	}
	b := boxes(t, path, 1)
	if b["Media"] != "0.00 0.00 842.00 595.00" || b["Trim"] != "120.00 85.00 720.00 535.00" {
		t.Errorf("boxes %v", b)
	}
	if out := tool(t, "qpdf", "--show-object=1", path); !strings.Contains(out, "/Duplex /DuplexFlipShortEdge") || !strings.Contains(out, "/SinglePage") {
		t.Errorf("the catalogue is %s", out)
	}
}

// Reduced to 80 in the hundred, a word's height is 80 in the hundred, and its
// baseline that far below the page's corner.
func TestReducedPages(t *testing.T) {
	s := newSetter(t, faceNamed(t, assets.EBGaramond, false))
	d := folded(t, s)
	small := wordPlace.FindStringSubmatch(tool(t, "pdftotext", "-bbox", "-l", "1", saved(t, d), "-"))
	d.Sides = nil
	plain := wordPlace.FindStringSubmatch(tool(t, "pdftotext", "-bbox", "-f", "4", saved(t, d), "-"))
	for i := 2; i <= 3; i++ {
		if want, got := 60+0.8*float(t, plain[i]), float(t, small[i]); math.Abs(got-want) > 0.02 {
			t.Errorf("an edge of the word at %v, want %v", got, want)
		}
	}
}

// A page on a side is cut at its own trim on all its edges.
func TestImposedPagesAreCut(t *testing.T) {
	s := newSetter(t, faceNamed(t, assets.EBGaramond, false))
	d := folded(t, s)
	long := s.spoken(t, "all the way over the fold and far beyond the hedge of the next field", -20, 200, 24)
	d.Pages[3].Rows = []typeset.Row{long}
	d.Pages[0].Rows = nil
	p := drawn(t, saved(t, d), 1)
	right := 120 + 0.8*bFormat.Width.Points()
	const line = 60 + 0.8*200
	if !p.inked(120, 140, line) || p.inked(100, 119.5, line) || !p.inked(right-20, right, line) || p.inked(right+0.5, right+60, line) {
		t.Error("the page is not cut at its trim")
	}
}

// Folios are read as the numbering they are.
func TestNumberingOf(t *testing.T) {
	for _, c := range []struct {
		folios string
		want   string
	}{
		{"1 2 3", "[{0 0 1}]"},
		{"i ii iii iv 1 2 3", "[{0 1 1} {4 0 1}]"},
		{"- - 3 4 7 x xi ix", "[{0 2 0} {2 0 3} {4 0 7} {5 1 10} {7 1 9}]"},
		{"xlix l li * 0 im", "[{0 1 49} {3 2 0}]"},
	} {
		var folios []string
		for _, f := range strings.Fields(c.folios) {
			folios = append(folios, strings.Trim(f, "-"))
		}
		if got := fmt.Sprint(NumberingOf(folios)); got != c.want {
			t.Errorf("%s: %s, want %s", c.folios, got, c.want)
		}
	}
	for n := 1; n < 4000; n++ {
		if got := romanNumber(roman(n)); got != n {
			t.Fatalf("%s is read as %d", roman(n), got)
		}
	}
}
