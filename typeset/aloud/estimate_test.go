package aloud

import (
	"testing"

	"headland/pagemodel"
	"headland/typeset/prosody"
)

const oven = `The oven is lit,
and the street

is dark until
the first loaves: warm

bread`

// TestCounts holds what is counted, by hand. The syllables of these lines are 5 3 4
// 4 1.
func TestCounts(t *testing.T) {
	s := newShelf()
	s.poem("Oven", oven)
	c := s.Collection()
	p := Book(c).Items[0].Poem
	line := func(text string) pagemodel.LineID { return s.ids[text] }
	tests := []struct {
		name string
		item pagemodel.Item
		want Counts
	}{
		{"a poem", pagemodel.Item{Poem: p},
			Counts{Words: 15, Syllables: 17, Lines: 5, Ends: 1, RunOns: 1, Stanzas: 3, Titled: true}},
		{"said before", pagemodel.Item{Poem: p, Before: "One more — and a short one."},
			Counts{Words: 15, Syllables: 17, Lines: 5, Ends: 1, RunOns: 1, Stanzas: 3, Titled: true, TalkWords: 6}},
		{"seconds of talk", pagemodel.Item{Poem: p, Before: "One more.", Talk: 20},
			Counts{Words: 15, Syllables: 17, Lines: 5, Ends: 1, RunOns: 1, Stanzas: 3, Titled: true, TalkGiven: 20}},
		{"an extract", pagemodel.Item{Poem: p, From: line("and the street"), To: line("is dark until")},
			Counts{Words: 6, Syllables: 7, Lines: 2, Stanzas: 2, Titled: true}},
		{"from its end to its beginning", pagemodel.Item{Poem: p, From: line("is dark until"), To: line("and the street")},
			Counts{Words: 6, Syllables: 7, Lines: 2, Stanzas: 2, Titled: true}},
		{"from a line that is gone", pagemodel.Item{Poem: p, From: 999, To: line("and the street")},
			Counts{Words: 7, Syllables: 8, Lines: 2, Ends: 1, Stanzas: 1, Titled: true}},
		{"said otherwise", pagemodel.Item{Poem: p, To: line("The oven is lit,"), Said: []pagemodel.Saying{
			{Line: line("The oven is lit,"), At: 0, Word: "The", As: "This old"},
			{Line: line("The oven is lit,"), At: 4, Word: "kiln", As: "furnace"},
			{Line: line("is dark until"), At: 0, Word: "is", As: "is not"},
			{Line: line("The oven is lit,"), At: 99, Word: "lit", As: "burning"},
			{Line: line("The oven is lit,"), At: 12, Word: "lit", As: "burning"}}},
			Counts{Words: 5, Syllables: 7, Lines: 1, Stanzas: 1, Titled: true}},
		{"from elsewhere", pagemodel.Item{Title: "Oven", Text: "\n" + oven + "\n\n\n"},
			Counts{Words: 15, Syllables: 17, Lines: 5, Ends: 1, RunOns: 1, Stanzas: 3, Titled: true}},
		{"from elsewhere, said otherwise", pagemodel.Item{Text: "the\r\noven", Said: []pagemodel.Saying{{At: 5, Word: "oven", As: "kilns"}}},
			Counts{Words: 2, Syllables: 2, Lines: 2, RunOns: 1, Stanzas: 1}},
		{"talk only", pagemodel.Item{Before: "Good evening."}, Counts{TalkWords: 2}},
		{"a poem that is gone", pagemodel.Item{Poem: 999, Text: "no", Before: "Good evening."}, Counts{TalkWords: 2}},
	}
	for _, test := range tests {
		t.Run(test.name, func(t *testing.T) {
			if got := CountsOf(c, test.item, prosody.English()); got != test.want {
				t.Errorf("got  %+v\nwant %+v", got, test.want)
			}
		})
	}
}

// TestSeconds holds the sum, by hand.
func TestSeconds(t *testing.T) {
	v := pagemodel.Voice{Syllables: 120, LineEnd: 0.4, RunOn: 0.1, Stanza: 1, Title: 3, Words: 60}
	c := newShelf().Collection()
	e := Of(c, pagemodel.Item{Title: "Oven", Text: oven, Before: "One more."}, prosody.English(), v)
	if want := 17*0.5 + 0.4 + 0.1 + 3*1 + 3 + 2; e.Seconds < want-1e-9 || e.Seconds > want+1e-9 || e.Talk != 2 || e.Title != 3 {
		t.Errorf("got %+v, want %.3f s", e, want)
	}
}

