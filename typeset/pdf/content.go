package pdf

import (
	"bytes"
	"fmt"

	"headland/typeset"
)

// A content is the drawing of one sheet. Its page's top left corner stands at
// left, head on the sheet, y up; that is where the flip from the page's y-down
// is made, and nowhere else.
type content struct {
	b          bytes.Buffer
	faces      *faces
	left, head typeset.Length
}

// black is DeviceGray 0, which prints on the black plate only. It is what a
// page starts with anyway, but a printer's check looks for it.
const black = "0 g\n"

// page draws a page at c.left, c.head.
func (c *content) page(p *typeset.Page) error {
	if len(p.Rows) == 0 {
		return nil
	}
	c.b.WriteString(black + "BT\n")
	t := text{content: c}
	for i := range p.Rows {
		row := &p.Rows[i]
		for k := range row.Runs {
			if err := t.run(row, &row.Runs[k]); err != nil {
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
