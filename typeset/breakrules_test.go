package typeset

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"headland/pagemodel"
)

// depthOf is a design whose pages have so many rows; a poem without a title
// begins on row sink.
func depthOf(rows, sink int) pagemodel.Design {
	d := testDesign()
	d.TitleRow, d.PoemRow = sink-1, sink
	d.Margins.Head, d.Margins.Foot = 0, 0
	d.Trim.Height = d.Size + Length(rows-1)*d.Leading
	return d
}

// piecesOf is how many of a poem's lines each of its pages has.
func piecesOf(s *Setting, entry int) []int {
	var pieces []int
	id := s.source(int32(entry)).Poem.ID()
	for n := 1; n <= s.Extent(); n++ {
		lines := map[pagemodel.LineID]bool{}
		for _, r := range s.Page(n).Rows {
			if r.Line != 0 && r.Poem == id {
				lines[r.Line] = true
			}
		}
		if len(lines) > 0 {
			pieces = append(pieces, len(lines))
		}
	}
	return pieces
}

// TestFitFormula: q stanzas of s lines with one blank between fit a page of A
// lines where q = floor((A+1)/(s+1)); for A = 24: couplets 8, tercets 6,
// quatrains 5, sestets 3, octaves 2, sonnets 1 (arithmetic, no source needed).
func TestFitFormula(t *testing.T) {
	for length, q := range map[int]int{2: 8, 3: 6, 4: 5, 6: 3, 8: 2, 14: 1} {
		stanzas := slices.Repeat([]int{length}, 3*q)
		s := setOf(bookShaped(depthOf(26, 3), shape{stanzas: stanzas})) // 24 rows below the sink
		if got := piecesOf(s, 0)[0]; got != q*length {
			t.Errorf("stanzas of %d: the first page has %d lines, want %d stanzas of them", length, got, q)
		}
	}
}

// TestThreeLinesLeft: behind three sestets and a blank three of 24 lines are left.
// A fourth goes 3+3 there, where it must be parted (Brossard 158): 4+2 has no room,
// and 2+4 would leave a row empty.
func TestThreeLinesLeft(t *testing.T) {
	c := bookShaped(depthOf(26, 3), shape{stanzas: []int{6, 6, 6, 6}})
	p := c.Order()[0].Poem
	for stanza := range 3 { // no page may end between them
		above, below := p.Line(pagemodel.Place{Stanza: stanza, Line: 5}), p.Line(pagemodel.Place{Stanza: stanza + 1})
		c = mustApply(t, c, pagemodel.KeepTogether{LineRef: pagemodel.LineRef{Poem: p.ID(), Line: above.ID()}, Through: below.ID()})
	}
	s := setOf(c)
	if got := piecesOf(s, 0); !slices.Equal(got, []int{21, 3}) || s.Cost().AgainstRule != 0 {
		t.Errorf("pages of %v lines, cost %+v", got, s.Cost())
	}
}

// TestStanzaRules goes through the trade's rules for parting stanzas: L.-E.
// Brossard, Le Correcteur typographe II (1934), "Mise en pages", by page.
func TestStanzaRules(t *testing.T) {
	h := func(form pagemodel.Form) pagemodel.PoemHead { return pagemodel.PoemHead{Form: form} }
	for _, tc := range []struct {
		name string
		shape
		rows int
		want []int
	}{
		{"a stanza that fits a page stays whole", shape{stanzas: []int{6, 8}}, 12, []int{6, 8}},
		{"a couplet is never parted (151)", shape{stanzas: []int{2, 2, 2}}, 9, []int{4, 2}},
		{"a tercet is never split (156)", shape{stanzas: []int{3, 3, 3}}, 12, []int{6, 3}},
		{"a longer stanza than a page is parted", shape{stanzas: []int{30}}, 24, []int{22, 8}},
		{"leaving no piece of one line (158-159)", shape{stanzas: []int{23}}, 24, []int{21, 2}},
		{"declared pairs stay together (151)", shape{h(pagemodel.Couplets), []int{30}}, 23, []int{20, 10}},
		{"declared tercets stay together (156)", shape{h(pagemodel.Tercets), []int{30}}, 25, []int{21, 9}},
		{"declared quatrains stay together (152-153, 157)", shape{h(pagemodel.Quatrains), []int{32}}, 24, []int{20, 12}},
		{"a declared sestet goes 4+2 where that fills the page (158)", shape{h(pagemodel.Sestets), []int{30}}, 24, []int{22, 8}},
		{"and is not left with one line", shape{h(pagemodel.Sestets), []int{30}}, 27, []int{24, 6}},
		{"stanza-less verse has pages of a multiple of four (150)", shape{h(pagemodel.Stanzaless), []int{40}}, 24, []int{20, 20}},
		{"else of an even number", shape{h(pagemodel.Stanzaless), []int{7}}, 6, []int{4, 3}},
		{"a single line stays with the stanza above, which goes 3+3 for it", shape{stanzas: []int{6, 1, 6}}, 9, []int{3, 4, 6}},
	} {
		s := setOf(bookShaped(depthOf(tc.rows, 3), tc.shape))
		if got := piecesOf(s, 0); !slices.Equal(got, tc.want) {
			t.Errorf("%s: %d rows a page give %v, want %v", tc.name, tc.rows, got, tc.want)
		}
	}
}

