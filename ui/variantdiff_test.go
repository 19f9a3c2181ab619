package ui

import (
	"slices"
	"testing"

	"headland/pagemodel"
	"headland/typeset"
)

// diffsAfter is a poem before and after some edits, and what differs.
func diffsAfter(t *testing.T, text string, edits ...func(*table) pagemodel.Edit) (a, b *pagemodel.Poem, diffs []versionDiff) {
	t.Helper()
	tb := setTable(t, verses(text))
	a = tb.poem()
	for _, edit := range edits {
		tb.edited(edit(tb))
	}
	b = tb.poem()
	return a, b, versionDiffs(a, b)
}

func textsOf(lines []versionLine) []string {
	var all []string
	for _, l := range lines {
		all = append(all, l.Text())
	}
	return all
}

// TestLinesAreAlignedByWhatTheyWere: a broken line stands beside its whole, a
// joined one beside its two, through several edits, and the other way round.
func TestLinesAreAlignedByWhatTheyWere(t *testing.T) {
	breakAt := func(words, before string) func(*table) pagemodel.Edit {
		return func(tb *table) pagemodel.Edit {
			return pagemodel.Break{LineRef: tb.versionLineRef(words), At: len(before), In: pagemodel.InPoem}
		}
	}
	join := func(words string) func(*table) pagemodel.Edit {
		return func(tb *table) pagemodel.Edit { return pagemodel.Join{LineRef: tb.versionLineRef(words)} }
	}
	for name, c := range map[string]struct {
		edits []func(*table) pagemodel.Edit
		a, b  []string
		says  string
		back  string // the other way round
	}{
		"broken": {[]func(*table) pagemodel.Edit{breakAt("The ovens", "The ovens ")},
			[]string{"The ovens wait all night"}, []string{"The ovens", "wait all night"}, "broken in B", "run on in B"},
		"broken twice": {[]func(*table) pagemodel.Edit{breakAt("The ovens", "The ovens "), breakAt("wait all", "wait ")},
			[]string{"The ovens wait all night"}, []string{"The ovens", "wait", "all night"}, "broken in B", "run on in B"},
		"joined": {[]func(*table) pagemodel.Edit{join("for someone")},
			[]string{"for someone to come down.", "Nobody comes."}, []string{"for someone to come down. Nobody comes."}, "run on in B", "broken in B"},
		"joined and broken elsewhere": {[]func(*table) pagemodel.Edit{join("The ovens"), breakAt("The ovens", "The ovens wait all night for someone ")},
			[]string{"The ovens wait all night", "for someone to come down."}, []string{"The ovens wait all night for someone", "to come down."}, "broken elsewhere", "broken elsewhere"},
	} {
		a, b, diffs := diffsAfter(t, night, c.edits...)
		back := versionDiffs(b, a)
		if len(diffs) != 1 || len(back) != 1 {
			t.Errorf("%s: %d differences, %d the other way round", name, len(diffs), len(back))
			continue
		}
		if d := diffs[0]; !slices.Equal(textsOf(d.lines[0]), c.a) || !slices.Equal(textsOf(d.lines[1]), c.b) || d.says != c.says {
			t.Errorf("%s: %q stands beside %q: %s", name, textsOf(d.lines[0]), textsOf(d.lines[1]), d.says)
		}
		if d := back[0]; !slices.Equal(textsOf(d.lines[1]), c.a) || !slices.Equal(textsOf(d.lines[0]), c.b) || d.says != c.back {
			t.Errorf("%s, the other way round: %q stands beside %q: %s", name, textsOf(d.lines[0]), textsOf(d.lines[1]), d.says)
		}
	}
}

// TestWhatDiffersIsSaid in words, one edit at a time.
func TestWhatDiffersIsSaid(t *testing.T) {
	for want, edit := range map[string]func(*table) pagemodel.Edit{
		"stanza 1, line 2: the words differ": func(tb *table) pagemodel.Edit {
			return pagemodel.Retype{LineRef: tb.versionLineRef("for someone"), Text: "for somebody to come down."}
		},
		"stanza 1, line 2: another indent": func(tb *table) pagemodel.Edit {
			return pagemodel.Indent{LineRef: tb.versionLineRef("for someone"), To: pagemodel.OneEm}
		},
		"stanza 1, line 2: other gaps": func(tb *table) pagemodel.Edit {
			return pagemodel.SetGap{LineRef: tb.versionLineRef("for someone"), At: 4, Width: pagemodel.OneEm}
		},
		"stanza 1, line 2: broken otherwise in this edition": func(tb *table) pagemodel.Edit {
			return pagemodel.Break{LineRef: tb.versionLineRef("for someone"), At: 4, In: pagemodel.InEdition}
		},
		"stanza 1, line 3: a stanza begins here in B": func(tb *table) pagemodel.Edit {
			return pagemodel.StanzaBreak{LineRef: tb.versionLineRef("for someone"), Open: true}
		},
		"stanza 2, line 1: a stanza begins here in A": func(tb *table) pagemodel.Edit {
			return pagemodel.StanzaBreak{LineRef: tb.versionLineRef("Nobody")}
		},
		"the title": func(tb *table) pagemodel.Edit {
			h := tb.poem().Head()
			h.Title = "Night Shift"
			return pagemodel.SetHead{Poem: tb.poem().ID(), Head: h}
		},
	} {
		if _, _, diffs := diffsAfter(t, night, edit); len(diffs) != 1 || diffs[0].words() != want {
			t.Errorf("want %q, got %d differences: %+v", want, len(diffs), diffs)
		}
	}
}

