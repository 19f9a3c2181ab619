package ui

import (
	"image"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"

	"headland/pagemodel"
	"headland/typeset"
	large "headland/typeset/sheet"
	"headland/ui/session"
)

// heldClock is a clock that the test moves on.
type heldClock struct{ at time.Time }

func (c *heldClock) now() time.Time { return c.at }

func (c *heldClock) pass(ms int) { c.at = c.at.Add(time.Duration(ms) * time.Millisecond) }

// readAloud makes a running order of the first poems of the demonstration, in the
// file, and a clock to read it by.
func readAloud(t *testing.T, poems int) (*table, *heldClock) {
	t.Helper()
	tb := setDemo(t)
	r := pagemodel.Reading{Name: "At the mill", Slot: 300}
	for number, p := range tb.w.session.Collection().Poems() {
		if number <= poems {
			r.Items = append(r.Items, pagemodel.Item{Poem: p.ID()})
		}
	}
	tb.edited(pagemodel.SetReading{Reading: r})
	return tb, &heldClock{time.Date(2026, 11, 25, 20, 0, 0, 0, time.UTC)}
}

// layAloudSheet lays the sheet of the running order that was made last.
func (tb *table) layAloudSheet(from int, c *heldClock) *readingSheet {
	tb.t.Helper()
	all := tb.w.session.Collection().Readings()
	s := tb.w.layReadingSheet(all[len(all)-1], from, c.now)
	if tb.overlay() != fyne.CanvasObject(s) {
		tb.t.Fatalf("%T lies over the window", tb.overlay())
	}
	tb.drawn(s)
	return s
}

// drawn draws the sheet, as the toolkit does between two events.
func (tb *table) drawn(s *readingSheet) {
	for _, r := range []struct {
		size fyne.Size
		draw func(w, h int) image.Image
	}{{s.picture.Size(), s.draw}, {s.strip.Size(), s.drawStrip}} {
		w, h := int(r.size.Width), int(r.size.Height)
		if img := r.draw(w, h); img.Bounds().Dx() != w || img.Bounds().Dy() != h {
			tb.t.Errorf("a picture of %d by %d pixels was asked for, and %v came", w, h, img.Bounds())
		}
	}
}

// turnBy presses keys on the sheet.
func (tb *table) turnBy(s *readingSheet, keys ...fyne.KeyName) {
	for _, k := range keys {
		s.TypedKey(&fyne.KeyEvent{Name: k})
		if !s.lifted {
			tb.drawn(s)
		}
	}
}

// toEndOf goes on until the item's last leaf is open.
func (tb *table) toEndOf(s *readingSheet) {
	for !s.open().Last {
		tb.turnBy(s, fyne.KeyPageDown)
	}
}

// linesOn is the text of a leaf's lines.
func linesOn(l *large.Leaf) string {
	var b strings.Builder
	for i := range l.Verse {
		for j := range l.Verse[i].Runs {
			b.WriteString(l.Verse[i].Runs[j].Text)
		}
		b.WriteByte(' ')
	}
	return b.String()
}

// TestTheSheetShowsEveryLineOnce: leafed through by every key that goes on, the
// leaves hold every line of every poem once, in order; the keys that go back show
// them again.
func TestTheSheetShowsEveryLineOnce(t *testing.T) {
	tb, c := readAloud(t, 6)
	s := tb.layAloudSheet(0, c)
	on := []fyne.KeyName{fyne.KeyPageDown, fyne.KeyRight, fyne.KeyDown, fyne.KeySpace}
	back := []fyne.KeyName{fyne.KeyPageUp, fyne.KeyLeft, fyne.KeyUp}
	var seen []string
	for i := range s.set.Leaves {
		seen = append(seen, linesOn(s.open()))
		if i+1 < len(s.set.Leaves) {
			tb.turnBy(s, on[i%len(on)])
		}
	}
	var want strings.Builder
	for number, p := range tb.w.session.Collection().Poems() {
		for _, l := range p.Lines() {
			if number <= 6 {
				want.WriteString(" " + l.Text())
			}
		}
	}
	squeeze := func(s string) string { return strings.Join(strings.Fields(s), " ") }
	if got, want := squeeze(strings.Join(seen, " ")), squeeze(want.String()); got != want {
		t.Errorf("the leaves say %q, want %q", got, want)
	}
	for i := len(seen) - 2; i >= 0; i-- {
		tb.turnBy(s, back[i%len(back)])
		if got := linesOn(s.open()); got != seen[i] {
			t.Errorf("gone back to leaf %d it says %q", i, got)
		}
	}
	tb.turnBy(s, fyne.KeyPageUp, fyne.KeyEscape)
	if tb.overlay() != nil || tb.w.win.Canvas().Focused() != fyne.Focusable(tb.d) {
		t.Error("Escape does not leave the sheet")
	}
	if runs, err := tb.w.session.Runs(); len(runs) > 0 || err != nil {
		t.Errorf("without a clock %v was kept, %v", runs, err)
	}
}

