package sqlite

import (
	"bytes"
	"encoding/binary"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"sync"
	"unicode/utf8"
)

// ApplicationID is what the header of every collection file carries at byte 68,
// big-endian: the letters "Hdld". It tells a collection from any other SQLite
// database.
const ApplicationID = 0x48646C64

const (
	headerSize = 100
	magic      = "SQLite format 3\x00"
)

// gate keeps plain reading apart from SQLite's own use of files. On Unix, to
// close any descriptor of a file drops every lock that the process has on it,
// SQLite's as well. So whoever opens a file plainly holds the gate alone, and
// every use of SQLite holds it together with the others.
var gate sync.RWMutex

// header is what the first bytes of a file say, read before SQLite touches it.
type header struct {
	version  int  // of the file's form
	writable bool // whether the system lets this user write the file
}

// readHeader looks at a file plainly. It refuses what is no sound collection
// file of a version up to newest, and leaves every file as it was. Where
// another process may be writing, busy is set and the length is not judged.
func readHeader(path string, newest int, busy bool) (header, error) {
	gate.Lock()
	defer gate.Unlock()
	f, writable, err := openPlainly(path)
	if err != nil {
		return header{}, translate(path, err)
	}
	defer f.Close()
	start, err := io.ReadAll(io.LimitReader(f, headerSize))
	if err != nil {
		return header{}, translate(path, err)
	}
	info, err := f.Stat()
	if err != nil {
		return header{}, translate(path, err)
	}
	if err := checkKind(path, start); err != nil {
		return header{}, err
	}
	if err := checkForm(path, start, info.Size(), busy); err != nil {
		return header{}, err
	}
	version := int(int32(binary.BigEndian.Uint32(start[60:])))
	return header{version, writable}, checkVersion(path, version, newest)
}

func openPlainly(path string) (f *os.File, writable bool, err error) {
	if f, err = os.OpenFile(path, os.O_RDWR, 0); err == nil {
		return f, true, nil
	}
	f, err = os.Open(path)
	return f, false, err
}

// checkKind says what a file is that is no collection.
func checkKind(path string, start []byte) error {
	foreign := func(what, remedy string) error { return &Error{path, what, remedy, ErrForeign} }
	switch {
	case len(start) == 0:
		return foreign("is empty, so it is no collection", "choose another file; this one was left as it is")
	case !bytes.HasPrefix(start, []byte(magic)):
		return foreign(kindOf(start))
	case len(start) < headerSize:
		return damaged(path, fmt.Sprintf("it breaks off after %d bytes", len(start)))
	case binary.BigEndian.Uint32(start[68:]) != ApplicationID:
		return foreign("is a database of another program", "choose a collection; this file was left as it is")
	}
	return nil
}

// kindOf names the kinds of file that a poet is likely to take for a
// collection.
func kindOf(start []byte) (what, remedy string) {
	importIt := "import it into a collection instead of opening it"
	switch {
	case bytes.HasPrefix(start, []byte("PK\x03\x04")):
		return "is a word-processor file or an archive, not a collection", importIt
	case bytes.HasPrefix(start, []byte("%PDF")):
		return "is a PDF, not a collection", "choose another file"
	case isText(start):
		return "is plain text, not a collection", importIt
	}
	return "is not a collection", "choose another file; this one was left as it is"
}

// isText allows for a last character that the end of the bytes has cut.
func isText(b []byte) bool {
	for n := 0; n < utf8.UTFMax && len(b) > 0; n++ {
		if utf8.Valid(b) {
			return !bytes.ContainsRune(b, 0)
		}
		b = b[:len(b)-1]
	}
	return false
}

// checkForm looks at the bytes that say how the file is laid out.
func checkForm(path string, start []byte, size int64, busy bool) error {
	if start[18] != 1 || start[19] != 1 {
		return &Error{path, "was given another kind of journal by another program",
			"set its journal mode back to DELETE there, or open a copy; this file was left as it is", ErrForeign}
	}
	page := int64(binary.BigEndian.Uint16(start[16:]))
	if page == 1 {
		page = 65536
	}
	if page < 512 || page&(page-1) != 0 {
		return damaged(path, fmt.Sprintf("its header gives a page size of %d bytes", page))
	}
	counted := bytes.Equal(start[24:28], start[92:96]) // the page count is up to date
	want := page * int64(binary.BigEndian.Uint32(start[28:]))
	if counted && size < want && !busy && !exists(path+"-journal") {
		return damaged(path, fmt.Sprintf("it breaks off after %d of %d bytes", size, want))
	}
	return nil
}

func checkVersion(path string, version, newest int) error {
	switch {
	case version < 1:
		return damaged(path, fmt.Sprintf("its header gives version %d", version))
	case version > newest:
		return &Error{path, fmt.Sprintf("was made by a newer Headland: it is of version %d, and this program knows versions up to %d", version, newest),
			"open it with the newer program; this file was left as it is", ErrNewer}
	}
	return nil
}

// exists says that something has that name, even if it can't be looked at.
func exists(path string) bool {
	_, err := os.Lstat(path)
	return !errors.Is(err, fs.ErrNotExist)
}
