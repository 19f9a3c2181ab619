package sqlite

import (
	"bytes"
	"encoding/binary"
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// withBytes is a collection file with some bytes of it put otherwise.
func withBytes(good []byte, at int, b ...byte) []byte {
	changed := bytes.Clone(good)
	copy(changed[at:], b)
	return changed
}

// TestOpenRefuses holds that whatever is no sound collection is refused in
// words of its own that name the file, and left as it was.
func TestOpenRefuses(t *testing.T) {
	path := newPath(t)
	s := mustCreate(t, path)
	for range 40 {
		mustDo(t, s, titled(strings.Repeat("long ", 300)+s.Collection().About().Title[:3]))
		mustDo(t, s, titled("A Book"))
	}
	mustClose(t, s)
	good := read(t, path)
	other := withBytes(good, 68, 0, 0, 0, 0)
	newer := withBytes(good, 60, 0, 0, 0, 9)
	for _, tc := range []struct {
		name  string
		bytes []byte
		want  error
		words string
	}{
		{"empty", nil, ErrForeign, "is empty"},
		{"text", []byte("Shall I compare thee to a summer’s day?\n"), ErrForeign, "is plain text"},
		{"long text", bytes.Repeat([]byte("é"), 200), ErrForeign, "is plain text"},
		{"manuscript", []byte("PK\x03\x04and so on"), ErrForeign, "word-processor file"},
		{"proof", []byte("%PDF-1.7\n"), ErrForeign, "is a PDF"},
		{"bytes", []byte{0xFF, 0xFE, 0, 1, 2, 3, 4, 5}, ErrForeign, "is not a collection"},
		{"database", other, ErrForeign, "database of another program"},
		{"newer", newer, ErrNewer, "it is of version 9, and this program knows versions up to 2"},
		{"version 0", withBytes(good, 60, 0, 0, 0, 0), ErrDamaged, "gives version 0"},
		{"other journal", withBytes(good, 18, 2, 2), ErrForeign, "another kind of journal"},
		{"page size", withBytes(good, 16, 0x10, 1), ErrDamaged, "page size of 4097"},
		{"header only", good[:60], ErrDamaged, "breaks off after 60 bytes"},
		{"truncated", good[:len(good)-5000], ErrDamaged, "breaks off after"},
		{"page spoilt", withBytes(good, 4096, bytes.Repeat([]byte{0xAA}, 4096)...), ErrDamaged, "is damaged"},
	} {
		path := filepath.Join(t.TempDir(), tc.name+Extension)
		write(t, path, tc.bytes)
		_, err := Open(path)
		mustBeInWords(t, tc.name, err, tc.want, path, tc.words)
		if !bytes.Equal(read(t, path), tc.bytes) {
			t.Errorf("%s: the file was changed", tc.name)
		}
		alone(t, path, tc.name+Extension)
	}
}

func mustBeInWords(t *testing.T, name string, err, want error, path, words string) {
	t.Helper()
	var in *Error
	if !errors.As(err, &in) || !errors.Is(err, want) {
		t.Errorf("%s: got %#v, want an Error that is %q", name, err, want)
		return
	}
	if in.Path != path || in.Remedy == "" || !strings.Contains(in.What, words) {
		t.Errorf("%s: got %q, want %q and %q in it", name, err, path, words)
	}
}

func TestOpenWhatIsNoFile(t *testing.T) {
	dir := t.TempDir()
	missing := filepath.Join(dir, "no", "book.headland")
	_, err := Open(missing)
	mustBeInWords(t, "missing", err, fs.ErrNotExist, missing, "is not there")
	_, err = Open(dir)
	mustBeInWords(t, "folder", err, ErrForeign, dir, "is a folder")
	_, err = Open(os.DevNull)
	mustBeInWords(t, "device", err, ErrForeign, os.DevNull, "is a device")
}

// TestOpenDamagedRows holds that what SQLite finds sound and is none the less
// no collection is refused, naming the thing.
func TestOpenDamagedRows(t *testing.T) {
	for _, tc := range []struct {
		sql   string
		want  error
		words string
	}{
		{"UPDATE state SET body = x'7B7D' WHERE kind = 'poem' AND key = '14'", ErrDamaged, "the poem 14 (state 6) is not as it was written"},
		{"UPDATE state SET body = x'5D', hash = x'cd1cf4cd4b6a4bbbea74186b69e8f93d5a7ee5a0a3bcf27b0ca23a87ebe3f5c0' WHERE kind = 'design'", ErrDamaged, "the design"},
		{"DELETE FROM head WHERE kind = 'order'", ErrDamaged, "the order of the book is not there"},
		{"DELETE FROM head WHERE kind = 'poem' AND key = '14'", ErrDamaged, "the order names 14"},
		{"DELETE FROM meta", ErrDamaged, "where its history stands"},
		{"PRAGMA foreign_keys = OFF; DELETE FROM edit", ErrDamaged, "its history breaks off"},
		{"PRAGMA foreign_keys = OFF; DELETE FROM state WHERE kind = 'about'", ErrDamaged, "the about (state 1)"},
		{"DROP TABLE timing", ErrForeign, `no table "timing"`},
		{"ALTER TABLE timing ADD COLUMN extra TEXT", ErrForeign, `no table "timing"`},
		{"CREATE TRIGGER t AFTER INSERT ON edit BEGIN DELETE FROM head; END", ErrForeign, "was given a trigger"},
	} {
		path := newPath(t)
		s := mustCreate(t, path)
		if err := s.exec(tc.sql); err != nil {
			t.Fatal(err)
		}
		mustClose(t, s)
		_, err := Open(path)
		mustBeInWords(t, tc.sql, err, tc.want, path, tc.words)
	}
}

// TestUndoDamaged holds that a damaged older state keeps nobody from the
// collection as it stands, and is named when undo comes to it.
func TestUndoDamaged(t *testing.T) {
	path := newPath(t)
	s := mustCreate(t, path)
	mustDo(t, s, titled("Two"))
	if err := s.exec("UPDATE state SET body = x'7B7D' WHERE id = 1"); err != nil {
		t.Fatal(err)
	}
	mustClose(t, s)
	s = mustOpen(t, path)
	_, err := s.Undo()
	mustBeInWords(t, "undo", err, ErrDamaged, path, "the about (state 1)")
	if s.Collection().About().Title != "Two" {
		t.Errorf("the collection is now %q", s.Collection().About().Title)
	}
	mustDo(t, s, titled("Three"))
}

// TestHeader holds what other programs may go by.
func TestHeader(t *testing.T) {
	path := newPath(t)
	mustClose(t, mustCreate(t, path))
	b := read(t, path)
	if string(b[68:72]) != "Hdld" || binary.BigEndian.Uint32(b[60:]) != uint32(SchemaVersion) || b[18] != 1 || b[19] != 1 {
		t.Errorf("the header is % x", b[:100])
	}
}
