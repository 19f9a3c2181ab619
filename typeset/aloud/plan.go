package aloud

import (
	"headland/pagemodel"
	"headland/typeset/prosody"
)

// Timed is an item of a running order with its times, in seconds.
type Timed struct {
	Item   pagemodel.Item `json:"item"`
	Title  string         `json:"title"`  // of the poem, or its first line in quotation marks; "" where only talk is
	Number int            `json:"number"` // in the book, from 1; 0 where it is not in it
	Estimate
	Starts  float64 `json:"starts_s"` // from the beginning of the reading to its talk
	Dropped bool    `json:"dropped"`  // is left out so that the rest fits, and takes no time
	Last    float64 `json:"last_s"`   // what it took the last time, with its talk; 0 for never timed
}

// Plan is a running order with its times, in seconds.
type Plan struct {
	Reading pagemodel.Reading
	Items   []Timed
	Total   float64 // of what is not dropped
	Whole   float64 // of all
	Slot    float64 // there is; 0 for no limit
	Over    float64 // by which the total exceeds the slot; 0 where it fits
}

// PlanOf times a running order. Where it does not fit its slot, items marked to be
// dropped if time is short are: as few as will do, the last rather than the
// first, and all of them where even that is too long. An item whose poem is no longer
// in the file has its talk only. lex is the language's, to which the collection adds
// how the poet says words; nil stands for a language without one. What has been
// counted once with the same lex costs next to nothing.
func PlanOf(c *pagemodel.Collection, r pagemodel.Reading, lex *prosody.Lexicon, v pagemodel.Voice, taken []Taking) Plan {
	counter := newCounter(c, lex)
	plan := Plan{Reading: r, Items: make([]Timed, len(r.Items)), Slot: float64(r.Slot)}
	for i, item := range r.Items {
		title, number := nameOf(c, item)
		plan.Items[i] = Timed{Item: item, Title: title, Number: number, Estimate: counter.item(item).In(v), Last: last(item, taken)}
		plan.Whole += plan.Items[i].Seconds
	}
	if r.Slot > 0 {
		drop(plan.Items, plan.Whole-plan.Slot)
	}
	for i := range plan.Items {
		plan.Items[i].Starts = plan.Total
		if !plan.Items[i].Dropped {
			plan.Total += plan.Items[i].Seconds
		}
	}
	if r.Slot > 0 {
		plan.Over = max(0, plan.Total-plan.Slot)
	}
	return plan
}

// nameOf is what an item is known by, and its number in the book.
func nameOf(c *pagemodel.Collection, item pagemodel.Item) (string, int) {
	p, number := poemOf(c, item.Poem)
	switch {
	case p != nil:
		return p.Name(), number
	case item.Poem != 0:
		return "(a poem that is no longer in the file)", 0
	case item.Title != "":
		return item.Title, 0
	}
	if lines := linesOf(nil, item); len(lines) > 0 {
		return "“" + lines[0].text + "”", 0
	}
	return "", 0
}

// Book is the whole book in its order as a running order: no talk, no slot and no
// identities.
func Book(c *pagemodel.Collection) pagemodel.Reading {
	r := pagemodel.Reading{Name: c.About().Title}
	for _, p := range c.Poems() {
		r.Items = append(r.Items, pagemodel.Item{Poem: p.ID()})
	}
	return r
}
