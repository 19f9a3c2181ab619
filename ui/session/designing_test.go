package session

import (
	"fmt"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"headland/pagemodel"
	"headland/typeset"
)

// bookOf is a session on a new book of so many poems of 25 lines, no two lines
// alike.
func bookOf(t testing.TB, poems int) *Session {
	t.Helper()
	b := pagemodel.NewBuilder(pagemodel.About{Title: "The Night Batch"}, pagemodel.DefaultDesign())
	for i := range poems {
		var stanzas []pagemodel.Stanza
		for s := range 5 {
			var lines []pagemodel.Line
			for l := range 5 {
				lines = append(lines, b.Line(fmt.Sprintf("the %d of %d went in at ten to %d, and the street slept on", l+1, s+1, i+1)))
			}
			stanzas = append(stanzas, pagemodel.NewStanza(pagemodel.Verse, lines))
		}
		b.Poem(pagemodel.PoemHead{Title: fmt.Sprint("Batch ", i+1)}, []pagemodel.Part{pagemodel.NewPart("", stanzas)})
	}
	s, err := Create(filepath.Join(t.TempDir(), "batch.headland"), b.Collection())
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { _ = s.Close() })
	return s
}

// designing begins to try designs out.
func designing(t testing.TB, s *Session) *Designing {
	t.Helper()
	d, err := s.Designing()
	if err != nil {
		t.Fatal(err)
	}
	return d
}

// try tries a design and fails where it is refused.
func try(t testing.TB, d *Designing, change func(*pagemodel.Design)) *Whole {
	t.Helper()
	design := d.Tried()
	change(&design)
	w, err := d.Try(design)
	if err != nil {
		t.Fatal(err)
	}
	return w
}

func larger(d *pagemodel.Design) { d.Size, d.Leading = pagemodel.Pt(13), pagemodel.Pt(16) }

// rowsOf are the poet's lines on a page, row by row.
func rowsOf(p *typeset.Page) string {
	var b strings.Builder
	if p != nil {
		for _, r := range p.Rows {
			if r.Line != 0 {
				fmt.Fprintf(&b, "%d.%d %d-%d at %v %v\n", r.Poem, r.Line, r.Start, r.End, r.X, r.Baseline)
			}
		}
	}
	return b.String()
}

// TestGlimpse: what lies open in another design is what the whole book, set in
// it, has for the same poem: every row of it in its place.
func TestGlimpse(t *testing.T) {
	s := bookOf(t, 40)
	for _, page := range []int{1, 2, 7, 18, s.Committed().Extent()} {
		s.Show(page)
		d := designing(t, s)
		w := try(t, d, larger)
		g := d.Glimpse()
		if g == nil {
			t.Fatalf("page %d: there is no glimpse", page)
		}
		w.Set()
		if !d.Take(w) || d.Glimpse() != nil {
			t.Fatalf("page %d: the whole book was not taken", page)
		}
		number, ok := s.Setting().PageOfLine(d.anchor)
		if !ok || s.Page() != number {
			t.Errorf("page %d: the book lies open at %d, the line that lay open is on %d", page, s.Page(), number)
		}
		for side := range g.pages {
			if p := g.pages[side]; strings.Contains(rowsOf(p), fmt.Sprint(d.anchor.Poem, ".", d.anchor.Line, " ")) {
				sameRows(t, p, s.Setting().Page(number))
			}
		}
		d.Leave()
		if s.Page() != page || s.Previewing() {
			t.Errorf("left, the book lies open at %d, want %d", s.Page(), page)
		}
	}
}

// sameRows wants the poet's lines of two pages alike, from the left of the text.
func sameRows(t *testing.T, a, b *typeset.Page) {
	t.Helper()
	moved := *a
	moved.Rows = append([]typeset.Row(nil), a.Rows...)
	for i := range moved.Rows {
		moved.Rows[i].X += b.Text.X - a.Text.X
	}
	if got, want := rowsOf(&moved), rowsOf(b); got != want || got == "" {
		t.Errorf("the glimpse shows\n%s\nand the whole book\n%s", got, want)
	}
}

// TestGlimpseKeepsItsNumbers: the open pages keep the folios under which they
// are shown until it is known which they will have.
func TestGlimpseKeepsItsNumbers(t *testing.T) {
	s := bookOf(t, 40)
	s.Show(18)
	d := designing(t, s)
	try(t, d, larger)
	p := d.Glimpse().Page(pagemodel.Verso)
	last := p.Rows[len(p.Rows)-1]
	if p.Number != 18 || p.Folio != "18" || last.Role != typeset.RoleFolio || last.Runs[0].Text != "18" {
		t.Errorf("page 18 is shown as %d, with the folio %q and the words %q", p.Number, p.Folio, last.Runs[0].Text)
	}
}

// TestLatestDesignWins: a whole book that was begun before another design was
// tried is not shown.
func TestLatestDesignWins(t *testing.T) {
	s := bookOf(t, 10)
	d := designing(t, s)
	old := try(t, d, larger)
	now := try(t, d, func(d *pagemodel.Design) { d.Size = pagemodel.Pt(10) })
	old.Set()
	if d.Take(old) || s.Previewing() {
		t.Error("a design tried before another is shown")
	}
	now.Set()
	if !d.Take(now) || s.Setting().Collection().Design().Size != pagemodel.Pt(10) {
		t.Error("the design tried last is not shown")
	}
	if w := try(t, d, func(d *pagemodel.Design) { *d = s.Collection().Design() }); w != nil || s.Previewing() {
		t.Error("the committed design, tried, is not the committed book")
	}
}

