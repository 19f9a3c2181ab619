package ui

import (
	"fmt"
	"slices"
	"time"
)

// sheetLead is a lead, in device pixels from the left of the foot.
type sheetLead struct {
	from, to int
	open     bool // it is being read
	left     int  // then, how far what is left of it reaches
	hollow   bool // it is left out, as the time is short
	notches  []int
}

// stub is how wide the lead of what is left out is, in the toolkit's units.
const stub = 7

// leads are the leads that are not used up, one after another.
func (s *readingSheet) leads(on *slate) []sheetLead {
	var all []sheetLead
	x, gap := float64(on.px(s.set.Format.Side)), float64(sheetLeadGap)*on.density
	for i := s.item(); i < len(s.plan.Items); i++ {
		item, open := &s.plan.Items[i], i == s.item()
		long := item.Seconds * s.perSecond(on)
		lead := sheetLead{open: open, hollow: item.Dropped && !open}
		switch {
		case !open && s.clock.isTaken(i):
			continue
		case lead.hollow:
			long = stub*on.density + gap
		}
		lead.from, lead.to = int(x), max(int(x)+1, int(x+long-min(gap, long/4)))
		if open {
			lead.left = lead.from + int(float64(lead.to-lead.from)*s.leftShare(i))
			lead.notches = s.notches(&lead, i)
		}
		all = append(all, lead)
		x += long
	}
	return all
}

// perSecond is how many device pixels a second is: the whole time, or the slot where
// that is longer, takes the measure.
func (s *readingSheet) perSecond(on *slate) float64 {
	f := &s.set.Format
	return float64(on.px(f.Trim.Width-2*f.Side)) / max(1, s.plan.Slot, s.plan.Total)
}

// spentOn is the time taken so far by the item that is open.
func (s *readingSheet) spentOn(item int) time.Duration {
	s.clock.count()
	return s.clock.items[item].spent
}

// leftShare is how much of an item's lead is left, from 1 to 0.
func (s *readingSheet) leftShare(item int) float64 {
	planned := s.plan.Items[item].Seconds
	if planned <= 0 {
		return 0
	}
	return max(0, 1-s.spentOn(item).Seconds()/planned)
}

// notches are where an item's stumbles lie along its lead, by when they were: at its
// right end what has been read first.
func (s *readingSheet) notches(lead *sheetLead, item int) []int {
	var all []int
	for _, at := range s.clock.items[item].stumbles {
		share := min(1, at.Seconds()/max(1, s.plan.Items[item].Seconds))
		all = append(all, lead.to-int(share*float64(lead.to-lead.from)))
	}
	return all
}

// overrun is by how many seconds the open item takes longer than planned.
func (s *readingSheet) overrun() float64 {
	item := s.item()
	return max(0, s.spentOn(item).Seconds()-s.plan.Items[item].Seconds)
}

// before is how many seconds were gone when the open item began: by the clock, and
// by the plan for what was passed over before it was started.
func (s *readingSheet) gone() float64 {
	if !s.clock.started() {
		return s.startOf(s.item())
	}
	return s.begun + (s.clock.spent - s.spentOn(s.item())).Seconds()
}

// slotEnd is where the slot ends if what is being read takes as long as planned; as
// soon as it takes longer the bar comes nearer. False where there is no slot, and
// once it is over before what is being read.
func (s *readingSheet) slotEnd(on *slate) (int, bool) {
	left := s.plan.Slot - s.gone() - s.overrun()
	if s.plan.Slot == 0 {
		return 0, false
	}
	return on.px(s.set.Format.Side) + int(max(0, left)*s.perSecond(on)), true
}

// footWords are the words at the foot: what can be done while the clock is not on,
// and while it is the time, if it is wanted. What must not be missed stands first and
// last.
func (s *readingSheet) footWords() []sheetPress {
	leave := sheetPress{words: "Esc leaves it", act: s.lift}
	if s.clock.started() && s.open() != nil {
		leave.words = "Esc ends the run-through and keeps what is timed"
	}
	var words []sheetPress
	switch {
	case s.open() == nil:
		words = []sheetPress{leave}
	case !s.clock.started():
		words = []sheetPress{
			{words: "Enter starts the clock", act: s.startOrStand}, {words: "Page Down goes on", act: s.goOn}, {words: "Page Up goes back", act: s.goBack},
			{words: "Ctrl+T says the time", act: s.sayTime}, leave,
		}
	case !s.clock.going():
		words = []sheetPress{
			{words: "the clock stands"}, {words: "Enter sets it going", act: s.startOrStand}, {words: "Home begins this again", act: s.again},
			{words: "Backspace marks a stumble"}, leave,
		}
	case s.timed:
		words = s.leftWords()
	}
	if s.said != "" && (s.open() == nil || s.timed || !s.clock.going()) {
		words = slices.Insert(words, 0, sheetPress{words: s.said})
	}
	return words
}

// sayTime has the time said in words, or not.
func (s *readingSheet) sayTime() {
	s.timed = !s.timed
	s.strip.Refresh()
}

// leftWords say the time: what is left of the item, and of the slot or the whole.
func (s *readingSheet) leftWords() []sheetPress {
	item := s.item()
	left := spanWords(s.plan.Items[item].Seconds-s.spentOn(item).Seconds(), " left in this")
	all := s.gone() + s.spentOn(item).Seconds()
	end := spanWords(s.plan.Total-all, " to the end")
	if s.plan.Slot > 0 {
		end = spanWords(s.plan.Slot-all, " to the end of the slot")
	}
	return []sheetPress{{words: left}, {words: fmt.Sprintf("%d of %d", item+1, len(s.plan.Items))}, {words: end}}
}

// spanWords say a time that is left, or by how much it is over.
func spanWords(seconds float64, of string) string {
	if seconds <= -0.5 {
		return clock(seconds) + " over"
	}
	return clock(seconds) + of
}

// tookWords say what the whole reading took.
func (s *readingSheet) tookWords() string {
	words := clock(s.clock.spent.Seconds())
	if s.plan.Slot > 0 {
		words += " of " + clock(s.plan.Slot)
	}
	return words
}

// endWords say what was planned, and how often the reader stumbled.
func (s *readingSheet) endWords() []string {
	words := []string{"planned: " + clock(s.plan.Total)}
	stumbles := 0
	for i := range s.clock.items {
		stumbles += len(s.clock.items[i].stumbles)
	}
	if stumbles > 0 {
		words[0] += " · " + counted(stumbles, "stumble", "stumbles")
	}
	return words
}
