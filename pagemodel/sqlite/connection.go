package sqlite

import (
	"context"
	"database/sql"
	"database/sql/driver"
	"net/url"
	"path/filepath"
	"strings"

	"github.com/mattn/go-sqlite3"
)

// use is what a connection is for: the query of its URI.
type use string

const (
	shared = "&_foreign_keys=on&_busy_timeout=5000&_txlock=immediate"

	reading use = "mode=ro" + shared
	writing use = "mode=rw&_journal_mode=DELETE&_synchronous=FULL" + shared
	// making is for a file that nobody knows of yet: it needs no journal on
	// disk, as it is given its name when it is whole.
	making use = "mode=rwc&_journal_mode=MEMORY&_synchronous=FULL" + shared
)

// connection is the one connection to a file. It is used by one goroutine at a
// time; everything done through it holds the gate.
type connection struct {
	path string
	db   *sql.DB
	conn *sql.Conn
}

// connect opens a file with SQLite.
func connect(path string, u use) (*connection, error) {
	db := sql.OpenDB(connector{uriOf(path) + "?" + string(u)})
	db.SetMaxOpenConns(1)
	conn, err := db.Conn(context.Background())
	if err != nil {
		db.Close()
		return nil, translate(path, err)
	}
	return &connection{path, db, conn}, nil
}

// uriOf is the path as SQLite reads one, every character that means something
// in a URI escaped.
func uriOf(path string) string {
	slashed := filepath.ToSlash(path)
	if !strings.HasPrefix(slashed, "/") {
		slashed = "/" + slashed // C:/…
	}
	return (&url.URL{Scheme: "file", Path: slashed}).String()
}

// connector makes connections that believe nothing a file says about itself.
type connector struct{ dsn string }

// Connect opens a connection.
func (c connector) Connect(context.Context) (driver.Conn, error) { return c.Driver().Open(c.dsn) }

// Driver is SQLite's, with the settings that can't be said in the URI.
func (c connector) Driver() driver.Driver {
	return &sqlite3.SQLiteDriver{ConnectHook: func(conn *sqlite3.SQLiteConn) error {
		_, err := conn.Exec("PRAGMA trusted_schema = OFF; PRAGMA cell_size_check = ON", nil)
		return err
	}}
}

func (c *connection) close() error {
	err := c.conn.Close()
	if e := c.db.Close(); err == nil {
		err = e
	}
	return translate(c.path, err)
}

func (c *connection) exec(query string, args ...any) error {
	_, err := c.conn.ExecContext(context.Background(), query, args...)
	return err
}

func (c *connection) row(query string, args ...any) *sql.Row {
	return c.conn.QueryRowContext(context.Background(), query, args...)
}

// each calls f for every row of a query.
func (c *connection) each(f func(*sql.Rows) error, query string, args ...any) error {
	rows, err := c.conn.QueryContext(context.Background(), query, args...)
	if err != nil {
		return err
	}
	defer rows.Close()
	for rows.Next() {
		if err := f(rows); err != nil {
			return err
		}
	}
	return rows.Err()
}

// transact does all of do or nothing. After an error no transaction is left
// open.
func (c *connection) transact(do func() error) error {
	if err := c.exec("BEGIN IMMEDIATE"); err != nil {
		return err
	}
	err := do()
	if err == nil {
		err = c.exec("COMMIT")
	}
	if err != nil {
		// SQLite may have rolled back by itself, in which case this
		// complains of having nothing to do.
		_ = c.exec("ROLLBACK")
	}
	return err
}

// check asks SQLite whether every page of the file is sound.
func (c *connection) check() error {
	var says string
	if err := c.row("PRAGMA quick_check(1)").Scan(&says); err != nil {
		return translate(c.path, err)
	}
	if says != "ok" {
		return damaged(c.path, "SQLite found "+strings.TrimPrefix(says, "*** in database main ***\n"))
	}
	return nil
}
