package pagemodel

import (
	"slices"
	"strings"
	"testing"
)

func inOrder(a Alphabet, as IndexedAs, texts ...string) []string {
	return slices.SortedFunc(slices.Values(texts), func(x, y string) int {
		return strings.Compare(a.Key(x, as, ""), a.Key(y, as, ""))
	})
}

// TestAlphabets: the four first lines that tell the two orders apart. Word by
// word "A" stands before "Ah"; letter by letter "ahs" stands before "ana".
func TestAlphabets(t *testing.T) {
	narrow, slumber := "A narrow fellow in the grass", "A slumber did my spirit seal"
	flower, sea := "Ah, Sun-flower!", "The sea is calm to-night"
	for a, want := range map[Alphabet][]string{
		WordByWord:     {narrow, slumber, flower, sea},
		LetterByLetter: {flower, narrow, slumber, sea},
	} {
		if got := inOrder(a, AsFirstLine, sea, flower, slumber, narrow); !slices.Equal(got, want) {
			t.Errorf("%v: %q, want %q", a, got, want)
		}
	}
}

// TestIndexKeys: what a text stands under. Its article counts in a first line
// and not in a title ("A Tale" stands under T).
func TestIndexKeys(t *testing.T) {
	for _, tc := range []struct {
		text, language string
		as             IndexedAs
		words, letters string
	}{
		{"A Tale", "", AsTitle, "tale", "tale"},
		{"A Tale", "", AsFirstLine, "a tale", "atale"},
		{"The", "en-GB", AsTitle, "the", "the"},
		{"“The Baker’s Dozen”", "en-GB", AsTitle, "bakers dozen", "bakersdozen"},
		{"Theatre", "", AsTitle, "theatre", "theatre"},
		{"Die Nacht", "de", AsTitle, "nacht", "nacht"},
		{"Die Now", "", AsTitle, "die now", "dienow"},
		{"Rye—and after", "", AsFirstLine, "rye and after", "ryeandafter"},
		{"Żur, Œuf and Étude", "", AsFirstLine, "zur oeuf and etude", "zuroeufandetude"},
		{"E\u0301tude No 9", "", AsFirstLine, "etude no 9", "etudeno9"},
		{"İzmir", "", AsFirstLine, "izmir", "izmir"},
		{"…", "", AsFirstLine, "", ""},
	} {
		if got := WordByWord.Key(tc.text, tc.as, tc.language); got != tc.words {
			t.Errorf("%q word by word: %q, want %q", tc.text, got, tc.words)
		}
		if got := LetterByLetter.Key(tc.text, tc.as, tc.language); got != tc.letters {
			t.Errorf("%q letter by letter: %q, want %q", tc.text, got, tc.letters)
		}
	}
}

// TestShortBeforeLong: nothing comes before something, in either order (New
// Hart's Rules, chapter 19; from memory).
func TestShortBeforeLong(t *testing.T) {
	got := inOrder(WordByWord, AsTitle, "Breadcrumb", "Bread Knife", "Bread", "The Bread Line")
	if want := []string{"Bread", "Bread Knife", "The Bread Line", "Breadcrumb"}; !slices.Equal(got, want) {
		t.Errorf("word by word: %q, want %q", got, want)
	}
	got = inOrder(LetterByLetter, AsTitle, "Breadcrumb", "Bread Knife", "Bread", "The Bread Line")
	if want := []string{"Bread", "Breadcrumb", "Bread Knife", "The Bread Line"}; !slices.Equal(got, want) {
		t.Errorf("letter by letter: %q, want %q", got, want)
	}
}
