package ui

import (
	"cmp"
	"slices"
	"time"

	"headland/ui/session"
)

// tickEvery is how often the foot is drawn again while the clock goes.
const tickEvery = time.Second / 4

// goOn opens the next leaf; behind the last one the reading is over, where it is
// timed.
func (s *readingSheet) goOn() {
	last := len(s.set.Leaves) - 1
	if s.leaf > last || s.leaf == last && !s.clock.started() {
		return
	}
	s.turnTo(s.leaf+1, true)
	if s.leaf > last {
		s.clock.stand()
		s.endRun()
	}
}

// goBack opens the leaf before; a reading that is over stays so.
func (s *readingSheet) goBack() {
	if s.leaf > 0 && s.open() != nil {
		s.turnTo(s.leaf-1, false)
	}
}

// turnTo opens a leaf. on says that it is the one after.
func (s *readingSheet) turnTo(leaf int, on bool) {
	was := s.item()
	s.leaf = leaf
	if now := s.item(); now != was {
		s.clock.turn(now, on)
		s.hold()
	}
	s.picture.Refresh()
	s.strip.Refresh()
}

// again opens the first leaf of what is being read; its time begins again.
func (s *readingSheet) again() {
	if s.open() == nil {
		return
	}
	s.clock.again()
	s.turnTo(s.set.LeafOf(s.item()), false)
}

// startOrStand starts the clock, has it stand, or sets it going again.
func (s *readingSheet) startOrStand() {
	switch {
	case s.open() == nil:
		return
	case s.clock.going():
		s.clock.stand()
		s.hold()
	default:
		if !s.clock.started() {
			s.begun = s.startOf(s.item())
		}
		s.clock.start(s.item())
		s.tickOn()
	}
	s.strip.Refresh()
}

// startOf is when an item begins by the plan, in seconds.
func (s *readingSheet) startOf(item int) float64 {
	if item >= len(s.plan.Items) {
		return s.plan.Total
	}
	return s.plan.Items[item].Starts
}

// tickOn has the foot drawn again by and by, while the clock goes.
func (s *readingSheet) tickOn() {
	if !s.ticks {
		s.ticks = true
		s.w.worker.after(tickEvery, s.tick)
	}
}

func (s *readingSheet) tick() {
	s.ticks = false
	if s.clock.going() && !s.lifted {
		s.strip.Refresh()
		s.tickOn()
	}
}

// stumble marks a stumble in what is being read.
func (s *readingSheet) stumble() {
	if s.clock.stumble() {
		s.strip.Refresh()
	}
}

// hold puts what was timed so far out of a crash's reach: whenever an item's time is
// taken.
func (s *readingSheet) hold() {
	if len(s.clock.taken) == 0 || s.open() == nil {
		return
	}
	if err := s.w.session.HoldRun(s.clock.run(s.plan.Reading)); err != nil {
		s.said = err.Error()
	}
}

// keptWords keeps a run-through that was cut off before it could be kept, and say
// so; or why it can't be.
func (w *Window) keptWords() string {
	kept, err := w.session.KeepHeldRun()
	if !kept && err == nil {
		return ""
	}
	runs, unread := w.session.Runs()
	switch {
	case err != nil:
		return err.Error()
	case unread != nil || len(runs) == 0:
		return "the run-through that was cut off is kept"
	}
	last := slices.MaxFunc(runs, func(a, b session.Run) int { return cmp.Compare(a.ID, b.ID) })
	return "the run-through that was cut off is kept: " + counted(len(last.Timings), "time", "times")
}

// endRun keeps what was timed in the file. The clock is as new then.
func (s *readingSheet) endRun() {
	if !s.clock.started() {
		return
	}
	if len(s.clock.taken) == 0 {
		s.said = "no time is kept: all was leafed past"
		return
	}
	times := counted(len(s.clock.taken), "time", "times")
	run := s.clock.run(s.plan.Reading)
	if err := s.w.session.KeepRun(run); err != nil {
		s.said = err.Error()
		s.w.desk.try(err)
	} else {
		s.said = times + " kept in the file"
	}
	s.clock.taken = nil
}
