package sqlite

import (
	"errors"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"headland/pagemodel"
)

func TestCreateAndOpen(t *testing.T) {
	path := newPath(t)
	s := mustCreate(t, path)
	if s.ReadOnly() || s.Path() != path || s.KeptCopy() != "" {
		t.Errorf("a new store is read only (%q), of %q, kept %q", s.WhyReadOnly(), s.Path(), s.KeptCopy())
	}
	if _, ok := s.UndoLabel(); ok {
		t.Error("the making of a collection can be undone")
	}
	mustClose(t, s)
	alone(t, path, "book.headland")
	got := mustOpen(t, path)
	if sum(got.Collection()) != sum(book()) || got.Collection().NextID() != book().NextID() {
		t.Errorf("got %s\nwant %s", sum(got.Collection()), sum(book()))
	}
}

func TestCreateRefuses(t *testing.T) {
	path := newPath(t)
	write(t, path, []byte("a poem"))
	if _, err := Create(path, book()); !errors.Is(err, ErrExists) {
		t.Errorf("got %v, want ErrExists", err)
	}
	if got := string(read(t, path)); got != "a poem" {
		t.Errorf("the file now holds %q", got)
	}
	dir := filepath.Join(filepath.Dir(path), "no such folder", "book.headland")
	if _, err := Create(dir, book()); !errors.Is(err, os.ErrNotExist) || !strings.Contains(err.Error(), "its folder is not there") {
		t.Errorf("got %v", err)
	}
	former := filepath.Join(filepath.Dir(path), "former.headland")
	write(t, former+"-journal", nil)
	if _, err := Create(former, book()); !errors.Is(err, ErrExists) || !strings.Contains(err.Error(), "former.headland-journal") {
		t.Errorf("got %v", err)
	}
	alone(t, path, "book.headland", "former.headland-journal")
}

// TestNames holds that a file may be called anything.
func TestNames(t *testing.T) {
	for _, name := range []string{"a book", "what? #7 100%", "%41&mode=ro", "Bücher über Äcker", "詩集", "file:x", "a'b\"c;--", "-rf"} {
		path := filepath.Join(t.TempDir(), name, name+Extension)
		if err := os.Mkdir(filepath.Dir(path), 0o777); err != nil {
			t.Fatal(err)
		}
		s := mustCreate(t, path)
		mustDo(t, s, titled(name))
		if err := s.SaveCopy(path+" (copy?)", false); err != nil {
			t.Fatal(err)
		}
		mustClose(t, s)
		alone(t, path, name+Extension, name+Extension+" (copy?)")
		if got := mustOpen(t, path+" (copy?)").Collection().About().Title; got != name {
			t.Errorf("got %q, want %q", got, name)
		}
	}
}

func TestDo(t *testing.T) {
	s := mustCreate(t, newPath(t))
	before := s.Collection()
	if c := mustDo(t, s, titled("A Book")); c != before {
		t.Error("an edit that changes nothing gave another collection")
	}
	if _, ok := s.UndoLabel(); ok {
		t.Error("an edit that changes nothing was written")
	}
	if c, err := s.Do(pagemodel.Move{Poem: 999}); err == nil || c != nil || s.Collection() != before {
		t.Errorf("an edit that can't be done gave %v, %v", c, err)
	}
	c := mustDo(t, s, titled("Another"))
	if c != s.Collection() || c.About().Title != "Another" {
		t.Errorf("got %q", s.Collection().About().Title)
	}
	var kind, args, label, at string
	var parent int64
	err := s.row("SELECT parent, kind, args, label, at FROM edit WHERE id = 2").Scan(&parent, &kind, &args, &label, &at)
	if err != nil || parent != 1 || kind != "about" || args != `{"about":{"title":"Another"}}` ||
		label != "change the book's title page" || at != "2026-03-01T08:30:00.005Z" {
		t.Errorf("got %d %q %q %q %q, %v", parent, kind, args, label, at, err)
	}
}

// TestDiskFull holds that a write that fails leaves everything as it was, and
// that the next may succeed.
func TestDiskFull(t *testing.T) {
	path := newPath(t)
	s := mustCreate(t, path)
	before := s.Collection()
	long := strings.Repeat("a very long title ", 10000)
	limit := func(pages string) {
		if err := s.exec("PRAGMA max_page_count = " + pages); err != nil {
			t.Fatal(err)
		}
	}
	limit("1") // SQLite takes the least that the file needs
	_, err := s.Do(titled(long))
	if err == nil || !strings.Contains(err.Error(), "the disk is full") || !strings.Contains(err.Error(), path) {
		t.Errorf("got %v", err)
	}
	if _, ok := s.UndoLabel(); ok || s.Collection() != before {
		t.Error("an edit that was not written is in the history")
	}
	if err := s.AddFace("Big", false, false, make([]byte, 1e6), ""); err == nil {
		t.Error("a face found room on a full disk")
	}
	limit("100000")
	mustDo(t, s, titled(long))
	mustClose(t, s)
	if got := mustOpen(t, path).Collection().About().Title; got != long {
		t.Errorf("got a title of %d bytes", len(got))
	}
}

