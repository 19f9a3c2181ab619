package ui

import (
	"image"
	"image/color"

	"headland/assets"
	"headland/pagemodel"
	"headland/typeset"
)

// verse draws what is printed on the page, and the marks on it.
func (d *drawing) verse(marks *signs) {
	d.pen.Page(d.page, d.colors.ink)
	d.signs(marks)
	for i := range d.page.Rows {
		r := &d.page.Rows[i]
		if r.Line != 0 && r.Last && hasRule(d.page, r) && !(d.held && r.Ref() == d.focus) {
			d.restingRule(r)
		}
	}
	d.atHand()
	if d.held {
		d.heldRule()
	}
}

// near says that the hand or the focus is on the row's line.
func (d *drawing) near(r *typeset.Row) bool { return r.Ref() == d.hand || r.Ref() == d.focus }

// band is the height of a row on the image: from above its ascenders to below
// its descenders.
func (d *drawing) band(r *typeset.Row) (top, bottom int) {
	size := sizeOf(r)
	return d.pen.Y(r.Baseline - size*4/5), d.pen.Y(r.Baseline + size*3/10)
}

// upright draws a line across a row, as high as the row: vertical, but where the
// row lies on its side.
func (d *drawing) upright(r *typeset.Row, x typeset.Length, thick int, ink color.RGBA) {
	size := sizeOf(r)
	if r.Turned {
		y := d.pen.Y(d.page.Trim.Height-x) - thick
		fill(d.img, image.Rect(d.pen.X(r.Baseline-size*4/5), y, d.pen.X(r.Baseline+size*3/10), y+thick), ink)
		return
	}
	top, bottom := d.band(r)
	left := d.pen.X(x)
	fill(d.img, image.Rect(left, top, left+thick, bottom), ink)
}

// px is a distance of whole device pixels as a length on the page.
func (d *drawing) px(n int) typeset.Length { return pagemodel.Pt(float64(n) / d.scale) }

// stroke marks an overlong line: the stroke and its letter in the outer
// margin, and for an unsettled line where the measure ends and what exceeds it.
func (d *drawing) stroke(s stroke) {
	if s.state == pagemodel.Unsettled {
		d.overrun(s.row)
	}
	r := &d.page.Rows[d.strokeRow(s)]
	ink, thick := d.colors.mark, 2*d.hair
	if s.state != pagemodel.Unsettled {
		ink, thick = d.colors.aside, d.hair
	}
	d.marginStroke(r, thick, ink)
	d.marginLetter(r, s.letter(), 0, ink)
}

// marginStroke draws a stroke in the outer margin beside a row; beside one that
// lies on its side, before it.
func (d *drawing) marginStroke(r *typeset.Row, thick int, ink color.RGBA) {
	if r.Turned {
		d.upright(r, r.X-d.px(d.units(18)), thick, ink)
		return
	}
	d.upright(r, strokeX(d.page), thick, ink)
}

// marginLetter writes letters outward of a row's stroke, past as many
// characters as stand there already.
func (d *drawing) marginLetter(r *typeset.Row, letters string, past int, ink color.RGBA) {
	size := d.letterSize()
	run := d.k.setter.Words(letters, typeset.WordStyle{Family: assets.EBGaramond, Size: size, Italic: true})
	gap := d.px(d.units(5)) + typeset.Length(past)*size*7/10
	if r.Turned {
		d.pen.Run(&run, r.Baseline-run.Width/2, d.page.Trim.Height-r.X+d.px(d.units(20))+gap+size/2, ink)
		return
	}
	if d.side == pagemodel.Verso {
		d.pen.Run(&run, strokeX(d.page)-gap-run.Width, r.Baseline, ink)
		return
	}
	d.pen.Run(&run, strokeX(d.page)+d.px(2*d.hair)+gap, r.Baseline, ink)
}

// letterSize is the size of the page's verse, and so of the letters in its
// margin.
func (d *drawing) letterSize() typeset.Length {
	for i := range d.page.Rows {
		if d.page.Rows[i].Line != 0 {
			return sizeOf(&d.page.Rows[i])
		}
	}
	return 11 * pagemodel.Point
}

// strokeRow is the row that a stroke stands beside: the line's first, or,
// while what exceeds the measure is inked there, the row below.
func (d *drawing) strokeRow(s stroke) int {
	r := &d.page.Rows[s.row]
	if s.state == pagemodel.Unsettled && d.showsOverrun(r) && d.side == pagemodel.Recto && s.row+1 < len(d.page.Rows) {
		return s.row + 1
	}
	return s.row
}

// showsOverrun says that what exceeds the measure is inked: while the line is
// at hand and its rule is not held.
func (d *drawing) showsOverrun(r *typeset.Row) bool { return d.near(r) && !d.held && !r.Turned }

// strokeX is where the strokes of a page stand: a little past the middle of
// its outer margin, clear of the rules at the line ends.
func strokeX(page *typeset.Page) typeset.Length {
	if page.Side == pagemodel.Verso {
		return page.Text.X * 9 / 20
	}
	end := page.Text.X + page.Text.W
	return end + (page.Trim.Width-end)*11/20
}

// overrun shows what exceeds the measure: a hairline where the measure ends,
// and the turned tail under-ruled. While the line is at hand the tail is also
// inked where it would stand if there were room.
func (d *drawing) overrun(row int) {
	r := &d.page.Rows[row]
	end := d.page.Text.X + d.page.Text.W
	if r.Turned || r.X+r.Room > d.page.Trim.Width {
		end = r.X + r.Room // its measure is not the page's
	}
	d.upright(r, end, d.hair, d.colors.mark)
	x := r.X + r.Width + wordSpace(r)
	for i := row + 1; i < len(d.page.Rows); i++ {
		tail := &d.page.Rows[i]
		if tail.Ref() != r.Ref() || tail.Turn != typeset.Turnover {
			break
		}
		d.underRule(tail, tail.X, tail.X+tail.Width, tail.Baseline, d.colors.mark)
		if d.showsOverrun(r) {
			d.ghost(tail, x, r.Baseline)
			d.underRule(r, max(x, end), x+tail.Width, r.Baseline, d.colors.mark)
		}
		x += tail.Width + wordSpace(tail)
	}
}

// underRule rules off some words from below.
func (d *drawing) underRule(r *typeset.Row, from, to, baseline typeset.Length, ink color.RGBA) {
	if r.Turned {
		x, high := d.pen.X(baseline+sizeOf(r)*4/20), d.page.Trim.Height
		fill(d.img, image.Rect(x, d.pen.Y(high-to), x+d.hair, d.pen.Y(high-from)), ink)
		return
	}
	y := d.pen.Y(baseline + sizeOf(r)*4/20)
	fill(d.img, image.Rect(d.pen.X(from), y, d.pen.X(to), y+d.hair), ink)
}

// ghost inks a row's words elsewhere in the mark's colour.
func (d *drawing) ghost(r *typeset.Row, x, baseline typeset.Length) {
	for i := range r.Runs {
		d.pen.Run(&r.Runs[i], x+r.Runs[i].X, baseline, d.colors.mark)
	}
}
