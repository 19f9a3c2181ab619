package command

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"headland/pagemodel"
	"headland/ui/session"
)

// The edits of this file put the book into another order.

// makeMove moves a poem, or a run of them.
func makeMove(f *fields, s *session.Session) pagemodel.Edit {
	run, what := f.run(s)
	a := s.Collection().Arrangement()
	if f.has("before") {
		before := f.poem("before", s).id()
		if slices.Contains(run, int64(before)) {
			if len(run) > 1 && f.err == nil {
				f.err = fmt.Errorf(`"before" names one of the poems that are moved: choose one outside of them`)
			}
			return pagemodel.Rearrange{Arrangement: a}
		}
		a.Order = moved(a.Order, run, int64(before))
	} else {
		a.Order = moved(a.Order, run, 0)
	}
	return pagemodel.Rearrange{Arrangement: a, What: "move " + what}
}

// moved is an order with a run of it before something else, 0 for at its end.
func moved(order, run []int64, before int64) []int64 {
	rest := without(order, run)
	to := slices.Index(rest, before)
	if to < 0 {
		to = len(rest)
	}
	return slices.Insert(rest, to, run...)
}

func without(order, some []int64) []int64 {
	return slices.DeleteFunc(slices.Clone(order), func(id int64) bool { return slices.Contains(some, id) })
}

// run is the poem that is meant, or the poems up to "through", and what they are in
// words.
func (f *fields) run(s *session.Session) (ids []int64, what string) {
	from := f.poem("poem", s)
	to := from
	if f.has("through") {
		to = f.poem("through", s)
	}
	if f.err != nil {
		return nil, ""
	}
	c := s.Collection()
	first, _ := c.IndexOf(from.ID())
	last, _ := c.IndexOf(to.ID())
	if last < first {
		f.err = fmt.Errorf("%s stands before %s: name the upper poem first", to.Name(), from.Name())
		return nil, ""
	}
	ids = c.Arrangement().Order[first : last+1]
	if slices.ContainsFunc(ids, func(id int64) bool { return id < 0 }) {
		f.err = fmt.Errorf("a section begins between %s and %s: name poems of one section, or move the section", from.Name(), to.Name())
		return nil, ""
	}
	if len(ids) == 1 {
		return ids, from.Name()
	}
	return ids, counted(len(ids), "poem")
}

// makeMoveSection moves a section with its poems.
func makeMoveSection(f *fields, s *session.Session) pagemodel.Edit {
	section := f.section("section", s)
	before := pagemodel.Section{}
	if f.has("before") {
		before = f.section("before", s)
	}
	if f.err != nil {
		return nil
	}
	a := s.Collection().Arrangement()
	if section.ID != before.ID {
		a.Order = moved(a.Order, sectionRun(a.Order, section.ID), -int64(before.ID))
	}
	return pagemodel.Rearrange{Arrangement: a, What: "move the section " + section.Title}
}

// sectionRun is a section's head and the poems below it.
func sectionRun(order []int64, id pagemodel.SectionID) []int64 {
	from := slices.Index(order, -int64(id))
	to := from + 1
	for to < len(order) && order[to] > 0 {
		to++
	}
	return order[from:to]
}

// section is the section that a field names, by its title or its number.
func (f *fields) section(name string, s *session.Session) pagemodel.Section {
	f.need(name)
	if f.err != nil {
		return pagemodel.Section{}
	}
	called := string(f.raw[name])
	if number, err := strconv.Atoi(called); err == nil {
		called = "#" + strconv.Itoa(number)
	} else {
		called = ""
		f.take(name, &called, "a section's number, or its title in quotation marks")
	}
	var found []pagemodel.Section
	var names []string
	for _, e := range s.Collection().Order() {
		if e.Section == nil {
			continue
		}
		names = append(names, e.Section.Title)
		if called == "#"+strconv.Itoa(len(names)) || strings.EqualFold(called, e.Section.Title) {
			found = append(found, *e.Section)
		}
	}
	switch {
	case f.err != nil:
	case len(found) == 1:
		return found[0]
	case len(names) == 0:
		f.err = fmt.Errorf("there is no section in the book to move")
	case len(found) == 0:
		f.err = fmt.Errorf("there is no section %s: it is one of %s", called, strings.Join(names, ", "))
	default:
		f.err = fmt.Errorf("%d sections are called %q: write its number", len(found), called)
	}
	return pagemodel.Section{}
}

// makeLeaveOut takes poems out of the book; they stay in the file.
func makeLeaveOut(f *fields, s *session.Session) pagemodel.Edit {
	run, what := f.run(s)
	a := s.Collection().Arrangement()
	a.Order, a.LeftOut = without(a.Order, run), append(a.LeftOut, run...)
	return pagemodel.Rearrange{Arrangement: a, What: "leave out " + what}
}

// makePutBack puts a poem back that was left out.
func makePutBack(f *fields, s *session.Session) pagemodel.Edit {
	p := f.leftOut("poem", s)
	before := int64(0)
	if f.has("before") {
		before = int64(f.poem("before", s).id())
	}
	if f.err != nil {
		return nil
	}
	a, one := s.Collection().Arrangement(), []int64{int64(p.ID())}
	a.Order, a.LeftOut = moved(a.Order, one, before), without(a.LeftOut, one)
	return pagemodel.Rearrange{Arrangement: a, What: "put back " + p.Name()}
}

// leftOut is the poem that was left out and that a field names by its title.
func (f *fields) leftOut(name string, s *session.Session) named {
	f.need(name)
	title := f.text(name)
	var found []*pagemodel.Poem
	var names []string
	for _, p := range s.Collection().LeftOut() {
		names = append(names, p.Name())
		if p.Name() == title {
			found = append(found, p)
		}
	}
	switch {
	case f.err != nil:
	case len(found) > 0:
		return named{found[0]}
	case len(names) == 0:
		f.err = fmt.Errorf("no poem is left out of the book")
	default:
		f.err = fmt.Errorf("no poem called %q is left out: it is one of %s", title, strings.Join(names, ", "))
	}
	return named{}
}
