package command

import (
	"slices"

	"headland/pagemodel"
	"headland/typeset"
	"headland/typeset/aloud"
)

// reading is a running order as other programs read it: names are added, never
// changed. Times are in seconds.
type reading struct {
	Reading  string        `json:"reading"` // its name; the book's title for the whole book
	Occasion string        `json:"occasion"`
	On       string        `json:"on"`      // the day, ISO 8601
	Slot     int           `json:"slot_s"`  // 0 for no limit
	Total    seconds       `json:"total_s"` // of what is not dropped
	Over     seconds       `json:"over_s"`  // by which the total exceeds the slot
	Items    []readingItem `json:"items"`
}

type readingItem struct {
	Poem     string  `json:"poem"`   // its title, or its first line; "" where something is said only
	Number   int     `json:"number"` // in the book; 0 where it is not in it
	Page     string  `json:"page"`   // likewise ""
	Estimate seconds `json:"estimate_s"`
	Taken    seconds `json:"taken_s"` // the last time; 0 for never
	Starts   seconds `json:"starts_s"`
	Dropped  bool    `json:"dropped"` // is left out, as the slot is short
	Talk     seconds `json:"talk_s"`  // of the estimate, what is said before
	Before   string  `json:"before"`  // what is said before
	Guessed  int     `json:"guessed"` // words whose syllables are guessed

	From *linePlace `json:"from"` // of an extract: its first line; null where it begins with the poem
	To   *linePlace `json:"to"`   // and its last; null where it ends with the poem

	words int
}

// linePlace is where a line stands in its poem, counted from 1.
type linePlace struct {
	Stanza int `json:"stanza"`
	Line   int `json:"line"`
}

func aloudOf(set *typeset.Setting, p aloud.Plan) reading {
	out := reading{
		Reading: p.Reading.Name, Occasion: p.Reading.Occasion, On: p.Reading.On, Slot: p.Reading.Slot,
		Total: seconds(p.Total), Over: seconds(p.Over), Items: make([]readingItem, len(p.Items)),
	}
	for i := range p.Items {
		out.Items[i] = itemOf(set, &p.Items[i])
	}
	return out
}

func itemOf(set *typeset.Setting, t *aloud.Timed) readingItem {
	return readingItem{
		Poem: t.Title, Number: t.Number, Page: pageOfItem(set, t.Item), Estimate: seconds(t.Seconds), Taken: seconds(t.Last),
		Starts: seconds(t.Starts), Dropped: t.Dropped, Talk: seconds(t.Talk), Before: t.Item.Before, Guessed: t.Guessed,
		From: lineAt(set, t.Item.Poem, t.Item.From), To: lineAt(set, t.Item.Poem, t.Item.To), words: t.Words,
	}
}

// lineAt is where a line stands, nil where there is no such line. Of a poem that is
// left out of the book it is looked for there.
func lineAt(set *typeset.Setting, poem pagemodel.PoemID, line pagemodel.LineID) *linePlace {
	c := set.Collection()
	p, _, ok := c.Poem(poem)
	if i := slices.IndexFunc(c.LeftOut(), func(p *pagemodel.Poem) bool { return p.ID() == poem }); !ok && i >= 0 {
		p, ok = c.LeftOut()[i], true
	}
	if !ok || line == 0 {
		return nil
	}
	at, ok := p.Find(line)
	if !ok {
		return nil
	}
	return &linePlace{p.StanzaNumber(at), at.Line + 1}
}

// pageOfItem is the folio to turn to: of an extract, that of its first line.
func pageOfItem(set *typeset.Setting, item pagemodel.Item) string {
	page, ok := set.PageOfLine(pagemodel.LineRef{Poem: item.Poem, Line: item.From})
	if item.From == 0 || !ok {
		page, _ = set.PageOfPoem(item.Poem)
	}
	return folio(set, page)
}
