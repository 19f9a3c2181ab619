package ui

import (
	"testing"
	"time"

	"headland/typeset/aloud"
)

// TestLeafedPast: an item has a time from a third of what is reckoned for it, and
// from two seconds; a time that it has is not lost when it is leafed past again.
func TestLeafedPast(t *testing.T) {
	for _, try := range []struct {
		reckoned float64
		ms       int
		taken    bool
	}{
		{60, 19_999, false}, {60, 20_000, true}, {3, 1_999, false}, {3, 2_000, true}, {0, 1_999, false}, {0, 2_000, true},
	} {
		held := &heldClock{time.Date(2026, 11, 25, 20, 0, 0, 0, time.UTC)}
		c := newRunClock(held.now, []aloud.Timed{{Estimate: aloud.Estimate{Seconds: try.reckoned}}, {}})
		c.start(0)
		held.pass(try.ms)
		if c.turn(1, true); c.isTaken(0) != try.taken {
			t.Errorf("%d ms of %v s: taken is %v", try.ms, try.reckoned, c.isTaken(0))
		}
		c.turn(0, false)
		c.again()
		held.pass(1_000)
		if c.turn(1, true); c.isTaken(0) != try.taken || try.taken && c.taken[0].spent != time.Duration(try.ms)*time.Millisecond {
			t.Errorf("%d ms of %v s, and leafed past again: %v", try.ms, try.reckoned, c.taken)
		}
	}
}
