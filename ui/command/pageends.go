package command

import (
	"headland/pagemodel"
	"headland/typeset"
)

// pageEnd is where a page ends in the midst of a poem, and why there.
type pageEnd struct {
	Kind  string `json:"kind"`
	Poem  string `json:"poem"`
	Page  string `json:"page"` // the one that ends
	Hides bool   `json:"hides_stanza_break"`
	Text  string `json:"text"` // the line that the next page begins with; "" where a part's heading does
	Why   string `json:"why"`
}

// pageEndKinds are the kinds as reports name them; others are none within a poem.
var pageEndKinds = map[typeset.PageEndKind]string{
	typeset.BetweenStanzas: "between-stanzas",
	typeset.WithinStanza:   "within-stanza",
	typeset.BeforePart:     "before-part",
	typeset.ForcedByPoet:   "forced",
}

// pageEnds are all page ends within poems, in the order of the pages.
func pageEnds(s *typeset.Setting, names map[pagemodel.PoemID]string) []pageEnd {
	ends := []pageEnd{}
	for n := 1; n <= s.Extent(); n++ {
		end := s.PageEnd(n)
		kind, within := pageEndKinds[end.Kind]
		if !within {
			continue
		}
		poem := end.Line.Poem
		if poem == 0 {
			poem, _ = s.PoemOn(n + 1)
		}
		e := pageEnd{Kind: kind, Poem: names[poem], Page: s.FolioOf(n), Hides: end.HidesBreak, Why: end.Text}
		if p, at, err := s.Collection().Line(end.Line); err == nil {
			e.Text = p.Line(at).Text()
		}
		ends = append(ends, e)
	}
	return ends
}

// proposal is a form that a poem has by its shape, and the poet has not declared.
type proposal struct {
	Poem   string `json:"poem"`
	Number int    `json:"number"`
	Form   string `json:"form"`
}

// proposals are the forms that could be declared.
func proposals(c *pagemodel.Collection) []proposal {
	all := []proposal{}
	for number, p := range c.Poems() {
		if p.Head().Form != pagemodel.NoForm {
			continue
		}
		if form := pagemodel.ProposedForm(p); form != pagemodel.NoForm {
			all = append(all, proposal{p.Name(), number, string(form)})
		}
	}
	return all
}
