package pagemodel

import (
	"fmt"
	"slices"
	"strings"
	"unicode/utf8"
)

// RoundID names a round for as long as the file lives.
type RoundID int64

// Round is the text and the pages as they stood when they went out. What they
// were is kept by the file: see headland/pagemodel/sqlite.
type Round struct {
	ID   RoundID `json:"id"`
	Name string  `json:"name"`         // "first proofs", or whatever the poet calls it
	On   string  `json:"on,omitempty"` // the day, ISO 8601
}

// RoundNames are the usual rounds of a book, in the order in which they come
// (common practice, no source).
var RoundNames = []string{"copy-edit", "first proofs", "second proofs", "revises", "printed"}

// longestName is how many characters a name that the poet gives may have.
const longestName = 80

// Rounds are the rounds that went out, the oldest first. Not to be changed.
func (c *Collection) Rounds() []Round { return c.rounds }

// RoundCalled finds a round by its name; "" is the last one. The error says what
// there is.
func (c *Collection) RoundCalled(name string) (Round, error) {
	if len(c.rounds) == 0 {
		return Round{}, fmt.Errorf("no round has gone out yet: mark the book as sent first")
	}
	if name == "" {
		return c.rounds[len(c.rounds)-1], nil
	}
	var names []string
	for _, r := range c.rounds {
		if strings.EqualFold(r.Name, strings.TrimSpace(name)) {
			return r, nil
		}
		names = append(names, "“"+r.Name+"”")
	}
	return Round{}, fmt.Errorf("there is no round %q: it is one of %s", name, strings.Join(names, ", "))
}

// RoundAfter is the round that went out next after one, or false where it is the
// last.
func (c *Collection) RoundAfter(id RoundID) (Round, bool) {
	i := slices.IndexFunc(c.rounds, func(r Round) bool { return r.ID == id })
	if i < 0 || i+1 == len(c.rounds) {
		return Round{}, false
	}
	return c.rounds[i+1], true
}

// NextRoundName is what the round to come is usually called: the name after the
// furthest one used.
func (c *Collection) NextRoundName() string {
	next, used := 0, map[string]bool{}
	for _, r := range c.rounds {
		used[strings.ToLower(r.Name)] = true
		next = max(next, 1+slices.Index(RoundNames, strings.ToLower(r.Name)))
	}
	if next < len(RoundNames) {
		return RoundNames[next]
	}
	for n := 2; ; n++ {
		if name := fmt.Sprintf("printed %d", n); !used[name] {
			return name
		}
	}
}

// MarkSent makes a round of the book as it stands: it has gone out.
type MarkSent struct {
	Name string `json:"name"`         // "" is the usual next one
	On   string `json:"on,omitempty"` // the day, ISO 8601
}

// Kind is "mark-sent".
func (MarkSent) Kind() string { return "mark-sent" }

// Label names the round.
func (e MarkSent) Label() string { return strings.TrimRight("mark as sent: "+e.Name, ": ") }

// OnDay is the round on that day.
func (e MarkSent) OnDay(day string) Edit { e.On = day; return e }

// Apply makes the round.
func (e MarkSent) Apply(c *Collection) (*Collection, error) {
	name := strings.Join(strings.Fields(e.Name), " ")
	if name == "" {
		name = c.NextRoundName()
	}
	if n := utf8.RuneCountInString(name); n > longestName {
		return nil, fmt.Errorf("a name of %d characters is too long for a round: write at most %d", n, longestName)
	}
	if c.order.Len() == 0 {
		return nil, fmt.Errorf("the book is empty: there is nothing to mark as sent")
	}
	for _, r := range c.rounds {
		if strings.EqualFold(r.Name, name) {
			return nil, fmt.Errorf("there is a round called %q already: give this one another name", r.Name)
		}
	}
	return c.with(func(d *Collection) {
		d.rounds = append(c.rounds[:len(c.rounds):len(c.rounds)], Round{RoundID(c.next), name, e.On})
		d.next = c.next + 1
	}), nil
}