// wantRun sees that the file keeps one run, with those milliseconds.
func (tb *table) wantRun(at time.Time, ms ...int64) session.Run {
	tb.t.Helper()
	runs, err := tb.w.session.Runs()
	if err != nil || len(runs) != 1 {
		tb.t.Fatalf("%d runs, %v", len(runs), err)
	}
	r, _ := tb.w.session.Collection().Reading(runs[0].Reading)
	var got []int64
	for i, t := range runs[0].Timings {
		got = append(got, t.Ms)
		if t.Item != r.Items[i].ID || t.Poem != r.Items[i].Poem {
			tb.t.Errorf("timing %d is of item %d", i, t.Item)
		}
	}
	if !slices.Equal(got, ms) || !runs[0].At.Equal(at) {
		tb.t.Errorf("at %v %v ms were kept, want %v", runs[0].At, got, ms)
	}
	return runs[0]
}

// TestRunThrough: the clock is started once, each poem's time is taken when the
// reader moves on, pauses are left out and stumbles marked, exact to the
// millisecond; at the end all is in the file.
func TestRunThrough(t *testing.T) {
	tb, c := readAloud(t, 3)
	s := tb.layAloudSheet(0, c)
	c.pass(5000) // before the clock is started
	began := c.at
	tb.turnBy(s, fyne.KeyReturn)
	c.pass(20_250)
	tb.turnBy(s, fyne.KeyBackspace)
	tb.toEndOf(s)
	c.pass(20_001)
	tb.turnBy(s, fyne.KeyPageDown)
	c.pass(40_000)
	tb.turnBy(s, fyne.KeyReturn)
	c.pass(60_000) // the clock stands
	tb.turnBy(s, fyne.KeyBackspace, fyne.KeyReturn)
	c.pass(3)
	tb.toEndOf(s)
	tb.turnBy(s, fyne.KeyPageDown)
	tb.toEndOf(s)
	c.pass(30_000)
	tb.turnBy(s, fyne.KeyPageDown)
	run := tb.wantRun(began, 40_251, 40_003, 30_000)
	if got := run.Timings[0].Stumbles; !slices.Equal(got, []int64{20_250}) || run.Timings[1].Stumbles != nil {
		t.Errorf("stumbles %v, %v", got, run.Timings[1].Stumbles)
	}
	if s.open() != nil || s.tookWords() != "1:50 of 5:00" || !strings.Contains(s.endWords()[0], "1 stumble") {
		t.Errorf("at the end it says %q, %q", s.tookWords(), s.endWords())
	}
	tb.turnBy(s, fyne.KeyPageDown, fyne.KeyPageUp, fyne.KeyReturn, fyne.KeyHome, fyne.KeyEscape)
	tb.wantRun(began, 40_251, 40_003, 30_000)
	if _, err := os.Stat(tb.path + "-run"); !os.IsNotExist(err) {
		t.Errorf("the run is still held: %v", err)
	}
}

// TestGoingBack: moments belong to the poem that lies open; a poem leafed past has no
// time, one begun again begins at nothing, and what nobody moved on from is not
// taken.
func TestGoingBack(t *testing.T) {
	tb, c := readAloud(t, 4)
	s := tb.layAloudSheet(0, c)
	began := c.at
	pass := func(ms int) { tb.toEndOf(s); c.pass(ms); tb.turnBy(s, fyne.KeyPageDown) }
	tb.turnBy(s, fyne.KeyReturn)
	pass(30_000)
	c.pass(700)
	tb.turnBy(s, fyne.KeyPageUp) // one press too many, and back
	pass(1_000)
	c.pass(4_000)
	tb.turnBy(s, fyne.KeyHome) // the second, from its head again
	pass(40_000)
	pass(int(s.plan.Items[2].Seconds*1000) / 3) // leafed past
	c.pass(50_000)
	tb.turnBy(s, fyne.KeyEscape)
	tb.wantRun(began, 31_000, 40_000)
}