// TestImpossibleDesign: what can't be set is refused in words, and the design
// before stays.
func TestImpossibleDesign(t *testing.T) {
	s := bookOf(t, 3)
	d := designing(t, s)
	try(t, d, larger)
	bad := d.Tried()
	bad.Margins.Outer = pagemodel.MM(110)
	_, err := d.Try(bad)
	refused(t, err, "four ems", "make them narrower")
	if d.Tried().Size != pagemodel.Pt(13) || d.Glimpse() == nil {
		t.Error("the last possible design is not the one tried")
	}
}

// TestCommitDesign: committed, the book is what a cold set gives, in one step
// of the history.
func TestCommitDesign(t *testing.T) {
	s := bookOf(t, 20)
	d := designing(t, s)
	w := try(t, d, larger)
	w.Set()
	d.Take(w)
	must(t, d.Commit())
	if places(s.Committed()) != cold(s.Collection()) {
		t.Error("the committed book is not what is set from nothing")
	}
	must(t, s.Undo())
	if s.Collection().Design() != pagemodel.DefaultDesign() {
		t.Error("undone, the design is not the one before")
	}
}

// TestKeepDesign: a design is kept while it is being tried, and goes on being
// tried.
func TestKeepDesign(t *testing.T) {
	s := bookOf(t, 3)
	d := designing(t, s)
	w := try(t, d, larger)
	w.Set()
	d.Take(w)
	must(t, d.Keep("large print"))
	kept := s.Collection().Designs()
	if len(kept) != 1 || kept[0].Name != "large print" || kept[0].Design.Size != pagemodel.Pt(13) {
		t.Errorf("kept: %v", kept)
	}
	if !s.Previewing() || s.Setting().Collection().Design().Size != pagemodel.Pt(13) || s.Collection().Design().Size == pagemodel.Pt(13) {
		t.Error("the design is no longer being tried")
	}
}

// BenchmarkDesign gives, for a book of 400 poems and 10,000 lines, what a change
// of the design costs before the open spread can be drawn, its pages made.
func BenchmarkDesign(b *testing.B) {
	s := bookOf(b, 400)
	s.Show(401)
	d := designing(b, s)
	for i := 0; b.Loop(); i++ {
		if _, err := d.Try(sizedBy(s, i)); err != nil || d.Glimpse() == nil {
			b.Fatal("no glimpse: ", err)
		}
	}
}

// sizedBy is the book's design in a slightly larger size.
func sizedBy(s *Session, i int) pagemodel.Design {
	design := s.Collection().Design()
	design.Size += pagemodel.Length(1 + i%60)
	return design
}

// BenchmarkDesignWhole sets that book in another design as the window has it
// set beside itself, and by turns from nothing: x_cold is the ratio of the two.
// A face that was not set with before is a cold set.
func BenchmarkDesignWhole(b *testing.B) {
	s := bookOf(b, 400)
	d := designing(b, s)
	faces := typeset.Bundled()
	var beside, cold time.Duration
	for i := 0; b.Loop(); i++ {
		w, err := d.Whole(sizedBy(s, i))
		if err != nil {
			b.Fatal(err)
		}
		beside += timeOf(w.Set)
		cold += timeOf(func() { typeset.NewSetter(faces).Set(nil, w.collection) })
	}
	b.ReportMetric(float64(beside)/float64(cold), "x_cold")
}

func timeOf(f func()) time.Duration {
	began := time.Now()
	f()
	return time.Since(began)
}

// TestGlimpseOfEverySpread opens the demo, with prelims, at each of its spreads:
// wherever a line of the poet's lies open it is in the glimpse too, and nowhere
// is anything shown that is not of the same poems or sections.
func TestGlimpseOfEverySpread(t *testing.T) {
	s, err := Demo(filepath.Join(t.TempDir(), "demo.headland"))
	must(t, err)
	defer closed(t, s)
	must(t, s.Do(pagemodel.SetMatter{Matter: pagemodel.UsualMatter()}))
	s.ClearFocus()
	seen := 0
	for page := 1; page <= s.Committed().Extent(); page += 2 {
		s.Show(page)
		d := designing(t, s)
		try(t, d, larger)
		line := fmt.Sprint(d.anchor.Poem, ".", d.anchor.Line, " ")
		g := d.Glimpse()
		switch {
		case g == nil && d.anchor.Line != 0:
			t.Errorf("page %d: there is no glimpse of line %s", page, line)
		case g == nil || d.anchor.Line == 0:
		case !strings.Contains(rowsOf(g.Page(pagemodel.Verso))+rowsOf(g.Page(pagemodel.Recto)), line):
			t.Errorf("page %d: the glimpse has no line %s", page, line)
		default:
			seen++
		}
		d.Leave()
	}
	if seen < 20 {
		t.Errorf("only %d spreads were seen", seen)
	}
}
