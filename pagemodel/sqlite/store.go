package sqlite

import (
	"encoding/json"
	"fmt"
	"os"
	"sync"
	"time"

	"headland/pagemodel"
)

// Extension is how the name of a collection file ends.
const Extension = ".headland"

// Store is one open collection file. It may be used by several goroutines: one
// call waits for another. Close it when it is done with.
type Store struct {
	mu sync.Mutex
	ledger
	file    os.FileInfo // the file as it was opened
	lock    *lock       // nil where the store is read only
	why     string      // why the store is read only, in words, or ""
	kept    string      // the copy kept when the file was brought forward, or ""
	closed  bool
	current *pagemodel.Collection
}

// hold keeps the store, and SQLite's locks, for one call. What it returns lets
// them go.
func (s *Store) hold() (release func()) {
	s.mu.Lock()
	gate.RLock()
	return func() {
		gate.RUnlock()
		s.mu.Unlock()
	}
}

// Path is the full name of the file.
func (s *Store) Path() string { return s.path }

// ReadOnly says that the file can only be read: it is open elsewhere, or the
// system forbids writing it. See [Store.WhyReadOnly].
func (s *Store) ReadOnly() bool { return s.why != "" }

// WhyReadOnly says in words why the store is read only, and by whom the file is
// held; "" where it can be written.
func (s *Store) WhyReadOnly() string { return s.why }

// KeptCopy is the full name of the copy that was kept because the file was of
// an older version and was brought forward; "" where it was not.
func (s *Store) KeptCopy() string { return s.kept }

// Collection is the collection as it was loaded, or as the last Do, Undo or
// Redo left it.
func (s *Store) Collection() *pagemodel.Collection {
	s.mu.Lock()
	defer s.mu.Unlock()
	return s.current
}

// Do applies an edit to the collection and commits it to the file in one
// transaction, durably, before it returns the next collection. An edit that
// changes nothing writes nothing and gives the same collection. After an error
// the file and the collection are as they were; the error is the edit's own, or
// an [Error]. A round that the edit makes is kept without places; see
// [Store.MarkSent].
func (s *Store) Do(e pagemodel.Edit) (*pagemodel.Collection, error) { return s.do(e, nil) }

// do applies an edit, and keeps where the lines stood in the round that it may
// make.
func (s *Store) do(e pagemodel.Edit, places map[pagemodel.LineID]Place) (*pagemodel.Collection, error) {
	defer s.hold()()
	if err := s.writable(); err != nil {
		return nil, err
	}
	next, err := e.Apply(s.current)
	if err != nil {
		return nil, err
	}
	changes := pagemodel.Between(s.current, next)
	if len(changes) == 0 {
		return s.current, nil
	}
	args, err := json.Marshal(e)
	if err != nil {
		return nil, fmt.Errorf("the edit %q can't be written down, so it was not done: %w", e.Label(), err)
	}
	sent := sending{roundsSince(s.current, next), places}
	err = s.enter(entry{e.Kind(), string(args), e.Label(), changes, next.NextID(), sent})
	if err != nil {
		return nil, err
	}
	s.current = next
	return next, nil
}

// writable says why nothing can be written, or nil. A file that was moved or
// replaced is not written any more: its journal would lie where nobody looks
// for it, or the edit would go into a file without a name.
func (s *Store) writable() error {
	switch {
	case s.closed:
		return s.isClosed()
	case s.why != "":
		return &Error{s.path, "can only be read: " + s.why, "save a copy and work on that", ErrReadOnly}
	}
	info, err := os.Stat(s.path)
	if err != nil || !os.SameFile(info, s.file) {
		return &Error{s.path, "was moved, replaced or taken away since it was opened",
			"put it back, or save a copy: all that you did is still here", ErrElsewhere}
	}
	return nil
}

func (s *Store) isClosed() error {
	return &Error{s.path, "is closed", "open it again", ErrClosed}
}

// Close lets the file go. Everything was written before; closing twice does no
// harm. [Store.Collection] goes on giving the collection.
func (s *Store) Close() error {
	defer s.hold()()
	if s.closed {
		return nil
	}
	s.closed = true
	defer s.lock.release()
	return s.close()
}

// Option sets how files are opened and made.
type Option func(*keeper)

// WithClock has the store take the times that it writes from now instead of
// the system's clock.
func WithClock(now func() time.Time) Option { return func(k *keeper) { k.now = now } }

// keeper opens and makes files.
type keeper struct {
	now        func() time.Time
	migrations []string
}

func newKeeper(opts []Option) *keeper {
	k := &keeper{time.Now, migrations}
	for _, set := range opts {
		set(k)
	}
	return k
}
