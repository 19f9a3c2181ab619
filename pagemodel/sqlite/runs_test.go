package sqlite

import (
	"path/filepath"
	"reflect"
	"strings"
	"testing"
	"time"
)

// aRun is a run-through of three items, one of them from elsewhere.
func aRun() Run {
	return Run{Reading: 40, At: clock(), Timings: []Timing{
		{Item: 41, Poem: 14, Ms: 61_250, Stumbles: []int64{12_000, 30_500}},
		{Item: 42, Ms: 18_003},
		{Item: 43, Poem: 29, Ms: 0},
	}}
}

// mustBeRuns compares what a store holds with runs numbered from 1.
func mustBeRuns(t *testing.T, s *Store, want ...Run) {
	t.Helper()
	got, err := s.Runs()
	if err != nil {
		t.Fatal(err)
	}
	for i := range want {
		want[i].ID, want[i].At = int64(i+1), want[i].At.UTC()
	}
	if len(got) != len(want) || len(got) > 0 && !reflect.DeepEqual(got, want) {
		t.Errorf("got %+v, want %+v", got, want)
	}
}

// TestRuns holds that runs are there again when the file is opened, whatever was
// undone in the meantime, and go into a copy.
func TestRuns(t *testing.T) {
	path := newPath(t)
	s := mustCreate(t, path)
	mustBeRuns(t, s)
	mustDo(t, s, titled("Two"))
	later := aRun()
	later.At, later.ID = clock().Add(26*time.Hour), 99
	for _, run := range []Run{aRun(), later} {
		if err := s.AddRun(run); err != nil {
			t.Fatal(err)
		}
	}
	if _, err := s.Undo(); err != nil {
		t.Fatal(err)
	}
	mustClose(t, s)
	s = mustOpen(t, path)
	mustBeRuns(t, s, aRun(), later)
	if label, ok := s.RedoLabel(); !ok {
		t.Errorf("a run took away redo (%q)", label)
	}
	copied := filepath.Join(filepath.Dir(path), "copy"+Extension)
	if err := s.SaveCopy(copied, false); err != nil {
		t.Fatal(err)
	}
	mustBeRuns(t, mustOpen(t, copied), aRun(), later)
}

// TestRunsRefused holds that what is no run is refused in words and that nothing
// of it is kept.
func TestRunsRefused(t *testing.T) {
	path := newPath(t)
	s := mustCreate(t, path)
	backwards := aRun()
	backwards.Timings[2].Ms = -1
	for _, test := range []struct {
		run   Run
		words string
	}{
		{Run{Reading: 40, At: clock()}, "time an item first"},
		{backwards, "-1 ms for item 3"},
	} {
		if err := s.AddRun(test.run); err == nil || !strings.Contains(err.Error(), test.words) || !strings.Contains(err.Error(), path) {
			t.Errorf("got %v, want %q", err, test.words)
		}
	}
	mustBeRuns(t, s)
	held := mustOpen(t, path)
	mustBeInWords(t, "held", held.AddRun(aRun()), ErrReadOnly, path, "can only be read")
}

// TestRunsDamaged holds that a row that can't be read is named.
func TestRunsDamaged(t *testing.T) {
	for _, test := range []struct{ query, words string }{
		{"UPDATE run SET at = 'Thursday'", `"Thursday", which is no time`},
		{"UPDATE timing SET stumbles = '{}'", "the stumbles of run-through 1"},
	} {
		path := newPath(t)
		s := mustCreate(t, path)
		if err := s.AddRun(aRun()); err != nil {
			t.Fatal(err)
		}
		if err := s.exec(test.query); err != nil {
			t.Fatal(err)
		}
		_, err := s.Runs()
		mustBeInWords(t, test.query, err, ErrDamaged, path, test.words)
	}
}
