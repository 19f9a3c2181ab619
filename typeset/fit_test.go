package typeset

import (
	"slices"
	"strings"
	"testing"

	"headland/pagemodel"
)

// testDesign is a page on which lines of some fifty characters fit.
func testDesign() pagemodel.Design {
	d := pagemodel.DefaultDesign()
	d.Margins.Outer = d.Trim.Width - d.Margins.Inner - pagemodel.Pt(240)
	return d
}

// poemOf is a book of one poem; stanzas are parted by blank lines, a line's
// indent is a tab an em.
func poemOf(d pagemodel.Design, title, text string) *pagemodel.Collection {
	b := pagemodel.NewBuilder(pagemodel.About{}, d)
	var stanzas []pagemodel.Stanza
	for _, s := range strings.Split(strings.Trim(text, "\n"), "\n\n") {
		var lines []pagemodel.Line
		for _, line := range strings.Split(s, "\n") {
			words := strings.TrimLeft(line, "\t")
			lines = append(lines, b.Line(words).WithIndent(pagemodel.Em(len(line)-len(words))*pagemodel.OneEm))
		}
		stanzas = append(stanzas, pagemodel.NewStanza(pagemodel.Verse, lines))
	}
	b.Poem(pagemodel.PoemHead{Title: title}, []pagemodel.Part{pagemodel.NewPart("", stanzas)})
	return b.Collection()
}

func setOf(c *pagemodel.Collection) *Setting { return NewSetter(Bundled()).Set(nil, c) }

// verse is the rows of the poet's words on all pages, their X counted from the
// left of the measure.
func verse(s *Setting) []Row {
	var rows []Row
	for n := 1; n <= s.Extent(); n++ {
		p := s.Page(n)
		for _, r := range p.Rows {
			if r.X -= p.Text.X; r.Line != 0 {
				rows = append(rows, r)
			}
		}
	}
	return rows
}

func firstLine(c *pagemodel.Collection) pagemodel.LineRef {
	for _, p := range c.Poems() {
		return pagemodel.LineRef{Poem: p.ID(), Line: p.Line(pagemodel.Place{}).ID()}
	}
	return pagemodel.LineRef{}
}

func mustApply(t *testing.T, c *pagemodel.Collection, e pagemodel.Edit) *pagemodel.Collection {
	t.Helper()
	next, err := e.Apply(c)
	if err != nil {
		t.Fatal(err)
	}
	return next
}

// The poems below are in the public domain and typed from memory.
const (
	raven = `Once upon a midnight dreary, while I pondered, weak and weary,
Over many a quaint and curious volume of forgotten lore—
	While I nodded, nearly napping, suddenly there came a tapping,
As of some one gently rapping, rapping at my chamber door.
“’Tis some visitor,” I muttered, “tapping at my chamber door—
			Only this and nothing more.”`

	sonnet18 = `Shall I compare thee to a summer’s day?
Thou art more lovely and more temperate:
Rough winds do shake the darling buds of May,
And summer’s lease hath all too short a date;
Sometime too hot the eye of heaven shines,
And often is his gold complexion dimm’d;
And every fair from fair sometime declines,
By chance or nature’s changing course untrimm’d;
But thy eternal summer shall not fade,
Nor lose possession of that fair thou ow’st;
Nor shall death brag thou wander’st in his shade,
When in eternal lines to time thou grow’st:
	So long as men can breathe, or eyes can see,
	So long lives this, and this gives life to thee.`

	songOfMyself = `The blab of the pave, tires of carts, sluff of boot-soles, talk of the promenaders,
The heavy omnibus, the driver with his interrogating thumb, the clank of the shod horses on the granite floor,
The snow-sleighs, clinking, shouted jokes, pelts of snow-balls,
The hurrahs for popular favorites, the fury of rous’d mobs,
The flap of the curtain’d litter, a sick man inside borne to the hospital,
The meeting of enemies, the sudden oath, the blows and fall,
The excited crowd, the policeman with his star quickly working his passage to the centre of the crowd,
The impassive stones that receive and return so many echoes,
What groans of over-fed or half-starv’d who fall sunstruck or in fits,
What exclamations of women taken suddenly who hurry home and give birth to babes,
What living and buried speech is always vibrating here, what howls restrain’d by decorum,
Arrests of criminals, slights, adulterous offers made, acceptances, rejections with convex lips,
I mind them or the show or resonance of them—I come and I depart.`
)