// TestAliensStandWhereTheyFollow: a line that only one version has stands after
// the one that it follows there, and says in which it is.
func TestAliensStandWhereTheyFollow(t *testing.T) {
	line := pagemodel.NewLine
	poem := func(lines ...pagemodel.Line) *pagemodel.Poem {
		return pagemodel.NewPoem(1, pagemodel.PoemHead{}, []pagemodel.Part{pagemodel.NewPart("", []pagemodel.Stanza{pagemodel.NewStanza(pagemodel.Verse, lines)})})
	}
	a := poem(line(1, "one"), line(2, "two"), line(3, "three"))
	b := poem(line(1, "one"), line(4, "four"), line(3, "three"), line(5, "five"))
	var got []string
	for _, d := range versionDiffs(a, b) {
		got = append(got, d.words())
		if d.only == onlyNowhere || len(d.lines[d.only]) != 1 || d.after[1-d.only] == 0 {
			t.Errorf("%q: only in %d, after %v", d.words(), d.only, d.after)
		}
	}
	want := []string{"stanza 1, line 2: only in B", "stanza 1, line 2: only in A", "stanza 1, line 4: only in B"}
	if !slices.Equal(got, want) {
		t.Errorf("got %q, want %q", got, want)
	}
	moved := versionDiffs(a, poem(line(3, "three"), line(1, "one"), line(2, "two")))
	if len(moved) != 1 || moved[0].lines[0][0].ID() != 3 || moved[0].says != "it stands elsewhere in B" {
		t.Errorf("a line that was moved: %+v", moved)
	}
}

// TestDifferingWordsAreMarked and no others.
func TestDifferingWordsAreMarked(t *testing.T) {
	_, _, diffs := diffsAfter(t, night, func(tb *table) pagemodel.Edit {
		return pagemodel.Retype{LineRef: tb.versionLineRef("for someone"), Text: "for somebody at all to come down."}
	})
	for side, want := range [2][]string{{"someone"}, {"somebody", "at", "all"}} {
		var got []string
		text := diffs[0].lines[side][0].Text()
		for _, w := range pagemodel.Words(text) {
			if diffs[0].differ[side][0][[2]int{w.Start, w.End}] {
				got = append(got, text[w.Start:w.End])
			}
		}
		if !slices.Equal(got, want) {
			t.Errorf("%s: marked are %q, want %q", sigla[side], got, want)
		}
	}
}

// TestEveryDifferenceHasItsRows: of each version as its pages have them, in the
// head too.
func TestEveryDifferenceHasItsRows(t *testing.T) {
	tb := versioned(t)
	h := tb.poem().Head()
	h.Title = "Night Shift"
	tb.edited(pagemodel.SetHead{Poem: tb.poem().ID(), Head: h})
	v := tb.w.variantsOf(tb.poem())
	var got [2][]string
	for i := range v.compared() {
		for side := range got {
			rows, _ := v.set(v.shown[side]).rowsOf(&v.compared()[i], side)
			for j := range rows {
				got[side] = append(got[side], rowText(&rows[j]))
				if rows[j].Role == typeset.RoleVerse && rows[j].X != 0 {
					t.Errorf("%q begins at %v of the measure", rowText(&rows[j]), rows[j].X)
				}
			}
		}
	}
	want := [2][]string{
		{"Night Shift", "The ovens", "wait all night", "its lamps along the wet wall."},
		{"Trial", "The ovens wait all night", "its lamps on the wet wall."},
	}
	for side := range got {
		if !slices.Equal(got[side], want[side]) {
			t.Errorf("%s has %q, want %q", sigla[side], got[side], want[side])
		}
	}
}
