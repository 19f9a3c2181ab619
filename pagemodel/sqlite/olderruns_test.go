package sqlite

import (
	"path/filepath"
	"testing"
)

// TestFromBeforeRuns holds that a file of version 1, which had tables for
// readings that were never written, is copied aside and brought forward with its
// book and history, and then takes runs; and that the copy is still of version 1.
func TestFromBeforeRuns(t *testing.T) {
	path := newPath(t)
	first := &keeper{clock, migrations[:1]}
	s, err := first.create(path, book())
	if err != nil {
		t.Fatal(err)
	}
	mustDo(t, s, titled("Two"))
	mustClose(t, s)
	s = mustOpen(t, path)
	kept := filepath.Join(filepath.Dir(path), "book (as it was in version 1).headland")
	if s.KeptCopy() != kept || s.Collection().About().Title != "Two" {
		t.Errorf("kept %q, the title is %q", s.KeptCopy(), s.Collection().About().Title)
	}
	if err := s.AddRun(aRun()); err != nil {
		t.Fatal(err)
	}
	mustBeRuns(t, s, aRun())
	if _, err := s.Undo(); err != nil || sum(s.Collection()) != sum(book()) {
		t.Errorf("undone, the book is another: %v", err)
	}
	mustClose(t, s)
	alone(t, path, "book (as it was in version 1).headland", "book.headland")
	old, err := first.open(kept)
	if err != nil || old.KeptCopy() != "" || old.Collection().About().Title != "Two" {
		t.Fatalf("the copy: %v", err)
	}
	mustClose(t, old)
}
