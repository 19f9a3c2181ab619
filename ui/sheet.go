package ui

import (
	"image"

	"headland/pagemodel"
	"headland/typeset"
	"headland/typeset/raster"
)

// look is all that decides what a page looks like, its rows and its marks
// apart: two sheets with equal looks of like pages are the same picture.
type look struct {
	plan      sheetPlan
	scale     float64
	density   float64
	light     light
	side      pagemodel.Side
	swallowed typeset.Length
	text      typeset.Rect      // where the text may stand, for the scale
	hand      pagemodel.LineRef // the line under the hand
	focus     pagemodel.LineRef // the line at hand
	word      int               // the byte offset that the word caret is before; -1 for none
	typing    int               // the byte offset that the caret of retyping is before; -1
	held      bool              // a rule is held, and stands at spot
	spot      spot
	lands     lands
}

// sheet is one page of the spread, as an image that is drawn again only when
// it would look otherwise.
type sheet struct {
	buffers  buffers
	underlay image.RGBA // paper, fold, hatching and scale
	under    look       // what the underlay was drawn for
	drawn    look
	page     *typeset.Page
	signs    signs
	clean    bool // the last buffer shows drawn, page and signs
}

// draw gives the page's image of w by h device pixels.
func (s *sheet) draw(k *inker, page *typeset.Page, marks signs, l look, w, h int) *image.RGBA {
	if img, ok := s.buffers.last(w, h); ok && s.clean && l == s.drawn && sameInk(page, s.page) && marks.same(&s.signs) {
		return img
	}
	img := s.buffers.next(w, h)
	s.layUnder(k, page, l, w, h)
	copy(img.Pix, s.underlay.Pix)
	d := newDrawing(k, img, page, l)
	d.verse(&marks)
	s.drawn, s.page, s.signs, s.clean = l, page, marks, true
	return img
}

// layUnder draws what lies under the verse, unless it lies there already.
func (s *sheet) layUnder(k *inker, page *typeset.Page, l look, w, h int) {
	key := look{plan: l.plan, scale: l.scale, density: l.density, light: l.light, side: l.side, swallowed: l.swallowed, text: page.Text}
	if len(page.Rows) == 0 {
		key.word = -1 // a blank has no scale
	}
	if s.under == key && s.underlay.Rect == image.Rect(0, 0, w, h) {
		return
	}
	s.under, s.underlay = key, *image.NewRGBA(image.Rect(0, 0, w, h))
	d := newDrawing(k, &s.underlay, page, l)
	d.paper()
}

// drawing is the hand that draws one page.
type drawing struct {
	look
	k      *inker
	img    *image.RGBA
	pen    *raster.Pen
	page   *typeset.Page
	colors *palette
	hair   int // a hairline in device pixels
}

func newDrawing(k *inker, img *image.RGBA, page *typeset.Page, l look) *drawing {
	origin := l.plan.page.Min.Sub(l.plan.seen.Min)
	return &drawing{
		look: l, k: k, img: img, page: page, colors: l.light.palette(),
		pen: k.masks.On(img, l.scale, origin), hair: max(1, int(l.density+0.25)),
	}
}

// units is a distance in the toolkit's units in device pixels.
func (d *drawing) units(n float64) int { return int(n*d.density + 0.5) }

// paper draws the page before anything is printed on it.
func (d *drawing) paper() {
	d.pen.Clear(d.colors.paper)
	d.fold()
	d.hatch()
	if len(d.page.Rows) > 0 {
		d.stick()
	}
	x := d.pen.X(0)
	if d.side == pagemodel.Verso {
		x = d.pen.X(d.page.Trim.Width) - d.hair
	}
	fill(d.img, image.Rect(x, d.img.Rect.Min.Y, x+d.hair, d.img.Rect.Max.Y), d.colors.hairline)
}

// fold lets the page run down into the gutter.
func (d *drawing) fold() {
	wide := max(1, d.units(34))
	for i := range wide {
		share := 1 - float64(i)/float64(wide)
		x := d.pen.X(0) + i
		if d.side == pagemodel.Verso {
			x = d.pen.X(d.page.Trim.Width) - 1 - i
		}
		fill(d.img, image.Rect(x, d.img.Rect.Min.Y, x+1, d.img.Rect.Max.Y), blend(d.colors.paper, d.colors.fold, share*share))
	}
}

// hatch marks how much of the inner margin the binding swallows: faint
// hatching, and at head and foot a hairline tick where the eye's page begins.
func (d *drawing) hatch() {
	area := typeset.Rect{W: d.swallowed, H: d.page.Trim.Height}
	edge := d.swallowed
	if d.side == pagemodel.Verso {
		area.X = d.page.Trim.Width - d.swallowed
		edge = area.X
	}
	if d.swallowed <= 0 {
		return
	}
	d.pen.Hatch(area, pagemodel.Pt(float64(d.units(6))/d.scale), blend(d.colors.paper, d.colors.hairline, hatchInk))
	x, long := d.pen.X(edge), d.units(9)
	head, foot := d.pen.Y(0), d.pen.Y(d.page.Trim.Height)
	fill(d.img, image.Rect(x, head, x+d.hair, head+long), d.colors.hairline)
	fill(d.img, image.Rect(x, foot-long, x+d.hair, foot), d.colors.hairline)
}

// hatchInk is how much of a hairline's ink the hatching has: it is a shade,
// whose edges are told by the ticks.
const hatchInk = 0.42

// stick lays the measure over the head of the text as a stick scale: a tick
// for each pica em, a longer one for each sixth.
func (d *drawing) stick() {
	t := d.page.Text
	y := d.pen.Y(t.Y * 11 / 20)
	from, to := d.pen.X(t.X), d.pen.X(t.X+t.W)
	fill(d.img, image.Rect(from, y, to, y+d.hair), d.colors.hairline)
	for pica := 0; ; pica++ {
		at := typeset.Length(pica) * 12 * pagemodel.Point
		if at > t.W-d.px(d.units(3)) {
			break
		}
		deep := d.units(3)
		if pica%6 == 0 {
			deep = d.units(6)
		}
		x := d.pen.X(t.X + at)
		fill(d.img, image.Rect(x, y-deep, x+d.hair, y), d.colors.hairline)
	}
	for _, x := range [...]int{from, to - d.hair} {
		fill(d.img, image.Rect(x, y-d.units(9), x+d.hair, y+d.hair), d.colors.hairline)
	}
}
