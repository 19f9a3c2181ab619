package marks

import (
	"testing"

	"headland/pagemodel"
	"headland/typeset"
)

// Blocks stand level with their rows where they can, below what is in their way,
// and, at the foot of the paper, as far above as they must.
func TestColumnSettles(t *testing.T) {
	pt := pagemodel.Pt
	for name, test := range map[string]struct{ rows, want []float64 }{
		"free":       {[]float64{20, 40, 60}, []float64{20, 40, 60}},
		"crowded":    {[]float64{20, 22, 60}, []float64{20, 30, 60}},
		"pushed on":  {[]float64{20, 22, 24, 38}, []float64{20, 30, 40, 50}},
		"foot":       {[]float64{20, 95, 97}, []float64{20, 88, 98}},
		"foot, full": {[]float64{75, 95, 96, 97}, []float64{68, 78, 88, 98}},
	} {
		c := &column{head: 0, end: pt(100)}
		var got []typeset.Length
		for _, row := range test.rows {
			c.add(block{row: pt(row), above: pt(8), below: pt(2), draw: func(at typeset.Length) { got = append(got, at) }})
		}
		c.settle()
		for i, want := range test.want {
			if got[i] != pt(want) {
				t.Errorf("%s: block %d stands at %v, want %v", name, i, got[i], want)
			}
		}
	}
}
