package command

import (
	"fmt"
	"slices"
	"strconv"
	"strings"
	"unicode/utf8"

	"headland/pagemodel"
	"headland/ui/session"
)

// maker makes an edit of a line of a script.
type maker struct {
	kind   string
	fields []string
	make   func(f *fields, s *session.Session) pagemodel.Edit
}

// place are the fields that say which line is meant.
var place = []string{"poem", "stanza", "line"}

func placeAnd(names ...string) []string { return append(place[:len(place):len(place)], names...) }

// makers are all edits that a script can do, besides undo and redo.
var makers = []maker{
	{"break", placeAnd("after", "at", "in"), makeBreak},
	{"join", placeAnd("in", "after", "at"), makeJoin},
	{"words", placeAnd("count"), makeWords},
	{"keep", placeAnd("turn_after", "reason"), makeKeep},
	{"unsettle", placeAnd(), makeUnsettle},
	{"indent", placeAnd("em"), makeIndent},
	{"gap", placeAnd("after", "em"), makeGap},
	{"text", placeAnd("text"), makeText},
	{"stanza", placeAnd("open"), makeStanza},
	{"move", []string{"poem", "before"}, makeMove},
	{"design", slices.Concat(designRules, designFields), makeDesign},
}

// edit is the edit that the fields ask for.
func (f *fields) edit(s *session.Session) (pagemodel.Edit, error) {
	for _, m := range makers {
		if m.kind != f.kind {
			continue
		}
		if err := f.only(m.fields...); err != nil {
			return nil, err
		}
		e := m.make(f, s)
		return e, f.err
	}
	return nil, fmt.Errorf("there is no edit %q: it is one of %s, undo, redo", f.kind, kinds())
}

func kinds() string {
	names := make([]string, len(makers))
	for i, m := range makers {
		names[i] = m.kind
	}
	return strings.Join(names, ", ")
}

func makeBreak(f *fields, s *session.Session) pagemodel.Edit {
	ref, line := f.line(s)
	if f.has("after") == f.has("at") && f.err == nil {
		f.err = fmt.Errorf(`"break" needs either "after", in words, or "at", in characters`)
	}
	return pagemodel.Break{LineRef: ref, At: f.offset(line), In: f.in()}
}

func makeJoin(f *fields, s *session.Session) pagemodel.Edit {
	ref, line := f.line(s)
	e := pagemodel.Join{LineRef: ref, In: f.in(), At: f.offset(line)}
	if e.At != 0 && e.In != pagemodel.InEdition && f.err == nil {
		f.err = fmt.Errorf(`"join" takes "after" or "at" only in the edition, where a line can have several breaks`)
	}
	return e
}

func makeWords(f *fields, s *session.Session) pagemodel.Edit {
	ref, _ := f.line(s)
	f.need("count")
	return pagemodel.Carry{LineRef: ref, Count: f.integer("count")}
}

func makeKeep(f *fields, s *session.Session) pagemodel.Edit {
	ref, line := f.line(s)
	e := pagemodel.Keep{LineRef: ref, Reason: f.text("reason")}
	if f.has("turn_after") {
		e.Turns = []int{f.afterWord("turn_after", line)}
	}
	return e
}

func makeUnsettle(f *fields, s *session.Session) pagemodel.Edit {
	ref, _ := f.line(s)
	return pagemodel.Unsettle{LineRef: ref}
}

func makeIndent(f *fields, s *session.Session) pagemodel.Edit {
	ref, _ := f.line(s)
	f.need("em")
	return pagemodel.Indent{LineRef: ref, To: pagemodel.Ems(f.number("em"))}
}

func makeGap(f *fields, s *session.Session) pagemodel.Edit {
	ref, line := f.line(s)
	f.need("after")
	f.need("em")
	return pagemodel.SetGap{LineRef: ref, At: f.afterWord("after", line), Width: pagemodel.Ems(f.number("em"))}
}

