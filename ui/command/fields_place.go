package command

import (
	"fmt"
	"strconv"
	"unicode/utf8"

	"headland/pagemodel"
	"headland/ui/session"
)

// The fields of this file say which poem, line, word or character is meant.

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
