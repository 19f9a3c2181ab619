package sqlite

import (
	"crypto/sha256"
	"database/sql"
	"fmt"
	"time"

	"headland/pagemodel"
)

// ledger is the history in one file, and where in it the collection stands.
type ledger struct {
	*connection
	now    func() time.Time
	say    statements
	at     position
	heads  map[thing]int64 // the state of each thing in the collection
	edits  int64           // the highest identities given out
	states int64
}

// thing names one thing of a collection.
type thing struct{ kind, key string }

func (t thing) String() string {
	if t.key == "" {
		return t.kind
	}
	return t.kind + " " + t.key
}

// pointer says which state a thing has; 0 is none.
type pointer struct {
	thing
	state int64
}

// entry is one edit as the ledger writes it.
type entry struct {
	kind, args, label string
	changes           []pagemodel.Change
	next              int64 // the lowest identity not given out after it
	sent              sending
}

// timeForm is how times are written: UTC, RFC 3339, milliseconds.
const timeForm = "2006-01-02T15:04:05.000Z07:00"

func (l *ledger) time() string { return l.now().UTC().Format(timeForm) }

// enter commits an edit. After an error everything is as it was, in the file
// and here.
func (l *ledger) enter(e entry) error {
	var moves []pointer
	err := l.transact(func() (err error) {
		moves, err = l.write(e)
		return err
	})
	if err != nil {
		return translate(l.path, err)
	}
	l.committed(e, moves)
	return nil
}

// write puts an edit's rows into the file and says what the head points to
// after it. The rows have identities counted here, so that an edit written by
// another program in the meantime collides with this one instead of being
// passed over.
func (l *ledger) write(e entry) ([]pointer, error) {
	id := l.edits + 1
	if _, err := l.say.edit.Exec(id, orNull(l.at.edit), e.kind, e.args, e.label, l.time()); err != nil {
		return nil, err
	}
	moves := make([]pointer, len(e.changes))
	state := l.states
	for i, ch := range e.changes {
		moves[i].thing = thing{ch.Kind, ch.Key}
		if ch.New != nil {
			state++
			moves[i].state = state
		}
		if err := l.writeChange(id, moves[i], ch.New); err != nil {
			return nil, err
		}
	}
	if err := l.writeSent(id, e.sent); err != nil {
		return nil, err
	}
	return moves, l.point(moves, id, e.next)
}

func (l *ledger) writeChange(edit int64, to pointer, body []byte) error {
	if to.state != 0 {
		hash := sha256.Sum256(body)
		if _, err := l.say.state.Exec(to.state, to.kind, to.key, hash[:], body); err != nil {
			return err
		}
	}
	_, err := l.say.change.Exec(edit, to.kind, to.key, orNull(l.heads[to.thing]), orNull(to.state))
	return err
}

// point moves the head of the file.
func (l *ledger) point(moves []pointer, edit, next int64) error {
	for _, m := range moves {
		var err error
		if m.state == 0 {
			_, err = l.say.drop.Exec(m.kind, m.key)
		} else {
			_, err = l.say.put.Exec(m.kind, m.key, m.state)
		}
		if err != nil {
			return err
		}
	}
	done, err := l.say.meta.Exec(edit, next, l.at.edit)
	if err != nil {
		return err
	}
	if n, err := done.RowsAffected(); err != nil || n != 1 {
		return changedElsewhere(l.path)
	}
	return nil
}

// committed notes here what the file has taken.
func (l *ledger) committed(e entry, moves []pointer) {
	l.edits++
	for _, m := range moves {
		l.states = max(l.states, m.state)
	}
	l.follow(moves)
	l.at = position{edit: l.edits, parent: l.at.edit, label: e.label}
}

func (l *ledger) follow(moves []pointer) {
	for _, m := range moves {
		if m.state == 0 {
			delete(l.heads, m.thing)
		} else {
			l.heads[m.thing] = m.state
		}
	}
}

func orNull(id int64) sql.NullInt64 { return sql.NullInt64{Int64: id, Valid: id != 0} }

// verify says whether a state is as it was written.
func (l *ledger) verify(p pointer, hash, body []byte) error {
	if sum := sha256.Sum256(body); string(sum[:]) != string(hash) {
		return damaged(l.path, fmt.Sprintf("the %s (state %d) is not as it was written", p.thing, p.state))
	}
	return nil
}
