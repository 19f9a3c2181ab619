package pagemodel

import (
	"fmt"
	"slices"
	"strings"
)

// ReplyState is what has become of a correction in the round after it.
type ReplyState string

// The states of a correction. One that nobody has looked for yet is open.
const (
	Open    ReplyState = ""
	Made    ReplyState = "made"
	Refused ReplyState = "refused"
	Queried ReplyState = "queried" // a question is to be answered first
	Missed  ReplyState = "missed"  // it was asked for and is not there
)

// ReplyStates are the states in the order in which they are offered.
var ReplyStates = []ReplyState{Open, Made, Refused, Queried, Missed}

// String is the state in words.
func (s ReplyState) String() string {
	if s == Open {
		return "open"
	}
	return string(s)
}

// ParseReplyState reads a state by its word.
func ParseReplyState(s string) (ReplyState, error) {
	for _, state := range ReplyStates {
		if strings.EqualFold(strings.TrimSpace(s), state.String()) {
			return state, nil
		}
	}
	return Open, fmt.Errorf("%q is no state of a correction: write one of open, made, refused, queried, missed", s)
}

// Whose says whose alteration a correction is, by the letters that the trade
// uses (after CMOS 16, 2.131, at second hand).
type Whose string

// The alterations. One of which nobody says otherwise is the author's.
const (
	Authors   Whose = "AA"
	Printers  Whose = "PE" // a printer's error: not the author's to pay
	Editors   Whose = "EA"
	Designers Whose = "DA"
)

// WhoseLetters are the letters in the order in which they are offered.
var WhoseLetters = []Whose{Authors, Printers, Editors, Designers}

// Words is whose it is, in words.
func (w Whose) Words() string {
	return map[Whose]string{
		Authors: "author’s alteration", Printers: "printer’s error", Editors: "editor’s alteration", Designers: "designer’s alteration",
	}[w]
}

// ParseWhose reads the letters.
func ParseWhose(s string) (Whose, error) {
	w := Whose(strings.ToUpper(strings.TrimSpace(s)))
	if w.Words() == "" {
		return "", fmt.Errorf("%q is nobody’s alteration: write one of AA, PE, EA, DA", s)
	}
	return w, nil
}

// Reply is what is noted about one correction: what has become of it, whose it
// is, why, and a question with its answer, from either side. The zero Reply but
// for Round and Key says nothing.
type Reply struct {
	Round    RoundID    `json:"round"` // the one that the correction is of
	Key      string     `json:"key"`   // of the correction, lasting: see headland/pagemodel/difference
	State    ReplyState `json:"state,omitempty"`
	Whose    Whose      `json:"whose,omitempty"` // "" is the usual one for its kind
	Reason   string     `json:"reason,omitempty"`
	Shown    bool       `json:"shown,omitempty"` // the reason may go out
	Question string     `json:"question,omitempty"`
	Answer   string     `json:"answer,omitempty"`
}

func (r Reply) empty() bool { return r == Reply{Round: r.Round, Key: r.Key} }

// Reply is what is noted about a correction; nothing where nobody noted
// anything.
func (c *Collection) Reply(round RoundID, key string) Reply {
	i, found := c.findReply(round, key)
	if !found {
		return Reply{Round: round, Key: key}
	}
	return c.replies[i]
}

func (c *Collection) findReply(round RoundID, key string) (int, bool) {
	return slices.BinarySearchFunc(c.replies, Reply{Round: round, Key: key}, func(a, b Reply) int {
		if a.Round != b.Round {
			return int(a.Round - b.Round)
		}
		return strings.Compare(a.Key, b.Key)
	})
}

// SetReply notes something about a correction, in place of what was noted
// before.
type SetReply struct {
	Reply Reply `json:"reply"`
}

// Kind is "reply".
func (SetReply) Kind() string { return "reply" }

// Label says what it does.
func (SetReply) Label() string { return "note something about a correction" }

// Apply notes it.
func (e SetReply) Apply(c *Collection) (*Collection, error) {
	if _, err := ParseReplyState(e.Reply.State.String()); err != nil {
		return nil, err
	}
	if !slices.ContainsFunc(c.rounds, func(r Round) bool { return r.ID == e.Reply.Round }) {
		return nil, fmt.Errorf("the round of that correction is no longer in the book")
	}
	i, found := c.findReply(e.Reply.Round, e.Reply.Key)
	if found && c.replies[i] == e.Reply || !found && e.Reply.empty() {
		return c, nil
	}
	replies := slices.Clone(c.replies)
	switch {
	case found && e.Reply.empty():
		replies = slices.Delete(replies, i, i+1)
	case found:
		replies[i] = e.Reply
	default:
		replies = slices.Insert(replies, i, e.Reply)
	}
	return c.with(func(d *Collection) { d.replies = emptyIsNil(replies) }), nil
}
