package pagemodel

import "slices"

// State is what has been done about an overlong line.
type State int

// The states of an overlong line, as reports name them.
const (
	Unsettled State = iota
	Kept            // let turn
	Broken          // broken in this edition
)

var stateNames = [...]string{Unsettled: "unsettled", Kept: "kept", Broken: "broken"}

// String is the state in words.
func (s State) String() string { return nameOf(stateNames[:], int(s)) }

// decision is what the poet decided about a line's length, besides the breaks of
// this edition.
type decision struct {
	kept   bool
	turns  []int  // byte offsets of the words at which the poet wants it to turn
	turned string // the words at which it turned when it was kept
	on     string // the day, ISO 8601
	reason string
	shown  bool // the reason may go out
}

// same says that two decisions are alike, on whatever days they were taken.
func (d decision) same(other decision) bool {
	return d.kept == other.kept && slices.Equal(d.turns, other.turns) && d.turned == other.turned &&
		d.reason == other.reason && d.shown == other.shown
}

// State is what the poet has done about the line, should it be overlong. A
// line let turn is kept, even where this edition breaks it as well. Whether a
// kept line still turns where it did is for the setting to say.
func (l Line) State() State {
	switch {
	case l.decision.kept:
		return Kept
	case len(l.breaks) > 0:
		return Broken
	}
	return Unsettled
}

// Kept says that the poet has settled the line by letting it turn.
func (l Line) Kept() bool { return l.decision.kept }

// Turns are the byte offsets of the words at which the poet wants an overlong
// line to turn, ordered. Not to be changed.
func (l Line) Turns() []int { return l.decision.turns }

// Turned is the words at which the line turned when it was kept, a space
// between them; "" where it did not turn then, or nobody noted it.
func (l Line) Turned() string { return l.decision.turned }

// On is the day of what was last decided about the line's length, ISO 8601
// ("2026-11-25"); "" where nobody noted it.
func (l Line) On() string { return l.decision.on }

// Reason is the poet's note on why the line is as it is; often empty. It is
// private unless [Line.Shown].
func (l Line) Reason() string { return l.decision.reason }

// Shown says that the reason may go out with the corrections.
func (l Line) Shown() bool { return l.decision.shown }

// unsettled is the line with nothing decided about its length but the breaks
// of this edition.
func (l Line) unsettled() Line {
	l.decision = decision{}
	return l
}

// decidedAs is the line kept as another was, whose word at byte offset 0 stands
// at from in this one. Only a line whose word was noted stays kept, since
// nothing else would tell when that word has changed.
func (l Line) decidedAs(other Line, from int) Line {
	l.decision = decision{}
	if !other.decision.kept || other.decision.turned == "" {
		return l
	}
	l.decision = other.decision
	l.decision.turns = nil
	for _, at := range other.decision.turns {
		if at += from; at > 0 && at < len(l.text) {
			l.decision.turns = append(l.decision.turns, at)
		}
	}
	return l
}

// Dated is an edit that notes the day on which it was done.
type Dated interface {
	Edit
	// OnDay is the edit with the day noted, ISO 8601.
	OnDay(day string) Edit
}

// Compound is an edit made of others, done one after another as one step.
type Compound interface {
	Edit
	// Each is the edit with every one of its own replaced by what change
	// makes of it.
	Each(change func(Edit) Edit) Edit
}

// SetReason notes why a line is as it is, and whether the note may go out.
type SetReason struct {
	LineRef
	Reason string `json:"reason"`
	Shown  bool   `json:"shown,omitempty"`
}

// Kind is "reason".
func (SetReason) Kind() string { return "reason" }

// Label says what it does.
func (SetReason) Label() string { return "note a reason" }

// Apply notes the reason.
func (e SetReason) Apply(c *Collection) (*Collection, error) {
	return c.editLine(e.LineRef, func(l Line) (Line, error) {
		l.decision.reason, l.decision.shown = e.Reason, e.Shown && e.Reason != ""
		return l, nil
	})
}

// brokenHere is the line with this edition's break at the word at or after the
// offset.
func (l Line) brokenHere(at int, day string) Line {
	_, at = spaceAround(l.text, at)
	if slices.Contains(l.breaks, at) {
		return l
	}
	l.breaks = append(slices.Clone(l.breaks), at)
	slices.Sort(l.breaks)
	l.decision.on = day
	return l
}