// TestTurnoverIndent: turnovers stand one em beyond the poem's deepest indent
// (New Hart's Rules 9.4.2). The Raven's deepest indent here is three ems.
func TestTurnoverIndent(t *testing.T) {
	s := setOf(poemOf(testDesign(), "The Raven", raven))
	d := s.design
	turned := 0
	for _, r := range verse(s) {
		if r.Turn != Turnover {
			continue
		}
		turned++
		if got, want := r.X, 4*d.Size; got != want {
			t.Errorf("turnover %q begins %v in, want %v", rowText(&r), got, want)
		}
	}
	if turned != 5 {
		t.Errorf("%d turnovers, want 5: all lines but the last exceed 240pt at 11pt", turned)
	}
}

// TestSonnetIsWhole: fourteen lines that fit stand on one page, the couplet
// indented, none of them turned.
func TestSonnetIsWhole(t *testing.T) {
	s := setOf(poemOf(testDesign(), "18", sonnet18))
	rows := verse(s)
	if s.Extent() != 1 || len(rows) != 14 || s.Unsettled() != 0 {
		t.Fatalf("%d pages, %d rows, %d unsettled; want 1, 14, 0", s.Extent(), len(rows), s.Unsettled())
	}
	if got := rows[12].X - rows[11].X; got != s.design.Size {
		t.Errorf("the couplet is indented by %v, want one em (%v)", got, s.design.Size)
	}
}

// TestLongLinesHang: every line of a page of Whitman begins at the left edge,
// what is too long hangs one em in, and no row is wider than its room.
func TestLongLinesHang(t *testing.T) {
	s := setOf(poemOf(testDesign(), "8", songOfMyself))
	for _, r := range verse(s) {
		want := Length(0)
		if r.Turn == Turnover {
			want = s.design.Size
		}
		if r.X != want || r.Width > r.Room {
			t.Errorf("%q begins at %v (want %v), %v wide in %v", rowText(&r), r.X, want, r.Width, r.Room)
		}
	}
	if n := len(s.Turnovers()); n != 13 {
		t.Errorf("%d lines turn, want all 13: none fits 240pt", n)
	}
}

// TestWidthsAreHarfBuzz: the width that decides whether a line fits is, to
// 1/64 pt, HarfBuzz's advance for the whole line (hb-shape), scaled once.
func TestWidthsAreHarfBuzz(t *testing.T) {
	lines := lineList(400)
	faces := Bundled()
	for _, family := range []string{"EB Garamond", "Gentium Book Plus"} {
		face, _ := faces.Face(family, false, false)
		tc := newTypeCase(faces, family)
		c := compositor{shaper: newShaper(), faces: &tc, size: pagemodel.Pt(11)}
		for i, row := range hbShape(t, face.Data(), "onum", lines) {
			var sum int
			for _, glyph := range strings.Split(strings.Trim(row, "[]"), "|") {
				sum += atoi(t, glyph[strings.LastIndex(glyph, "+")+1:])
			}
			l := pagemodel.NewLine(1, lines[i])
			exact := float64(sum) * 11 * 64 / float64(face.upem)
			if got := c.compose(&l, 0, len(lines[i])).width; float64(got)-exact > 0.5 || exact-float64(got) > 0.5 {
				t.Errorf("%s: %q is %d/64 pt wide, want %.2f", family, lines[i], got, exact)
			}
		}
	}
}

func atoi(t *testing.T, s string) int {
	n := 0
	for _, r := range s {
		if r < '0' || r > '9' {
			t.Fatalf("%q is no advance", s)
		}
		n = 10*n + int(r-'0')
	}
	return n
}

