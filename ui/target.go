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
	overFaults                    // the words that count the faults
	overFault                     // the mark of a fault
	overEnd                       // the words that say what the page end falls on
	overStroke                    // the stroke or the letter of an overlong line
	overSent                      // the sliver of the last round’s sheet
	overSettled                   // the words that say that every line is settled
)

// target is what the hand is over, and all that must be known to act on it.
type target struct {
	kind   overKind
	side   pagemodel.Side
	ref    pagemodel.LineRef // of a rule, a word or a stroke
	row    int               // likewise, of the page's rows
	offset int               // in the line's text, of a word
	leaf   int               // in a fore-edge, from the page outward
	page   int               // of a tick or of the words at a page's end
	fault  typeset.Fault     // whose mark it is
	spread pagemodel.Spread  // that opens at an edge or a tick
}

// under finds what lies under a device pixel.
func (d *desk) under(at image.Point) target {
	if d.session == nil {
		return target{}
	}
	if at.In(d.plan.sliver) {
		return target{kind: overSent}
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
	near := d.plan.units(8)
	x := d.plan.units(sideMargin)
	for _, w := range d.counts() {
		end := x + d.plan.units(d.k.words(w.words, wordSize, false).Width.Points())
		if w.pressed != overNothing && at.X >= x-near && at.X < end+near {
			return target{kind: w.pressed}
		}
		x = end + d.plan.units(countGap)
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
	if t, ok := d.underStroke(side, page, p); ok {
		return t
	}
	if t, ok := d.underSigns(side, page, p); ok {
		return t
	}
	row, offset, ok := textAt(page, p)
	if !ok || !d.onInk(page, &page.Rows[row], p) {
		return target{side: side}
	}
	return target{kind: overWord, side: side, ref: page.Rows[row].Ref(), row: row, offset: offset}
}

// textAt finds the text at a point of a page as [typeset.Page.At] does, and also
// where rows lie on their side.
func textAt(page *typeset.Page, p typeset.Point) (row, offset int, ok bool) {
	far := typeset.Length(1 << 30)
	for i := range page.Rows {
		r := &page.Rows[i]
		away := distance(p.X, r.Baseline-sizeOf(r)/3)
		if r.Turned && r.Line != 0 && away <= sizeOf(r) && away < far {
			row, far, ok = i, away, true
		}
	}
	if ok {
		return row, page.Rows[row].OffsetAt(page.Trim.Height - p.Y), true
	}
	return page.At(p)
}

// onInk says that a point is on the row's words, or near their beginning or end.
func (d *desk) onInk(page *typeset.Page, r *typeset.Row, p typeset.Point) bool {
	near, along := d.plan.length(d.plan.units(14)), p.X
	if r.Turned {
		along = page.Trim.Height - p.Y
	}
	return along >= r.X-near && along <= r.X+r.Width+near
}
