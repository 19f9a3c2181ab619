package command

import (
	"encoding/json"
	"math"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"time"

	"headland/pagemodel"
	"headland/ui/session"
)

// thursday makes a running order of everything that one can hold, but for items
// that may be dropped.
const thursday = `{"edit":"reading","name":"Thursday","occasion":"the library","on":"2026-03-05","slot_s":120,"items":[` +
	`{"before":"Good evening."},` +
	`{"poem":4},` +
	`{"poem":1,"from":{"stanza":1,"line":2},"to":{"stanza":2,"line":1},"before":"From the first.","talk_s":5},` +
	`{"title":"Peel","text":["Out of the heat,","the peel."],"said":[{"stanza":1,"line":2,"word":2,"as":"paddle"}]}]}`

// timed is a running order of a file, read back; the book's where none is named.
func timed(t *testing.T, file string, name ...string) reading {
	t.Helper()
	var r reading
	if err := json.Unmarshal([]byte(done(t, "", append([]string{"aloud", file, "--json"}, name...)...)), &r); err != nil {
		t.Fatal(err)
	}
	return r
}

// TestAloudBook reads the book in its order. By hand, in the usual voice: “A year
// like any other” has seven syllables (60/185 s each), a silence of 0.9 s at its end
// and a title of 2 s, which is 5.2 s.
func TestAloudBook(t *testing.T) {
	r := timed(t, book(t))
	if r.Reading != "Four Poems" || r.Slot != 0 || r.Over != 0 || len(r.Items) != 4 {
		t.Fatalf("the book is read as %+v", r)
	}
	sum := 0.0
	for i, want := range []readingItem{{Poem: "Bread", Number: 1, Page: "1"}, {Poem: "Weights", Number: 2, Page: "2"}, {Poem: "Bread", Number: 3, Page: "3"}, {Poem: "1984", Number: 4, Page: "4"}} {
		got := r.Items[i]
		if got.Poem != want.Poem || got.Number != want.Number || got.Page != want.Page || got.Taken != 0 || got.From != nil || got.To != nil || math.Abs(float64(got.Starts)-sum) > 0.2 {
			t.Errorf("item %d is %+v, want %+v that starts at %.1f", i+1, got, want, sum)
		}
		sum += float64(got.Estimate)
	}
	if r.Items[3].Estimate != 5.2 || math.Abs(float64(r.Total)-sum) > 0.2 {
		t.Errorf("the last poem takes %v, all %v; want 5.2 and %.1f", r.Items[3].Estimate, r.Total, sum)
	}
}

// TestAloudJSON sees that a running order has just the names that other programs
// read it by.
func TestAloudJSON(t *testing.T) {
	file := book(t)
	done(t, thursday, "edit", file, "-")
	var r map[string]any
	if err := json.Unmarshal([]byte(done(t, "", "aloud", file, "Thursday", "--json")), &r); err != nil {
		t.Fatal(err)
	}
	if got, want := keysOf(r), []string{"items", "occasion", "on", "over_s", "reading", "slot_s", "total_s"}; !slices.Equal(got, want) {
		t.Errorf("a running order has %q, want %q", got, want)
	}
	want := []string{"before", "dropped", "estimate_s", "from", "guessed", "number", "page", "poem", "starts_s", "taken_s", "talk_s", "to"}
	for _, item := range r["items"].([]any) {
		if got := keysOf(item.(map[string]any)); !slices.Equal(got, want) {
			t.Errorf("an item has %q, want %q", got, want)
		}
	}
}

// TestAloudReading reads a running order with talk, an extract and a poem from
// elsewhere, of which the first two have known times: two words at 150 a minute are
// 0.8 s.
func TestAloudReading(t *testing.T) {
	file := book(t)
	done(t, thursday, "edit", file, "-")
	r := timed(t, file, "thursday")
	if r.Reading != "Thursday" || r.Occasion != "the library" || r.On != "2026-03-05" || r.Slot != 120 || len(r.Items) != 4 {
		t.Fatalf("the running order is %+v", r)
	}
	talk, poem, extract, peel := r.Items[0], r.Items[1], r.Items[2], r.Items[3]
	if talk.Poem != "" || talk.Before != "Good evening." || talk.Talk != 0.8 || talk.Estimate != 0.8 || talk.Page != "" {
		t.Errorf("what is said first is %+v", talk)
	}
	if poem.Number != 4 || poem.Starts != 0.8 || poem.Estimate != 5.2 {
		t.Errorf("the first poem is %+v", poem)
	}
	if extract.Number != 1 || *extract.From != (linePlace{1, 2}) || *extract.To != (linePlace{2, 1}) || extract.Talk != 5 || extract.Estimate <= 5 {
		t.Errorf("the extract is %+v", extract)
	}
	if peel.Poem != "Peel" || peel.Number != 0 || peel.Page != "" || peel.From != nil {
		t.Errorf("the poem from elsewhere is %+v", peel)
	}
	out := done(t, "", "aloud", file, "Thursday")
	for _, want := range []string{
		"Thursday, the library, 2026-03-05\n4 items, a slot of 2:00\n", "0:01    0:05  page 4  #4 1984", "Good evening.",
		"from stanza 1, line 2, to stanza 2, line 1, 0:05 of it said before", "in all, 1:", " to spare", "No word's syllables are guessed.",
	} {
		if !strings.Contains(out, want) {
			t.Errorf("%q is not in\n%s", want, out)
		}
	}
}

