package ui

import (
	"image"
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"
)

// TestTheTimePlannedAndTaken: a row as planned and one for each run-through, the
// latest first; keys walk over the poems and the rows and say them in words.
func TestTheTimePlannedAndTaken(t *testing.T) {
	tb := setDemo(t)
	a := tb.readsPoems(600, "Sign", "Windowpane", "Toast")
	tb.timedTwice(a)
	tb.typed(fyne.KeyTab)
	tb.aloudOn()
	if got := len(a.times.rows); got != 3 || len(a.times.bars) != 9 {
		t.Fatalf("there are %d rows with %d bars", got, len(a.times.bars))
	}
	tb.typed(fyne.KeyRight, fyne.KeyDown)
	takes := a.plan.Items[1].Seconds
	for _, want := range []string{"“Windowpane”", "taken on 13 November 2026", clock(1.25 * takes), "longer than planned", "1 stumble"} {
		if !strings.Contains(tb.d.said, want) {
			t.Errorf("the foot says %q, want %q in it", tb.d.said, want)
		}
	}
	for _, b := range a.times.bars {
		part := a.times.rows[b.row].parts[b.item]
		if long := float64(b.at.Dx()) / a.times.second; long < part.to-part.from-1.5 || long > part.to-part.from+1 {
			t.Errorf("row %d: item %d takes %.1f s and is drawn as %.1f", b.row, b.item, part.to-part.from, long)
		}
	}
	a.pressAt(middle(a.times.bar(2, 2)), desktop.MouseButtonPrimary)
	if a.at != 2 {
		t.Errorf("pressed, item %d is at hand", a.at)
	}
}

// TestTheLinesAlongTheBook: each poem has its strokes, no two lie on one another;
// keys walk over the poems and say them; Enter opens the book there.
func TestTheLinesAlongTheBook(t *testing.T) {
	tb := setDemo(t)
	tb.chord(key(ctrl, fyne.Key3))
	a := tb.aloudOn()
	tb.typed(fyne.KeyTab, fyne.KeyTab)
	tb.aloudOn()
	seen := map[int]bool{}
	for {
		for i, one := range a.lines.places {
			seen[one.poem] = true
			if one.at.Dx() < 24 {
				t.Errorf("poem %d is %d wide", one.poem, one.at.Dx())
			}
			if i > 0 && one.at.Overlaps(a.lines.places[i-1].at) {
				t.Errorf("poems %d and %d lie on one another", one.poem, one.poem-1)
			}
		}
		was := a.lines.at
		if tb.typed(fyne.KeyDown); a.lines.at == was {
			break
		}
	}
	if len(seen) != len(a.lines.poems) {
		t.Errorf("%d of %d poems are seen", len(seen), len(a.lines.poems))
	}
	tb.typed(fyne.KeyHome, fyne.KeyRight)
	p := a.lines.poems[1]
	for _, want := range []string{"2 " + nameOfPoem(p), counted(p.LineCount(), "line", "lines"), "stanzas of", "ems"} {
		if !strings.Contains(tb.d.said, want) {
			t.Errorf("the foot says %q, want %q in it", tb.d.said, want)
		}
	}
	tb.typed(fyne.KeyReturn)
	page, _ := tb.w.session.Setting().PageOfPoem(p.ID())
	if tb.overlay() != nil || tb.w.session.Page() != page {
		t.Errorf("the book is open at page %d, want %d", tb.w.session.Page(), page)
	}
}

// TestStanzasAreSaidShort where several one after another are alike.
func TestStanzasAreSaidShort(t *testing.T) {
	for want, all := range map[string][]int{"in stanzas of 3 × 4, 2": {4, 4, 4, 2}, "in stanzas of 4, 4": {4, 4}, "in one stanza": {14}} {
		if got := stanzaWords(all); got != want {
			t.Errorf("%v is %q, want %q", all, got, want)
		}
	}
}

// TestTheSheetFitsTheWindow at every size: nothing lies outside it, and what can be
// pressed is 24 units deep.
func TestTheSheetFitsTheWindow(t *testing.T) {
	tb := setDemo(t)
	a := tb.readsPoems(300, "Sign", "Windowpane", "Toast")
	for _, size := range []image.Point{{1400, 900}, {1000, 700}, {560, 800}} {
		tb.w.win.Resize(fyne.NewSize(float32(size.X), float32(size.Y)))
		for f := range aloudFaces {
			a.turnTo(f)
			tb.aloudOn()
			for _, w := range a.place.words {
				if w.at.Dy() < a.place.units(24) {
					t.Errorf("%v: %q is %d deep", size, w.words, w.at.Dy())
				}
			}
		}
		a.turnTo(orderFace)
		for _, lead := range a.place.leads {
			if !lead.In(a.place.sheet) {
				t.Errorf("%v: a lead lies at %v of %v", size, lead, a.place.sheet)
			}
		}
	}
}
