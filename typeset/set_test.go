package typeset

import (
	"fmt"
	"reflect"
	"slices"
	"testing"

	"pgregory.net/rapid"

	"headland/pagemodel"
)

// samePages fails where two settings of one collection differ in anything
// that they say or show.
func samePages(t *rapid.T, cold, warm *Setting) {
	if cold.Extent() != warm.Extent() || cold.Cost() != warm.Cost() || cold.Unsettled() != warm.Unsettled() {
		t.Fatalf("cold: %d pages, %d unsettled; warm: %d, %d", cold.Extent(), cold.Unsettled(), warm.Extent(), warm.Unsettled())
	}
	for n := 1; n <= cold.Extent(); n++ {
		if a, b := cold.Page(n), warm.Page(n); !reflect.DeepEqual(a, b) {
			t.Fatalf("page %d:\ncold %s\nwarm %s", n, describe(a), describe(b))
		}
		if cold.UnsettledOn(n) != warm.UnsettledOn(n) || cold.FaultsOn(n) != warm.FaultsOn(n) {
			t.Fatalf("page %d: other counts", n)
		}
	}
	if !reflect.DeepEqual(cold.Decisions(), warm.Decisions()) {
		t.Fatal("decisions differ")
	}
	if !reflect.DeepEqual(cold.Turnovers(), warm.Turnovers()) || !reflect.DeepEqual(cold.Faults(), warm.Faults()) || !reflect.DeepEqual(cold.Contents(), warm.Contents()) {
		t.Fatal("turnovers, faults or contents differ")
	}
}

func describe(p *Page) string {
	s := fmt.Sprintf("%v %q", p.Side, p.Folio)
	for _, r := range p.Rows {
		s += fmt.Sprintf("\n%2d %v %v %v+%v %q", r.Grid, r.Role, r.Turn, r.X, r.Width, rowText(&r))
	}
	return s
}

// smallBook is a book with all that the setting knows: sections, titles, long
// lines, indents, gaps, parts, prose, and a poem longer than a page.
func smallBook() *pagemodel.Collection {
	b := pagemodel.NewBuilder(pagemodel.About{Title: "Book"}, testDesign())
	lines := lineList(90)
	next := 0
	take := func(n int) []pagemodel.Line {
		var taken []pagemodel.Line
		for range n {
			taken = append(taken, b.Line(lines[next]))
			next++
		}
		return taken
	}
	verse := func(n int) pagemodel.Stanza { return pagemodel.NewStanza(pagemodel.Verse, take(n)) }
	b.Section("One", []string{"a saying", "— somebody"})
	b.Poem(pagemodel.PoemHead{Title: "Short", Dedication: "for you"}, []pagemodel.Part{pagemodel.NewPart("", []pagemodel.Stanza{verse(3), verse(1), verse(4)})})
	b.Poem(pagemodel.PoemHead{}, []pagemodel.Part{pagemodel.NewPart("1", []pagemodel.Stanza{verse(6)}), pagemodel.NewPart("*", []pagemodel.Stanza{verse(20), verse(12)})})
	b.Section("Two", nil)
	b.Poem(pagemodel.PoemHead{Title: "Prose", Place: "a shop, in June", Start: pagemodel.OnVerso}, []pagemodel.Part{pagemodel.NewPart("", []pagemodel.Stanza{pagemodel.NewStanza(pagemodel.Prose, take(2)), verse(3)})})
	b.Poem(pagemodel.PoemHead{Title: "Long"}, []pagemodel.Part{pagemodel.NewPart("", []pagemodel.Stanza{verse(36)})})
	return b.Collection()
}

