package session

import (
	"strings"
	"testing"

	"headland/pagemodel"
	"headland/typeset/choices"
)

// TestChoices: asking changes nothing, a choice can be previewed and done in one
// step, and the file has it.
func TestChoices(t *testing.T) {
	s := imported(t)
	ref, _ := lineOf(t, s, 2, 1, 1)
	before, shown := s.Collection(), s.Setting()
	all, err := s.Choices(ref)
	must(t, err)
	if s.Collection() != before || s.Setting() != shown {
		t.Error("asking for choices changed the book")
	}
	heads := map[choices.Head]int{}
	for i := range all {
		heads[all[i].Head]++
		must(t, s.Preview(all[i].Edit))
		s.Drop()
	}
	for h := choices.InPoem; h <= choices.Space; h++ {
		if heads[h] == 0 {
			t.Errorf("there is no choice under %q", h)
		}
	}
	for i := range all {
		if all[i].Title != "before “and”" || all[i].Head != choices.InEdition {
			continue
		}
		must(t, s.Do(all[i].Edit))
		_, l := lineOf(t, s, 2, 1, 1)
		if l.State() != pagemodel.Broken || s.Committed().Unsettled() != 0 {
			t.Errorf("the line is %v, and %d lines are unsettled", l.State(), s.Committed().Unsettled())
		}
		must(t, s.Undo())
		if places(s.Committed()) != cold(before) {
			t.Error("undone, the book is not as it was")
		}
		return
	}
	t.Error("no break before “and” in this edition")
}

// TestChoicesInAnotherLanguage: what needs a dictionary is not guessed at.
func TestChoicesInAnotherLanguage(t *testing.T) {
	s := imported(t)
	ref, _ := lineOf(t, s, 2, 1, 1)
	for language, told := range map[string]bool{"": true, "en": true, "EN-gb": true, "de": false, "enm": false} {
		about := s.Collection().About()
		about.Language = language
		must(t, s.Do(pagemodel.SetAbout{About: about}))
		all, err := s.Choices(ref)
		must(t, err)
		if counted := all[0].Parts[0].Syllables > 0; counted != told {
			t.Errorf("%q: syllables counted: %v", language, counted)
		}
		if says := strings.Join(all[0].Says, "; "); strings.Contains(says, "English only") == told {
			t.Errorf("%q: it says %q", language, says)
		}
	}
}
