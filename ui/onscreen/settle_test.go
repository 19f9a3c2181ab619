package onscreen

import (
	"image"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"github.com/jezek/xgb/xproto"

	"headland/pagemodel"
	"headland/typeset"
	"headland/ui/session"
)

// most is how many gestures settling one line may take: going to it, and all that
// is pressed until it is settled.
const most = 6

// settling is a walk from unsettled lines to a marked proof and a list.
type settling struct {
	*screen
	t        *testing.T
	home     string
	path     string
	edits    int // in the file
	gestures int // since the last line was settled
}

// byKey presses a key with others held, one gesture.
func (w *settling) byKey(sym xproto.Keysym, held ...xproto.Keysym) {
	w.gestures++
	w.key(w.t, sym, held...)
}

// click presses the mouse's button once, one gesture.
func (w *settling) click(at image.Point) {
	w.gestures++
	w.move(at)
	w.press()
	w.release()
}

// look is the book as its file has it now.
func (w *settling) look() *book {
	w.t.Helper()
	s, err := session.Open(w.path)
	if err != nil {
		w.t.Fatal(err)
	}
	defer s.Close()
	return &book{path: w.path, set: s.Committed()}
}

// settled waits for the next edit and holds that it settled the line, within the
// gestures that it may take.
func (w *settling) settled(ref pagemodel.LineRef) {
	w.t.Helper()
	w.edits++
	e := waitForEdit(w.t, w.path, w.edits)
	if state := stateOf(w.look().set, ref); state == pagemodel.Unsettled {
		w.t.Fatalf("after %s %s the line %d is still unsettled", e.kind, e.args, ref.Line)
	}
	if w.gestures > most {
		w.t.Errorf("line %d took %d gestures, at most %d are wanted", ref.Line, w.gestures, most)
	}
	w.gestures = 0
}

// stateOf is the state of a line in a setting, settled where it no longer exceeds
// its room.
func stateOf(set *typeset.Setting, ref pagemodel.LineRef) pagemodel.State {
	for _, o := range set.Turnovers() {
		if o.Ref == ref {
			return o.State
		}
	}
	return pagemodel.Kept
}

// unsettled are the lines of a book that nobody has settled.
func unsettled(b *book) []pagemodel.LineRef {
	var refs []pagemodel.LineRef
	for _, o := range b.set.Turnovers() {
		if o.State == pagemodel.Unsettled {
			refs = append(refs, o.Ref)
		}
	}
	return refs
}

// beginSettling starts the program on the demo, whose ten lines are unsettled.
func beginSettling(t *testing.T) (w *settling, p *program, lines []pagemodel.LineRef) {
	t.Helper()
	s, home := openScreen(t), t.TempDir()
	b := demoBook(t, home)
	p = start(t, s, home, headland, b.path)
	b.find(t, s)
	lines = unsettled(b)
	if len(lines) != 10 {
		t.Fatalf("the demo has %d unsettled lines, the walk is for ten", len(lines))
	}
	return &settling{screen: s, t: t, home: home, path: b.path}, p, lines
}

// wentOut holds that the book has gone out.
func (w *settling) wentOut() {
	w.t.Helper()
	w.edits++
	if e := waitForEdit(w.t, w.path, w.edits); e.kind != "mark-sent" {
		w.t.Fatalf("the edit is %s %s, want mark-sent", e.kind, e.args)
	}
	w.gestures = 0
}

// out waits for a file of that kind to be written, and is its text as another
// program reads it.
func (w *settling) out(kind, program string, args ...string) string {
	w.t.Helper()
	var found []string
	eventually(w.t, "a "+kind+" file", func() bool {
		found, _ = filepath.Glob(filepath.Join(w.home, "*"+kind))
		return len(found) > 0
	})
	for i := range args {
		args[i] = strings.Replace(args[i], "FILE", found[0], 1)
	}
	read, err := exec.Command(program, args...).Output()
	if err != nil {
		w.t.Fatalf("%s %v: %v (make setup-test installs what is missing)", program, args, err)
	}
	return string(read)
}

// checkOut holds that the marked proof has every page that went out and numbers
// every correction, and that the list names them all.
func (w *settling) checkOut() {
	w.t.Helper()
	s, err := session.Open(w.path)
	if err != nil {
		w.t.Fatal(err)
	}
	defer s.Close()
	round, ok := s.LastRound()
	if !ok {
		w.t.Fatal("no round is in the file")
	}
	list, err := s.Corrections(round.ID)
	if err != nil {
		w.t.Fatal(err)
	}
	if len(list.All) < 5 {
		w.t.Errorf("there are %d corrections, the walk makes more", len(list.All))
	}
	sent, _ := s.LastSent()
	proof := w.out(".pdf", "pdftotext", "-layout", "FILE", "-")
	if pages := strings.Count(proof, "\f"); pages != sent.Setting.Extent() {
		w.t.Errorf("the proof has %d pages, %d went out", pages, sent.Setting.Extent())
	}
	read := w.out(".docx", "pandoc", "-t", "plain", "--columns=300", "FILE")
	for _, c := range list.All {
		if !strings.Contains(read, c.Title) || !strings.Contains(read, string(c.Change.Kind)) {
			w.t.Errorf("the list does not tell of correction %d, %s in %s", c.Number, c.Change.Kind, c.Title)
		}
		if !strings.Contains(proof, string(c.Whose)) {
			w.t.Errorf("the proof does not say %s", c.Whose)
		}
	}
}

