package onscreen

import (
	"image"
	"testing"

	"headland/pagemodel"
	"headland/ui/session"
)

// Where Order has two poems of the demo in a window of 1400 by 900 pixels: the
// first of them in the first section, the other in the second.
var (
	shortWeightPage = image.Pt(1010, 423)
	heronPage       = image.Pt(529, 653)
)

// TestAPoemAcrossASectionInARealWindow moves a poem to another section by the
// mouse, takes it back, and moves one by keys.
func TestAPoemAcrossASectionInARealWindow(t *testing.T) {
	s, home := openScreen(t), t.TempDir()
	b := demoBook(t, home)
	p := start(t, s, home, headland, b.path)
	b.find(t, s)
	whole := image.Rectangle{Max: s.size}

	s.key(t, '2', keyCtrl)
	s.settle(t, whole)
	s.drag(shortWeightPage, heronPage)
	s.settle(t, whole)
	s.release()
	first := waitForEdit(t, b.path, 1)
	checkSection(t, b.path, first, "Short Weight", "The Round")
	s.key(t, keyZ, keyCtrl)
	eventually(t, "undo to reach the file", func() bool { _, head := history(t, b.path); return head == first.parent })
	checkSection(t, b.path, first, "Short Weight", "Scaling")

	s.key(t, keyEscape)
	s.settle(t, whole)
	s.key(t, '2', keyCtrl) // with the poem of the line at hand in hand
	s.settle(t, whole)
	s.key(t, keyDown, keyCtrl)
	s.key(t, keyReturn)
	checkSection(t, b.path, waitForEdit(t, b.path, 2), "Żurek", "The Round")
	p.quit(t)
}

// checkSection holds that an edit of the order was made, and in which section a
// poem now stands.
func checkSection(t *testing.T, path string, e edit, poem, section string) {
	t.Helper()
	s, err := session.Open(path)
	if err != nil {
		t.Fatal(err)
	}
	defer s.Close()
	in := ""
	for _, entry := range s.Collection().Order() {
		switch {
		case entry.Section != nil:
			in = entry.Section.Title
		case entry.Poem.Name() == poem && (in != section || e.kind != "order"):
			t.Errorf("after %s %q stands in %q, want %q", e.kind, poem, in, section)
		}
	}
}

// TestARunThroughInARealWindow reads a running order of three items with a clock
// that the test holds: the file has the times to the millisecond.
func TestARunThroughInARealWindow(t *testing.T) {
	s, home := openScreen(t), t.TempDir()
	b := demoBook(t, home)
	b.withReading(t, "One", "Two", "Three")
	clock := heldClock{t, home}
	clock.set(0)
	p := start(t, s, home, heldHeadland, b.path)
	b.find(t, s)
	whole := image.Rectangle{Max: s.size}

	s.key(t, '3', keyCtrl)
	s.settle(t, whole)
	s.key(t, keyReturn, keyCtrl)
	s.settle(t, whole)
	s.key(t, keyReturn)
	for _, ms := range []int64{12_500, 20_250, 31_000} {
		s.settle(t, whole)
		clock.set(ms)
		s.key(t, keyPageDown)
	}
	s.settle(t, whole)
	s.key(t, keyEscape)
	eventually(t, "the run-through to be kept", func() bool { return len(runs(t, b.path)) == 1 })
	want := []int64{12_500, 7_750, 10_750}
	for i, timing := range runs(t, b.path)[0].Timings {
		if timing.Ms != want[i] {
			t.Errorf("item %d took %d ms, want %d", i+1, timing.Ms, want[i])
		}
	}
	p.quit(t)
}

// withReading puts a running order into the file, each item a line from elsewhere.
func (b *book) withReading(t *testing.T, titles ...string) {
	t.Helper()
	s, err := session.Open(b.path)
	if err != nil {
		t.Fatal(err)
	}
	defer s.Close()
	r := pagemodel.Reading{Name: "Thursday", Slot: 60}
	for _, title := range titles {
		r.Items = append(r.Items, pagemodel.Item{Title: title, Text: "the ovens keep their counsel"})
	}
	if err := s.Do(pagemodel.SetReading{Reading: r}); err != nil {
		t.Fatal(err)
	}
}

// runs are the run-throughs that a file has.
func runs(t *testing.T, path string) []session.Run {
	t.Helper()
	s, err := session.Open(path)
	if err != nil {
		t.Fatal(err)
	}
	defer s.Close()
	all, err := s.Runs()
	if err != nil {
		t.Fatal(err)
	}
	return all
}
