package difference

import (
	"testing"

	"headland/pagemodel"
)

const river = "the end of the line, and the river and a water and the end of a day"

// TestFound pins words that a setter finds although the line has them more than
// once, and words that he can't take for others.
func TestFound(t *testing.T) {
	for _, tc := range []struct {
		name     string
		was, is  string
		what     Kind
		wasSays  string
		isSays   string
		unquoted string // the first words quoted of what shall be
	}{
		{"one of four", river, "the end of the line, and a river and a water and the end of a day", Substitute, "“the” between “and” and “river”", "“a”", "a"},
		{"the first", river, "an end of the line, and the river and a water and the end of a day", Substitute, "“the” before “end of the”", "“an”", "an"},
		{"near a like one", river, "the end of the line, and the river and a water and the last of a day", Substitute, "“end” between “and the” and “of a”", "“last”", "last"},
		{"one of two out", river, "the end of the line, and the river and water and the end of a day", Delete, "“a” between “and” and “water”", "nothing", ""},
		{"put in", river, "the end of the line, and the river and a water and the end of a long day", Insert, "nothing between “a” and “day”", "“long”", "long"},
		{"put in where two words recur", river, "the end of the line, and the river and a water and the very end of a day", Insert, "nothing between “and the” and “end of”", "“very”", "very"},
		{"a no-break space", "dark\u00a0bread and salt", "dark bread and salt", Substitute, "“dark\u00a0bread”, with a no-break space after “dark”", "“dark bread”, with a word space after “dark”", "dark bread"},
		{"a soft hyphen", "bread and ex\u00adtra salt", "bread and extra salt", Substitute, "“ex\u00adtra”, with a soft hyphen after “ex”", "“extra”, with no soft hyphen after “ex”", "extra"},
		{"a no-break space put in", "dark bread", "dark\u00a0bread", Substitute, "“dark bread”, with a word space after “dark”", "“dark\u00a0bread”, with a no-break space after “dark”", "dark\u00a0bread"},
		{"an em space", "dark bread", "dark\u2003bread", Space, "“dark bread” with a word space", "“dark bread” with an em space", "dark bread"},
		{"emptied", "One line", "", Substitute, "“One line”", "an empty line", ""},
		{"quotation marks", "“He said", "\"He said", Substitute, "«“He»", "«\"He»", "\"He"},
		{"both kinds of quotation marks", "“«He» said", "“«She» said", Substitute, "‹“«He»›", "‹“«She»›", "“«She»"},
		{"single quotation marks", "he said ‘no’", "he said ‘yes’", Substitute, "“‘no’”", "“‘yes’”", "‘yes’"},
	} {
		t.Run(tc.name, func(t *testing.T) {
			c, refs := poemOf([]string{tc.was})
			is, err := retype(refs[0], tc.is).Apply(c)
			if err != nil {
				t.Fatal(err)
			}
			changes := Between(c, is)
			mustGive(t, 0, c, is, changes)
			mustMirror(t, c, is)
			if len(changes) != 1 || changes[0].Kind != tc.what || changes[0].Was != tc.wasSays || changes[0].Is != tc.isSays {
				t.Errorf("got\n%s", listed(changes))
			}
			if words, _, _ := Unquote(changes[0].Is); words != tc.unquoted {
				t.Errorf("%q quotes %q, want %q", changes[0].Is, words, tc.unquoted)
			}
		})
	}
}

// TestStyledWordsFound does the same for words that change their type only.
func TestStyledWordsFound(t *testing.T) {
	c, refs := poemOf([]string{river})
	for _, tc := range []struct {
		from, to int
		want     string
	}{
		{25, 28, "“the” in roman, between “and” and “river”"},
		{29, 34, "“river” in roman"},
		{30, 33, "“ive” in roman, in “river”"},
	} {
		is, err := pagemodel.Restyle{LineRef: refs[0], Start: tc.from, End: tc.to, Style: pagemodel.Italic}.Apply(c)
		if err != nil {
			t.Fatal(err)
		}
		if got := Between(c, is)[0].Was; got != tc.want {
			t.Errorf("got %q, want %q", got, tc.want)
		}
	}
}

