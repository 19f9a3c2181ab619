package command

import (
	"fmt"

	"headland/pagemodel"
	"headland/ui/session"
)

// The edits of this file are about versions of a poem: those that are kept beside
// it, and what it was before.

func makeKeepVariant(f *fields, s *session.Session) pagemodel.Edit {
	f.need("name")
	return pagemodel.KeepVariant{Poem: f.poem("poem", s).id(), Name: f.text("name")}
}

func makeUseVariant(f *fields, s *session.Session) pagemodel.Edit {
	f.need("name")
	return pagemodel.UseVariant{Poem: f.poem("poem", s).id(), Name: f.text("name")}
}

func makeNameVariant(f *fields, s *session.Session) pagemodel.Edit {
	f.need("to")
	return pagemodel.NameVariant{Poem: f.poem("poem", s).id(), From: f.text("from"), To: f.text("to")}
}

func makeDropVariant(f *fields, s *session.Session) pagemodel.Edit {
	f.need("name")
	return pagemodel.DropVariant{Poem: f.poem("poem", s).id(), Name: f.text("name")}
}

// makeBringBack gives a poem one of its earlier states, by the number that the
// verb states lists it under.
func makeBringBack(f *fields, s *session.Session) pagemodel.Edit {
	p := f.poem("poem", s)
	f.need("state")
	number := f.integer("state")
	if f.err != nil {
		return nil
	}
	states, err := s.PoemStates(p.ID())
	if err != nil {
		f.err = err
		return nil
	}
	for _, state := range states {
		if state.Edit == int64(number) {
			return s.BringBack(state)
		}
	}
	f.err = fmt.Errorf("%s has no state %d: headland states lists the %s that it has", p.Name(), number, counted(len(states), "state"))
	return nil
}