func TestUndoRedoLabels(t *testing.T) {
	path := newPath(t)
	s := mustCreate(t, path)
	mustDo(t, s, titled("Two"))
	mustDo(t, s, pagemodel.SetHead{Poem: firstPoem(s), Head: pagemodel.PoemHead{Title: "New"}})
	label := func(what, want string, get func() (string, bool)) {
		t.Helper()
		if got, ok := get(); got != want || ok != (want != "") {
			t.Errorf("%s is %q, %v, want %q", what, got, ok, want)
		}
	}
	if _, err := s.Redo(); !errors.Is(err, ErrNothingToRedo) {
		t.Errorf("got %v", err)
	}
	label("undo", "change a poem's head", s.UndoLabel)
	if _, err := s.Undo(); err != nil {
		t.Fatal(err)
	}
	label("undo", "change the book's title page", s.UndoLabel)
	label("redo", "change a poem's head", s.RedoLabel)
	mustClose(t, s)
	s = mustOpen(t, path)
	label("redo", "change a poem's head", s.RedoLabel)
	if _, err := s.Undo(); err != nil {
		t.Fatal(err)
	}
	label("undo", "", s.UndoLabel)
	label("redo", "change the book's title page", s.RedoLabel)
	if _, err := s.Undo(); !errors.Is(err, ErrNothingToUndo) {
		t.Errorf("got %v", err)
	}
	mustDo(t, s, titled("Three"))
	label("redo", "", s.RedoLabel)
	if _, err := s.Undo(); err != nil {
		t.Fatal(err)
	}
	if c, err := s.Redo(); err != nil || c.About().Title != "Three" {
		t.Errorf("redo did not take the newest edit: %v", err)
	}
}

func firstPoem(s *Store) pagemodel.PoemID {
	for _, p := range s.Collection().Poems() {
		return p.ID()
	}
	return 0
}

func TestClosed(t *testing.T) {
	s := mustCreate(t, newPath(t))
	mustClose(t, s)
	mustClose(t, s)
	_, doErr := s.Do(titled("x"))
	_, undoErr := s.Undo()
	_, redoErr := s.Redo()
	_, facesErr := s.Faces()
	_, runsErr := s.Runs()
	copyErr := s.SaveCopy(newPath(t), false)
	for _, err := range []error{doErr, undoErr, redoErr, facesErr, runsErr, copyErr, s.AddFace("A", false, false, []byte{1}, ""), s.AddRun(aRun())} {
		if !errors.Is(err, ErrClosed) {
			t.Errorf("got %v, want ErrClosed", err)
		}
	}
	if s.Collection().About().Title != "A Book" {
		t.Error("a closed store lost its collection")
	}
}

func TestFaces(t *testing.T) {
	path := newPath(t)
	s := mustCreate(t, path)
	for _, f := range []Face{{Family: "Zinc", Bytes: []byte("one")}, {Family: "Alder", Italic: true, Bytes: []byte("two")}, {Family: "Zinc", Bold: true, Bytes: []byte("one"), Rights: "may be embedded"}} {
		if err := s.AddFace(f.Family, f.Bold, f.Italic, f.Bytes, f.Rights); err != nil {
			t.Fatal(err)
		}
	}
	if err := s.AddFace("", false, false, []byte("x"), ""); err == nil {
		t.Error("a face without a name was taken")
	}
	mustClose(t, s)
	s = mustOpen(t, path)
	got, err := s.Faces()
	if err != nil || len(got) != 2 || got[0].Family != "Zinc" || !got[0].Bold || got[0].Rights != "may be embedded" ||
		string(got[1].Bytes) != "two" || !got[1].Italic {
		t.Errorf("got %v, %v", got, err)
	}
	if err := s.exec("UPDATE face SET bytes = x'00' WHERE family = 'Alder'"); err != nil {
		t.Fatal(err)
	}
	if _, err := s.Faces(); !errors.Is(err, ErrDamaged) || !strings.Contains(err.Error(), "Alder") {
		t.Errorf("got %v", err)
	}
}
