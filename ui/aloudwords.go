package ui

import (
	"fmt"
	"math"
	"strings"

	"headland/pagemodel"
	"headland/typeset/aloud"
)

// againstSlot says what a running order takes against its slot: "18:40 of 20:00 ·
// 1:20 to spare". Both are rounded first, so that the sum is right to the second.
func againstSlot(p *aloud.Plan) string {
	if p.Reading.Slot == 0 {
		return clock(p.Whole) + " · no slot is set"
	}
	return clock(p.Whole) + " of " + clock(p.Slot) + " · " + leftWords(p.Whole, p.Reading.Slot)
}

// leftWords say what is left of a slot.
func leftWords(takes float64, slot int) string {
	switch left := slot - int(math.Round(takes)); {
	case left < 0:
		return clock(float64(-left)) + " over"
	case left == 0:
		return "to the second"
	default:
		return clock(float64(left)) + " to spare"
	}
}

// dropWords say what is left out for the slot, and what is left of it then; "" where
// nothing is.
func (a *aloudView) dropWords() string {
	var names []string
	for i := range a.plan.Items {
		if a.plan.Items[i].Dropped {
			names = append(names, a.nameOf(i))
		}
	}
	switch {
	case len(names) > 0:
		return "without " + strings.Join(names, ", ") + ": " + clock(a.plan.Total) + " · " + leftWords(a.plan.Total, a.reading.Slot)
	case a.plan.Over > 0:
		return "none is marked to be dropped"
	}
	return ""
}

// nameOf is what an item is called in a sentence.
func (a *aloudView) nameOf(i int) string {
	if item := &a.reading.Items[i]; isTalk(item) {
		return "what is said"
	}
	return quoted(strings.Trim(a.titleOf(i), "“”"))
}

// titleOf is an item's title; for talk alone, what is said.
func (a *aloudView) titleOf(i int) string {
	if item := &a.reading.Items[i]; isTalk(item) {
		return item.Before
	}
	return a.plan.Items[i].Title
}

// isTalk says that nothing is read, only said.
func isTalk(i *pagemodel.Item) bool { return i.Poem == 0 && i.Title == "" && i.Text == "" }

// underItem are the words below an item's title: what of it is read, and how.
func (a *aloudView) underItem(i int) string {
	item := &a.reading.Items[i]
	var words []string
	if item.From != 0 {
		words = append(words, a.extractWords(item))
	}
	if item.Poem == 0 && !isTalk(item) {
		words = append(words, "from elsewhere")
	}
	for _, s := range item.Said {
		words = append(words, quoted(s.Word)+" said as "+quoted(s.As))
	}
	return strings.Join(words, " · ")
}

// poemOf is an item's poem, in the book or left out of it.
func (a *aloudView) poemOf(item *pagemodel.Item) (*pagemodel.Poem, bool) {
	c := a.w.session.Collection()
	if poem, _, ok := c.Poem(item.Poem); ok {
		return poem, true
	}
	for _, poem := range c.LeftOut() {
		if poem.ID() == item.Poem {
			return poem, true
		}
	}
	return nil, false
}

// extractWords say which lines of a poem are read.
func (a *aloudView) extractWords(item *pagemodel.Item) string {
	poem, ok := a.poemOf(item)
	if !ok {
		return ""
	}
	n, from, to := 0, 0, 0
	for _, l := range poem.Lines() {
		n++
		if l.ID() == item.From {
			from = n
		}
		if l.ID() == item.To {
			to = n
		}
	}
	if from == 0 || to == 0 {
		return "the lines chosen are no longer in it"
	}
	if from == to {
		return fmt.Sprintf("line %d of %d only", from, n)
	}
	return fmt.Sprintf("lines %d to %d of %d", from, to, n)
}

// folioOf is the folio to turn to for an item, "" for none.
func (a *aloudView) folioOf(i int) string {
	item, set := &a.reading.Items[i], a.w.session.Setting()
	page, ok := set.PageOfPoem(item.Poem)
	if item.From != 0 {
		if p, in := set.PageOfLine(pagemodel.LineRef{Poem: item.Poem, Line: item.From}); in {
			page, ok = p, true
		}
	}
	if item.Poem == 0 || !ok {
		return ""
	}
	return set.FolioOf(page)
}

// slotWords say how long there is.
func slotWords(seconds int) string {
	switch {
	case seconds == 0:
		return "no limit"
	case seconds < 60:
		return counted(seconds, "second", "seconds")
	case seconds%60 == 0:
		return counted(seconds/60, "minute", "minutes")
	}
	return clock(float64(seconds)) + " minutes"
}

// occasionWords are where, when and how long.
func (a *aloudView) occasionWords() string {
	r := &a.reading
	if r.Occasion == "" && r.On == "" && r.Slot == 0 {
		return "Where, when, and how long there is…"
	}
	return dotted(r.Occasion, onDayWords(r.On), slotWords(r.Slot))
}