// TestEmptyLinesAreNamed sees that nobody is asked to set the name of a line
// without words.
func TestEmptyLinesAreNamed(t *testing.T) {
	with, refs := poemOf([]string{salt, "", moon})
	joined, err := pagemodel.Join{LineRef: refs[0]}.Apply(with)
	if err != nil {
		t.Fatal(err)
	}
	in, out := Between(joined, with), Between(with, joined)
	if len(in) != 1 || in[0].Is != "an empty line" || len(out) != 1 || out[0].Was != "an empty line" {
		t.Errorf("an empty line put in, and taken out:\n%s\n%s", listed(in), listed(out))
	}
	indented, err := pagemodel.Indent{LineRef: refs[1], To: pagemodel.OneEm}.Apply(with)
	if err != nil {
		t.Fatal(err)
	}
	if got := Between(with, indented)[0].Is; got != "an empty line indented 1 em" {
		t.Errorf("an empty line indented is %q", got)
	}
}

// TestPageTakenOut sees that a page of the prelims is taken out by one change, the
// words that stood on it along with it.
func TestPageTakenOut(t *testing.T) {
	none, _ := poemOf([]string{salt})
	page := pagemodel.MatterPage{Kind: pagemodel.DedicationPage, Title: "To all", Text: []string{"for the", "night shift"}}
	with, err := pagemodel.SetMatter{Matter: pagemodel.Matter{Pages: []pagemodel.MatterPage{page}}}.Apply(none)
	if err != nil {
		t.Fatal(err)
	}
	changes := Between(with, none)
	mustGive(t, 0, with, none, changes)
	if len(changes) != 1 || changes[0].Kind != Delete || changes[0].Field != "dedication page" {
		t.Errorf("got\n%s", listed(changes))
	}
}

// TestUnits sees that lengths of the design are written as all others are.
func TestUnits(t *testing.T) {
	c, _ := poemOf([]string{salt})
	d := c.Design()
	d.Size, d.Margins.Outer = pagemodel.Pt(9.5), pagemodel.Pt(45)
	is, err := pagemodel.SetDesign{Design: d}.Apply(c)
	if err != nil {
		t.Fatal(err)
	}
	says := map[string]string{}
	for _, ch := range Between(c, is) {
		says[ch.Field] = ch.Is
	}
	if says["type size"] != "9.5 pt" || says["outer margin"] != "45 pt" {
		t.Errorf("the design is said to be %q", says)
	}
}

// TestWhiteAboveThePoem sees that nothing is told of white above the line that a
// poem begins with: it is not printed there. Below the heading of a part it is.
func TestWhiteAboveThePoem(t *testing.T) {
	for heading, want := range map[string]int{"": 0, "1": 1} {
		b := pagemodel.NewBuilder(pagemodel.About{}, pagemodel.DefaultDesign())
		l := b.Line(salt)
		b.Poem(pagemodel.PoemHead{Title: "Ovens"}, []pagemodel.Part{pagemodel.NewPart(heading, []pagemodel.Stanza{pagemodel.NewStanza(pagemodel.Verse, []pagemodel.Line{l, b.Line(moon)})})})
		c := b.Collection()
		ref := pagemodel.LineRef{Poem: c.Order()[0].Poem.ID(), Line: l.ID()}
		is, err := pagemodel.SetAbove{LineRef: ref, Lines: 2}.Apply(c)
		if err != nil {
			t.Fatal(err)
		}
		if changes := Between(c, is); len(changes) != want || !TextOf(c).Equal(TextOf(is)) != (want > 0) {
			t.Errorf("below the heading %q: %d changes, want %d:\n%s", heading, len(changes), want, listed(changes))
		}
	}
}