// TestOrphansAndWidows holds the least piece of two lines against CSS
// Fragmentation Module Level 3, section 4.4, whose orphans and widows are both 2
// at first: of a paragraph of n lines where A are left, f = min(A, n-2) stay if
// that is 2 or more, else all go on. A stanza of verse is such a paragraph, but
// that those of two and three lines are never parted.
func TestOrphansAndWidows(t *testing.T) {
	const left = 8
	for n := 4; n <= left+2; n++ { // of more lines than a page of its own holds, other ends may be better
		want := []int{n}
		if f := min(left, n-2); n > left && f >= 2 {
			want = []int{f, n - f}
		}
		s := setOf(poemOf(depthOf(left+2, 3), "", strings.Repeat("a line\n", n)))
		if got := piecesOf(s, 0); !slices.Equal(got, want) {
			t.Errorf("%d lines where %d are left: %v, want %v", n, left, got, want)
		}
	}
}

// TestFacesItself: a poem of two pages falls on facing pages rather than over a
// turn where a poem before it can bear another page end (common practice). Blanks
// are never put in for it.
func TestFacesItself(t *testing.T) {
	d := depthOf(12, 3)
	long := shape{stanzas: []int{4, 4, 4}} // 14 rows, so two pages
	s := setOf(bookShaped(d, shape{stanzas: []int{4}}, long))
	if first, _ := s.PageOfPoem(s.collection.Order()[1].Poem.ID()); first != 2 || s.Cost().Unfaced != 0 {
		t.Errorf("it begins on page %d", first)
	}
	s = setOf(bookShaped(d, long))
	if s.Extent() != 2 || s.Cost().Unfaced != 1 {
		t.Errorf("%d pages, cost %+v: no blank may be put in unasked", s.Extent(), s.Cost())
	}
}

// TestTurnCostsMoreThanGutter: a poem that must be parted within stanzas twice
// does it once at each; and where one page end must fall within a stanza, an
// earlier poem makes way so that it falls at the gutter (common practice).
func TestTurnCostsMoreThanGutter(t *testing.T) {
	d := depthOf(12, 3)
	s := setOf(bookShaped(d, shape{stanzas: []int{3, 3}}, shape{stanzas: []int{3, 3}}, shape{stanzas: []int{16}}))
	cost := s.Cost()
	if cost.Turned != 0 || cost.Split != 1 {
		t.Errorf("cost %+v: the stanza should be parted at the gutter", cost)
	}
}

// TestPoetsWord: what the poet says is kept, whatever it costs.
func TestPoetsWord(t *testing.T) {
	d := depthOf(12, 3)
	book := bookShaped(d, shape{stanzas: []int{4, 4}}, shape{stanzas: []int{4, 1, 4}}, shape{stanzas: []int{2}})
	poem := func(i int) *pagemodel.Poem { return book.Order()[i].Poem }
	line := func(i, n int) pagemodel.LineRef {
		k := 0
		for _, l := range poem(i).Lines() {
			if k == n {
				return pagemodel.LineRef{Poem: poem(i).ID(), Line: l.ID()}
			}
			k++
		}
		t.Fatalf("poem %d has no line %d", i, n)
		return pagemodel.LineRef{}
	}
	for _, tc := range []struct {
		name  string
		edit  pagemodel.Edit
		poem  int
		want  []int
		first int
	}{
		{"a page begins before the third line", pagemodel.PageBreak{LineRef: line(0, 2)}, 0, []int{2, 6}, 1},
		{"a single line goes with the stanza below", pagemodel.KeepTogether{LineRef: line(1, 4), Through: line(1, 5).Line}, 1, []int{4, 5}, 2},
		{"lines are kept together", pagemodel.KeepTogether{LineRef: line(1, 3), Through: line(1, 5).Line}, 1, []int{7, 2}, 2},
		{"a poem opens on a recto", pagemodel.SetStart{Poem: poem(1).ID(), Start: pagemodel.OnRecto}, 1, []int{5, 4}, 3},
		{"a blank before", pagemodel.SetStart{Poem: poem(1).ID(), Blank: true}, 1, []int{5, 4}, 3},
		{"a poem shares the page of the one before", pagemodel.SetStart{Poem: poem(2).ID(), Start: pagemodel.SharedPage}, 2, []int{2}, 3},
		{"pages run a line long", pagemodel.SetRun{Poem: poem(1).ID(), Lines: 1}, 1, []int{9}, 2},
	} {
		s := setOf(mustApply(t, book, tc.edit))
		first, _ := s.PageOfPoem(poem(tc.poem).ID())
		if got := piecesOf(s, tc.poem); !slices.Equal(got, tc.want) || first != tc.first {
			t.Errorf("%s: %v from page %d, want %v from page %d", tc.name, got, first, tc.want, tc.first)
		}
	}
}

