package onscreen

import (
	"database/sql"
	"encoding/json"
	"image"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"headland/pagemodel"
)

// The line that the tests work on: it is alone unsettled on its page, so a
// collection that has just been opened there shows it at hand.
const (
	lineEnd = "He had on the front-room curtain."
	shed    = "front-room curtain."
)

// TestALineInARealWindow goes the poet's way once: drag the end of a line, see
// it in the file, undo, do the same by keys, change one's mind, close, open
// again.
func TestALineInARealWindow(t *testing.T) {
	s, home := openScreen(t), t.TempDir()
	b := demoBook(t, home)
	line := b.lineEnding(t, lineEnd)
	before := texts(t, b.path, int64(line.Poem))
	p := start(t, s, home, headland, b.path)
	l := b.find(t, s)
	eventually(t, "the title to say what is unsettled", func() bool {
		return strings.HasPrefix(s.title(), "Short Weight") && strings.Contains(s.title(), "10 lines unsettled")
	})

	dragOff(t, b, l, s, line.Page, line.Ref)
	first := waitForEdit(t, b.path, 1)
	checkBreak(t, first, line.Ref, strings.Index(line.Text, shed))
	checkTexts(t, b.path, line.Ref, before, strings.TrimSuffix(line.Text, " "+shed), shed)
	eventually(t, "the title to count one less", func() bool { return strings.Contains(s.title(), "9 lines unsettled") })

	s.key(t, keyZ, keyCtrl)
	eventually(t, "undo to reach the file", func() bool { _, head := history(t, b.path); return head == first.parent })
	if got := texts(t, b.path, int64(line.Poem)); !slices.Equal(got, before) {
		t.Errorf("undone, the poem reads\n%q\nwant\n%q", got, before)
	}

	// The same by keys alone: the rule stops after “the”, after the hyphen and
	// after “front-room” on its way left.
	for range 3 {
		s.key(t, keyLeft, keyAlt)
	}
	s.key(t, keyReturn)
	second := waitForEdit(t, b.path, 2)
	checkBreak(t, second, line.Ref, strings.Index(line.Text, shed))
	checkTexts(t, b.path, line.Ref, before, strings.TrimSuffix(line.Text, " "+shed), shed)
	s.key(t, keyZ, keyCtrl)
	eventually(t, "undo to reach the file", func() bool { _, head := history(t, b.path); return head == first.parent })

	escapeLeavesTheFile(t, b, l, s, line.Page, line.Ref)
	p.quit(t)
	reopened(t, b, s, home, second)
}

// dragOff takes the rule of a line and drags the last words of it into the
// white below, where they are a line of their own.
func dragOff(t *testing.T, b *book, l lie, s *screen, page int, ref pagemodel.LineRef) {
	t.Helper()
	from, to := dragOf(b, l, page, ref)
	s.drag(from, to)
	s.release()
}

// dragOf is where a drag of the last row's words begins, and where it ends: at
// the end of the row above.
func dragOf(b *book, l lie, page int, ref pagemodel.LineRef) (from, to image.Point) {
	rows := b.rows(page, ref)
	upper, last := rows[len(rows)-2], rows[len(rows)-1]
	return l.rule(page, last), l.at(page, upper.X+upper.Width, upper.Baseline-2*pagemodel.Point)
}

// waitForEdit waits until the file has so many edits and gives the last.
func waitForEdit(t *testing.T, path string, n int) edit {
	t.Helper()
	var edits []edit
	var head int64
	eventually(t, "the edit to reach the file", func() bool { edits, head = history(t, path); return len(edits) >= n })
	last := edits[len(edits)-1]
	if len(edits) != n || head != last.id {
		t.Fatalf("the file has the edits\n%sand the head %d; want %d edits, the last at the head", describe(edits), head, n)
	}
	return last
}

// checkBreak holds that the edit is a break in the poem of that line, just
// before the words at an offset.
func checkBreak(t *testing.T, e edit, ref pagemodel.LineRef, at int) {
	t.Helper()
	var got pagemodel.Break
	if err := json.Unmarshal([]byte(e.args), &got); err != nil {
		t.Fatal(err)
	}
	if e.kind != "break" || got.LineRef != ref || got.In == pagemodel.InEdition || got.At != at && got.At != at-1 {
		t.Errorf("the edit is %s %s, want a break of line %d of poem %d before character %d", e.kind, e.args, ref.Line, ref.Poem, at)
	}
	if e.label != "break a line" {
		t.Errorf("the edit is called %q", e.label)
	}
}

