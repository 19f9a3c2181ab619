package typeset

import (
	"fmt"
	"strings"
	"testing"

	"headland/pagemodel"
)

const overlongLine = "the baker leans in the doorway of the shop and counts the trams of a cold night in front of the curtain"

// kept is a poem whose first line, too long for the measure, was let turn at the
// words at which it turns.
func kept(t *testing.T) (*pagemodel.Collection, pagemodel.LineRef, string) {
	c := poemOf(testDesign(), "Night", overlongLine+"\na short line")
	ref := firstLine(c)
	words := setOf(c).TurnWords(ref)
	if words == "" || strings.ContainsAny(words, ",.") {
		t.Fatalf("it turns at %q", words)
	}
	return mustApply(t, c, pagemodel.Keep{LineRef: ref, Turned: words, On: "2026-11-25", Reason: "breath", Shown: true}), ref, words
}

// TestKeptLineIsAskedAboutAgain: a line that was let turn is unsettled again if
// it turns at another word, and everything that counts unsettled lines says so;
// at its word again it is settled.
func TestKeptLineIsAskedAboutAgain(t *testing.T) {
	c, ref, words := kept(t)
	s := setOf(c)
	if state, why := s.StateOf(ref); state != pagemodel.Kept || why != "" || s.Unsettled() != 0 {
		t.Fatalf("let turn: %v %q, %d unsettled", state, why, s.Unsettled())
	}
	longer := strings.Replace(overlongLine, "the baker", "and then the old baker of all", 1)
	s = setOf(mustApply(t, c, pagemodel.Retype{LineRef: ref, Text: longer}))
	want := fmt.Sprintf("It turned at “%s” when you let it turn; now it turns at “%s”.", words, strings.ReplaceAll(s.TurnWords(ref), " ", "” and “"))
	if state, why := s.StateOf(ref); state != pagemodel.Unsettled || why != want {
		t.Errorf("at another word: %v %q, want %q", state, why, want)
	}
	if page, _ := s.PageOfLine(ref); s.Unsettled() != 1 || s.UnsettledOn(page) != 1 || s.Turnovers()[0].State != pagemodel.Unsettled || s.Decisions()[0].Why != want {
		t.Errorf("not all counts agree: %d, %d, %v", s.Unsettled(), s.UnsettledOn(page), s.Turnovers())
	}
	s = setOf(mustApply(t, c, pagemodel.Retype{LineRef: ref, Text: overlongLine + "s"}))
	if state, _ := s.StateOf(ref); state != pagemodel.Kept {
		t.Errorf("other words, but turning where it did: %v", state)
	}
}

// TestKeptLineSleeps: a line that was let turn and does not turn any more sleeps,
// and is settled as it was when it turns again.
func TestKeptLineSleeps(t *testing.T) {
	c, ref, _ := kept(t)
	h := c.Order()[0].Poem.Head()
	h.Size = pagemodel.Pt(4)
	small := mustApply(t, c, pagemodel.SetHead{Poem: ref.Poem, Head: h})
	for _, tc := range []struct {
		c      *pagemodel.Collection
		asleep bool
	}{{small, true}, {c, false}} {
		all := setOf(tc.c).Decisions()
		if len(all) != 1 || all[0].Ref != ref || all[0].State != pagemodel.Kept || all[0].Asleep != tc.asleep {
			t.Errorf("asleep %v wanted: %+v", tc.asleep, all)
		}
	}
	if words := setOf(small).TurnWords(ref); words != "" {
		t.Errorf("a line that fits turns at %q", words)
	}
}

// TestKeptWithoutWord: a line let turn before anybody noted the word stays
// settled wherever it turns.
func TestKeptWithoutWord(t *testing.T) {
	c := poemOf(testDesign(), "", overlongLine)
	s := setOf(mustApply(t, c, pagemodel.Keep{LineRef: firstLine(c)}))
	if state, why := s.StateOf(firstLine(c)); state != pagemodel.Kept || why != "" {
		t.Errorf("%v %q", state, why)
	}
}

// TestDecisions: the list has the overlong lines and those decided about, in the
// order of the pages, with what was noted, and nothing else.
func TestDecisions(t *testing.T) {
	c := poemOf(testDesign(), "Night", overlongLine+"\na short line\na line that is broken in two\nand one broken here only\n"+overlongLine)
	p := c.Order()[0].Poem
	var refs []pagemodel.LineRef
	for _, l := range p.Lines() {
		refs = append(refs, pagemodel.LineRef{Poem: p.ID(), Line: l.ID()})
	}
	for _, e := range []pagemodel.Edit{
		pagemodel.Keep{LineRef: refs[0], On: "2026-11-25", Reason: "breath", Shown: true},
		pagemodel.Break{LineRef: refs[2], At: 12, On: "2026-11-26"},
		pagemodel.SetReason{LineRef: refs[2], Reason: "it limped"},
		pagemodel.Break{LineRef: refs[3], At: 8, In: pagemodel.InEdition, On: "2026-11-27"},
	} {
		c = mustApply(t, c, e)
	}
	got := ""
	for _, d := range setOf(c).Decisions() {
		got += fmt.Sprintf("%d/%d/%d page %d row %d %v poem %v made %v over %v on %q for %q %v\n", d.Number, d.Stanza, d.Line,
			d.Page, d.Row, d.State, d.InPoem, d.Made.Line != 0, d.Overrun > 0, d.On, d.Reason, d.Shown)
	}
	want := `1/1/1 page 1 row 1 kept poem false made false over true on "2026-11-25" for "breath" true
1/1/3 page 1 row 4 broken poem true made true over false on "2026-11-26" for "it limped" false
1/1/5 page 1 row 6 broken poem false made false over false on "2026-11-27" for "" false
1/1/6 page 1 row 8 unsettled poem false made false over true on "" for "" false
`
	if got != want {
		t.Errorf("got\n%swant\n%s", got, want)
	}
}

// TestSameWords: how a letter is encoded, and a capital, make no other word (UAX
// 15: é is e and a combining acute; the order of marks of different classes does
// not tell texts apart).
func TestSameWords(t *testing.T) {
	for _, tc := range []struct {
		a, b string
		same bool
	}{
		{"café", "cafe\u0301", true}, {"Curtain", "curtain", true}, {"q\u0307\u0323", "q\u0323\u0307", true},
		{"\u1e69", "s\u0307\u0323", true}, {"각", "\u1100\u1161\u11a8", true},
		{"cafe", "café", false}, {"and sky", "and", false}, {"e\u0301\u0300", "e\u0300\u0301", false},
	} {
		if sameWords(tc.a, tc.b) != tc.same {
			t.Errorf("%q and %q are the same words: %v", tc.a, tc.b, !tc.same)
		}
	}
}
