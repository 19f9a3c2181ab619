package onscreen

import (
	"encoding/json"
	"testing"

	"github.com/jezek/xgb/xproto"

	"headland/pagemodel"
)

const keyDown = 0xff54 // by its X keysym

// TestAStanzaKeptWholeInARealWindow keeps the stanza of the line at hand whole,
// by keys and then by the menu, which is gone about in by keys too; each is in
// the file, and one undo takes it back.
func TestAStanzaKeptWholeInARealWindow(t *testing.T) {
	s, home := openScreen(t), t.TempDir()
	b := demoBook(t, home)
	line := b.lineEnding(t, lineEnd)
	p := start(t, s, home, headland, b.path)
	b.find(t, s)

	s.key(t, 'w', keyCtrl, keyShift)
	first := waitForEdit(t, b.path, 1)
	checkTogether(t, b, first, line.Ref)
	s.key(t, keyZ, keyCtrl)
	eventually(t, "undo to reach the file", func() bool { _, head := history(t, b.path); return head == first.parent })

	s.key(t, keyAlt)
	for _, k := range menuWay {
		s.key(t, k)
	}
	checkTogether(t, b, waitForEdit(t, b.path, 2), line.Ref)
	p.quit(t)
}

// menuWay leads from the menu bar, with its first menu open, to the second item
// of the fifth menu, and takes it.
var menuWay = []xproto.Keysym{keyRight, keyRight, keyRight, keyRight, keyDown, keyDown, keyReturn}

// checkTogether holds that the edit keeps all lines of a line's stanza together.
func checkTogether(t *testing.T, b *book, e edit, ref pagemodel.LineRef) {
	t.Helper()
	var got pagemodel.KeepTogether
	if err := json.Unmarshal([]byte(e.args), &got); err != nil {
		t.Fatal(err)
	}
	poem, at, err := b.set.Collection().Line(ref)
	if err != nil {
		t.Fatal(err)
	}
	lines := poem.Stanza(at).Lines()
	want := pagemodel.KeepTogether{
		LineRef: pagemodel.LineRef{Poem: ref.Poem, Line: lines[0].ID()}, Through: lines[len(lines)-1].ID(),
	}
	if e.kind != "together" || got != want {
		t.Errorf("the edit is %s %s, want %+v", e.kind, e.args, want)
	}
}
