package session

import (
	"strings"
	"testing"

	"headland/pagemodel"
)

// TestPage sees that the book lies open only where it has pages, whatever
// happens to them.
func TestPage(t *testing.T) {
	s := imported(t)
	extent := s.Setting().Extent()
	for show, want := range map[int]int{1: 1, 2: 2, extent: extent, extent + 7: extent, 0: 1, -3: 1} {
		if s.Show(show); s.Page() != want {
			t.Errorf("Show(%d) shows page %d, want %d", show, s.Page(), want)
		}
	}
	s.Show(2)
	if got, want := s.Spread(), (pagemodel.Spread{Verso: 2, Recto: 3}); got != want {
		t.Errorf("page 2 lies in %v, want %v", got, want)
	}
	_, err := s.Add([]string{write(t, "more.txt", strings.Repeat("# Another\n\nA line of verse.\n\n", 9))})
	must(t, err)
	s.Show(s.Setting().Extent())
	must(t, s.Undo())
	if s.Page() != extent {
		t.Errorf("with its last pages gone the book lies open at %d, want %d", s.Page(), extent)
	}
}

// TestFocus sees that a line is at hand as long as what is shown has it.
func TestFocus(t *testing.T) {
	s := imported(t)
	upper, _ := lineOf(t, s, 1, 1, 1)
	lower, _ := lineOf(t, s, 1, 1, 2)
	has := func(want bool) {
		t.Helper()
		if ref, ok := s.Focus(); ok != want || ok && ref != lower {
			t.Errorf("at hand is %v, %v; want %v", ref, ok, want)
		}
	}
	s.ClearFocus()
	has(false)
	s.SetFocus(lower)
	has(true)
	must(t, s.Preview(pagemodel.Join{LineRef: upper}))
	has(false)
	s.Drop()
	has(true)
	must(t, s.Do(pagemodel.Join{LineRef: upper}))
	has(false)
	must(t, s.Undo())
	has(true)
	s.ClearFocus()
	has(false)
}

// TestOpensWhereNeeded sees that a book opens at the first line that nobody has
// settled, with that line at hand.
func TestOpensWhereNeeded(t *testing.T) {
	s := imported(t)
	first := s.Setting().Turnovers()[0]
	if ref, ok := s.Focus(); !ok || ref != first.Ref || s.Page() != first.Page {
		t.Errorf("open at page %d with %v at hand, want page %d and %v", s.Page(), ref, first.Page, first.Ref)
	}
	must(t, s.Do(pagemodel.Keep{LineRef: first.Ref}))
	path := s.Path()
	must(t, s.Close())
	s, err := Open(path)
	must(t, err)
	defer closed(t, s)
	if ref, ok := s.Focus(); ok && ref == first.Ref {
		t.Error("a settled line is still what the book opens at")
	}
}
