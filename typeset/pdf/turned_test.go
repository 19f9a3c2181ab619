package pdf

import (
	"math"
	"regexp"
	"strings"
	"testing"

	"headland/assets"
	"headland/pagemodel"
	"headland/typeset"
)

// A turned row reads as the row upright does, and its words stand a quarter
// turn round: from the foot upwards, the tops of the letters to the left
// (pdftotext, its -bbox).
func TestTurnedRowReads(t *testing.T) {
	eachFamily(t, func(t *testing.T, s *setter) {
		const words = "final affinities of the office, crème e\u0301te\u0301"
		row := s.row(t, words, 60.25, 80.5, 11)
		row.Turned = true
		path := saved(t, Document{Pages: []*typeset.Page{pageOf(row)}})
		if got := strings.Join(strings.Fields(tool(t, "pdftotext", "-raw", path, "-")), " "); got != words {
			t.Errorf("it reads %q", got)
		}
		boxes := regexp.MustCompile(`yMin="[0-9.]+" xMax="([0-9.]+)" yMax="([0-9.]+)">`).FindAllStringSubmatch(
			tool(t, "pdftotext", "-raw", "-bbox", path, "-"), -1)
		for i, x := range wordStarts(row) {
			from := bFormat.Height.Points() - x.Points()
			if got := float(t, boxes[i][2]); math.Abs(got-from) > 0.01 {
				t.Errorf("word %d begins at %v, want %v", i, got, from)
			}
			if right := float(t, boxes[i][1]); right < 80.5 || right > 80.5+11 {
				t.Errorf("word %d stands at %v right of its baseline, 80.5", i, right)
			}
		}
	})
}

// Poppler's ink of a turned row is the quarter turn of its ink of the row
// upright, on a page that is as wide as this one is high. Poppler puts glyphs on
// parts of a pixel across and not down, so edges may be out by as much: by a
// quarter of the ink of such thin letters, where a wrong turn is out by twice all.
func TestTurnedRowIsTheQuarterTurn(t *testing.T) {
	s := newSetter(t, faceNamed(t, assets.EBGaramond, false))
	upright := s.row(t, "Headland, turned", 40, 60, 24)
	lying := pageOf(upright)
	lying.Trim = pagemodel.Trim{Width: pagemodel.Pt(400), Height: pagemodel.Pt(300)}
	turned := pageOf(upright)
	turned.Trim = pagemodel.Trim{Width: pagemodel.Pt(300), Height: pagemodel.Pt(400)}
	turned.Rows[0].Turned = true
	got := drawn(t, saved(t, Document{Pages: []*typeset.Page{turned}}), 1)
	upright.Turned = false
	lying.Rows = []typeset.Row{upright}
	want := drawn(t, saved(t, Document{Pages: []*typeset.Page{lying}}), 1)
	ink, apart := 0, 0
	for y := range got.h {
		for x := range got.w {
			a, b := got.at(x, y), want.at(got.h-1-y, x)
			ink += b
			apart += max(a-b, b-a)
		}
	}
	if ink == 0 || float64(apart) > 0.25*float64(ink) {
		t.Errorf("of %d of ink, %d is not where it should be", ink, apart)
	}
}

// Turned and upright rows on a page don't disturb each other.
func TestTurnedAmongUpright(t *testing.T) {
	s := newSetter(t, faceNamed(t, assets.EBGaramond, false))
	turned := s.row(t, "turned", 60, 80, 11)
	turned.Turned = true
	page := pageOf(s.row(t, "before", 40, 60, 11), turned, s.row(t, "after", 40, 90, 11))
	out := tool(t, "pdftotext", "-bbox", saved(t, Document{Pages: []*typeset.Page{page}}), "-")
	for _, word := range []string{"before", "after"} {
		if !regexp.MustCompile(`xMin="40\.0+" [^>]*>` + word).MatchString(out) {
			t.Errorf("%q is not at 40 in\n%s", word, out)
		}
	}
}
