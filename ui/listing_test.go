package ui

import (
	"image/color"
	"testing"

	"fyne.io/fyne/v2"
)

// TestListShowsThatItGoesOn: a list that is longer than what is seen has a line at
// its right edge, in its place; one that is seen whole has none.
func TestListShowsThatItGoesOn(t *testing.T) {
	tb := setTable(t, verses("one loaf\ntwo loaves"))
	for _, tc := range []struct{ rows, top int }{{4, 0}, {10, 0}, {10, 5}} {
		l := newListing(tb.d.k, tb.d.light.palette(), fyne.NewSize(200, 4*rowDepth), func(int) {})
		l.Resize(fyne.NewSize(200, 4*rowDepth))
		l.set(make([]listRow, tc.rows), -1)
		l.top = tc.top
		img := l.draw(200, 4*rowDepth)
		var inked []int
		for y := range 4 * rowDepth {
			if img.At(199, y) == color.Color(l.colors.panelAside) {
				inked = append(inked, y)
			}
		}
		n := 4 * rowDepth
		from, to := n*tc.top/tc.rows, n*(tc.top+4)/tc.rows
		if tc.rows <= 4 {
			from, to = 0, 0
		}
		if len(inked) != to-from || len(inked) > 0 && inked[0] != from {
			t.Errorf("%d rows from the %dth: the line is %d long, want %d from %d", tc.rows, tc.top+1, len(inked), to-from, from)
		}
	}
}
