package ui

import (
	"strings"
	"testing"
	"time"

	"fyne.io/fyne/v2"

	"headland/pagemodel"
	"headland/ui/session"
)

// timedTwice keeps two run-throughs of the running order at hand, each slower than
// reckoned.
func (tb *table) timedTwice(a *aloudView) {
	tb.t.Helper()
	for run, slower := range []float64{1.5, 1.25} {
		var timings []session.Timing
		for _, item := range a.plan.Items {
			timings = append(timings, session.Timing{Item: item.Item.ID, Poem: item.Item.Poem, Ms: int64(1000 * slower * item.Seconds), Stumbles: []int64{2000}})
		}
		if err := tb.w.session.AddRun(a.reading.ID, time.Date(2026, 11, 12+run, 20, 0, 0, 0, time.UTC), timings); err != nil {
			tb.t.Fatal(err)
		}
	}
	a.read()
}

// TestTheVoice: every constant is shown and typed; the fit is taken only when asked,
// and the usual voice is gone back to.
func TestTheVoice(t *testing.T) {
	tb := setDemo(t)
	a := tb.readsPoems(0, "Sign", "Windowpane", "Toast", "Committal", "Foil", "Day Old")
	tb.chordOnTop(key(ctrlShift, fyne.KeyY))
	s := tb.overlay().(*leaf).hand.(*voiceSheet)
	for i, row := range s.rows()[:len(voiceValues)] {
		if !strings.Contains(row.value, voiceValues[i].unit) || !row.steps {
			t.Errorf("%s is shown as %q", row.name, row.value)
		}
	}
	was := a.plan.Whole
	tb.typeOnTop("100")
	tb.onTop(fyne.KeyReturn)
	if v := s.voice(); v.Syllables != 100 || a.plan.Whole <= was {
		t.Errorf("at %v it takes %s, before %s", v, clock(a.plan.Whole), clock(was))
	}
	tb.typeOnTop("5")
	tb.onTop(fyne.KeyReturn)
	if v := s.voice(); v.Syllables != 100 || !strings.Contains(s.leaf.said, "30 to 1000") {
		t.Errorf("5 syllables a minute: %v, %q", v, s.leaf.said)
	}
	tb.onTop(fyne.KeyEscape, fyne.KeyEnd, fyne.KeyReturn)
	if v := s.voice(); v != pagemodel.UsualVoice() {
		t.Errorf("back at the usual it is %v", v)
	}
	tb.onTop(fyne.KeyUp, fyne.KeyReturn)
	if !strings.Contains(s.leaf.said, "Nothing has been timed yet") {
		t.Errorf("with nothing timed the sheet says %q", s.leaf.said)
	}
	tb.timedTwice(a)
	tb.onTop(fyne.KeyReturn)
	if v := s.voice(); v != pagemodel.UsualVoice() || s.fit == nil || s.fit.Is.Mean >= s.fit.Was.Mean || len(s.foot()) != 3 {
		t.Errorf("only fitted, the voice is %v, the foot %v", v, s.foot())
	}
	found := s.found
	tb.onTop(fyne.KeyReturn)
	if v := s.voice(); v != found || v == pagemodel.UsualVoice() {
		t.Errorf("the fit taken, the voice is %v, want %v", v, found)
	}
	tb.onTop(fyne.KeyEscape)
	tb.aloudOn()
	tb.chordOnTop(&fyne.ShortcutUndo{})
	if v := s.voice(); v != pagemodel.UsualVoice() {
		t.Errorf("undone, the voice is %v", v)
	}
}

// TestUnreadLongest: those never read come first; Enter puts one in.
func TestUnreadLongest(t *testing.T) {
	tb := setDemo(t)
	a := tb.readsPoems(0, "Sign", "Toast")
	tb.timedTwice(a)
	tb.chordOnTop(key(ctrlShift, fyne.KeyU))
	rows := laid[*listing](tb).rows
	if first, last := rows[0], rows[len(rows)-1]; first.under != "never read" || !strings.Contains(last.under, "13 November 2026 · At the Bridge") {
		t.Errorf("the list begins with %v and ends with %v", first, last)
	}
	tb.typed(fyne.KeyReturn)
	if got := len(a.reading.Items); got != 3 || a.at != 1 {
		t.Errorf("there are %d items, %d at hand", got, a.at)
	}
}
