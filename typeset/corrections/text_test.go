package corrections

import (
	"bytes"
	"errors"
	"math/rand/v2"
	"strconv"
	"strings"
	"testing"
	"unicode/utf8"

	"headland/pagemodel"
	"headland/pagemodel/difference"
)

// sample is a list of three corrections: one that says everything, one of the book,
// and one that says the least.
func sample() *List {
	return &List{
		About: pagemodel.About{Title: "Short Weight", Poet: "Wanda Threlfall", Language: "en-GB"},
		Round: pagemodel.Round{ID: 4, Name: "first proofs", On: "2026-11-02"},
		Rule:  "Stanzas are counted through the poem and lines through the stanza, as sent, the poet’s lines and not what is turned over; rows are counted from the head of the page.",
		All: []Correction{
			{
				Number: 1, Title: "Sign", Stanza: 2, LineNumber: 4, Page: "14", Row: 7,
				Change: difference.Change{Kind: difference.NewLine, Was: "“her father’s, the stitching so far gone”", Is: "“her father’s, / the stitching so far gone”"},
				Moves:  "the poem still ends on page 14; nothing else moves", Reason: "the turned line hid the pause that the poem leans on", Whose: pagemodel.Authors,
				State: pagemodel.Queried, Question: "Would a turn at “so” do, to keep seven lines?", Answer: "No: the break is meant.",
			},
			{
				Number: 2, Change: difference.Change{Kind: difference.Substitute, Field: "imprint", Was: "“2025”", Is: "“2026”"},
				Page: "4", Whose: pagemodel.Printers,
			},
			{
				Number: 3, Title: "“Behind him it comes out”", Stanza: 1, LineNumber: 1, Page: "iv", Row: 21,
				Change: difference.Change{Kind: difference.Delete, Was: "“-ing”"}, Whose: pagemodel.Editors,
			},
		},
	}
}

func text(t testing.TB, l *List) string {
	t.Helper()
	var b bytes.Buffer
	if err := l.WriteText(&b); err != nil {
		t.Fatal(err)
	}
	return b.String()
}

func TestText(t *testing.T) {
	const want = `Corrections to first proofs
Short Weight, by Wanda Threlfall
From first proofs, sent on 2026-11-02, to today: 3 corrections.

1. Sign, stanza 2, line 4
   page 14, row 7
   new line, author’s alteration (AA)
   was:    “her father’s, the stitching so far gone”
   is:     “her father’s, / the stitching so far gone”
   moves:  the poem still ends on page 14; nothing else moves
   reason: the turned line hid the pause that the poem leans on
   state:  queried
   query:  Would a turn at “so” do, to keep seven lines?
   answer: No: the break is meant.

2. the book, imprint
   page 4
   substitute, printer’s error (PE)
   was:    “2025”
   is:     “2026”
   state:  open

3. “Behind him it comes out”, stanza 1, line 1
   page iv, row 21
   delete, editor’s alteration (EA)
   was:    “-ing”
   is:     (nothing)
   state:  open

How corrections are counted: Stanzas are counted through the poem and
lines through the stanza, as sent, the poet’s lines and not what is
turned over; rows are counted from the head of the page.
`
	if got := text(t, sample()); got != want {
		t.Errorf("got\n%s\nwant\n%s", got, want)
	}
	none := sample()
	none.All, none.Until = nil, "second proofs"
	if got := text(t, none); !strings.Contains(got, "to second proofs: no correction.") {
		t.Errorf("an empty list is\n%s", got)
	}
}

// randomList is a list of texts with what is awkward in a cell or in a mail.
func randomList(r *rand.Rand) *List {
	pieces := []string{
		"x", "word", " ", "  ", ",", "\"", "\"\"", "'", "=1+1", "+", "-", "@", "\n", "\r\n", "\r", "\t", ";", "“", "”", "/", " // ", "\u00a0", "\u00ad", "🌊",
		"> ", "From ", "-- ", "\x01", "\u2028", strings.Repeat("verylongword", 9), "é", "#", "|",
	}
	some := func() string {
		var b strings.Builder
		for range r.IntN(24) {
			b.WriteString(pieces[r.IntN(len(pieces))])
		}
		return b.String()
	}
	l := &List{About: pagemodel.About{Title: some(), Poet: some()}, Round: pagemodel.Round{Name: some()}, Rule: some()}
	for n := range r.IntN(14) {
		l.All = append(l.All, Correction{
			Number: n + 1, Title: some(), Stanza: r.IntN(3), LineNumber: r.IntN(3), Page: some(), Row: r.IntN(40),
			Change: difference.Change{Kind: difference.Substitute, Field: some(), Was: some(), Is: some()},
			Moves:  some(), Reason: some(), Whose: pagemodel.WhoseLetters[r.IntN(4)], State: pagemodel.ReplyStates[r.IntN(5)], Question: some(), Answer: some(),
		})
	}
	return l
}

// TestTextInMail: whatever is in a list, no line is too long or has white at its end,
// no line but those of the heading, the numbers and the rule begins at the edge, and
// every word is there.
func TestTextInMail(t *testing.T) {
	r := rand.New(rand.NewPCG(2, 7))
	for range 400 {
		l := randomList(r)
		l.About, l.Round.Name, l.Rule = pagemodel.About{}, "first proofs", ""
		got := text(t, l)
		var numbers []string
		for _, line := range strings.Split(got, "\n") {
			if n := utf8.RuneCountInString(line); n > 72 || strings.HasSuffix(line, " ") {
				t.Fatalf("a line of %d characters: %q", n, line)
			}
			if number := strings.TrimLeft(line, " "); strings.HasPrefix(line, ">") || strings.HasPrefix(line, "--") {
				t.Fatalf("a line that means something in a mail: %q", line)
			} else if len(line)-len(number) < 2 && number != "" && number[0] >= '1' && number[0] <= '9' {
				number, _, _ = strings.Cut(number, ".")
				numbers = append(numbers, number)
			}
		}
		for i, number := range numbers {
			if number != strconv.Itoa(i+1) || len(numbers) != len(l.All) {
				t.Fatalf("the numbers are %q, want %d of them, in\n%s", numbers, len(l.All), got)
			}
		}
		for i := range l.All {
			for _, s := range l.All[i].says() {
				if !strings.Contains(closed(got), closed(s.text)) {
					t.Fatalf("%q is not in\n%s", s.text, got)
				}
			}
		}
	}
}

// closed is a text without white.
func closed(text string) string { return strings.Join(strings.Fields(text), "") }

type brokenWriter struct{}

var errFull = errors.New("the disk is full")

func (brokenWriter) Write([]byte) (int, error) { return 0, errFull }

func TestWriterFails(t *testing.T) {
	if err := sample().WriteText(brokenWriter{}); !errors.Is(err, errFull) {
		t.Errorf("got %v", err)
	}
	if err := sample().WriteCSV(brokenWriter{}); !errors.Is(err, errFull) {
		t.Errorf("got %v", err)
	}
}
