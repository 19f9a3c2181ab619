package pdf

import (
	"bytes"
	"fmt"
	"strconv"

	"headland/typeset"
)

// A content is the drawing of one side of a sheet. What is drawn has its top
// left corner at left, head on the sheet, y up; that is where the flip from the
// page's y-down is made, and nowhere else.
type content struct {
	b          bytes.Buffer
	faces      *faces
	left, head typeset.Length
}

// black is DeviceGray 0, which prints on the black plate only. It is what a
// page starts with anyway, but a printer's check looks for it.
const black = "0 g\n"

// side draws all that is on one side of a sheet.
func (c *content) side(d *Document, s *side) error {
	for i := range s.placed {
		at := &s.placed[i]
		if err := c.place(s, at, d.Pages[at.Page].Trim.Height); err != nil {
			return fmt.Errorf("page %d: %w", at.Page+1, err)
		}
	}
	for i := range s.placed {
		at := &s.placed[i]
		over := d.Overlays[at.Page]
		if err := c.overlay(s, at, &over, d.Pages[at.Page].Trim.Height); err != nil {
			return fmt.Errorf("the marks on page %d: %w", at.Page+1, err)
		}
	}
	c.left, c.head = 0, s.paper.Height
	if len(s.rules) > 0 {
		c.fill(s.rules)
	}
	return c.rows(s.rows, s.paper.Height)
}

// place draws a page of that height where it lies on the side. It is cut, and
// the state of the drawing kept from what comes after, only where it must be.
func (c *content) place(s *side, at *placed, height typeset.Length) error {
	c.left, c.head = at.Corner.X, s.paper.Height-at.Corner.Y
	seen := typeset.Rect{X: at.clip.X - at.Corner.X, Y: at.clip.Y - at.Corner.Y, W: at.clip.W, H: at.clip.H}
	if at.Percent == full && within(at.rows, height, seen) {
		return c.rows(at.rows, height)
	}
	clip := at.clip
	fmt.Fprintf(&c.b, "q\n%s %s %s %s re W n\n", number(clip.X), number(s.paper.Height-clip.Y-clip.H), number(clip.W), number(clip.H))
	if at.Percent != full {
		c.reduce(at.Percent)
	}
	err := c.rows(at.rows, height)
	c.b.WriteString("Q\n")
	return err
}

// reduce makes what is drawn from here on so large, in hundredths, about the
// top left corner of the page.
func (c *content) reduce(percent int) {
	size := strconv.FormatFloat(float64(percent)/full, 'f', -1, 64)
	fmt.Fprintf(&c.b, "%s 0 0 %s %s %s cm\n", size, size, number(c.left), number(c.head))
	c.left, c.head = 0, 0
}

// rows draws rows of a page of that height at c.left, c.head.
func (c *content) rows(rows []typeset.Row, height typeset.Length) error {
	return c.rowsIn(black, rows, height)
}

// rowsIn draws rows in the colour that an operator sets.
func (c *content) rowsIn(ink string, rows []typeset.Row, height typeset.Length) error {
	if len(rows) == 0 {
		return nil
	}
	c.b.WriteString(ink + "BT\n")
	t := text{content: c, foot: c.head - height}
	for i := range rows {
		for k := range rows[i].Runs {
			if err := t.run(&rows[i], &rows[i].Runs[k]); err != nil {
				return err
			}
		}
	}
	c.b.WriteString("ET\n")
	return nil
}

// fill fills rectangles.
func (c *content) fill(areas []typeset.Rect) {
	c.b.WriteString(black)
	for _, r := range areas {
		fmt.Fprintf(&c.b, "%s %s %s %s re f\n", number(c.left+r.X), number(c.head-r.Y-r.H), number(r.W), number(r.H))
	}
}
