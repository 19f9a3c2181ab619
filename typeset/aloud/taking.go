package aloud

import (
	"time"

	"headland/pagemodel"
	"headland/typeset/prosody"
)

// Taking is the time that one item took in a run-through.
type Taking struct {
	Run      int64 // the run-through's identity
	Reading  pagemodel.ReadingID
	Item     pagemodel.ItemID
	Poem     pagemodel.PoemID // 0 for one from elsewhere
	At       time.Time        // when the run-through was begun
	Seconds  float64          // with the talk before it
	Stumbles []float64        // seconds from the item's beginning
}

// Observation is an item with the time that it took.
type Observation struct {
	Counts
	Item  pagemodel.ItemID `json:"item"`
	Taken float64          `json:"taken_s"`
}

// Observe counts the items of which there are timings, as they stand now. A taking
// without an item is of a poem of the book read in its order. One whose item is no
// longer in its running order, has become another poem or has left the file tells
// nothing and is passed over.
func Observe(c *pagemodel.Collection, lex *prosody.Lexicon, taken []Taking) []Observation {
	items := map[pagemodel.ItemID]pagemodel.Item{}
	for _, r := range c.Readings() {
		for _, item := range r.Items {
			items[item.ID] = item
		}
	}
	counter := newCounter(c, lex)
	var all []Observation
	for _, t := range taken {
		item, ok := items[t.Item]
		if t.Item == 0 {
			item, ok = pagemodel.Item{Poem: t.Poem}, t.Poem != 0
		}
		if p, _ := poemOf(c, item.Poem); !ok || item.Poem != t.Poem || p == nil && item.Poem != 0 || t.Seconds <= 0 {
			continue
		}
		all = append(all, Observation{counter.item(item), t.Item, t.Seconds})
	}
	return all
}

// last is the latest time that an item took, 0 for never. An item without an
// identity, as in the book read in its order, is known by its poem.
func last(item pagemodel.Item, taken []Taking) float64 {
	var latest Taking
	for _, t := range taken {
		if t.Poem != item.Poem || item.ID != 0 && t.Item != item.ID || item.ID == 0 && item.Poem == 0 {
			continue
		}
		if !t.At.Before(latest.At) {
			latest = t
		}
	}
	return latest.Seconds
}
