package ui

import (
	"headland/pagemodel"
)

// Space as meaning, set by hand: how far the line at hand is indented, where it
// begins, and the white above it. A gap within it is the caret's.

func (d *desk) indentMore() { d.withLine(indentEdit(pagemodel.OneEm)) }

func (d *desk) indentLess() { d.withLine(indentEdit(-pagemodel.OneEm)) }

// indentEdit indents a line by so much more, wherever the caret is.
func indentEdit(by pagemodel.Em) func(pagemodel.LineRef, pagemodel.Line) pagemodel.Edit {
	return func(ref pagemodel.LineRef, line pagemodel.Line) pagemodel.Edit {
		return pagemodel.Indent{LineRef: ref, To: max(0, line.Indent()+by)}
	}
}

func (d *desk) dropLine() { d.overrule(d.dropEdit) }

// dropEdit has a line begin where the line above it ended, or at its indent
// again.
func (d *desk) dropEdit(ref pagemodel.LineRef, line pagemodel.Line) pagemodel.Edit {
	if !d.hasLineAbove(ref) && !line.Dropped() {
		d.tell("It begins its stanza: there is no line above for it to begin at the end of")
		return nil
	}
	return pagemodel.Drop{LineRef: ref, Dropped: !line.Dropped()}
}

// hasLineAbove says that a line is not the first of its stanza.
func (d *desk) hasLineAbove(ref pagemodel.LineRef) bool {
	_, at, err := d.session.Collection().Line(ref)
	return err == nil && at.Line > 0
}

func (d *desk) whiteMore() { d.overrule(d.whiteEdit(1)) }

func (d *desk) whiteLess() { d.overrule(d.whiteEdit(-1)) }

// whiteEdit has so many more lines of white stand above a line, besides what
// parts stanzas.
func (d *desk) whiteEdit(by int) func(pagemodel.LineRef, pagemodel.Line) pagemodel.Edit {
	return func(ref pagemodel.LineRef, line pagemodel.Line) pagemodel.Edit {
		if line.Above()+by < 0 {
			d.tell("No white of its own stands above the line")
			return nil
		}
		return pagemodel.SetAbove{LineRef: ref, Lines: line.Above() + by}
	}
}

// spaceItems are what can be said of the space about the line at hand.
func (d *desk) spaceItems(ref pagemodel.LineRef, line pagemodel.Line) []lineItem {
	items := []lineItem{{"White above it: a line more", d.whiteMore}}
	if line.Above() > 0 {
		items = append(items, lineItem{"White above it: a line less", d.whiteLess})
	}
	switch {
	case line.Dropped():
		items = append(items, lineItem{"Begin it at its indent again", d.dropLine})
	case d.hasLineAbove(ref):
		items = append(items, lineItem{"Begin it where the line above ended", d.dropLine})
	}
	return items
}
