package session

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"headland/pagemodel"
	"headland/typeset"
)

// long does not fit the measure of the design that a collection begins with.
const long = "The inspector takes his time about it, and the whole street is watching him from the windows"

// verse is a manuscript of three poems, the second with an overlong line.
const verse = `---
title: Three Poems
poet: A. N. Other
---

## Bread

One loaf on the sill,
the other in the oven.

## Weights

` + long + `
and nobody says a word.

## Last

So that was that.
`

// write puts a file into a folder of its own.
func write(t *testing.T, name, text string) string {
	t.Helper()
	path := filepath.Join(t.TempDir(), name)
	if err := os.WriteFile(path, []byte(text), 0o644); err != nil {
		t.Fatal(err)
	}
	return path
}

// imported is a session on a new collection of the three poems.
func imported(t *testing.T) *Session {
	t.Helper()
	s, notices, err := Import(filepath.Join(t.TempDir(), "book.headland"), []string{write(t, "poems.md", verse)})
	if err != nil || len(notices) > 0 {
		t.Fatalf("Import: %v, %v", notices, err)
	}
	t.Cleanup(func() { closed(t, s) })
	return s
}

func closed(t *testing.T, s *Session) {
	t.Helper()
	if err := s.Close(); err != nil {
		t.Errorf("Close: %v", err)
	}
}

// must ends the test where something went wrong that should not.
func must(t *testing.T, err error) {
	t.Helper()
	if err != nil {
		t.Fatal(err)
	}
}

// refused sees that something was refused, in words that hold all of these.
func refused(t *testing.T, err error, words ...string) {
	t.Helper()
	if err == nil {
		t.Fatalf("not refused; want an error with %q", words)
	}
	for _, w := range words {
		if !strings.Contains(err.Error(), w) {
			t.Errorf("refused with %q, want %q in it", err, w)
		}
	}
}

// lineOf is a line by the numbers of its poem, stanza and line.
func lineOf(t *testing.T, s *Session, poem, stanza, line int) (pagemodel.LineRef, pagemodel.Line) {
	t.Helper()
	p, err := s.Collection().PoemCalled(fmt.Sprintf("#%d", poem))
	must(t, err)
	at, err := p.At(stanza, line)
	must(t, err)
	return pagemodel.LineRef{Poem: p.ID(), Line: p.Line(at).ID()}, p.Line(at)
}

// text is the lines of the whole book, stanzas parted by empty lines.
func text(c *pagemodel.Collection) string {
	var b strings.Builder
	for _, p := range c.Poems() {
		fmt.Fprintf(&b, "# %s\n", p.Name())
		for _, part := range p.Parts() {
			for _, stanza := range part.Stanzas() {
				for _, l := range stanza.Lines() {
					fmt.Fprintf(&b, "%s\n", l.Text())
				}
				b.WriteString("\n")
			}
		}
	}
	return b.String()
}

// places is where every glyph of a setting stands.
func places(s *typeset.Setting) string {
	var b strings.Builder
	for n := 1; n <= s.Extent(); n++ {
		page := s.Page(n)
		fmt.Fprintf(&b, "page %d %q %v\n", n, page.Folio, page.Text)
		for _, r := range page.Rows {
			fmt.Fprintf(&b, "%d.%d %v %v %d-%d #%d %d %v,%v %v %v\n", r.Poem, r.Line, r.Role, r.Turn, r.Start, r.End, r.Number, r.Grid, r.X, r.Baseline, r.Width, r.Overrun)
			for _, run := range r.Runs {
				fmt.Fprintf(&b, "  %x %v %v %v %q\n", run.Face.ID(), run.Size, run.X, run.Glyphs, run.Text)
			}
		}
	}
	return b.String()
}

// cold is where every glyph would stand if the collection were set afresh.
func cold(c *pagemodel.Collection) string {
	return places(typeset.NewSetter(typeset.Bundled()).Set(nil, c))
}

// inFile is the text that a file holds, read while it may be open elsewhere.
func inFile(t *testing.T, path string) string {
	t.Helper()
	s, err := Open(path)
	must(t, err)
	defer closed(t, s)
	return text(s.Collection())
}

// retyped gives a line other words.
func retyped(ref pagemodel.LineRef) pagemodel.Edit {
	return pagemodel.Retype{LineRef: ref, Text: "Ours"}
}
