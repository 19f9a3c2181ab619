package ui

import (
	"image"
	"path/filepath"
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/test"

	"headland/pagemodel"
	"headland/typeset"
	"headland/ui/session"
)

// table is a window with a book on its desk, and the hand and keys of whoever
// tries it.
type table struct {
	t    *testing.T
	w    *Window
	d    *desk
	held fyne.KeyModifier
	hand image.Point
	path string

	posted chan func() // what workers have handed to the window
}

// settle waits for the worker and does what it handed over.
func (tb *table) settle() {
	tb.w.worker.done.Wait()
	for {
		select {
		case f := <-tb.posted:
			f()
		default:
			return
		}
	}
}

// verses is a book of one poem: stanzas are parted by an empty line.
func verses(text string) *pagemodel.Collection {
	b := pagemodel.NewBuilder(pagemodel.About{Title: "Trial", Poet: "Nobody"}, pagemodel.DefaultDesign())
	var stanzas []pagemodel.Stanza
	for _, stanza := range strings.Split(text, "\n\n") {
		var lines []pagemodel.Line
		for _, line := range strings.Split(stanza, "\n") {
			lines = append(lines, b.Line(line))
		}
		stanzas = append(stanzas, pagemodel.NewStanza(pagemodel.Verse, lines))
	}
	b.Poem(pagemodel.PoemHead{Title: "Trial"}, []pagemodel.Part{pagemodel.NewPart("", stanzas)})
	return b.Collection()
}

// long is a line that is longer than the measure.
const long = "as if from someone telling you the truth at a wedding, and then again at the grave"

// setTable opens a window of 1400 by 900 with the book on its desk.
func setTable(t *testing.T, c *pagemodel.Collection) *table {
	t.Helper()
	path := filepath.Join(t.TempDir(), "trial.headland")
	s, err := session.Create(path, c)
	if err != nil {
		t.Fatal(err)
	}
	return tableFor(t, s)
}

func tableFor(t *testing.T, s *session.Session) *table {
	t.Helper()
	a := test.NewTempApp(t)
	tb := &table{t: t, posted: make(chan func(), 1000)}
	w := NewWindow(a, s, func(f func()) { tb.posted <- f }, t.TempDir())
	tb.w, tb.d = w, w.desk
	if s != nil {
		tb.path = s.Path()
	}
	w.desk.keys.source = func() fyne.KeyModifier { return tb.held }
	w.win.Resize(fyne.NewSize(1400, 900))
	t.Cleanup(func() { w.close() })
	tb.frame()
	return tb
}

// frame draws everything, as the toolkit does between two events.
func (tb *table) frame() {
	for _, r := range []struct {
		size image.Point
		draw func(w, h int) image.Image
	}{
		{tb.d.plan.ground(pagemodel.Verso, false).Size(), tb.d.drawBefore},
		{tb.d.plan.ground(pagemodel.Recto, false).Size(), tb.d.drawAfter},
		{tb.d.plan.sheets[pagemodel.Verso].seen.Size(), tb.d.drawVerso},
		{tb.d.plan.sheets[pagemodel.Recto].seen.Size(), tb.d.drawRecto},
		{tb.d.plan.headBand().Size(), tb.d.drawHead},
		{tb.d.plan.footBand().Size(), tb.d.drawFoot},
		{tb.d.peekAt().Size(), tb.d.drawPeek},
	} {
		if img := r.draw(r.size.X, r.size.Y); img.Bounds().Size() != r.size {
			tb.t.Errorf("a picture of %v pixels was asked for, and %v came", r.size, img.Bounds().Size())
		}
	}
}

func (tb *table) at(p image.Point) fyne.PointEvent {
	tb.hand = p
	pos := fyne.NewPos(float32(float64(p.X)/tb.d.plan.density), float32(float64(p.Y)/tb.d.plan.density))
	return fyne.PointEvent{Position: pos, AbsolutePosition: pos}
}

// press puts the button down.
func (tb *table) press(p image.Point) {
	tb.d.MouseMoved(&desktop.MouseEvent{PointEvent: tb.at(p)})
	tb.d.MouseDown(&desktop.MouseEvent{PointEvent: tb.at(p), Button: desktop.MouseButtonPrimary})
}

