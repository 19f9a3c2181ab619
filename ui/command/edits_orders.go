package command

import (
	"fmt"
	"slices"
	"strings"

	"headland/pagemodel"
	"headland/ui/session"
)

// The edits of this file are about orders kept by name, and about what comes back
// in the book.

func makeKeepOrder(f *fields, _ *session.Session) pagemodel.Edit {
	f.need("name")
	return pagemodel.KeepOrder{Name: f.text("name")}
}

func makeUseOrder(f *fields, _ *session.Session) pagemodel.Edit {
	f.need("name")
	return pagemodel.UseOrder{Name: f.text("name")}
}

// cameInSince says which poems of the book an order leaves out only because they
// came in after it was kept; "" for none, and for every other edit.
func cameInSince(c *pagemodel.Collection, e pagemodel.Edit) string {
	use, ok := e.(pagemodel.UseOrder)
	if !ok {
		return ""
	}
	next, err := use.Apply(c)
	if err != nil {
		return ""
	}
	known := c.Arrangement().LeftOut
	for _, o := range c.Orders() {
		if strings.EqualFold(o.Name, strings.TrimSpace(use.Name)) {
			known = slices.Concat(known, o.Is.LeftOut)
		}
	}
	var names []string
	for _, p := range next.LeftOut() {
		if !slices.Contains(known, int64(p.ID())) {
			names = append(names, p.Name())
		}
	}
	if len(names) == 0 {
		return ""
	}
	return "not in that order yet, and so left out of the book: " + strings.Join(names, ", ")
}

func makeDropOrder(f *fields, _ *session.Session) pagemodel.Edit {
	f.need("name")
	return pagemodel.DropOrder{Name: f.text("name")}
}

// echoFields are what an echo can be marked by.
var echoFields = []string{"words", "poems", "lines"}

// makeEcho marks something that comes back. What is not there of its fields stays as
// it was marked.
func makeEcho(f *fields, s *session.Session) pagemodel.Edit {
	f.need("name")
	off := f.yes("off")
	if f.err == nil && off == f.hasAny(echoFields) {
		f.err = fmt.Errorf(`"echo" needs something to mark, one or more of %s, or "off":true to mark nothing any more`, strings.Join(echoFields, ", "))
	}
	e, marked := f.markedEcho(s)
	switch {
	case f.err != nil:
		return nil
	case off && !marked:
		f.err = fmt.Errorf("nothing is marked under the name %q%s", e.Name, whichAreMarked(s))
		return nil
	case off:
		return pagemodel.SetEcho{Echo: pagemodel.Echo{Name: e.Name}}
	}
	f.lineByLine("words", &e.Words)
	if f.has("poems") {
		e.Poems = f.poems("poems", s)
	}
	if f.has("lines") {
		e.Lines = nil
		f.objects("lines", `a list of lines, as in [{"poem":1,"stanza":2,"line":3}]`, place, func(one *fields) {
			ref, _ := one.line(s)
			e.Lines = append(e.Lines, ref)
		})
	}
	if len(e.Words)+len(e.Poems)+len(e.Lines) == 0 && f.err == nil {
		f.err = fmt.Errorf(`nothing is left to mark under %q: name a word, a line or a poem, or write "off":true`, e.Name)
	}
	return pagemodel.SetEcho{Echo: e}
}

// markedEcho is what is marked under the name, or nothing yet.
func (f *fields) markedEcho(s *session.Session) (pagemodel.Echo, bool) {
	name := strings.Join(strings.Fields(f.text("name")), " ")
	all := s.Collection().Echoes()
	i := slices.IndexFunc(all, func(e pagemodel.Echo) bool { return strings.EqualFold(e.Name, name) })
	if i < 0 {
		return pagemodel.Echo{Name: name}, false
	}
	return all[i], true
}

func whichAreMarked(s *session.Session) string {
	var names []string
	for _, e := range s.Collection().Echoes() {
		names = append(names, e.Name)
	}
	if len(names) == 0 {
		return ": nothing is marked"
	}
	return ": it is one of " + strings.Join(names, ", ")
}