// TestAllLeafedPast: a running order that was only leafed through keeps no run, and
// the sheet says why.
func TestAllLeafedPast(t *testing.T) {
	tb, c := readAloud(t, 3)
	s := tb.layAloudSheet(0, c)
	tb.turnBy(s, fyne.KeyReturn)
	for s.open() != nil {
		c.pass(2_500)
		tb.turnBy(s, fyne.KeyPageDown)
	}
	if got := s.footSays(); !slices.Equal(got, []string{"no time is kept: all was leafed past", "Esc leaves it"}) {
		t.Errorf("the foot says %q", got)
	}
	tb.turnBy(s, fyne.KeyEscape)
	if runs, err := tb.w.session.Runs(); len(runs) > 0 || err != nil {
		t.Errorf("%v was kept, %v", runs, err)
	}
}

// TestARunSurvivesACrash: what was taken when the program is cut off is kept when
// the sheet is next opened, once.
func TestARunSurvivesACrash(t *testing.T) {
	tb, c := readAloud(t, 3)
	s := tb.layAloudSheet(0, c)
	began := c.at
	tb.turnBy(s, fyne.KeyReturn)
	tb.toEndOf(s)
	c.pass(32_345)
	tb.turnBy(s, fyne.KeyPageDown)
	held, err := os.ReadFile(tb.path + "-run")
	if err != nil {
		t.Fatal(err)
	}
	tb.w.win.Canvas().Overlays().Remove(s) // cut off: nothing more is done with it
	for _, says := range []string{"the run-through that was cut off is kept: 1 time", ""} {
		c.pass(100_000)
		s := tb.layAloudSheet(0, c)
		if s.said != says {
			t.Errorf("it says %q, want %q", s.said, says)
		}
		tb.turnBy(s, fyne.KeyEscape)
		tb.wantRun(began, 32_345)
		if err := os.WriteFile(tb.path+"-run", held, 0o644); err != nil { // cut off between keeping and letting go
			t.Fatal(err)
		}
	}
}

// TestLeads: one for each poem, as long as it takes; the one that is read shortens
// from its end, those read are gone, and the bar stands where the slot ends, nearer
// once a poem takes longer than planned.
func TestLeads(t *testing.T) {
	tb, c := readAloud(t, 3)
	s := tb.layAloudSheet(0, c)
	on := tb.d.k.slate(s.stripInk.next(int(s.strip.Size().Width), int(s.strip.Size().Height)), 1, tb.d.light.palette().desk)
	edge := on.px(s.set.Format.Side)
	bar := func() int { x, _ := s.slotEnd(on); return x - edge }
	measure := on.px(s.set.Format.Trim.Width - 2*s.set.Format.Side)
	leads := s.leads(on)
	if len(leads) != 3 || !leads[0].open || leads[0].left != leads[0].to || leads[0].from != edge || bar() != measure {
		t.Fatalf("leads %+v, the bar at %d of %d", leads, bar(), measure)
	}
	planned := s.plan.Items[0].Seconds
	if got, want := float64(leads[1].from-edge), planned/300*float64(measure); got < want-1 || got > want+1 {
		t.Errorf("the first lead is %v pixels long, want %v", got, want)
	}
	tb.turnBy(s, fyne.KeyReturn)
	c.pass(int(planned * 500))
	leads = s.leads(on)
	if half := (leads[0].from + leads[0].to) / 2; leads[0].left < half-1 || leads[0].left > half+1 || bar() != measure {
		t.Errorf("half way it reaches to %d of %d, and the bar stands at %d", leads[0].left, leads[0].to, bar())
	}
	c.pass(int(planned*500) + 10_000)
	if leads = s.leads(on); leads[0].left != leads[0].from {
		t.Errorf("after its time it reaches to %d", leads[0].left)
	}
	if got, want := measure-bar(), measure*10/300; got < want-1 || got > want+1 {
		t.Errorf("ten seconds over, the bar has come %d pixels nearer, want %d", got, want)
	}
	tb.toEndOf(s)
	tb.turnBy(s, fyne.KeyPageDown)
	if leads = s.leads(on); len(leads) != 2 || leads[0].from != edge {
		t.Errorf("with the second begun the leads are %+v", leads)
	}
	if got, want := bar(), int((300-planned-10)/300*float64(measure)); got < want-1 || got > want+1 {
		t.Errorf("the bar stands at %d, want %d", got, want)
	}
}

