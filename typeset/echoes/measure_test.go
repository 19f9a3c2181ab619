package echoes

import (
	"math"
	"slices"
	"strings"
	"testing"

	"headland/pagemodel"
)

// TestFold sees which words are one and which are not.
func TestFold(t *testing.T) {
	one := []string{
		"oven ovens", "loaf loaves", "bake bakes baked baking", "stop stops stopped stopping", "hope hoped hoping",
		"hop hopped hopping", "carry carries carried carrying", "die dies died dying", "knife knives", "woman women", "man men",
		"go goes went gone going", "say says said", "box boxes", "bus buses", "kiss kisses kissed", "barm barms",
		"building buildings build", "travel travelled travelling", "dye dyed", "tooth teeth", "eat ate eaten", "church churches",
		"roll rolled rolling", "knead kneaded kneading", "sieve sieves sieved", "sob sobbed sobbing", "clog clogged", "stair stairs",
	}
	for _, words := range one {
		first, rest, _ := strings.Cut(words, " ")
		for word := range strings.FieldsSeq(rest) {
			if a, b := english().fold(first), english().fold(word); a != b {
				t.Errorf("%s and %s are two words, %s and %s", first, word, a, b)
			}
		}
	}
	for _, words := range []string{
		"car care", "star stare", "hop hope", "sing string", "the thing", "see seed", "new news", "even evening", "morn morning",
		"pass past", "kin king", "win wing", "rise rose", "leave left", "bake baker", "dye die", "wick wicked", "no nose",
		"need knee", "add ad", "physic physics", "bell belly", "bus bu", "man mane",
	} {
		a, b, _ := strings.Cut(words, " ")
		if english().fold(a) == english().fold(b) {
			t.Errorf("%s and %s are one word, %s", a, b, english().fold(a))
		}
	}
}

// TestSurprise compares the measure with values worked out by hand: 2 (k ln(k/E) -
// (k - E)).
func TestSurprise(t *testing.T) {
	for _, test := range []struct {
		n              int
		expected, want float64
	}{
		{10, 5, 20*math.Ln2 - 10},
		{1, 1 / math.E, 2 / math.E},
		{4, 4, 0}, {3, 4, 0}, {0, 1, 0}, {5, 0, 0},
	} {
		if got := surprise(test.n, test.expected); math.Abs(got-test.want) > 1e-9 {
			t.Errorf("surprise(%d, %g) = %g, want %g", test.n, test.expected, got, test.want)
		}
	}
}

// TestShares compares shares with orders of frequency that the Brown Corpus gives
// (H. Kučera and W. N. Francis, Computational Analysis of Present-Day American
// English, 1967; in a million words: man 1207, hand 431, night 411, street 244,
// bread 41, oven 7; from memory).
func TestShares(t *testing.T) {
	falling := []string{"man", "hand", "night", "street", "bread", "oven", "barm"}
	for i, word := range falling[1:] {
		if english().shareOf(word) >= english().shareOf(falling[i]) {
			t.Errorf("%s is not rarer than %s", word, falling[i])
		}
	}
	total := 0.0
	for _, share := range english().shares {
		total += share
	}
	if total < 1 || total > 2 {
		t.Errorf("the shares add up to %g; each is the larger of two, so want 1 to 2", total)
	}
	if share := english().shareOf("barm"); share != unlisted {
		t.Errorf("a word that is not in the table has the share %g, want %g", share, unlisted)
	}
	for british, american := range map[string]string{"colour": "color", "centre": "center", "kerb": "curb", "plough": "plow", "mould": "mold"} {
		if a, b := english().shareOf(british), english().shareOf(american); a < b {
			t.Errorf("%s has the share %g, less than %s with %g", british, a, american, b)
		}
	}
}

