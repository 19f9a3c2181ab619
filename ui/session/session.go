package session

import (
	"fmt"
	"path/filepath"
	"time"

	"headland/pagemodel"
	"headland/pagemodel/sqlite"
	"headland/typeset"
	"headland/typeset/aloud"
	"headland/typeset/echoes"
)

// Session is one open collection: the committed state, as the file has it, and
// at most one preview laid over it. It belongs to one goroutine.
type Session struct {
	store     *sqlite.Store
	faces     *typeset.Faces
	families  []string // the poet's own, in the file
	setter    *typeset.Setter
	committed *typeset.Setting
	preview   *preview // nil unless something is tried out
	now       func() time.Time
	taken     []aloud.Taking // what was timed; nil until asked for
	keptRun   bool           // one that was cut off was kept at opening, and nobody was told yet
	echoes    echoes.Finder
	sent      map[pagemodel.RoundID]*Sent  // books that went out, once asked for
	lists     map[pagemodel.RoundID]listOf // likewise, what differs from them
	changed   func()
	page      int
	focus     pagemodel.LineRef
	focused   bool
}

// preview is an edit tried out on the committed collection.
type preview struct {
	edit    pagemodel.Edit
	setting *typeset.Setting
}

// Create makes a new file that holds the collection, and opens it. It fails if
// there is already something at path.
func Create(path string, c *pagemodel.Collection) (*Session, error) {
	store, err := sqlite.Create(path, c)
	if err != nil {
		return nil, err
	}
	return begin(store)
}

// Open opens a collection's file. Where another program holds it, it opens to
// be read only: see [Session.ReadOnly].
func Open(path string) (*Session, error) {
	store, err := sqlite.Open(path)
	if err != nil {
		return nil, err
	}
	return begin(store)
}

// begin sets the collection for the first time. It closes the store if that
// can't be done.
func begin(store *sqlite.Store) (*Session, error) {
	s := &Session{store: store, now: time.Now, changed: func() {}, page: 1}
	if err := s.loadFaces(); err != nil {
		return nil, fmt.Errorf("open %s: %w", store.Path(), firstOf(err, store.Close()))
	}
	s.committed = s.setter.Set(nil, store.Collection())
	s.keptRun, _ = s.keepHeldRun() // one that can't be read is told of where run-throughs are made
	s.showUnsettled()
	return s, nil
}

// firstOf is the first of the errors that is one.
func firstOf(errs ...error) error {
	for _, err := range errs {
		if err != nil {
			return err
		}
	}
	return nil
}

// Close drops any preview and closes the file. The session must not be used
// afterwards; what it handed out may be.
func (s *Session) Close() error {
	s.preview, s.changed = nil, func() {}
	return s.store.Close()
}

// Path is the collection's file.
func (s *Session) Path() string { return s.store.Path() }

// Name is the file's own name, without its folder: what errors and titles call
// it.
func (s *Session) Name() string { return filepath.Base(s.store.Path()) }

// ReadOnly says that the file can't be changed from here, and why and what to
// do, as a sentence.
func (s *Session) ReadOnly() (why string, yes bool) {
	why = s.store.WhyReadOnly()
	if why == "" {
		return "", false
	}
	return fmt.Sprintf("%s can only be read: %s: save a copy and work on that", s.Path(), why), true
}

// writable is nil where the file may be changed.
func (s *Session) writable() error {
	if why, yes := s.ReadOnly(); yes {
		return &ReadOnlyError{why}
	}
	return nil
}

// ReadOnlyError says that a change was refused because the file is open to be
// read only.
type ReadOnlyError struct {
	Why string // a sentence with the remedy, as [Session.ReadOnly] gives it
}

// Error is the sentence.
func (e *ReadOnlyError) Error() string { return e.Why }

// Collection is the committed collection: what the file holds.
func (s *Session) Collection() *pagemodel.Collection { return s.store.Collection() }

// Setting is what is to be shown: the preview's pages while there is one, else
// the committed ones.
func (s *Session) Setting() *typeset.Setting {
	if s.preview != nil {
		return s.preview.setting
	}
	return s.committed
}

// Committed is the setting of the committed collection.
func (s *Session) Committed() *typeset.Setting { return s.committed }

// Setter is the session's own, for setting labels in ink. It belongs to the
// session's goroutine.
func (s *Session) Setter() *typeset.Setter { return s.setter }

// OnChange has changed called after every change of what is to be shown: of
// the collection, the preview, where the book lies open, or the line at hand.
// There is one listener; nil is none.
func (s *Session) OnChange(changed func()) {
	if changed == nil {
		changed = func() {}
	}
	s.changed = changed
}
