package order

import (
	"strings"
	"testing"

	"headland/pagemodel"
	"headland/typeset"
)

func trim(t *testing.T, name string) pagemodel.Trim {
	t.Helper()
	size, ok := pagemodel.TrimNamed(name)
	if !ok {
		t.Fatalf("no trim %q", name)
	}
	return size
}

func dummy(t *testing.T, pages int, trimName, paper string, section int) Dummy {
	t.Helper()
	p, err := PaperNamed(paper)
	if err != nil {
		t.Fatal(err)
	}
	d, err := NewDummy(pages, trim(t, trimName), p, section)
	if err != nil {
		t.Fatal(err)
	}
	return d
}

// The percentages worked out by hand. A4 has 287 by 200 mm clear of its edges,
// Letter 269.4 by 205.9: two pages of B-format, 258 by 198 mm, fit either as
// they are; two of A5, 296 by 210 mm, fit A4 at 95 in the hundred (281.2 by
// 199.5) and Letter at 91 (269.36 by 191.1); two of Demy, 276 by 216, fit A4 at
// 92 (198.72 high); two of A4 at 67 in the hundred (281.4 by 198.99).
func TestPercent(t *testing.T) {
	for _, c := range []struct {
		trim, paper string
		want        int
	}{
		{"B-format", "A4", 100}, {"B-format", "Letter", 100}, {"A6", "a4", 100}, {"A5", "A4", 95}, {"A5", "letter", 91},
		{"Demy octavo", "A4", 92}, {"A4", "A4", 67},
	} {
		if d := dummy(t, 8, c.trim, c.paper, 0); d.Percent != c.want {
			t.Errorf("%s on %s is printed at %d per cent, want %d", c.trim, c.paper, d.Percent, c.want)
		}
	}
}

// On either paper every trim lies clear of the edges, in the middle, with its
// label in the white beside it; one per cent more would not.
func TestPagesLieClear(t *testing.T) {
	for _, preset := range pagemodel.TrimPresets {
		for _, paper := range Papers {
			d, err := NewDummy(8, preset.Trim, paper, 0)
			if err != nil {
				t.Fatal(err)
			}
			checkClear(t, preset.Name, &d)
			if d.Percent++; d.Percent <= 100 && d.fits() {
				t.Errorf("%s on %s would fit at %d per cent", preset.Name, paper.Name, d.Percent)
			}
		}
	}
}

func checkClear(t *testing.T, name string, d *Dummy) {
	t.Helper()
	clear, area, size := pagemodel.MM(5), d.Area(), d.Size()
	if area.X < clear || area.Y < clear || area.X+area.W > size.Width-clear+1 || area.Y+area.H > size.Height-clear+1 {
		t.Errorf("%s at %d per cent lies at %v on %v", name, d.Percent, area, size)
	}
	label := d.Label(typeset.Run{Width: pagemodel.MM(40), Size: LabelSize})
	ink := typeset.Rect{X: label.X, Y: label.Baseline - LabelSize, W: label.Width, H: LabelSize * 4 / 3}
	if label.Turned {
		ink = typeset.Rect{X: label.Baseline - LabelSize, Y: size.Height - label.X - label.Width, W: LabelSize * 4 / 3, H: label.Width}
	}
	for _, r := range append(d.Ticks(), ink) {
		if r.X < area.X+area.W && r.X+r.W > area.X && r.Y < area.Y+area.H && r.Y+r.H > area.Y {
			t.Errorf("%s on %s: %v stands in the pages, %v", name, d.Paper.Name, r, area)
		}
	}
	if ink.X < clear-LabelSize/3 || ink.Y+ink.H > size.Height-clear+LabelSize/3 {
		t.Errorf("%s on %s: the label %v is too near the edge", name, d.Paper.Name, ink)
	}
}

// Ticks stand in line with the corners and the fold.
func TestTicks(t *testing.T) {
	d := dummy(t, 8, "B-format", "A4", 0)
	area, at := d.Area(), map[typeset.Length]int{}
	for _, tick := range d.Ticks() {
		if tick.W > tick.H {
			at[tick.Y+tickWidth/2]++
		} else {
			at[tick.X+tickWidth/2]++
		}
	}
	for _, place := range []typeset.Length{area.X, area.X + area.W/2, area.X + area.W, area.Y, area.Y + area.H} {
		if at[place] != 2 {
			t.Errorf("%d ticks at %v, want 2", at[place], place)
		}
	}
	if d.Corner(true).X != area.X+area.W/2 || area.X+area.W/2 != d.Paper.Long/2 {
		t.Error("the fold is not the middle of the paper, where the right page begins")
	}
}

func TestInstructions(t *testing.T) {
	for _, c := range []struct {
		pages, section int
		want           string
	}{
		{96, 16, "24 sheets of A4 in 6 sections of 4 sheets; print at actual size on both sides, flip on the short edge; pages at 92 per cent"},
		{91, 16, "23 sheets of A4 in 5 sections of 4 sheets and one of 3; print at actual size on both sides, flip on the short edge; pages at 92 per cent; the last page is left blank"},
		{17, 16, "5 sheets of A4 in 1 section of 4 sheets and one of 1; print at actual size on both sides, flip on the short edge; pages at 92 per cent; the last 3 pages are left blank"},
		{8, 4, "2 sheets of A4 in 2 sections of 1 sheet; print at actual size on both sides, flip on the short edge; pages at 92 per cent"},
		{24, 0, "6 sheets of A4 folded together and stapled; print at actual size on both sides, flip on the short edge; pages at 92 per cent"},
		{2, 0, "1 sheet of A4 folded once; print at actual size on both sides, flip on the short edge; pages at 92 per cent; the last 2 pages are left blank"},
	} {
		d := dummy(t, c.pages, "Demy octavo", "A4", c.section)
		if got := d.Instructions(); got != c.want {
			t.Errorf("%d in %d:\n got %s\nwant %s", c.pages, c.section, got, c.want)
		}
	}
}

func TestLabels(t *testing.T) {
	d := dummy(t, 90, "A5", "A4", 16)
	if got := d.LabelOf(21, false); got != "section 6, sheet 2 of 3, back" {
		t.Errorf("label %q", got)
	}
	d = dummy(t, 16, "A5", "A4", 0)
	if got := d.LabelOf(0, true); got != "sheet 1 of 4, front" {
		t.Errorf("label %q", got)
	}
}

// What can't be folded or printed is refused, with what can.
func TestRefusals(t *testing.T) {
	if _, err := PaperNamed("A3"); err == nil || !strings.Contains(err.Error(), "A4 or Letter") {
		t.Errorf("error %v", err)
	}
	a4, wide := Papers[0], pagemodel.Trim{Width: pagemodel.MM(30000), Height: pagemodel.MM(1)}
	if _, err := NewDummy(8, trim(t, "A5"), a4, 12); err == nil || !strings.Contains(err.Error(), "4, 8, 16 or 32") {
		t.Errorf("error %v", err)
	}
	if _, err := NewDummy(0, trim(t, "A5"), a4, 8); err == nil || !strings.Contains(err.Error(), "no pages") {
		t.Errorf("error %v", err)
	}
	if _, err := NewDummy(8, wide, a4, 8); err == nil || !strings.Contains(err.Error(), "smaller trim") {
		t.Errorf("error %v", err)
	}
}
