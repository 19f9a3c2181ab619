package choices

import (
	"encoding/json"
	"slices"
	"strings"
	"testing"

	"headland/pagemodel"
	"headland/typeset"
	"headland/typeset/prosody"
)

// dough is a poem with two overlong lines, original. Its syllables were counted by
// hand.
const dough = `---
title: Dough
---

## Proving

The first tray waits beside the door,
and all the night the same tray waits, and cools, and someone counts it, once more,
before the van—the one with the ice-cream horn—comes in.

The street is up. The street is in.

Nobody told the boy at the door that flour is only patient dust on the floor,
or what the oven was for.
`

// TestPlaces: before every word, on either side of a dash within a word, behind a
// hyphen; never so that a dash or a quote is left alone.
func TestPlaces(t *testing.T) {
	for text, want := range map[string]string{
		"a b":                        "a|b",
		"the van—the one":            "the|van|—|the|one",
		"an ice-cream horn":          "an|ice-|cream|horn",
		"“—then the door":            "“—then|the|door",
		"bread – and salt":           "bread|–|and|salt",
		"so he said--":               "so|he|said--",
		"on Tuesday—":                "on|Tuesday—",
		"one":                        "one",
		"":                           "",
		"no\u00a0break, but here":    "no\u00a0break,|but|here",
		"naïve co‑op—“so”":           "naïve|co‑|op|—|“so”",
		"  two spaces   before  it ": "  two|spaces|before|it",
	} {
		var got []string
		start := 0
		for _, at := range append(places(text), len(text)) {
			got, start = append(got, strings.TrimRight(text[start:at], " ")), at
		}
		if joined := strings.Join(got, "|"); joined != want {
			t.Errorf("%q may be broken as %q, want %q", text, joined, want)
		}
	}
}

// TestBreakInThePoem: what is said of a break is what a reader can count.
func TestBreakInThePoem(t *testing.T) {
	tb := read(t, dough)
	all := tb.of(tb.line(1, 1, 2))
	c := find(t, all, InPoem, "before “and cools”")
	if len(c.Parts) != 2 || len(c.Rows) != 2 || c.Rows[0].Grid != 1 || c.Rows[1].Grid != 2 {
		t.Fatalf("%d parts on %d rows", len(c.Parts), len(c.Rows))
	}
	head, tail := c.Parts[0], c.Parts[1]
	if head.Text != "and all the night the same tray waits," || tail.Text != "and cools, and someone counts it, once more," {
		t.Errorf("it breaks into %q and %q", head.Text, tail.Text)
	}
	if head.Syllables != 8 || head.Overrun != 0 || head.End != prosody.AtPhrase || head.LastWord != "waits" {
		t.Errorf("the first part is %+v", head)
	}
	if tail.Syllables != 9 || len(tail.Stress) != 9 || tail.Guessed {
		t.Errorf("the second part is %+v", tail)
	}
	if c.Rows[0].X != 0 || c.Alone != "" || c.Moves != "" {
		t.Errorf("X %v, alone %q, moves %q", c.Rows[0].X, c.Alone, c.Moves)
	}
	for _, want := range []string{"both parts fit", "ends with “waits”, at a phrase’s end", "nothing else moves"} {
		if !slices.Contains(c.Says, want) {
			t.Errorf("it says %q, not %q", c.Says, want)
		}
	}
	against := find(t, all, InPoem, "before “same”")
	if against.Parts[0].End != prosody.AgainstSyntax {
		t.Errorf("“the | same” ends %v", against.Parts[0].End)
	}
	lone := find(t, all, InPoem, "before “all”")
	if lone.Alone != "and" || !slices.Contains(lone.Says, "“and” stands alone") {
		t.Errorf("alone is %q, says %q", lone.Alone, lone.Says)
	}
}

