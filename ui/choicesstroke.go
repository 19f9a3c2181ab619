package ui

import (
	"headland/pagemodel"
	"headland/typeset"
)

// underStroke finds the stroke of an overlong line and its letter, in the outer
// margin. Past the letter are the marks of faults.
func (d *desk) underStroke(side pagemodel.Side, page *typeset.Page, p typeset.Point) (target, bool) {
	near, past := outward(page, tieAt), strokeX(page)
	far := d.plan.length(d.plan.units(24))
	if side == pagemodel.Verso && (p.X > near || p.X < past-far) || side == pagemodel.Recto && (p.X < near || p.X > past+far) {
		return target{}, false
	}
	row, ok := d.strokeRowAt(page, p.Y)
	if !ok {
		return target{}, false
	}
	return target{kind: overStroke, side: side, ref: page.Rows[row].Ref(), row: row}, true
}

// strokeRowAt finds the row of an overlong line beside which its stroke stands,
// or may come to stand: while what exceeds the measure is inked on a recto, it
// stands beside the line's next row.
func (d *desk) strokeRowAt(page *typeset.Page, y typeset.Length) (int, bool) {
	for _, s := range d.signs(page).strokes {
		ref := page.Rows[s.row].Ref()
		for row := s.row; row < min(s.row+2, len(page.Rows)); row++ {
			r := &page.Rows[row]
			if !r.Turned && r.Ref() == ref && distance(y, r.Baseline-sizeOf(r)/3) <= sizeOf(r)*13/20 {
				return row, true
			}
		}
	}
	return 0, false
}

// pressStroke lays out the choices for the line whose stroke was pressed.
func (d *desk) pressStroke(on target) {
	d.hand = hand{}
	d.session.SetFocus(on.ref)
	d.word = -1
	d.choose()
}