// drawEdit is an edit of any line, or of the design or the order.
func drawEdit(t *rapid.T, c *pagemodel.Collection) pagemodel.Edit {
	var refs []pagemodel.LineRef
	var poems []pagemodel.PoemID
	texts := map[pagemodel.LineRef]string{}
	for _, p := range c.Poems() {
		poems = append(poems, p.ID())
		for _, l := range p.Lines() {
			ref := pagemodel.LineRef{Poem: p.ID(), Line: l.ID()}
			refs, texts[ref] = append(refs, ref), l.Text()
		}
	}
	ref := rapid.SampledFrom(refs).Draw(t, "line")
	words := pagemodel.Words(texts[ref])
	at := rapid.SampledFrom(words).Draw(t, "word").Start
	d := c.Design()
	d.Size = pagemodel.Pt(float64(rapid.IntRange(20, 24).Draw(t, "size")) / 2)
	d.Turnovers = pagemodel.TurnoverStyle(rapid.IntRange(0, 1).Draw(t, "style"))
	d.HangQuotes = rapid.Bool().Draw(t, "hang")
	d.Hidden = pagemodel.HiddenBreaks(rapid.IntRange(0, 2).Draw(t, "hidden"))
	d.Edge = pagemodel.Edge(rapid.IntRange(0, 3).Draw(t, "edge"))
	d.Running = pagemodel.RunningHeads(rapid.IntRange(0, 3).Draw(t, "running heads"))
	other := rapid.SampledFrom(refs).Draw(t, "other line")
	start := pagemodel.Start(rapid.IntRange(0, 4).Draw(t, "start"))
	p, _, _ := c.Poem(ref.Poem)
	h := p.Head()
	h.Size = rapid.SampledFrom([]pagemodel.Length{0, pagemodel.Pt(9)}).Draw(t, "poem's size")
	h.Edge, h.Lie = pagemodel.EdgeCentre, rapid.SampledFrom([]pagemodel.Lie{pagemodel.Upright, pagemodel.Turned}).Draw(t, "lie")
	h.Title = rapid.SampledFrom([]string{"", "Another", h.Title}).Draw(t, "title")
	return rapid.SampledFrom([]pagemodel.Edit{
		pagemodel.Break{LineRef: ref, At: at}, pagemodel.Break{LineRef: ref, At: at, In: pagemodel.InEdition},
		pagemodel.Join{LineRef: ref}, pagemodel.Carry{LineRef: ref, Count: rapid.IntRange(-3, 3).Draw(t, "count")},
		pagemodel.Keep{LineRef: ref, Turns: []int{at}}, pagemodel.Keep{LineRef: ref}, pagemodel.Keep{LineRef: ref, Turned: "and"}, pagemodel.Unsettle{LineRef: ref},
		pagemodel.Indent{LineRef: ref, To: pagemodel.Ems(4)}, pagemodel.SetGap{LineRef: ref, At: at, Width: pagemodel.Ems(1.5)},
		pagemodel.Drop{LineRef: ref, Dropped: true}, pagemodel.SetAbove{LineRef: ref, Lines: rapid.IntRange(0, 9).Draw(t, "white")}, pagemodel.SetRange{LineRef: ref, To: pagemodel.RangeRight},
		pagemodel.Restyle{LineRef: ref, Start: at, End: len(texts[ref]), Style: pagemodel.Italic},
		pagemodel.Restyle{LineRef: ref, Start: at, End: len(texts[ref]), Style: pagemodel.SmallCaps},
		pagemodel.Retype{LineRef: ref, Text: texts[ref] + " and more"}, pagemodel.StanzaBreak{LineRef: ref, Open: true},
		pagemodel.StanzaBreak{LineRef: ref}, pagemodel.SetDesign{Design: d},
		pagemodel.KeepTogether{LineRef: ref, Through: other.Line}, pagemodel.PageBreak{LineRef: ref}, pagemodel.PageBreak{LineRef: ref, Off: true},
		pagemodel.SetStart{Poem: ref.Poem, Start: start}, pagemodel.SetStart{Poem: ref.Poem, Start: start, Blank: true},
		pagemodel.SetForm{Poem: ref.Poem, Form: rapid.SampledFrom(pagemodel.Forms).Draw(t, "form")},
		pagemodel.SetRun{Poem: ref.Poem, Lines: rapid.IntRange(-2, 2).Draw(t, "run")}, pagemodel.SetHead{Poem: ref.Poem, Head: h},
		pagemodel.SetTab{LineRef: ref, At: at, Stop: pagemodel.Ems(12)}, pagemodel.SetMatter{Matter: pagemodel.UsualMatter()}, pagemodel.SetMatter{Matter: pagemodel.Matter{Roman: true, Pages: []pagemodel.MatterPage{{Kind: pagemodel.IndexPage}}}},
		pagemodel.Move{Poem: poems[0]}, pagemodel.Move{Poem: poems[len(poems)-1], Before: poems[0]},
		drawRearrange(t, c), drawRearrange(t, c), pagemodel.KeepOrder{Name: "first"}, pagemodel.UseOrder{Name: "first"},
	}).Draw(t, "edit")
}

