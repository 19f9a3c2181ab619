package ui

import (
	"image"
	"slices"

	"headland/pagemodel"
	"headland/typeset"
)

// Places at the foot of the reading sheet, in the toolkit's units.
const (
	sheetBarTop    = 2  // of the bar where the slot ends
	sheetBarDepth  = 30 // and its depth
	sheetLeadTop   = 17 // of the leads, half way down the bar
	sheetFootRise  = 22 // from the window's foot to the baseline of the words
	sheetFootEdge  = 12 // that words keep from the window's right edge
	sheetLabelOver = 14 // the baseline of the bar's label above the leads
	sheetLabelDown = 14 // from the bar's foot to that of its label below it
)

// footApart is what stands between two things said at the foot.
const footApart = " · "

// units is a number of the toolkit's units in device pixels.
func (s *slate) units(n int) int { return s.px(pagemodel.Pt(float64(n))) }

// footBase is the baseline of the words at the foot: below the leads even where the
// foot is shallow.
func (s *readingSheet) footBase(on *slate) int {
	depth := on.img.Rect.Dy()
	least := on.units(sheetBarTop + sheetBarDepth + 12)
	return min(max(depth-on.units(sheetFootRise), least), depth-on.units(4))
}

// drawFootWords writes what can be done now, or the time, and remembers where what
// can be pressed lies.
func (s *readingSheet) drawFootWords(on *slate) {
	ink := s.w.desk.light.sheetColors().quiet
	x, base := on.px(s.set.Format.Side), s.footBase(on)
	presses, runs := s.fittedFoot(on, on.img.Rect.Dx()-on.units(sheetFootEdge)-x)
	for i := range presses {
		if i > 0 {
			x = on.write(s.footRun(footApart, false), x, base, ink)
		}
		end := on.write(runs[i], x, base, ink)
		presses[i].at = image.Rect(x, base-on.units(20), end, base+on.units(12))
		x = end
	}
	s.presses = presses
}

// fittedFoot are the words at the foot for which there is room, and as they are
// written: things are left out whole, from the middle, so that the way out stays.
// Only what is said of a run-through is cut short, where even that is too long.
func (s *readingSheet) fittedFoot(on *slate, room int) ([]sheetPress, []typeset.Run) {
	presses := s.footWords()
	var runs []typeset.Run
	for _, p := range presses {
		runs = append(runs, s.footRun(p.words, p.act == nil))
	}
	for s.footWidth(on, runs) > room && len(runs) > 2 {
		i := len(runs) / 2
		presses, runs = slices.Delete(presses, i, i+1), slices.Delete(runs, i, i+1)
	}
	if len(runs) == 2 && s.footWidth(on, runs) > room {
		if presses[0].words != s.said {
			return presses[1:], runs[1:]
		}
		runs[0] = fitted(s.said, func(words string) (typeset.Run, bool) {
			run := s.footRun(words, true)
			return run, s.footWidth(on, []typeset.Run{run, runs[1]}) <= room
		})
	}
	return presses, runs
}

func (s *readingSheet) footRun(words string, italic bool) typeset.Run {
	return s.w.desk.k.words(words, underSize, italic)
}

// footWidth is the width of things said one after another, in device pixels.
func (s *readingSheet) footWidth(on *slate, runs []typeset.Run) int {
	wide, apart := 0, on.px(s.footRun(footApart, false).Width)
	for i := range runs {
		if i > 0 {
			wide += apart
		}
		wide += on.px(runs[i].Width)
	}
	return wide
}

// drawSlotEnd draws the bar where the slot ends.
func (s *readingSheet) drawSlotEnd(on *slate, x int) {
	colors := s.w.desk.light.sheetColors()
	on.fill(image.Rect(x, on.units(sheetBarTop), x+max(2, on.units(2)), on.units(sheetBarTop+sheetBarDepth)), colors.words)
	run := s.footRun("the slot ends", true)
	at := s.slotLabel(on, x, on.px(run.Width))
	on.write(run, at.Min.X, at.Max.Y, colors.quiet)
}

// slotLabel is where the bar's label stands, down to its baseline (it has no
// descenders): below the bar, or above the leads where other words stand there.
func (s *readingSheet) slotLabel(on *slate, x, wide int) image.Rectangle {
	from := x + on.units(9)
	if from+wide > on.img.Rect.Dx()-on.units(sheetFootEdge) {
		from = x - on.units(7) - wide
	}
	at := func(base int) image.Rectangle { return image.Rect(from, base-on.units(underSize), from+wide, base) }
	below := at(on.units(sheetBarTop + sheetBarDepth + sheetLabelDown))
	for _, p := range s.presses {
		if below.Overlaps(p.at) {
			return at(on.units(sheetLabelOver))
		}
	}
	return below
}