// TestShapes holds what parts, paragraphs, stepped lines and white come to.
func TestShapes(t *testing.T) {
	s := newShelf()
	lines := func(texts ...string) (all []pagemodel.Line) {
		for _, text := range texts {
			all = append(all, s.Line(text))
		}
		return all
	}
	verse := func(lines []pagemodel.Line) []pagemodel.Stanza {
		return []pagemodel.Stanza{pagemodel.NewStanza(pagemodel.Verse, lines)}
	}
	stepped := lines("Rye.", "And salt.", "Water.")
	stepped[1] = stepped[1].WithDropped(true)
	spaced := lines("Rye.", "And salt.", "Water.")
	spaced[2] = spaced[2].WithAbove(1)
	broken := lines("Rye and salt and water.")
	prose := []pagemodel.Stanza{pagemodel.NewStanza(pagemodel.Prose, lines("Rye, and salt. Then water,")), pagemodel.NewStanza(pagemodel.Prose, lines("and time."))}
	numbered := []pagemodel.Part{pagemodel.NewPart("One", verse(lines("Rye."))), pagemodel.NewPart("*", verse(lines("Salt.")))}
	tests := []struct {
		name  string
		parts []pagemodel.Part
		want  Counts
	}{
		{"stepped", []pagemodel.Part{pagemodel.NewPart("", verse(stepped))}, Counts{Words: 4, Syllables: 5, Lines: 3, Ends: 1, RunOns: 1, Stanzas: 1}},
		{"white above", []pagemodel.Part{pagemodel.NewPart("", verse(spaced))}, Counts{Words: 4, Syllables: 5, Lines: 3, Ends: 1, Stanzas: 2}},
		{"a row of points", []pagemodel.Part{pagemodel.NewPart("", verse(lines("Rye.", ". . .", "Salt.")))}, Counts{Words: 2, Syllables: 2, Lines: 2, Stanzas: 2}},
		{"prose", []pagemodel.Part{pagemodel.NewPart("", prose)}, Counts{Words: 7, Syllables: 8, Stanzas: 2}},
		{"parts", numbered, Counts{Words: 3, Syllables: 3, Lines: 2, Stanzas: 3}},
		{"no signs", []pagemodel.Part{pagemodel.NewPart("", verse(lines("salt", "in the", "bread", "water")))}, Counts{Words: 5, Syllables: 6, Lines: 4, Ends: 2, RunOns: 1, Stanzas: 1}},
		{"signs", []pagemodel.Part{pagemodel.NewPart("", verse(lines("salt", "in the", "bread", "water,")))}, Counts{Words: 5, Syllables: 6, Lines: 4, RunOns: 3, Stanzas: 1}},
		{"this edition's breaks", []pagemodel.Part{pagemodel.NewPart("", verse(broken))}, Counts{Words: 5, Syllables: 6, Lines: 1, Stanzas: 1}},
	}
	for _, test := range tests {
		s.Poem(pagemodel.PoemHead{}, test.parts)
	}
	c := s.Collection()
	ref := pagemodel.LineRef{Poem: Book(c).Items[len(tests)-1].Poem, Line: broken[0].ID()}
	c = mustDo(t, c, pagemodel.Break{LineRef: ref, At: 6, In: pagemodel.InEdition})
	for i, item := range Book(c).Items {
		if got := CountsOf(c, item, prosody.English()); got != tests[i].want {
			t.Errorf("%s:\ngot  %+v\nwant %+v", tests[i].name, got, tests[i].want)
		}
	}
}

// TestJoined holds that an extract goes on to a line that has been joined into
// another.
func TestJoined(t *testing.T) {
	s := newShelf()
	s.poem("Oven", "the oven\nis lit\nand warm")
	c := s.Collection()
	item := first(c)
	item.To = s.ids["is lit"]
	c = mustDo(t, c, pagemodel.Join{LineRef: pagemodel.LineRef{Poem: item.Poem, Line: s.ids["the oven"]}})
	if got := CountsOf(c, item, prosody.English()); got.Words != 4 || got.Lines != 1 {
		t.Errorf("got %+v, want the four words of the joined line", got)
	}
}

// TestAsThePoetSays holds that a word goes as the poet notes that it does, and
// that a note taken back is forgotten.
func TestAsThePoetSays(t *testing.T) {
	s := newShelf()
	s.poem("", "zwoffling fire\nthe bread")
	c := s.Collection()
	count := func() Counts { return CountsOf(c, first(c), prosody.English()) }
	before := count()
	c = mustDo(t, c, pagemodel.Say{Word: "zwoffling", As: "zwof-fle-ING"})
	if got := count(); before.Guessed != 1 || got.Guessed != 0 || got.Syllables != before.Syllables+1 {
		t.Errorf("before %+v, then %+v", before, got)
	}
	if again := CountsOf(c, first(c), prosody.English().With(c.Spoken())); again != count() {
		t.Errorf("with a lexicon that knows it already, %+v", again)
	}
	c = mustDo(t, c, pagemodel.Say{Word: "zwoffling"})
	if got := count(); got != before {
		t.Errorf("taken back, %+v; before %+v", got, before)
	}
}

// TestLeftOut holds that a poem that is left out of the book can be read.
func TestLeftOut(t *testing.T) {
	s := newShelf()
	s.poem("Oven", oven)
	s.poem("Salt", "salt")
	c := s.Collection()
	item := first(c)
	order := c.Arrangement()
	order.LeftOut, order.Order = order.Order[:1], order.Order[1:]
	c = mustDo(t, c, pagemodel.Rearrange{Arrangement: order})
	plan := PlanOf(c, pagemodel.Reading{Items: []pagemodel.Item{item}}, prosody.English(), pagemodel.Voice{}, nil)
	if got := plan.Items[0]; got.Words != 15 || got.Number != 0 || got.Title != "Oven" {
		t.Errorf("got %+v", got)
	}
}
