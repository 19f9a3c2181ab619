package prosody

import (
	"reflect"
	"slices"
	"strings"
	"testing"
)

// sonnet18 is Shakespeare's, 1609, in modern spelling but for the elisions;
// from memory.
var sonnet18 = []string{
	"Shall I compare thee to a summer’s day?",
	"Thou art more lovely and more temperate:",
	"Rough winds do shake the darling buds of May,",
	"And summer’s lease hath all too short a date:",
	"Sometime too hot the eye of heaven shines,",
	"And often is his gold complexion dimm'd;",
	"And every fair from fair sometime declines,",
	"By chance, or nature’s changing course, untrimm’d;",
	"But thy eternal summer shall not fade,",
	"Nor lose possession of that fair thou ow’st;",
	"Nor shall Death brag thou wander’st in his shade,",
	"When in eternal lines to time thou grow’st:",
	"So long as men can breathe or eyes can see,",
	"So long lives this, and this gives life to thee.",
}

// pentameters are iambic lines of ten syllables that nobody scans otherwise;
// from memory.
var pentameters = []string{
	// Gray, Elegy Written in a Country Churchyard, 1751
	"The curfew tolls the knell of parting day,",
	"The lowing herd wind slowly o'er the lea,",
	"The ploughman homeward plods his weary way,",
	"And leaves the world to darkness and to me.",
	"Now fades the glimm'ring landscape on the sight,",
	"And all the air a solemn stillness holds,",
	// Pope, An Essay on Criticism, 1711
	"But, of the two, less dang'rous is th' offence",
	"To tire our patience, than mislead our sense.",
	"'Tis with our judgments as our watches, none",
	"Go just alike, yet each believes his own.",
	"A little learning is a dang'rous thing;",
	"There shallow draughts intoxicate the brain,",
	"And drinking largely sobers us again.",
	// Keats, Bright Star and When I Have Fears
	"When I have fears that I may cease to be",
	"Before my pen has glean’d my teeming brain,",
	// Shakespeare, sonnets 12, 73 and 130
	"When I do count the clock that tells the time,",
	"That time of year thou mayst in me behold",
	"My mistress’ eyes are nothing like the sun;",
	// Marlowe, Doctor Faustus
	"Was this the face that launch’d a thousand ships",
}

// TestPentameters sees that each line has ten syllables in one of the ways in
// which its words are said, and that its stress can be iambic: beyond the first
// foot, and a foot behind a stop, where a trochee may stand, no word of several
// syllables has its primary stress in an odd place (M. Halle and S. J. Keyser,
// English Stress, 1971, on the stress maximum; from memory). A compound may shift its stress to
// its second half, as "sometime" does in sonnet 18.
func TestPentameters(t *testing.T) {
	for _, line := range append(sonnet18, pentameters...) {
		if !iambic(English(), line, 10) {
			t.Errorf("%s\nmeasures %v and is in no way iambic with ten syllables", line, English().Line(line))
		}
	}
	for _, line := range []string{
		"Tyger Tyger, burning bright,",
		"Half a league, half a league,",
		"Wondering whether the bakery opened on Sunday at all",
		"The baker opens every oven door at four",
		"Enormous ovens waking mechanical",
	} {
		if iambic(English(), line, 10) {
			t.Errorf("%s\nwould be iambic with ten syllables", line)
		}
	}
}

// iambic says whether a line is what TestPentameters asks.
func iambic(l *Lexicon, line string, syllables int) bool {
	var said func(words []string, at int, inversion bool) bool
	said = func(words []string, at int, inversion bool) bool {
		if len(words) == 0 {
			return at == syllables
		}
		for _, sound := range l.Word(words[0]) {
			primary := strings.IndexByte(sound.Stress, '1')
			shifts := strings.Contains(sound.Stress, "12")
			odd := sound.Syllables > 1 && (at+primary)%2 == 0 && !shifts
			stop := strings.ContainsAny(words[0], ",;:.?!")
			if (!odd || inversion && primary == 0) && said(words[1:], at+sound.Syllables, stop) {
				return true
			}
		}
		return false
	}
	return said(strings.Fields(line), 0, true)
}

