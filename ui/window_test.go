package ui

import (
	"image/color"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/storage"
)

// overlay is what lies over the desk, or nil.
func (tb *table) overlay() fyne.CanvasObject {
	return tb.w.win.Canvas().Overlays().Top()
}

// writeIn types into the field that has the keys.
func (tb *table) writeIn(text string, then ...fyne.KeyName) {
	tb.t.Helper()
	c := tb.w.win.Canvas()
	f, ok := c.Focused().(*field)
	if !ok {
		tb.t.Fatalf("%T has the keys, want a field", c.Focused())
	}
	f.SetText("")
	for _, r := range text {
		f.TypedRune(r)
	}
	for _, key := range then {
		if k := c.Focused(); k != nil {
			k.TypedKey(&fyne.KeyEvent{Name: key})
		}
	}
}

func manuscriptIn(t *testing.T, name, text string) string {
	t.Helper()
	path := filepath.Join(t.TempDir(), name)
	if err := os.WriteFile(path, []byte(text), 0o644); err != nil {
		t.Fatal(err)
	}
	return path
}

func TestShortcutsStayOutOfAnOpenPanel(t *testing.T) {
	tb := setTable(t, verses(two))
	tb.keys(fyne.KeyDown)
	tb.chord(key(ctrl, fyne.KeyG))
	if tb.overlay() == nil {
		t.Fatal("no panel")
	}
	tb.chord(key(ctrl, fyne.KeyJ)) // would join
	tb.wants(two)
	tb.writeIn("tria", fyne.KeyEscape)
	if tb.overlay() != nil {
		t.Error("Escape leaves the panel")
	}
	if tb.w.win.Canvas().Focused() != fyne.Focusable(tb.d) {
		t.Error("the desk does not have the keys again")
	}
}

func TestGoingToAPoem(t *testing.T) {
	tb := setDemo(t)
	tb.chord(key(ctrl, fyne.KeyG))
	tb.writeIn("sole", fyne.KeyReturn)
	tb.frame()
	if _, row := tb.row("Sole"); row == nil || tb.overlay() != nil {
		t.Error("the poem does not lie open")
	}
}

func TestANewCollection(t *testing.T) {
	tb := setTable(t, verses(two))
	folder := t.TempDir()
	tb.chord(key(ctrl, fyne.KeyN))
	tb.writeIn("First Things", fyne.KeyReturn)
	tb.writeIn(filepath.Join(folder, "first"), fyne.KeyReturn)
	tb.frame()
	if got := tb.w.win.Title(); got != "First Things — every line settled" {
		t.Errorf("the title is %q", got)
	}
	if _, err := os.Stat(filepath.Join(folder, "first.headland")); err != nil {
		t.Error(err)
	}
	tb.keys(fyne.KeyReturn)
	tb.write("A first line")
	tb.keys(fyne.KeyReturn)
	tb.wants("A first line")
}

func TestOpeningAndRecentFiles(t *testing.T) {
	tb := setTable(t, verses(two))
	other := setTable(t, verses("another book"))
	otherPath := other.path
	other.w.close()
	tb.w.openFile(otherPath)
	if tb.text() != "another book" {
		t.Fatalf("the desk holds %q", tb.text())
	}
	recent := tb.w.menus.recent.ChildMenu.Items
	if len(recent) != 1 || recent[0].Label != "trial" {
		t.Fatalf("recent files %v", recent)
	}
	recent[0].Action()
	tb.wants(two)
	if got := readSettings(filepath.Dir(tb.w.settings.path)).Recent; len(got) != 2 || got[0] != tb.path {
		t.Errorf("remembered %v", got)
	}
}

func TestAFileThatIsNoCollectionIsRefusedInWords(t *testing.T) {
	tb := setTable(t, verses(two))
	tb.w.openFile(manuscriptIn(t, "no.headland", "plain words"))
	if tb.overlay() == nil {
		t.Error("nothing is said")
	}
	tb.wants(two)
}

func TestDroppedFiles(t *testing.T) {
	tb := setTable(t, verses(two))
	path := manuscriptIn(t, "leaves.md", "# Leaves\n\n## One\n\nfirst line\nsecond line\n")
	tb.w.dropped(fyne.Position{}, []fyne.URI{storage.NewFileURI(path)})
	if !strings.Contains(tb.text(), "first line\nsecond line") {
		t.Errorf("the desk holds %q", tb.text())
	}
	if got := tb.w.session.Name(); got != "leaves.headland" {
		t.Errorf("the book is %s", got)
	}
	for tb.overlay() != nil {
		tb.w.win.Canvas().Focused().TypedKey(&fyne.KeyEvent{Name: fyne.KeyEscape})
	}
	tb.w.dropped(fyne.Position{}, []fyne.URI{storage.NewFileURI(path)})
	if got := tb.w.session.Name(); got != "leaves 2.headland" || !strings.Contains(tb.d.said, "leaves 2") {
		t.Errorf("the second book is %s, and the foot says %q", got, tb.d.said)
	}
	for tb.overlay() != nil {
		tb.w.win.Canvas().Focused().TypedKey(&fyne.KeyEvent{Name: fyne.KeyEscape})
	}
	tb.w.dropped(fyne.Position{}, []fyne.URI{storage.NewFileURI(tb.path)})
	tb.wants(two)
}

