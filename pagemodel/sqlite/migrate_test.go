package sqlite

import (
	"bytes"
	"path/filepath"
	"strings"
	"testing"
	"time"
)

// later is a keeper of a version that is yet to come.
func later(steps ...string) *keeper {
	return &keeper{time.Now, append(append([]string(nil), migrations...), steps...)}
}

const (
	addsTable  = "CREATE TABLE extra (id INTEGER PRIMARY KEY, what TEXT) STRICT"
	addsColumn = "ALTER TABLE run ADD COLUMN venue TEXT; UPDATE edit SET label = label || '!'"
)

// TestBroughtForward holds that an older file is copied as it was, then brought
// forward, and that a second time goes to another copy.
func TestBroughtForward(t *testing.T) {
	path := newPath(t)
	s := mustCreate(t, path)
	mustDo(t, s, titled("Two"))
	mustClose(t, s)
	k := later(addsTable, addsColumn)
	s, err := k.open(path)
	if err != nil {
		t.Fatal(err)
	}
	kept := filepath.Join(filepath.Dir(path), "book (as it was in version 2).headland")
	if label, _ := s.UndoLabel(); s.KeptCopy() != kept || label != "change the book's title page!" {
		t.Errorf("kept %q, can undo %q", s.KeptCopy(), label)
	}
	mustDo(t, s, titled("Three"))
	mustClose(t, s)
	again, err := k.open(path)
	if err != nil || again.KeptCopy() != "" {
		t.Fatalf("opened again: %v, kept %q", err, again.KeptCopy())
	}
	mustClose(t, again)
	_, err = Open(path)
	mustBeInWords(t, "forward", err, ErrNewer, path, "it is of version 4")
	old := mustOpen(t, kept)
	if label, _ := old.UndoLabel(); old.Collection().About().Title != "Two" || label != "change the book's title page" {
		t.Errorf("the copy has %q and can undo %q", old.Collection().About().Title, label)
	}
	if name := freeName(path, "as it was in version 2"); !strings.HasSuffix(name, "book (as it was in version 2, 2).headland") {
		t.Errorf("the next copy would be %q", name)
	}
}

// TestBroughtForwardFails holds that a step that can't be done leaves the file
// as it was, all steps of it.
func TestBroughtForwardFails(t *testing.T) {
	for _, step := range []string{"UPDATE nothing SET x = 1", "INSERT INTO timing (run, place, item, poem, ms, stumbles) VALUES (77, 1, 1, 1, 1, '[]')"} {
		path := newPath(t)
		mustClose(t, mustCreate(t, path))
		before := read(t, path)
		if _, err := later(addsTable, step).open(path); err == nil || !strings.Contains(err.Error(), path) {
			t.Errorf("%s: got %v", step, err)
		}
		if !bytes.Equal(before, read(t, path)) {
			t.Errorf("%s changed the file", step)
		}
		mustOpen(t, path)
	}
}

// TestBroughtForwardHeld holds that a file that is open elsewhere is not
// changed under that window's hands.
func TestBroughtForwardHeld(t *testing.T) {
	path := newPath(t)
	s := mustCreate(t, path)
	_, err := later(addsTable).open(path)
	mustBeInWords(t, "held", err, ErrReadOnly, path, "must be brought forward to version 3, but it is open")
	mustDo(t, s, titled("Two"))
	alone(t, path, "book.headland")
}
