package ui

import (
	"image"
	"slices"
	"strings"
	"testing"

	"fyne.io/fyne/v2"
)

// TestTheFootFitsTheWindow: in windows from 480 to 1400 units wide, and of several
// heights, what the foot says is whole and within the window, Escape is always among
// it while it says what can be done, and the words at the bar stand clear of it.
func TestTheFootFitsTheWindow(t *testing.T) {
	states := map[string][]fyne.KeyName{
		"before":   nil,
		"standing": {fyne.KeyReturn, fyne.KeyReturn},
		"going":    {fyne.KeyReturn},
	}
	for name, keys := range states {
		tb, c := readAloud(t, 3)
		s := tb.layAloudSheet(0, c)
		s.said = "1 time kept in the file"
		tb.turnBy(s, keys...)
		s.timed = name == "going"
		for width := float32(480); width <= 1400; width += 40 {
			for _, height := range []float32{480, 700, 900} {
				s.Resize(fyne.NewSize(width, height))
				tb.drawn(s)
				s.wantFoot(t, name)
			}
		}
	}
}

// wantFoot sees that the foot as it was drawn is whole and within its picture.
func (s *readingSheet) wantFoot(t *testing.T, name string) {
	t.Helper()
	all, says := s.footWords(), s.footSays()
	next, wide := 0, int(s.size.Width)
	for i, p := range s.presses {
		at := slices.IndexFunc(all[next:], func(q sheetPress) bool { return q.words == p.words })
		if at < 0 || p.at.Max.X > wide || i > 0 && p.at.Min.X <= s.presses[i-1].at.Max.X {
			t.Errorf("%s, %v: %q stands at %v among %q", name, s.size, p.words, p.at, says)
			continue
		}
		next += at + 1
	}
	if last := len(says) - 1; last < 0 || says[last] != all[len(all)-1].words || name != "going" && !strings.HasPrefix(says[last], "Esc ") {
		t.Errorf("%s, %v: the foot says %q", name, s.size, says)
	}
	if wide >= 1400 && len(says) != len(all) {
		t.Errorf("%s, %v: there is room for all, and it says %q", name, s.size, says)
	}
	s.wantLabelClear(t, name)
}

// wantLabelClear sees that the words at the bar stand clear of the others wherever
// the bar is, and within the window.
func (s *readingSheet) wantLabelClear(t *testing.T, name string) {
	t.Helper()
	w, h := int(s.strip.Size().Width), int(s.strip.Size().Height)
	on := s.w.desk.k.slate(image.NewRGBA(image.Rect(0, 0, w, h)), 1, s.w.desk.light.sheetColors().ground)
	wide := on.px(s.footRun("the slot ends", true).Width)
	for x := on.px(s.set.Format.Side); x <= w-on.px(s.set.Format.Side); x += 20 {
		at := s.slotLabel(on, x, wide)
		if at.Min.X < 0 || at.Max.X > w || at.Max.Y > h {
			t.Errorf("%s, %v: the words at the bar at %d stand at %v", name, s.size, x, at)
		}
		for _, p := range s.presses {
			glyphs := image.Rect(p.at.Min.X, s.footBase(on)-on.units(underSize), p.at.Max.X, s.footBase(on))
			if at.Overlaps(glyphs) {
				t.Errorf("%s, %v: the words at the bar stand at %v, on %q", name, s.size, at, p.words)
			}
		}
	}
}

// TestALongSayingIsCutShort: why times are not kept is still told where there is no
// room for all of it, beside the way out.
func TestALongSayingIsCutShort(t *testing.T) {
	tb, c := readAloud(t, 3)
	s := tb.layAloudSheet(0, c)
	s.said = strings.Repeat("the times can’t be kept ", 12)
	s.Resize(fyne.NewSize(700, 700))
	tb.drawn(s)
	if got := s.presses; len(got) != 2 || got[0].act != nil || got[1].words != "Esc leaves it" || got[1].at.Max.X > 700 || got[0].at.Dx() < 200 {
		t.Errorf("the foot says %+v", got)
	}
}