// TestTurnRules goes through design rules of a turn, one line each.
func TestTurnRules(t *testing.T) {
	for _, tc := range []struct {
		name, text string
		gapBefore  string // a gap is set before this word
		want       []string
	}{
		{"at the last space that fits", "a line of words that goes on a little too long for the measure it has", "",
			[]string{"a line of words that goes on a little too long for the", "measure it has"}},
		{"a no-break space holds", "a line of words that goes on a little too long for\u00a0the\u00a0measure", "",
			[]string{"a line of words that goes on a little too long", "for\u00a0the\u00a0measure"}},
		{"no turnover begins with a dash", "a line of words that goes on a little too long now, see there — and on", "",
			[]string{"a line of words that goes on a little too long now, see", "there — and on"}},
		{"no turnover swallows a gap", "a line of words that goes on a little longer, look here too now", "too",
			[]string{"a line of words that goes on a little longer, look", "here too now"}},
		{"a word with no space turns after a dash", strings.Repeat("bread—", 12) + "bread", "",
			[]string{strings.Repeat("bread—", 7), strings.Repeat("bread—", 5) + "bread"}},
	} {
		t.Run(tc.name, func(t *testing.T) {
			c := poemOf(testDesign(), "", tc.text)
			if tc.gapBefore != "" {
				at := strings.Index(tc.text, tc.gapBefore)
				c = mustApply(t, c, pagemodel.SetGap{LineRef: firstLine(c), At: at, Width: pagemodel.Ems(2)})
			}
			var got []string
			for _, r := range verse(setOf(c)) {
				got = append(got, tc.text[r.Start:r.End])
			}
			if !slices.Equal(got, tc.want) {
				t.Errorf("got %q\nwant %q", got, tc.want)
			}
		})
	}
}

// TestTurnHere: an overlong line turns at the word that the poet chose; a line
// that fits does not.
func TestTurnHere(t *testing.T) {
	text := "a line of words that goes on a little too long for the measure it has"
	c := poemOf(testDesign(), "", text+"\na short line")
	ref := firstLine(c)
	at := strings.Index(text, "little")
	s := setOf(mustApply(t, c, pagemodel.Keep{LineRef: ref, Turns: []int{at}}))
	rows := verse(s)
	if len(rows) != 3 || rows[1].Start != at || rows[1].Turn != Turnover {
		t.Errorf("turned at %d, want %d", rows[1].Start, at)
	}
	if s.Unsettled() != 0 || s.Turnovers()[0].State != pagemodel.Kept {
		t.Errorf("a kept line is still unsettled")
	}
}

// TestEditionBreak: a break in this edition begins a line at the poem's own
// indent, is no turnover, and settles the line while each piece fits.
func TestEditionBreak(t *testing.T) {
	text := "a line of words that goes on a little too long for the measure it has"
	c := poemOf(testDesign(), "", text)
	at := strings.Index(text, "too")
	s := setOf(mustApply(t, c, pagemodel.Break{LineRef: firstLine(c), At: at, In: pagemodel.InEdition}))
	rows := verse(s)
	if len(rows) != 2 || rows[1].Turn != EditionBreak || rows[1].X != rows[0].X {
		t.Errorf("got %d rows, the second a %v at %v", len(rows), rows[1].Turn, rows[1].X)
	}
	if got := s.Turnovers(); len(got) != 1 || got[0].State != pagemodel.Broken || s.Unsettled() != 0 {
		t.Errorf("turnovers %+v, %d unsettled; want one broken, none unsettled", got, s.Unsettled())
	}
}

// TestTurnRight follows E. Mendelson's formulation of turnovers set right: the
// tail begins a little left of where the first part ends, is pulled left where
// the next line is too short to pass under it, and never less than twice the
// poem's own indent.
func TestTurnRight(t *testing.T) {
	d := testDesign()
	d.Turnovers = pagemodel.TurnRight
	long := "a line of words that goes on a little too long for the last of it"
	for _, tc := range []struct {
		name, next string
		check      func(rows []Row) bool
	}{
		{"above a long line", "and another line that is of just about that same old length", func(r []Row) bool {
			return r[1].X == min(r[0].X+r[0].Width-d.Size, d.Measure()-r[1].Width)
		}},
		{"above a short line", "and a short line", func(r []Row) bool {
			return r[1].X == max(2*d.Size, r[2].X+r[2].Width-d.Size)
		}},
		{"above a word", "so", func(r []Row) bool { return r[1].X == 2*d.Size }},
	} {
		s := setOf(poemOf(d, "", long+"\n"+tc.next))
		if rows := verse(s); len(rows) != 3 || !tc.check(rows) {
			t.Errorf("%s: %d rows: %+v", tc.name, len(rows), rows)
		}
	}
}

