package ui

import (
	"image"
	"image/color"

	"headland/pagemodel"
	"headland/typeset"
	"headland/typeset/marks"
)

// sheetOver is how much larger than the pages the sheet is, in the toolkit's
// units: paper that is not trimmed yet.
const sheetOver = 9

// proofs are the papers of a round's sheet in the two lights: not the pages' own.
var proofs = [...]color.RGBA{day: rgb(0xF1E9DA), lamp: rgb(0xE0D6C3)}

func (l light) proof() color.RGBA { return proofs[l] }

// sheetLook is all that decides what the sheet looks like while it lies there.
type sheetLook struct {
	at     image.Rectangle
	scale  float64
	light  light
	spread pagemodel.Spread
	over   bool // the hand is over its foot
}

// draw gives the sheet's image, drawn again only where it would look otherwise.
func (s *sentSheet) draw(w, h int) image.Image {
	d := s.w.desk
	now := sheetLook{s.at, d.plan.scale, d.light, d.spread, s.over.kind == onFoot}
	if img, ok := s.ink.last(w, h); ok && s.drawn == now {
		return img
	}
	s.drawn = now
	img := s.ink.next(w, h)
	on := d.k.slateAt(img, s.at.Min, d.plan.density, d.light.proof())
	for side := range d.plan.sheets {
		s.drawPage(on.img, pagemodel.Side(side))
	}
	s.drawEdges(on)
	return img
}

// drawPage draws a page as it went out, where the page that has its folio lies
// now, with the marks of its corrections. Where the trim was another, the pages
// meet in the fold.
func (s *sentSheet) drawPage(img *image.RGBA, side pagemodel.Side) {
	d := s.w.desk
	at := d.plan.sheets[side]
	if at.seen.Empty() {
		return
	}
	number := s.number(side)
	if number == 0 {
		s.drawNone(img, at)
		return
	}
	page := s.sent.Setting.Page(number)
	origin := at.page.Min
	if side == pagemodel.Verso {
		origin.X = at.page.Max.X - d.plan.pixels(page.Trim.Width)
	}
	seen := img.SubImage(at.seen).(*image.RGBA)
	pen := d.k.masks.On(seen, d.plan.scale, origin)
	pen.Page(page, d.light.palette().ink)
	over := marks.On(s.sent.Setting, number, s.list, s.w.session.Setter())
	pen.Overlay(&over, page.Trim.Height)
}

// drawNone says that no page of that folio went out.
func (s *sentSheet) drawNone(img *image.RGBA, at sheetPlan) {
	d := s.w.desk
	run := d.k.words("No page "+d.of.FolioOf(at.number)+" went out", wordSize, true)
	on := &slate{img, d.k.masks.On(img, d.plan.density, image.Point{}), d.plan.density}
	on.write(run, (at.seen.Min.X+at.seen.Max.X-on.px(run.Width))/2, (at.seen.Min.Y+at.seen.Max.Y)/2, d.light.palette().aside)
}

// drawEdges draws the sheet's own edge, the corners at which it will be trimmed,
// its fold, and what stands at its foot.
func (s *sentSheet) drawEdges(on *slate) {
	d := s.w.desk
	hair, line := max(1, d.plan.units(1)), palettes[day].aside
	frame(on.img, on.img.Rect, hair, line)
	book, larger := d.plan.book, d.plan.units(sheetOver)
	fold := book.Min.X + book.Dx()/2
	for y := s.at.Min.Y; y < d.plan.sliver.Min.Y; y += 3 * larger / 2 {
		on.fill(image.Rect(fold, y, fold+hair, min(y+larger, d.plan.sliver.Min.Y)), line)
	}
	on.fill(image.Rect(s.at.Min.X, d.plan.sliver.Min.Y, s.at.Max.X, d.plan.sliver.Min.Y+hair), line)
	s.drawFoot(on)
}

// drawFoot writes what the sheet is at its foot, where the sliver says it too.
func (s *sentSheet) drawFoot(on *slate) {
	d := s.w.desk
	at := d.plan.sliver
	at.Max.Y -= d.plan.units(2)
	ink, margin, base := palettes[day].ink, d.plan.units(10), at.Min.Y+at.Dy()*17/24
	right := d.k.words("not the pages of today: press here to lift it", underSize, false)
	end := on.write(d.k.words(sentWords(s.sent.Round), underSize, true), at.Min.X+margin, base, ink)
	x := at.Max.X - margin - on.px(right.Width)
	if x < end+margin {
		return
	}
	from := x
	x = on.write(right, x, base, ink)
	if s.over.kind == onFoot {
		y := base + d.plan.units(3)
		on.fill(image.Rect(from, y, x, y+max(1, d.plan.units(1))), ink)
	}
}

// rowUnder is the row of a page as it went out under a device pixel of the desk.
func (s *sentSheet) rowUnder(at image.Point) (pagemodel.LineRef, bool) {
	p := &s.w.desk.plan
	side, ok := p.sideAt(at)
	if !ok {
		return pagemodel.LineRef{}, false
	}
	number := s.number(side)
	if number == 0 {
		return pagemodel.LineRef{}, false
	}
	page := s.sent.Setting.Page(number)
	point := p.toPage(side, at)
	if side == pagemodel.Verso {
		point.X += page.Trim.Width - p.length(p.sheets[side].page.Dx())
	}
	return lineAt(page, point)
}

// lineAt is the line whose row lies at a height of a page, in the margin too,
// where its marks are; of a row of a poem's head, the poem without a line.
func lineAt(page *typeset.Page, at typeset.Point) (pagemodel.LineRef, bool) {
	for i := range page.Rows {
		r := &page.Rows[i]
		if r.Poem != 0 && len(r.Runs) > 0 && !r.Turned && distance(at.Y, r.Baseline-sizeOf(r)/3) <= sizeOf(r)*13/20 {
			return r.Ref(), true
		}
	}
	return pagemodel.LineRef{}, false
}
