package ui

import (
	"image"
	"math/rand/v2"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"

	"headland/pagemodel"
	"headland/typeset"
)

// TestAHandThatKnowsNothing presses, drags and types at random. Whatever it
// does, the window stays whole: what is at rest is what the file holds, and
// taking everything back gives the book that was.
func TestAHandThatKnowsNothing(t *testing.T) {
	tb := setDemo(t)
	first := textOf(tb.w.session.Collection())
	tb.d.ask = func(m lineMenu) {}
	rng := rand.New(rand.NewPCG(1, 2))
	for range 2000 {
		wander(tb, rng)
	}
	tb.d.settleHand()
	tb.release()
	if tb.w.session.Previewing() {
		t.Error("something is still tried out, though the hand holds nothing")
	}
	cold := typeset.NewSetter(typeset.Bundled()).Set(nil, tb.w.session.Collection())
	for n := 1; n <= cold.Extent(); n++ {
		if !sameText(cold.Page(n), tb.w.session.Setting().Page(n)) {
			t.Fatalf("page %d is not what the book sets to", n)
		}
	}
	done := 0
	for _, can := tb.w.session.UndoLabel(); can; _, can = tb.w.session.UndoLabel() {
		tb.d.undo()
		done++
	}
	if done < 20 {
		t.Errorf("only %d things were done: the hand is too timid", done)
	}
	if textOf(tb.w.session.Collection()) != first {
		t.Error("taking everything back does not give the book that was")
	}
}

func sameText(a, b *typeset.Page) bool {
	if len(a.Rows) != len(b.Rows) {
		return false
	}
	for i := range a.Rows {
		if rowWords(&a.Rows[i]) != rowWords(&b.Rows[i]) || a.Rows[i].X != b.Rows[i].X {
			return false
		}
	}
	return true
}

// wander does one thing at random.
func wander(tb *table, rng *rand.Rand) {
	at := image.Pt(rng.IntN(tb.d.plan.size.X), rng.IntN(tb.d.plan.size.Y))
	if rng.IntN(3) > 0 {
		at = someLine(tb, rng, at)
	}
	tb.held = [...]fyne.KeyModifier{0, 0, fyne.KeyModifierShift, fyne.KeyModifierShortcutDefault}[rng.IntN(4)]
	switch rng.IntN(9) {
	case 0, 1, 2:
		tb.press(at)
	case 3, 4:
		tb.move(tb.hand.Add(image.Pt(rng.IntN(300)-200, rng.IntN(60)-20)))
	case 5:
		tb.release()
	case 6:
		keys := []fyne.KeyName{
			fyne.KeyUp, fyne.KeyDown, fyne.KeyLeft, fyne.KeyRight, fyne.KeyReturn, fyne.KeyEscape,
			fyne.KeyPageDown, fyne.KeyPageUp, fyne.KeyHome, fyne.KeyEnd, fyne.KeyBackspace, fyne.KeyDelete,
		}
		tb.keys(keys[rng.IntN(len(keys))])
	case 7:
		tb.write([...]string{"a", " ", "—", "é", "word "}[rng.IntN(5)])
	case 8:
		command := tb.w.menus.commands[rng.IntN(len(tb.w.menus.commands))]
		if command.book && command.key != nil && !opensPanel(command.words) {
			command.item.Action()
		}
	}
	tb.d.MouseMoved(&desktop.MouseEvent{PointEvent: tb.at(tb.hand)})
}

func opensPanel(words string) bool {
	r := []rune(words)
	return r[len(r)-1] == '…' || words == "Paste"
}

// someLine is the end of some line on the open pages.
func someLine(tb *table, rng *rand.Rand, otherwise image.Point) image.Point {
	side := pagemodel.Side(rng.IntN(2))
	page := tb.d.page(tb.d.plan.sheets[side].number)
	if len(page.Rows) == 0 {
		return otherwise
	}
	r := &page.Rows[rng.IntN(len(page.Rows))]
	return tb.d.plan.fromPage(side, typeset.Point{X: r.X + r.Width, Y: r.Baseline - sizeOf(r)/4}).Add(image.Pt(rng.IntN(12)-4, 0))
}
