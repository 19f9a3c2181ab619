// Package overlay is the form in which ink lies over a finished page: strokes
// along lines and curves, and words set beside them, each in the colour of whose
// alteration it is.
//
// It draws nothing: raster and pdf do. What marks there are, and where, is
// headland/typeset/marks'.
package overlay

import (
	"image/color"

	"headland/pagemodel"
	"headland/typeset"
)

// An Op is what a segment does.
type Op uint8

// The segments of a path. A path begins with a Move.
const (
	Move  Op = iota // begins at To
	Line            // runs straight to To
	Cubic           // runs to To as a Bézier curve with the two control points
)

// A Segment is a piece of a path. Places count from the top left corner of the
// trim, y down; they may lie outside it.
type Segment struct {
	Op            Op
	Leave, Arrive typeset.Point // the control points of a Cubic, else zero
	To            typeset.Point
}

// A Stroke is a line of one width along a path, with round ends and joins.
type Stroke struct {
	Path  []Segment
	Width typeset.Length
	Whose pagemodel.Whose
}

// An Overlay is all that lies over one page. Nothing in it may be changed once
// it is made.
type Overlay struct {
	Strokes []Stroke

	// Rows are words set in real faces. A row that lies on its side counts as
	// rows of a page do: see [typeset.Row].
	Rows []typeset.Row

	// Whose says whose each of the rows is, one for one.
	Whose []pagemodel.Whose
}

// Empty says that nothing lies over the page.
func (o *Overlay) Empty() bool { return len(o.Strokes) == 0 && len(o.Rows) == 0 }

// colours are our own choice: four inks that differ in hue and are all dark
// enough to be read on white, with a contrast of 5.7:1 or more (WCAG 2.1, 1.4.3
// asks for 4.5:1). That printers' errors are red and others' alterations blue
// follows published custom; the letters beside every mark say the same.
var colours = map[pagemodel.Whose]color.RGBA{
	pagemodel.Printers:  {R: 176, G: 42, B: 24, A: 255},
	pagemodel.Authors:   {R: 23, G: 72, B: 148, A: 255},
	pagemodel.Editors:   {R: 0, G: 104, B: 66, A: 255},
	pagemodel.Designers: {R: 112, G: 42, B: 132, A: 255},
}

// Colour is the ink in which somebody's alterations are marked. What is
// nobody's is taken for the author's.
func Colour(w pagemodel.Whose) color.RGBA {
	if c, ok := colours[w]; ok {
		return c
	}
	return colours[pagemodel.Authors]
}
