package sqlite

import (
	"errors"
	"maps"
	"strings"
	"testing"

	"headland/pagemodel"
)

// placesOf gives every line of a book a place, none of which matters but that it
// is kept.
func placesOf(c *pagemodel.Collection) map[pagemodel.LineID]Place {
	places := map[pagemodel.LineID]Place{}
	for _, p := range c.Poems() {
		for _, l := range p.Lines() {
			places[l.ID()] = Place{Page: "xi" + p.Name(), Row: 1 + len(places)}
		}
	}
	return places
}

// mustMark marks the book as sent and gives the round with what went out.
func mustMark(t testing.TB, s *Store, name string) (pagemodel.Round, *pagemodel.Collection) {
	t.Helper()
	c, err := s.MarkSent(pagemodel.MarkSent{Name: name, On: "2026-03-01"}, placesOf(s.Collection()))
	if err != nil {
		t.Fatal(err)
	}
	r, err := c.RoundCalled(name)
	if err != nil {
		t.Fatal(err)
	}
	return r, c
}

// mustBeSent holds that a round is in the file as it went out.
func mustBeSent(t testing.TB, s *Store, r pagemodel.Round, want *pagemodel.Collection) {
	t.Helper()
	got, places, err := s.Sent(r.ID)
	if err != nil {
		t.Fatal(err)
	}
	if sum(got) != sum(want) {
		t.Errorf("%s: got %s\nwant %s", r.Name, sum(got), sum(want))
	}
	if !maps.Equal(places, placesOf(want)) {
		t.Errorf("%s: got the places %v, want %v", r.Name, places, placesOf(want))
	}
}

func mustUndo(t testing.TB, s *Store) {
	t.Helper()
	if _, err := s.Undo(); err != nil {
		t.Fatal(err)
	}
}

func mustRedo(t testing.TB, s *Store) {
	t.Helper()
	if _, err := s.Redo(); err != nil {
		t.Fatal(err)
	}
}

func TestSent(t *testing.T) {
	path := newPath(t)
	s := mustCreate(t, path)
	first := firstPoem(s)
	mustDo(t, s, titled("Before"))
	one, sentOne := mustMark(t, s, "first proofs")
	mustDo(t, s, titled("Between"))
	mustDo(t, s, pagemodel.Move{Poem: first})
	mustDo(t, s, pagemodel.Add{From: bookOf(1, 1), Name: "more"})
	two, sentTwo := mustMark(t, s, "second proofs")
	mustDo(t, s, pagemodel.SetHead{Poem: first, Head: pagemodel.PoemHead{Title: "After"}})
	mustDo(t, s, titled("After"))
	now := sum(s.Collection())
	for range 2 {
		mustBeSent(t, s, one, sentOne)
		mustBeSent(t, s, two, sentTwo)
		if sum(s.Collection()) != now {
			t.Error("to ask for a round changed the collection")
		}
		mustClose(t, s)
		s = mustOpen(t, path)
	}
}

// TestSentOnBranches holds that a round is found again from another branch of
// the tree of edits than its own, and from before it.
func TestSentOnBranches(t *testing.T) {
	path := newPath(t)
	s := mustCreate(t, path)
	first := firstPoem(s)
	mustDo(t, s, titled("Trunk"))
	mustDo(t, s, pagemodel.SetHead{Poem: first, Head: pagemodel.PoemHead{Title: "One branch"}})
	mustDo(t, s, titled("Leaf"))
	one, sentOne := mustMark(t, s, "first proofs")
	for range 3 {
		mustUndo(t, s)
	}
	mustBeSent(t, s, one, sentOne)
	mustDo(t, s, pagemodel.Move{Poem: first})
	mustDo(t, s, pagemodel.SetHead{Poem: first, Head: pagemodel.PoemHead{Title: "Another branch"}})
	two, sentTwo := mustMark(t, s, "first proofs")
	if one.ID == two.ID {
		t.Errorf("two rounds are both %d", one.ID)
	}
	mustClose(t, s)
	s = mustOpen(t, path)
	mustBeSent(t, s, one, sentOne)
	mustBeSent(t, s, two, sentTwo)
}

func TestSentUndoRedo(t *testing.T) {
	path := newPath(t)
	s := mustCreate(t, path)
	r, sent := mustMark(t, s, "first proofs")
	mustUndo(t, s)
	if got := s.Collection().Rounds(); len(got) != 0 {
		t.Errorf("undone, the book has the rounds %v", got)
	}
	mustClose(t, s)
	s = mustOpen(t, path)
	mustRedo(t, s)
	if got := s.Collection().Rounds(); len(got) != 1 || got[0] != r {
		t.Errorf("done again, the book has the rounds %v, want %v", got, r)
	}
	mustDo(t, s, titled("After"))
	mustBeSent(t, s, r, sent)
}

