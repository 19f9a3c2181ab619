package command

import (
	"flag"
	"fmt"
	"time"

	"headland/pagemodel"
	"headland/ui/session"
)

const statesMore = `All that the poem was since it came in, the oldest first, what was undone among it.
The number of a state is that of the edit that made it: the edit bring-back takes it
to give the poem that state again.

  --poem P   the poem's number, or its title
  --json     a list of them, to read on, with the text of each
`

type statesOptions struct {
	poem string
	json bool
}

func statesFlags(set *flag.FlagSet) any {
	o := &statesOptions{}
	set.StringVar(&o.poem, "poem", "", "")
	set.BoolVar(&o.json, "json", false, "")
	return o
}

func runStates(c *call, options any, words []string) (err error) {
	o := options.(*statesOptions)
	file, err := oneFile("states", words)
	if err != nil {
		return err
	}
	if o.poem == "" {
		return misuse("states: say which poem, by --poem: its number, or its title")
	}
	s, err := session.Open(file)
	if err != nil {
		return err
	}
	defer closing(s, &err)
	p, err := s.Collection().PoemCalled(o.poem)
	if err != nil {
		return err
	}
	states, err := s.PoemStates(p.ID())
	if err != nil {
		return err
	}
	all := statesOf(states)
	if o.json {
		return c.json(all)
	}
	c.statesProse(p.Name(), all)
	return nil
}

// poemState is a state as other programs read it: names are added, never changed.
type poemState struct {
	State   int64      `json:"state"` // the edit that made it
	At      string     `json:"at"`    // RFC 3339, UTC
	Label   string     `json:"label"`
	Undone  bool       `json:"undone"`
	Now     bool       `json:"now"` // it is the one in the book
	Title   string     `json:"title"`
	Stanzas [][]string `json:"stanzas"`

	at time.Time
}

// statesOf are the states; the last that was not undone is the one in the book.
func statesOf(states []session.PoemState) []poemState {
	all, now := make([]poemState, len(states)), -1
	for i, state := range states {
		all[i] = poemState{
			State: state.Edit, At: state.At.UTC().Format(time.RFC3339), Label: state.Label, Undone: state.Undone,
			Title: state.Poem.Head().Title, Stanzas: stanzasOf(state.Poem), at: state.At,
		}
		if !state.Undone {
			now = i
		}
	}
	if now >= 0 {
		all[now].Now = true
	}
	return all
}

func stanzasOf(p *pagemodel.Poem) [][]string {
	stanzas := [][]string{}
	for at, l := range p.Lines() {
		if at.Line == 0 {
			stanzas = append(stanzas, nil)
		}
		last := len(stanzas) - 1
		stanzas[last] = append(stanzas[last], l.Text())
	}
	return stanzas
}

// statesProse prints the states by the clock of whoever reads them.
func (c *call) statesProse(poem string, all []poemState) {
	c.out.printf("%s: %s\n", poem, counted(len(all), "state"))
	rows := make([]string, len(all))
	for i, state := range all {
		rows[i] = fmt.Sprintf("%d\t%s\t%s\t%s\t%s", state.State, state.at.Local().Format("2006-01-02 15:04"), state.extent(), state.stands(), state.Label)
	}
	for _, row := range aligned(rows) {
		c.out.printf("  %s\n", row)
	}
}

// extent is how long the poem was.
func (s poemState) extent() string {
	lines := 0
	for _, stanza := range s.Stanzas {
		lines += len(stanza)
	}
	return counted(lines, "line") + " in " + counted(len(s.Stanzas), "stanza")
}

func (s poemState) stands() string {
	switch {
	case s.Now:
		return "in the book"
	case s.Undone:
		return "undone"
	}
	return "earlier"
}
