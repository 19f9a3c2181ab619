package ui

import (
	"image"

	"headland/pagemodel"
	"headland/typeset"
)

// stripPlan is how strips with single lines are cut from the pages: each line
// stands on its page's side, as far from the gutter as on the page.
type stripPlan struct {
	d       *desk
	density float64
	scale   float64 // device pixels to a point
	left    int     // where versos begin
	right   int     // where rectos begin
	wide    int     // of one page
	narrow  bool    // of a page only the text is seen, and rectos lie over versos
}

// Depths of a strip in the toolkit's units.
const (
	stripTitleDepth = 24 // of the small title over a line
	stripAir        = 10 // above the title and below the line
)

// stripCut is the white kept beside the text of a page that is not seen whole.
const stripCut = 10 * pagemodel.Point

// newStripPlan fits the strips into a view.
func newStripPlan(v *laidOver) stripPlan {
	d := v.w.desk
	design := d.of.Collection().Design()
	p := stripPlan{d: d, density: v.density, narrow: d.plan.narrow}
	if p.narrow {
		points := (design.Measure() + design.RunOut + 2*stripCut).Points()
		p.scale = v.scale(points * (1 + stripShift))
		p.wide = int(points * p.scale)
		p.left = v.view.Dx()/2 - int(points*p.scale*(1+stripShift)/2)
		p.right = p.left + int(points*p.scale*stripShift)
		return p
	}
	points := design.Trim.Width.Points()
	p.scale = v.scale(2 * points)
	p.wide = int(points * p.scale)
	p.left = v.view.Dx()/2 - p.wide
	p.right = p.left + p.wide
	return p
}

// stripShift is how far rectos begin to the right of versos where they overlap, as
// a share of their width.
const stripShift = 0.2

func (p *stripPlan) units(n float64) int { return int(n*p.density + 0.5) }

// px is a length on the page in device pixels.
func (p *stripPlan) px(l typeset.Length) int { return int(l.Points() * p.scale) }

// x is where the pages of a side begin.
func (p *stripPlan) x(side pagemodel.Side) int {
	if side == pagemodel.Recto {
		return p.right
	}
	return p.left
}

// end is where the pages of both sides end.
func (p *stripPlan) end() int { return p.right + p.wide }

// cut is how much of a page is not seen at its left.
func (p *stripPlan) cut(page *typeset.Page) typeset.Length {
	if p.narrow {
		return page.Text.X - stripCut
	}
	return 0
}

// leading is from one row to the next.
func (p *stripPlan) leading() typeset.Length { return p.d.of.Collection().Design().Leading }

// deep is how deep a strip with so many rows is.
func (p *stripPlan) deep(rows int) int {
	return p.units(stripTitleDepth+2*stripAir) + rows*p.px(p.leading())
}

// drawPaper draws a strip's paper, and gives where its title begins.
func (p *stripPlan) drawPaper(s *slate, page *typeset.Page, on image.Rectangle) (left, base int) {
	s.fill(on, p.d.light.palette().paper)
	return on.Min.X + p.px(page.Text.X-p.cut(page)), on.Min.Y + p.units(stripAir) + p.units(stripTitleDepth)*2/3
}

// drawRows inks rows of a page on a strip, below its title.
func (p *stripPlan) drawRows(s *slate, page *typeset.Page, rows []typeset.Row, on image.Rectangle) {
	seen := s.img.SubImage(on).(*image.RGBA)
	pen := p.d.k.masks.On(seen, p.scale, p.origin(page, on))
	for i := range rows {
		r := &rows[i]
		for j := range r.Runs {
			pen.Run(&r.Runs[j], stripX(page, r)+r.Runs[j].X, p.baseline(i), p.d.light.palette().ink)
		}
	}
}

// origin is the device pixel of a page's left edge, at the height where the rows
// of a strip begin.
func (p *stripPlan) origin(page *typeset.Page, on image.Rectangle) image.Point {
	return image.Pt(on.Min.X-p.px(p.cut(page)), on.Min.Y+p.units(stripAir+stripTitleDepth))
}

// baseline is that of the i-th row of a strip, from where its rows begin.
func (p *stripPlan) baseline(i int) typeset.Length {
	return p.leading()*typeset.Length(i) + p.leading()*4/5
}

// stripX is where a row begins on a strip: there a row that lies on its side is
// upright.
func stripX(page *typeset.Page, r *typeset.Row) typeset.Length {
	if r.Turned {
		return page.Text.X
	}
	return r.X
}