func makeText(f *fields, s *session.Session) pagemodel.Edit {
	ref, _ := f.line(s)
	f.need("text")
	return pagemodel.Retype{LineRef: ref, Text: f.text("text")}
}

func makeStanza(f *fields, s *session.Session) pagemodel.Edit {
	ref, _ := f.line(s)
	f.need("open")
	return pagemodel.StanzaBreak{LineRef: ref, Open: f.yes("open")}
}

func makeMove(f *fields, s *session.Session) pagemodel.Edit {
	e := pagemodel.Move{Poem: f.poem("poem", s).id()}
	if f.has("before") {
		e.Before = f.poem("before", s).id()
	}
	return e
}

// named is a poem, or nil once something is wrong.
type named struct{ *pagemodel.Poem }

func (n named) id() pagemodel.PoemID {
	if n.Poem == nil {
		return 0
	}
	return n.ID()
}

// poem is the poem that a field names by number or title.
func (f *fields) poem(name string, s *session.Session) named {
	f.need(name)
	if f.err != nil {
		return named{}
	}
	called := string(f.raw[name])
	if number, err := strconv.Atoi(called); err == nil {
		called = "#" + strconv.Itoa(number)
	} else {
		called = ""
		f.take(name, &called, "a poem's number, or its title in quotation marks")
	}
	if f.err != nil {
		return named{}
	}
	p, err := s.Collection().PoemCalled(called)
	f.err = err
	return named{p}
}

// line is the line that the fields name.
func (f *fields) line(s *session.Session) (pagemodel.LineRef, pagemodel.Line) {
	p := f.poem("poem", s)
	f.need("stanza")
	f.need("line")
	stanza, line := f.integer("stanza"), f.integer("line")
	if f.err != nil {
		return pagemodel.LineRef{}, pagemodel.Line{}
	}
	at, err := p.At(stanza, line)
	if err != nil {
		f.err = err
		return pagemodel.LineRef{}, pagemodel.Line{}
	}
	l := p.Line(at)
	return pagemodel.LineRef{Poem: p.ID(), Line: l.ID()}, l
}

func (f *fields) in() pagemodel.In {
	switch in := pagemodel.In(f.text("in")); in {
	case "", pagemodel.InPoem, pagemodel.InEdition:
		return in
	}
	if f.err == nil {
		f.err = fmt.Errorf(`"in" must be "poem" or "edition", and is %s`, f.raw["in"])
	}
	return ""
}

// offset is the byte offset that "after" says in words or "at" in characters;
// 0 where neither does.
func (f *fields) offset(l pagemodel.Line) int {
	switch {
	case f.has("after"):
		return f.afterWord("after", l)
	case f.has("at"):
		return f.character("at", l)
	}
	return 0
}

// afterWord is the byte offset of the word after as many words as the field
// says.
func (f *fields) afterWord(name string, l pagemodel.Line) int {
	count := f.integer(name)
	if f.err != nil {
		return 0
	}
	words := pagemodel.Words(l.Text())
	if count < 1 || count >= len(words) {
		f.err = fmt.Errorf("%q has %s, so nothing can be done after word %d of it: choose %s", l.Text(), counted(len(words), "word"), count, choose(len(words)-1))
		return 0
	}
	return words[count].Start
}

// character is the byte offset after as many characters as the field says.
func (f *fields) character(name string, l pagemodel.Line) int {
	count, length := f.integer(name), utf8.RuneCountInString(l.Text())
	if f.err != nil {
		return 0
	}
	if count < 1 || count >= length {
		f.err = fmt.Errorf("%q has %s, so nothing can be done after character %d of it: choose %s", l.Text(), counted(length, "character"), count, choose(length-1))
		return 0
	}
	for offset := range l.Text() {
		if count == 0 {
			return offset
		}
		count--
	}
	return len(l.Text())
}

func choose(most int) string {
	switch {
	case most < 1:
		return "another line"
	case most == 1:
		return "1"
	}
	return fmt.Sprintf("from 1 to %d", most)
}