// drawRearrange puts the book into any order, one poem of it perhaps left out.
func drawRearrange(t *rapid.T, c *pagemodel.Collection) pagemodel.Edit {
	now := c.Arrangement()
	order := rapid.Permutation(slices.Concat(now.Order, now.LeftOut)).Draw(t, "order")
	if last := len(order) - 1; order[last] > 0 && rapid.Bool().Draw(t, "left out") {
		return pagemodel.Rearrange{Arrangement: pagemodel.Arrangement{Order: order[:last], LeftOut: order[last:]}}
	}
	return pagemodel.Rearrange{Arrangement: pagemodel.Arrangement{Order: order}}
}

// TestWarmIsCold: after every one of many random edits, setting the book on
// from the setting before gives what setting it from nothing gives, and every
// character stands once and in order.
func TestWarmIsCold(t *testing.T) {
	faces := Bundled()
	setter := NewSetter(faces)
	rapid.Check(t, func(t *rapid.T) {
		c := smallBook()
		warm := setter.Set(nil, c)
		for range rapid.IntRange(1, 8).Draw(t, "edits") {
			next, err := drawEdit(t, c).Apply(c)
			if err != nil {
				continue
			}
			c, warm = next, setter.Set(warm, next)
			samePages(t, NewSetter(faces).Set(nil, c), warm)
			allCharactersStand(t, c, warm)
		}
	})
}

// allCharactersStand holds that each line's rows hold its characters once and
// in order, with nothing but spaces between rows.
func allCharactersStand(t interface{ Fatalf(string, ...any) }, c *pagemodel.Collection, s *Setting) {
	rows := map[pagemodel.LineID][]Row{}
	for n := 1; n <= s.Extent(); n++ {
		for _, r := range s.Page(n).Rows {
			rows[r.Line] = append(rows[r.Line], r)
		}
	}
	for _, p := range c.Poems() {
		for _, l := range p.Lines() {
			lineStands(t, l, rows[l.ID()])
		}
	}
}

func lineStands(t interface{ Fatalf(string, ...any) }, l pagemodel.Line, rows []Row) {
	end := 0
	for i, r := range rows {
		if !onlySpaces(l.Text()[end:r.Start]) || r.Last != (i == len(rows)-1) {
			t.Fatalf("line %q: row %d begins at %d after %d", l.Text(), i, r.Start, end)
		}
		at := r.Start
		for _, run := range r.Runs {
			if run.Start != at || l.Text()[at:at+len(run.Text)] != run.Text {
				t.Fatalf("line %q: run %q at %d, want %d", l.Text(), run.Text, run.Start, at)
			}
			at += len(run.Text)
		}
		if end = r.End; at != end {
			t.Fatalf("line %q: runs end at %d, the row at %d", l.Text(), at, end)
		}
	}
	if len(rows) == 0 || !onlySpaces(l.Text()[end:]) {
		t.Fatalf("line %q: %d rows hold it up to %d", l.Text(), len(rows), end)
	}
}

func onlySpaces(s string) bool {
	for _, r := range s {
		if !pagemodel.IsSpace(r) {
			return false
		}
	}
	return true
}

// TestWiderNeverTurnsMore: at a wider measure no more lines turn.
func TestWiderNeverTurnsMore(t *testing.T) {
	setter := NewSetter(Bundled())
	last := 1 << 30
	for width := 180; width <= 310; width += 10 {
		c := smallBook()
		d := c.Design()
		d.Margins.Outer = d.Trim.Width - d.Margins.Inner - pagemodel.Pt(float64(width))
		s := setter.Set(nil, mustApply(t, c, pagemodel.SetDesign{Design: d}))
		if n := len(s.Turnovers()); n > last {
			t.Errorf("%d lines turn at %d pt, %d at 10 pt less", n, width, last)
		} else {
			last = n
		}
	}
}

