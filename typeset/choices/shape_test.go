package choices

import (
	"slices"
	"strings"
	"testing"

	"headland/pagemodel"
	"headland/typeset/prosody"
)

// crumbs is a poem of stepped lines, original.
const crumbs = `---
title: Crumbs
---

## Crumbs

bread in the window
and the window in the bread

nobody at the door but rain
zwoffling and the cat
`

// TestSpaceThatMeansSomething: a line may be indented, dropped, opened by gaps and
// have white above; each is a choice that says what it does, and what is there
// already may be taken away.
func TestSpaceThatMeansSomething(t *testing.T) {
	tb := read(t, crumbs)
	first, second, third := tb.line(1, 1, 1), tb.line(1, 1, 2), tb.line(1, 2, 1)
	tb = tb.edited(pagemodel.Indent{LineRef: third, To: pagemodel.Ems(5)})
	all := tb.of(second)
	for title, x := range map[string]pagemodel.Length{
		"indented by 1em": pagemodel.OneEm.At(tb.set.Collection().Design().Size),
		"indented by 5em": pagemodel.Ems(5).At(tb.set.Collection().Design().Size),
		"dropped: it begins where the line above ends": lookAt(tb.set).rows(first)[0].Width + tb.set.Collection().Design().Size/4,
	} {
		c := find(t, all, Space, title)
		if c.Rows[0].X != x || len(c.Parts) != 1 || c.Parts[0].Syllables != 7 {
			t.Errorf("%s: X %v, want %v, parts %+v", title, c.Rows[0].X, x, c.Parts)
		}
	}
	plain := lookAt(tb.set).rows(second)[0].Width
	gap := find(t, all, Space, "a gap of 2em before “window”")
	if want := plain + gapWidth.At(tb.set.Collection().Design().Size); gap.Rows[0].Width != want {
		t.Errorf("with a gap it is %v wide, want %v", gap.Rows[0].Width, want)
	}
	white := tb.edited(find(t, all, Space, "2 lines of white above").Edit)
	if a, b := gridOf(tb, second), gridOf(white, second); b != a+2 {
		t.Errorf("with two lines of white it stands on row %d, without on %d", b, a)
	}
	for title, e := range map[string]pagemodel.Edit{
		"not indented": pagemodel.Indent{LineRef: second, To: pagemodel.OneEm}, "not dropped": pagemodel.Drop{LineRef: second, Dropped: true},
		"no white above": pagemodel.SetAbove{LineRef: second, Lines: 1}, "no gap before “window”": gap.Edit,
		"no tab before “window”": pagemodel.SetTab{LineRef: second, At: 8, Stop: pagemodel.Ems(9)},
	} {
		back := tb.edited(e)
		undone, err := find(t, back.of(second), Space, title).Edit.Apply(back.set.Collection())
		if err != nil {
			t.Fatal(err)
		}
		p, at, _ := undone.Line(second)
		if was, here, _ := tb.set.Collection().Line(second); p.Key() != was.Key() || at != here {
			t.Errorf("%s: the poem is not as it was", title)
		}
	}
	if all := tb.of(first); has(all, Space, "1 line of white above") || has(all, Space, "dropped: it begins where the line above ends") {
		t.Error("a poem's first line may be dropped or have white above")
	}
}

func gridOf(tb *table, ref pagemodel.LineRef) int {
	page, _ := tb.set.PageOfLine(ref)
	for _, row := range tb.set.Page(page).Rows {
		if row.Ref() == ref {
			return row.Grid
		}
	}
	return 0
}

// TestWhiteAtAHead: white above a line that a page begins with is not seen, and
// the choice says so.
func TestWhiteAtAHead(t *testing.T) {
	tb := read(t, crumbs)
	third := tb.line(1, 2, 1)
	tb = tb.edited(pagemodel.PageBreak{LineRef: third})
	c := find(t, tb.of(third), Space, "1 line of white above")
	if !slices.Contains(c.Says, "a page begins with the line, and the white is not seen") {
		t.Errorf("it says %q", c.Says)
	}
}

// TestGuessesAreNamed: a word that is only guessed is named, and no more once the
// poet has said how it goes.
func TestGuessesAreNamed(t *testing.T) {
	tb := read(t, crumbs)
	ref := tb.line(1, 2, 2)
	told := func(lex *prosody.Lexicon) *Choice {
		all, err := Of(tb.setter, tb.set, ref, lex)
		if err != nil {
			t.Fatal(err)
		}
		return find(t, all, InPoem, "before “and”")
	}
	c := told(prosody.English())
	if !slices.Equal(c.Parts[0].Guesses, []string{"zwoffling"}) || !c.Parts[0].Guessed || c.Parts[1].Guessed || !strings.Contains(strings.Join(c.Says, "; "), ", “zwoffling” guessed") {
		t.Errorf("guessed: %+v, says %q", c.Parts, c.Says)
	}
	c = told(prosody.English().With(map[string]string{"zwoffling": "zwof-fle-ING"}))
	if c.Parts[0].Guessed || c.Parts[0].Guesses != nil || c.Parts[0].Syllables != 3 || c.Parts[0].Stress != "001" {
		t.Errorf("said: %+v", c.Parts[0])
	}
	var none *prosody.Lexicon
	c = told(none.With(map[string]string{"zwoffling": "zwof-FLING", "and": "and", "the": "the", "cat": "CAT"}))
	if c.Parts[0].Syllables != 2 || c.Parts[1].Stress != "001" || !slices.Contains(c.Says, "2 + 3 syllables: x/ + xx/") {
		t.Errorf("all words said, without a dictionary: %+v, says %q", c.Parts, c.Says)
	}
}

// TestStepsAreCompound: an edit of several steps lets each of them be changed, and
// is done as one all the same.
func TestStepsAreCompound(t *testing.T) {
	tb := read(t, dough)
	ref := tb.line(1, 1, 2)
	broken := tb.edited(pagemodel.Break{LineRef: ref, At: 8, In: pagemodel.InEdition})
	e, ok := find(t, broken.of(ref), LetTurn, "at the last word that fits").Edit.(pagemodel.Compound)
	if !ok {
		t.Fatal("it is no compound")
	}
	dated := e.Each(func(edit pagemodel.Edit) pagemodel.Edit {
		if d, ok := edit.(pagemodel.Dated); ok {
			return d.OnDay("2026-11-25")
		}
		return edit
	})
	p, at, _ := broken.edited(dated).set.Collection().Line(ref)
	if l := p.Line(at); l.On() != "2026-11-25" || !l.Kept() || dated.Label() != e.Label() || dated.Kind() != e.Kind() {
		t.Errorf("kept %v on %q; %s, %s", l.Kept(), l.On(), dated.Label(), dated.Kind())
	}
	p, at, _ = broken.edited(e).set.Collection().Line(ref)
	if p.Line(at).On() != "" {
		t.Error("the edit itself has changed")
	}
}
