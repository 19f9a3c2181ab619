package sqlite

import (
	"fmt"
	"testing"

	"headland/pagemodel"
)

// statesAs is the states of a poem in short: edit, title, and a minus sign where
// it was undone.
func statesAs(t testing.TB, s *Store, id pagemodel.PoemID) (short []string) {
	t.Helper()
	states, err := s.PoemStates(id)
	if err != nil {
		t.Fatal(err)
	}
	for _, state := range states {
		if !state.At.Equal(clock()) {
			t.Errorf("edit %d was at %v", state.Edit, state.At)
		}
		short = append(short, fmt.Sprintf("%d %s%s", state.Edit, state.Poem.Head().Title, map[bool]string{true: " -"}[state.Undone]))
	}
	return short
}

func TestPoemStates(t *testing.T) {
	path := newPath(t)
	s := mustCreate(t, path)
	id := firstPoem(s)
	head := func(title string) pagemodel.Edit {
		return pagemodel.SetHead{Poem: id, Head: pagemodel.PoemHead{Title: title}}
	}
	want := func(what string, want ...string) {
		t.Helper()
		if got := statesAs(t, s, id); fmt.Sprint(got) != fmt.Sprint(want) {
			t.Errorf("%s: got %q, want %q", what, got, want)
		}
	}
	mustDo(t, s, titled("no change of the poem"))
	mustDo(t, s, head("Left"))
	mustUndo(t, s)
	mustDo(t, s, head("Right"))
	want("branches", "1 Poem 1", "3 Left -", "4 Right")
	mustUndo(t, s)
	mustDo(t, s, head("Right"))
	want("a like one, not undone", "1 Poem 1", "3 Left -", "5 Right")
	mustDo(t, s, head("Poem 1"))
	want("back to the first by an edit", "1 Poem 1", "3 Left -", "5 Right", "6 Poem 1")
	states, err := s.PoemStates(id)
	if err != nil || states[1].Label != "change a poem's head" {
		t.Errorf("got %v, %v", states, err)
	}
	mustDo(t, s, pagemodel.BringBack{Poem: states[1].Poem, State: states[1].Edit})
	mustClose(t, s)
	s = mustOpen(t, path)
	want("brought back and opened again", "1 Poem 1", "3 Left -", "5 Right", "6 Poem 1", "7 Left")
	if got, err := s.PoemStates(999); len(got) != 0 || err != nil {
		t.Errorf("a poem that never was has the states %v, %v", got, err)
	}
	if err := s.exec("UPDATE state SET body = CAST(replace(body, 'Right', 'Wrong') AS BLOB)"); err != nil {
		t.Fatal(err)
	}
	_, err = s.PoemStates(id)
	mustBeInWords(t, "damaged state", err, ErrDamaged, path, fmt.Sprintf("the poem %d (state ", id))
}
