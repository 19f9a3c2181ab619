package ui

import (
	"os"
	"path/filepath"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/storage"

	"headland/assets"
)

// TestSettingInAnotherFace chooses a family by keys, and undoes it.
func TestSettingInAnotherFace(t *testing.T) {
	tb := setDemo(t)
	tb.w.askFace()
	tb.writeIn("", fyne.KeyDown, fyne.KeyReturn)
	tb.frame()
	if got := tb.w.session.Collection().Design().Face; got != assets.GentiumBookPlus {
		t.Errorf("the book is set in %q", got)
	}
	data, _ := assets.FaceBytes(assets.GentiumBookPlus, false, false)
	if got := tb.d.of.Page(3).Rows[0].Runs[0].Face; string(got.Data()) != string(data) {
		t.Error("the page on the desk is not set in it")
	}
	tb.w.askFace()
	tb.writeIn("garamond", fyne.KeyReturn)
	if got := tb.w.session.Collection().Design().Face; got != assets.EBGaramond {
		t.Errorf("typed for, the face is %q", got)
	}
	tb.d.undo()
	tb.d.undo()
	if got := tb.w.session.Collection().Design().Face; got != assets.EBGaramond {
		t.Errorf("undone, the book is set in %q", got)
	}
}

// TestADroppedFaceTravelsInTheFile drops a face on the window: it is in the
// file, and the list of faces lies open.
func TestADroppedFaceTravelsInTheFile(t *testing.T) {
	tb := setTable(t, verses("a line"))
	data, _ := assets.FaceBytes(assets.GentiumBookPlus, false, true)
	path := filepath.Join(t.TempDir(), "face.ttf")
	if err := os.WriteFile(path, data, 0o644); err != nil {
		t.Fatal(err)
	}
	tb.w.dropped(fyne.Position{}, []fyne.URI{storage.NewFileURI(path)})
	if tb.overlay() == nil {
		t.Error("the faces are not shown")
	}
	if err := os.WriteFile(path, []byte("no font"), 0o644); err != nil {
		t.Fatal(err)
	}
	for tb.overlay() != nil {
		tb.w.win.Canvas().Focused().TypedKey(&fyne.KeyEvent{Name: fyne.KeyEscape})
	}
	tb.w.dropped(fyne.Position{}, []fyne.URI{storage.NewFileURI(path)})
	if tb.overlay() == nil {
		t.Error("what is no font was taken without a word")
	}
}
