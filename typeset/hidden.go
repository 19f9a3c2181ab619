package typeset

import "headland/pagemodel"

// signHidden puts the design's sign at the foot of a page whose end hides a
// stanza break: an asterism's single star, on the row below the last, in the
// middle of the measure (some journals print "(stanza break)" there; common
// practice, no source).
func (s *Setting) signHidden(p *Page, c *chain, plan *plan, page int) {
	_, to := c.pageOf(plan, page)
	if s.design.Hidden != pagemodel.HiddenSign || len(p.Rows) == 0 || to == len(c.steps) || c.opens(to) || !c.steps[to].white {
		return
	}
	last := &p.Rows[len(p.Rows)-1]
	run := s.setter.Words("*", WordStyle{Family: s.design.Face, Size: s.design.Size})
	row := Row{Role: RoleSign, Grid: last.Grid + 1, Width: run.Width, Room: p.Text.W, End: 1, Runs: []Run{run}}
	row.X = p.Text.X + (p.Text.W-run.Width)/2
	row.Baseline = s.design.Baseline(row.Grid)
	p.Rows = append(p.Rows, row)
}
