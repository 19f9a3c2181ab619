package ui

import (
	"headland/pagemodel"
)

// What the poet says about pages, over the rules of the setting: first what is
// said of the line at hand.

func (d *desk) keepBelow() { d.overrule(d.keepBelowEdit) }

// keepBelowEdit keeps the line on the page of the line below, or lets them part
// again.
func (d *desk) keepBelowEdit(ref pagemodel.LineRef, line pagemodel.Line) pagemodel.Edit {
	below, ok := d.lineBelow(ref)
	if !ok {
		d.tell("It ends its poem: there is no line below to keep it with")
		return nil
	}
	return pagemodel.KeepTogether{LineRef: ref, Through: below, Off: line.Tied()}
}

// lineBelow is the next line of the poem, over stanza breaks and parts; false
// for the last.
func (d *desk) lineBelow(ref pagemodel.LineRef) (pagemodel.LineID, bool) {
	poem, here, err := d.session.Collection().Line(ref)
	if err != nil {
		return 0, false
	}
	found := false
	for at, l := range poem.Lines() {
		if found {
			return l.ID(), true
		}
		found = at == here
	}
	return 0, false
}

func (d *desk) keepStanza() { d.overrule(d.keepStanzaEdit) }

// keepStanzaEdit keeps the line's stanza on one page, or lets it part again.
func (d *desk) keepStanzaEdit(ref pagemodel.LineRef, _ pagemodel.Line) pagemodel.Edit {
	lines := d.stanzaOf(ref)
	if len(lines) < 2 {
		d.tell("A stanza of one line can’t part")
		return nil
	}
	last := len(lines) - 1
	return pagemodel.KeepTogether{
		LineRef: pagemodel.LineRef{Poem: ref.Poem, Line: lines[0].ID()}, Through: lines[last].ID(), Off: allTied(lines[:last]),
	}
}

// stanzaOf are the lines of the stanza that a line is in.
func (d *desk) stanzaOf(ref pagemodel.LineRef) []pagemodel.Line {
	poem, at, err := d.session.Collection().Line(ref)
	if err != nil {
		return nil
	}
	return poem.Stanza(at).Lines()
}

func allTied(lines []pagemodel.Line) bool {
	for _, l := range lines {
		if !l.Tied() {
			return false
		}
	}
	return len(lines) > 0
}

func (d *desk) beginPage() { d.overrule(d.beginPageEdit) }

// beginPageEdit has a page begin with the line, or no longer.
func (d *desk) beginPageEdit(ref pagemodel.LineRef, line pagemodel.Line) pagemodel.Edit {
	return pagemodel.PageBreak{LineRef: ref, Off: line.OpensPage()}
}

// overrule does what edit makes of the line at hand and goes where the line has
// gone. What is refused leaves the book open where it was.
func (d *desk) overrule(edit func(pagemodel.LineRef, pagemodel.Line) pagemodel.Edit) {
	before := d.session.Collection()
	d.withLine(edit)
	if d.session.Collection() != before {
		d.follows()
	}
}

// follows opens the book where the line at hand has gone, so that what was done
// to it is seen.
func (d *desk) follows() {
	if ref, ok := d.session.Focus(); ok && !d.inSight(ref) {
		if page, ok := d.of.PageOfLine(ref); ok {
			said := d.said
			d.showPage(page)
			d.said = said
		}
	}
}

// overruleItems are what can be said about pages of the line at hand.
func (d *desk) overruleItems(ref pagemodel.LineRef, line pagemodel.Line) []lineItem {
	var items []lineItem
	either := func(on bool, yes, no string, act func()) {
		if on {
			yes = no
		}
		items = append(items, lineItem{yes, act})
	}
	if _, ok := d.lineBelow(ref); ok {
		either(line.Tied(), "Keep it on the page of the line below", "Let it part from the line below", d.keepBelow)
	}
	if lines := d.stanzaOf(ref); len(lines) > 1 {
		either(allTied(lines[:len(lines)-1]), "Keep its stanza whole", "Let its stanza part", d.keepStanza)
	}
	if poem, at, err := d.session.Collection().Line(ref); err == nil && at != (pagemodel.Place{}) {
		either(poem.Line(at).OpensPage(), "Begin a page with it", "Begin no page with it", d.beginPage)
	}
	return items
}
