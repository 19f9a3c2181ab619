package ui

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/widget"
)

// wordsOn are all the words of labels on a panel.
func wordsOn(o fyne.CanvasObject) string {
	switch o := o.(type) {
	case *widget.Label:
		return o.Text
	case *widget.PopUp:
		return wordsOn(o.Content)
	case *fyne.Container:
		var all []string
		for _, in := range o.Objects {
			all = append(all, wordsOn(in))
		}
		return strings.Join(all, " ")
	}
	return ""
}

// TestADummyIsExported chooses paper and folding by a word and a key, gives a
// name, and is told how to print and fold what was written.
func TestADummyIsExported(t *testing.T) {
	for typed, want := range map[string]string{
		"": "sheet of A4", "letter": "sheet of Letter",
	} {
		tb := setTable(t, verses(two))
		path := filepath.Join(t.TempDir(), "dummy.pdf")
		tb.w.askDummy()
		tb.writeIn(typed, fyne.KeyReturn)
		tb.writeIn(path, fyne.KeyReturn)
		tb.settle()
		if data, err := os.ReadFile(path); err != nil || !strings.HasPrefix(string(data), "%PDF-") {
			t.Fatalf("typed %q: %v, %.20q", typed, err, data)
		}
		said := wordsOn(tb.overlay())
		for _, words := range []string{want, "both sides", "short edge", "pages at 100 per cent"} {
			if !strings.Contains(said, words) {
				t.Errorf("typed %q: it says %q, want %q in it", typed, said, words)
			}
		}
	}
}

// TestPagesWithMarksAreExported sees that the paper of pages with crop marks is
// larger than that of pages without.
func TestPagesWithMarksAreExported(t *testing.T) {
	tb := setTable(t, verses(two))
	folder := t.TempDir()
	var boxes []string
	for name, ask := range map[string]func(){"plain.pdf": tb.w.askPDF, "marks.pdf": tb.w.askPDFMarks} {
		ask()
		tb.writeIn(filepath.Join(folder, name), fyne.KeyReturn)
		tb.settle()
		data, err := os.ReadFile(filepath.Join(folder, name))
		if err != nil {
			t.Fatal(err)
		}
		_, after, _ := strings.Cut(string(data), "/MediaBox ")
		box, _, _ := strings.Cut(after, "]")
		boxes = append(boxes, box)
	}
	if boxes[0] == boxes[1] || boxes[0] == "" {
		t.Errorf("the papers are %q", boxes)
	}
}
