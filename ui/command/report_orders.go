package command

import (
	"fmt"
	"strings"

	"headland/pagemodel"
	"headland/ui/session"
)

// leftOut is a poem that is in the file and not in the book.
type leftOut struct {
	Title string `json:"title"` // or its first line
	Lines int    `json:"lines"`
}

func leftOuts(c *pagemodel.Collection) []leftOut {
	all := []leftOut{}
	for _, p := range c.LeftOut() {
		all = append(all, leftOut{p.Name(), p.LineCount()})
	}
	return all
}

// orderName is an order that is kept.
type orderName struct {
	Name string `json:"name"`
	On   string `json:"on"` // the day on which it was kept, ISO 8601
}

func orderNames(c *pagemodel.Collection) []orderName {
	all := []orderName{}
	for _, o := range c.Orders() {
		all = append(all, orderName{o.Name, o.On})
	}
	return all
}

// readingName is a running order and how long it takes.
type readingName struct {
	Name  string  `json:"name"`
	On    string  `json:"on"` // the day of the reading, ISO 8601
	Slot  int     `json:"slot_s"`
	Total seconds `json:"total_s"` // of what is not dropped
}

func readingNames(s *session.Session) []readingName {
	all := []readingName{}
	for _, r := range s.Collection().Readings() {
		all = append(all, readingName{r.Name, r.On, r.Slot, seconds(s.Plan(r).Total)})
	}
	return all
}

// ordersAndReadings says which poems are left out, and which orders and running
// orders there are.
func (c *call) ordersAndReadings(r report) {
	var out, kept, readings []string
	for _, p := range r.LeftOut {
		out = append(out, shortened(p.Title, nameRoom))
	}
	for _, o := range r.Orders {
		kept = append(kept, strings.TrimSpace(o.Name+" "+o.On))
	}
	for _, one := range r.Readings {
		words := strings.TrimSpace(one.Name+" "+one.On) + ", " + clock(one.Total)
		if one.Slot > 0 {
			words += fmt.Sprintf(" of %s", clock(seconds(one.Slot)))
		}
		readings = append(readings, words)
	}
	for _, line := range []struct {
		head string
		all  []string
		part string
	}{{"Left out", out, ", "}, {"Orders kept", kept, ", "}, {"Running orders", readings, "; "}} {
		if len(line.all) > 0 {
			c.out.printf("%s: %s\n", line.head, strings.Join(line.all, line.part))
		}
	}
	if len(out)+len(kept)+len(readings) > 0 {
		c.out.printf("\n")
	}
}
