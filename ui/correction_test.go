package ui

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/widget"

	"headland/pagemodel"
)

// corrections is the list of corrections that lies on the desk.
func (tb *table) corrections() *correctionList {
	tb.t.Helper()
	f, ok := tb.w.win.Canvas().Focused().(*correctionField)
	if !ok {
		tb.t.Fatalf("%T has the keys, want the list of corrections", tb.w.win.Canvas().Focused())
	}
	return f.list
}

// on is where the hand presses the i-th row of a listing.
func on(l *listing, i int, button desktop.MouseButton) *desktop.MouseEvent {
	y := float32(0)
	for k := range i {
		y += l.deep(&l.rows[k])
	}
	return &desktop.MouseEvent{PointEvent: fyne.PointEvent{Position: fyne.NewPos(30, y+5)}, Button: button}
}

// TestCorrectionsAreListed with place and words, narrowed by typing and by state.
func TestCorrectionsAreListed(t *testing.T) {
	tb := corrected(t)
	tb.chord(key(ctrlShift, fyne.KeyR))
	l := tb.corrections()
	if len(l.rows.rows) != 2 || l.rows.chosen != 0 {
		t.Fatalf("%d corrections are listed, the %dth chosen", len(l.rows.rows), l.rows.chosen)
	}
	first := l.rows.rows[0]
	for _, words := range []string{"1", "Trial", "stanza 1", "line 2", "page", "again", "→"} {
		if !strings.Contains(first.words+first.under, words) {
			t.Errorf("the first is %q, %q: want %q in it", first.words, first.under, words)
		}
	}
	if first.aside != "AA · open" {
		t.Errorf("beside the first stands %q", first.aside)
	}
	if said := wordsOn(tb.overlay()); l.list.Rule == "" || !strings.Contains(said, l.list.Rule) {
		t.Errorf("the panel says %q, want the rule of counting %q", said, l.list.Rule)
	}
	l.field.SetText("too trial")
	if len(l.shown) != 1 || !strings.Contains(l.rows.rows[0].under, "too") {
		t.Errorf("typed words leave %d", len(l.shown))
	}
	l.field.SetText("")
	tb.chordOnTop(key(ctrl, fyne.Key3))
	tb.typed(fyne.KeyTab)
	if len(l.shown) != 1 || l.list.All[l.shown[0]].State != pagemodel.Open {
		t.Errorf("Tab leaves %d", len(l.shown))
	}
	tb.typed(fyne.KeyTab)
	if len(l.shown) != 1 || l.list.All[l.shown[0]].State != pagemodel.Refused {
		t.Errorf("Tab leaves %d", len(l.shown))
	}
	tb.typed(fyne.KeyTab)
	if len(l.shown) != 2 {
		t.Errorf("the last Tab leaves %d", len(l.shown))
	}
	tb.chordOnTop(key(ctrl, fyne.KeyE))
	if f, ok := tb.w.win.Canvas().Focused().(*field); !ok || f.PlaceHolder != "for what, or the ending" {
		t.Errorf("Ctrl E gives %T the keys", tb.w.win.Canvas().Focused())
	}
	tb.typed(fyne.KeyEscape)
}

// TestACorrectionIsGoneTo by Enter and by the hand.
func TestACorrectionIsGoneTo(t *testing.T) {
	for name, press := range map[string]func(tb *table, l *correctionList){
		"Enter": func(tb *table, _ *correctionList) { tb.typed(fyne.KeyDown, fyne.KeyReturn) },
		"hand": func(_ *table, l *correctionList) {
			l.rows.MouseDown(on(&l.rows.listing, 1, desktop.MouseButtonPrimary))
			l.rows.MouseUp(on(&l.rows.listing, 1, desktop.MouseButtonPrimary))
		},
	} {
		tb := corrected(t)
		tb.keys(fyne.KeyUp, fyne.KeyUp)
		tb.chord(key(ctrlShift, fyne.KeyR))
		press(tb, tb.corrections())
		line, ok := tb.d.lineAtHand()
		if tb.overlay() != nil || !ok || line.Text() != "the third one for the window, too" {
			t.Errorf("%s: %T lies there, and %q is at hand", name, tb.overlay(), line.Text())
		}
		if !strings.Contains(tb.d.said, "too") {
			t.Errorf("%s: the foot says %q", name, tb.d.said)
		}
	}
}

