package ui

import (
	"path/filepath"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"

	"headland/ui/session"
)

// longBook is a window of 1400 by 900 with a book of 400 poems and 10,000 lines.
func longBook(b *testing.B) *Window {
	b.Helper()
	s, err := session.Create(filepath.Join(b.TempDir(), "batch.headland"), batches(400))
	if err != nil {
		b.Fatal(err)
	}
	w := NewWindow(test.NewTempApp(b), s, func(f func()) { f() }, b.TempDir())
	w.win.Resize(fyne.NewSize(1400, 900))
	b.Cleanup(w.close)
	return w
}

// BenchmarkHinges walks the hinges of a long book: one operation is a step and the
// frame that shows it.
func BenchmarkHinges(b *testing.B) {
	w := longBook(b)
	w.askHinges()
	v := w.win.Canvas().Overlays().Top().(*hingeView)
	for b.Loop() {
		v.choose((v.at+1)%len(v.all), 0)
		v.draw(v.view.Dx(), v.view.Dy())
	}
}

// BenchmarkEchoes walks the echoes of a long book: one operation is a step and the
// frame that shows it.
func BenchmarkEchoes(b *testing.B) {
	w := longBook(b)
	w.askEchoes()
	v := w.win.Canvas().Overlays().Top().(*echoView)
	for b.Loop() {
		v.choose((v.at + 1) % len(v.all))
		v.draw(v.view.Dx(), v.view.Dy())
	}
}
