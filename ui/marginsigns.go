package ui

import (
	"image"
	"strings"

	"headland/assets"
	"headland/pagemodel"
	"headland/typeset"
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
