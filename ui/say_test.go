package ui

import (
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"
	"fyne.io/fyne/v2/widget"
)

// spicy is a book with a word that is in no dictionary, and is guessed.
const spicy = "Cardamom in the dough, and a pinch of zogglefenn, warm."

// TestAWordIsSaid: by keys alone; kept in the file, shown when asked again, and
// taken back.
func TestAWordIsSaid(t *testing.T) {
	tb := setTable(t, verses(spicy))
	tb.keys(fyne.KeyDown, fyne.KeyRight)
	said := func() string { return tb.w.session.Collection().Spoken()["cardamom"] }
	tb.chord(key(ctrlShift, fyne.KeyH))
	if got := laid[*listing](tb).rows[0]; got.words != "Cardamom" || got.under != "the dictionary: 3 syllables, the first stressed" {
		t.Errorf("the ask shows %q, %q", got.words, got.under)
	}
	tb.writeIn("CAR-da-mom", fyne.KeyReturn)
	if said() != "CAR-da-mom" || tb.overlay() != nil {
		t.Errorf("it goes %q", said())
	}
	tb.chord(key(ctrlShift, fyne.KeyH))
	if got := laid[*listing](tb).rows[0].under; got != "you say it CAR-da-mom" {
		t.Errorf("asked again, the ask shows %q", got)
	}
	tb.writeIn("", fyne.KeyReturn)
	if said() != "" {
		t.Errorf("taken back, it goes %q", said())
	}
	tb.d.undo()
	if said() != "CAR-da-mom" {
		t.Errorf("undone, it goes %q", said())
	}
}

// TestAWordThatIsGuessedIsAskedAbout where the caret is before none.
func TestAWordThatIsGuessedIsAskedAbout(t *testing.T) {
	tb := setTable(t, verses(spicy))
	tb.keys(fyne.KeyDown)
	tb.chord(key(ctrlShift, fyne.KeyH))
	got := laid[*listing](tb).rows[0]
	if got.words != "zogglefenn" || !strings.HasPrefix(got.under, "in no dictionary here · by its letters: 3 syllables") {
		t.Errorf("the ask shows %q, %q", got.words, got.under)
	}
	tb.writeIn("zog-gle-FENN", fyne.KeyReturn)
	tb.chord(key(ctrlShift, fyne.KeyH))
	if tb.overlay() != nil || tb.d.said != noWordWords {
		t.Errorf("with none guessed, the foot says %q", tb.d.said)
	}
}

// TestSyllablesAreReadAsTheyAreTyped: what can't be read says why, and Enter
// doesn't keep it.
func TestSyllablesAreReadAsTheyAreTyped(t *testing.T) {
	tb := setTable(t, verses(spicy))
	tb.keys(fyne.KeyDown, fyne.KeyRight)
	tb.chord(key(ctrlShift, fyne.KeyH))
	a := tb.sayNote()
	for typed, want := range map[string]string{
		"car-DA-MOM": "3 syllables, the second and third stressed", "CARD": "1 syllable, stressed", "card": "1 syllable, unstressed",
		"car-da": "2 syllables, none stressed", "": "Nothing said", "car--da": "\"car--da\" can't be read as syllables",
	} {
		tb.writeIn(typed)
		if got := a(); !strings.HasPrefix(got, want) {
			t.Errorf("of %q it says %q", typed, got)
		}
	}
	before := tb.w.session.Collection()
	tb.writeIn("car da", fyne.KeyReturn)
	if tb.overlay() == nil || tb.w.session.Collection() != before {
		t.Error("what can't be read is kept")
	}
	tb.typed(fyne.KeyEscape)
	if tb.overlay() != nil {
		t.Error("Escape leaves the ask")
	}
}

// TestGuessedChoicesNameTheKey: the ask comes from the leaf of choices and leads
// back to it.
func TestGuessedChoicesNameTheKey(t *testing.T) {
	tb := setTable(t, verses("as if from someone telling you of zogglefenn at a wedding, and then again at the grave"))
	tb.chord(key(ctrl, fyne.KeyDown))
	l := tb.layChoices()
	tb.typed(fyne.KeyDown)
	if help := l.help(); !strings.Contains(help, "Ctrl Shift H") {
		t.Errorf("the foot says %q", help)
	}
	tb.chordOnTop(key(ctrlShift, fyne.KeyH))
	tb.writeIn("zog-gle-FENN", fyne.KeyReturn)
	if tb.w.session.Collection().Spoken()["zogglefenn"] != "zog-gle-FENN" {
		t.Errorf("%v is said", tb.w.session.Collection().Spoken())
	}
	again := tb.choiceLeaf()
	tb.chordOnTop(key(ctrlShift, fyne.KeyH))
	if tb.choiceLeaf() != again || !strings.Contains(tb.d.said, "No word of the line is guessed") {
		t.Errorf("with none guessed, the foot says %q", tb.d.said)
	}
}

// sayNote is what the ask says of what is typed.
func (tb *table) sayNote() func() string {
	tb.t.Helper()
	labels := notesIn(tb)
	return func() string { return labels[0].Text }
}

// notesIn are the paragraphs that lie over the desk.
func notesIn(tb *table) []*widget.Label {
	var all []*widget.Label
	for _, o := range test.LaidOutObjects(tb.overlay()) {
		if l, ok := o.(*widget.Label); ok {
			all = append(all, l)
		}
	}
	return all
}