// TestRepliesAreNoted: what became of a correction by its key, whose it is by the
// keys of the note, and all in words, and all of it can be undone.
func TestRepliesAreNoted(t *testing.T) {
	tb := corrected(t)
	tb.chord(key(ctrlShift, fyne.KeyR))
	l := tb.corrections()
	reply := func() pagemodel.Reply { r, _ := l.reply(); return r }
	tb.chordOnTop(key(ctrl, fyne.Key4))
	if got := reply().State; got != pagemodel.Queried {
		t.Errorf("Ctrl 4 notes %q", got)
	}
	tb.chordOnTop(key(ctrl, fyne.KeyReturn))
	tb.typed(fyne.KeyDown, fyne.KeyDown, fyne.KeyDown, fyne.KeyReturn) // from queried, past missed and AA, to PE
	if got := reply().Whose; got != pagemodel.Printers {
		t.Errorf("whose it is: %q", got)
	}
	l.rows.MouseDown(on(&l.rows.listing, 0, desktop.MouseButtonSecondary))
	l.rows.MouseUp(on(&l.rows.listing, 0, desktop.MouseButtonSecondary))
	tb.typed(fyne.KeyPageDown, fyne.KeyReturn)
	tb.writeIn("the street comes back")
	for _, word := range []string{"twice?", "twice"} {
		tb.nextField()
		tb.writeIn(word)
	}
	tb.typed(fyne.KeyReturn)
	want := pagemodel.Reply{Round: l.round, Key: reply().Key, State: pagemodel.Queried, Whose: pagemodel.Printers,
		Reason: "the street comes back", Question: "twice?", Answer: "twice"}
	if got := reply(); got != want {
		t.Errorf("noted is %+v, want %+v", got, want)
	}
	if under := l.rows.rows[0].under; !strings.Contains(under, "twice?") {
		t.Errorf("the row says %q", under)
	}
	tb.typed(fyne.KeyEscape)
	for range 3 {
		tb.chord(&fyne.ShortcutUndo{})
	}
	if got := tb.w.session.Collection().Reply(l.round, want.Key); got != (pagemodel.Reply{Round: l.round, Key: want.Key}) {
		t.Errorf("undone, noted is still %+v", got)
	}
}

// nextField gives the keys to the next field of the panel.
func (tb *table) nextField() {
	c := tb.w.win.Canvas()
	for c.FocusNext(); ; c.FocusNext() {
		if _, ok := c.Focused().(*field); ok {
			return
		}
	}
}

// TestReasonsSayWhetherTheyGoOut: the list has those, too, that stay here.
func TestReasonsSayWhetherTheyGoOut(t *testing.T) {
	tb := corrected(t)
	tb.chord(key(ctrlShift, fyne.KeyR))
	l := tb.corrections()
	for shown, want := range map[bool]string{false: "reason, private: “for the ear”", true: "reason, shown: “for the ear”"} {
		tb.chordOnTop(key(ctrl, fyne.KeyReturn))
		tb.typed(fyne.KeyPageDown, fyne.KeyReturn)
		tb.writeIn("for the ear")
		tb.w.win.Canvas().FocusNext()
		if may := tb.w.win.Canvas().Focused().(*widget.Check); may.Checked != shown {
			may.TypedRune(' ')
		}
		tb.nextField()
		tb.typed(fyne.KeyReturn)
		if got := l.rows.rows[0].under; !strings.Contains(got, want) {
			t.Errorf("the row says %q, want %q in it", got, want)
		}
	}
}

// TestAnEarlierRound: its corrections go up to the round after it.
func TestAnEarlierRound(t *testing.T) {
	tb := corrected(t)
	tb.markSent()
	tb.keys(fyne.KeyDown)
	tb.append(" And more.")
	tb.chord(key(ctrlShift, fyne.KeyR))
	if l := tb.corrections(); len(l.list.All) != 1 || l.list.Until != "" {
		t.Fatalf("since the last round there are %d, until %q", len(l.list.All), l.list.Until)
	}
	tb.chordOnTop(key(ctrlShift, fyne.KeyR))
	tb.writeIn("copy", fyne.KeyReturn)
	if l := tb.corrections(); len(l.list.All) != 2 || l.list.Until != "first proofs" {
		t.Errorf("of the first round there are %d, until %q", len(l.list.All), l.list.Until)
	}
}

// TestCorrectionsGoOut in every way that is offered.
func TestCorrectionsGoOut(t *testing.T) {
	tb := corrected(t)
	folder := t.TempDir()
	begins := map[string]string{".pdf": "%PDF-", ".docx": "PK", ".odt": "PK"}
	for _, tc := range []struct{ command, way, name string }{
		{"Export Marked Proof…", "", "marked.pdf"},
		{"Export Corrections…", "pdf", "list.pdf"},
		{"Export Corrections…", "docx", "list.docx"},
		{"Export Corrections…", "odt", "list.odt"},
		{"Export Corrections…", "csv", "list.csv"},
		{"Export Corrections…", "txt", "list.txt"},
		{"Export Revised Manuscript…", "docx poems", "new.docx"},
		{"Export Revised Manuscript…", "odt edition", "new.odt"},
		{"Export Revised Manuscript…", "md poems", "new.md"},
		{"Export Revised Manuscript…", "txt edition", "new.txt"},
	} {
		path := filepath.Join(folder, tc.name)
		tb.command(tc.command).item.Action()
		if tc.way != "" {
			tb.writeIn(tc.way, fyne.KeyReturn)
		}
		tb.writeIn(path, fyne.KeyReturn)
		tb.settle()
		for tb.overlay() != nil {
			t.Logf("%s says %q", tc.name, wordsOn(tb.overlay()))
			tb.typed(fyne.KeyEscape)
		}
		data, err := os.ReadFile(path)
		if err != nil || len(data) == 0 || !strings.HasPrefix(string(data), begins[filepath.Ext(path)]) {
			t.Errorf("%s: %v, %.20q", tc.name, err, data)
		}
	}
}
