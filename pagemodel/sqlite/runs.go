package sqlite

import (
	"database/sql"
	"encoding/json"
	"fmt"
	"time"

	"headland/pagemodel"
)

// Run is a running order read through with the clock.
type Run struct {
	ID      int64 // given by the file
	Reading pagemodel.ReadingID
	At      time.Time // when the clock was started, to the millisecond
	Timings []Timing  // in the order in which they were read
}

// Timing is how long one item of a run took.
type Timing struct {
	Item     pagemodel.ItemID
	Poem     pagemodel.PoemID // 0 for one from elsewhere
	Ms       int64            // milliseconds, pauses of the clock left out
	Stumbles []int64          // milliseconds from the item's beginning
}

// AddRun keeps a run-through in the file, all of it or nothing. Runs lie outside
// undo and are never changed; the run's own ID is passed over.
func (s *Store) AddRun(run Run) error {
	defer s.hold()()
	if err := s.writable(); err != nil {
		return err
	}
	if err := s.checkRun(run); err != nil {
		return err
	}
	return translate(s.path, s.transact(func() error { return s.writeRun(run) }))
}

// checkRun says why a run can't be kept, or nil.
func (s *Store) checkRun(run Run) error {
	if len(run.Timings) == 0 {
		return &Error{s.path, "keeps no run-through in which nothing was timed", "time an item first", nil}
	}
	for i, t := range run.Timings {
		if t.Ms < 0 {
			return &Error{s.path, fmt.Sprintf("keeps no time of %d ms for item %d of a run-through", t.Ms, i+1), "set the clock and read it again", nil}
		}
	}
	return nil
}

func (s *Store) writeRun(run Run) error {
	var id int64
	err := s.row("INSERT INTO run (reading, at) VALUES (?, ?) RETURNING id", int64(run.Reading), run.At.UTC().Format(timeForm)).Scan(&id)
	if err != nil {
		return err
	}
	for i, t := range run.Timings {
		stumbles, err := json.Marshal(append([]int64{}, t.Stumbles...))
		if err != nil {
			return err
		}
		if err := s.exec("INSERT INTO timing (run, place, item, poem, ms, stumbles) VALUES (?, ?, ?, ?, ?, ?)",
			id, i+1, int64(t.Item), int64(t.Poem), t.Ms, string(stumbles)); err != nil {
			return err
		}
	}
	return nil
}

// Runs are the run-throughs in the order in which they were added.
func (s *Store) Runs() ([]Run, error) {
	defer s.hold()()
	if s.closed {
		return nil, s.isClosed()
	}
	var runs []Run
	err := s.each(func(r *sql.Rows) error {
		run, timing, err := s.timing(r)
		if err != nil {
			return err
		}
		if last := len(runs) - 1; last < 0 || runs[last].ID != run.ID {
			runs = append(runs, run)
		}
		last := &runs[len(runs)-1]
		last.Timings = append(last.Timings, timing)
		return nil
	}, `SELECT r.id, r.reading, r.at, t.item, t.poem, t.ms, t.stumbles
		FROM run r JOIN timing t ON t.run = r.id ORDER BY r.id, t.place`)
	return runs, translate(s.path, err)
}

// timing reads a row: a run without its timings, and one of these.
func (s *Store) timing(r *sql.Rows) (run Run, t Timing, err error) {
	var at, stumbles string
	if err := r.Scan(&run.ID, &run.Reading, &at, &t.Item, &t.Poem, &t.Ms, &stumbles); err != nil {
		return run, t, err
	}
	if run.At, err = time.Parse(timeForm, at); err != nil {
		return run, t, damaged(s.path, fmt.Sprintf("run-through %d was begun at %q, which is no time", run.ID, at))
	}
	if err := json.Unmarshal([]byte(stumbles), &t.Stumbles); err != nil {
		return run, t, damaged(s.path, fmt.Sprintf("the stumbles of run-through %d are no list of times", run.ID))
	}
	if len(t.Stumbles) == 0 {
		t.Stumbles = nil
	}
	return run, t, nil
}
