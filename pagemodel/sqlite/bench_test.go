package sqlite

import (
	"context"
	"database/sql"
	"path/filepath"
	"slices"
	"strconv"
	"testing"
	"time"

	"headland/pagemodel"
)

// BenchmarkEdit measures one edit to a book of ordinary size, against one bare
// row committed to a file of one table under the same settings. The two are
// made in turn, and x_bare_row is the ratio of their medians, so that whatever
// else the disk does strikes both.
func BenchmarkEdit(b *testing.B) {
	s, err := Create(newPath(b), bookOf(60, 8))
	if err != nil {
		b.Fatal(err)
	}
	defer s.Close()
	bare, insert := bareTable(b)
	defer bare.close()
	refs := firstLines(s.Collection())
	var edits, rows []time.Duration
	n := 0
	for b.Loop() {
		n++
		start := time.Now()
		if _, err := insert.Exec("one line of a poem"); err != nil {
			b.Fatal(err)
		}
		between := time.Now()
		mustDo(b, s, pagemodel.Retype{LineRef: refs[n%len(refs)], Text: "the line as it is in draft " + strconv.Itoa(n)})
		rows, edits = append(rows, between.Sub(start)), append(edits, time.Since(between))
	}
	b.ReportMetric(float64(median(edits))/float64(median(rows)), "x_bare_row")
	b.ReportMetric(float64(median(edits).Microseconds()), "us/edit")
	b.ReportMetric(float64(median(rows).Microseconds()), "us/bare_row")
}

// bareTable is a file of one table and the statement that puts a row into it.
func bareTable(b *testing.B) (*connection, *sql.Stmt) {
	path := filepath.Join(b.TempDir(), "bare.db")
	write(b, path, nil)
	c, err := connect(path, writing)
	if err != nil {
		b.Fatal(err)
	}
	if err := c.exec("CREATE TABLE bare (id INTEGER PRIMARY KEY, body TEXT)"); err != nil {
		b.Fatal(err)
	}
	insert, err := c.conn.PrepareContext(context.Background(), "INSERT INTO bare (body) VALUES (?)")
	if err != nil {
		b.Fatal(err)
	}
	return c, insert
}

func firstLines(c *pagemodel.Collection) []pagemodel.LineRef {
	var refs []pagemodel.LineRef
	for _, p := range c.Poems() {
		for _, l := range p.Lines() {
			refs = append(refs, pagemodel.LineRef{Poem: p.ID(), Line: l.ID()})
			break
		}
	}
	return refs
}

func median(d []time.Duration) time.Duration {
	slices.Sort(d)
	return d[len(d)/2]
}

// BenchmarkOpen measures the opening of a book after a thousand edits.
func BenchmarkOpen(b *testing.B) {
	path := newPath(b)
	s, err := Create(path, bookOf(60, 8))
	if err != nil {
		b.Fatal(err)
	}
	refs := firstLines(s.Collection())
	for n := range 1000 {
		mustDo(b, s, pagemodel.Retype{LineRef: refs[n%len(refs)], Text: "draft " + strconv.Itoa(n)})
	}
	mustClose(b, s)
	for b.Loop() {
		mustClose(b, mustOpen(b, path))
	}
}
