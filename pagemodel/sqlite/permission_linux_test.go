package sqlite

import (
	"io/fs"
	"os"
	"path/filepath"
	"runtime"
	"syscall"
	"testing"
)

// asNobody does f without the rights of the superuser over files. Where the
// tests run as somebody else, their own rights do.
func asNobody(t *testing.T, f func()) {
	if os.Geteuid() != 0 {
		f()
		return
	}
	runtime.LockOSThread()
	defer runtime.UnlockOSThread()
	if err := syscall.Setfsuid(65534); err != nil {
		t.Fatal(err)
	}
	defer syscall.Setfsuid(0)
	f()
}

func chmod(t *testing.T, path string, mode fs.FileMode) {
	t.Helper()
	if err := os.Chmod(path, mode); err != nil {
		t.Fatal(err)
	}
}

// forbidden is a collection in a folder where nothing can be made, and a
// folder for temporary files that takes the place of the cache folder.
func forbidden(t *testing.T) (path string) {
	path = newPath(t)
	dir := filepath.Dir(path)
	mustClose(t, mustCreate(t, path))
	t.Setenv("XDG_CACHE_HOME", filepath.Join(dir, "nothing here"))
	t.Setenv("TMPDIR", t.TempDir())
	chmod(t, os.Getenv("TMPDIR"), 0o777)
	chmod(t, filepath.Dir(dir), 0o755)
	chmod(t, dir, 0o555)
	t.Cleanup(func() { chmod(t, dir, 0o777) })
	return path
}

func TestNoPermission(t *testing.T) {
	path := forbidden(t)

	chmod(t, path, 0)
	asNobody(t, func() {
		_, err := Open(path)
		mustBeInWords(t, "unreadable", err, fs.ErrPermission, path, "may not be read")
	})
	chmod(t, path, 0o444)
	asNobody(t, func() {
		s := mustOpen(t, path)
		if s.WhyReadOnly() != "you have no right to write it" {
			t.Errorf("got %q", s.WhyReadOnly())
		}
		_, err := s.Do(titled("Two"))
		mustBeInWords(t, "unwritable", err, ErrReadOnly, path, "you have no right to write it")
		mustClose(t, s)
	})
	asNobody(t, func() {
		to := path + " new"
		_, err := Create(to, book())
		mustBeInWords(t, "create", err, fs.ErrPermission, to, "may not be read or written")
	})
}

// TestFolderForbidsJournal is of a file that may be written in a folder that
// may not.
func TestFolderForbidsJournal(t *testing.T) {
	path := forbidden(t)
	chmod(t, path, 0o666)
	asNobody(t, func() {
		s := mustOpen(t, path)
		before := s.Collection()
		_, err := s.Do(titled("Two"))
		mustBeInWords(t, "journal", err, fs.ErrPermission, path, "its folder lets nothing be written")
		if s.Collection() != before {
			t.Error("an edit that was not written is in the collection")
		}
		mustClose(t, s)
	})
}
