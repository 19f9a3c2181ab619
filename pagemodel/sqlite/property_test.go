package sqlite

import (
	"fmt"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"headland/pagemodel"
	"pgregory.net/rapid"
)

// sum is all that a collection holds, as one string.
func sum(c *pagemodel.Collection) string {
	var all []string
	for _, s := range c.Stored() {
		all = append(all, fmt.Sprintf("%s %s %s", s.Kind, s.Key, s.Body))
	}
	slices.Sort(all)
	return strings.Join(all, "\n")
}

// node is a place in the model's tree of edits, all of it in memory.
type node struct {
	c        *pagemodel.Collection
	parent   *node
	children []*node
}

// model is what a store is to be like.
type model struct {
	at   *node
	next int64
	all  []*node // in the order in which they were made
	sent map[pagemodel.RoundID]*pagemodel.Collection
}

func newModel(c *pagemodel.Collection) model {
	root := &node{c: c}
	return model{at: root, next: c.NextID(), all: []*node{root}, sent: map[pagemodel.RoundID]*pagemodel.Collection{}}
}

func (m *model) now() *pagemodel.Collection { return m.at.c.WithNextID(m.next) }

func (m *model) do(e pagemodel.Edit) error {
	old := m.now()
	c, err := e.Apply(old)
	if err != nil || len(pagemodel.Between(old, c)) == 0 {
		return err
	}
	n := &node{c: c, parent: m.at}
	m.at.children = append(m.at.children, n)
	m.at, m.next, m.all = n, c.NextID(), append(m.all, n)
	for _, r := range roundsSince(old, c) {
		m.sent[r.ID] = c
	}
	return nil
}

func drawEdit(t *rapid.T, c *pagemodel.Collection) pagemodel.Edit {
	var poems []*pagemodel.Poem
	for _, p := range c.Poems() {
		poems = append(poems, p)
	}
	p := rapid.SampledFrom(poems).Draw(t, "poem")
	var lines []pagemodel.Line
	for _, l := range p.Lines() {
		lines = append(lines, l)
	}
	l := rapid.SampledFrom(lines).Draw(t, "line")
	ref := pagemodel.LineRef{Poem: p.ID(), Line: l.ID()}
	at := rapid.IntRange(0, len(l.Text())).Draw(t, "at")
	word := rapid.StringMatching(`[a-z]{1,3}`).Draw(t, "word")
	design := c.Design()
	design.Size = pagemodel.Pt(float64(rapid.IntRange(9, 14).Draw(t, "size")))
	return rapid.SampledFrom([]pagemodel.Edit{
		pagemodel.Break{LineRef: ref, At: at}, pagemodel.Break{LineRef: ref, At: at, In: pagemodel.InEdition},
		pagemodel.Join{LineRef: ref}, pagemodel.Carry{LineRef: ref, Count: 1}, pagemodel.Keep{LineRef: ref, Reason: word},
		pagemodel.Retype{LineRef: ref, Text: word}, pagemodel.StanzaBreak{LineRef: ref, Open: true}, titled(word),
		pagemodel.StanzaBreak{LineRef: ref}, pagemodel.SetHead{Poem: p.ID(), Head: pagemodel.PoemHead{Title: word}},
		pagemodel.Move{Poem: p.ID(), Before: poems[0].ID()}, pagemodel.Move{Poem: p.ID()},
		pagemodel.SetDesign{Design: design}, pagemodel.Add{From: bookOf(1, 1), Name: word},
		pagemodel.MarkSent{Name: word}, pagemodel.MarkSent{}, pagemodel.KeepVariant{Poem: p.ID(), Name: word},
		pagemodel.UseVariant{Poem: p.ID(), Name: word}, pagemodel.Say{Word: word, As: word},
	}).Draw(t, "edit")
}

func ids(c *pagemodel.Collection) map[int64]bool {
	all := map[int64]bool{}
	for _, e := range c.Order() {
		if e.Section != nil {
			all[int64(e.Section.ID)] = true
			continue
		}
		all[int64(e.Poem.ID())] = true
		for _, l := range e.Poem.Lines() {
			all[int64(l.ID())] = true
		}
	}
	return all
}

// trial is one run of random doings on a file.
type trial struct {
	*rapid.T
	s *Store
	m model
}

func (t *trial) edit() {
	old := t.s.Collection()
	e := drawEdit(t.T, old)
	want := t.m.do(e)
	c, err := t.do(e)
	if (err == nil) != (want == nil) {
		t.Fatalf("%s gave %v, want %v", e.Kind(), err, want)
	}
	if err != nil {
		return
	}
	had := ids(old)
	for id := range ids(c) {
		if !had[id] && id < old.NextID() {
			t.Fatalf("%s used identity %d again: the lowest free one was %d", e.Kind(), id, old.NextID())
		}
	}
}

// do is Store.Do, or Store.MarkSent where the edit is one.
func (t *trial) do(e pagemodel.Edit) (*pagemodel.Collection, error) {
	if e, ok := e.(pagemodel.MarkSent); ok {
		return t.s.MarkSent(e, placesOf(t.s.Collection()))
	}
	return t.s.Do(e)
}

func (t *trial) undo() {
	_, err := t.s.Undo()
	if (err == nil) != (t.m.at.parent != nil) {
		t.Fatalf("undo gave %v", err)
	}
	if err == nil {
		t.m.at = t.m.at.parent
	}
}

func (t *trial) redo() {
	_, err := t.s.Redo()
	n := len(t.m.at.children)
	if (err == nil) != (n > 0) {
		t.Fatalf("redo gave %v, and there are %d edits to redo", err, n)
	}
	if err == nil {
		t.m.at = t.m.at.children[n-1]
	}
}

func (t *trial) reopen() {
	if err := t.s.Close(); err != nil {
		t.Fatal(err)
	}
	s, err := Open(t.s.Path())
	if err != nil || s.ReadOnly() {
		t.Fatalf("reopening gave %v", err)
	}
	t.s = s
}

// TestAgainstModel holds that whatever is done, undone, redone and reopened,
// the store has the collection that a plain tree in memory has, with every round
// as it went out and every state of every poem.
func TestAgainstModel(t *testing.T) {
	dir, runs := t.TempDir(), 0
	rapid.Check(t, func(rt *rapid.T) {
		runs++
		s, err := Create(filepath.Join(dir, fmt.Sprint(runs, Extension)), book())
		if err != nil {
			rt.Fatal(err)
		}
		tr := &trial{rt, s, newModel(book())}
		defer func() { tr.s.Close() }()
		for range rapid.IntRange(1, 14).Draw(rt, "doings") {
			rapid.SampledFrom([]func(){tr.edit, tr.edit, tr.edit, tr.undo, tr.undo, tr.redo, tr.reopen}).Draw(rt, "doing")()
			got, want := tr.s.Collection(), tr.m.now()
			if sum(got) != sum(want) || got.NextID() != want.NextID() {
				rt.Fatalf("got %d\n%s\nwant %d\n%s", got.NextID(), sum(got), want.NextID(), sum(want))
			}
		}
		tr.rounds()
		tr.poemStates()
	})
}