// TestLine compares whole measures: the syllables of lines as they are counted
// by hand, function words without stress.
func TestLine(t *testing.T) {
	for line, want := range map[string]Measure{
		"Shall I compare thee to a summer’s day?":         {10, "0001000101", nil},
		"The curfew tolls the knell of parting day,":      {10, "0101010101", nil},
		"But, of the two, less dang'rous is th' offence":  {10, "0001110001", nil},
		"I’ll shut the oven; who’s at the zwoffling door": {11, "01010000101", []string{"zwoffling"}},
		"*": {},
		"":  {},
	} {
		if got := English().Line(line); !reflect.DeepEqual(got, want) {
			t.Errorf("Line(%s) = %v, want %v", line, got, want)
		}
	}
}

// TestRhymes takes the couplets of Pope (An Essay on Criticism, 1711, and The
// Rape of the Lock, 1714) and of Shakespeare's sonnets, from memory, and words
// that don't rhyme.
func TestRhymes(t *testing.T) {
	tests := []struct {
		pairs string
		want  bool
	}{
		{`skill ill offence sense this amiss expose prose appear clear again brain spring thing`, true},
		{`own known springs things rage engage stair hair fair care flies eyes`, true},
		{`day May shade fade shines declines see thee dimm'd untrimm’d ow’st grow’st colour duller defence sense`, true},
		{`sun dun white delight know go rare compare time prime strong long fire desire`, true},
		{`poetry poultry sparrow sorrow love prove none own none gone day night oven coven’s`, false},
		{`door door Door door o'er o’er glorping morping door floors`, false},
		// Weak forms and unstressed ends rhyme with nothing by themselves.
		{`that it but it in one I’m them him them the me the a a day and hand or door sitting in poetry him`, false},
		{`them hem it sit for door can man you to her stir thee me I’m time`, true},
		{`night knight ice-cold old o'er door runnin’ cunnin' wanted haunted`, true},
	}
	for _, test := range tests {
		words := strings.Fields(test.pairs)
		for i := 0; i+1 < len(words); i += 2 {
			if got := English().Rhymes(words[i], words[i+1]); got != test.want {
				t.Errorf("Rhymes(%s, %s) = %v; they are said %v and %v",
					words[i], words[i+1], got, English().Word(words[i]), English().Word(words[i+1]))
			}
		}
	}
}

// FuzzLine sees that every line has a stress for each syllable and guesses no
// more words than it has, that its measure is the sum of those of its words,
// and that no line is too strange to be measured, rhymed and ended,
// and its last word said as the poet does.
func FuzzLine(f *testing.F) {
	for _, line := range append(sonnet18, pentameters...) {
		f.Add(line, "")
	}
	for _, line := range []string{
		"th’", "’’’'", "'d 'n't x'd's'st", "1:2:3.4,5th", "b-2-b—c--d", "e\u0300d", "\xff\xfe", "東京's", "0'0", "ß’st", "Mr.", "½&&", "M’‐'",
	} {
		f.Add(line, "of "+line)
	}
	f.Fuzz(func(t *testing.T, line, next string) {
		l := English()
		m := l.Line(line)
		sum, guesses := 0, []string(nil)
		for _, word := range words(line) {
			one := l.Line(word)
			sum, guesses = sum+one.Syllables, append(guesses, one.Guessed...)
		}
		if m.Syllables != len(m.Stress) || strings.Trim(m.Stress, "012") != "" || len(m.Guessed) > len(words(line)) {
			t.Errorf("Line(%q) = %v", line, m)
		}
		if m.Syllables != sum || !slices.Equal(m.Guessed, guesses) {
			t.Errorf("Line(%q) = %v; its words have %d syllables, %v guessed", line, m, sum, guesses)
		}
		if !strings.Contains(line, LastWord(line)) {
			t.Errorf("LastWord(%q) = %q", line, LastWord(line))
		}
		if l.Rhymes(line, line) {
			t.Errorf("%q rhymes with itself", line)
		}
		if with := l.With(map[string]string{line: "SAY-ing"}); LastWord(line) != "" && with.Word(line)[0].Stress != "10" {
			t.Errorf("%q is said %v, not as the poet does", line, with.Word(line))
		}
		if end := EndOf(line, next); end < EndStopped || end > AgainstSyntax {
			t.Errorf("EndOf(%q, %q) = %d", line, next, end)
		}
	})
}
