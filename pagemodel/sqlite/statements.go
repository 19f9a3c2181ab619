package sqlite

import (
	"context"
	"database/sql"
)

// statements are those of which edits and rounds consist, prepared once. They
// are closed with their connection.
type statements struct {
	edit, state, change, put, drop, meta, mark, place, read *sql.Stmt
}

func (c *connection) prepare() (statements, error) {
	var s statements
	for _, p := range []struct {
		to    **sql.Stmt
		query string
	}{
		{&s.edit, "INSERT INTO edit (id, parent, kind, args, label, at) VALUES (?, ?, ?, ?, ?, ?)"},
		{&s.state, "INSERT INTO state (id, kind, key, hash, body) VALUES (?, ?, ?, ?, ?)"},
		{&s.change, "INSERT INTO change (edit, kind, key, old_state, new_state) VALUES (?, ?, ?, ?, ?)"},
		{&s.put, "INSERT INTO head (kind, key, state) VALUES (?, ?, ?) ON CONFLICT DO UPDATE SET state = excluded.state"},
		{&s.drop, "DELETE FROM head WHERE kind = ? AND key = ?"},
		{&s.meta, "UPDATE meta SET head_edit = ?, next_id = ? WHERE head_edit = ?"},
		{&s.mark, "INSERT INTO mark (id, edit, name, at) VALUES (?, ?, ?, ?)"},
		{&s.place, "INSERT INTO mark_place (mark, line, page, row) VALUES (?, ?, ?, ?)"},
		{&s.read, "SELECT hash, body FROM state WHERE id = ?"},
	} {
		stmt, err := c.conn.PrepareContext(context.Background(), p.query)
		if err != nil {
			return s, translate(c.path, err)
		}
		*p.to = stmt
	}
	return s, nil
}
