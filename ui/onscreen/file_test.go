package onscreen

import (
	"database/sql"
	"encoding/json"
	"net/url"
	"testing"

	_ "github.com/mattn/go-sqlite3" // reads the file behind the program's back
)

// edit is a row of the file's history.
type edit struct {
	id, parent        int64
	kind, args, label string
}

// readFile reads the collection's file with SQLite itself, without going
// through any of the program's code.
func readFile(t testing.TB, path string, read func(db *sql.DB) error) {
	t.Helper()
	db, err := sql.Open("sqlite3", "file:"+(&url.URL{Path: path}).EscapedPath()+"?mode=ro&_busy_timeout=5000")
	if err != nil {
		t.Fatal(err)
	}
	defer db.Close()
	if err := read(db); err != nil {
		t.Fatalf("read %s: %v", path, err)
	}
}

// history are all edits after the one that made the file, and the head, as they
// stood at one instant.
func history(t testing.TB, path string) (edits []edit, head int64) {
	t.Helper()
	readFile(t, path, func(db *sql.DB) error {
		now, err := db.Begin()
		if err != nil {
			return err
		}
		defer now.Rollback()
		if err := now.QueryRow("SELECT head_edit FROM meta").Scan(&head); err != nil {
			return err
		}
		rows, err := now.Query("SELECT id, parent, kind, args, label FROM edit WHERE parent IS NOT NULL ORDER BY id")
		if err != nil {
			return err
		}
		defer rows.Close()
		for rows.Next() {
			var e edit
			if err := rows.Scan(&e.id, &e.parent, &e.kind, &e.args, &e.label); err != nil {
				return err
			}
			edits = append(edits, e)
		}
		return rows.Err()
	})
	return edits, head
}

// poemBody is as much of a poem's state as the tests look at.
type poemBody struct {
	Parts []struct {
		Stanzas []struct {
			Lines []struct {
				ID     int64  `json:"id"`
				Text   string `json:"text"`
				Breaks []int  `json:"breaks"`
			} `json:"lines"`
		} `json:"stanzas"`
	} `json:"parts"`
}

// texts are the lines of a poem as the head of the file has them.
func texts(t testing.TB, path string, poem int64) []string {
	t.Helper()
	var body []byte
	readFile(t, path, func(db *sql.DB) error {
		return db.QueryRow("SELECT body FROM state JOIN head ON state.id = head.state WHERE head.kind = 'poem' AND head.key = ?", poem).Scan(&body)
	})
	var p poemBody
	if err := json.Unmarshal(body, &p); err != nil {
		t.Fatal(err)
	}
	var lines []string
	for _, part := range p.Parts {
		for _, s := range part.Stanzas {
			for _, l := range s.Lines {
				lines = append(lines, l.Text)
			}
		}
	}
	return lines
}
