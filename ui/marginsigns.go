package ui

import (
	"image"
	"image/color"
	"math"
	"strings"

	"headland/assets"
	"headland/pagemodel"
	"headland/typeset"
	"headland/typeset/raster"
)

// signSize is the least size of the words about a page, in the toolkit's units:
// they are to be read at any zoom at which the verse is.
const signSize = 13

// signs draws the marks about the page, mirrored for its side.
func (d *drawing) signs(s *signs) {
	for _, t := range s.ties {
		d.tie(t)
	}
	for _, row := range s.begins {
		d.pageBegins(&d.page.Rows[row])
	}
	for _, o := range s.openings {
		d.opening(o)
	}
	for _, mark := range s.strokes {
		d.stroke(mark)
	}
	for _, f := range s.faults {
		d.faultSign(f, s.strokes)
	}
	if s.end != "" {
		d.pageEnd(s.end)
	}
}

// outward is a place in the outer margin: a share in hundredths of the way from
// the text to the edge of the page.
func outward(page *typeset.Page, share typeset.Length) typeset.Length {
	if page.Side == pagemodel.Verso {
		return page.Text.X * (100 - share) / 100
	}
	end := page.Text.X + page.Text.W
	return end + (page.Trim.Width-end)*share/100
}

// tieAt is where in the outer margin brackets stand, in hundredths.
const tieAt = 24

// tie draws a thin bracket along lines that are kept together, open where they
// go on over the page's edge.
func (d *drawing) tie(t tieSign) {
	from, to := &d.page.Rows[t.from], &d.page.Rows[t.to]
	if from.Turned {
		d.turnedTie(t)
		return
	}
	top, _ := d.band(from)
	_, bottom := d.band(to)
	x, ear := d.pen.X(outward(d.page, tieAt)), d.units(5)
	fill(d.img, image.Rect(x, top, x+d.hair, bottom), d.colors.aside)
	arm := image.Rect(x-ear, 0, x, d.hair)
	if d.side == pagemodel.Verso {
		arm = image.Rect(x, 0, x+d.hair+ear, d.hair)
	}
	if !t.above {
		fill(d.img, arm.Add(image.Pt(0, top)), d.colors.aside)
	}
	if !t.below {
		fill(d.img, arm.Add(image.Pt(0, bottom-d.hair)), d.colors.aside)
	}
}

// turnedTie draws the bracket before lines that lie on their side.
func (d *drawing) turnedTie(t tieSign) {
	from, to := &d.page.Rows[t.from], &d.page.Rows[t.to]
	y := d.pen.Y(d.page.Trim.Height-min(from.X, to.X)) + d.units(22)
	left, right := d.pen.X(from.Baseline-sizeOf(from)*4/5), d.pen.X(to.Baseline+sizeOf(to)*3/10)
	fill(d.img, image.Rect(left, y, right, y+d.hair), d.colors.aside)
	for _, x := range [...]int{left, right - d.hair} {
		fill(d.img, image.Rect(x, y-d.units(5), x+d.hair, y), d.colors.aside)
	}
}

// pageBegins marks a line with which the poet has a page begin: a rule over the
// outer margin at the height of its capitals, and a word on it. Above is always
// the head of the page.
func (d *drawing) pageBegins(r *typeset.Row) {
	if r.Turned {
		d.marginLetter(r, "page", 0, d.colors.aside)
		return
	}
	top, _ := d.band(r)
	near, far := d.pen.X(outward(d.page, tieAt)), d.pen.X(d.outerEdge())
	fill(d.img, image.Rect(min(near, far), top, max(near, far), top+d.hair), d.colors.aside)
	d.marginWords("page", r.Baseline-sizeOf(r)*4/5-d.px(d.units(4)))
}

// opening writes what the poet says of a poem above its first row: there the head
// of the page, or the white over the poem, has room for it.
func (d *drawing) opening(o openingSign) {
	r := &d.page.Rows[o.row]
	lines := strings.Split(o.words, "\n")
	y := r.Baseline - sizeOf(r)*4/5 - d.px(d.units(10))
	if r.Turned {
		y = d.page.Text.Y
	}
	step := d.signLength() * 6 / 5
	y = max(y, d.px(d.units(8))+step*typeset.Length(len(lines)))
	for i, words := range lines {
		d.marginWords(words, y-step*typeset.Length(len(lines)-1-i))
	}
}

// signLength is the size of the words about the page.
func (d *drawing) signLength() typeset.Length {
	return max(d.px(d.units(signSize)), 7*pagemodel.Point)
}

