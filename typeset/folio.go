package typeset

import "headland/pagemodel"

// folio sets the page's number at the foot, at the outer edge of the text: two
// lines below it, or half way down the foot margin where that is less.
func (s *Setting) folio(p *Page) Row {
	d := &s.design
	run := s.setter.Words(p.Folio, WordStyle{Family: d.Face, Size: d.Size})
	x := p.Text.X
	if p.Side == pagemodel.Recto {
		x += p.Text.W - run.Width
	}
	below := min(2*d.Leading, d.Margins.Foot/2)
	return Row{
		Role: RoleFolio, X: x, Baseline: p.Text.Y + p.Text.H + below,
		Width: run.Width, Room: p.Text.W, End: len(p.Folio), Runs: []Run{run},
	}
}
