package ui

import (
	"image"
	"strings"
	"testing"

	"fyne.io/fyne/v2"

	"headland/pagemodel"
)

// loaf is a verse of four lines to be corrected.
const loaf = "The first loaf is for nobody,\nthe second for the street,\nthe third one for the window,\nthe fourth is ours to eat."

// markSent marks the book as sent by keys, under the name proposed.
func (tb *table) markSent() {
	tb.t.Helper()
	tb.chord(key(ctrlShift, fyne.KeyT))
	tb.typed(fyne.KeyReturn)
	if tb.overlay() != nil {
		tb.t.Fatal("the book is not marked as sent")
	}
}

// append writes words at the end of the line at hand.
func (tb *table) append(words string) {
	tb.t.Helper()
	tb.keys(fyne.KeyReturn, fyne.KeyEnd)
	tb.write(words)
	tb.keys(fyne.KeyReturn)
}

// corrected is a book that went out, and in which the second and the third line
// read otherwise since.
func corrected(t *testing.T) *table {
	t.Helper()
	tb := setTable(t, verses(loaf))
	tb.markSent()
	tb.keys(fyne.KeyDown, fyne.KeyDown)
	tb.append(" again")
	tb.keys(fyne.KeyDown)
	tb.append(" too")
	return tb
}

func middle(r image.Rectangle) image.Point { return r.Min.Add(r.Max).Div(2) }

// TestMarkAsSent proposes the usual name, takes another, refuses one that is
// taken with the panel still there, and can be undone.
func TestMarkAsSent(t *testing.T) {
	tb := setTable(t, verses(loaf))
	if !tb.d.plan.sliver.Empty() {
		t.Error("a sliver is seen before anything went out")
	}
	tb.chord(key(ctrlShift, fyne.KeyT))
	if f := tb.w.win.Canvas().Focused().(*field); f.Text != "copy-edit" {
		t.Errorf("the name proposed is %q", f.Text)
	}
	tb.writeIn("to the printer", fyne.KeyReturn)
	tb.frame()
	rounds := tb.w.session.Collection().Rounds()
	if len(rounds) != 1 || rounds[0].Name != "to the printer" || rounds[0].On == "" {
		t.Fatalf("the rounds are %v", rounds)
	}
	if !strings.Contains(tb.d.said, "to the printer") || !strings.Contains(tb.d.said, onDayWords(rounds[0].On)) {
		t.Errorf("the foot says %q", tb.d.said)
	}
	if at := tb.d.plan.sliver; at.Dy() < 24 || at.Dx() < 24 || at.Min.Y < tb.d.plan.sheets[pagemodel.Recto].seen.Max.Y {
		t.Errorf("the sliver lies at %v, the page at %v", at, tb.d.plan.sheets[pagemodel.Recto].seen)
	}
	tb.chord(key(ctrlShift, fyne.KeyT))
	tb.writeIn("To the Printer", fyne.KeyReturn)
	if tb.overlay() == nil || !strings.Contains(wordsOn(tb.overlay()), "another name") {
		t.Errorf("under a name that is taken the panel says %q", wordsOn(tb.overlay()))
	}
	tb.typed(fyne.KeyEscape)
	tb.chord(&fyne.ShortcutUndo{})
	if got := tb.w.session.Collection().Rounds(); len(got) != 0 || !tb.d.plan.sliver.Empty() {
		t.Errorf("after undoing, the rounds are %v and the sliver lies at %v", got, tb.d.plan.sliver)
	}
}

// TestNothingWentOut: what is about a round says so where there is none.
func TestNothingWentOut(t *testing.T) {
	tb := setTable(t, verses(loaf))
	for _, words := range []string{"Lay the Last Round Over", "Corrections…", "Export Marked Proof…", "Export Corrections…"} {
		tb.d.said = ""
		tb.command(words).item.Action()
		if tb.d.said != noRoundWords || tb.overlay() != nil {
			t.Errorf("%s: the foot says %q, and %T lies there", words, tb.d.said, tb.overlay())
		}
	}
}

// TestTheSliverCounts says in words how many corrections there are.
func TestTheSliverCounts(t *testing.T) {
	tb := corrected(t)
	tb.d.countNow()
	if got := tb.d.sinceWords(); got != "2 corrections since" {
		t.Errorf("the sliver says %q", got)
	}
	before := tb.d.drawSliver(tb.d.plan.sliver.Dx(), tb.d.plan.sliver.Dy())
	tb.chord(&fyne.ShortcutUndo{})
	tb.d.countNow()
	if got := tb.d.sinceWords(); got != "1 correction since" {
		t.Errorf("after undoing one, the sliver says %q", got)
	}
	after := tb.d.drawSliver(tb.d.plan.sliver.Dx(), tb.d.plan.sliver.Dy())
	if string(before.(*image.RGBA).Pix) == string(after.(*image.RGBA).Pix) {
		t.Error("the sliver is not drawn again")
	}
}
