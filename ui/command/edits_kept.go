package command

import (
	"fmt"
	"strings"

	"headland/pagemodel"
	"headland/ui/session"
)

// The edits of this file are about designs kept by name.

func makeKeepDesign(f *fields, s *session.Session) pagemodel.Edit {
	f.need("name")
	return pagemodel.KeepDesign{Name: f.text("name"), Design: s.Collection().Design()}
}

func makeDropDesign(f *fields, s *session.Session) pagemodel.Edit {
	return pagemodel.DropDesign{Name: f.keptDesign(s).Name}
}

func makeUseDesign(f *fields, s *session.Session) pagemodel.Edit {
	return pagemodel.SetDesign{Design: f.keptDesign(s).Design}
}

// keptDesign is the kept design that the field names.
func (f *fields) keptDesign(s *session.Session) pagemodel.NamedDesign {
	f.need("name")
	name := f.text("name")
	var names []string
	for _, d := range s.Collection().Designs() {
		if d.Name == name {
			return d
		}
		names = append(names, d.Name)
	}
	if f.err == nil {
		f.err = fmt.Errorf("no design is kept under the name %q: %s", name, whichAreKept(names))
	}
	return pagemodel.NamedDesign{}
}

func whichAreKept(names []string) string {
	if len(names) == 0 {
		return "none is kept; keep-design keeps the one that the book is in"
	}
	return "there is " + strings.Join(names, ", ")
}
