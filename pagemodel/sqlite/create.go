package sqlite

import (
	"os"
	"path/filepath"
	"runtime/debug"

	"headland/pagemodel"
)

// Create makes a collection file and opens it. The file appears under its name
// when it is whole and on the disk; whatever has that name already is left as
// it is, with [ErrExists].
func Create(path string, c *pagemodel.Collection, opts ...Option) (*Store, error) {
	return newKeeper(opts).create(path, c)
}

func (k *keeper) create(path string, c *pagemodel.Collection) (*Store, error) {
	full, err := filepath.Abs(path)
	if err != nil {
		return nil, translate(path, err)
	}
	if exists(full) {
		return nil, translate(full, os.ErrExist)
	}
	err = place(full, false, func(temp string) error { return k.make(temp, c.WithNextID(1)) })
	if err != nil {
		return nil, err
	}
	return k.open(full)
}

// make writes a whole collection file that nobody else knows of.
func (k *keeper) make(path string, book *pagemodel.Collection) (err error) {
	gate.RLock()
	defer gate.RUnlock()
	c, err := connect(path, making)
	if err != nil {
		return err
	}
	defer func() {
		if e := c.close(); err == nil {
			err = e
		}
	}()
	if err := translate(path, c.exec("PRAGMA application_id = "+applicationID)); err != nil {
		return err
	}
	if err := c.bringForward(0, k.migrations); err != nil {
		return err
	}
	return k.fill(c, book)
}

// fill makes the first edit, which is the making of the collection.
func (k *keeper) fill(c *connection, book *pagemodel.Collection) error {
	l := ledger{connection: c, now: k.now, heads: map[thing]int64{}}
	var err error
	if l.say, err = c.prepare(); err != nil {
		return err
	}
	first := entry{kind: "create", args: "{}", label: "begin the collection",
		changes: pagemodel.Between(&pagemodel.Collection{}, book), next: book.NextID()}
	return translate(c.path, c.transact(func() error {
		err := c.exec("INSERT INTO meta (one, head_edit, next_id, made_by, made_at) VALUES (1, 0, ?, ?, ?)",
			book.NextID(), madeBy(), l.time())
		if err != nil {
			return err
		}
		_, err = l.write(first)
		return err
	}))
}

// madeBy is the program and its version, as the build knows it.
func madeBy() string {
	if info, ok := debug.ReadBuildInfo(); ok && info.Main.Version != "" {
		return "Headland " + info.Main.Version
	}
	return "Headland"
}
