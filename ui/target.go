package ui

import (
	"image"

	"headland/pagemodel"
	"headland/typeset"
)

// overKind is what the hand is over.
type overKind int

const (
	overNothing   overKind = iota // the desk, or an empty part of a page
	overRule                      // a line's setting rule
	overWord                      // the words of a line
	overEdge                      // a fore-edge
	overTick                      // a tick that stands out from one
	overUnsettled                 // the words that count the unsettled lines
	overSlip                      // the facing page's slip in a narrow window
)

// target is what the hand is over, and all that must be known to act on it.
type target struct {
	kind   overKind
	side   pagemodel.Side
	ref    pagemodel.LineRef // of a rule or a word
	row    int               // likewise, of the page's rows
	offset int               // in the line's text, of a word
	leaf   int               // in a fore-edge, from the page outward
	page   int               // of a tick
	spread pagemodel.Spread  // that opens at an edge or a tick
}

// under finds what lies under a device pixel.
func (d *desk) under(at image.Point) target {
	if d.session == nil {
		return target{}
	}
	if at.Y >= d.plan.view.Max.Y {
		return d.underFoot(at)
	}
	if side, ok := d.plan.sideAt(at); ok {
		return d.underPage(side, at)
	}
	return d.underEdge(at)
}

// underFoot finds the words at the foot that can be pressed.
func (d *desk) underFoot(at image.Point) target {
	run := d.k.words(unsettledWords(d.of.Unsettled()), wordSize, false)
	end := d.plan.units(sideMargin + run.Width.Points())
	if d.of.Unsettled() > 0 && at.X < end+d.plan.units(8) && at.X > d.plan.units(sideMargin/2) {
		return target{kind: overUnsettled}
	}
	return target{}
}

// underEdge finds the leaf or the tick.
func (d *desk) underEdge(at image.Point) target {
	extent := d.of.Extent()
	if t, ok := d.plan.tickAt(d.placed, at); ok {
		return target{kind: overTick, side: pagemodel.Side(t.edge), leaf: t.leaf, page: t.page, spread: pagemodel.SpreadOf(t.page, extent)}
	}
	for side := range d.plan.edges {
		e := &d.plan.edges[side]
		if i, ok := e.at(at); ok {
			return target{kind: overEdge, side: pagemodel.Side(side), leaf: i, spread: e.spread(i, extent)}
		}
	}
	return target{}
}

// underPage finds the rule or the word. A rule comes first: its area lies over
// the end of its line.
func (d *desk) underPage(side pagemodel.Side, at image.Point) target {
	if d.plan.narrow && side != d.working {
		return target{kind: overSlip, side: side}
	}
	page, p := d.page(d.plan.sheets[side].number), d.plan.toPage(side, at)
	if ref, ok := ruleUnder(&d.plan, page, p); ok {
		return target{kind: overRule, side: side, ref: ref}
	}
	row, offset, ok := page.At(p)
	if !ok || !d.onInk(&page.Rows[row], p) {
		return target{side: side}
	}
	return target{kind: overWord, side: side, ref: page.Rows[row].Ref(), row: row, offset: offset}
}

// onInk says that x is on the row's words, or near their beginning or end.
func (d *desk) onInk(r *typeset.Row, p typeset.Point) bool {
	near := d.plan.length(d.plan.units(14))
	return p.X >= r.X-near && p.X <= r.X+r.Width+near
}