// TestSentByAnyEdit holds that a round is kept whatever edit makes it.
func TestSentByAnyEdit(t *testing.T) {
	s := mustCreate(t, newPath(t))
	sent := mustDo(t, s, pagemodel.MarkSent{})
	mustDo(t, s, titled("After"))
	got, places, err := s.Sent(sent.Rounds()[0].ID)
	if err != nil || sum(got) != sum(sent) || len(places) != 0 {
		t.Errorf("got %v, %v", places, err)
	}
}

// TestPlaceWithoutRow holds that a line that stood nowhere has no place.
func TestPlaceWithoutRow(t *testing.T) {
	s := mustCreate(t, newPath(t))
	c, err := s.MarkSent(pagemodel.MarkSent{}, map[pagemodel.LineID]Place{1: {"9", 0}, 2: {"9", 1}})
	if err != nil {
		t.Fatal(err)
	}
	_, places, err := s.Sent(c.Rounds()[0].ID)
	if want := map[pagemodel.LineID]Place{2: {"9", 1}}; err != nil || !maps.Equal(places, want) {
		t.Errorf("got %v, %v, want %v", places, err, want)
	}
}

// TestSentFromBeforeMatter holds that a file of old times, which had no state of
// the prelims, gives a round back without the prelims that came after it.
func TestSentFromBeforeMatter(t *testing.T) {
	s := mustOpen(t, fromBeforeMatter(t))
	r, sent := mustMark(t, s, "first proofs")
	mustDo(t, s, pagemodel.SetMatter{Matter: pagemodel.UsualMatter()})
	mustDo(t, s, pagemodel.KeepDesign{Name: "first", Design: s.Collection().Design()})
	mustBeSent(t, s, r, sent)
	mustUndo(t, s)
	mustUndo(t, s)
	if sum(s.Collection()) != sum(sent) {
		t.Error("undone, the prelims are still there")
	}
}

func TestSentRefuses(t *testing.T) {
	path := newPath(t)
	s := mustCreate(t, path)
	r, _ := mustMark(t, s, "first proofs")
	_, err := s.MarkSent(pagemodel.MarkSent{Name: "First proofs"}, nil)
	if err == nil || !strings.Contains(err.Error(), "give this one another name") {
		t.Errorf("got %v", err)
	}
	if _, _, err := s.Sent(r.ID + 1); err == nil || !strings.Contains(err.Error(), "does not hold what went out as round") {
		t.Errorf("got %v", err)
	}
	other := mustOpen(t, path)
	_, err = other.MarkSent(pagemodel.MarkSent{}, nil)
	mustBeInWords(t, "read only", err, ErrReadOnly, path, "can only be read: it is open in another window")
	if _, _, err := other.Sent(r.ID); err != nil {
		t.Errorf("a store that is read only gave %v", err)
	}
	mustClose(t, s)
	if _, _, err := s.Sent(r.ID); !errors.Is(err, ErrClosed) {
		t.Errorf("got %v", err)
	}
	if _, err := s.PoemStates(1); !errors.Is(err, ErrClosed) {
		t.Errorf("got %v", err)
	}
}

// TestSentDamaged holds that a state that is not as it was written is named, and
// that one which nobody needs for the round is not looked at.
func TestSentDamaged(t *testing.T) {
	path := newPath(t)
	s := mustCreate(t, path)
	mustDo(t, s, titled("Never asked for"))
	mustDo(t, s, titled("Sent"))
	r, sent := mustMark(t, s, "first proofs")
	mustDo(t, s, titled("After"))
	mustDo(t, s, titled("Long after"))
	damage := func(title string) {
		t.Helper()
		if err := s.exec(`UPDATE state SET body = CAST(replace(body, ?, 'Other') AS BLOB) WHERE kind = 'about'`, title); err != nil {
			t.Fatal(err)
		}
	}
	damage("Never asked for")
	mustBeSent(t, s, r, sent)
	damage("Sent")
	_, _, err := s.Sent(r.ID)
	mustBeInWords(t, "damaged state", err, ErrDamaged, path, "the about (state ")
	if err := s.exec("PRAGMA foreign_keys = OFF; DELETE FROM edit WHERE id = 5"); err != nil {
		t.Fatal(err)
	}
	_, _, err = s.Sent(r.ID)
	mustBeInWords(t, "missing edit", err, ErrDamaged, path, "its history breaks off")
}