// drawShapes is any few poems.
func drawShapes(t *rapid.T) []shape {
	shapes := make([]shape, rapid.IntRange(1, 6).Draw(t, "poems"))
	for i := range shapes {
		shapes[i] = shape{
			pagemodel.PoemHead{
				Form:  rapid.SampledFrom(pagemodel.Forms).Draw(t, "form"),
				Start: rapid.SampledFrom([]pagemodel.Start{pagemodel.FreshPage, pagemodel.FreshPage, pagemodel.SharedPage, pagemodel.OnRecto, pagemodel.OnVerso}).Draw(t, "start"),
			},
			rapid.SliceOfN(rapid.IntRange(1, 20), 1, 6).Draw(t, "stanzas"),
		}
	}
	return shapes
}

// TestDeeperPagesAreNoWorse: one row more on every page never makes the cost
// through the pages worse, since the same page ends would still do.
func TestDeeperPagesAreNoWorse(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		shapes := drawShapes(t)
		rows := rapid.IntRange(8, 20).Draw(t, "rows")
		through := func(rows int) Cost {
			c := setOf(bookShaped(depthOf(rows, 3), shapes...)).Cost()
			return Cost{Forbidden: c.Forbidden, Turned: c.Turned, Split: c.Split, AgainstRule: c.AgainstRule, Pages: c.Pages}
		}
		if shallow, deep := through(rows), through(rows+1); deep.Compare(shallow) > 0 {
			t.Fatalf("%d rows cost %+v, %d cost %+v", rows, shallow, rows+1, deep)
		}
	})
}

// TestRectoCutsTheBook: where a poem must open on a recto, nothing behind it
// moves anything before it.
func TestRectoCutsTheBook(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		before, behind, others := drawShapes(t), drawShapes(t), drawShapes(t)
		behind[0].head.Start, others[0].head.Start = pagemodel.OnRecto, pagemodel.OnRecto
		d := depthOf(rapid.IntRange(8, 20).Draw(t, "rows"), 3)
		a, b := setOf(bookShaped(d, slices.Concat(before, behind)...)), setOf(bookShaped(d, slices.Concat(before, others)...))
		for i := range before {
			id := a.collection.Order()[i].Poem.ID()
			pageA, _ := a.PageOfPoem(id)
			pageB, _ := b.PageOfPoem(id)
			if pageA != pageB || !slices.Equal(piecesOf(a, i), piecesOf(b, i)) {
				t.Fatalf("poem %d: %v from page %d, and with other poems behind the recto %v from page %d", i+1, piecesOf(a, i), pageA, piecesOf(b, i), pageB)
			}
		}
	})
}

// TestNothingHangsAndNothingIsLost: poems and designs beyond all reason are set,
// every line once and in order, and what is wrong is named.
func TestNothingHangsAndNothingIsLost(t *testing.T) {
	narrow := testDesign()
	narrow.Margins.Outer = narrow.Trim.Width - narrow.Margins.Inner - 4*narrow.Size
	shallow := depthOf(9, 6)
	for _, d := range []pagemodel.Design{narrow, shallow} {
		if err := d.Check(); err != nil && d == narrow {
			t.Fatal(err)
		}
	}
	empty := make([]shape, 1000)
	for i := range empty {
		if i%2 == 0 { // and every other without so much as a title
			empty[i] = shape{head: pagemodel.PoemHead{Title: fmt.Sprint("Empty ", i)}}
		}
	}
	for _, tc := range []struct {
		name  string
		book  *pagemodel.Collection
		fault FaultKind
	}{
		{"a hundred pages of one stanza", bookShaped(shallow, shape{stanzas: []int{900}}), TurnedStanza},
		{"a hundred pages of stanzas", bookShaped(shallow, shape{stanzas: slices.Repeat([]int{4, 3}, 130)}), HiddenBreak},
		{"a thousand empty poems", bookShaped(testDesign(), empty...), StrandedTitle},
		{"a measure narrower than a word", poemOf(narrow, "", "an extraordinarily uncharacteristic incomprehensibility"), OverMeasure},
		{"a line deeper than a page", poemOf(shallow, "", strings.Repeat("many words of one line ", 200)+"\na second line"), PartedLine},
		{"a title deeper than a page", poemOf(shallow, strings.Repeat("many words of a title ", 60), "a line\nand another"), StrandedTitle},
	} {
		s := setOf(tc.book)
		want := tc.book.Order()
		var lines []pagemodel.LineID
		for _, e := range want {
			for _, l := range e.Poem.Lines() {
				lines = append(lines, l.ID())
			}
		}
		var got []pagemodel.LineID
		for n := 1; n <= s.Extent(); n++ {
			for _, r := range s.Page(n).Rows {
				if r.Line != 0 && (len(got) == 0 || got[len(got)-1] != r.Line) {
					got = append(got, r.Line)
				}
			}
		}
		if !slices.Equal(got, lines) {
			t.Errorf("%s: %d of %d lines stand, or in another order", tc.name, len(got), len(lines))
		}
		named := slices.ContainsFunc(s.Faults(), func(f Fault) bool { return f.Kind == tc.fault })
		if !named {
			t.Errorf("%s: no %s among %d faults", tc.name, tc.fault, len(s.Faults()))
		}
	}
}