// TestAloudDrops sees that what may be dropped is where the slot is short, the last
// rather than the first, and that a slot that is too short even so is over.
func TestAloudDrops(t *testing.T) {
	file := book(t)
	done(t, `{"edit":"reading","name":"Short","slot_s":12,"items":[{"poem":4,"drop":true},{"poem":3},{"poem":4,"drop":true}]}`, "edit", file, "-")
	r := timed(t, file, "Short")
	if r.Items[0].Dropped || r.Items[1].Dropped || !r.Items[2].Dropped || r.Over != 0 || r.Total > 12 {
		t.Errorf("in 12 s: %+v", r)
	}
	out := done(t, "", "aloud", file, "Short")
	if !strings.Contains(out, "Dropped, as the slot is short: 1984\n") || !strings.Contains(out, "dropped\n") {
		t.Errorf("in 12 s it says\n%s", out)
	}
	done(t, `{"edit":"reading","name":"short","slot_s":3}`, "edit", file, "-")
	if r = timed(t, file, "Short"); len(r.Items) != 3 || !r.Items[0].Dropped || r.Over <= 0 || math.Abs(float64(r.Total-r.Over)-3) > 0.11 {
		t.Errorf("in 3 s: %+v", r)
	}
	if out = done(t, "", "aloud", file, "Short"); !strings.Contains(out, " over\n") {
		t.Errorf("in 3 s it says\n%s", out)
	}
}

// ranThrough keeps a run-through of a running order in which each item took so many
// seconds.
func ranThrough(t *testing.T, file, name string, took ...float64) {
	t.Helper()
	s, err := session.Open(file)
	if err != nil {
		t.Fatal(err)
	}
	defer func() {
		if err := s.Close(); err != nil {
			t.Error(err)
		}
	}()
	r, err := s.Collection().ReadingCalled(name)
	if err != nil {
		t.Fatal(err)
	}
	var timings []session.Timing
	for i, item := range r.Items {
		timings = append(timings, session.Timing{Item: item.ID, Poem: item.Poem, Ms: int64(took[i] * 1000)})
	}
	if err := s.AddRun(r.ID, time.Date(2026, 3, 5, 19, 0, 0, 0, time.UTC), timings); err != nil {
		t.Fatal(err)
	}
}

// TestAloudTaken sees what the items took the last time, that they keep it when the
// running order is written again with others among them, and that the voice is
// fitted to it: a reader of half the usual pace takes longer for everything.
func TestAloudTaken(t *testing.T) {
	file := book(t)
	done(t, `{"edit":"reading","name":"Thursday","items":[{"poem":2},{"poem":4}]}`, "edit", file, "-")
	before := timed(t, file, "Thursday")
	ranThrough(t, file, "Thursday", 2*float64(before.Items[0].Estimate), 11.5)
	done(t, `{"edit":"reading","name":"Thursday","items":[{"poem":4},{"poem":1},{"poem":2,"before":"And last."}]}`, "edit", file, "-")
	r := timed(t, file, "Thursday")
	if r.Items[0].Taken != 11.5 || r.Items[1].Taken != 0 || math.Abs(float64(r.Items[2].Taken-2*before.Items[0].Estimate)) > 0.11 {
		t.Errorf("the items took %+v", r.Items)
	}
	if out := done(t, "", "aloud", file, "Thursday"); !strings.Contains(out, "took 0:12") {
		t.Errorf("what was taken is not in\n%s", out)
	}
	done(t, `{"edit":"fit-voice"}`, "edit", file, "-")
	if v := voiceOf(t, file); v.Syllables >= pagemodel.UsualVoice().Syllables {
		t.Errorf("fitted to a slow reader the voice is %+v", v)
	}
	if after := timed(t, file, "Thursday"); after.Items[1].Estimate <= r.Items[1].Estimate {
		t.Errorf("the poem that was not timed takes %v, took %v", after.Items[1].Estimate, r.Items[1].Estimate)
	}
}

