package session

import (
	"strings"
	"testing"
	"time"

	"headland/pagemodel"
)

// onDay has the session believe that it is that day.
func onDay(t *testing.T, s *Session, day string) {
	t.Helper()
	at, err := time.Parse(dayForm, day)
	must(t, err)
	s.now = func() time.Time { return at }
}

// TestDecisionsAreNoted: a line that is let turn remembers the day and the word at
// which it turns, by whichever door the edit comes.
func TestDecisionsAreNoted(t *testing.T) {
	s := imported(t)
	onDay(t, s, "2026-03-05")
	ref, _ := lineOf(t, s, 2, 1, 1)
	turns := s.Committed().TurnWords(ref)
	if turns == "" {
		t.Fatal("the long line does not turn")
	}
	must(t, s.Preview(pagemodel.Keep{LineRef: ref, Reason: "its word"}))
	must(t, s.Release())
	_, l := lineOf(t, s, 2, 1, 1)
	if l.On() != "2026-03-05" || l.Turned() != turns || l.Shown() {
		t.Errorf("kept on %q, turned at %q, shown %v; want 2026-03-05, %q, false", l.On(), l.Turned(), l.Shown(), turns)
	}
	onDay(t, s, "2026-03-06")
	at := strings.Index(long, "the whole")
	must(t, s.Do(pagemodel.Keep{LineRef: ref, Turns: []int{at}}))
	if _, l = lineOf(t, s, 2, 1, 1); l.Turned() != "the" || l.On() != "2026-03-06" {
		t.Errorf("turned at %q on %q, want “the” on 2026-03-06", l.Turned(), l.On())
	}
}

// TestChoicesAreNoted: the same where the edit is one of several in one step.
func TestChoicesAreNoted(t *testing.T) {
	s := imported(t)
	onDay(t, s, "2026-03-05")
	ref, _ := lineOf(t, s, 2, 1, 1)
	must(t, s.Do(pagemodel.Break{LineRef: ref, At: strings.Index(long, "from"), In: pagemodel.InEdition}))
	all, err := s.Choices(ref)
	must(t, err)
	for i := range all {
		if all[i].Title != "at “the”" && !strings.Contains(all[i].Title, "“and”") || all[i].Edit.Kind() != "keep" {
			continue
		}
		must(t, s.Do(all[i].Edit))
		if _, l := lineOf(t, s, 2, 1, 1); l.On() != "2026-03-05" || l.Turned() == "" || len(l.Breaks()) > 0 {
			t.Errorf("%s: turned at %q on %q, breaks %v", all[i].Title, l.Turned(), l.On(), l.Breaks())
		}
		return
	}
	t.Error("there is no such choice")
}

// TestAKeptLineSleepsAndWakes: retyped so that it fits, a kept line sleeps; long
// again with the same turnover it is still kept; turning at another word it is
// unsettled, and says why.
func TestAKeptLineSleepsAndWakes(t *testing.T) {
	s := imported(t)
	ref, _ := lineOf(t, s, 2, 1, 1)
	must(t, s.Do(pagemodel.Keep{LineRef: ref, Reason: "its word"}))
	word := s.Committed().TurnWords(ref)
	decision := func(what string, state pagemodel.State, asleep bool, unsettled int) {
		t.Helper()
		all := s.Decisions()
		if len(all) != 1 || all[0].State != state || all[0].Asleep != asleep || s.Committed().Unsettled() != unsettled {
			t.Fatalf("%s: %+v, %d unsettled; want %v, asleep %v", what, all, s.Committed().Unsettled(), state, asleep)
		}
		if (all[0].Why != "") != (state == pagemodel.Unsettled) {
			t.Errorf("%s: the why is %q", what, all[0].Why)
		}
	}
	decision("kept", pagemodel.Kept, false, 0)
	must(t, s.Do(pagemodel.Retype{LineRef: ref, Text: "The inspector takes his time"}))
	decision("short", pagemodel.Kept, true, 0)
	must(t, s.Do(pagemodel.Retype{LineRef: ref, Text: long}))
	decision("long again", pagemodel.Kept, false, 0)
	must(t, s.Do(pagemodel.Retype{LineRef: ref, Text: strings.Replace(long, "whole ", "", 1) + "and doors"}))
	if now := s.Committed().TurnWords(ref); now == word {
		t.Fatalf("it still turns at %q: try other words", now)
	}
	decision("another word", pagemodel.Unsettled, false, 1)
	must(t, s.Undo())
	decision("undone", pagemodel.Kept, false, 0)
}