// checkTexts holds that the poem reads as before but for one line, which has
// become two.
func checkTexts(t *testing.T, path string, ref pagemodel.LineRef, before []string, head, tail string) {
	t.Helper()
	i := slices.Index(before, head+" "+tail)
	want := slices.Concat(before[:i], []string{head, tail}, before[i+1:])
	if got := texts(t, path, int64(ref.Poem)); !slices.Equal(got, want) {
		t.Errorf("the poem reads\n%q\nwant\n%q", got, want)
	}
}

// escapeLeavesTheFile takes the rule, drags it, and puts it back.
func escapeLeavesTheFile(t *testing.T, b *book, l lie, s *screen, page int, ref pagemodel.LineRef) {
	t.Helper()
	edits, head := history(t, b.path)
	from, to := dragOf(b, l, page, ref)
	rest := l.about(from)
	s.move(from)
	still := s.settle(t, rest)
	s.drag(from, to)
	eventually(t, "the page to follow the hand", func() bool { return s.look(rest) != still })
	s.key(t, keyEscape)
	s.release()
	s.move(from)
	eventually(t, "the page to be as it was", func() bool { return s.look(rest) == still })
	after, headAfter := history(t, b.path)
	if !slices.Equal(after, edits) || headAfter != head {
		t.Errorf("Escape left the edits\n%sand the head %d, want\n%sand %d", describe(after), headAfter, describe(edits), head)
	}
}

// reopened sees that the file opens again as it was left, and that what was
// undone can still be done again.
func reopened(t *testing.T, b *book, s *screen, home string, undone edit) {
	t.Helper()
	p := start(t, s, home, headland, b.path)
	b.find(t, s)
	eventually(t, "the title", func() bool { return strings.Contains(s.title(), "10 lines unsettled") })
	s.key(t, keyZ, keyCtrl, keyShift)
	eventually(t, "redo to reach the file", func() bool { _, head := history(t, b.path); return head == undone.id })
	p.quit(t)
}

// TestAKilledProgramLosesNothing ends the program, as a crash would, right
// after edits have been let go of; all of them are there when it opens again.
func TestAKilledProgramLosesNothing(t *testing.T) {
	s, home := openScreen(t), t.TempDir()
	b := demoBook(t, home)
	p := start(t, s, home, headland, b.path)
	b.find(t, s)
	for n := 1; n <= 5; n++ {
		s.key(t, keyRight, keyCtrl, keyShift)
		eventually(t, "the indent to reach the file", func() bool { edits, _ := history(t, b.path); return len(edits) == n })
	}
	edits, _ := history(t, b.path)
	s.key(t, keyRight, keyCtrl, keyShift)
	p.kill()

	// A crash in mid-transaction leaves a journal, which the program, opening
	// the file again, is to see to; only then is the file looked at from outside.
	p = start(t, s, home, headland, b.path)
	b.find(t, s)
	after, head := history(t, b.path)
	if len(after) < len(edits) || !slices.Equal(after[:len(edits)], edits) || head != after[len(after)-1].id {
		t.Fatalf("after the crash the file has\n%sand the head %d, want at least\n%s", describe(after), head, describe(edits))
	}
	s.key(t, keyZ, keyCtrl)
	eventually(t, "undo of what was done before the crash", func() bool { _, now := history(t, b.path); return now == after[len(after)-1].parent })
	p.quit(t)
}

// TestADroppedManuscript drops a manuscript on the window: it becomes a
// collection beside itself, and is open.
func TestADroppedManuscript(t *testing.T) {
	s, home := openScreen(t), t.TempDir()
	path := filepath.Join(home, "two poems.md")
	if err := os.WriteFile(path, []byte("---\ntitle: Dropped In\n---\n\n# One\n\na line\nand another\n\n# Two\n\na last line\n"), 0o644); err != nil {
		t.Fatal(err)
	}
	p := start(t, s, home, headland)
	s.settle(t, image.Rectangle{Max: s.size})
	s.drop(t, path, image.Pt(s.size.X/2, s.size.Y/2))
	eventually(t, "the title of what was dropped", func() bool { return strings.HasPrefix(s.title(), "Dropped In") })
	made := filepath.Join(home, "two poems.headland")
	var poems int
	readFile(t, made, func(db *sql.DB) error {
		return db.QueryRow("SELECT count(*) FROM head WHERE kind = 'poem'").Scan(&poems)
	})
	if poems != 2 {
		t.Errorf("%s holds %d poems, want 2", made, poems)
	}
	p.quit(t)
}
