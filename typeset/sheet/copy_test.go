package sheet

import (
	"fmt"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"headland/pagemodel"
	"headland/typeset"
)

var windows = []Format{OnWindow(1400, 900), OnWindow(1920, 1080), OnWindow(700, 500)}

// formats are papers and windows.
func formats(t *testing.T) []Format {
	all := windows
	for _, name := range Papers {
		all = append(all, paper(t, name))
	}
	return all
}

// TestEveryLineOnce sets random books: the leaves hold every line of every poem
// once, in order and whole, and nothing lies on anything else or outside the
// margins.
func TestEveryLineOnce(t *testing.T) {
	rnd := rand.New(rand.NewPCG(5, 1))
	all := formats(t)
	for n := range 18 {
		c := randomBook(rnd)
		r := readingOf(c)
		copied := copyOf(t, c, r, all[n%len(all)])
		at := 0
		for i, item := range r.Items {
			p, _, _ := c.Poem(item.Poem)
			var rows []typeset.Row
			for ; at < len(copied.Leaves) && copied.Leaves[at].Item == i; at++ {
				rows = append(rows, copied.Leaves[at].Verse...)
			}
			wantLines(t, p, rows)
		}
		if at != len(copied.Leaves) {
			t.Fatalf("book %d: %d leaves are left over", n, len(copied.Leaves)-at)
		}
		for i := range copied.Leaves {
			wantApart(t, copied, i)
		}
	}
}

// wantLines sees that rows are the poem's lines in order, each begun anew.
func wantLines(t *testing.T, p *pagemodel.Poem, rows []typeset.Row) {
	t.Helper()
	i := 0
	for _, l := range p.Lines() {
		text := ""
		for first := true; i < len(rows) && rows[i].Line == l.ID(); i, first = i+1, false {
			if (rows[i].Turn == typeset.Turnover) == first {
				t.Errorf("%q: a row begins as %v", l.Text(), rows[i].Turn)
			}
			text += " " + textOf(&rows[i])
		}
		if got := strings.Join(strings.Fields(text), " "); got != l.Text() {
			t.Errorf("the leaves say %q, want %q", got, l.Text())
		}
	}
	if i != len(rows) {
		t.Errorf("%d rows are left over", len(rows)-i)
	}
}

// wantApart sees that a leaf's rows stand one below another, inside the margins and
// above the catchword.
func wantApart(t *testing.T, c *Copy, i int) {
	t.Helper()
	l, f := &c.Leaves[i], &c.Format
	base := typeset.Length(0)
	for _, row := range l.Verse {
		if row.Baseline <= base || row.X < f.Side || row.X+row.Width > f.Trim.Width-f.Side+1 {
			t.Errorf("leaf %d: %q stands at %v, %v, %v wide", i, textOf(&row), row.X, row.Baseline, row.Width)
		}
		base = row.Baseline
	}
	if foot := f.Trim.Height - f.Foot - f.Label; base+l.Size/4 > foot {
		t.Errorf("leaf %d: the verse reaches to %v, below %v", i, base, foot)
	}
}

// TestNothingIsPartedThatFits: in random books, a poem that the smallest type lets
// stand whole stands on one leaf; others are parted between stanzas, and within one
// only where it is deeper than a leaf. How deep a poem is, is reckoned here from its
// lines and the rows that each takes, not from the units that are cut.
func TestNothingIsPartedThatFits(t *testing.T) {
	rnd := rand.New(rand.NewPCG(5, 2))
	all := formats(t)
	parted := 0
	for n := range 18 {
		c, f := randomBook(rnd), all[n%len(all)]
		copied := copyOf(t, c, readingOf(c), f)
		for i := range copied.Leaves {
			l := &copied.Leaves[i]
			p, _, _ := c.Poem(copied.Reading.Items[l.Item].Poem)
			if l.First && !l.Last {
				parted++
				if rows := rowsNeeded(c, p, &f, f.Least); rows <= f.rows(f.Least, 0) {
					t.Errorf("book %d: a poem of %d rows is parted, and a leaf has room for %d", n, rows, f.rows(f.Least, 0))
				}
			}
			if !l.Last {
				wantStanzaEnd(t, c, p, copied, i)
			}
		}
	}
	if parted == 0 {
		t.Error("no poem was deeper than a leaf: the books are too slight for this test")
	}
}