// TestPoemAndEditionStayApart: the one changes the text, the other does not.
func TestPoemAndEditionStayApart(t *testing.T) {
	tb := read(t, dough)
	ref := tb.line(1, 1, 2)
	all := tb.of(ref)
	for _, h := range []Head{InPoem, InEdition} {
		after := tb.edited(find(t, all, h, "before “and cools”").Edit).set.Collection()
		p, at, err := after.Line(ref)
		if err != nil {
			t.Fatal(err)
		}
		l := p.Line(at)
		if inPoem := l.Text() == "and all the night the same tray waits,"; inPoem != (h == InPoem) || (len(l.Breaks()) > 0) != (h == InEdition) {
			t.Errorf("%v: the line is %q with breaks %v", h, l.Text(), l.Breaks())
		}
	}
}

// TestInsideAWord: a poet may break before a dash and behind a hyphen, a setting
// may not turn there.
func TestInsideAWord(t *testing.T) {
	tb := read(t, dough)
	all := tb.of(tb.line(1, 1, 3))
	for _, title := range []string{"before “—the”", "before “the one”", "before “cream”", "before “—comes”"} {
		if !has(all, InPoem, title) || !has(all, InEdition, title) {
			t.Errorf("no break %s", title)
		}
	}
	for i := range all {
		if all[i].Head == LetTurn {
			t.Errorf("a line that fits may turn %s", all[i].Title)
		}
	}
}

// TestTurns: the setting turns where it was told to, and no choice is shown that
// would turn elsewhere.
func TestTurns(t *testing.T) {
	tb := read(t, dough)
	ref := tb.line(1, 1, 2)
	for _, c := range tb.of(ref) {
		if c.Head != LetTurn {
			continue
		}
		if c.Rows[1].Turn != typeset.Turnover || c.Rows[1].Start != c.At[0] || len(c.Echoes) > 0 {
			t.Errorf("%s turns at %d of %v, with echoes %q", c.Title, c.Rows[1].Start, c.At, c.Echoes)
		}
		p, at, _ := tb.edited(c.Edit).set.Collection().Line(ref)
		if p.Line(at).State() != pagemodel.Kept {
			t.Errorf("%s leaves the line %v", c.Title, p.Line(at).State())
		}
	}
}

// TestEchoes: a new line end that is a word near it, or rhymes with one, and a
// part as long as a line near it.
func TestEchoes(t *testing.T) {
	tb := read(t, dough)
	c := find(t, tb.of(tb.line(1, 3, 1)), InPoem, "before “that”")
	for _, want := range []string{
		"ends with “door”, as stanza 1, line 1 does",
		"“door” rhymes with “more”, stanza 1, line 2, “for”, line 2 and “floor”, part 2",
	} {
		if !slices.Contains(c.Echoes, want) || !slices.Contains(c.Says, want) {
			t.Errorf("it echoes %q, not %q", c.Echoes, want)
		}
	}
	c = find(t, tb.of(tb.line(1, 1, 2)), InPoem, "before “and cools”")
	if want := "8 syllables, as many as line 1"; !slices.Contains(c.Echoes, want) {
		t.Errorf("it echoes %q, not %q", c.Echoes, want)
	}
}

// TestThree: a line that no one break makes fit is broken in three, all of which
// fit.
func TestThree(t *testing.T) {
	tb := read(t, "## Long\n\n"+strings.Repeat("the long way round to the oven ", 5)+"\n")
	ref := tb.line(1, 1, 1)
	n := 0
	for _, c := range tb.of(ref) {
		if c.Head > InEdition {
			continue
		}
		if len(c.At) == 1 && fits(c.Parts) {
			t.Errorf("%s: two parts fit", c.Title)
		}
		if len(c.At) != 2 {
			continue
		}
		n++
		if !fits(c.Parts) || len(c.Parts) != 3 || len(c.Rows) != 3 {
			t.Errorf("%s: %+v", c.Title, c.Parts)
		}
		if after := tb.edited(c.Edit); len(after.set.Turnovers()) > 0 && after.set.Unsettled() > 0 {
			t.Errorf("%s leaves the line unsettled", c.Title)
		}
	}
	if n == 0 || n > 2*mostThrees {
		t.Errorf("%d ways into three", n)
	}
}

