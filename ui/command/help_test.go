package command

import (
	"encoding/json"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
)

// long does not fit the measure of the design that a collection begins with.
const long = "The inspector takes his time about it, and the whole street is watching him from the windows"

// verse is a manuscript of four poems: the second has an overlong line, two are
// of one title, and the last has a number for its own.
const verse = `---
title: Four Poems
poet: A. N. Other
---

## Bread

One loaf on the sill,
the other in the oven.

Nobody was hungry.

## Weights

` + long + `
and nobody says a word.

## Bread

So that was that, wasn’t it?

## 1984

A year like any other
`

// ran is what came of a command line.
type ran struct {
	status    int
	out, errs string
}

// run runs a command line that must be one, with text to read from.
func run(t *testing.T, in string, args ...string) ran {
	t.Helper()
	var out, errs strings.Builder
	status, handled := Run(args, strings.NewReader(in), &out, &errs)
	if !handled {
		t.Fatalf("%q is taken for a window", args)
	}
	return ran{status, out.String(), errs.String()}
}

// done runs a command line that must be done without a word of complaint.
func done(t *testing.T, in string, args ...string) string {
	t.Helper()
	r := run(t, in, args...)
	if r.status != Done || r.errs != "" {
		t.Fatalf("headland %q: status %d\n%s", args, r.status, r.errs)
	}
	return r.out
}

// book imports the poems and gives the file.
func book(t *testing.T) string {
	t.Helper()
	folder := t.TempDir()
	file := filepath.Join(folder, "book.headland")
	done(t, "", "import", write(t, folder, "poems.md", verse), "-o", file)
	return file
}

func write(t *testing.T, folder, name, text string) string {
	t.Helper()
	path := filepath.Join(folder, name)
	if err := os.WriteFile(path, []byte(text), 0o644); err != nil {
		t.Fatal(err)
	}
	return path
}

func read(t *testing.T, path string) string {
	t.Helper()
	data, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	return string(data)
}

// reported is the report of a file, read back.
func reported(t *testing.T, file string) report {
	t.Helper()
	var r report
	if err := json.Unmarshal([]byte(done(t, "", "report", file, "--json")), &r); err != nil {
		t.Fatal(err)
	}
	return r
}

// exported is the file's manuscript, without its front matter.
func exported(t *testing.T, file string, flags ...string) string {
	t.Helper()
	path := filepath.Join(t.TempDir(), "out.md")
	r := run(t, "", append([]string{"export", file, "--manuscript", path}, flags...)...)
	if r.status != Done {
		t.Fatal(r.errs)
	}
	_, text, ok := strings.Cut(read(t, path), "\n---\n\n")
	if !ok {
		t.Fatalf("no front matter in\n%s", read(t, path))
	}
	return text
}

// output runs a tool that the tests need; that it is not there is a failure.
func output(t *testing.T, name string, args ...string) string {
	t.Helper()
	out, err := exec.Command(name, args...).CombinedOutput()
	if err != nil {
		t.Fatalf("%s: %v (make setup-test installs what is missing)\n%s", name, err, out)
	}
	return string(out)
}