// rowsNeeded is how many rows a poem takes in a size: each line alone is set to the
// format's measure, and a row of white parts the stanzas.
func rowsNeeded(c *pagemodel.Collection, p *pagemodel.Poem, f *Format, size typeset.Length) int {
	rows := len(p.Parts()[0].Stanzas()) - 1
	for _, s := range p.Parts()[0].Stanzas() {
		rows += rowsOfStanza(c, s, f, size)
	}
	return rows
}

func rowsOfStanza(c *pagemodel.Collection, s pagemodel.Stanza, f *Format, size typeset.Length) int {
	rows := 0
	for _, l := range s.Lines() {
		d := c.Design()
		d.Trim = pagemodel.Trim{Width: f.Trim.Width, Height: pagemodel.MM(900)}
		d.Margins = pagemodel.Margins{Inner: f.Side, Outer: f.Side}
		d.Size, d.Leading = size, size
		b := pagemodel.NewBuilder(pagemodel.About{}, d)
		stanza := pagemodel.NewStanza(pagemodel.Verse, []pagemodel.Line{b.Line(l.Text())})
		b.Poem(pagemodel.PoemHead{}, []pagemodel.Part{pagemodel.NewPart("", []pagemodel.Stanza{stanza})})
		for _, row := range setter.Set(nil, b.Collection()).Page(1).Rows {
			if row.Line != 0 {
				rows++
			}
		}
	}
	return rows
}

// wantStanzaEnd sees that leaf i ends with a stanza, or within one that no leaf
// would hold.
func wantStanzaEnd(t *testing.T, c *pagemodel.Collection, p *pagemodel.Poem, copied *Copy, i int) {
	t.Helper()
	l := &copied.Leaves[i]
	last := l.Verse[len(l.Verse)-1]
	at, _ := p.Find(last.Line)
	s := p.Stanza(at)
	if at.Line == len(s.Lines())-1 {
		return
	}
	f := &copied.Format
	if rows := rowsOfStanza(c, s, f, l.Size); rows <= f.rows(l.Size, 0) {
		t.Errorf("leaf %d ends within a stanza of %d rows, and a leaf has room for %d", i, rows, f.rows(l.Size, 0))
	}
}

// TestAsLargeAsTheLongestLineAllows: short verse takes the largest type; where a
// line would turn over, type is as large as lets it stand, to half a point; a line
// that turns over in the smallest type does not hold the others back.
func TestAsLargeAsTheLongestLineAllows(t *testing.T) {
	f := paper(t, "A4")
	middling := strings.Repeat("flour and salt ", 4) + "and"
	c := book("Short\nOne loaf.", "Middling\n"+middling, "Freak\n"+middling+"\n"+strings.Repeat(middling+" ", 3))
	copied := copyOf(t, c, readingOf(c), f)
	if got := copied.Leaves[0].Size; got != f.Most {
		t.Errorf("a short line is set in %v, want %v", got, f.Most)
	}
	l := &copied.Leaves[1]
	width := l.Verse[0].Width
	if len(l.Verse) != 1 || l.Size <= f.Least || l.Size >= f.Most || width*(l.Size+sizeStep)/l.Size <= f.measure() {
		t.Errorf("a line of the measure's %v is set in %v, %v wide, in %d rows", f.measure(), l.Size, width, len(l.Verse))
	}
	freak := &copied.Leaves[2]
	if freak.Size != l.Size {
		t.Errorf("with a freakish line beside it, it is set in %v, want %v", freak.Size, l.Size)
	}
	if signs := freak.words(TurnSign); len(signs) != len(freak.Verse)-2 || len(signs) == 0 {
		t.Errorf("%d rows have %d signs of turnovers", len(freak.Verse), len(signs))
	}
	for i := range freak.Verse[2:] {
		if row := &freak.Verse[2+i]; row.X <= f.Side {
			t.Errorf("a turnover begins at %v, at the edge", row.X)
		}
	}
}

// TestSmallerToStandWhole: a poem too deep for a leaf in the largest type is set in
// a smaller one, the largest that lets it stand whole.
func TestSmallerToStandWhole(t *testing.T) {
	f := paper(t, "A4")
	c := book("Deep\n" + numbered(f.rows(f.Most, 0)+4))
	copied := copyOf(t, c, readingOf(c), f)
	l := &copied.Leaves[0]
	if len(copied.Leaves) != 1 || l.Size >= f.Most {
		t.Fatalf("it takes %d leaves in %v", len(copied.Leaves), l.Size)
	}
	if f.rows(l.Size+sizeStep, 0) >= len(l.Verse) {
		t.Errorf("it would stand whole in more than %v", l.Size)
	}
}