// move moves with the button down, and lets a frame pass.
func (tb *table) move(p image.Point) {
	tb.d.Dragged(&fyne.DragEvent{PointEvent: tb.at(p)})
	tb.frame()
}

// release lets the button go.
func (tb *table) release() {
	tb.d.MouseUp(&desktop.MouseEvent{PointEvent: tb.at(tb.hand), Button: desktop.MouseButtonPrimary})
	tb.d.DragEnd()
	tb.frame()
}

func (tb *table) click(p image.Point) {
	tb.press(p)
	tb.d.MouseUp(&desktop.MouseEvent{PointEvent: tb.at(p), Button: desktop.MouseButtonPrimary})
	tb.frame()
}

// keys presses keys without modifiers.
func (tb *table) keys(names ...fyne.KeyName) {
	for _, name := range names {
		tb.d.TypedKey(&fyne.KeyEvent{Name: name})
		tb.frame()
	}
}

func (tb *table) write(text string) {
	for _, r := range text {
		tb.d.TypedRune(r)
	}
	tb.frame()
}

// row finds the first row on the open pages that shows the words.
func (tb *table) row(words string) (pagemodel.Side, *typeset.Row) {
	tb.t.Helper()
	for side, s := range tb.d.plan.sheets {
		page := tb.d.page(s.number)
		for i := range page.Rows {
			if strings.Contains(rowWords(&page.Rows[i]), words) {
				return pagemodel.Side(side), &page.Rows[i]
			}
		}
	}
	tb.t.Fatalf("no row has %q on pages %v", words, tb.d.spread)
	return 0, nil
}

func rowWords(r *typeset.Row) string {
	var words strings.Builder
	for _, run := range r.Runs {
		words.WriteString(run.Text)
	}
	return words.String()
}

// ruleAt is where the hand takes the rule at the end of a row.
func (tb *table) ruleAt(words string) image.Point {
	side, r := tb.row(words)
	return tb.d.plan.fromPage(side, typeset.Point{X: r.X + r.Width, Y: r.Baseline - r.Runs[0].Size/4}).Add(image.Pt(tb.d.plan.units(ruleGap+1), 0))
}

// endOf is where the hand is at the end of a word of a row.
func (tb *table) endOf(words, word string) image.Point {
	side, r := tb.row(words)
	at := strings.Index(rowWords(r), word) + len(word) + r.Start
	return tb.d.plan.fromPage(side, typeset.Point{X: r.XAt(at), Y: r.Baseline - r.Runs[0].Size/4}).Add(image.Pt(tb.d.plan.units(ruleGap+1), 0))
}

// onWord is the middle of a word of a row.
func (tb *table) onWord(words, word string) image.Point {
	side, r := tb.row(words)
	at := strings.Index(rowWords(r), word) + r.Start
	x := (r.XAt(at) + r.XAt(at+len(word))) / 2
	return tb.d.plan.fromPage(side, typeset.Point{X: x, Y: r.Baseline - r.Runs[0].Size/4})
}

// text is the book's lines as the file has them, stanzas parted by an empty
// line.
func (tb *table) text() string { return textOf(tb.w.session.Collection()) }

func textOf(c *pagemodel.Collection) string {
	var stanzas []string
	for _, p := range c.Poems() {
		for _, part := range p.Parts() {
			for _, s := range part.Stanzas() {
				var lines []string
				for _, l := range s.Lines() {
					lines = append(lines, l.Text())
				}
				stanzas = append(stanzas, strings.Join(lines, "\n"))
			}
		}
	}
	return strings.Join(stanzas, "\n\n")
}

// wants fails unless the book holds that text.
func (tb *table) wants(text string) {
	tb.t.Helper()
	if got := tb.text(); got != text {
		tb.t.Errorf("the book holds\n%s\nwant\n%s", got, text)
	}
}

// line is a line of the book by its words.
func (tb *table) line(words string) pagemodel.Line {
	tb.t.Helper()
	for _, p := range tb.w.session.Collection().Poems() {
		for _, l := range p.Lines() {
			if strings.HasPrefix(l.Text(), words) {
				return l
			}
		}
	}
	tb.t.Fatalf("no line begins with %q", words)
	return pagemodel.Line{}
}
