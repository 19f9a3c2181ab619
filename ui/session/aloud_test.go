package session

import (
	"math"
	"reflect"
	"strings"
	"testing"
	"time"

	"headland/pagemodel"
)

// ordered makes a running order of the book's three poems, the last first, and gives
// it as the file has it.
func ordered(t *testing.T, s *Session, name, occasion string) pagemodel.Reading {
	t.Helper()
	r := s.BookReading()
	r.Name, r.Occasion, r.Slot = name, occasion, 600
	r.Items[0], r.Items[2] = r.Items[2], r.Items[0]
	must(t, s.Do(pagemodel.SetReading{Reading: r}))
	r, err := s.Collection().ReadingCalled(name)
	must(t, err)
	return r
}

// timings are those of a running order's items, in seconds.
func timings(r pagemodel.Reading, took ...float64) []Timing {
	var all []Timing
	for i, seconds := range took {
		all = append(all, Timing{Item: r.Items[i].ID, Poem: r.Items[i].Poem, Ms: int64(1000 * seconds)})
	}
	return all
}

// reopened closes a session and opens its file again.
func reopened(t *testing.T, s *Session) *Session {
	t.Helper()
	closed(t, s)
	again, err := Open(s.Path())
	must(t, err)
	t.Cleanup(func() { closed(t, again) })
	return again
}

// threePoems is a session on the three poems that the test closes itself.
func threePoems(t *testing.T) *Session {
	t.Helper()
	path := write(t, "poems.md", verse)
	s, _, err := Import(strings.TrimSuffix(path, ".md")+Extension, []string{path})
	must(t, err)
	return s
}

var evening = time.Date(2026, 3, 5, 19, 30, 0, 0, time.UTC)

// TestPlan: the book and a running order are timed, whether it is in the file or
// not. In the usual voice “So that was that.” takes its title, four syllables and a
// silence: 2 + 4·60/185 + 0.9 s, by hand.
func TestPlan(t *testing.T) {
	s := imported(t)
	plan := s.Plan(s.BookReading())
	want := 2 + 4*60.0/185 + 0.9
	if len(plan.Items) != 3 || plan.Reading.Name != "Three Poems" || plan.Items[2].Number != 3 || math.Abs(plan.Items[2].Seconds-want) > 1e-9 {
		t.Errorf("the book is %+v, want its last poem to take %.3f s", plan, want)
	}
	r := ordered(t, s, "Thursday", "")
	if got := s.Plan(r); got.Total != plan.Total || got.Slot != 600 || got.Items[0].Title != "Last" || got.Items[1].Starts != got.Items[0].Seconds {
		t.Errorf("the running order is %+v", got)
	}
	r.Items = r.Items[:1]
	if got := s.Plan(r); math.Abs(got.Total-want) > 1e-9 {
		t.Errorf("shortened, and not yet in the file, it takes %.3f s, want %.3f", got.Total, want)
	}
}

// TestRuns: a run-through is seen in the plan at once, is there when the file is
// opened again, and is neither done nor undone by the history.
func TestRuns(t *testing.T) {
	s := threePoems(t)
	r := ordered(t, s, "Thursday", "")
	if got := s.Plan(r).Items[0].Last; got != 0 {
		t.Errorf("never timed, the first took %g s", got)
	}
	took := timings(r, 7.5, 20)
	took[1].Stumbles = []int64{1500, 9000}
	must(t, s.AddRun(r.ID, evening, took))
	check := func(s *Session) {
		t.Helper()
		runs, err := s.Runs()
		must(t, err)
		if len(runs) != 1 || runs[0].Reading != r.ID || !runs[0].At.Equal(evening) || !reflect.DeepEqual(runs[0].Timings, took) {
			t.Errorf("the runs are %+v, want one of %+v", runs, took)
		}
		items := s.Plan(r).Items
		if items[0].Last != 7.5 || items[1].Last != 20 || items[2].Last != 0 {
			t.Errorf("the items took %g, %g, %g s", items[0].Last, items[1].Last, items[2].Last)
		}
	}
	check(s)
	s = reopened(t, s)
	check(s)
	must(t, s.Undo())
	check(s)
}

// TestUnread: what was never read comes first, in the order of the book, then what
// was read longest ago, with where.
func TestUnread(t *testing.T) {
	s := imported(t)
	thursday := ordered(t, s, "Thursday", "the library")
	friday := ordered(t, s, "Friday", "")
	must(t, s.AddRun(friday.ID, evening.Add(24*time.Hour), timings(friday, 7)))
	must(t, s.AddRun(thursday.ID, evening, timings(thursday, 7, 20)))
	all, err := s.Unread()
	must(t, err)
	want := []LastRead{
		{Number: 1, Title: "Bread"},
		{Number: 2, Title: "Weights", At: evening, Reading: "the library"},
		{Number: 3, Title: "Last", At: evening.Add(24 * time.Hour), Reading: "Friday"},
	}
	for i := range want {
		if i >= len(all) || all[i].Number != want[i].Number || all[i].Title != want[i].Title || !all[i].At.Equal(want[i].At) || all[i].Reading != want[i].Reading {
			t.Fatalf("unread are %+v, want %+v", all, want)
		}
	}
	must(t, s.Do(pagemodel.DropReading{ID: friday.ID}))
	if all, err = s.Unread(); err != nil || all[2].Reading != "" || all[2].At.IsZero() {
		t.Errorf("with its running order gone, the last is %+v, %v", all[2], err)
	}
}

// TestFitVoice: a reader of half the usual pace is found from timings, and that the
// usual voice was off; nothing is changed until the voice is taken.
func TestFitVoice(t *testing.T) {
	s := imported(t)
	if v, fitness, err := s.FitVoice(); err != nil || fitness.Timings != 0 || v != pagemodel.UsualVoice() {
		t.Errorf("of nothing the voice is %+v, %+v, %v", v, fitness, err)
	}
	r := ordered(t, s, "Thursday", "")
	slow := pagemodel.UsualVoice()
	slow.Syllables /= 2
	must(t, s.Do(pagemodel.SetVoice{Voice: slow}))
	plan := s.Plan(r)
	must(t, s.Undo())
	for day := range 4 {
		must(t, s.AddRun(r.ID, evening.AddDate(0, 0, day), timings(r, plan.Items[0].Seconds, plan.Items[1].Seconds, plan.Items[2].Seconds)))
	}
	v, fitness, err := s.FitVoice()
	must(t, err)
	if fitness.Timings != 12 || v.Syllables > 120 || v.Syllables < slow.Syllables-10 || fitness.Is.Mean >= fitness.Was.Mean/2 {
		t.Errorf("the voice is %+v, its fitness %+v; want near %+v", v, fitness, slow)
	}
	if got := s.Collection().Voice(); got != pagemodel.UsualVoice() {
		t.Errorf("by asking, the voice has become %+v", got)
	}
	must(t, s.Do(pagemodel.SetVoice{Voice: v}))
	if got := s.Plan(r).Items[1].Seconds; math.Abs(got-plan.Items[1].Seconds) > 0.2*plan.Items[1].Seconds {
		t.Errorf("the longest poem is reckoned at %.1f s, and takes %.1f", got, plan.Items[1].Seconds)
	}
}
