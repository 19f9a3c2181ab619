package ui

import (
	"headland/pagemodel"
	"headland/typeset"
)

// turnLeaf turns the leaf: forward by 1, back by -1.
func (d *desk) turnLeaf(by int) {
	at := d.session.Spread()
	page := max(at.Verso, at.Recto) + 1
	if by < 0 {
		page = at.Verso - 1
		if at.Verso == 0 {
			page = 1
		}
	}
	d.said = ""
	if page <= d.of.Extent() {
		d.showPage(max(1, page))
	}
}

// toEnd opens the book at its first spread or its last.
func (d *desk) toEnd(last bool) {
	d.said = ""
	if last {
		d.showPage(d.of.Extent())
		return
	}
	d.showPage(1)
}

// walkLine goes so many of the poet's lines on (1) or back (-1), through the
// whole book. Where no line at hand is in sight it begins with the first of the
// open pages, or the last; where they have none, with the next page that has.
func (d *desk) walkLine(by int) {
	d.said = ""
	if ref, ok := d.session.Focus(); ok && d.inSight(ref) {
		if ref, ok = d.lineBeside(ref, by); ok {
			d.goTo(ref)
		}
		return
	}
	ref, ok := d.lineInSight(by < 0)
	from := max(d.spread.Verso, d.spread.Recto)
	if by < 0 {
		from = d.spread.Verso
	}
	for number := from + by; !ok && number > 0 && number <= d.of.Extent(); number += by {
		ref, ok = lineOn(d.page(number), by < 0)
	}
	if ok {
		d.goTo(ref)
	}
}

// inSight says that a row of the line is on the open pages.
func (d *desk) inSight(ref pagemodel.LineRef) bool {
	return len(rowsOf(d.page(d.spread.Verso), ref)) > 0 || len(rowsOf(d.page(d.spread.Recto), ref)) > 0
}

// lineInSight is the first line of the open pages, or the last.
func (d *desk) lineInSight(last bool) (found pagemodel.LineRef, ok bool) {
	for _, number := range [...]int{d.spread.Verso, d.spread.Recto} {
		if ref, there := lineOn(d.page(number), last); there && (last || !ok) {
			found, ok = ref, true
		}
	}
	return found, ok
}

// lineOn is the first line of a page, or the last.
func lineOn(page *typeset.Page, last bool) (found pagemodel.LineRef, ok bool) {
	for _, r := range page.Rows {
		if r.Line != 0 && (last || !ok) {
			found, ok = r.Ref(), true
		}
	}
	return found, ok
}

// lineBeside is the line after (1) or before (-1) a line, in the order of the
// book.
func (d *desk) lineBeside(ref pagemodel.LineRef, by int) (pagemodel.LineRef, bool) {
	var before pagemodel.LineRef
	found := false
	for _, poem := range d.of.Collection().Poems() {
		for _, line := range poem.Lines() {
			now := pagemodel.LineRef{Poem: poem.ID(), Line: line.ID()}
			switch {
			case found:
				return now, true
			case now == ref && by < 0:
				return before, before.Line != 0
			case now == ref:
				found = true
			}
			before = now
		}
	}
	return pagemodel.LineRef{}, false
}

// goTo puts a line at hand and opens the book where it is.
func (d *desk) goTo(ref pagemodel.LineRef) {
	d.word = -1
	d.session.SetFocus(ref)
	page, ok := d.of.PageOfLine(ref)
	if !ok {
		return
	}
	if d.spread != pagemodel.SpreadOf(page, d.of.Extent()) || d.plan.narrow {
		d.showPage(page)
	}
}

// toUnsettled goes to the next unsettled line after the one at hand, or before
// it, and round the book.
func (d *desk) toUnsettled(by int) {
	d.said = ""
	var open []pagemodel.LineRef
	var pages []int
	for _, o := range d.of.Turnovers() {
		if o.State == pagemodel.Unsettled {
			open, pages = append(open, o.Ref), append(pages, o.Page)
		}
	}
	if len(open) == 0 {
		d.tell("Every line is settled")
		return
	}
	d.goTo(open[d.besideOpen(open, pages, by)])
}

// besideOpen is the index of the unsettled line to go to.
func (d *desk) besideOpen(open []pagemodel.LineRef, pages []int, by int) int {
	focus, _ := d.session.Focus()
	after := 0 // the first unsettled line that lies after where we are
	for i := range open {
		if open[i] == focus && d.inSight(focus) {
			return (i + by + len(open)) % len(open)
		}
		if pages[i] < max(1, d.spread.Verso) {
			after = i + 1
		}
	}
	if by < 0 {
		return (after - 1 + len(open)) % len(open)
	}
	return after % len(open)
}

// walkWord moves the caret so many words along the line at hand.
func (d *desk) walkWord(by int) {
	line, ok := d.lineAtHand()
	if !ok {
		return
	}
	words := pagemodel.Words(line.Text())
	if len(words) == 0 {
		return
	}
	at := -1
	for i, w := range words {
		if d.word >= w.Start {
			at = i
		}
	}
	if at < 0 && by < 0 {
		at = len(words)
	}
	d.said = ""
	d.word = words[max(0, min(len(words)-1, at+by))].Start
	d.refresh(pageParts | footPart)
}
