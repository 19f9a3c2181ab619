package command

import (
	"maps"
	"strings"
	"testing"
	"time"

	"headland/ui/session"
)

const atLong = `"poem":"Weights","stanza":1,"line":1`

// onlyDecision is the one decision that a book has.
func onlyDecision(t *testing.T, file string) decision {
	t.Helper()
	all := reported(t, file).Decisions
	if len(all) != 1 {
		t.Fatalf("the decisions are %+v, want one", all)
	}
	return all[0]
}

// TestDecisions follows the overlong line from unsettled to kept, asleep, kept
// again and broken.
func TestDecisions(t *testing.T) {
	file, today := book(t), time.Now().Format(time.DateOnly)
	want := decision{Poem: "Weights", Number: 2, Stanza: 1, Line: 1, Page: "2", Row: 1, Text: long, State: "unsettled"}
	for _, step := range []struct {
		script string
		want   func(*decision)
	}{
		{"", func(*decision) {}},
		{`{"edit":"keep",` + atLong + `,"reason":"a breath","shown":true}`, func(d *decision) { d.State, d.On, d.Reason = "kept", today, "a breath" }},
		{`{"edit":"reason",` + atLong + `,"reason":"two breaths"}`, func(d *decision) { d.Reason = "two breaths" }},
		{`{"edit":"reason",` + atLong + `,"shown":false}`, func(*decision) {}},
		{`{"edit":"design","size_pt":7}`, func(d *decision) { d.Asleep = true }},
		{`{"edit":"undo"}`, func(d *decision) { d.Asleep = false }},
		{`{"edit":"unsettle",` + atLong + `}`, func(d *decision) { d.State, d.On, d.Reason = "unsettled", "", "" }},
		{`{"edit":"break",` + atLong + `,"after":7,"in":"edition"}`, func(d *decision) { d.State, d.On, d.In = "broken", today, "edition" }},
		{`{"edit":"undo"}` + "\n" + `{"edit":"break",` + atLong + `,"after":7}`, func(d *decision) {
			d.In, d.Text = "poem", "The inspector takes his time about it,"
		}},
	} {
		done(t, step.script, "edit", file, "-")
		step.want(&want)
		if got := onlyDecision(t, file); got != want {
			t.Errorf("after %s the decision is\n%+v, want\n%+v", step.script, got, want)
		}
	}
}

// TestUnsettledAgain sees that a kept line that turns at another word is unsettled
// again, and that the report to be read says so, and why.
func TestUnsettledAgain(t *testing.T) {
	file := book(t)
	done(t, `{"edit":"keep",`+atLong+`}`+"\n"+`{"edit":"design","size_pt":13}`, "edit", file, "-")
	d := onlyDecision(t, file)
	if d.State != "unsettled" || d.Why == "" {
		t.Errorf("the decision is %+v", d)
	}
	out := done(t, "", "report", file)
	for _, want := range []string{"Decided: 1 line unsettled again", "Unsettled again: #2 Weights, stanza 1, line 1: " + d.Why} {
		if !strings.Contains(out, want) {
			t.Errorf("%q is not in\n%s", want, out)
		}
	}
}

// TestDecidedInWords: how many lines were settled, and how, rounds, and variants,
// none of which is named where there is none.
func TestDecidedInWords(t *testing.T) {
	file := book(t)
	plain := done(t, "", "report", file)
	for _, unwanted := range []string{"Decided", "Sent", "Variants"} {
		if strings.Contains(plain, unwanted) {
			t.Errorf("a new book's report says %q:\n%s", unwanted, plain)
		}
	}
	done(t, `{"edit":"break","poem":1,"stanza":1,"line":1,"after":2}
		{"edit":"break","poem":1,"stanza":2,"line":1,"after":1,"in":"edition"}
		{"edit":"keep",`+atLong+`}
		{"edit":"keep-variant","poem":2,"name":"before the inspector"}
		{"edit":"mark-sent"}`, "edit", file, "-")
	out := done(t, "", "report", file)
	for _, want := range []string{
		"Decided: 1 line let turn, 1 line broken in this edition, 1 line broken in the poem\n",
		"Sent: copy-edit " + time.Now().Format(time.DateOnly), "Variants: before the inspector of #2 Weights\n",
	} {
		if !strings.Contains(out, want) {
			t.Errorf("%q is not in\n%s", want, out)
		}
	}
}

// TestWhite sees that white above a line moves it down the page, and that 0 takes
// the white out.
func TestWhite(t *testing.T) {
	file := book(t)
	text := exported(t, file)
	done(t, `{"edit":"white","poem":1,"stanza":1,"line":2,"lines":3}`, "edit", file, "-")
	if got := exported(t, file); got == text {
		t.Errorf("the white is not in the manuscript:\n%s", got)
	}
	done(t, `{"edit":"white","poem":1,"stanza":1,"line":2,"lines":0}`, "edit", file, "-")
	if got := exported(t, file); got != text {
		t.Errorf("taken out, the white leaves\n%s", got)
	}
}

// TestSay sees that what the poet says of a word is noted, and taken back.
func TestSay(t *testing.T) {
	file := book(t)
	for _, step := range []struct {
		script string
		want   map[string]string
	}{
		{`{"edit":"say","word":"Inspector","as":"IN-spec-ta-tor"}`, map[string]string{"inspector": "IN-spec-ta-tor"}},
		{`{"edit":"say","word":"inspector","as":""}`, nil},
	} {
		done(t, step.script, "edit", file, "-")
		s, err := session.Open(file)
		if err != nil {
			t.Fatal(err)
		}
		if got := s.Collection().Spoken(); !maps.Equal(got, step.want) {
			t.Errorf("after %s the book has %v, want %v", step.script, got, step.want)
		}
		if err := s.Close(); err != nil {
			t.Error(err)
		}
	}
}
