package prosody

import (
	"reflect"
	"slices"
	"strings"
	"sync"
	"testing"
)

// syllableCounts are all the counts that a word has, the usual first.
func syllableCounts(word string) []int {
	var counts []int
	for _, s := range English().Word(word) {
		if !slices.Contains(counts, s.Syllables) {
			counts = append(counts, s.Syllables)
		}
	}
	return counts
}

// TestWords counts the syllables of words beyond doubt. The first four lines
// are words by which the CMU Pronouncing Dictionary is tried; the forms of
// verse are counted as metre has them; all from memory.
func TestWords(t *testing.T) {
	tests := []struct {
		words string // with a space between
		want  []int
	}{
		{"poetry", []int{3}},
		{"fire", []int{2, 1}},
		{"every", []int{3, 2}},
		{"flower", []int{2}},
		{"summer’s bakers’ Jones’s it'd wand'ring dang'rous int'rest ev'ry", []int{2}},
		{"oven, (oven) “oven” ‘oven’ 'oven' Oven OVEN o\u00advens", []int{2}},
		{"e'en o'er o’er ne’er e'er ta’en 'tis ’tis ‘tis ’Twas 'twere heav’n pow'r flow'r giv’n fall'n", []int{1}},
		{"lov'd fix’d ow’st think'st we've who’ll", []int{1}},
		{"belov’d th’expense o’erhang hadn't Hob’ll runnin’ runnin' untrimm'd", []int{2}},
		{"th' th’ t'", []int{0}},
		{"learnèd blessèd blesséd blesse\u0300d", []int{2}},
		{"fire’s", []int{2, 1}},
		{"Zoë naïve café ice-cold", []int{2}},
		{"bread-and-butter wheel\u2011barrow-man", []int{4}},
		{"BBC NHS", []int{3}},
		{"hmm pst &", []int{1}},
		{"", nil},
		{"— … * ’", nil},
	}
	for _, test := range tests {
		for word := range strings.FieldsSeq(test.words) {
			if got := syllableCounts(word); !slices.Equal(got, test.want) {
				t.Errorf("%s has %v syllables, want %v", word, got, test.want)
			}
		}
	}
}

// TestSounds compares whole sounds with the entries of the CMU Pronouncing
// Dictionary, from memory, and what the rules make of them.
func TestSounds(t *testing.T) {
	for word, want := range map[string]Sound{
		"poetry":     {3, "100", "OW AH T R IY", false},
		"fire":       {2, "10", "AY ER", false},
		"the":        {1, "0", "", false},
		"sacrifice":  {3, "102", "AY S", false},
		"o'er":       {1, "1", "AO R", false},
		"th'":        {0, "", "", false},
		"heav'n":     {1, "1", "EH V N", false},
		"wand'ring":  {2, "10", "AA N D R AH NG", false},
		"ice-cold":   {2, "11", "OW L D", false},
		"bakehouse":  {2, "12", "AW S", true},
		"untrodden":  {3, "010", "AA D AH N", false},
		"grey-green": {2, "11", "IY N", false},
		"zwoffling":  {2, "10", "", true},
		"東京":         {1, "1", "", true},
	} {
		if got := English().Word(word); len(got) == 0 || got[0] != want {
			t.Errorf("Word(%s) = %v, want %v first", word, got, want)
		}
	}
}

// TestNumbers compares a number's sound with that of the words that it is read
// as.
func TestNumbers(t *testing.T) {
	for number, want := range map[string]string{
		"0": "zero", "7": "seven", "40": "forty", "99": "ninety nine", "101": "one hundred and one",
		"3,000": "three thousand", "2006": "two thousand and six", "1,000,001": "one million and one",
		"1916": "nineteen sixteen", "1805": "eighteen oh five", "1900": "nineteen hundred", "2026": "twenty twenty six",
		"1066": "one thousand and sixty six", "1st": "first", "12th": "twelfth", "21st": "twenty first",
		"30th": "thirtieth", "100th": "one hundredth", "1990s": "nineteen nineties", "6s": "sixes",
		"3.5": "three point five", "3.14": "three point one four", "4:30": "four thirty", "4:05": "four oh five",
		"4:00": "four", "007": "zero zero seven", "12-14": "twelve fourteen", "b2b": "b two b",
		"1,000,000,000,000": "one zero zero zero zero zero zero zero zero zero zero zero zero",
	} {
		got := English().Word(number)
		if same := soundOf(English().say(strings.Fields(want))[0]); len(got) == 0 || got[0] != same {
			t.Errorf("Word(%s) = %v, want that of %s, %v", number, got, want, same)
		}
	}
}

func TestLastWord(t *testing.T) {
	for line, want := range map[string]string{
		"She opens the door.":          "door",
		"“She opens the ‘door’?”":      "door",
		"the bakers’":                  "bakers’",
		"‘the bakers’":                 "bakers",
		"all the winds runnin’":        "runnin’",
		"And ne'er so well, and 'twas": "'twas",
		"waste of th’":                 "th’",
		"rye, ice-cold—":               "ice-cold",
		"up to the wheel-":             "wheel",
		"in 1,916 —":                   "1,916",
		"the learnèd (still)":          "still",
		"salt &":                       "&",
		"* * *":                        "",
		"":                             "",
	} {
		if got := LastWord(line); got != want {
			t.Errorf("LastWord(%s) = %q, want %q", line, got, want)
		}
	}
}

// TestNoLexicon sees that a language without a lexicon has no counts.
func TestNoLexicon(t *testing.T) {
	var none *Lexicon
	if got := none.Line("l’odeur du pain"); got.Syllables != 0 || got.Stress != "" || got.Guessed != nil {
		t.Errorf("the nil Lexicon measures %v", got)
	}
	if got := none.Word("pain"); got != nil {
		t.Errorf("the nil Lexicon says %v", got)
	}
	if none.Rhymes("pain", "main") {
		t.Error("the nil Lexicon knows a rhyme")
	}
}

// TestManyReaders asks from many goroutines at once, as -race would see.
func TestManyReaders(t *testing.T) {
	want := English().Line(sonnet18[0])
	var readers sync.WaitGroup
	for range 8 {
		readers.Go(func() {
			if got := English().Line(sonnet18[0]); !reflect.DeepEqual(got, want) {
				t.Errorf("a reader among many measures %v, want %v", got, want)
			}
		})
	}
	readers.Wait()
}

// TestLongWords sees that what is no word is counted by its letters, in which
// each "a" has a consonant beside it, whatever rule would go on with it.
func TestLongWords(t *testing.T) {
	for _, piece := range []string{"bat-", "bat’d", "o'bat", "b2a", "unabat"} {
		long := strings.Repeat(piece, 50) + "bat"
		want := Sound{Syllables: strings.Count(long, "a") + strings.Count(long, "o") + strings.Count(long, "u"), Guessed: true}
		want.Stress = strings.Repeat("0", want.Syllables-3) + "100"
		if got := English().Word(long); len(got) != 1 || got[0] != want {
			t.Errorf("Word(%s…) = %v, want %v", piece, got, want)
		}
	}
}
