package ui

import (
	"cmp"
	"slices"

	"headland/pagemodel"
	"headland/typeset"
)

// faultsOf are the faults of a setting, page by page from the head down; those
// of the whole book come first.
func faultsOf(set *typeset.Setting) []typeset.Fault {
	faults := set.Faults()
	slices.SortStableFunc(faults, func(a, b typeset.Fault) int {
		return cmp.Or(cmp.Compare(a.Page, b.Page), cmp.Compare(a.Row, b.Row))
	})
	return faults
}

func (d *desk) nextFault() { d.toFault(1) }

func (d *desk) faultBefore() { d.toFault(-1) }

// toFault goes to the next fault after the one at hand, or before it, and round
// the book.
func (d *desk) toFault(by int) {
	d.settleHand()
	d.said = ""
	if len(d.faults) == 0 {
		d.tell("No fault is found")
		return
	}
	d.goToFault(d.faults[d.besideFault(by)])
}

// besideFault is the index of the fault to go to.
func (d *desk) besideFault(by int) int {
	n := len(d.faults)
	if at := d.indexAtHand(); at >= 0 {
		return (at + by + n) % n
	}
	after := 0 // the first fault that lies after where we are
	for i := range d.faults {
		if d.faults[i].Page < max(1, d.spread.Verso) {
			after = i + 1
		}
	}
	if by < 0 {
		after--
	}
	return (after + n) % n
}

// goToFault opens the book at a fault and puts its line at hand. One of the
// whole book is only told of.
func (d *desk) goToFault(f typeset.Fault) {
	d.fault, d.said, d.word = f, "", -1
	if f.Page == 0 {
		d.session.ClearFocus()
		d.tell(sentence(f.Text))
		return
	}
	if d.spread != pagemodel.SpreadOf(f.Page, d.of.Extent()) || d.plan.narrow {
		d.showPage(f.Page)
	}
	if f.Line.Line != 0 && d.inSight(f.Line) {
		d.session.SetFocus(f.Line)
	} else {
		d.session.ClearFocus()
	}
	d.refresh(pageParts | footPart)
}

// faultAtHand is the fault gone to last while nothing else was put at hand, or
// else the first that the line at hand has.
func (d *desk) faultAtHand() (typeset.Fault, bool) {
	if i := d.indexAtHand(); i >= 0 {
		return d.faults[i], true
	}
	return typeset.Fault{}, false
}

// indexAtHand is the index of the fault at hand, or -1.
func (d *desk) indexAtHand() int {
	ref, focused := d.session.Focus()
	focused = focused && d.inSight(ref)
	if !focused || ref == d.fault.Line {
		last := slices.IndexFunc(d.faults, func(f typeset.Fault) bool {
			return f.Kind == d.fault.Kind && f.Poem == d.fault.Poem && f.Line == d.fault.Line && d.liesOpen(f)
		})
		if last >= 0 {
			return last
		}
	}
	return slices.IndexFunc(d.faults, func(f typeset.Fault) bool { return focused && f.Line == ref && d.liesOpen(f) })
}

// liesOpen says that a fault is on the open pages, or of the whole book.
func (d *desk) liesOpen(f typeset.Fault) bool {
	return f.Page == 0 || f.Page == d.spread.Verso || f.Page == d.spread.Recto
}

// faultHelp says what a fault is, why the page ends there where that is so, and
// how to find what would mend it.
func (d *desk) faultHelp(f typeset.Fault) string {
	words := kindOf(f).letter + ": " + f.Text
	if why := d.of.Why(f); why != "" {
		words += " · why there: " + why
	}
	return words + " · Ctrl M: what would mend it"
}
