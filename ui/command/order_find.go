package command

import (
	"bytes"
	"context"
	"encoding/json"
	"errors"
	"fmt"
	"slices"
	"strings"

	"headland/pagemodel"
	"headland/typeset/order"
	"headland/ui/session"
)

// foundOrder is an order that was found as other programs read it: names are added,
// never changed.
type foundOrder struct {
	Moved []string   `json:"moved"` // titles, in the new order
	Order []newPlace `json:"order"`
	Toll  toll       `json:"toll"` // with its faults not counted
	Says  []string   `json:"says"`
}

// newPlace is a place in an order that was found.
type newPlace struct {
	Title  string `json:"title"`
	Number int    `json:"number"` // of the poem in the present order; 0 for a section's head
}

// findOrder looks for an order until the time is over or nothing better can be.
func (c *call) findOrder(s *session.Session, o *orderOptions) error {
	conditions, err := c.conditions(o.find, s)
	if err != nil {
		return err
	}
	ctx, stop := context.WithTimeout(context.Background(), o.time())
	defer stop()
	out := struct {
		Toll  toll         `json:"toll"`
		Found []foundOrder `json:"found"`
	}{tollOf(s.Toll()), []foundOrder{}}
	if !o.json {
		c.out.printf("The book: %s\n", out.Toll.words())
	}
	err = s.SearchOrder(ctx, conditions, func(f order.Found) {
		out.Found = append(out.Found, foundOf(s.Collection(), f))
		if !o.json {
			c.foundProse(out.Found)
		}
	})
	if err != nil {
		return err
	}
	if o.json {
		return c.json(out)
	}
	if ctx.Err() != nil {
		c.out.printf("\nThe time is over: there may be a better one.\n")
	} else {
		c.out.printf("\nNone is better.\n")
	}
	return nil
}

func foundOf(book *pagemodel.Collection, f order.Found) foundOrder {
	out := foundOrder{Moved: []string{}, Order: []newPlace{}, Toll: tollOf(f.Toll), Says: f.Says}
	for _, id := range f.Moved {
		if p, _, ok := book.Poem(id); ok {
			out.Moved = append(out.Moved, p.Name())
		}
	}
	sections := map[int64]string{}
	for _, e := range book.Order() {
		if e.Section != nil {
			sections[-int64(e.Section.ID)] = e.Section.Title
		}
	}
	for _, id := range f.Arrangement.Order {
		if p, number, ok := book.Poem(pagemodel.PoemID(id)); ok {
			out.Order = append(out.Order, newPlace{p.Name(), number})
		} else {
			out.Order = append(out.Order, newPlace{sections[id], 0})
		}
	}
	return out
}

// foundProse prints the last order found: what it costs, and what it moves.
func (c *call) foundProse(all []foundOrder) {
	last := all[len(all)-1]
	c.out.printf("\n%d. %s\n", len(all), last.Toll.words())
	for _, says := range last.Says {
		c.out.printf("    %s\n", says)
	}
}

// conditions are read as a script is, each on a line of its own.
func (c *call) conditions(name string, s *session.Session) ([]order.Condition, error) {
	text, called, err := c.script(name, "file of conditions")
	if err != nil {
		return nil, err
	}
	var all []order.Condition
	err = eachLine(text, func(n int, line []byte) error {
		one, err := readCondition(line, s)
		if err != nil {
			return fmt.Errorf("%s, line %d: %w", called, n, err)
		}
		all = append(all, one)
		return nil
	})
	return all, err
}

// conditionNames are what a condition can be.
var conditionNames = []string{"together", "in_order", "first", "last", "apart", "sections"}

var errNoCondition = errors.New(`every line is one condition, as in {"first":1}: it is one of ` + strings.Join(conditionNames, ", "))

func readCondition(line []byte, s *session.Session) (order.Condition, error) {
	f := &fields{kind: "condition"}
	decoder := json.NewDecoder(bytes.NewReader(line))
	if err := f.read(decoder); errors.Is(err, errNoEdit) {
		return order.Condition{}, errNoCondition
	} else if err != nil {
		return order.Condition{}, err
	}
	name := ""
	for name = range f.raw {
	}
	if len(f.raw) != 1 || !slices.Contains(conditionNames, name) || decoder.More() {
		return order.Condition{}, errNoCondition
	}
	condition := f.condition(name, s)
	return condition, f.err
}

// condition is the condition of that name.
func (f *fields) condition(name string, s *session.Session) order.Condition {
	switch name {
	case "first":
		return order.First(f.poem(name, s).id())
	case "last":
		return order.Last(f.poem(name, s).id())
	case "sections":
		if f.text(name) != "stay" && f.err == nil {
			f.err = fmt.Errorf(`"sections" must be "stay", and is %s`, f.raw[name])
		}
		return order.SectionsStay()
	}
	poems := f.poems(name, s)
	switch {
	case f.err != nil:
	case name == "together":
		return order.Together(poems...)
	case name == "in_order":
		return order.InOrder(poems...)
	case len(poems) == 2:
		return order.Apart(poems[0], poems[1])
	default:
		f.err = fmt.Errorf(`"apart" is about two poems, and %s are named`, counted(len(poems), "poem"))
	}
	return order.Condition{}
}
