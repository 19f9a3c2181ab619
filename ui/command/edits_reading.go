package command

import (
	"fmt"
	"slices"
	"strings"
	"time"

	"headland/pagemodel"
	"headland/ui/session"
)

// The edits of this file are about running orders.

// readingFields are what can be said of a running order.
var readingFields = []string{"to", "occasion", "on", "slot_s", "items"}

// makeReading makes a running order, or changes what is there of its fields.
func makeReading(f *fields, s *session.Session) pagemodel.Edit {
	f.need("name")
	r, there := f.reading(s)
	if !there && f.has("to") && f.err == nil {
		_, f.err = s.Collection().ReadingCalled(r.Name)
	}
	f.take("to", &r.Name, "words in quotation marks")
	f.take("occasion", &r.Occasion, "words in quotation marks")
	f.take("on", &r.On, "a day in quotation marks")
	if _, err := time.Parse(time.DateOnly, r.On); f.has("on") && r.On != "" && err != nil && f.err == nil {
		f.err = fmt.Errorf(`"on" is %q, which is no day: write it as in 2026-03-05`, r.On)
	}
	f.take("slot_s", &r.Slot, "a whole number of seconds")
	if f.has("items") {
		r.Items = recognized(f.items(s), r.Items)
	}
	return pagemodel.SetReading{Reading: r}
}

// reading is the running order of that name, or one to be made.
func (f *fields) reading(s *session.Session) (pagemodel.Reading, bool) {
	name := strings.Join(strings.Fields(f.text("name")), " ")
	all := s.Collection().Readings()
	i := slices.IndexFunc(all, func(r pagemodel.Reading) bool { return strings.EqualFold(r.Name, name) })
	if i < 0 {
		return pagemodel.Reading{Name: name}, false
	}
	return all[i], true
}

// recognized are items with the identities of those before that are of the same
// text, so that what was timed of them stays theirs.
func recognized(items, before []pagemodel.Item) []pagemodel.Item {
	before = slices.Clone(before)
	for i := range items {
		item := &items[i]
		j := slices.IndexFunc(before, func(b pagemodel.Item) bool {
			return b.Poem == item.Poem && b.From == item.From && b.To == item.To && b.Title == item.Title && b.Text == item.Text &&
				(item.Poem != 0 || item.Text != "" || b.Before == item.Before)
		})
		if j >= 0 {
			item.ID = before[j].ID
			before = slices.Delete(before, j, j+1)
		}
	}
	return items
}

func makeDropReading(f *fields, s *session.Session) pagemodel.Edit {
	f.need("name")
	name := f.text("name")
	if f.err != nil {
		return nil
	}
	r, err := s.Collection().ReadingCalled(name)
	f.err = err
	return pagemodel.DropReading{ID: r.ID}
}
