package session

import (
	"cmp"
	"slices"
	"time"

	"headland/pagemodel"
	"headland/pagemodel/sqlite"
	"headland/typeset/aloud"
	"headland/typeset/sheet"
)

// Run is a running order read through with the clock, and Timing how long one of
// its items took.
type (
	Run    = sqlite.Run
	Timing = sqlite.Timing
)

// Runs are the run-throughs that the file keeps, in the order in which they were
// made.
func (s *Session) Runs() ([]Run, error) { return s.store.Runs() }

// AddRun keeps a run-through: a fact, which undo leaves alone.
func (s *Session) AddRun(reading pagemodel.ReadingID, at time.Time, timings []Timing) error {
	if err := s.writable(); err != nil {
		return err
	}
	err := s.store.AddRun(Run{Reading: reading, At: at, Timings: timings})
	if err == nil {
		s.taken = nil
	}
	return err
}

// takings are all timings of the file, remembered until one is added. A file that
// can't say has none.
func (s *Session) takings() []aloud.Taking {
	if s.taken != nil {
		return s.taken
	}
	runs, err := s.store.Runs()
	if err != nil {
		return nil
	}
	s.taken = []aloud.Taking{}
	for _, run := range runs {
		for _, t := range run.Timings {
			s.taken = append(s.taken, taking(run, t))
		}
	}
	return s.taken
}

func taking(run Run, t Timing) aloud.Taking {
	taken := aloud.Taking{Run: run.ID, Reading: run.Reading, Item: t.Item, Poem: t.Poem, At: run.At, Seconds: seconds(t.Ms)}
	for _, ms := range t.Stumbles {
		taken.Stumbles = append(taken.Stumbles, seconds(ms))
	}
	return taken
}

func seconds(ms int64) float64 { return float64(ms) / 1000 }

// Plan is a running order with its times, in the file or not yet, and what its
// items took the last time.
func (s *Session) Plan(r pagemodel.Reading) aloud.Plan {
	c := s.Collection()
	return aloud.PlanOf(c, r, languageLexicon(c.About().Language), c.Voice(), s.takings())
}

// BookReading is the book in its order, as a running order.
func (s *Session) BookReading() pagemodel.Reading { return aloud.Book(s.Collection()) }

// FitVoice is the voice that comes nearest to all that was timed, and how far off
// the present one is. Nothing is changed by asking: [pagemodel.SetVoice] takes it.
func (s *Session) FitVoice() (pagemodel.Voice, aloud.Fitness, error) {
	if _, err := s.store.Runs(); err != nil {
		return pagemodel.Voice{}, aloud.Fitness{}, err
	}
	c := s.Collection()
	v, fitness := aloud.Fit(aloud.Observe(c, languageLexicon(c.About().Language), s.takings()), c.Voice())
	return v, fitness, nil
}

// ReadingPapers are the papers on which a reading copy can be printed, by name. Not
// to be changed.
func ReadingPapers() []string { return sheet.Papers }

// LastRead is a poem of the book and when it was last read.
type LastRead struct {
	Poem    pagemodel.PoemID
	Number  int // in the book, from 1
	Title   string
	At      time.Time // zero: never
	Reading string    // the running order, or its occasion where it has one; "" where it is gone
}

// Unread are the poems of the book, longest unread first: those never read in the
// order of the book, then the others by when they were last read.
func (s *Session) Unread() ([]LastRead, error) {
	runs, err := s.store.Runs()
	if err != nil {
		return nil, err
	}
	last := map[pagemodel.PoemID]Run{}
	for _, run := range runs {
		for _, t := range run.Timings {
			if was, ok := last[t.Poem]; !ok || run.At.After(was.At) {
				last[t.Poem] = run
			}
		}
	}
	var all []LastRead
	for number, p := range s.Collection().Poems() {
		read := LastRead{Poem: p.ID(), Number: number, Title: p.Name()}
		if run, ok := last[p.ID()]; ok {
			read.At, read.Reading = run.At, s.occasion(run.Reading)
		}
		all = append(all, read)
	}
	slices.SortStableFunc(all, func(a, b LastRead) int { return cmp.Or(a.At.Compare(b.At), cmp.Compare(a.Number, b.Number)) })
	return all, nil
}

// occasion is what a running order was for.
func (s *Session) occasion(id pagemodel.ReadingID) string {
	r, _ := s.Collection().Reading(id)
	return cmp.Or(r.Occasion, r.Name)
}