func TestAddingAManuscriptIsOneEdit(t *testing.T) {
	tb := setTable(t, verses(two))
	tb.w.addManuscripts([]string{manuscriptIn(t, "more.txt", "one more line\nand another\n")})
	if !strings.HasPrefix(tb.text(), two+"\n\n") {
		t.Errorf("the book holds %q", tb.text())
	}
	tb.d.undo()
	tb.wants(two)
}

func TestExports(t *testing.T) {
	tb := setTable(t, verses(two))
	folder := t.TempDir()
	for _, try := range []struct {
		ask  func()
		name string
	}{
		{tb.w.askPDF, "a.pdf"}, {tb.w.askPDFSpreads, "b.pdf"}, {tb.w.askPictures, "pictures"},
		{tb.w.askManuscript, "a.md"}, {tb.w.askEdition, "b.txt"}, {tb.w.askCopy, "copy.headland"},
	} {
		try.ask()
		tb.writeIn(filepath.Join(folder, try.name), fyne.KeyReturn)
		tb.settle()
		if _, err := os.Stat(filepath.Join(folder, try.name)); err != nil {
			t.Error(err)
		}
		for tb.overlay() != nil {
			tb.w.win.Canvas().Focused().TypedKey(&fyne.KeyEvent{Name: fyne.KeyEscape})
		}
	}
}

func TestAnExportReplacesOnlyWhenToldTwice(t *testing.T) {
	tb := setTable(t, verses(two))
	path := manuscriptIn(t, "taken.md", "mine")
	tb.w.askManuscript()
	tb.writeIn(path, fyne.KeyReturn)
	if data, _ := os.ReadFile(path); string(data) != "mine" {
		t.Fatal("replaced at once")
	}
	if note := tb.w.chooser.note.Text; !strings.Contains(note, "again") {
		t.Errorf("the chooser says %q", note)
	}
	tb.w.win.Canvas().Focused().TypedKey(&fyne.KeyEvent{Name: fyne.KeyReturn})
	if data, _ := os.ReadFile(path); !strings.Contains(string(data), "I was cold once.") {
		t.Errorf("the file holds %q", data)
	}
}

func TestTheLightIsRemembered(t *testing.T) {
	tb := setTable(t, verses(two))
	was := tb.d.light
	tb.w.otherLight()
	tb.frame()
	if tb.d.light == was {
		t.Error("the light is as it was")
	}
	if got := readSettings(filepath.Dir(tb.w.settings.path)).Light; got != tb.d.light.String() {
		t.Errorf("remembered %q", got)
	}
	if want := tb.d.light.palette().desk; tb.w.app.Settings().Theme().Color("background", 0) != color.Color(windowGround{want}) {
		t.Error("menus do not follow")
	}
}

func TestDamagedSettingsAreAsIfNeverWritten(t *testing.T) {
	folder := t.TempDir()
	if err := os.WriteFile(filepath.Join(folder, "window.json"), []byte(`{"recent": 7`), 0o644); err != nil {
		t.Fatal(err)
	}
	s := readSettings(folder)
	s.opened("/a/b.headland")
	if err := s.write(); err != nil {
		t.Fatal(err)
	}
	if got := readSettings(folder).Recent; len(got) != 1 || got[0] != "/a/b.headland" {
		t.Errorf("recent %v", got)
	}
}

func TestALinesMenu(t *testing.T) {
	tb := setTable(t, verses(two+"\n"+long))
	var asked lineMenu
	tb.d.ask = func(m lineMenu) { asked = m }
	tb.d.MouseDown(rightButton(tb.at(tb.onWord("as if", "someone"))))
	var words []string
	for _, item := range asked.items {
		words = append(words, item.words)
	}
	want := "Choices…|Let the line turn: it is settled|Turn it at “someone”|Break before “someone” in the poem|" +
		"Break before “someone” in this edition|Note a reason…|Retype the line|Say how “someone” goes…|" +
		"White above it: a line more|Begin it where the line above ended|Keep its stanza whole|Begin a page with it"
	if got := strings.Join(words, "|"); got != want {
		t.Errorf("the menu says %q, want %q", got, want)
	}
	asked.items[4].act()
	if got := tb.line("as if").Breaks(); len(got) != 1 || !strings.HasPrefix(long[got[0]:], "someone") {
		t.Errorf("breaks %v", got)
	}
}

func TestAnEmptyDesk(t *testing.T) {
	tb := tableFor(t, nil)
	tb.frame()
	tb.chord(key(ctrl, fyne.KeyJ))
	tb.keys(fyne.KeyDown, fyne.KeyReturn)
	tb.chord(key(ctrl, fyne.KeyO))
	if tb.overlay() == nil {
		t.Error("nothing can be opened")
	}
}