// voiceOf is the voice of a file.
func voiceOf(t *testing.T, file string) pagemodel.Voice {
	t.Helper()
	s, err := session.Open(file)
	if err != nil {
		t.Fatal(err)
	}
	v := s.Collection().Voice()
	if err := s.Close(); err != nil {
		t.Error(err)
	}
	return v
}

// TestAloudWritten writes the copy in large type and the card, and sees that both
// hold what is read.
func TestAloudWritten(t *testing.T) {
	file, folder := book(t), t.TempDir()
	done(t, thursday, "edit", file, "-")
	pdf, card := filepath.Join(folder, "copy.pdf"), filepath.Join(folder, "card.pdf")
	out := done(t, "", "aloud", file, "Thursday", "--pdf", pdf, "--paper", "A5", "--card", card)
	if want := pdf + ": a copy in large type of 4 items\n" + card + ": a card of 4 items\n"; out != want {
		t.Errorf("aloud says %q, want %q", out, want)
	}
	for path, want := range map[string]string{pdf: "A year like any other", card: "1984"} {
		output(t, "qpdf", "--check", path)
		if text := strings.Join(strings.Fields(output(t, "pdftotext", path, "-")), " "); !strings.Contains(text, want) || !strings.Contains(text, "Good evening.") {
			t.Errorf("%q or the talk is not in\n%s", want, text)
		}
	}
	if info := output(t, "pdfinfo", pdf); !strings.Contains(info, "419.5") {
		t.Errorf("the copy is not on A5:\n%s", info)
	}
	plain := done(t, "", "aloud", file, "Thursday", "--json")
	if got := done(t, "", "aloud", file, "Thursday", "--json", "--card", card); got != plain {
		t.Errorf("with a file to write, --json prints %s", got)
	}
}

// TestAloudWrong goes through what can be wrong with the command line.
func TestAloudWrong(t *testing.T) {
	file := book(t)
	done(t, `{"edit":"reading","name":"Thursday"}`, "edit", file, "-")
	for _, test := range []struct {
		args   []string
		status int
		want   []string
	}{
		{nil, Misuse, []string{"the collection's file"}},
		{[]string{file, "Friday", "night"}, Misuse, []string{"in quotation marks"}},
		{[]string{file, "Friday"}, CouldNot, []string{`"Friday"`, "it is one of Thursday"}},
		{[]string{file, "--pdf", "a.png"}, Misuse, []string{"--pdf", ".pdf", "a.png"}},
		{[]string{file, "--card", "a"}, Misuse, []string{"--card", ".pdf"}},
		{[]string{file, "--pdf", "a.pdf", "--card", "./a.pdf"}, Misuse, []string{"both name"}},
		{[]string{file, "--paper", "A5"}, Misuse, []string{"--paper is for --pdf"}},
		{[]string{file, "--pdf", filepath.Join(t.TempDir(), "a.pdf"), "--paper", "foolscap"}, Misuse, []string{"foolscap", "A4, A5, Letter"}},
		{[]string{file, "Thursday", "--pdf", filepath.Join(t.TempDir(), "a.pdf")}, CouldNot, []string{"nothing to read", "Thursday"}},
		{[]string{file, "Thursday", "--card", filepath.Join(t.TempDir(), "a.pdf")}, CouldNot, []string{"nothing to read", "Thursday"}},
		{[]string{"nowhere.headland"}, CouldNot, []string{"nowhere.headland", "not there"}},
	} {
		wrongly(t, test.status, test.want, "", append([]string{"aloud"}, test.args...)...)
	}
}

// wrongly sees that a command line is refused with that status, in words that hold
// all of these.
func wrongly(t *testing.T, status int, want []string, in string, args ...string) {
	t.Helper()
	r := run(t, in, args...)
	if r.status != status || r.out != "" {
		t.Errorf("headland %q: status %d, want %d; printed %q", args, r.status, status, r.out)
	}
	for _, words := range append(want, "headland: ") {
		if !strings.Contains(r.errs, words) {
			t.Errorf("headland %q says %q, want %q in it", args, r.errs, words)
		}
	}
}
