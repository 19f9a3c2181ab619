package ui

import (
	"strings"
	"time"
	"unicode"
	"unicode/utf8"

	"headland/pagemodel"
	"headland/typeset"
)

// stateWords say what has been done about an overlong line. asleep says that a
// kept line does not turn now; why is why one is unsettled again.
func stateWords(s pagemodel.State, asleep bool, why string) string {
	switch {
	case why != "":
		return "unsettled again: " + clause(why)
	case s == pagemodel.Kept && asleep:
		return "kept, asleep: it does not turn now"
	case s == pagemodel.Kept:
		return "kept"
	case s == pagemodel.Broken:
		return "broken in this edition"
	}
	return "unsettled"
}

// decisionWords say what was decided about a line.
func decisionWords(d typeset.Decision) string {
	if d.InPoem {
		return "broken in the poem"
	}
	return stateWords(d.State, d.Asleep, d.Why)
}

// stateOf says what has been done about a line on the open pages, as it is set
// now.
func (d *desk) stateOf(ref pagemodel.LineRef) string {
	state, why := d.of.StateOf(ref)
	return stateWords(state, d.of.TurnWords(ref) == "", why)
}

// isUnsettled says that a line on the open pages wants a decision: it is
// overlong, and there is none or it holds no longer.
func (d *desk) isUnsettled(ref pagemodel.LineRef) bool {
	state, why := d.of.StateOf(ref)
	return state == pagemodel.Unsettled && (why != "" || d.overrunOf(ref) > 0)
}

// whyAgain is why the line at hand is unsettled again; "" where it is not.
func (d *desk) whyAgain() string {
	ref, ok := d.session.Focus()
	if !ok || !d.inSight(ref) {
		return ""
	}
	_, why := d.of.StateOf(ref)
	return why
}

// decided says what was decided about the line at hand, when and why; "" where
// nothing was.
func (d *desk) decided(ref pagemodel.LineRef, line pagemodel.Line) string {
	reason := reasonWords(line.Reason(), line.Shown())
	if line.State() == pagemodel.Unsettled && reason == "" {
		return ""
	}
	state := ""
	if line.State() != pagemodel.Unsettled {
		state = sentence(d.stateOf(ref))
	}
	return dotted(state, onDayWords(line.On()), reason)
}

// reasonWords are a reason, and whether it may go out; "" where there is none.
func reasonWords(reason string, shown bool) string {
	switch {
	case reason == "":
		return ""
	case shown:
		return "reason, shown: " + quoted(reason)
	}
	return "reason, private: " + quoted(reason)
}

// onDayWords are a day as one writes it; what is no ISO 8601 day is left as it is.
func onDayWords(on string) string {
	if day, err := time.Parse(time.DateOnly, on); err == nil {
		return day.Format("2 January 2006")
	}
	return on
}

// clause is a sentence as one says it after a colon.
func clause(words string) string {
	r, n := utf8.DecodeRuneInString(words)
	return string(unicode.ToLower(r)) + strings.TrimSuffix(words[n:], ".")
}

// dotted are words with dots between them, those that say nothing left out.
func dotted(words ...string) string {
	var said []string
	for _, w := range words {
		if w != "" {
			said = append(said, w)
		}
	}
	return strings.Join(said, " · ")
}
