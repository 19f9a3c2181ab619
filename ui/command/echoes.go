package command

import (
	"flag"
	"fmt"
	"strings"

	"headland/typeset"
	"headland/typeset/echoes"
)

const echoesMore = `What the poet has marked comes first (see the edit echo), then words that repeat
more than the language would expect, the most surprising first, each with every place
where it stands. Nothing is called good or bad.

  --json   a list of them, to read on
`

type echoesOptions struct{ json bool }

func echoesFlags(set *flag.FlagSet) any {
	o := &echoesOptions{}
	set.BoolVar(&o.json, "json", false, "")
	return o
}

func runEchoes(c *call, options any, words []string) (err error) {
	o := options.(*echoesOptions)
	s, err := openOne("echoes", words)
	if err != nil {
		return err
	}
	defer closing(s, &err)
	all := echoesOf(s.Committed(), s.Echoes())
	if o.json {
		return c.json(all)
	}
	c.echoesProse(all)
	return nil
}

// echo is something that comes back as other programs read it: names are added,
// never changed.
type echo struct {
	Name        string       `json:"name"`
	Marked      bool         `json:"marked"` // by the poet
	Occurrences []occurrence `json:"occurrences"`
	Expected    float64      `json:"expected"` // how often the language would have it; 0 where nothing is expected
	Poems       int          `json:"poems"`    // that it is in
	Nearest     int          `json:"nearest"`  // the least distance between two of those, in poems; 0 where there is none
}

// occurrence is one of its places; stanza and line are 0 where the whole poem is
// marked.
type occurrence struct {
	Poem   string `json:"poem"`
	Number int    `json:"number"`
	Stanza int    `json:"stanza"`
	Line   int    `json:"line"`
	Page   string `json:"page"`
	Text   string `json:"text"` // what stands there
}

func echoesOf(set *typeset.Setting, found []echoes.Echo) []echo {
	all := make([]echo, len(found))
	for i, e := range found {
		all[i] = echo{Name: e.Name, Marked: e.Marked, Occurrences: []occurrence{}, Expected: rounded(e.Expected, 2), Poems: e.Poems, Nearest: e.Nearest.Poems}
		for _, o := range e.Found {
			all[i].Occurrences = append(all[i].Occurrences, occurrenceOf(set, o))
		}
	}
	return all
}

func occurrenceOf(set *typeset.Setting, o echoes.Occurrence) occurrence {
	out := occurrence{Number: o.Number, Page: folio(set, o.Page)}
	p, _, ok := set.Collection().Poem(o.Ref.Poem)
	if !ok {
		return out
	}
	out.Poem = p.Name()
	if at, ok := p.Find(o.Ref.Line); ok {
		out.Stanza, out.Line = p.StanzaNumber(at), at.Line+1
		out.Text = p.Line(at).Text()[o.From:o.To]
	}
	return out
}

func (c *call) echoesProse(all []echo) {
	if len(all) == 0 {
		c.out.printf("Nothing comes back more than the language would expect, and nothing is marked.\n")
		return
	}
	for i, e := range all {
		if i > 0 {
			c.out.printf("\n")
		}
		c.out.printf("%s\n", e.heading())
		rows := make([]string, len(e.Occurrences))
		for j, o := range e.Occurrences {
			rows[j] = fmt.Sprintf("page %s\t#%d %s\t%s\t%s", o.Page, o.Number, shortened(o.Poem, nameRoom), o.place(), o.Text)
		}
		if len(rows) == 0 {
			continue
		}
		for _, row := range aligned(rows) {
			c.out.printf("  %s\n", strings.TrimRight(row, " "))
		}
	}
}

// heading says how often it comes back, beside what is expected, and how near.
func (e echo) heading() string {
	said := []string{counted(len(e.Occurrences), "place")}
	if e.Expected > 0 {
		said = append(said, fmt.Sprintf("%.1f expected", e.Expected))
	}
	if e.Marked {
		said = append(said, "marked")
	}
	switch {
	case e.Nearest == 1:
		said = append(said, "in poems side by side")
	case e.Nearest > 1:
		said = append(said, fmt.Sprintf("nearest %d poems on", e.Nearest))
	}
	return e.Name + ": " + strings.Join(said, ", ")
}

func (o occurrence) place() string {
	if o.Line == 0 {
		return "the poem"
	}
	return fmt.Sprintf("stanza %d, line %d", o.Stanza, o.Line)
}