// undoAll takes everything back and holds that the book is as it came.
func (w *settling) undoAll(undo func(), lines []pagemodel.LineRef) {
	w.t.Helper()
	edits, _ := history(w.t, w.path)
	first := edits[0].parent
	for range w.edits {
		undo()
	}
	eventually(w.t, "all to be taken back", func() bool { _, head := history(w.t, w.path); return head == first })
	b := w.look()
	if left := unsettled(b); len(left) != len(lines) || len(b.set.Collection().Rounds()) > 0 {
		w.t.Errorf("undone, %d lines are unsettled and %d rounds have gone out; want %d and none", len(left), len(b.set.Collection().Rounds()), len(lines))
	}
}

// TestTenLinesByKeys settles every line of the demo by keys alone, in four ways in
// turn, exports a marked proof and a list, and takes all of it back.
func TestTenLinesByKeys(t *testing.T) {
	w, p, lines := beginSettling(t)
	w.byKey('t', keyCtrl, keyShift)
	w.byKey(keyReturn)
	w.wentOut()
	ways := []func(){
		func() { w.byKey('k', keyCtrl) },                                                    // let it turn
		func() { w.leafByOverrun(); w.byKey(keyDown); w.byKey(keyReturn) },                  // a break where the last was taken: in the poem, then in this edition
		func() { w.leafByOverrun(); w.byKey(keyDown); w.byKey(keyTab); w.byKey(keyReturn) }, // in the other: this edition, then the poem
		func() { w.byKey(keyRight); w.byKey(keyRight); w.byKey('t', keyCtrl) },              // turn at the word at hand
	}
	for i, ref := range lines {
		if i > 0 {
			w.byKey(keyDown, keyCtrl)
		}
		ways[i%len(ways)]()
		w.settled(ref)
	}
	w.byKey('p', keyCtrl)
	w.byKey(keyReturn)
	w.out(".pdf", "true")
	w.byKey('r', keyCtrl, keyShift)
	w.byKey('e', keyCtrl)
	w.byKey(keyDown)
	w.byKey(keyReturn)
	w.byKey(keyReturn)
	w.checkOut()
	w.undoAll(func() { w.byKey(keyZ, keyCtrl) }, lines)
	p.quit(t)
}

// leafByOverrun lays out the choices, those first that overrun least.
func (w *settling) leafByOverrun() {
	w.byKey('c', keyCtrl, keyShift)
	w.byKey('o', keyCtrl, keyShift)
}

// Where the window of 1400 by 900 pixels has what the mouse presses, in pixels.
var (
	unsettledWords   = image.Pt(60, 867) // the words that count the lines, at the foot
	roundsMenu       = image.Pt(328, 12)
	markAsSentItem   = image.Pt(360, 39)
	markedProofItem  = image.Pt(360, 152)
	correctionsItem  = image.Pt(360, 188)
	markAsSentButton = image.Pt(476, 524)
	editMenu         = image.Pt(82, 12)
	undoItem         = image.Pt(110, 39)
	exportButton     = image.Pt(418, 653)
	wordProcessorRow = image.Pt(520, 453)
)

// TestTenLinesByMouse settles every line of the demo by the mouse alone, exports a
// marked proof and a list, and takes all of it back.
func TestTenLinesByMouse(t *testing.T) {
	w, p, lines := beginSettling(t)
	w.click(roundsMenu)
	w.click(markAsSentItem)
	w.pause()
	w.click(markAsSentButton)
	w.wentOut()
	for i, ref := range lines {
		if i > 0 {
			w.click(unsettledWords)
			w.pause()
		}
		w.settleByMouse(ref)
	}
	w.click(roundsMenu)
	w.click(markedProofItem)
	w.pause()
	w.click(exportButton)
	w.out(".pdf", "true")
	w.click(roundsMenu)
	w.click(correctionsItem)
	w.pause()
	w.click(wordProcessorRow)
	w.pause()
	w.click(exportButton)
	w.checkOut()
	w.undoAll(func() { w.click(editMenu); w.click(undoItem); w.pause() }, lines)
	p.quit(t)
}

// pause waits until the screen has come to rest, as a hand does.
func (w *settling) pause() { w.settle(w.t, image.Rectangle{Max: w.size}) }

// settleByMouse presses the stroke of a line, has the choices put in the order of
// overrun and takes the first.
func (w *settling) settleByMouse(ref pagemodel.LineRef) {
	w.t.Helper()
	b := w.look()
	page, ok := b.set.PageOfLine(ref)
	if !ok {
		w.t.Fatalf("line %d is on no page", ref.Line)
	}
	l := b.find(w.t, w.screen)
	w.click(b.stroke(l, page, ref))
	w.pause()
	order, first := b.onLeaf(l, page, ref)
	w.click(order)
	w.pause()
	w.click(first)
	w.settled(ref)
}

// onLeaf is where, on the leaf of choices over the page that faces a line's, the
// words that say the order stand, and the first choice: below the first head, on
// the grid of the line's page. The leaf ends ten pixels before the gutter and
// fourteen before the page's outer edge.
func (b *book) onLeaf(l lie, page int, ref pagemodel.LineRef) (order, first image.Point) {
	side := pagemodel.SideOf(page)
	pg, leading := b.set.Page(page), b.set.Collection().Design().Leading
	row := b.rows(page, ref)[0]
	base := row.Baseline - typeset.Length(row.Grid-1)*leading
	facing, end := page-1, l.gutter-10
	if side == pagemodel.Verso {
		facing = page + 1
		end = l.at(facing, pg.Trim.Width, 0).X - 14
	}
	x := pg.Trim.Width - pg.Text.X - pg.Text.W
	first = l.at(facing, x+30*pagemodel.Point, base+leading-3*pagemodel.Point)
	return image.Pt(end-50, l.at(facing, 0, pg.Text.Y+pg.Text.H).Y+14-16), first
}