// TestWords: the printed page, the title on every leaf, what is said before, the
// catchword, words said otherwise and the folio.
func TestWords(t *testing.T) {
	c := book("Loaves\nOne loaf on the sill,\nthe other in the oven.", "Weights\nThe scales are fair tonight\n\n"+numbered(30), "Last\nSo that was that.")
	r := readingOf(c)
	first, _, _ := c.Poem(r.Items[0].Poem)
	r.Items[0].Before = "My grandmother baked at night."
	for _, l := range first.Lines() {
		r.Items[0].Said = append(r.Items[0].Said, pagemodel.Saying{Line: l.ID(), At: strings.Index(l.Text(), "o"), Word: "", As: "lowf"})
		break
	}
	copied := copyOf(t, c, r, paper(t, "A5"))
	leaves := copied.Leaves
	if len(leaves) < 4 {
		t.Fatalf("%d leaves", len(leaves))
	}
	for _, try := range []struct {
		leaf int
		kind Kind
		want string
	}{
		{0, Talk, "My grandmother baked at night."}, {0, Title, "Loaves"}, {0, PrintedPage, "page 1"}, {0, Catchword, "The scales are …"},
		{0, Aside, "lowf"}, {0, Folio, "1"}, {1, Title, "Weights"}, {1, PrintedPage, "page 2"}, {2, Title, "Weights"},
		{len(leaves) - 2, Catchword, "So that was …"}, {len(leaves) - 1, Catchword, ""}, {len(leaves) - 1, Aside, ""},
	} {
		if got := strings.Join(leaves[try.leaf].words(try.kind), "|"); got != try.want {
			t.Errorf("leaf %d: words of kind %d are %q, want %q", try.leaf, try.kind, got, try.want)
		}
	}
	for _, w := range leaves[0].Words {
		row := &leaves[0].Verse[0]
		if w.Kind == Aside && (w.X != row.XAt(strings.Index("One loaf", "o")) || w.Baseline >= row.Baseline-row.Runs[0].Size/2) {
			t.Errorf("what is said otherwise stands at %v, %v", w.X, w.Baseline)
		}
	}
	if got, want := copied.LeafOf(2), len(leaves)-1; got != want {
		t.Errorf("the last poem begins on leaf %d, want %d", got, want)
	}
}

// TestWhatIsLeftOut: the catchword leads past what is left out for want of time,
// within that to its own next leaf; what may be left out says so
// above its head on every leaf.
func TestWhatIsLeftOut(t *testing.T) {
	c := book("Loaves\nOne loaf on the sill,", "Weights\nThe scales are fair tonight\n\n"+numbered(60), "Salt\nA pinch of salt.",
		"Last\nSo that was that.", "Crumbs\nSwept up at five.")
	r := readingOf(c)
	for _, i := range []int{1, 2, 4} {
		r.Items[i].Drop = true
	}
	for _, f := range []Format{paper(t, "A5"), windows[0], OnWindow(480, 700)} {
		for _, try := range []struct {
			slot                        int
			after, weights, last, spare string
		}{
			{3600, "The scales are …", "A pinch of …", "Swept up at …", "if there is time"},
			{1, "So that was …", "So that was …", "", "if there is time · left out by the plan"},
		} {
			r.Slot = try.slot
			copied := copyOf(t, c, r, f)
			foot := func(item int) string {
				at := copied.LeafOf(item)
				for !copied.Leaves[at].Last {
					at++
				}
				return strings.Join(copied.Leaves[at].words(Catchword), "|")
			}
			if got := []string{foot(0), foot(1), foot(3)}; !slices.Equal(got, []string{try.after, try.weights, try.last}) {
				t.Errorf("slot %d: the catchwords are %q", r.Slot, got)
			}
			if l := &copied.Leaves[copied.LeafOf(1)]; l.Last || len(l.words(Catchword)) == 0 || !strings.HasPrefix(l.words(Catchword)[0], "line number") {
				t.Errorf("slot %d: within what may be left out the catchword is %q", r.Slot, l.words(Catchword))
			}
			for i := range copied.Leaves {
				wantSpare(t, copied, i, r.Items[copied.Leaves[i].Item].Drop, try.spare)
			}
		}
	}
}

