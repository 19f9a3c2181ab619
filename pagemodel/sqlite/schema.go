package sqlite

import (
	"database/sql"
	"embed"
	"fmt"
	"slices"
)

// SchemaVersion is the version of the file's form that this program writes. It
// stands in the header of every file (SQLite's user_version).
var SchemaVersion = len(migrations)

//go:embed migrations/*.sql
var migrationFiles embed.FS

// migrations bring a file from version i to i+1.
var migrations = readMigrations()

// readMigrations reads the embedded files, whose names are their versions. It
// runs when the program starts, on files that are part of it.
func readMigrations() []string {
	var all []string
	for {
		b, err := migrationFiles.ReadFile(fmt.Sprintf("migrations/%04d.sql", len(all)+1))
		if err != nil {
			return all
		}
		all = append(all, string(b))
	}
}

// bringForward takes the file from a version to the last one: all the way, or
// not at all.
func (c *connection) bringForward(from int, steps []string) error {
	return translate(c.path, c.transact(func() error {
		if err := c.exec("PRAGMA defer_foreign_keys = ON"); err != nil {
			return err
		}
		for v := from; v < len(steps); v++ {
			if err := c.exec(steps[v]); err != nil {
				return fmt.Errorf("version %d: %w", v+1, err)
			}
		}
		if err := c.each(func(*sql.Rows) error {
			return damaged(c.path, "brought forward, it would have rows that point nowhere")
		}, "PRAGMA foreign_key_check"); err != nil {
			return err
		}
		return c.exec(fmt.Sprintf("PRAGMA user_version = %d", len(steps)))
	}))
}

// checkSchema says whether the tables are those that the steps make. Views and
// tables of other names are let be; triggers, which could change what an edit
// does, are not.
func (c *connection) checkSchema(steps []string) error {
	want, err := freshTables(steps)
	if err != nil {
		return err
	}
	got, err := c.tables()
	if err != nil {
		return err
	}
	for _, name := range sortedNames(want) {
		if got[name] != want[name] {
			return &Error{c.path, fmt.Sprintf("has no table %q as Headland makes it", name), anotherCopy, ErrForeign}
		}
	}
	var trigger string
	err = c.row("SELECT name FROM sqlite_schema WHERE type = 'trigger'").Scan(&trigger)
	if err == nil {
		return &Error{c.path, fmt.Sprintf("was given a trigger, %q, by another program", trigger), anotherCopy, ErrForeign}
	}
	if err != sql.ErrNoRows {
		return translate(c.path, err)
	}
	return nil
}

func freshTables(steps []string) (map[string]string, error) {
	c, err := connect("/headland-fresh", "mode=memory"+shared)
	if err != nil {
		return nil, err
	}
	defer c.close()
	if err := c.bringForward(0, steps); err != nil {
		return nil, err
	}
	return c.tables()
}

// tables are the file's tables by name, each with its columns in words.
func (c *connection) tables() (map[string]string, error) {
	found := map[string]string{}
	err := c.each(func(r *sql.Rows) error {
		var name, column string
		err := r.Scan(&name, &column)
		found[name] += column
		return err
	}, `SELECT t.name, format('%s %s %d %d;', c.name, c.type, c."notnull", c.pk)
		FROM sqlite_schema t, pragma_table_xinfo(t.name) c
		WHERE t.type = 'table' AND t.name NOT LIKE 'sqlite_%' ORDER BY t.name, c.cid`)
	return found, translate(c.path, err)
}

func sortedNames(tables map[string]string) []string {
	var names []string
	for name := range tables {
		names = append(names, name)
	}
	slices.Sort(names)
	return names
}
