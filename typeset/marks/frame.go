package marks

import (
	"headland/pagemodel"
	"headland/typeset"
)

// A frame is the page as its rows count: x along them, y down. For rows that lie
// on their side it is the page turned a quarter.
type frame struct {
	turned        bool
	width, height typeset.Length // of the trim
	text          typeset.Rect   // where the text stands, ink beyond the measure included
	outerRight    bool           // the outer margin is at the rows' ends
}

// frame is the page for rows that lie on their side, or for those that don't.
func (m *marker) frame(turned bool) frame {
	p := m.page
	f := frame{turned: turned, width: p.Trim.Width, height: p.Trim.Height, text: p.Text, outerRight: p.Side == pagemodel.Recto}
	if turned {
		f.width, f.height, f.outerRight = f.height, f.width, true
		f.text = typeset.Rect{X: p.Trim.Height - p.Text.Y - p.Text.H, Y: p.Text.X, W: p.Text.H, H: p.Text.W}
	}
	left, right := f.text.X, f.text.X+f.text.W
	for i := range p.Rows {
		if r := &p.Rows[i]; r.Turned == turned && r.Line != 0 {
			left, right = min(left, max(0, r.X)), max(right, min(f.width, r.X+r.Width))
		}
	}
	f.text.X, f.text.W = left, right-left
	return f
}

// onPage is a place of the frame on the page (see [typeset.Row]).
func (f frame) onPage(x, y typeset.Length) typeset.Point {
	if f.turned {
		return typeset.Point{X: y, Y: f.width - x}
	}
	return typeset.Point{X: x, Y: y}
}
