package order

import (
	"headland/pagemodel"
	"headland/typeset"
)

// Ticks: hairlines of a quarter of a point, as the trade's crop marks are (common
// practice, no source). They keep half a millimetre from the page, so that a cut
// on the mark leaves nothing of it.
var (
	tickWidth  = pagemodel.Pt(0.25)
	tickLength = pagemodel.MM(4)
	tickGap    = pagemodel.MM(0.5)
)

// Ticks are the hairlines beside the pages: two at each corner, where the dummy
// is cut, and one at head and foot of the fold.
func (d *Dummy) Ticks() []typeset.Rect {
	area := d.Area()
	right, foot := area.X+area.W, area.Y+area.H
	var ticks []typeset.Rect
	for _, y := range []typeset.Length{area.Y, foot} {
		ticks = append(ticks, level(area.X-tickGap-tickLength, y), level(right+tickGap, y))
	}
	for _, x := range []typeset.Length{area.X, area.X + area.W/2, right} {
		ticks = append(ticks, upright(x, area.Y-tickGap-tickLength), upright(x, foot+tickGap))
	}
	return ticks
}

// level is a tick from x to the right, its middle on y.
func level(x, y typeset.Length) typeset.Rect {
	return typeset.Rect{X: x, Y: y - tickWidth/2, W: tickLength, H: tickWidth}
}

// upright is a tick from y down, its middle on x.
func upright(x, y typeset.Length) typeset.Rect {
	return typeset.Rect{X: x - tickWidth/2, Y: y, W: tickWidth, H: tickLength}
}

// LabelSize is the size of type that labels are set in.
var LabelSize = pagemodel.Pt(5.5)

// Label puts the words of a sheet's label in the white beside the pages: below
// the left page, or, where there is more room at the sides, up the left side,
// turned (see [typeset.Row]).
func (d *Dummy) Label(words typeset.Run) typeset.Row {
	beside, below := d.white()
	area := d.Area()
	row := typeset.Row{Role: typeset.RoleFolio, Width: words.Width, Room: words.Width, Runs: []typeset.Run{words}, End: len(words.Text)}
	if beside > below {
		row.Turned = true
		row.X = (d.Paper.Short - words.Width) / 2
		row.Baseline = area.X - tickGap - LabelSize/3
		return row
	}
	row.X = area.X + (area.W/2-words.Width)/2
	row.Baseline = area.Y + area.H + tickGap + LabelSize
	return row
}
