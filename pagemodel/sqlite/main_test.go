package sqlite

import (
	"fmt"
	"os"
	"path/filepath"
	"testing"
	"time"

	"headland/pagemodel"
)

// TestMain gives the tests a cache folder of their own, or is the child of a
// test that wants a process to kill.
func TestMain(m *testing.M) {
	if path := os.Getenv(crashChild); path != "" {
		editForever(path)
	}
	if path := os.Getenv(roundChild); path != "" {
		markForever(path)
	}
	cache, err := os.MkdirTemp("", "headland-cache")
	if err != nil {
		panic(err)
	}
	for _, name := range []string{"XDG_CACHE_HOME", "HOME", "LocalAppData"} {
		os.Setenv(name, cache)
	}
	code := m.Run()
	os.RemoveAll(cache)
	os.Exit(code)
}

// book is a small collection.
func book() *pagemodel.Collection { return bookOf(2, 3) }

// bookOf is a collection of so many poems of so many stanzas of four lines.
func bookOf(poems, stanzas int) *pagemodel.Collection {
	b := pagemodel.NewBuilder(pagemodel.About{Title: "A Book"}, pagemodel.DefaultDesign())
	b.Section("One", nil)
	for n := range poems {
		var all []pagemodel.Stanza
		for range stanzas {
			var lines []pagemodel.Line
			for _, text := range []string{"the first line of the poem", "a second, — with a dash", "crème and naïve words", "last"} {
				lines = append(lines, b.Line(text))
			}
			all = append(all, pagemodel.NewStanza(pagemodel.Verse, lines))
		}
		b.Poem(pagemodel.PoemHead{Title: fmt.Sprintf("Poem %d", n+1)}, []pagemodel.Part{pagemodel.NewPart("", all)})
	}
	return b.Collection()
}

// titled is the edit that gives the book a title.
func titled(title string) pagemodel.Edit {
	return pagemodel.SetAbout{About: pagemodel.About{Title: title}}
}

func clock() time.Time {
	return time.Date(2026, 3, 1, 9, 30, 0, 5e6, time.FixedZone("", 3600))
}

// mustCreate makes a collection file that is closed when the test ends.
func mustCreate(t testing.TB, path string) *Store {
	t.Helper()
	s, err := Create(path, book(), WithClock(clock))
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { s.Close() })
	return s
}

func mustOpen(t testing.TB, path string) *Store {
	t.Helper()
	s, err := Open(path, WithClock(clock))
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { s.Close() })
	return s
}

func mustClose(t testing.TB, s *Store) {
	t.Helper()
	if err := s.Close(); err != nil {
		t.Fatal(err)
	}
}

func mustDo(t testing.TB, s *Store, e pagemodel.Edit) *pagemodel.Collection {
	t.Helper()
	c, err := s.Do(e)
	if err != nil {
		t.Fatal(err)
	}
	return c
}

func newPath(t testing.TB) string { return filepath.Join(t.TempDir(), "book"+Extension) }

// write fills a file of the test.
func write(t testing.TB, path string, b []byte) {
	t.Helper()
	if err := os.WriteFile(path, b, 0o666); err != nil {
		t.Fatal(err)
	}
}

func read(t testing.TB, path string) []byte {
	t.Helper()
	b, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	return b
}

// alone says that nothing lies in the file's folder but these names.
func alone(t testing.TB, path string, names ...string) {
	t.Helper()
	entries, err := os.ReadDir(filepath.Dir(path))
	if err != nil {
		t.Fatal(err)
	}
	var got []string
	for _, e := range entries {
		got = append(got, e.Name())
	}
	if fmt.Sprint(got) != fmt.Sprint(names) {
		t.Errorf("the folder holds %q, want %q", got, names)
	}
}
