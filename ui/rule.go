package ui

import (
	"image"
	"image/color"

	"headland/pagemodel"
	"headland/typeset"
)

// Sizes of a setting rule, in the toolkit's units.
const (
	ruleGap  = 4  // from the end of the line
	ruleEar  = 6  // the short arm at its top
	ruleGrab = 28 // the width of the area that it can be taken by
)

// restingRule draws the setting rule at the end of a line: dark where the hand
// or the focus is near, else a hairline no higher than the small letters, which
// the eye can read past.
func (d *drawing) restingRule(r *typeset.Row) {
	x := d.pen.X(r.X+r.Width) + d.units(ruleGap)
	if d.near(r) {
		d.settingRule(r, x, 2*d.hair, d.colors.ink)
		return
	}
	top, bottom := d.pen.Y(r.Baseline-sizeOf(r)*9/20), d.pen.Y(r.Baseline)
	d.ruleFrom(x, top, bottom, d.hair, d.colors.hairline)
}

// settingRule is the compositor's: an upright with its ear at the top.
func (d *drawing) settingRule(r *typeset.Row, x, thick int, ink color.RGBA) {
	top, bottom := d.band(r)
	d.ruleFrom(x, top, bottom, thick, ink)
}

func (d *drawing) ruleFrom(x, top, bottom, thick int, ink color.RGBA) {
	fill(d.img, image.Rect(x, top, x+thick, bottom), ink)
	fill(d.img, image.Rect(x, top, x+d.units(ruleEar)*2/3, top+thick), ink)
}

// hasRule says that a row's line can be taken by its end: that the row is upright
// and ends on its own page.
func hasRule(page *typeset.Page, r *typeset.Row) bool {
	return !r.Turned && r.X >= 0 && r.X+r.Width <= page.Trim.Width
}

// ruleUnder is the line whose setting rule can be taken at a point of the page.
func ruleUnder(p *plan, page *typeset.Page, at typeset.Point) (pagemodel.LineRef, bool) {
	half := p.length(p.units(ruleGrab) / 2)
	best, far := pagemodel.LineRef{}, typeset.Length(1<<30)
	for i := range page.Rows {
		r := &page.Rows[i]
		if r.Line == 0 || !r.Last || !hasRule(page, r) {
			continue
		}
		centre := r.X + r.Width + p.length(p.units(ruleGap+2))
		dx, dy := distance(at.X, centre), distance(at.Y, r.Baseline-sizeOf(r)/4)
		if dx <= half && dy <= sizeOf(r)*13/20 && dy < far {
			best, far = r.Ref(), dy
		}
	}
	return best, best.Line != 0
}

// heldRule draws the rule that is held at its stop, and both places that the
// words it sheds can go to: the chosen one dark, the other faint.
func (d *drawing) heldRule() {
	r := &d.page.Rows[d.spot.row]
	if r.Turned {
		d.upright(r, d.spot.x+d.px(d.units(ruleGap)), 2*d.hair, d.colors.ink)
		return
	}
	d.settingRule(r, d.pen.X(d.spot.x)+d.units(ruleGap), 2*d.hair, d.colors.ink)
	if d.spot.after < 0 {
		return
	}
	after := &d.page.Rows[d.spot.after]
	d.caret(after, after.X, 2*d.hair, d.colors.ink)
	switch {
	case d.spot.other >= 0:
		other := &d.page.Rows[d.spot.other]
		d.caret(other, other.X, d.hair, d.colors.hairline)
	case d.lands == joinsNext:
		_, bottom := d.band(r)
		top, _ := d.band(after)
		y := (bottom + top) / 2
		fill(d.img, image.Rect(d.pen.X(after.X), y, d.pen.X(after.X)+d.units(44), y+d.hair), d.colors.hairline)
	}
}

// caret draws a thin upright a little before a place in a row.
func (d *drawing) caret(r *typeset.Row, x typeset.Length, thick int, ink color.RGBA) {
	d.upright(r, x-d.px(d.units(3)+thick/2), thick, ink)
}

// atHand draws the thin mark beside the line at hand, and the caret in it.
func (d *drawing) atHand() {
	for _, i := range rowsOf(d.page, d.focus) {
		r := &d.page.Rows[i]
		x := min(d.page.Text.X, r.X)
		if r.Turned {
			x = r.X
		}
		d.upright(r, x-d.px(d.units(12)), d.hair, d.colors.ink)
		if d.word >= r.Start && d.word < r.End && !d.held {
			d.caret(r, r.XAt(d.word), d.hair, d.colors.ink)
		}
		if d.typing >= r.Start && (d.typing <= r.End || r.Last) {
			d.upright(r, typingX(r, d.typing), max(1, 3*d.hair/2), d.colors.mark)
		}
	}
}

// typingX is where the caret of retyping stands: spaces at the end of a line
// have no ink, but they do move the caret.
func typingX(r *typeset.Row, offset int) typeset.Length {
	x := r.XAt(min(offset, r.End))
	if over := offset - r.End; over > 0 {
		x += typeset.Length(over) * wordSpace(r)
	}
	return x
}
