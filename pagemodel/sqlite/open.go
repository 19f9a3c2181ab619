package sqlite

import (
	"database/sql"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"

	"headland/pagemodel"
)

// Open opens a collection file. The header is read before SQLite touches the
// file: one that is newer, foreign or damaged is refused with an [Error] and
// left as it was. One of an older version is brought forward after a copy was
// kept beside it; see [Store.KeptCopy]. Where the file is open elsewhere
// already, or may not be written, the store is read only; see
// [Store.WhyReadOnly].
func Open(path string, opts ...Option) (*Store, error) {
	return newKeeper(opts).open(path)
}

func (k *keeper) open(path string) (*Store, error) {
	path, info, err := find(path)
	if err != nil {
		return nil, err
	}
	held, holder, err := takeLock(path, info)
	if err != nil {
		return nil, err
	}
	s := &Store{file: info, lock: held}
	if held == nil {
		s.why = "it is open in another window of Headland (" + holder + ")"
	}
	if err := k.begin(s, path); err != nil {
		held.release()
		return nil, err
	}
	return s, nil
}

// find is the full name of a file that can be a collection.
func find(path string) (string, os.FileInfo, error) {
	full, err := filepath.Abs(path)
	if err != nil {
		return "", nil, translate(path, err)
	}
	info, err := os.Stat(full)
	if err != nil {
		return "", nil, translate(full, err)
	}
	os.SameFile(info, info) // on some systems only this notes which file it is
	refuse := func(what string) error {
		return &Error{full, what, "choose a file that ends in " + Extension, ErrForeign}
	}
	switch {
	case info.IsDir():
		return "", nil, refuse("is a folder, not a collection")
	case !info.Mode().IsRegular():
		return "", nil, refuse("is a device, not a file")
	}
	return full, info, nil
}

// begin reads the header and, where it allows that, opens the file.
func (k *keeper) begin(s *Store, path string) error {
	h, err := readHeader(path, len(k.migrations), s.lock == nil)
	if err != nil {
		return err
	}
	if !h.writable && s.why == "" {
		s.why = "you have no right to write it"
	}
	gate.RLock()
	defer gate.RUnlock()
	u := writing
	if s.why != "" {
		u = reading
	}
	c, err := connect(path, u)
	if err != nil {
		return unrolled(path, s.why, err)
	}
	if err := k.load(s, c, h.version); err != nil {
		c.close()
		return unrolled(path, s.why, err)
	}
	return nil
}

// load fills the store from a file whose header is in order.
func (k *keeper) load(s *Store, c *connection, version int) (err error) {
	if err := c.check(); err != nil {
		return err
	}
	if version < len(k.migrations) {
		if s.kept, err = k.bringForward(c, s.why, version); err != nil {
			return err
		}
	}
	if err := c.checkSchema(k.migrations); err != nil {
		return err
	}
	s.ledger = ledger{connection: c, now: k.now, heads: map[thing]int64{}}
	if s.say, err = c.prepare(); err != nil {
		return err
	}
	s.current, err = s.loadHead()
	return err
}

// unrolled says more of the refusal of a file that a crash left in the middle
// of an edit: it would have to be put right, and it can only be read.
func unrolled(path, why string, err error) error {
	if why == "" || !errors.Is(err, fs.ErrPermission) || !exists(path+"-journal") {
		return err
	}
	return &Error{path, "was left in the middle of an edit by a crash, and can't be put right as " + why,
		"copy it, together with " + filepath.Base(path) + "-journal, to where you may write", fs.ErrPermission}
}

// bringForward keeps a copy of an older file, then changes it.
func (k *keeper) bringForward(c *connection, why string, version int) (kept string, err error) {
	if why != "" {
		return "", &Error{c.path, fmt.Sprintf("is of version %d and must be brought forward to version %d, but %s", version, len(k.migrations), why),
			"open it first where it can be written", ErrReadOnly}
	}
	if kept, err = c.keepCopy(version); err != nil {
		return "", err
	}
	return kept, c.bringForward(version, k.migrations)
}

// loadHead reads where the history stands and the collection there.
func (l *ledger) loadHead() (*pagemodel.Collection, error) {
	var edit, next int64
	err := l.row(`SELECT head_edit, next_id, (SELECT ifnull(max(id), 0) FROM edit),
		(SELECT ifnull(max(id), 0) FROM state) FROM meta`).Scan(&edit, &next, &l.edits, &l.states)
	if errors.Is(err, sql.ErrNoRows) {
		return nil, damaged(l.path, "it does not say where its history stands")
	}
	if err != nil {
		return nil, translate(l.path, err)
	}
	if l.at, err = l.positionAt(edit); err != nil {
		return nil, err
	}
	states, err := l.headStates()
	if err != nil {
		return nil, err
	}
	c, err := pagemodel.FromStored(states, next)
	if err != nil {
		return nil, damaged(l.path, err.Error())
	}
	return c, nil
}

// headStates are the things of the collection, each as it was written.
func (l *ledger) headStates() ([]pagemodel.Stored, error) {
	var states []pagemodel.Stored
	err := l.each(func(r *sql.Rows) error {
		var p pointer
		var hash, body []byte
		if err := r.Scan(&p.kind, &p.key, &p.state, &hash, &body); err != nil {
			return err
		}
		l.heads[p.thing] = p.state
		states = append(states, pagemodel.Stored{Kind: p.kind, Key: p.key, Body: body})
		return l.verify(p, hash, body)
	}, "SELECT h.kind, h.key, h.state, s.hash, s.body FROM head h LEFT JOIN state s ON s.id = h.state")
	if err != nil {
		return nil, translate(l.path, err)
	}
	for _, kind := range []string{"about", "design", "order"} {
		if l.heads[thing{kind, ""}] == 0 {
			return nil, damaged(l.path, "the "+kind+" of the book is not there")
		}
	}
	return states, nil
}
