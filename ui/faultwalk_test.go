package ui

import (
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"

	"headland/pagemodel"
	"headland/typeset"
)

// TestEveryFaultHasALetterOfItsOwn that no line that turns has.
func TestEveryFaultHasALetterOfItsOwn(t *testing.T) {
	seen := map[string]typeset.FaultKind{"t": "", "k": "", "e": ""}
	for _, kind := range typeset.FaultKinds {
		shown := faultKinds[kind]
		if _, taken := seen[shown.letter]; taken || shown.letter == "" || shown.words == "" {
			t.Errorf("%s is shown as %q, %q", kind, shown.letter, shown.words)
		}
		seen[shown.letter] = kind
	}
}

func TestFromFaultToFault(t *testing.T) {
	tb := setDemo(t)
	n := len(tb.d.faults)
	if n < 5 {
		t.Fatalf("the demo has %d faults", n)
	}
	var way []typeset.Fault
	for range n {
		tb.chord(key(ctrlShift, fyne.KeyDown))
		f, ok := tb.d.faultAtHand()
		if !ok || f.Page != tb.d.spread.Verso && f.Page != tb.d.spread.Recto {
			t.Fatalf("%+v is at hand %v at %v", f, ok, tb.d.spread)
		}
		if help := tb.d.help(); !strings.HasPrefix(help, kindOf(f).letter+": "+f.Text) {
			t.Errorf("the foot says %q of %q", help, f.Text)
		}
		way = append(way, f)
	}
	seen := map[typeset.Fault]bool{}
	for _, f := range way {
		seen[f] = true
	}
	if len(seen) != n {
		t.Errorf("%d presses led to %d of %d faults", n, len(seen), n)
	}
	for i := range way {
		if f, _ := tb.d.faultAtHand(); f != way[n-1-i] {
			t.Fatalf("%d back from the last is %+v, want %+v", i, f, way[n-1-i])
		}
		tb.chord(key(ctrlShift, fyne.KeyUp))
	}
}

func TestABookWithoutFaultsSaysSo(t *testing.T) {
	tb := setTable(t, verses(two))
	for _, k := range []fyne.Shortcut{key(ctrlShift, fyne.KeyDown), key(ctrlShift, fyne.KeyG)} {
		tb.d.said = ""
		tb.chord(k)
		if tb.d.said != "No fault is found" || tb.overlay() != nil {
			t.Errorf("the foot says %q", tb.d.said)
		}
	}
	if got := tb.d.counts(); len(got) != 1 {
		t.Errorf("the foot counts %v", got)
	}
	tb.chord(key(ctrl, fyne.KeyM))
	if !strings.Contains(tb.d.said, "No fault is at hand") {
		t.Errorf("the foot says %q", tb.d.said)
	}
}

func TestGoingToAFaultByName(t *testing.T) {
	tb := setDemo(t)
	want := tb.d.faults[len(tb.d.faults)-1]
	poem, _, _ := tb.d.of.Collection().Poem(want.Poem)
	tb.chord(key(ctrlShift, fyne.KeyG))
	tb.writeIn(kindOf(want).words+" · "+poem.Name(), fyne.KeyReturn)
	tb.frame()
	f, ok := tb.d.faultAtHand()
	if !ok || f.Kind != want.Kind || f.Poem != want.Poem || tb.overlay() != nil {
		t.Errorf("%+v is at hand, want %+v", f, want)
	}
}

// TestAFaultIsPressedInTheMargin: its mark says what it is under the hand, and
// a press puts it at hand.
func TestAFaultIsPressedInTheMargin(t *testing.T) {
	tb := setDemo(t)
	tb.chord(key(ctrlShift, fyne.KeyDown))
	f, _ := tb.d.faultAtHand()
	tb.keys(fyne.KeyEscape)
	if _, ok := tb.d.faultAtHand(); ok {
		t.Fatal("Escape leaves it at hand")
	}
	page := tb.d.page(f.Page)
	r := &page.Rows[faultRow(page, f)]
	at := tb.d.plan.fromPage(page.Side, typeset.Point{X: strokeX(page), Y: r.Baseline - sizeOf(r)/4})
	if got := tb.inkAt(page.Side, typeset.Point{X: strokeX(page), Y: r.Baseline - sizeOf(r)/4}); got != tb.d.light.palette().mark {
		t.Errorf("the stroke is %v", got)
	}
	tb.d.MouseMoved(&desktop.MouseEvent{PointEvent: tb.at(at)})
	if tb.d.over.kind != overFault || !strings.Contains(tb.d.help(), f.Text) {
		t.Errorf("over %v, the foot says %q", tb.d.over.kind, tb.d.help())
	}
	tb.click(at)
	if now, ok := tb.d.faultAtHand(); !ok || now != f {
		t.Errorf("%+v is at hand, want %+v", now, f)
	}
}

// TestWhyAPageEnds: a page end in mid poem says at the foot of its page what it
// falls on, and under the hand why it is there.
func TestWhyAPageEnds(t *testing.T) {
	tb := setTable(t, verses(stanzas(14, 14, 14)))
	page := tb.d.page(1)
	if got := tb.d.signs(page).end; got != "stanza break" {
		t.Fatalf("page 1 says %q at its foot", got)
	}
	at := tb.d.plan.fromPage(page.Side, typeset.Point{X: page.Text.X + 20*pagemodel.Point, Y: endY(page) - pagemodel.Point})
	tb.d.MouseMoved(&desktop.MouseEvent{PointEvent: tb.at(at)})
	if got := tb.d.help(); !strings.HasPrefix(got, "The page ends at a stanza break") {
		t.Errorf("the foot says %q", got)
	}
	if got := tb.d.signs(tb.d.page(tb.d.of.Extent())).end; got != "" {
		t.Errorf("the poem’s last page says %q", got)
	}
}
