package sqlite

import (
	"errors"
	"fmt"
	"os"
	"path/filepath"
)

// SaveCopy writes a copy of the file, with its whole history, under another
// name, and goes on with this one. It appears when it is whole. Whatever has
// that name already is left as it is, with [ErrExists], unless overwrite is
// set; a collection that is open in any window is never overwritten. A store
// that is read only can be copied too, and so can a file that was moved.
func (s *Store) SaveCopy(path string, overwrite bool) error {
	defer s.hold()()
	if s.closed {
		return s.isClosed()
	}
	full, err := filepath.Abs(path)
	if err != nil {
		return translate(path, err)
	}
	if !exists(full) {
		return s.copyTo(full, false)
	}
	if !overwrite {
		return translate(full, os.ErrExist)
	}
	return s.copyOver(full)
}

// copyOver replaces a file that nobody has open.
func (s *Store) copyOver(path string) error {
	real, err := filepath.EvalSymlinks(path)
	if err != nil {
		return translate(path, err)
	}
	_, info, err := find(real)
	if err != nil {
		return err
	}
	if os.SameFile(info, s.file) {
		return &Error{path, "is the collection itself", "choose another name for the copy", ErrExists}
	}
	held, holder, err := takeLock(real, info)
	if err != nil {
		return err
	}
	if held == nil {
		return &Error{path, "is open in another window of Headland (" + holder + ")", "close it there, or choose another name", ErrElsewhere}
	}
	defer held.release()
	return s.copyTo(real, true)
}

// copyTo has SQLite write the file page by page, so that a copy made between
// two edits of another window is whole as well.
func (c *connection) copyTo(path string, overwrite bool) error {
	return place(path, overwrite, func(temp string) error {
		err := c.exec("VACUUM INTO ?", temp)
		if own := translate(c.path, err); errors.Is(own, ErrDamaged) {
			return own // it is this file that can't be read
		}
		return err
	})
}

// keepCopy keeps an older file beside itself before it is brought forward.
func (c *connection) keepCopy(version int) (kept string, err error) {
	kept = freeName(c.path, fmt.Sprintf("as it was in version %d", version))
	return kept, c.copyTo(kept, false)
}
