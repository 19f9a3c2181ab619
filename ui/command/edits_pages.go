package command

import (
	"fmt"

	"headland/pagemodel"
	"headland/ui/session"
)

// The edits of this file say how lines and poems go on pages.

func makeTogether(f *fields, s *session.Session) pagemodel.Edit {
	ref, _ := f.line(s)
	e := pagemodel.KeepTogether{LineRef: ref, Off: f.yes("off")}
	if f.has("through") == f.has("lines") && f.err == nil {
		f.err = fmt.Errorf(`"together" needs either "through", as in {"stanza":2,"line":4}, or "lines", how many are meant`)
	}
	if f.err != nil {
		return e
	}
	p, from, err := s.Collection().Line(ref)
	if err == nil && f.has("through") {
		e.Through, err = f.through(p)
	} else if err == nil {
		e.Through, err = f.soManyOn(p, from)
	}
	if err != nil && f.err == nil {
		f.err = err
	}
	return e
}

// through is the line of the poem that a stanza and a line name.
func (f *fields) through(p *pagemodel.Poem) (pagemodel.LineID, error) {
	const wants = `a stanza and a line, as in {"stanza":2,"line":4}`
	var to map[string]int
	f.take("through", &to, wants)
	if f.err != nil {
		return 0, nil
	}
	if _, stanza := to["stanza"]; len(to) != 2 || !stanza {
		return 0, fmt.Errorf(`"through" must be %s, and is %s`, wants, f.raw["through"])
	}
	at, err := p.At(to["stanza"], to["line"])
	if err != nil {
		return 0, err
	}
	return p.Line(at).ID(), nil
}

// soManyOn is the last of as many lines as the field says, that at a place
// counted.
func (f *fields) soManyOn(p *pagemodel.Poem, from pagemodel.Place) (pagemodel.LineID, error) {
	want, counting, left := f.integer("lines"), false, 0
	if f.err != nil {
		return 0, nil
	}
	var ids []pagemodel.LineID
	for at, l := range p.Lines() {
		if counting = counting || at == from; counting {
			ids = append(ids, l.ID())
		}
	}
	if left = len(ids); want < 2 || want > left {
		return 0, fmt.Errorf("%d lines can't be kept together from there: %s from there on, so choose %s", want, hasLines(p, left), atLeastTwo(left))
	}
	return ids[want-1], nil
}

func hasLines(p *pagemodel.Poem, n int) string {
	return p.Name() + " has " + counted(n, "line")
}

func atLeastTwo(most int) string {
	switch {
	case most < 2:
		return "a line higher up"
	case most == 2:
		return "2"
	}
	return fmt.Sprintf("from 2 to %d", most)
}

func makePage(f *fields, s *session.Session) pagemodel.Edit {
	ref, _ := f.line(s)
	return pagemodel.PageBreak{LineRef: ref, Off: f.yes("off")}
}

func makeStart(f *fields, s *session.Session) pagemodel.Edit {
	p := f.poem("poem", s)
	if !f.has("start") && !f.has("blank") && f.err == nil {
		f.err = fmt.Errorf(`"start" needs "start", where the poem opens, or "blank", whether a blank page stands before it`)
	}
	if f.err != nil {
		return nil
	}
	e := pagemodel.SetStart{Poem: p.ID(), Start: p.Head().Start, Blank: p.Head().Blank}
	if f.has("start") {
		parsed(f, "start", &e.Start, pagemodel.ParseStart)
	}
	f.take("blank", &e.Blank, "true or false")
	return e
}

func makeForm(f *fields, s *session.Session) pagemodel.Edit {
	p := f.poem("poem", s)
	f.need("form")
	return pagemodel.SetForm{Poem: p.id(), Form: pagemodel.ParseForm(f.text("form"))}
}

func makeRun(f *fields, s *session.Session) pagemodel.Edit {
	p := f.poem("poem", s)
	f.need("lines")
	return pagemodel.SetRun{Poem: p.id(), Lines: f.integer("lines")}
}

func makeRange(f *fields, s *session.Session) pagemodel.Edit {
	ref, _ := f.line(s)
	e := pagemodel.SetRange{LineRef: ref}
	f.need("to")
	parsed(f, "to", &e.To, pagemodel.ParseRange)
	return e
}

func makeDrop(f *fields, s *session.Session) pagemodel.Edit {
	ref, _ := f.line(s)
	return pagemodel.Drop{LineRef: ref, Dropped: !f.yes("off")}
}

func makeTab(f *fields, s *session.Session) pagemodel.Edit {
	ref, line := f.line(s)
	f.need("em")
	if f.has("after") == f.has("at") && f.err == nil {
		f.err = fmt.Errorf(`"tab" needs either "after", in words, or "at", in characters`)
	}
	return pagemodel.SetTab{LineRef: ref, At: f.offset(line), Stop: pagemodel.Ems(f.number("em"))}
}
