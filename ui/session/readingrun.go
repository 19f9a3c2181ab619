package session

import (
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"slices"
	"time"

	"headland/pagemodel"
)

// heldSuffix ends the name of the file in which a run-through is held while the
// clock is on: it lies beside the collection and is gone once the run is kept.
const heldSuffix = "-run"

// heldRun is a run-through as it is held.
type heldRun struct {
	Reading pagemodel.ReadingID `json:"reading"`
	At      time.Time           `json:"at"`
	Timings []heldTiming        `json:"timings"`
}

type heldTiming struct {
	Item     pagemodel.ItemID `json:"item"`
	Poem     pagemodel.PoemID `json:"poem"`
	Ms       int64            `json:"ms"`
	Stumbles []int64          `json:"stumbles,omitempty"`
}

// HoldRun puts what a run-through has timed so far where a crash can't reach it,
// in place of what was held before. Runs in the file are never changed, so it goes
// into the file only when it is over: see [Session.KeepRun].
func (s *Session) HoldRun(run Run) error {
	if err := s.writable(); err != nil {
		return err
	}
	held := heldRun{Reading: run.Reading, At: run.At}
	for _, t := range run.Timings {
		held.Timings = append(held.Timings, heldTiming(t))
	}
	return writeWhole(s.Path()+heldSuffix, func(w io.Writer) error { return json.NewEncoder(w).Encode(held) })
}

// KeepRun keeps a run-through in the file, and holds it no longer. One in which
// nothing was timed is not kept.
func (s *Session) KeepRun(run Run) error {
	if len(run.Timings) > 0 {
		if err := s.AddRun(run.Reading, run.At, run.Timings); err != nil {
			return err
		}
	}
	return s.dropHeld()
}

// KeepHeldRun keeps the run-through that was under way when the program was last
// cut off. It says whether there was one; of one that was kept when the file was
// opened, once.
func (s *Session) KeepHeldRun() (bool, error) {
	kept, err := s.keepHeldRun()
	kept, s.keptRun = kept || s.keptRun, false
	return kept, err
}

func (s *Session) keepHeldRun() (bool, error) {
	if _, only := s.ReadOnly(); only {
		return false, nil
	}
	path := s.Path() + heldSuffix
	data, err := os.ReadFile(path)
	if errors.Is(err, fs.ErrNotExist) {
		return false, nil
	}
	var held heldRun
	if err == nil {
		err = json.Unmarshal(data, &held)
	}
	if err != nil {
		return false, fmt.Errorf("the times of the last run-through can't be read from %s: %w: move it away", path, cause(err))
	}
	run := Run{Reading: held.Reading, At: held.At}
	for _, t := range held.Timings {
		run.Timings = append(run.Timings, Timing(t))
	}
	if there, err := s.has(run); err != nil || there {
		return false, firstOf(err, s.dropHeld())
	}
	return len(run.Timings) > 0, s.KeepRun(run)
}

// has says that the run is in the file: the program was cut off after it was kept.
func (s *Session) has(run Run) (bool, error) {
	runs, err := s.Runs()
	at := run.At.UnixMilli()
	return slices.ContainsFunc(runs, func(r Run) bool { return r.Reading == run.Reading && r.At.UnixMilli() == at }), err
}

func (s *Session) dropHeld() error {
	err := os.Remove(s.Path() + heldSuffix)
	if errors.Is(err, fs.ErrNotExist) {
		return nil
	}
	return err
}
