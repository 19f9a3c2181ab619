package ui

import (
	"image"

	"fyne.io/fyne/v2"

	"headland/pagemodel"
	"headland/typeset"
)

// Sizes on a leaf of choices in the toolkit's units.
const (
	choiceOuter = 14 // from the page's outer edge to the leaf's
	choiceInner = 10 // from the gutter
	choiceSmall = 13 // the least size of its small words
	choiceRow   = 16 // the least from one row of them to the next
	choiceFoot  = 30 // of the words at its foot
)

// choicePlan is where a leaf of choices lies and how it is set: in device
// pixels, of the desk for the leaf itself and of the leaf for what is on it.
type choicePlan struct {
	at      image.Rectangle
	origin  fyne.Position // of the desk, on the window
	density float64
	scale   float64 // device pixels to a point of the page
	text    int     // where the measure begins
	measure typeset.Length
	first   float64 // the baseline of the first row
	pitch   float64 // from one row of verse to the next
	row     float64 // from one row of small words to the next
	small   float64 // their size, in the toolkit's units
}

func (p *choicePlan) units(n float64) int { return int(n*p.density + 0.5) }

// room is how wide small words may be, in device pixels.
func (p *choicePlan) room() int { return p.at.Dx() - p.text - p.units(leafMargin) }

// foot is where the choices end and the words at the foot begin.
func (p *choicePlan) foot() float64 { return float64(p.at.Dy() - p.units(choiceFoot)) }

// choiceGrid is what of the page worked on a leaf is set by.
type choiceGrid struct {
	text    typeset.Rect // of the page that the leaf covers
	leading typeset.Length
	base    typeset.Length // the baseline of the page's first row
	line    typeset.Length // that of the line that the choices are for
}

// gridOf finds the grid that a line of a page stands on.
func gridOf(set *typeset.Setting, page *typeset.Page, ref pagemodel.LineRef) choiceGrid {
	design := set.Collection().Design()
	g := choiceGrid{text: page.Text, leading: design.Leading, base: design.Margins.Head + design.Size}
	g.text.X = page.Trim.Width - page.Text.X - page.Text.W
	for i := range page.Rows {
		if r := &page.Rows[i]; r.Line != 0 && r.Ref() == ref && !r.Turned {
			g.line = r.Baseline
			g.base = r.Baseline - typeset.Length(r.Grid-1)*g.leading
			break
		}
	}
	return g
}

// newChoicePlan lays a leaf over the page of a side. What is set on it lies on
// the lines of the page beside it, in the same measure. Where too little of the
// page is seen for that, as in a narrow window, the leaf lies over the half of
// the window that the line is not in.
func newChoicePlan(p *plan, side pagemodel.Side, origin fyne.Position, g choiceGrid) choicePlan {
	c := choicePlan{origin: origin, density: p.density, scale: p.scale, measure: g.text.W}
	page := p.sheets[side].page
	px := func(l typeset.Length) int { return int(l.Points()*p.scale + 0.5) }
	c.at = image.Rect(page.Min.X+c.units(choiceOuter), 0, page.Max.X-c.units(choiceInner), 0)
	if side == pagemodel.Recto {
		c.at = image.Rect(page.Min.X+c.units(choiceInner), 0, page.Max.X-c.units(choiceOuter), 0)
	}
	c.at.Min.Y, c.at.Max.Y = page.Min.Y+px(g.text.Y)-c.units(14), page.Min.Y+px(g.text.Y+g.text.H)+c.units(14)
	c.at = c.at.Intersect(p.view.Inset(c.units(6)))
	c.text = page.Min.X + px(g.text.X) - c.at.Min.X
	c.first = float64(page.Min.Y-c.at.Min.Y) + g.base.Points()*p.scale
	if c.text < c.units(leafMargin) || c.room() < px(g.text.W) || c.at.Dy() < p.view.Dy()/2 {
		c.layOverHalf(p, side, page.Min.Y+px(g.line))
	}
	c.setBy(g)
	return c
}

// layOverHalf lays the leaf over a half of the window: in a narrow one the upper
// or the lower, whichever the line is not in.
func (c *choicePlan) layOverHalf(p *plan, side pagemodel.Side, line int) {
	air := c.units(6)
	in := p.view.Inset(air)
	c.at, c.text = in, c.units(leafMargin+8)
	switch middle := in.Min.Add(in.Max).Div(2); {
	case p.narrow && line > middle.Y:
		c.at.Max.Y = middle.Y - air
	case p.narrow:
		c.at.Min.Y = middle.Y + air
	case side == pagemodel.Verso:
		c.at.Max.X = middle.X - air
	default:
		c.at.Min.X = middle.X + air
	}
	if p.narrow {
		c.narrowTo(c.units(leafWidth + 60))
	}
	c.first = float64(c.units(26))
}

// narrowTo draws the leaf's sides in.
func (c *choicePlan) narrowTo(wide int) {
	if off := (c.at.Dx() - wide) / 2; off > 0 {
		c.at.Min.X, c.at.Max.X = c.at.Min.X+off, c.at.Max.X-off
	}
}

// setBy finds how large all is set: as on the page, unless the measure has too
// little room.
func (c *choicePlan) setBy(g choiceGrid) {
	c.scale = min(c.scale, float64(c.room())/g.text.W.Points())
	c.pitch = g.leading.Points() * c.scale
	c.row = max(c.pitch, choiceRow*c.density)
	c.small = max(choiceSmall, min(c.pitch/c.density*0.72, leafType))
	for c.first < float64(c.units(20)) {
		c.first += c.pitch
	}
}

// arrange lays the leaf on whole device pixels.
func (l *choiceLeaf) arrange() {
	d := l.w.desk
	set := l.w.session.Committed()
	was := l.plan
	grid := gridOf(set, set.Page(l.page), l.ref)
	l.plan = newChoicePlan(&d.plan, l.side, fyne.CurrentApp().Driver().AbsolutePositionForObject(d), grid)
	if was != l.plan {
		l.blocks = nil
	}
	l.setBlocks()
	l.top = min(l.top, l.lowest())
	unit := func(px int) float32 { return float32(float64(px) / l.plan.density) }
	l.picture.Resize(fyne.NewSize(unit(l.plan.at.Dx()), unit(l.plan.at.Dy())))
	l.picture.Move(l.plan.origin.AddXY(unit(l.plan.at.Min.X), unit(l.plan.at.Min.Y)))
	l.picture.Refresh()
}
