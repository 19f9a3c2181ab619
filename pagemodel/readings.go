package pagemodel

import (
	"fmt"
	"slices"
	"strings"
)

// ReadingID names a running order for as long as the file lives.
type ReadingID int64

// ItemID names one item of a running order for as long as the file lives.
type ItemID int64

// Reading is a running order: what is read aloud on an occasion, in which order,
// and what is said between. Its order has nothing to do with the book's.
type Reading struct {
	ID       ReadingID `json:"id"`
	Name     string    `json:"name"`
	Occasion string    `json:"occasion,omitempty"` // where and for whom
	On       string    `json:"on,omitempty"`       // the day, ISO 8601
	Slot     int       `json:"slot,omitempty"`     // seconds there are; 0 for no limit
	Items    []Item    `json:"items,omitempty"`
}

// Item is one thing read: a poem of the file, lines of one, or a poem from
// elsewhere.
type Item struct {
	ID     ItemID   `json:"id"`
	Poem   PoemID   `json:"poem,omitempty"`   // 0: from elsewhere
	From   LineID   `json:"from,omitempty"`   // of an extract: its first line
	To     LineID   `json:"to,omitempty"`     // and its last
	Title  string   `json:"title,omitempty"`  // of a poem from elsewhere
	Text   string   `json:"text,omitempty"`   // likewise: a line each, stanzas parted by an empty one
	Before string   `json:"before,omitempty"` // what is said before it
	Talk   int      `json:"talk,omitempty"`   // seconds for that; 0 is reckoned from its words
	Drop   bool     `json:"drop,omitempty"`   // is left out if time is short
	Said   []Saying `json:"said,omitempty"`   // words said otherwise than they are printed
}

// Saying is a word that is read otherwise than it is printed, for reading only.
type Saying struct {
	Line LineID `json:"line,omitempty"` // in which; 0 for a poem from elsewhere
	At   int    `json:"at"`             // byte offset in the line's text, or in Text
	Word string `json:"word"`           // as printed
	As   string `json:"as"`             // as read
}

// Readings are the running orders, in the order in which they were made. Not to be
// changed.
func (c *Collection) Readings() []Reading { return c.readings }

// Reading is a running order by its identity, or false.
func (c *Collection) Reading(id ReadingID) (Reading, bool) {
	i := c.indexOfReading(id)
	if i < 0 {
		return Reading{}, false
	}
	return c.readings[i], true
}

// ReadingCalled finds a running order by its name. The error says what there is.
func (c *Collection) ReadingCalled(name string) (Reading, error) {
	var names []string
	for _, r := range c.readings {
		if strings.EqualFold(r.Name, strings.TrimSpace(name)) {
			return r, nil
		}
		names = append(names, r.Name)
	}
	if len(names) == 0 {
		return Reading{}, fmt.Errorf("there is no running order yet: make one first")
	}
	return Reading{}, fmt.Errorf("there is no running order %q: it is one of %s", name, strings.Join(names, ", "))
}

func (c *Collection) indexOfReading(id ReadingID) int {
	return slices.IndexFunc(c.readings, func(r Reading) bool { return r.ID == id })
}

// SetReading makes a running order, where its ID is 0, or gives one other items.
// Items without an identity are given one, and so are those whose identity is
// another item's, as in a copy of a running order.
type SetReading struct {
	Reading Reading `json:"reading"`
}

// Kind is "reading".
func (SetReading) Kind() string { return "reading" }

// Label names it.
func (e SetReading) Label() string { return "change the running order " + e.Reading.Name }

// Apply makes or changes it.
func (e SetReading) Apply(c *Collection) (*Collection, error) {
	r := e.Reading
	r.Name = strings.Join(strings.Fields(r.Name), " ")
	if err := c.checkReading(r); err != nil {
		return nil, err
	}
	next := c.next
	if r.ID == 0 {
		r.ID, next = ReadingID(next), next+1
	}
	r.Items, next = c.identified(r, next)
	readings := slices.Clone(c.readings)
	if i := c.indexOfReading(r.ID); i < 0 {
		readings = append(readings, r)
	} else if string(encode(readings[i])) == string(encode(r)) {
		return c, nil
	} else {
		readings[i] = r
	}
	return c.with(func(d *Collection) { d.readings, d.next = readings, next }), nil
}

// identified are the items of a running order, each with an identity of its own,
// and the lowest that is left then.
func (c *Collection) identified(r Reading, next int64) ([]Item, int64) {
	taken := map[ItemID]bool{0: true}
	for _, other := range c.readings {
		for _, item := range other.Items {
			taken[item.ID] = other.ID != r.ID
		}
	}
	items := slices.Clone(r.Items)
	for i := range items {
		if id := items[i].ID; taken[id] || int64(id) >= c.next {
			items[i].ID, next = ItemID(next), next+1
		}
		taken[items[i].ID] = true
	}
	return items, next
}

// checkReading says why a running order can't be, or nil.
func (c *Collection) checkReading(r Reading) error {
	switch {
	case r.Name == "":
		return fmt.Errorf("a running order needs a name: write a word or two")
	case r.Slot < 0 || r.Slot > 24*60*60:
		return fmt.Errorf("a slot of %d seconds is none: write from 0, for no limit, to a day", r.Slot)
	case r.ID != 0 && c.indexOfReading(r.ID) < 0:
		return fmt.Errorf("that running order is no longer in the file")
	}
	for _, other := range c.readings {
		if other.ID != r.ID && strings.EqualFold(other.Name, r.Name) {
			return fmt.Errorf("there is a running order called %q already: give this one another name", other.Name)
		}
	}
	for _, item := range r.Items {
		if item.Talk < 0 {
			return fmt.Errorf("nobody talks for %d seconds: write 0 or more", item.Talk)
		}
		if item.Poem == 0 && item.Title == "" && item.Text == "" && item.Before == "" {
			return fmt.Errorf("an item of the running order has nothing in it: give it a poem, a text or what is said")
		}
	}
	return nil
}

// DropReading throws a running order away. Its timings stay in the file.
type DropReading struct {
	ID ReadingID `json:"id"`
}

// Kind is "drop-reading".
func (DropReading) Kind() string { return "drop-reading" }

// Label says what it does.
func (DropReading) Label() string { return "drop a running order" }

// Apply drops it.
func (e DropReading) Apply(c *Collection) (*Collection, error) {
	i := c.indexOfReading(e.ID)
	if i < 0 {
		return nil, fmt.Errorf("that running order is no longer in the file")
	}
	return c.with(func(d *Collection) {
		d.readings = emptyIsNil(slices.Delete(slices.Clone(c.readings), i, i+1))
	}), nil
}
