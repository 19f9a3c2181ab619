package pdf

import (
	"math"
	"strings"
	"testing"

	"headland/assets"
	"headland/pagemodel"
	"headland/typeset"
)

// spoken is a sample row with its width, as set rows have.
func (s *setter) spoken(t testing.TB, text string, x, y, size float64) typeset.Row {
	row := s.row(t, text, x, y, size)
	last := row.Runs[0].Glyphs[len(row.Runs[0].Glyphs)-1]
	row.Width = last.X + last.Advance
	row.Poem, row.Line, row.End = 1, 1, len(text)
	return row
}

// A5 with 3 mm of bleed: the BleedBox is 154 by 216 mm, 436.54 by 612.28 pt, and
// the trim stands 8.504 pt inside it (arithmetic from ISO 216). Here lengths are
// whole 1/64 pt, so each may be out by that.
func TestBleedOfA5(t *testing.T) {
	trim, _ := pagemodel.TrimNamed("A5")
	page := &typeset.Page{Number: 1, Trim: trim}
	for _, marks := range []bool{false, true} {
		got := boxes(t, saved(t, Document{Pages: []*typeset.Page{page}, Sheet: Sheet{Bleed: UsualBleed, Marks: marks}}), 1)
		var bleed, trim [4]float64
		for i, s := range strings.Fields(got["Bleed"]) {
			bleed[i] = float(t, s)
		}
		for i, s := range strings.Fields(got["Trim"]) {
			trim[i] = float(t, s)
		}
		for what, c := range map[string][2]float64{
			"bleed width": {bleed[2] - bleed[0], 436.54}, "bleed height": {bleed[3] - bleed[1], 612.28},
			"left": {trim[0] - bleed[0], 8.504}, "foot": {trim[1] - bleed[1], 8.504},
			"right": {bleed[2] - trim[2], 8.504}, "head": {bleed[3] - trim[3], 8.504},
		} {
			if math.Abs(c[0]-c[1]) > 3.0/64 {
				t.Errorf("marks %v: %s is %.3f, want %.3f", marks, what, c[0], c[1])
			}
		}
	}
}

// What runs over head, foot or fore-edge bleeds; what runs over the spine does
// not, nor what stops short of an edge.
func TestBleeds(t *testing.T) {
	s := newSetter(t, faceNamed(t, assets.EBGaramond, false))
	w, h := bFormat.Width.Points(), bFormat.Height.Points()
	const size = 12
	width := s.spoken(t, "fields", 0, 0, size).Width.Points()
	turned := func(x, y float64) typeset.Row {
		row := s.spoken(t, "fields", x, y, size)
		row.Turned = true
		return row
	}
	for _, c := range []struct {
		name         string
		row          typeset.Row
		recto, verso bool
	}{
		{"inside", s.spoken(t, "fields", 40, 60, size), false, false},
		{"touching all", s.spoken(t, "fields", w-width, 9, size), false, false},
		{"right", s.spoken(t, "fields", w-width+1, 60, size), true, false},
		{"left", s.spoken(t, "fields", -1, 60, size), false, true},
		{"head", s.spoken(t, "fields", 40, 8, size), true, true},
		{"foot", s.spoken(t, "fields", 40, h-2, size), true, true},
		{"turned inside", turned(0, 9), false, false},
		{"turned over the foot", turned(-1, 60), true, true},
		{"turned over the head", turned(h-width+1, 60), true, true},
		{"turned over the left", turned(40, 8), false, true},
		{"turned over the right", turned(40, w-2), true, false},
	} {
		for side, want := range map[pagemodel.Side]bool{pagemodel.Recto: c.recto, pagemodel.Verso: c.verso} {
			page := &typeset.Page{Trim: bFormat, Side: side, Rows: []typeset.Row{c.row}}
			if got := Bleeds([]*typeset.Page{pageOf(), page}); got != want {
				t.Errorf("%s, on a %v: bleeds %v, want %v", c.name, side, got, want)
			}
		}
	}
}

// across is a spread with one line over both its pages, which bleeds at either
// fore-edge.
func across(t *testing.T, s *setter) []*typeset.Page {
	pages := blankPages(3)
	line := s.spoken(t, strings.Repeat("—", 12)+" the white field "+strings.Repeat("—", 24), -12, 100, 24)
	pages[1].Rows = []typeset.Row{line}
	line.X -= bFormat.Width
	pages[2].Rows = []typeset.Row{line}
	return pages
}

// Single pages show a line across the spread up to the end of the bleed at the
// fore-edge, and no farther than the trim at the spine (Poppler's pixels).
func TestSinglePagesCutAtTheSpine(t *testing.T) {
	s := newSetter(t, faceNamed(t, assets.EBGaramond, false))
	sheet := Sheet{Bleed: UsualBleed, Marks: true}
	path := saved(t, Document{Pages: across(t, s), Sheet: sheet})
	on := sheet.around(bFormat)
	left, right := on.trim.X.Points(), (on.trim.X + on.trim.W).Points()
	bleed := UsualBleed.Points()
	line := on.trim.Y.Points() + 100
	verso, recto := drawn(t, path, 2), drawn(t, path, 3)
	if !verso.inked(left-bleed, left, line) || verso.inked(left-bleed-2, left-bleed-0.5, line) {
		t.Error("the verso's bleed is not inked to its end and no farther")
	}
	if !verso.inked(right-20, right, line) || verso.inked(right+0.5, right+20, line) {
		t.Error("the verso is not cut at the spine")
	}
	if !recto.inked(left, left+20, line) || recto.inked(left-20, left-0.5, line) {
		t.Error("the recto is not cut at the spine")
	}
	if !recto.inked(right, right+bleed, line) || recto.inked(right+bleed+0.5, right+bleed+2, line) {
		t.Error("the recto's bleed is not inked to its end and no farther")
	}
}

// In a spread the same line is drawn once, and is whole: Poppler draws it as it
// draws it on one wide page, and reads it once.
func TestLineAcrossTheSpread(t *testing.T) {
	s := newSetter(t, faceNamed(t, assets.EBGaramond, false))
	pages := across(t, s)
	path := saved(t, Document{Pages: pages, Sheet: Sheet{Spreads: true}})
	wide := *pages[1]
	wide.Trim.Width *= 2
	whole := saved(t, Document{Pages: []*typeset.Page{&wide}})
	if got := strings.Join(strings.Fields(tool(t, "pdftotext", path, "-")), " "); strings.Count(got, "white field") != 1 {
		t.Errorf("it reads %q", got)
	}
	got, want := drawn(t, path, 2), drawn(t, whole, 1)
	if got.w != want.w || string(got.pix) != string(want.pix) {
		t.Error("the spread is not drawn as one wide page is")
	}
}

// A recto's own line that begins left of the spine is no part of the verso's.
func TestOwnLineAtTheSpineStays(t *testing.T) {
	s := newSetter(t, faceNamed(t, assets.EBGaramond, false))
	pages := across(t, s)
	pages[2].Rows = append(pages[2].Rows, s.spoken(t, "hanging", -3, 140, 11))
	path := saved(t, Document{Pages: pages, Sheet: Sheet{Spreads: true}})
	if got := tool(t, "pdftotext", path, "-"); !strings.Contains(got, "hanging") {
		t.Errorf("it reads %q", got)
	}
}
