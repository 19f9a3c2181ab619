package command

import (
	"flag"
	"fmt"
	"strings"
	"time"

	"headland/pagemodel"
	"headland/typeset/order"
	"headland/ui/session"
)

const orderMore = `What the order costs is blank pages, poems of two pages that do not face each
other, stanzas that a page end parts, the extent and the signatures. Below it are
the orders that are kept, each with what it would cost beside the book's. With --find
another order is looked for: fewer unfaced poems and blanks first, then as few poems
moved as can be; each that is better than the one before is printed. The file is
never changed: the edit move does that.

  --find CONDITIONS  a file of what the order must meet, or - for what is typed or
                     piped in, one JSON object a line; no line is no condition
  --seconds N        looks for at most so many seconds, 5 if not said
  --json             one JSON object, to read on

Conditions, where P, Q and R are poems' numbers or titles:

  {"together":[P,Q,R]}   one after another, whichever comes first
  {"in_order":[P,Q,R]}   one after another as they are named
  {"first":P}            the first of the book
  {"last":P}             the last of the book
  {"apart":[P,Q]}        never side by side
  {"sections":"stay"}    every poem in its section
`

type orderOptions struct {
	set     *flag.FlagSet
	json    bool
	find    string
	seconds float64
}

// usualSeconds is how long an order is looked for, and mostSeconds how long at
// most.
const usualSeconds, mostSeconds = 5, 3600

func orderFlags(set *flag.FlagSet) any {
	o := &orderOptions{set: set}
	set.BoolVar(&o.json, "json", false, "")
	set.StringVar(&o.find, "find", "", "")
	set.Float64Var(&o.seconds, "seconds", usualSeconds, "")
	return o
}

func (o *orderOptions) check() error {
	switch {
	case given(o.set, "find") && o.find == "":
		return misuse("order: --find needs a file of conditions, or - for the input")
	case given(o.set, "seconds") && o.find == "":
		return misuse("order: --seconds is for --find: what an order costs takes no time")
	case !(o.seconds > 0 && o.seconds <= mostSeconds):
		return misuse("order: --seconds is %g: choose more than 0 and up to %d", o.seconds, mostSeconds)
	}
	return nil
}

func (o *orderOptions) time() time.Duration { return time.Duration(o.seconds * float64(time.Second)) }

func runOrder(c *call, options any, words []string) (err error) {
	o := options.(*orderOptions)
	s, err := openOne("order", words, o.check)
	if err != nil {
		return err
	}
	defer closing(s, &err)
	if o.find != "" {
		return c.findOrder(s, o)
	}
	out, err := ordersOf(s)
	if err != nil {
		return err
	}
	if o.json {
		return c.json(out)
	}
	c.ordersProse(out)
	return nil
}

// toll is what an order costs as other programs read it: names are added, never
// changed.
type toll struct {
	Blanks        int  `json:"blanks"`
	Unfaced       int  `json:"unfaced"`
	Parted        int  `json:"parted"`
	Pages         int  `json:"pages"`
	Signatures    int  `json:"signatures"`
	OverSignature int  `json:"over_signature"` // pages over the last full signature
	ToEven        int  `json:"to_even"`        // pages to the next even working
	Faults        *int `json:"faults"`         // null where they were not counted

	is order.Toll
}

func tollOf(t order.Toll) toll {
	out := toll{t.Blanks, t.Unfaced, t.Parted, t.Extent, t.Signatures, t.OverSignature, t.ToEven, nil, t}
	if t.Faults != order.Uncounted {
		out.Faults = &t.Faults
	}
	return out
}

// words are the toll in words.
func (t toll) words() string {
	said := []string{counted(t.Blanks, "blank"), counted(t.Unfaced, "unfaced poem"), counted(t.Parted, "parted stanza")}
	if t.Faults != nil {
		said = append(said, counted(*t.Faults, "fault"))
	}
	return fmt.Sprintf("%s; %s in %s, %d to an even working", strings.Join(said, ", "), counted(t.Pages, "page"), counted(t.Signatures, "signature"), t.ToEven)
}

// orders are the book's order and those kept beside it.
type orders struct {
	Toll  toll        `json:"toll"`
	Kept  []keptOrder `json:"orders"`
	poems int
}

type keptOrder struct {
	Name    string   `json:"name"`
	On      string   `json:"on"`       // the day on which it was kept, ISO 8601
	Book    bool     `json:"book"`     // the book is in it
	LeftOut []string `json:"left_out"` // titles of the poems that it leaves out
	Toll    toll     `json:"toll"`
}

// ordersOf sets the book in each order that is kept; nothing in the file changes.
func ordersOf(s *session.Session) (orders, error) {
	c := s.Collection()
	out := orders{Toll: tollOf(s.Toll()), Kept: []keptOrder{}}
	out.poems, _ = countText(c)
	for _, kept := range c.Orders() {
		next, err := pagemodel.UseOrder{Name: kept.Name}.Apply(c)
		if err != nil {
			return orders{}, err
		}
		one := keptOrder{Name: kept.Name, On: kept.On, Book: next == c, LeftOut: []string{}}
		for _, p := range next.LeftOut() {
			one.LeftOut = append(one.LeftOut, p.Name())
		}
		one.Toll = tollOf(order.TollOf(s.Setter().Set(s.Committed(), next)))
		out.Kept = append(out.Kept, one)
	}
	return out, nil
}

func (c *call) ordersProse(o orders) {
	c.out.printf("The book, %s: %s\n", counted(o.poems, "poem"), o.Toll.words())
	for _, kept := range o.Kept {
		c.out.printf("%s: %s\n", strings.TrimSpace(kept.Name+" "+kept.On), kept.Toll.words())
		if kept.Book {
			c.out.printf("    the book is in it\n")
		} else {
			c.out.printf("    beside the book's, %s\n", kept.Toll.is.Beside(o.Toll.is))
		}
		if len(kept.LeftOut) > 0 {
			c.out.printf("    leaves out %s\n", strings.Join(kept.LeftOut, ", "))
		}
	}
}