// TestWords sees what is a word, and how much of it.
func TestWords(t *testing.T) {
	for text, want := range map[string]string{
		"It’s the baker’s, isn’t it?":     "It the baker is it",
		"I won't, can't, shan't; they'll": "I wo ca sha they",
		"half-light—O’Hara at 5 o’clock":  "half light O’Hara at o’clock",
		"‘Ovens’, ‘ovens’ cafe\u0301":     "Ovens ovens cafe\u0301",
		"12 & 14":                         "",
	} {
		var words []string
		for _, token := range newVocabulary("en-GB").tokens(nil, 0, text) {
			words = append(words, text[token.from:token.to])
		}
		if got := strings.Join(words, " "); got != want {
			t.Errorf("the words of %q are %q, want %q", text, got, want)
		}
	}
	if got := newVocabulary("fr").stemsOf("l’heure d’hier"); len(got) != 4 {
		t.Errorf("the words of l’heure d’hier in French are %d, want 4", len(got))
	}
	if isEnglish("de") || isEnglish("enm") || !isEnglish("EN-us") || !isEnglish("") {
		t.Error("a language is taken for another")
	}
	if Basis("en") == Basis("de") {
		t.Error("Basis says the same of a language with a table and of one without")
	}
}

// TestGrammar sees that no word of grammar is folded into a word of content.
func TestGrammar(t *testing.T) {
	for word := range grammar {
		if folded := english().fold(word); folded != word {
			t.Errorf("the word of grammar %s is folded to %s", word, folded)
		}
	}
	for word := range lasting {
		if grammar[word] || english().fold(word) != word {
			t.Errorf("%s does not last", word)
		}
	}
}

// nacht is a German book of ours: Ofen, planted in three of its ten poems; und,
// which is everywhere; noch, which is in four; Wand, which stands twice, and six
// other words of four letters that stand once.
const nacht = `---
language: de
---

## Eins

Der Ofen brummt und wärmt die Wand,
der Ofen und der Ofen summt.

## Zwei

Die Straße schläft noch und träumt vom Tag.

## Drei

Ein Wagen kommt noch und bremst am Tor.

## Vier

Im Ofen liegt und bräunt das Brot,
am Ofen lehnt und gähnt die Frau.

## Fünf

Der Regen fällt noch und wäscht die Wand.

## Sechs

Die Lampe flackert noch und verlischt.

## Sieben

Der Ofen kühlt und knackt. Der Ofen schweigt,
und Ofen heißt hier Nacht.

## Acht

Ein Hund bellt und ein Zug fährt ab.

## Neun

Die Milch steht kalt und blau.

## Zehn

Der Morgen graut und zahlt.
`

// TestOtherLanguages sees that words are measured against the book's own where
// there is no table.
func TestOtherLanguages(t *testing.T) {
	set := read(t, nacht)
	if got := set.Collection().About().Language; got != "de" {
		t.Fatalf("the book is in %q", got)
	}
	found := find(t, set)
	i := slices.IndexFunc(found, func(e Echo) bool { return e.Name == "Ofen" })
	if i < 0 {
		t.Fatalf("the echoes are %q, without Ofen", names(found))
	}
	if e := found[i]; math.Abs(e.Expected-8.0/7) > 1e-9 {
		t.Errorf("Ofen is expected %g times, want as often as the others of its length, 8 words of 7", e.Expected)
	}
	if len(found) != 1 || len(found[0].Found) != 8 || found[0].Poems != 3 {
		t.Errorf("the echoes are %q, Ofen %d times in %d poems; want Ofen alone, 8 times in 3", names(found), len(found[0].Found), found[0].Poems)
	}
}

// TestExpected expects a word as often as its share of the words of content.
func TestExpected(t *testing.T) {
	set := read(t, "## One\n\nThe oven and a loaf.\n\n## Two\n\nIt was by the oven, and not here.\n")
	set = edited(t, set, pagemodel.SetEcho{Echo: pagemodel.Echo{Name: "heat", Words: []string{"oven", "ovens", "furnace"}}})
	want := 3 * (english().shareOf("oven") + english().shareOf("furnace"))
	if e := find(t, set)[0]; math.Abs(e.Expected-want) > 1e-12 || e.Surprise != surprise(2, want) {
		t.Errorf("in three words of content the oven is expected %g times, surprising by %g; want %g", e.Expected, e.Surprise, want)
	}
}