// TestDropped: each part of a shared line begins where the part before ended,
// a space on, pulled in just enough to fit (Brossard 1934, 71-72).
func TestDropped(t *testing.T) {
	c := poemOf(testDesign(), "", "Who is there?\nNobody.\na line of words that very nearly fills a measure up\nNobody.")
	for n, l := range c.Order()[0].Poem.Lines() {
		if n.Line%2 == 1 {
			c = mustApply(t, c, pagemodel.Drop{LineRef: pagemodel.LineRef{Poem: c.Order()[0].Poem.ID(), Line: l.ID()}, Dropped: true})
		}
	}
	s := setOf(c)
	r, d := verse(s), s.design
	if got, want := r[1].X, r[0].X+r[0].Width+d.Size/4; got != want {
		t.Errorf("the answer begins at %v, want %v", got, want)
	}
	if got, want := r[3].X+r[3].Width, d.Measure(); got != want {
		t.Errorf("the answer ends at %v, want the measure's end, %v", got, want)
	}
}

// TestDroppedFromTightened: a dropped line begins where the narrowed line above
// really ends, and moves with the poem's left edge.
func TestDroppedFromTightened(t *testing.T) {
	d := testDesign()
	text := "one more tray for the hospital and its nurses now\nNobody."
	widest := verse(setOf(poemOf(d, "", text)))[0].Width
	d.Margins.Outer += d.Measure() - widest + 30
	d.Tighten, d.Turnovers = 30, pagemodel.TurnRight
	c := poemOf(d, "", text)
	p := c.Order()[0].Poem
	ref := pagemodel.LineRef{Poem: p.ID(), Line: p.Line(pagemodel.Place{Line: 1}).ID()}
	c = mustApply(t, c, pagemodel.Drop{LineRef: ref, Dropped: true})
	rows := verse(setOf(c))
	if len(rows) != 2 || rows[0].Width != widest-30 || rows[1].X+rows[1].Width != d.Measure() {
		t.Errorf("%d rows, the first %v wide, want %v; the dropped one ends at %v of %v", len(rows), rows[0].Width, widest-30, rows[1].X+rows[1].Width, d.Measure())
	}
	d.Edge, d.Margins.Outer = pagemodel.EdgeCentre, d.Margins.Outer-60*pagemodel.Point
	rows = verse(setOf(mustApply(t, c, pagemodel.SetDesign{Design: d})))
	left, right := rows[0].X, d.Measure()-rows[1].X-rows[1].Width
	if rows[1].X != rows[0].X+rows[0].Width+d.Size/4 || left != right && left+1 != right {
		t.Errorf("the dropped line begins at %v after %v; %v at the left, %v at the right", rows[1].X, rows[0].X+rows[0].Width, left, right)
	}
}

// TestHangingPieces: what this edition breaks off hangs by its own first mark,
// not by the line's.
func TestHangingPieces(t *testing.T) {
	d := testDesign()
	d.HangQuotes = true
	text := "“Bread,” she said, and then, “no bread”"
	for word, hangs := range map[string]bool{"and": false, "“no": true} {
		c := poemOf(d, "", text)
		c = mustApply(t, c, pagemodel.Break{LineRef: firstLine(c), At: strings.Index(text, word), In: pagemodel.InEdition})
		rows := verse(setOf(c))
		if rows[0].X >= 0 || rows[1].X < 0 != hangs {
			t.Errorf("broken before %q: the pieces begin at %v and %v", word, rows[0].X, rows[1].X)
		}
	}
}
