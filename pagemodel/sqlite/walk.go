package sqlite

import (
	"cmp"
	"database/sql"
	"slices"

	"headland/pagemodel"
)

// walk goes through the tree of edits from one edit (a) and from another (b) to
// where their ways meet. An edit is newer than its parent, so it is always the
// newer of the two that takes a step. Each row is what the edit that is left
// behind changed: on the way from a what was before it, on the way from b what
// was after it. The last row has the two where they met, or parted for good.
const walk = `WITH RECURSIVE walk (step, a, b) AS (
		VALUES (0, ?, ?)
		UNION ALL
		SELECT step + 1,
			iif(a > b, (SELECT parent FROM edit WHERE id = a AND parent < a), a),
			iif(a > b, b, (SELECT parent FROM edit WHERE id = b AND parent < b))
		FROM walk WHERE a <> b)
	SELECT w.a = w.b, w.b > w.a, c.kind, c.key, iif(w.a > w.b, c.old_state, c.new_state)
	FROM walk w LEFT JOIN change c ON w.a <> w.b AND c.edit = max(w.a, w.b) ORDER BY w.step`

// changesTo are what the things of the collection were after some edit, where
// that is not what they are. Only those are read.
func (l *ledger) changesTo(edit int64) ([]pagemodel.Change, error) {
	net, err := l.pointersTo(edit)
	if err != nil {
		return nil, err
	}
	changes := make([]pagemodel.Change, 0, len(net))
	for _, p := range net {
		body, err := l.body(p)
		if err != nil {
			return nil, err
		}
		changes = append(changes, pagemodel.Change{Kind: p.kind, Key: p.key, New: body})
	}
	return changes, nil
}

// pointersTo are the states that differ, in the order in which they lie in the
// file. On the way back the oldest step tells what a thing was, on the way there
// the newest, which comes first; and the way there comes after the way back.
func (l *ledger) pointersTo(edit int64) ([]pointer, error) {
	net, there, met := map[thing]int64{}, map[thing]bool{}, false
	err := l.each(func(r *sql.Rows) error {
		var here, forth sql.NullBool
		var kind, key sql.NullString
		var state sql.NullInt64
		if err := r.Scan(&here, &forth, &kind, &key, &state); err != nil {
			return err
		}
		met = here.Bool
		t := thing{kind.String, key.String}
		if !kind.Valid || there[t] {
			return nil
		}
		net[t], there[t] = state.Int64, forth.Bool
		return nil
	}, walk, l.at.edit, edit)
	if err != nil {
		return nil, translate(l.path, err)
	}
	if !met {
		return nil, l.missingEdit(sql.ErrNoRows)
	}
	return l.differing(net), nil
}

func (l *ledger) differing(net map[thing]int64) []pointer {
	var all []pointer
	for t, state := range net {
		if l.heads[t] != state {
			all = append(all, pointer{t, state})
		}
	}
	slices.SortFunc(all, func(a, b pointer) int {
		return cmp.Or(cmp.Compare(a.state, b.state), cmp.Compare(a.String(), b.String()))
	})
	return all
}

// body is a state as it was written.
func (l *ledger) body(p pointer) ([]byte, error) {
	if p.state == 0 {
		return noState(p.kind), nil
	}
	var hash, body []byte
	err := l.say.read.QueryRow(p.state).Scan(&hash, &body)
	if err != nil && err != sql.ErrNoRows {
		return nil, translate(l.path, err)
	}
	return body, l.verify(p, hash, body)
}

// noState is what a thing without a state is to the collection: nothing at all,
// or, of what every collection has, nothing in it. Only files from before there
// were prelims, end matter and kept designs are without those.
func noState(kind string) []byte {
	if kind == "matter" || kind == "designs" {
		return []byte("null")
	}
	return nil
}
