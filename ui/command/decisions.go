package command

import (
	"fmt"
	"strings"

	"headland/pagemodel"
	"headland/typeset"
)

// decision is a line that needs one, or about which somebody has decided.
type decision struct {
	Poem   string `json:"poem"`
	Number int    `json:"number"`
	Stanza int    `json:"stanza"`
	Line   int    `json:"line"`
	Page   string `json:"page"`
	Row    int    `json:"row"`
	Text   string `json:"text"`
	State  string `json:"state"`
	Asleep bool   `json:"asleep"` // kept, and not turning now
	Why    string `json:"why"`    // why a kept line is unsettled again
	On     string `json:"on"`     // the day, ISO 8601
	Reason string `json:"reason"`
	In     string `json:"in"` // "poem" or "edition", in which a broken line is broken; else ""
}

func decisions(s *typeset.Setting, names map[pagemodel.PoemID]string) []decision {
	all := []decision{}
	for _, d := range s.Decisions() {
		all = append(all, decision{
			Poem: names[d.Ref.Poem], Number: d.Number, Stanza: d.Stanza, Line: d.Line, Page: folio(s, d.Page), Row: d.Row,
			Text: d.Text, State: d.State.String(), Asleep: d.Asleep, Why: d.Why, On: d.On, Reason: d.Reason, In: brokenIn(d),
		})
	}
	return all
}

func brokenIn(d typeset.Decision) string {
	switch {
	case d.State != pagemodel.Broken:
		return ""
	case d.InPoem:
		return string(pagemodel.InPoem)
	}
	return string(pagemodel.InEdition)
}

// sentRound is a round that went out.
type sentRound struct {
	Name string `json:"name"`
	On   string `json:"on"`
}

func sentRounds(c *pagemodel.Collection) []sentRound {
	all := []sentRound{}
	for _, r := range c.Rounds() {
		all = append(all, sentRound{r.Name, r.On})
	}
	return all
}

// variant is a version of a poem that has more than one, or whose only one has a
// name.
type variant struct {
	Poem    string `json:"poem"`
	Number  int    `json:"number"`
	Name    string `json:"name"`    // "" for the one in the book, where it was given none
	Current bool   `json:"current"` // the one in the book
	On      string `json:"on"`      // the day on which it was kept; "" for the one in the book
}

func variants(c *pagemodel.Collection) []variant {
	all := []variant{}
	for number, p := range c.Poems() {
		kept, current := c.Variants(p.ID()), c.VariantName(p.ID())
		if len(kept) == 0 && current == "" {
			continue
		}
		all = append(all, variant{p.Name(), number, current, true, ""})
		for _, v := range kept {
			all = append(all, variant{p.Name(), number, v.Name, false, v.On})
		}
	}
	return all
}

// decided says how many lines were settled, and how, where any line was.
func (c *call) decided(all []decision) {
	counts := map[string]int{}
	for _, d := range all {
		counts[d.State+d.In]++
		if d.Asleep {
			counts["asleep"]++
		}
		if d.Why != "" {
			counts["again"]++
		}
	}
	var parts []string
	for _, part := range []struct{ of, words string }{
		{"kept", "%s let turn"}, {"asleep", "%s of them not turning now"},
		{"brokenedition", "%s broken in this edition"}, {"brokenpoem", "%s broken in the poem"}, {"again", "%s unsettled again"},
	} {
		if n := counts[part.of]; n > 0 {
			parts = append(parts, fmt.Sprintf(part.words, counted(n, "line")))
		}
	}
	if len(parts) > 0 {
		c.out.printf("Decided: %s\n\n", strings.Join(parts, ", "))
	}
}

// unsettledAgain says why kept lines are unsettled again.
func (c *call) unsettledAgain(all []decision) {
	for _, d := range all {
		if d.Why != "" {
			c.out.printf("Unsettled again: #%d %s, stanza %d, line %d: %s\n\n", d.Number, shortened(d.Poem, nameRoom), d.Stanza, d.Line, d.Why)
		}
	}
}

// sentAndKept says which rounds went out and which variants there are.
func (c *call) sentAndKept(r report) {
	var sent, kept []string
	for _, round := range r.Rounds {
		sent = append(sent, strings.TrimSpace(round.Name+" "+round.On))
	}
	for _, v := range r.Variants {
		if !v.Current {
			kept = append(kept, fmt.Sprintf("%s of #%d %s", v.Name, v.Number, shortened(v.Poem, nameRoom)))
		}
	}
	if len(sent) > 0 {
		c.out.printf("Sent: %s\n", strings.Join(sent, ", "))
	}
	if len(kept) > 0 {
		c.out.printf("Variants: %s\n", strings.Join(kept, ", "))
	}
	if len(sent)+len(kept) > 0 {
		c.out.printf("\n")
	}
}
