package typeset

import (
	"slices"
	"testing"

	"headland/pagemodel"
)

// TestIndexOrder: the four first lines that tell word by word from letter by
// letter, on the page: "A" before "Ah", or "ahs" before "ana".
func TestIndexOrder(t *testing.T) {
	narrow, slumber := "A narrow fellow in the grass", "A slumber did my spirit seal"
	flower, sea := "Ah, Sun-flower!", "The sea is calm to-night"
	var poems []poemNamed
	for _, line := range []string{sea, flower, slumber, narrow} {
		poems = append(poems, poemNamed{pagemodel.PoemHead{}, line, 1})
	}
	c := bakery(poems...).Collection()
	for alphabet, want := range map[pagemodel.Alphabet][]string{
		pagemodel.WordByWord:     {narrow, slumber, flower, sea},
		pagemodel.LetterByLetter: {flower, narrow, slumber, sea},
	} {
		m := pagemodel.Matter{Alphabet: alphabet}.With(pagemodel.MatterPage{Kind: pagemodel.IndexPage})
		if words, _ := referredIn(setOf(withMatter(t, c, m))); !slices.Equal(words, want) {
			t.Errorf("%v: %q, want %q", alphabet, words, want)
		}
	}
}

// TestIndexOfTitles: titles and first lines in one sequence; an article does
// not count in a title; a title that is the first line too stands once; of two
// poems with one title the earlier stands first.
func TestIndexOfTitles(t *testing.T) {
	c := bakery(
		poemNamed{pagemodel.PoemHead{Title: "A Tale"}, "The street at four,", 2},
		poemNamed{pagemodel.PoemHead{Title: "Song"}, "Song", 2},
		poemNamed{pagemodel.PoemHead{Title: "Song"}, "Kneading", 2},
		poemNamed{pagemodel.PoemHead{}, "A lamp", 2},
	).Collection()
	s := setOf(withMatter(t, c, pagemodel.Matter{}.With(pagemodel.MatterPage{Kind: pagemodel.IndexPage})))
	words, folios := referredIn(s)
	if want := []string{"A lamp", "Kneading", "Song", "Song", "A Tale", "The street at four"}; !slices.Equal(words, want) {
		t.Errorf("%q, want %q", words, want)
	}
	if want := []string{"4", "3", "2", "3", "1", "1"}; !slices.Equal(folios, want) {
		t.Errorf("on pages %q, want %q", folios, want)
	}
	italic := s.faces.styles[styleItalic]
	for _, p := range s.matter.end {
		for i := range p.rows[1:] {
			r := &p.rows[i+1].Row
			title := rowText(r) == "Song" || rowText(r) == "A Tale"
			if (r.Runs[0].Face == italic) != title {
				t.Errorf("%q is set in italic: %v", rowText(r), !title)
			}
		}
	}
}

// TestOpeningWords: a prose poem stands under its first words, not its first
// paragraph.
func TestOpeningWords(t *testing.T) {
	b := bakery()
	text := "One two three four five six seven eight, nine ten."
	for _, kind := range []pagemodel.StanzaKind{pagemodel.Prose, pagemodel.Verse} {
		b.Poem(pagemodel.PoemHead{}, []pagemodel.Part{pagemodel.NewPart("", []pagemodel.Stanza{pagemodel.NewStanza(kind, []pagemodel.Line{b.Line(text)})})})
	}
	b.Poem(pagemodel.PoemHead{}, nil)
	var got []string
	for _, p := range b.Collection().Poems() {
		got = append(got, openingWords(p))
	}
	if want := []string{"One two three four five six seven eight, …", text, ""}; !slices.Equal(got, want) {
		t.Errorf("%q, want %q", got, want)
	}
}
