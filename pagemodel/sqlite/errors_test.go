package sqlite

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"syscall"
	"testing"

	"github.com/mattn/go-sqlite3"
)

// TestTranslate holds that whatever SQLite or the system says is put into
// words, by its code, even where it comes wrapped.
func TestTranslate(t *testing.T) {
	lite := func(code sqlite3.ErrNo) error { return fmt.Errorf("wrapped: %w", sqlite3.Error{Code: code}) }
	other := errors.New("something else")
	odd := lite(sqlite3.ErrMismatch)
	disk := sqlite3.Error{Code: sqlite3.ErrIoErr, SystemErrno: syscall.EIO}
	broken := &fs.PathError{Op: "open", Path: "x", Err: syscall.EIO}
	for _, tc := range []struct {
		err, want error
		words     string
	}{
		{lite(sqlite3.ErrFull), sqlite3.Error{Code: sqlite3.ErrFull}, "the disk is full"},
		{lite(sqlite3.ErrReadonly), fs.ErrPermission, "may not be written"},
		{lite(sqlite3.ErrCantOpen), sqlite3.Error{Code: sqlite3.ErrCantOpen}, "could not be opened"},
		{lite(sqlite3.ErrBusy), ErrElsewhere, "held by another program"},
		{disk, disk, "the disk says " + fmt.Sprintf("%q", syscall.EIO.Error())},
		{lite(sqlite3.ErrIoErr), sqlite3.Error{Code: sqlite3.ErrIoErr}, "the disk says no more"},
		{lite(sqlite3.ErrNotADB), ErrDamaged, "is damaged"},
		{lite(sqlite3.ErrTooBig), sqlite3.Error{Code: sqlite3.ErrTooBig}, "too much at once"},
		{sqlite3.Error{Code: sqlite3.ErrConstraint, ExtendedCode: sqlite3.ErrConstraintPrimaryKey}, ErrElsewhere, "changed by another program"},
		{odd, sqlite3.Error{Code: sqlite3.ErrMismatch}, "SQLite says"},
		{os.ErrExist, ErrExists, "is there already"},
		{broken, broken, "the system says"},
		{other, other, "something else"},
	} {
		mustBeInWords(t, tc.err.Error(), translate("/a/file", tc.err), tc.want, "/a/file", tc.words)
	}
	if translate("x", nil) != nil {
		t.Error("no error became one")
	}
	if known := damaged("x", "y"); translate("z", known) != known {
		t.Error("an error in words was put into words again")
	}
}