// TestSpace: what makes room for a line is just enough, and no less would do.
func TestSpace(t *testing.T) {
	tb := demo(t)
	enough := 0
	for _, o := range tb.set.Turnovers() {
		for _, c := range tb.of(o.Ref) {
			if c.Head != Space || !strings.HasPrefix(c.Title, "word spaces") && !strings.HasPrefix(c.Title, "lines run") &&
				!strings.HasPrefix(c.Title, "this poem in") && !strings.HasPrefix(c.Title, "a measure") {
				continue
			}
			enough++
			if len(c.Rows) != 1 || c.Parts[0].Overrun != 0 {
				t.Errorf("%q, %s: it takes %d rows", o.Text, c.Title, len(c.Rows))
			}
			if less, ok := lessOf(c.Edit); ok && overruns(tb.edited(less), o.Ref) == 0 {
				t.Errorf("%q, %s: less would do", o.Text, c.Title)
			}
		}
	}
	if enough < 20 {
		t.Errorf("only %d ways to make room for ten lines", enough)
	}
}

// lessOf is the edit with one step less of what it gives.
func lessOf(e pagemodel.Edit) (pagemodel.Edit, bool) {
	plain := pagemodel.DefaultDesign()
	switch e := e.(type) {
	case pagemodel.SetHead:
		e.Head.Size += pagemodel.Point / 2
		return e, e.Head.Size < plain.Size
	case pagemodel.SetDesign:
		d := e.Design
		switch {
		case d.Tighten > 1:
			d.Tighten--
		case d.RunOut > pagemodel.Point:
			d.RunOut -= pagemodel.Point
		case d.Margins.Outer < plain.Margins.Outer-pagemodel.MM(1):
			d.Margins.Outer += pagemodel.MM(1)
		default:
			return nil, false
		}
		return pagemodel.SetDesign{Design: d}, true
	}
	return nil, false
}

func overruns(tb *table, ref pagemodel.LineRef) typeset.Length {
	return lookAt(tb.set).rows(ref)[0].Overrun
}

// TestDecidedBefore: a choice takes the place of what was decided before, and a
// reason for letting a line turn stays.
func TestDecidedBefore(t *testing.T) {
	tb := read(t, dough)
	ref := tb.line(1, 1, 2)
	p, at, _ := tb.set.Collection().Line(ref)
	word := strings.Index(p.Line(at).Text(), "and cools")
	broken := tb.edited(pagemodel.Break{LineRef: ref, At: word, In: pagemodel.InEdition})
	all := broken.of(ref)
	if has(all, InEdition, "before “and cools”") {
		t.Error("a break that is there already is a choice")
	}
	c := find(t, all, InEdition, "before “and someone”")
	p, at, _ = broken.edited(c.Edit).set.Collection().Line(ref)
	if !slices.Equal(p.Line(at).Breaks(), c.At) {
		t.Errorf("the line has breaks at %v, want %v", p.Line(at).Breaks(), c.At)
	}
	find(t, all, InEdition, "as one line")
	kept := tb.edited(pagemodel.Keep{LineRef: ref, Reason: "breath"})
	all = kept.of(ref)
	if has(all, LetTurn, "at the last word that fits") {
		t.Error("what is so already is a choice")
	}
	noted := tb.edited(pagemodel.Keep{LineRef: ref, Turned: tb.set.TurnWords(ref)})
	if has(noted.of(ref), LetTurn, "at the last word that fits") {
		t.Error("what is so already is a choice, its word noted")
	}
	again := tb.edited(pagemodel.Keep{LineRef: ref, Turned: "elsewhere"})
	find(t, again.of(ref), LetTurn, "at the last word that fits")
	p, at, _ = kept.edited(find(t, all, LetTurn, "at “and cools”").Edit).set.Collection().Line(ref)
	if p.Line(at).Reason() != "breath" {
		t.Errorf("the reason is %q", p.Line(at).Reason())
	}
	p, at, _ = kept.edited(find(t, all, InEdition, "before “and cools”").Edit).set.Collection().Line(ref)
	if p.Line(at).State() != pagemodel.Broken {
		t.Errorf("broken in this edition, a kept line is %v", p.Line(at).State())
	}
}