// TestPointFindsText: a point in the middle of any word of any row finds that
// row and an offset in that word.
func TestPointFindsText(t *testing.T) {
	s := setOf(smallBook())
	for n := 1; n <= s.Extent(); n++ {
		p := s.Page(n)
		for i := range p.Rows {
			if p.Rows[i].Line != 0 {
				pointsOfRow(t, p, i)
			}
		}
	}
}

func pointsOfRow(t *testing.T, p *Page, i int) {
	r := &p.Rows[i]
	text := rowText(r)
	for _, w := range pagemodel.Words(text) {
		start, end := r.Start+w.Start, r.Start+w.End
		middle := (r.XAt(start) + r.XAt(end)) / 2
		row, offset, ok := p.At(Point{middle, r.Baseline - 100})
		if !ok || row != i || offset < start || offset > end {
			t.Errorf("page %d: the middle of %q is found at row %d offset %d", p.Number, text[w.Start:w.End], row, offset)
		}
	}
}

// TestAbsentFace: a face that is not here is a fault, said in words, and not a
// quiet substitution.
func TestAbsentFace(t *testing.T) {
	c := smallBook()
	d := c.Design()
	d.Face = "No Such Face"
	s := setOf(mustApply(t, c, pagemodel.SetDesign{Design: d}))
	faults := s.Faults()
	if s.FaceHere() || len(faults) == 0 || faults[0].Kind != AbsentFace {
		t.Errorf("faults %v, face here: %v", faults, s.FaceHere())
	}
	bold := pagemodel.Restyle{LineRef: firstLine(c), Start: 0, End: 1, Style: pagemodel.Bold}
	if faults := setOf(mustApply(t, c, bold)).Faults(); len(faults) == 0 || faults[0].Kind != AbsentFace || faults[0].Text == "" {
		t.Errorf("bold words in a family with no bold: %v", faults)
	}
}

// TestMissingGlyph: a character that the face has not is named.
func TestMissingGlyph(t *testing.T) {
	s := setOf(poemOf(testDesign(), "", "a word and 漢"))
	faults := s.Faults()
	if len(faults) != 1 || faults[0].Kind != MissingGlyph || faults[0].Page != 1 || faults[0].Row != 1 {
		t.Errorf("faults: %+v", faults)
	}
}

// FuzzLine: whatever a line holds and however narrow the page, setting it ends,
// and every character stands once and in order.
func FuzzLine(f *testing.F) {
	f.Add("a line of words — with a dash, “quotes” and a verylongwordwithnospace", 3, 10)
	f.Add("ﬁ\u0301\u200dשלום العربية\u00a0x", 0, 0)
	setter := NewSetter(Bundled())
	f.Fuzz(func(t *testing.T, text string, at, width int) {
		b := pagemodel.NewBuilder(pagemodel.About{}, testDesign())
		l := b.Line("first")
		b.Poem(pagemodel.PoemHead{}, []pagemodel.Part{pagemodel.NewPart("", []pagemodel.Stanza{pagemodel.NewStanza(pagemodel.Verse, []pagemodel.Line{l})})})
		c := b.Collection()
		d := c.Design()
		d.Margins.Outer = max(0, d.Margins.Outer+Length(width%200)*64)
		for _, e := range []pagemodel.Edit{
			pagemodel.Retype{LineRef: firstLine(c), Text: text}, pagemodel.SetDesign{Design: d},
			pagemodel.Break{LineRef: firstLine(c), At: at, In: pagemodel.InEdition}, pagemodel.Keep{LineRef: firstLine(c), Turns: []int{at}},
		} {
			if next, err := e.Apply(c); err == nil {
				c = next
			}
		}
		allCharactersStand(t, c, setter.Set(nil, c))
	})
}