// TestTheSheetByMouse: a press goes on, at the left back; at the foot it starts the
// clock, and the words there do what they say.
func TestTheSheetByMouse(t *testing.T) {
	tb, c := readAloud(t, 3)
	s := tb.layAloudSheet(0, c)
	press := func(x, y float32) {
		s.MouseDown(&desktop.MouseEvent{PointEvent: fyne.PointEvent{Position: fyne.NewPos(x, y)}, Button: desktop.MouseButtonPrimary})
		if !s.lifted {
			tb.drawn(s)
		}
	}
	word := func(words string) {
		t.Helper()
		i := slices.IndexFunc(s.presses, func(p sheetPress) bool { return strings.Contains(p.words, words) })
		if i < 0 {
			t.Fatalf("%q is not at the foot", words)
		}
		at := s.presses[i].at
		press(float32(at.Min.X+at.Dx()/2), float32(at.Min.Y+at.Dy()/2)+s.size.Height-s.footDepth())
	}
	press(1000, 400)
	if s.leaf != 1 {
		t.Errorf("a press opens leaf %d", s.leaf)
	}
	press(100, 400)
	s.Scrolled(&fyne.ScrollEvent{Scrolled: fyne.NewDelta(0, -25)})
	s.Scrolled(&fyne.ScrollEvent{Scrolled: fyne.NewDelta(0, 25)})
	if s.leaf != 0 {
		t.Errorf("gone back, leaf %d is open", s.leaf)
	}
	word("starts the clock")
	if !s.clock.going() || len(s.presses) != 0 {
		t.Errorf("the clock goes: %v; the foot says %v", s.clock.going(), s.presses)
	}
	c.pass(3000)
	press(700, s.size.Height-10)
	if s.clock.going() || s.clock.spent != 3*time.Second {
		t.Errorf("pressed at the foot, it goes on to %v", s.clock.spent)
	}
	word("Esc")
	if tb.overlay() != nil {
		t.Error("the sheet is not left")
	}
}

// footSays are the things said at the foot.
func (s *readingSheet) footSays() []string {
	var all []string
	for _, p := range s.presses {
		all = append(all, p.words)
	}
	return all
}

// TestTimeInWords, where it is wanted.
func TestTimeInWords(t *testing.T) {
	tb, c := readAloud(t, 3)
	s := tb.layAloudSheet(1, c)
	tb.turnBy(s, fyne.KeyReturn)
	c.pass(1000)
	tb.w.run(tb.command("Turn Here"))
	tb.drawn(s)
	want := []string{clock(s.plan.Items[1].Seconds-1) + " left in this", "2 of 3", clock(300-s.plan.Items[0].Seconds-1) + " to the end of the slot"}
	if got := s.footSays(); !slices.Equal(got, want) {
		t.Errorf("the foot says %q, want %q", got, want)
	}
	was := tb.d.light
	tb.w.run(tb.command("Lamp"))
	if tb.d.light == was {
		t.Error("the light is as it was")
	}
}

// TestSheetColours: words keep a contrast of 4.5 to 1 in both lights (WCAG 2.2,
// 1.4.3), which marks, at 3 to 1, then have too.
func TestSheetColours(t *testing.T) {
	for _, l := range []light{day, lamp} {
		colors := l.sheetColors()
		if a, b := contrast(colors.words, colors.ground), contrast(colors.quiet, colors.ground); a < 4.5 || b < 4.5 {
			t.Errorf("%v: contrasts of %.1f and %.1f", l, a, b)
		}
	}
}

// TestTheSheetFollowsTheWindow: in another size of the window the same line is open.
func TestTheSheetFollowsTheWindow(t *testing.T) {
	tb, c := readAloud(t, 6)
	s := tb.layAloudSheet(0, c)
	for s.open().First {
		tb.turnBy(s, fyne.KeyPageDown)
	}
	item, line := s.place()
	for _, size := range []fyne.Size{{Width: 700, Height: 500}, {Width: 1920, Height: 1200}, {Width: 500, Height: 900}} {
		s.Resize(size)
		tb.drawn(s)
		if got := s.open(); got.Item != item || !slices.ContainsFunc(s.set.Leaves[s.leaf].Verse, func(r typeset.Row) bool { return r.Line == line }) {
			t.Errorf("in a window of %v item %d is open", size, got.Item)
		}
		item, line = s.place()
	}
}

// TestAReadingGoesOnPaper, as a copy and as a card.
func TestAReadingGoesOnPaper(t *testing.T) {
	tb, _ := readAloud(t, 3)
	r := tb.w.session.Collection().Readings()[0]
	folder := t.TempDir()
	tb.w.askReadingCopy(r)
	tb.writeIn("a5", fyne.KeyReturn)
	tb.writeIn(filepath.Join(folder, "copy.pdf"), fyne.KeyReturn)
	tb.settle()
	tb.w.askCard(r)
	tb.writeIn(filepath.Join(folder, "card.pdf"), fyne.KeyReturn)
	for _, name := range []string{"copy.pdf", "card.pdf"} {
		if data, err := os.ReadFile(filepath.Join(folder, name)); err != nil || !strings.HasPrefix(string(data), "%PDF") {
			t.Errorf("%s: %v", name, err)
		}
	}
}
