package onscreen

import (
	"encoding/json"
	"image"
	"testing"

	"headland/pagemodel"
)

const keyTab = 0xff09 // by its X keysym

// TestChoicesInARealWindow presses the stroke of a line, which lays out its
// choices, goes by the tab key from a break in the poem to one in this edition,
// and takes it; then takes another by keys alone, as it was remembered.
func TestChoicesInARealWindow(t *testing.T) {
	s, home := openScreen(t), t.TempDir()
	b := demoBook(t, home)
	line := b.lineEnding(t, lineEnd)
	p := start(t, s, home, headland, b.path)
	l := b.find(t, s)

	s.move(b.stroke(l, line.Page, line.Ref))
	s.press()
	s.release()
	s.key(t, keyDown)
	s.key(t, keyTab)
	s.key(t, keyReturn)
	first := waitForEdit(t, b.path, 1)
	checkEditionBreak(t, first, line.Ref)
	s.key(t, keyZ, keyCtrl)
	eventually(t, "undo to reach the file", func() bool { _, head := history(t, b.path); return head == first.parent })

	s.key(t, 'c', keyCtrl, keyShift)
	s.key(t, keyDown)
	s.key(t, keyEscape)
	s.key(t, 'c', keyCtrl, keyShift)
	s.key(t, keyDown)
	s.key(t, keyReturn)
	checkEditionBreak(t, waitForEdit(t, b.path, 2), line.Ref)
	p.quit(t)
}

// stroke is where on the screen the stroke of an overlong line stands: in the
// outer margin, eleven twentieths of the way to the page's edge.
func (b *book) stroke(l lie, page int, ref pagemodel.LineRef) image.Point {
	pg, row := b.set.Page(page), b.rows(page, ref)[0]
	x := pg.Text.X * 9 / 20
	if end := pg.Text.X + pg.Text.W; pg.Side == pagemodel.Recto {
		x = end + (pg.Trim.Width-end)*11/20
	}
	return l.at(page, x, row.Baseline-2*pagemodel.Point)
}

// checkEditionBreak holds that the edit breaks the line in this edition.
func checkEditionBreak(t *testing.T, e edit, ref pagemodel.LineRef) {
	t.Helper()
	var got pagemodel.Break
	if err := json.Unmarshal([]byte(e.args), &got); err != nil {
		t.Fatal(err)
	}
	if e.kind != "break" || got.LineRef != ref || got.In != pagemodel.InEdition {
		t.Errorf("the edit is %s %s, want a break of line %d of poem %d in this edition", e.kind, e.args, ref.Line, ref.Poem)
	}
}