// hasRoom says that the page lies near enough for words in its margins.
func (d *drawing) hasRoom() bool { return d.signLength() <= 14*pagemodel.Point }

// outerEdge is where words in the outer margin end: a little within the page's
// edge.
func (d *drawing) outerEdge() typeset.Length {
	if d.side == pagemodel.Verso {
		return d.px(d.units(8))
	}
	return d.page.Trim.Width - d.px(d.units(8))
}

// marginWords writes quiet words in the outer margin, ranged on the page's edge.
func (d *drawing) marginWords(words string, baseline typeset.Length) {
	if !d.hasRoom() {
		return
	}
	run := d.k.setter.Words(words, typeset.WordStyle{Family: assets.EBGaramond, Size: d.signLength(), Italic: true})
	x := d.outerEdge()
	if d.side == pagemodel.Recto {
		x -= run.Width
	}
	d.pen.Run(&run, x, baseline, d.colors.aside)
}

// faultSign marks the faults of a row: a stroke with a ring on it, as on the
// fore-edge, and a letter for each. Where the line turns too, the letters follow
// that one's.
func (d *drawing) faultSign(f faultSign, strokes []stroke) {
	row, past := f.row, 0
	for _, s := range strokes {
		if s.row == f.row {
			row, past = d.strokeRow(s), 1
		}
	}
	r := &d.page.Rows[row]
	d.marginStroke(r, 2*d.hair, d.colors.mark)
	if !r.Turned {
		at := typeset.Point{X: strokeX(d.page) + d.px(d.hair), Y: r.Baseline - sizeOf(r)*4/5 - d.px(d.units(3))}
		ring(d.pen, at, d.px(d.units(3)), float64(d.hair)*1.5, d.colors.mark)
	}
	d.marginLetter(r, f.letters, past, d.colors.mark)
}

// ring draws a circle's outline by short strokes, so many device pixels thick.
func ring(pen *raster.Pen, centre typeset.Point, radius typeset.Length, thick float64, ink color.RGBA) {
	const steps = 24
	var last typeset.Point
	for i := range steps + 1 {
		a := 2 * math.Pi * float64(i) / steps
		at := typeset.Point{
			X: centre.X + typeset.Length(math.Round(float64(radius)*math.Cos(a))),
			Y: centre.Y + typeset.Length(math.Round(float64(radius)*math.Sin(a))),
		}
		if i > 0 {
			pen.Stroke(last, at, thick, ink)
		}
		last = at
	}
}

// endY is the baseline of the words at the foot of a page, near its lower edge,
// clear of the folio.
func endY(page *typeset.Page) typeset.Length {
	foot := page.Trim.Height - page.Text.Y - page.Text.H
	return page.Trim.Height - foot/5
}

// pageEnd says at the foot, at the text's inner edge, what the page end falls
// on.
func (d *drawing) pageEnd(words string) {
	if !d.hasRoom() {
		return
	}
	run := d.k.setter.Words(words, typeset.WordStyle{Family: assets.EBGaramond, Size: d.signLength(), Italic: true})
	d.pen.Run(&run, endX(d.page, run.Width), endY(d.page), d.colors.aside)
}

// endX is where those words begin.
func endX(page *typeset.Page, width typeset.Length) typeset.Length {
	if page.Side == pagemodel.Verso {
		return page.Text.X + page.Text.W - width
	}
	return page.Text.X
}

// underSigns finds the mark of a fault, or the words at the page's end.
func (d *desk) underSigns(side pagemodel.Side, page *typeset.Page, p typeset.Point) (target, bool) {
	marks := d.signs(page)
	if marks.end != "" && p.Y > page.Text.Y+page.Text.H && distance(p.Y, endY(page)) < d.plan.length(d.plan.units(12)) {
		return target{kind: overEnd, side: side, page: page.Number}, true
	}
	beyond := p.X - outward(page, tieAt)
	if side == pagemodel.Verso {
		beyond = -beyond
	}
	if beyond < 0 {
		return target{}, false
	}
	for _, f := range d.faults {
		if f.Page != page.Number {
			continue
		}
		row := faultRow(page, f)
		if row < 0 {
			continue
		}
		if r := &page.Rows[row]; !r.Turned && distance(p.Y, r.Baseline-sizeOf(r)/3) <= sizeOf(r)*13/20 {
			return target{kind: overFault, side: side, row: row, fault: f}, true
		}
	}
	return target{}, false
}
