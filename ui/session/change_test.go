package session

import (
	"errors"
	"math/rand/v2"
	"testing"

	"headland/pagemodel"
)

// TestPreviewIsSeenByNobodyElse sees that a preview changes what is shown and
// nothing else, and that all is as it was once it is dropped.
func TestPreviewIsSeenByNobodyElse(t *testing.T) {
	s := imported(t)
	before, c := places(s.Setting()), s.Collection()
	ref, _ := lineOf(t, s, 2, 1, 1)
	must(t, s.Preview(pagemodel.Break{LineRef: ref, At: 37}))
	if !s.Previewing() || places(s.Setting()) == before {
		t.Error("the preview does not show")
	}
	if s.Collection() != c || places(s.Committed()) != before {
		t.Error("the preview changed what is committed")
	}
	if _, ok := s.UndoLabel(); ok {
		t.Error("the history has seen the preview")
	}
	if got := inFile(t, s.Path()); got != text(c) {
		t.Errorf("the file has seen the preview: %s", got)
	}
	s.Drop()
	if s.Previewing() || s.Setting() != s.Committed() || places(s.Setting()) != before {
		t.Error("dropping the preview does not put all back")
	}
}

// TestPreviewsDoNotAddUp sees that each is of the committed collection.
func TestPreviewsDoNotAddUp(t *testing.T) {
	s := imported(t)
	ref, line := lineOf(t, s, 2, 1, 1)
	words := pagemodel.Words(line.Text())
	for _, w := range words[1:] {
		e := pagemodel.Break{LineRef: ref, At: w.Start}
		must(t, s.Preview(e))
		want, err := e.Apply(s.Collection())
		must(t, err)
		if got := text(s.Setting().Collection()); got != text(want) {
			t.Fatalf("broken at %d, what is shown is\n%s", w.Start, got)
		}
	}
	refused(t, s.Preview(pagemodel.Break{LineRef: ref, At: 0}), long)
	if !s.Previewing() {
		t.Error("an edit that can't be done ended the preview before it")
	}
}

// TestRelease sees that what was previewed is in the file when Release returns,
// as one step of the history, and set as it was shown.
func TestRelease(t *testing.T) {
	s := imported(t)
	before := text(s.Collection())
	ref, _ := lineOf(t, s, 2, 1, 1)
	must(t, s.Preview(pagemodel.Break{LineRef: ref, At: 10}))
	must(t, s.Preview(pagemodel.Break{LineRef: ref, At: 37}))
	shown := places(s.Setting())
	must(t, s.Release())
	if s.Previewing() || places(s.Committed()) != shown {
		t.Error("what is committed is not what was shown")
	}
	if got := inFile(t, s.Path()); got != text(s.Collection()) || got == before {
		t.Errorf("the file has %s", got)
	}
	if label, ok := s.UndoLabel(); !ok || label != "break a line" {
		t.Errorf("undo would take back %q, %v", label, ok)
	}
	must(t, s.Undo())
	if text(s.Collection()) != before {
		t.Error("one undo does not take back the release")
	}
	refused(t, s.Undo(), "nothing to undo", "book.headland")
	must(t, s.Redo())
	if places(s.Setting()) != shown {
		t.Error("redo does not bring back what was shown")
	}
	refused(t, s.Redo(), "nothing to redo", "book.headland")
	must(t, s.Release()) // with no preview it does nothing
}

// TestDoDropsThePreview sees that there is never a preview of what is no longer
// committed.
func TestDoDropsThePreview(t *testing.T) {
	s := imported(t)
	ref, _ := lineOf(t, s, 2, 1, 1)
	tests := []struct {
		name string
		do   func() error
		fail bool
	}{
		{"an edit", func() error { return s.Do(pagemodel.Keep{LineRef: ref}) }, false},
		{"an edit that changes nothing", func() error { return s.Do(pagemodel.Keep{LineRef: ref}) }, false},
		{"an edit that can't be done", func() error { return s.Do(pagemodel.Break{LineRef: ref}) }, true},
		{"undo", s.Undo, false},
		{"redo", s.Redo, false},
		{"redo of nothing", s.Redo, true},
	}
	for _, test := range tests {
		must(t, s.Preview(pagemodel.Indent{LineRef: ref, To: pagemodel.OneEm}))
		if err := test.do(); (err != nil) != test.fail {
			t.Errorf("%s: %v", test.name, err)
		}
		if s.Previewing() || s.Setting() != s.Committed() {
			t.Errorf("%s leaves the preview", test.name)
		}
	}
}

// TestChangingNothingIsNoEdit sees that it leaves no step in the history.
func TestChangingNothingIsNoEdit(t *testing.T) {
	s := imported(t)
	ref, line := lineOf(t, s, 1, 1, 1)
	must(t, s.Do(pagemodel.Retype{LineRef: ref, Text: line.Text()}))
	if label, ok := s.UndoLabel(); ok {
		t.Errorf("undo would take back %q", label)
	}
	must(t, s.Preview(pagemodel.Retype{LineRef: ref, Text: line.Text()}))
	if s.Setting() != s.Committed() {
		t.Error("a preview that changes nothing was set again")
	}
}