// TestProseHasNone: a paragraph has no line ends, and the error says so.
func TestProseHasNone(t *testing.T) {
	b := pagemodel.NewBuilder(pagemodel.About{}, pagemodel.DefaultDesign())
	b.Poem(pagemodel.PoemHead{Title: "Letter"}, []pagemodel.Part{pagemodel.NewPart("", []pagemodel.Stanza{
		pagemodel.NewStanza(pagemodel.Prose, []pagemodel.Line{b.Line("Dear Sir or Madam, it was plain.")}),
	})})
	tb := set(t, b.Collection())
	if _, err := Of(tb.setter, tb.set, tb.line(1, 1, 1), prosody.English()); err == nil || !strings.Contains(err.Error(), "paragraph of prose") {
		t.Errorf("the error is %v", err)
	}
	if _, err := Of(tb.setter, tb.set, pagemodel.LineRef{Poem: 99, Line: 99}, nil); err == nil {
		t.Error("a line that is not there has choices")
	}
}

// TestWithoutALexicon: what needs no dictionary is told all the same, and the rest
// is said to be missing.
func TestWithoutALexicon(t *testing.T) {
	tb := read(t, dough)
	all, err := Of(tb.setter, tb.set, tb.line(1, 1, 2), nil)
	if err != nil {
		t.Fatal(err)
	}
	c := find(t, all, InPoem, "before “same”")
	said := strings.Join(c.Says, "; ")
	if c.Parts[0].Syllables != 0 || c.Parts[0].Stress != "" || c.Parts[0].End == prosody.AgainstSyntax {
		t.Errorf("the first part is %+v", c.Parts[0])
	}
	if !strings.Contains(said, "both parts fit; ends with “the”;") || !strings.Contains(said, "told of English only") {
		t.Errorf("it says %q", said)
	}
}

// TestEditsAreWrittenDown: every choice's edit can be kept in a file's history.
func TestEditsAreWrittenDown(t *testing.T) {
	tb := read(t, dough)
	ref := tb.line(1, 1, 2)
	kept := tb.edited(pagemodel.Keep{LineRef: ref, Reason: "breath"})
	for _, c := range kept.of(ref) {
		written, err := json.Marshal(c.Edit)
		if err != nil || string(written) == "{}" || c.Edit.Kind() == "" || c.Edit.Label() == "" {
			t.Errorf("%v, %s is written as %s: %v", c.Head, c.Title, written, err)
		}
	}
}

// TestOrder: head by head, by the measure, and back by place as it was.
func TestOrder(t *testing.T) {
	tb := demo(t)
	ref := tb.set.Turnovers()[0].Ref
	all := tb.of(ref)
	titles := func() (list []string) {
		for i := range all {
			list = append(list, all[i].Head.String()+all[i].Title)
		}
		return list
	}
	before := titles()
	for by := range BySyllables + 1 {
		Order(all, by)
		if !slices.IsSortedFunc(all, func(a, b Choice) int { return int(a.Head - b.Head) }) {
			t.Errorf("by %v the heads are mixed", by)
		}
		for i := range all[1:] {
			if a, b := &all[i], &all[i+1]; a.Head == b.Head && a.measured(by) > b.measured(by) {
				t.Errorf("by %v, %s stands before %s", by, a.Title, b.Title)
			}
		}
		if parsed, err := ParseMeasure(by.String()); err != nil || parsed != by {
			t.Errorf("%v is read as %v: %v", by, parsed, err)
		}
	}
	if slices.Equal(before, titles()) {
		t.Error("by syllables the order is the same as by place")
	}
	Order(all, ByPlace)
	if !slices.Equal(before, titles()) {
		t.Error("by place again, the order is another")
	}
	if _, err := ParseMeasure("beauty"); err == nil || !strings.Contains(err.Error(), "syllables") {
		t.Errorf("the error is %v", err)
	}
}
