package command

import (
	"cmp"
	"encoding/json"
	"fmt"
	"math"
	"strings"
)

// aloudProse prints a running order with its times, each item below the other.
func (c *call) aloudProse(r reading) {
	c.out.printf("%s\n%s", r.heading(), counted(len(r.Items), "item"))
	if r.Slot > 0 {
		c.out.printf(", a slot of %s", clock(seconds(r.Slot)))
	}
	c.out.printf("\n\n")
	rows := make([]string, len(r.Items)+1)
	for i, item := range r.Items {
		rows[i] = item.row()
	}
	rows[len(r.Items)] = fmt.Sprintf("\t%6s\t%s", clock(r.Total), r.against())
	for _, row := range aligned(rows) {
		c.out.printf("  %s\n", strings.TrimRight(row, " "))
	}
	c.out.printf("\n")
	if dropped := r.dropped(); len(dropped) > 0 {
		c.out.printf("Dropped, as the slot is short: %s\n", strings.Join(dropped, ", "))
	}
	c.out.printf("%s\n", r.guesses())
}

func (r reading) heading() string {
	said := []string{cmp.Or(r.Reading, "An untitled collection")}
	for _, more := range []string{r.Occasion, r.On} {
		if more != "" {
			said = append(said, more)
		}
	}
	return strings.Join(said, ", ")
}

// row is an item's line in the table: when it starts, how long it takes, the page,
// what it is, and what there is to note.
func (i readingItem) row() string {
	var notes []string
	if i.From != nil {
		notes = append(notes, "from "+i.From.words())
	}
	if i.To != nil {
		notes = append(notes, "to "+i.To.words())
	}
	if i.Dropped {
		notes = append(notes, "dropped")
	}
	if i.Talk > 0 {
		notes = append(notes, clock(i.Talk)+" of it said before")
	}
	if i.Taken > 0 {
		notes = append(notes, "took "+clock(i.Taken))
	}
	starts, page, what := clock(i.Starts), "", cmp.Or(i.Poem, i.Before)
	if i.Dropped {
		starts = "-"
	}
	if i.Page != "" {
		page = "page " + i.Page
	}
	if i.Number > 0 {
		what = fmt.Sprintf("#%d %s", i.Number, what)
	}
	return fmt.Sprintf("%6s\t%6s\t%s\t%s\t%s", starts, clock(i.Estimate), page, shortened(what, nameRoom), strings.Join(notes, ", "))
}

func (p linePlace) words() string { return fmt.Sprintf("stanza %d, line %d", p.Stanza, p.Line) }

// against says how the total stands to the slot.
func (r reading) against() string {
	switch {
	case r.Slot == 0:
		return "in all"
	case r.Over > 0:
		return "in all, " + clock(r.Over) + " over"
	}
	return "in all, " + clock(seconds(r.Slot)-r.Total) + " to spare"
}

func (r reading) dropped() []string {
	var all []string
	for _, item := range r.Items {
		if item.Dropped {
			all = append(all, shortened(cmp.Or(item.Poem, item.Before), nameRoom))
		}
	}
	return all
}

func (r reading) guesses() string {
	guessed, words := 0, 0
	for _, item := range r.Items {
		guessed, words = guessed+item.Guessed, words+item.words
	}
	if guessed == 0 {
		return "No word's syllables are guessed."
	}
	return fmt.Sprintf("Syllables are guessed of %d of %s: the edit say says how a word goes.", guessed, counted(words, "word"))
}

// seconds is a time. Programs read it to a tenth, people as minutes and seconds.
type seconds float64

// MarshalJSON rounds it.
func (s seconds) MarshalJSON() ([]byte, error) { return json.Marshal(rounded(float64(s), 1)) }

// clock is a time in minutes and seconds.
func clock(s seconds) string {
	whole := int(math.Round(float64(s)))
	return fmt.Sprintf("%d:%02d", whole/60, whole%60)
}