// TestReadOnly sees that what is open elsewhere can be read and not changed.
func TestReadOnly(t *testing.T) {
	first := imported(t)
	s, err := Open(first.Path())
	must(t, err)
	defer closed(t, s)
	why, yes := s.ReadOnly()
	if !yes {
		t.Fatal("a file that is open elsewhere can be changed")
	}
	refused(t, errors.New(why), first.Path(), "another window", "save a copy")
	ref, _ := lineOf(t, s, 1, 1, 1)
	e := pagemodel.Indent{LineRef: ref, To: pagemodel.OneEm}
	for name, door := range map[string]func() error{
		"Do": func() error { return s.Do(e) }, "Preview": func() error { return s.Preview(e) },
		"Undo": s.Undo, "Redo": s.Redo, "AddFace": func() error { return s.AddFace("face.otf") },
		"Add": func() error { _, err := s.Add([]string{"more.md"}); return err },
	} {
		var readOnly *ReadOnlyError
		if err := door(); !errors.As(err, &readOnly) {
			t.Errorf("%s: %v, want a ReadOnlyError", name, err)
		}
	}
	copied := s.Path() + " copy.headland"
	must(t, s.SaveCopy(copied))
	if got := inFile(t, copied); got != text(first.Collection()) {
		t.Errorf("the copy has %s", got)
	}
	if _, yes := first.ReadOnly(); yes {
		t.Error("the first to open it can't change it")
	}
}

// TestListener sees that whoever shows the book is told when it changes, and not
// when it does not.
func TestListener(t *testing.T) {
	s := imported(t)
	told := 0
	s.Show(1)
	s.ClearFocus()
	s.OnChange(func() { told++ })
	ref, _ := lineOf(t, s, 2, 1, 1)
	e := pagemodel.Keep{LineRef: ref}
	for _, step := range []struct {
		name string
		do   func()
		want int
	}{
		{"a preview", func() { must(t, s.Preview(e)) }, 1},
		{"dropping it", s.Drop, 1},
		{"dropping nothing", s.Drop, 0},
		{"an edit", func() { must(t, s.Do(e)) }, 1},
		{"the same again", func() { must(t, s.Do(e)) }, 0},
		{"undo", func() { must(t, s.Undo()) }, 1},
		{"another page", func() { s.Show(2) }, 1},
		{"the same page", func() { s.Show(2) }, 0},
		{"a line at hand", func() { s.SetFocus(ref) }, 1},
		{"the same line", func() { s.SetFocus(ref) }, 0},
		{"no line", s.ClearFocus, 1},
		{"still no line", s.ClearFocus, 0},
	} {
		told = 0
		if step.do(); told != step.want {
			t.Errorf("%s: told %d times, want %d", step.name, told, step.want)
		}
	}
	s.OnChange(nil)
	s.Show(1)
}

// TestAnyEdits does edits at random, and sees after each that the pages are
// those of a cold setting, and at the end that the file holds what is shown.
func TestAnyEdits(t *testing.T) {
	s := imported(t)
	random := rand.New(rand.NewPCG(1, 2))
	for range 120 {
		switch random.IntN(5) {
		case 0:
			_ = s.Undo() // there may be nothing to undo
		case 1:
			_ = s.Redo() // likewise
		case 2:
			if s.Preview(anyEdit(s, random)) == nil {
				must(t, s.Release())
			}
		default:
			_ = s.Do(anyEdit(s, random)) // it may be one that can't be done
		}
		if places(s.Setting()) != cold(s.Collection()) {
			t.Fatalf("after %q the pages are not those of a cold setting", first(s.UndoLabel()))
		}
	}
	if got := inFile(t, s.Path()); got != text(s.Collection()) {
		t.Errorf("the file has %s, want %s", got, text(s.Collection()))
	}
}

func first(label string, _ bool) string { return label }

// anyEdit is an edit of a line at random; it need not be one that can be done.
func anyEdit(s *Session, random *rand.Rand) pagemodel.Edit {
	var refs []pagemodel.LineRef
	var lines []pagemodel.Line
	var poems []pagemodel.PoemID
	for _, p := range s.Collection().Poems() {
		poems = append(poems, p.ID())
		for _, l := range p.Lines() {
			refs, lines = append(refs, pagemodel.LineRef{Poem: p.ID(), Line: l.ID()}), append(lines, l)
		}
	}
	i := random.IntN(len(refs))
	at := random.IntN(len(lines[i].Text()) + 1)
	d := s.Collection().Design()
	d.Margins.Outer = pagemodel.MM(float64(10 + random.IntN(30)))
	return []pagemodel.Edit{
		pagemodel.Break{LineRef: refs[i], At: at},
		pagemodel.Break{LineRef: refs[i], At: at, In: pagemodel.InEdition},
		pagemodel.Join{LineRef: refs[i]},
		pagemodel.Carry{LineRef: refs[i], Count: random.IntN(5) - 2},
		pagemodel.Keep{LineRef: refs[i], Turns: []int{at}},
		pagemodel.Indent{LineRef: refs[i], To: pagemodel.Em(random.IntN(4000))},
		pagemodel.StanzaBreak{LineRef: refs[i], Open: random.IntN(2) == 0},
		pagemodel.Move{Poem: poems[random.IntN(len(poems))], Before: poems[random.IntN(len(poems))]},
		pagemodel.SetDesign{Design: d},
	}[random.IntN(9)]
}
