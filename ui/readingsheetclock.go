package ui

import (
	"slices"
	"time"

	"headland/pagemodel"
	"headland/typeset/aloud"
	"headland/ui/session"
)

// An item that was only leafed past has no time. To have been read it must have lain
// open, while the clock was on, for two seconds and for a third of what the plan
// reckons: nobody reads three times as fast (both numbers our own choice).
const (
	turnedPast   = 2 * time.Second
	turnedPartOf = 3
)

// runClock times a running order as it is read through. It is started once. Every
// moment while it goes belongs to the item that lies open then, also when it is
// gone back to: an item's time is the sum of its moments. It is taken when the
// reader moves on from the item's end to what comes after, and taken anew if that
// happens again; an item begun again from its head begins at nothing. What nobody
// moved on from is not taken.
type runClock struct {
	now   func() time.Time
	at    time.Time // when it was started; zero before
	since time.Time // from when on the moments are not yet counted; zero while it stands
	spent time.Duration
	items []itemTime
	least []time.Duration // of each item: what has taken less was leafed past
	taken []takenTime     // in the order in which they were first taken
	item  int             // that lies open
}

// itemTime is what an item took.
type itemTime struct {
	spent    time.Duration
	stumbles []time.Duration // from its beginning
}

// takenTime is what an item took when the reader moved on from it.
type takenTime struct {
	item int
	itemTime
}

func newRunClock(now func() time.Time, items []aloud.Timed) *runClock {
	c := &runClock{now: now, items: make([]itemTime, len(items))}
	for i := range items {
		part := time.Duration(items[i].Seconds / turnedPartOf * float64(time.Second))
		c.least = append(c.least, max(turnedPast, part))
	}
	return c
}

// started says that the clock has been started, going says that it goes.
func (c *runClock) started() bool { return !c.at.IsZero() }
func (c *runClock) going() bool   { return !c.since.IsZero() }

// start starts it, or sets it going again, with an item open.
func (c *runClock) start(item int) {
	c.item, c.since = item, c.now()
	if c.at.IsZero() {
		c.at = c.since
	}
}

// stand has it stand.
func (c *runClock) stand() {
	c.count()
	c.since = time.Time{}
}

// count gives the moments since it last did so to the item that lies open.
func (c *runClock) count() {
	if !c.going() {
		return
	}
	now := c.now()
	gone := now.Sub(c.since)
	c.since = now
	c.spent += gone
	if c.item < len(c.items) {
		c.items[c.item].spent += gone
	}
}

// turn opens another item. on says that the reader moved on to it from the end of
// the one that lay open: then that one's time is taken, unless it was leafed past.
func (c *runClock) turn(item int, on bool) {
	c.count()
	if on && c.started() && c.item < len(c.items) && c.items[c.item].spent >= c.least[c.item] {
		c.take(c.item)
	}
	c.item = item
}

func (c *runClock) take(item int) {
	now := takenTime{item, c.items[item]}
	now.stumbles = slices.Clone(now.stumbles)
	if i := c.indexOf(item); i >= 0 {
		c.taken[i] = now
		return
	}
	c.taken = append(c.taken, now)
}

func (c *runClock) indexOf(item int) int {
	return slices.IndexFunc(c.taken, func(t takenTime) bool { return t.item == item })
}

// again begins the open item again, from nothing.
func (c *runClock) again() {
	c.count()
	if c.item < len(c.items) {
		c.items[c.item] = itemTime{}
	}
}

// stumble marks a stumble now; false where nothing is timed.
func (c *runClock) stumble() bool {
	if !c.going() || c.item >= len(c.items) {
		return false
	}
	c.count()
	t := &c.items[c.item]
	t.stumbles = append(t.stumbles, t.spent)
	return true
}

// isTaken says that an item's time is taken.
func (c *runClock) isTaken(item int) bool { return c.indexOf(item) >= 0 }

// run is what was taken so far, to be kept.
func (c *runClock) run(r pagemodel.Reading) session.Run {
	run := session.Run{Reading: r.ID, At: c.at}
	for _, taken := range c.taken {
		item := &r.Items[taken.item]
		t := session.Timing{Item: item.ID, Poem: item.Poem, Ms: taken.spent.Milliseconds()}
		for _, s := range taken.stumbles {
			t.Stumbles = append(t.Stumbles, s.Milliseconds())
		}
		run.Timings = append(run.Timings, t)
	}
	return run
}
