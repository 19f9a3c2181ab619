package pdf

import (
	"fmt"
	"image/color"
	"strconv"

	"headland/pagemodel"
	"headland/typeset"
	"headland/typeset/marks/overlay"
)

// cornerLength is how long the hairlines are that show the corners of a page on
// proof paper. Whole edges would run through the marks beside the text.
var cornerLength = pagemodel.MM(8)

// corners are two hairlines at each corner of a trim, along its edges and outside
// it, so that nothing is added to the page.
func corners(trim typeset.Rect) []typeset.Rect {
	w, long := markWidth, cornerLength
	right, foot := trim.X+trim.W, trim.Y+trim.H
	var lines []typeset.Rect
	for _, y := range []typeset.Length{trim.Y - w, foot} {
		for _, x := range []typeset.Length{trim.X - w, right + w - long} {
			lines = append(lines, typeset.Rect{X: x, Y: y, W: long, H: w})
		}
	}
	for _, x := range []typeset.Length{trim.X - w, right} {
		for _, y := range []typeset.Length{trim.Y - w, foot + w - long} {
			lines = append(lines, typeset.Rect{X: x, Y: y, W: w, H: long})
		}
	}
	return lines
}

// checkOverlays sees to it that what lies over pages lies over pages that there
// are.
func checkOverlays(d *Document) error {
	for page := range d.Overlays {
		if page < 0 || page >= len(d.Pages) {
			return fmt.Errorf("marks lie over page %d of %d; lay them over pages of the document", page+1, len(d.Pages))
		}
	}
	return nil
}

// overlay draws what lies over a page of that height, as large as the page and
// wherever on the sheet it reaches.
func (c *content) overlay(s *side, at *placed, o *overlay.Overlay, height typeset.Length) error {
	if o.Empty() {
		return nil
	}
	c.left, c.head = at.Corner.X, s.paper.Height-at.Corner.Y
	c.b.WriteString("q 1 J 1 j\n")
	if at.Percent != full {
		c.reduce(at.Percent)
	}
	for i := range o.Strokes {
		c.stroke(&o.Strokes[i])
	}
	for i := range o.Rows {
		if err := c.rowsIn(rgb(overlay.Colour(o.Whose[i]), "rg"), o.Rows[i:i+1], height); err != nil {
			return err
		}
	}
	c.b.WriteString("Q\n")
	return nil
}

// stroke draws a line along a path (ISO 8.5.2, 8.5.3.2).
func (c *content) stroke(s *overlay.Stroke) {
	fmt.Fprintf(&c.b, "%s%s w\n", rgb(overlay.Colour(s.Whose), "RG"), number(s.Width))
	for _, g := range s.Path {
		switch g.Op {
		case overlay.Move:
			c.point(g.To, "m")
		case overlay.Line:
			c.point(g.To, "l")
		case overlay.Cubic:
			c.point(g.Leave, "")
			c.point(g.Arrive, "")
			c.point(g.To, "c")
		}
	}
	c.b.WriteString("S\n")
}

// point writes a place of the page, and the operator that it is for, if any.
func (c *content) point(at typeset.Point, operator string) {
	fmt.Fprintf(&c.b, "%s %s %s\n", number(c.left+at.X), number(c.head-at.Y), operator)
}

// rgb is a colour as DeviceRGB, by the operator that takes it.
func rgb(c color.RGBA, operator string) string {
	share := func(v uint8) string { return strconv.FormatFloat(float64(v)/255, 'f', 3, 64) }
	return fmt.Sprintf("%s %s %s %s\n", share(c.R), share(c.G), share(c.B), operator)
}
