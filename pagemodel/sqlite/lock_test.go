package sqlite

import (
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// TestSecondWindow holds that who opens a file second can only read it, is told
// by whom it is held, and can write it once the first has let go.
func TestSecondWindow(t *testing.T) {
	path := newPath(t)
	first := mustCreate(t, path)
	second := mustOpen(t, path)
	if !second.ReadOnly() || !strings.Contains(second.WhyReadOnly(), fmt.Sprintf("process %d on ", os.Getpid())) {
		t.Errorf("the second is read only: %v, %q", second.ReadOnly(), second.WhyReadOnly())
	}
	_, doErr := second.Do(titled("Two"))
	_, undoErr := second.Undo()
	_, redoErr := second.Redo()
	faceErr := second.AddFace("A", false, false, []byte{1}, "")
	for _, err := range []error{doErr, undoErr, redoErr, faceErr} {
		mustBeInWords(t, "read only", err, ErrReadOnly, path, "open in another window")
	}
	mustDo(t, first, titled("Three"))
	if err := second.SaveCopy(path+"2", false); err != nil {
		t.Error(err)
	}
	mustClose(t, second)
	if third := mustOpen(t, path); !third.ReadOnly() {
		t.Error("closing the second let go of the first one's lock")
	}
	mustClose(t, first)
	if fourth := mustOpen(t, path); fourth.ReadOnly() || fourth.Collection().About().Title != "Three" {
		t.Errorf("after the first: %q, %q", fourth.WhyReadOnly(), fourth.Collection().About().Title)
	}
}

// TestOneFileTwoNames holds that a link is no way round the lock.
func TestOneFileTwoNames(t *testing.T) {
	path := newPath(t)
	mustCreate(t, path)
	link := filepath.Join(t.TempDir(), "link"+Extension)
	if err := os.Symlink(path, link); err != nil {
		t.Fatal(err)
	}
	if s := mustOpen(t, link); !s.ReadOnly() {
		t.Error("a link to an open file was opened for writing")
	}
}

// TestLockFilesGo holds that nothing stays in the cache folder.
func TestLockFilesGo(t *testing.T) {
	t.Setenv("XDG_CACHE_HOME", t.TempDir())
	t.Setenv("HOME", t.TempDir())
	s := mustCreate(t, newPath(t))
	dir, err := lockFolder()
	if err != nil {
		t.Fatal(err)
	}
	held, _ := os.ReadDir(dir)
	mustClose(t, s)
	left, _ := os.ReadDir(dir)
	if len(held) != 1 || len(left) != 0 {
		t.Errorf("%d locks while open, %d after", len(held), len(left))
	}
}

// TestWrittenElsewhere holds that two programs that don't see each other's
// locks, as on two machines, can't write past each other.
func TestWrittenElsewhere(t *testing.T) {
	path := newPath(t)
	here := mustCreate(t, path)
	mustDo(t, here, titled("Here"))
	t.Setenv("XDG_CACHE_HOME", t.TempDir())
	t.Setenv("HOME", t.TempDir())
	there := mustOpen(t, path)
	mustDo(t, there, titled("There"))
	_, err := here.Do(titled("Here again"))
	mustBeInWords(t, "do", err, ErrElsewhere, path, "changed by another program")
	_, err = here.Undo()
	mustBeInWords(t, "undo", err, ErrElsewhere, path, "changed by another program")
	if here.Collection().About().Title != "Here" {
		t.Error("an edit that was refused changed the collection")
	}
	if _, err := there.Undo(); err != nil {
		t.Fatal(err)
	}
	_, err = here.Do(titled("Here again"))
	mustBeInWords(t, "do", err, ErrElsewhere, path, "changed by another program")
}

// TestMovedWhileOpen holds that a file without its name is not written, and
// that nothing of it is lost.
func TestMovedWhileOpen(t *testing.T) {
	path := newPath(t)
	s := mustCreate(t, path)
	mustDo(t, s, titled("Two"))
	away := path + " away"
	if err := os.Rename(path, away); err != nil {
		t.Fatal(err)
	}
	_, err := s.Do(titled("Three"))
	mustBeInWords(t, "moved", err, ErrElsewhere, path, "was moved")
	write(t, path, []byte("another"))
	_, err = s.Undo()
	mustBeInWords(t, "replaced", err, ErrElsewhere, path, "replaced")
	saved := path + " saved"
	if err := s.SaveCopy(saved, false); err != nil {
		t.Fatal(err)
	}
	if c := mustOpen(t, saved); c.Collection().About().Title != "Two" {
		t.Error("the copy is not what was open")
	}
	if err := os.Rename(away, path); err != nil {
		t.Fatal(err)
	}
	mustDo(t, s, titled("Three"))
}

func TestSaveCopy(t *testing.T) {
	path := newPath(t)
	s := mustCreate(t, path)
	mustDo(t, s, titled("Two"))
	to := filepath.Join(t.TempDir(), "copy"+Extension)
	if err := s.SaveCopy(to, false); err != nil {
		t.Fatal(err)
	}
	mustDo(t, s, titled("Three"))
	if err := s.SaveCopy(to, false); !errors.Is(err, ErrExists) {
		t.Errorf("got %v", err)
	}
	c := mustOpen(t, to)
	if label, ok := c.UndoLabel(); !ok || c.ReadOnly() || c.Collection().About().Title != "Two" {
		t.Errorf("the copy has %q and can undo %q", c.Collection().About().Title, label)
	}
	err := s.SaveCopy(to, true)
	mustBeInWords(t, "open copy", err, ErrElsewhere, to, "open in another window")
	mustClose(t, c)
	if err := s.SaveCopy(to, true); err != nil {
		t.Fatal(err)
	}
	err = s.SaveCopy(path, true)
	mustBeInWords(t, "itself", err, ErrExists, path, "is the collection itself")
	alone(t, to, "copy.headland")
	if got := mustOpen(t, to).Collection().About().Title; got != "Three" {
		t.Errorf("got %q", got)
	}
	mustDo(t, s, titled("Four"))
}
