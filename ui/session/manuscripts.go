package session

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"strings"

	"headland/pagemodel"
	"headland/pagemodel/manuscript"
	"headland/pagemodel/sqlite"
)

// Import makes a new collection at out from manuscripts, one after the other in
// the order named, and opens it. Title and poet are the first said. The
// notices say what could not be taken over as it was. It fails, leaving nothing
// at out, if a manuscript can't be read or there is already something at out.
func Import(out string, names []string) (*Session, []manuscript.Notice, error) {
	c, notices, err := readAll(names, pagemodel.DefaultDesign())
	if err != nil {
		return nil, notices, err
	}
	s, err := Create(out, c)
	return s, notices, err
}

// Add puts the poems of manuscripts at the end of this book, as one edit. The
// notices say what could not be taken over as it was.
func (s *Session) Add(names []string) ([]manuscript.Notice, error) {
	if err := s.writable(); err != nil {
		return nil, err
	}
	c, notices, err := readAll(names, s.Collection().Design())
	if err != nil {
		return notices, err
	}
	return notices, s.Do(pagemodel.Add{From: c, Name: strings.Join(baseNames(names), ", ")})
}

func baseNames(names []string) []string {
	short := make([]string, len(names))
	for i, name := range names {
		short[i] = filepath.Base(name)
	}
	return short
}

// readAll reads manuscripts, in order, into one collection.
func readAll(names []string, design pagemodel.Design) (*pagemodel.Collection, []manuscript.Notice, error) {
	sources := make([]manuscript.Source, len(names))
	for i, name := range names {
		data, err := os.ReadFile(name)
		if errors.Is(err, fs.ErrNotExist) {
			return nil, nil, fmt.Errorf("import %s: there is no such file: look whether its name is right", name)
		}
		if err != nil {
			return nil, nil, fmt.Errorf("import %s: %w: choose a file that you may read", name, cause(err))
		}
		sources[i] = manuscript.Source{Name: name, Data: data}
	}
	return manuscript.ReadAll(sources, design)
}

// SaveCopy saves the collection as it is under another name, with its whole
// history. It refuses a name that is taken: see [Session.SaveCopyOver].
func (s *Session) SaveCopy(path string) error { return s.store.SaveCopy(path, false) }

// SaveCopyOver is SaveCopy where somebody has said that the file at path may be
// replaced. A collection that is open, this one too, is never replaced.
func (s *Session) SaveCopyOver(path string) error { return s.store.SaveCopy(path, true) }

// OpenOrImport opens what somebody points at: a collection, or the collection
// beside a manuscript (poems.headland beside poems.md), which is made from the
// manuscript if it is not there.
func OpenOrImport(path string) (*Session, []manuscript.Notice, error) {
	if !isManuscript(path) {
		s, err := Open(path)
		return s, nil, err
	}
	beside := strings.TrimSuffix(path, filepath.Ext(path)) + Extension
	if _, err := os.Lstat(beside); err == nil {
		s, err := Open(beside)
		return s, nil, err
	}
	return Import(beside, []string{path})
}

// Extension is how the name of a collection's file ends.
const Extension = sqlite.Extension

// isManuscript says whether the name is that of a manuscript.
func isManuscript(path string) bool {
	switch strings.ToLower(filepath.Ext(path)) {
	case ".md", ".markdown", ".txt", ".text":
		return true
	}
	return false
}
