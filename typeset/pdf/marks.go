package pdf

import (
	"headland/pagemodel"
	"headland/typeset"
)

// Crop marks: hairlines of 0.25 pt, 5 mm long, which stay 3 mm from the trim
// or, where that is more, outside the bleed (common prepress practice; lines
// under 0.2 pt are refused by PDF/X checks).
var (
	markWidth  = pagemodel.Pt(0.25)
	markLength = pagemodel.MM(5)
	markGap    = pagemodel.MM(3)
)

// cropMarks are two hairlines at each corner of a trim, so far from it.
func cropMarks(trim typeset.Rect, gap typeset.Length) []typeset.Rect {
	right, foot, half := trim.X+trim.W, trim.Y+trim.H, markWidth/2
	var marks []typeset.Rect
	for _, y := range []typeset.Length{trim.Y, foot} {
		for _, x := range []typeset.Length{trim.X - gap - markLength, right + gap} {
			marks = append(marks, typeset.Rect{X: x, Y: y - half, W: markLength, H: markWidth})
		}
	}
	for _, x := range []typeset.Length{trim.X, right} {
		for _, y := range []typeset.Length{trim.Y - gap - markLength, foot + gap} {
			marks = append(marks, typeset.Rect{X: x - half, Y: y, W: markWidth, H: markLength})
		}
	}
	return marks
}
