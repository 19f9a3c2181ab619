package overlay

import (
	"image/color"
	"math"
	"testing"

	"headland/pagemodel"
)

// luminance is the relative luminance of a colour (WCAG 2.1, definitions).
func luminance(c color.RGBA) float64 {
	linear := func(v uint8) float64 {
		s := float64(v) / 255
		if s <= 0.03928 {
			return s / 12.92
		}
		return math.Pow((s+0.055)/1.055, 2.4)
	}
	return 0.2126*linear(c.R) + 0.7152*linear(c.G) + 0.0722*linear(c.B)
}

// Every ink can be read on white paper (WCAG 2.1, 1.4.3: 4.5:1; ours are 5.7:1 or
// more), and no two are alike.
func TestInksAreLegibleAndDiffer(t *testing.T) {
	seen := map[color.RGBA]pagemodel.Whose{}
	for _, w := range pagemodel.WhoseLetters {
		c := Colour(w)
		if contrast := 1.05 / (luminance(c) + 0.05); contrast < 5.7 {
			t.Errorf("%s has a contrast of %.2f:1", w, contrast)
		}
		if other, ok := seen[c]; ok {
			t.Errorf("%s and %s have one ink", w, other)
		}
		seen[c] = w
	}
	if Colour("") != Colour(pagemodel.Authors) {
		t.Error("what is nobody's is not the author's")
	}
}
