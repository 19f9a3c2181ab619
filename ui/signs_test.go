package ui

import (
	"testing"

	"fyne.io/fyne/v2"

	"headland/pagemodel"
	"headland/typeset"
)

// TestWordsAboutAPage: what the poet says of a poem is said in the fewest words,
// and the usual not at all.
func TestWordsAboutAPage(t *testing.T) {
	for _, try := range []struct {
		head pagemodel.PoemHead
		want string
	}{
		{pagemodel.PoemHead{Title: "Foil"}, ""},
		{pagemodel.PoemHead{Start: pagemodel.OnRecto, Blank: true}, "recto\na blank"},
		{pagemodel.PoemHead{Start: pagemodel.SharedPage, Run: -1}, "shared\na line short"},
		{pagemodel.PoemHead{Start: pagemodel.FacingPage, Run: 2, Form: pagemodel.Tercets}, "facing\n2 lines long\ntercets"},
		{pagemodel.PoemHead{Size: pagemodel.Pt(9.5), Lie: pagemodel.Turned, Edge: pagemodel.EdgeOptic}, "9½ pt\nturned\noptical"},
		{pagemodel.PoemHead{Size: pagemodel.Pt(9.25), Lie: pagemodel.Across, Run: -2}, "2 lines short\n9.25 pt\nacross"},
	} {
		if got := openingWords(try.head); got != try.want {
			t.Errorf("%+v is %q, want %q", try.head, got, try.want)
		}
	}
}

// TestABracketOverTwoPages is open where its lines go on.
func TestABracketOverTwoPages(t *testing.T) {
	tb := setTable(t, verses(stanzas(40)))
	var lines []pagemodel.Line
	for _, p := range tb.w.session.Collection().Poems() {
		for _, l := range p.Lines() {
			lines = append(lines, l)
		}
		tb.d.do(pagemodel.KeepTogether{LineRef: pagemodel.LineRef{Poem: p.ID(), Line: lines[2].ID()}, Through: lines[37].ID()})
	}
	one, other := tb.d.signs(tb.d.page(1)).ties, tb.d.signs(tb.d.page(2)).ties
	if len(one) != 1 || one[0].above || !one[0].below {
		t.Errorf("page 1 has %+v", one)
	}
	if len(other) != 1 || !other[0].above || other[0].below || other[0].from != 0 {
		t.Errorf("page 2 has %+v", other)
	}
}

// TestTheBracketIsInked in ink that can be read (WCAG 2.2, 1.4.11 and 1.4.3), at
// its place in the outer margin.
func TestTheBracketIsInked(t *testing.T) {
	tb := setTable(t, verses(threeStanzas))
	tb.keys(fyne.KeyDown)
	tb.chord(key(ctrlShift, fyne.KeyW))
	side, r := tb.row("two")
	at := typeset.Point{X: outward(tb.d.page(1), tieAt), Y: r.Baseline - sizeOf(r)/4}
	if got := tb.inkAt(side, at); got != tb.d.light.palette().aside {
		t.Errorf("the bracket is %v", got)
	}
	for _, l := range []light{day, lamp} {
		colors := l.palette()
		if c := contrast(colors.aside, colors.paper); c < 4.5 {
			t.Errorf("%v: words about the page have a contrast of %.2f", l, c)
		}
		if c := contrast(colors.mark, colors.paper); c < 4.5 {
			t.Errorf("%v: letters of faults have a contrast of %.2f", l, c)
		}
	}
}

// TestSignsAreMirrored: on a verso all of them stand to the left of the text,
// on a recto to the right.
func TestSignsAreMirrored(t *testing.T) {
	tb := setTable(t, verses(stanzas(14, 14, 14)))
	for number, left := range map[int]bool{1: false, 2: true} {
		page := tb.d.page(number)
		for _, x := range []typeset.Length{outward(page, tieAt), strokeX(page)} {
			if (x < page.Text.X) != left || (x > page.Text.X+page.Text.W) == left || x <= 0 || x >= page.Trim.Width {
				t.Errorf("page %d: a sign at %v, the text from %v over %v", number, x, page.Text.X, page.Text.W)
			}
		}
	}
}

// TestLinesThatLieOtherwise: a line of a poem that is turned or lies across the
// spread is reached by a press on its words and by keys, in every light it can
// be drawn, and a turned one has no rule to be taken.
func TestLinesThatLieOtherwise(t *testing.T) {
	for _, lie := range []string{"Turned on Its Side", "Across the Spread"} {
		tb := setTable(t, verses("first\n"+long+" "+long+" "+long+"\nlast"))
		tb.keys(fyne.KeyDown)
		tb.command(lie).item.Action()
		tb.frame()
		tb.keys(fyne.KeyEscape)
		side, r := tb.row("last")
		page := tb.d.page(tb.d.plan.sheets[side].number)
		at := typeset.Point{X: r.X + r.Width/2, Y: r.Baseline - sizeOf(r)/4}
		if r.Turned {
			at = typeset.Point{X: r.Baseline - sizeOf(r)/4, Y: page.Trim.Height - r.X - r.Width/2}
		}
		tb.click(tb.d.plan.fromPage(side, at))
		if ref, ok := tb.w.session.Focus(); !ok || ref != r.Ref() {
			t.Errorf("%s: a press on the last line puts %v at hand, want %v", lie, ref, r.Ref())
		}
		tb.keys(fyne.KeyUp, fyne.KeyUp, fyne.KeyRight)
		tb.chord(key(ctrl, fyne.KeyK))
		tb.chord(key(ctrlShift, fyne.KeyW))
		tb.chord(key(alt, fyne.KeyLeft))
		tb.keys(fyne.KeyEscape, fyne.KeyReturn, fyne.KeyEscape)
		if _, ok := ruleUnder(&tb.d.plan, page, at); ok && r.Turned {
			t.Errorf("%s: a rule can be taken", lie)
		}
		tb.w.otherLight()
		tb.frame()
	}
}

// TestPagesBeforeTheFirstPoem have no line and no poem at hand, and lead on.
func TestPagesBeforeTheFirstPoem(t *testing.T) {
	tb := setTable(t, verses(two))
	matter := pagemodel.UsualMatter()
	matter.Roman = true
	tb.d.do(pagemodel.SetMatter{Matter: matter})
	tb.keys(fyne.KeyHome)
	if got := tb.d.pageWords(tb.d.spread); got != "page i · 5 in all" && got != "page i · 7 in all" {
		t.Errorf("the foot says %q", got)
	}
	tb.chord(key(altOnly, fyne.Key2))
	if tb.d.said != noPoemWords {
		t.Errorf("the foot says %q", tb.d.said)
	}
	tb.keys(fyne.KeyDown)
	if ref, ok := tb.w.session.Focus(); !ok || !tb.d.inSight(ref) {
		t.Error("the keys do not lead on to the first line")
	}
	if first, _ := tb.d.of.Body(); tb.d.of.FolioOf(first) != "1" {
		t.Errorf("the first poem is on page %q", tb.d.of.FolioOf(first))
	}
}

// TestWordsWithoutDotsAreShortened: words without a dot between them are shortened too,
// and that ends.
func TestWordsWithoutDotsAreShortened(t *testing.T) {
	tb := setTable(t, verses(two))
	s := tb.d.k.slate(tb.d.pictures.footInk.next(10, 10), 1, tb.d.light.palette().desk)
	if got := tb.d.fitting(s, "one two three four five six seven eight nine", 100); got == "" || s.px(tb.d.k.words(got, wordSize, false).Width) > 100 {
		t.Errorf("in 100 pixels %q", got)
	}
}
