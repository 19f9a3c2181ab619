package ui

import (
	"fmt"

	"headland/pagemodel"
)

// help is what the middle of the desk's foot says: what was last told, what
// the hand or the keys hold, or what can be done with what they are on.
func (d *desk) help() string {
	switch {
	case d.said != "":
		return d.said
	case d.hand.grip != nil:
		return d.hand.say(len(d.moving))
	case d.typing != nil:
		return "Type · Enter keeps the line · Esc puts it back"
	case d.over.kind != overNothing:
		if words := d.overHelp(); words != "" {
			return words
		}
	}
	if f, ok := d.faultAtHand(); ok {
		return d.faultHelp(f)
	}
	if line, ok := d.lineAtHand(); ok {
		return d.lineHelp(line)
	}
	return "Take the rule at a line’s end: left sheds words, right draws them up"
}

// lineHelp says what was decided about the line at hand, and what can be done
// with it.
func (d *desk) lineHelp(line pagemodel.Line) string {
	ref, _ := d.session.Focus()
	if d.isUnsettled(ref) {
		const keys = "Ctrl Shift C lays out every choice for the line · Alt ← sheds a word, Alt → draws one up · Ctrl ↓ goes to the next unsettled"
		if why := d.whyAgain(); why != "" {
			return sentence(d.stateOf(ref)) + " · Ctrl K lets it turn there · " + keys
		}
		return keys
	}
	if decided := d.decided(ref, line); decided != "" {
		return decided + " · Ctrl Shift N notes why · Ctrl Shift L lists all decisions"
	}
	return "Alt ← sheds a word, Alt → draws one up · Enter retypes · Ctrl Enter breaks before the caret"
}

// overHelp says what can be done with what the hand is over.
func (d *desk) overHelp() string {
	switch d.over.kind {
	case overRule:
		return "Take the rule: left sheds words, right draws them up (Alt ← →)"
	case overWord:
		return d.wordHelp()
	case overEdge, overTick:
		return d.pageWords(d.over.spread) + d.nameOn(d.over.spread)
	case overUnsettled:
		return "Press: on to the next line unsettled (Ctrl ↓)"
	case overSettled:
		return "Press: all that was decided about lines (Ctrl Shift L)"
	case overFaults:
		return "Press: on to the next fault (Ctrl Shift ↓)"
	case overFault:
		return d.faultHelp(d.over.fault)
	case overEnd:
		return sentence(d.pageEnd(d.over.page).Text)
	case overStroke:
		return d.strokeHelp()
	case overSent:
		return "Press: the pages as they went out are laid over these (Ctrl R) · Ctrl Shift R lists the corrections"
	case overSlip:
		return "Press: work on this page"
	}
	return ""
}

// strokeHelp says what the stroke under the hand stands for.
func (d *desk) strokeHelp() string {
	if _, _, err := d.of.Collection().Line(d.over.ref); err != nil {
		return ""
	}
	return sentence(d.stateOf(d.over.ref)) + " · press: every choice for the line, on a leaf (Ctrl Shift C)"
}

func (d *desk) wordHelp() string {
	poem, at, err := d.of.Collection().Line(d.over.ref)
	if err != nil {
		return ""
	}
	line := poem.Line(at)
	if over := d.overrunOf(d.over.ref); over > 0 {
		return fmt.Sprintf("%s than the measure, %s · drag its rule, or press the right button for what can be done", longer(over), d.stateOf(d.over.ref))
	}
	i, ok := wordAt(line.Text(), d.over.offset)
	if !ok {
		return ""
	}
	w := pagemodel.Words(line.Text())[i]
	if i == 0 {
		return "Pull the first word right to indent the line (Ctrl Shift →) · Enter retypes"
	}
	return "Pull " + quoted(line.Text()[w.Start:w.End]) + " right for a gap before it (Ctrl Shift →) · Enter retypes the line"
}

func longer(over pagemodel.Length) string { return fmt.Sprintf("%.1f pt longer", over.Points()) }

// overrunOf is by how much a line on the open pages exceeds its room.
func (d *desk) overrunOf(ref pagemodel.LineRef) pagemodel.Length {
	for _, s := range d.plan.sheets {
		for _, r := range d.page(s.number).Rows {
			if r.Line != 0 && r.Ref() == ref && r.Overrun > 0 {
				return r.Overrun
			}
		}
	}
	return 0
}

// nameOn is the poem that a spread shows, for after its page numbers.
func (d *desk) nameOn(s pagemodel.Spread) string {
	for _, page := range [...]int{s.Recto, s.Verso} {
		id, ok := d.of.PoemOn(page)
		if poem, _, in := d.of.Collection().Poem(id); ok && in {
			return " · " + poem.Name()
		}
	}
	return ""
}
