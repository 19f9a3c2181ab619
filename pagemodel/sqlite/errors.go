package sqlite

import (
	"errors"
	"fmt"
	"io/fs"

	"github.com/mattn/go-sqlite3"
)

// What an [Error] can come down to, for errors.Is. A missing file is
// fs.ErrNotExist and a forbidden one fs.ErrPermission.
var (
	// ErrExists says that a file is there already and was left as it is.
	ErrExists = errors.New("the file is there already")
	// ErrForeign says that a file is no collection, or was altered by another program.
	ErrForeign = errors.New("the file is not a collection")
	// ErrNewer says that a file was made by a later version of the program.
	ErrNewer = errors.New("the file is of a newer version")
	// ErrDamaged says that a file or something in it can't be read.
	ErrDamaged = errors.New("the file is damaged")
	// ErrReadOnly says that the store may only be read.
	ErrReadOnly = errors.New("the collection is open for reading only")
	// ErrElsewhere says that another program holds, moved or changed the file.
	ErrElsewhere = errors.New("the file is in use or was changed elsewhere")
	// ErrClosed says that the store was closed.
	ErrClosed = errors.New("the collection is closed")
	// ErrNothingToUndo says that the collection is as it was first made.
	ErrNothingToUndo = errors.New("there is nothing to undo")
	// ErrNothingToRedo says that nothing was undone since the last edit.
	ErrNothingToRedo = errors.New("there is nothing to redo")
)

// Error is why something could not be done with a file: which file, what is
// the matter and what can be done, in words for the poet.
type Error struct {
	Path   string // the file
	What   string // what is the matter, and where in the file
	Remedy string // what to do about it
	Cause  error  // one of the errors of this package, or what the system said; may be nil
}

// Error is the file, the trouble and the remedy in one line.
func (e *Error) Error() string { return fmt.Sprintf("%s %s: %s", e.Path, e.What, e.Remedy) }

// Unwrap is the cause.
func (e *Error) Unwrap() error { return e.Cause }

const (
	anotherCopy = "open a copy that was made before; this file was left as it is"
	tryAgain    = ", then try again; nothing was changed"
)

// translate turns what SQLite or the system said about a file into words. An
// error already in words stays as it is.
func translate(path string, err error) error {
	var known *Error
	var lite sqlite3.Error
	switch {
	case err == nil:
		return nil
	case errors.As(err, &known):
		return err
	case errors.As(err, &lite):
		return inWords(path, lite)
	}
	return fromSystem(path, err)
}

// inWords goes by SQLite's codes, never by its text.
func inWords(path string, err sqlite3.Error) error {
	say := func(cause error, what, remedy string) error { return &Error{path, what, remedy, cause} }
	switch err.Code {
	case sqlite3.ErrFull:
		return say(err, "could not be written, as the disk is full", "make some room"+tryAgain)
	case sqlite3.ErrReadonly, sqlite3.ErrPerm, sqlite3.ErrAuth:
		return say(fs.ErrPermission, "may not be written, or its folder lets nothing be written", "save a copy where you may write")
	case sqlite3.ErrCantOpen:
		return say(err, "could not be opened, or its folder lets nothing be written", "see to the rights of the folder, or save a copy elsewhere")
	case sqlite3.ErrBusy, sqlite3.ErrLocked:
		return say(ErrElsewhere, "is held by another program", "close it there"+tryAgain)
	case sqlite3.ErrIoErr:
		return say(err, "could not be read or written: the disk says "+systemWords(err), "see that the disk is there and sound"+tryAgain)
	case sqlite3.ErrCorrupt, sqlite3.ErrNotADB, sqlite3.ErrFormat:
		return say(ErrDamaged, "is damaged", anotherCopy)
	case sqlite3.ErrTooBig, sqlite3.ErrNomem:
		return say(err, "could not be written: that is too much at once", "do it in smaller pieces"+tryAgain)
	case sqlite3.ErrConstraint:
		if err.ExtendedCode == sqlite3.ErrConstraintPrimaryKey {
			return changedElsewhere(path)
		}
	}
	return say(err, fmt.Sprintf("could not be used: SQLite says %q", err.Error()), "report this; "+anotherCopy)
}

func systemWords(err sqlite3.Error) string {
	if err.SystemErrno != 0 {
		return fmt.Sprintf("%q", err.SystemErrno.Error())
	}
	return "no more"
}

func changedElsewhere(path string) error {
	return &Error{path, "was changed by another program since it was opened",
		"close it and open it anew; what you did before is in its history", ErrElsewhere}
}

// fromSystem is for errors of opening, naming and moving files.
func fromSystem(path string, err error) error {
	say := func(what, remedy string) error { return &Error{path, what, remedy, err} }
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return say("is not there", "look whether it was moved, and whether the folder exists")
	case errors.Is(err, fs.ErrPermission):
		return say("may not be read or written by you", "ask whoever owns the file or its folder for the right to")
	case errors.Is(err, fs.ErrExist):
		return &Error{path, "is there already", "choose another name", ErrExists}
	}
	var at *fs.PathError
	if errors.As(err, &at) {
		return say(fmt.Sprintf("could not be used: the system says %q", at.Err), "see that the disk and the folder are there")
	}
	return say(fmt.Sprintf("could not be used: %v", err), "see that the disk and the folder are there")
}

// damaged says which thing in the file can't be read.
func damaged(path, what string) error {
	return &Error{path, "is damaged: " + what, anotherCopy, ErrDamaged}
}
