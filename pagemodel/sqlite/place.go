package sqlite

import (
	"crypto/rand"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"strconv"
	"strings"
)

var applicationID = strconv.Itoa(ApplicationID)

// place has write make a file under a name of its own beside path, puts it on
// the disk, and gives it its name when it is whole: at every instant there is
// the old file, or the new one, or none, never half of one.
func place(path string, overwrite bool, write func(temp string) error) error {
	if err := clearOfJournals(path); err != nil {
		return err
	}
	temp := filepath.Join(filepath.Dir(path), ".headland-"+rand.Text()+".new")
	defer os.Remove(temp)
	if err := makeEmpty(temp); errors.Is(err, fs.ErrNotExist) {
		return &Error{path, "can't be made, as its folder is not there", "make the folder first, or choose another", err}
	} else if err != nil {
		return named(path, temp, err)
	}
	if err := write(temp); err != nil {
		return named(path, temp, err)
	}
	if err := syncFile(temp); err != nil {
		return named(path, temp, err)
	}
	if err := giveName(temp, path, overwrite); err != nil {
		return named(path, temp, err)
	}
	return named(path, temp, syncFolder(filepath.Dir(path)))
}

// clearOfJournals refuses a name beside which the journal of a former file
// lies: SQLite would take it for the new file's, and spoil that.
func clearOfJournals(path string) error {
	for _, end := range []string{"-journal", "-wal"} {
		if exists(path + end) {
			return &Error{path, "can't be made, as " + filepath.Base(path) + end + " lies there from a former file of that name",
				"choose another name, or move that away", ErrExists}
		}
	}
	return nil
}

// makeEmpty makes the file with the rights that the user's files have.
func makeEmpty(path string) error {
	f, err := os.OpenFile(path, os.O_WRONLY|os.O_CREATE|os.O_EXCL, 0o666)
	if err != nil {
		return err
	}
	return f.Close()
}

func syncFile(path string) error {
	f, err := os.OpenFile(path, os.O_RDWR, 0)
	if err != nil {
		return err
	}
	err = f.Sync()
	if e := f.Close(); err == nil {
		err = e
	}
	return err
}

// giveName never takes the name from another file unless overwrite is set. A
// file system that has no links is looked at first instead.
func giveName(temp, path string, overwrite bool) error {
	if overwrite {
		return os.Rename(temp, path)
	}
	err := os.Link(temp, path)
	if err == nil || errors.Is(err, fs.ErrExist) {
		return err
	}
	if exists(path) {
		return fs.ErrExist
	}
	return os.Rename(temp, path)
}

// named is the error in words, with the name that the user knows where it would
// be that of the temporary file.
func named(path, temp string, err error) error {
	err = translate(path, err)
	var known *Error
	if errors.As(err, &known) && known.Path == temp {
		renamed := *known
		renamed.Path = path
		return &renamed
	}
	return err
}

// freeName is the first of "name (why).ext", "name (why 2).ext" … that nothing
// has.
func freeName(path, why string) string {
	ext := filepath.Ext(path)
	base := strings.TrimSuffix(path, ext)
	name := fmt.Sprintf("%s (%s)%s", base, why, ext)
	for n := 2; exists(name); n++ {
		name = fmt.Sprintf("%s (%s, %d)%s", base, why, n, ext)
	}
	return name
}
