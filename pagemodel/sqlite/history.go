package sqlite

import (
	"database/sql"
	"errors"

	"headland/pagemodel"
)

// position is a place in the tree of edits and what can be done from there.
type position struct {
	edit   int64
	parent int64  // 0 at the first edit
	label  string // of the edit
	child  int64  // the newest edit made from here, or 0
	redo   string // its label
}

// positionAt looks a place up. The children of an edit are newer than it, so
// only what came after is looked through.
func (l *ledger) positionAt(edit int64) (position, error) {
	p := position{edit: edit}
	var parent sql.NullInt64
	if err := l.row("SELECT parent, label FROM edit WHERE id = ?", edit).Scan(&parent, &p.label); err != nil {
		return p, l.missingEdit(err)
	}
	p.parent = parent.Int64
	err := l.row("SELECT id, label FROM edit WHERE id > ?1 AND parent = ?1 ORDER BY id DESC LIMIT 1", edit).Scan(&p.child, &p.redo)
	if err != nil && !errors.Is(err, sql.ErrNoRows) {
		return p, translate(l.path, err)
	}
	return p, nil
}

func (l *ledger) missingEdit(err error) error {
	if errors.Is(err, sql.ErrNoRows) {
		return damaged(l.path, "its history breaks off: an edit is not there")
	}
	return translate(l.path, err)
}

const (
	statesBefore = `SELECT c.kind, c.key, c.old_state, s.hash, s.body
		FROM change c LEFT JOIN state s ON s.id = c.old_state WHERE c.edit = ?`
	statesAfter = `SELECT c.kind, c.key, c.new_state, s.hash, s.body
		FROM change c LEFT JOIN state s ON s.id = c.new_state WHERE c.edit = ?`
)

// changes are what an edit's things were before it, or after it, as the
// collection and as the head take them.
func (l *ledger) changes(query string, edit int64) (changes []pagemodel.Change, moves []pointer, err error) {
	err = l.each(func(r *sql.Rows) error {
		var p pointer
		var state sql.NullInt64
		var hash, body []byte
		if err := r.Scan(&p.kind, &p.key, &state, &hash, &body); err != nil {
			return err
		}
		ch := pagemodel.Change{Kind: p.kind, Key: p.key, New: noState(p.kind)}
		if p.state = state.Int64; state.Valid {
			ch.New = body
			if err := l.verify(p, hash, body); err != nil {
				return err
			}
		}
		changes, moves = append(changes, ch), append(moves, p)
		return nil
	}, query, edit)
	return changes, moves, translate(l.path, err)
}

// travel commits a move of the head to a neighbouring place, whose things are
// to point where moves says.
func (l *ledger) travel(to int64, moves []pointer, next int64) error {
	there, err := l.positionAt(to)
	if err != nil {
		return err
	}
	err = l.transact(func() error { return l.point(moves, to, next) })
	if err != nil {
		return translate(l.path, err)
	}
	l.follow(moves)
	l.at = there
	return nil
}

// Undo takes back the last edit and gives the collection as it was before,
// with [ErrNothingToUndo] where there is none. The edit stays in the file for
// [Store.Redo]. Identities that it gave out are not given out again. After an
// error nothing has changed.
func (s *Store) Undo() (*pagemodel.Collection, error) {
	defer s.hold()()
	if err := s.writable(); err != nil {
		return nil, err
	}
	if s.at.parent == 0 {
		return nil, ErrNothingToUndo
	}
	return s.move(statesBefore, s.at.edit, s.at.parent)
}

// Redo does again what was undone last, with [ErrNothingToRedo] where there is
// nothing. Where several edits were made from here, it is the newest. After an
// error nothing has changed.
func (s *Store) Redo() (*pagemodel.Collection, error) {
	defer s.hold()()
	if err := s.writable(); err != nil {
		return nil, err
	}
	if s.at.child == 0 {
		return nil, ErrNothingToRedo
	}
	return s.move(statesAfter, s.at.child, s.at.child)
}

// move goes to another place over one edit.
func (s *Store) move(query string, edit, to int64) (*pagemodel.Collection, error) {
	changes, moves, err := s.changes(query, edit)
	if err != nil {
		return nil, err
	}
	c, err := s.current.With(changes)
	if err != nil {
		return nil, damaged(s.path, err.Error())
	}
	if err := s.travel(to, moves, c.NextID()); err != nil {
		return nil, err
	}
	s.current = c
	return c, nil
}

// UndoLabel says what [Store.Undo] would take back; false where there is
// nothing.
func (s *Store) UndoLabel() (label string, ok bool) {
	s.mu.Lock()
	defer s.mu.Unlock()
	if s.at.parent == 0 {
		return "", false
	}
	return s.at.label, true
}

// RedoLabel says what [Store.Redo] would do again; false where there is
// nothing.
func (s *Store) RedoLabel() (label string, ok bool) {
	s.mu.Lock()
	defer s.mu.Unlock()
	return s.at.redo, s.at.child != 0
}
