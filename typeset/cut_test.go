package typeset

import (
	"strings"
	"testing"

	"headland/assets"
	"headland/pagemodel"
)

// TestCutIsShapedAlone: a piece cut out of a line that is shaped has the glyphs,
// each at its place, that it has where it is shaped by itself: at every two
// places of some lines, and at every two words of many. Source: HarfBuzz's own
// shaping, by way of go-text.
func TestCutIsShapedAlone(t *testing.T) {
	odd := []string{"1984 — “final affinities”, 12 ffl", "Thé fi\u0301n of VAT. To-night…", "שלום bread עולם", "bread עולם שלום 12", "… 7, 8. Word", "e\u0301e\u0301 ff\u200dfi"}
	for _, f := range assets.Faces() {
		face, _ := Bundled().Face(f.Family, strings.Contains(f.Style, "Bold"), strings.Contains(f.Style, "Italic"))
		for _, caps := range []caseKind{plainCase, smallCaps} {
			for _, line := range append(odd, lineList(1)...) {
				cutsAgree(t, face, caps, line, runeStarts(line))
			}
			words, cut := 0, 0
			for _, line := range lineList(30) {
				n, all := cutsAgree(t, face, caps, line, wordEdges(line))
				cut, words = cut+n, words+all
			}
			if cut*2 < words {
				t.Errorf("of %d pieces between words only %d are cut", words, cut)
			}
		}
	}
}

// cutsAgree compares the pieces between any two of the offsets; it says how many
// of them could be cut.
func cutsAgree(t *testing.T, face *Face, caps caseKind, line string, offsets []int) (cut, all int) {
	s, alone := newShaper(), newShaper()
	whole := s.shape(face, caps, line)
	for i, start := range offsets {
		for _, end := range offsets[i+1:] {
			got, ok := s.cutFrom(whole, line, start, end)
			if all++; !ok {
				continue
			}
			cut++
			want := alone.shape(face, caps, line[start:end])
			same := got.width == want.width && len(got.glyphs) == len(want.glyphs)
			for g := 0; same && g < len(want.glyphs); g++ {
				a, b := got.glyphs[g], want.glyphs[g]
				a.bound, b.bound = false, false
				same = a == b
			}
			if !same {
				t.Errorf("%q out of %q: %+v, shaped alone it is %+v", line[start:end], line, got, want)
			}
		}
	}
	return cut, all
}

func runeStarts(text string) []int {
	var all []int
	for i := range text {
		all = append(all, i)
	}
	return append(all, len(text))
}

func wordEdges(text string) []int {
	var all []int
	for _, w := range pagemodel.Words(text) {
		all = append(all, w.Start, w.End)
	}
	return all
}