// wantSpare sees that a leaf says above its head that it may be left out, or not.
func wantSpare(t *testing.T, c *Copy, i int, may bool, want string) {
	t.Helper()
	l := &c.Leaves[i]
	got := strings.Join(l.words(Spare), "|")
	if !may {
		want = ""
	}
	if got != want {
		t.Errorf("leaf %d says %q, want %q", i, got, want)
	}
	for _, w := range l.Words {
		if w.Kind == Spare && (w.Baseline > c.Format.Head || w.Baseline < w.Runs[0].Size || w.X+w.Width > c.Format.Trim.Width-c.Format.Side) {
			t.Errorf("leaf %d: it says so at %v, %v, %v wide", i, w.X, w.Baseline, w.Width)
		}
	}
}

// TestTalk: what is said stands above its poem where that costs the poem no leaf and
// less than an eighth of its size, else on a leaf of its own before it.
func TestTalk(t *testing.T) {
	f := paper(t, "A4")
	said := "This one is about nothing."
	for _, try := range []struct {
		lines   int
		leaves  int
		smaller bool
	}{
		{5, 1, false}, {f.rows(f.Most, 0), 1, true}, {f.rows(f.Least, 0), 2, false},
	} {
		c := book("Full\n" + numbered(try.lines))
		r := readingOf(c)
		alone := copyOf(t, c, r, f)
		r.Items[0].Before = said
		copied := copyOf(t, c, r, f)
		if len(alone.Leaves) != 1 || len(copied.Leaves) != try.leaves {
			t.Errorf("%d lines take %d leaves, and %d with talk", try.lines, len(alone.Leaves), len(copied.Leaves))
			continue
		}
		last := &copied.Leaves[try.leaves-1]
		if smaller := last.Size < alone.Leaves[0].Size; smaller != try.smaller || 8*last.Size < 7*alone.Leaves[0].Size {
			t.Errorf("%d lines are set in %v alone, and in %v with talk", try.lines, alone.Leaves[0].Size, last.Size)
		}
		if got := strings.Join(copied.Leaves[0].words(Talk), " "); got != said {
			t.Errorf("it says %q", got)
		}
		if try.leaves == 1 {
			continue
		}
		first := &copied.Leaves[0]
		if got := first.words(Catchword); len(got) != 1 || got[0] != "line number 1" || first.Size != 0 {
			t.Errorf("the catchword is %q, the size %v", got, first.Size)
		}
		if !first.First || first.Last || last.First || !last.Last {
			t.Error("the two leaves are not said to be one item's")
		}
	}
}

// TestOtherItems: lines of a poem, a poem from elsewhere, talk alone, and a poem that
// is gone.
func TestOtherItems(t *testing.T) {
	c := book("Weights\none\ntwo\n\nthree\nfour")
	p, _, _ := c.Poem(readingOf(c).Items[0].Poem)
	var ids []pagemodel.LineID
	for _, l := range p.Lines() {
		ids = append(ids, l.ID())
	}
	text := "Sumer is icumen in,\n\nLhude sing cuccu!"
	r := pagemodel.Reading{Items: []pagemodel.Item{
		{Poem: p.ID(), From: ids[1], To: ids[2]},
		{Title: "Cuckoo Song", Text: text, Said: []pagemodel.Saying{{At: strings.Index(text, "Lhude"), As: "loud-uh"}}},
		{Before: "Thank you all for coming out tonight."},
		{Poem: 999},
	}}
	copied := copyOf(t, c, r, windows[0])
	if len(copied.Leaves) != 4 {
		t.Fatalf("%d leaves, want 4", len(copied.Leaves))
	}
	var got []string
	for i := range copied.Leaves {
		l := &copied.Leaves[i]
		var rows []string
		for j := range l.Verse {
			rows = append(rows, textOf(&l.Verse[j]))
		}
		got = append(got, fmt.Sprint(l.words(Title), rows, l.words(Talk), l.words(PrintedPage), l.words(Catchword), l.words(Aside)))
	}
	want := []string{
		"[from Weights] [two three] [] [page 1] [Sumer is icumen …] []",
		"[Cuckoo Song] [Sumer is icumen in, Lhude sing cuccu!] [] [] [Thank you all …] [loud-uh]",
		"[] [] [Thank you all for coming out tonight.] [] [(This poem is …] []",
		"[] [] [(This poem is no longer in the file.)] [] [] []",
	}
	for i := range want {
		if got[i] != want[i] {
			t.Errorf("leaf %d: %s, want %s", i, got[i], want[i])
		}
	}
}
