package command

import (
	"fmt"
	"strings"

	"headland/pagemodel"
	"headland/typeset/prosody"
	"headland/ui/session"
)

// itemFields are what can be said of an item of a running order.
var itemFields = []string{"poem", "title", "text", "from", "to", "before", "talk_s", "drop", "said"}

// items are the items of a running order.
func (f *fields) items(s *session.Session) []pagemodel.Item {
	var all []pagemodel.Item
	f.objects("items", `a list of objects, as in [{"poem":1},{"before":"Good evening."}]`, itemFields, func(one *fields) {
		all = append(all, one.item(s))
	})
	return all
}

// item is one item: a poem or lines of it, a poem from elsewhere, or what is said.
func (f *fields) item(s *session.Session) pagemodel.Item {
	item := pagemodel.Item{Before: f.text("before"), Drop: f.yes("drop")}
	f.take("talk_s", &item.Talk, "a whole number of seconds")
	var lines []readLine
	if f.has("poem") {
		lines = f.itemOfBook(&item, s)
	} else {
		lines = f.itemFromElsewhere(&item)
	}
	f.said(&item, lines)
	return item
}

// itemOfBook takes the poem that is read and, of an extract, its first and last
// line. A poem that is left out of the book can be read by its title.
func (f *fields) itemOfBook(item *pagemodel.Item, s *session.Session) []readLine {
	if f.hasAny([]string{"title", "text"}) && f.err == nil {
		f.err = fmt.Errorf(`"title" and "text" are for a poem from elsewhere: leave them out, or "poem"`)
	}
	p := f.poemOfFile("poem", s)
	if f.err != nil {
		return nil
	}
	item.Poem = p.ID()
	for name, id := range map[string]*pagemodel.LineID{"from": &item.From, "to": &item.To} {
		if f.has(name) {
			*id = f.lineIn(name, p.Poem)
		}
	}
	var lines []readLine
	begun := item.From == 0
	for at, l := range p.Lines() {
		begun = begun || l.ID() == item.From
		if l.ID() == item.To && !begun && f.err == nil {
			f.err = fmt.Errorf(`"to" stands above "from" in %s: name the upper line first`, p.Name())
		}
		lines = append(lines, readLine{p.StanzaNumber(at), at.Line + 1, l.ID(), 0, l.Text()})
	}
	return lines
}

// poemOfFile is a poem of the book, or one left out of it.
func (f *fields) poemOfFile(name string, s *session.Session) named {
	p := f.poem(name, s)
	if f.err == nil {
		return p
	}
	out := &fields{kind: f.kind, raw: f.raw}
	if p := out.leftOut(name, s); out.err == nil {
		f.err = nil
		return p
	}
	return p
}

// lineIn is the line of a poem that an object of a stanza and a line names.
func (f *fields) lineIn(name string, p *pagemodel.Poem) pagemodel.LineID {
	const wants = `a stanza and a line, as in {"stanza":2,"line":4}`
	var to map[string]int
	f.take(name, &to, wants)
	_, stanza := to["stanza"]
	_, line := to["line"]
	if f.err == nil && !(len(to) == 2 && stanza && line) {
		f.err = fmt.Errorf("%q must be %s, and is %s", name, wants, f.raw[name])
	}
	if f.err != nil {
		return 0
	}
	at, err := p.At(to["stanza"], to["line"])
	if err != nil {
		f.err = err
		return 0
	}
	return p.Line(at).ID()
}

// itemFromElsewhere takes a poem that is not in the file, if there is one.
func (f *fields) itemFromElsewhere(item *pagemodel.Item) []readLine {
	if f.hasAny([]string{"from", "to"}) && f.err == nil {
		f.err = fmt.Errorf(`"from" and "to" are for lines of a poem: name the "poem"`)
	}
	item.Title = f.text("title")
	var text []string
	f.lineByLine("text", &text)
	item.Text = strings.Join(text, "\n")
	var lines []readLine
	stanza, line, at := 1, 0, 0
	for _, words := range strings.Split(item.Text, "\n") {
		switch {
		case strings.TrimSpace(words) != "":
			line++
			lines = append(lines, readLine{stanza, line, 0, at, words})
		case line > 0:
			stanza, line = stanza+1, 0
		}
		at += len(words) + 1
	}
	return lines
}

// readLine is a line of what is read.
type readLine struct {
	stanza, line int
	id           pagemodel.LineID // 0 in a poem from elsewhere
	from         int              // byte offset in the item's text, for one from elsewhere
	text         string
}

// said takes the words that are read otherwise than they are printed.
func (f *fields) said(item *pagemodel.Item, lines []readLine) {
	const wants = `a list of objects, as in [{"stanza":1,"line":2,"word":3,"as":"CAR-da-mom"}]`
	f.objects("said", wants, []string{"stanza", "line", "word", "at", "as"}, func(one *fields) {
		item.Said = append(item.Said, one.saying(lines))
	})
}

// saying is one of them: the word is counted through the line, or is where a
// character stands before which there are as many as "at" says.
func (f *fields) saying(lines []readLine) pagemodel.Saying {
	for _, name := range []string{"stanza", "line", "as"} {
		f.need(name)
	}
	stanza, line, as := f.integer("stanza"), f.integer("line"), f.text("as")
	if f.err == nil && strings.TrimSpace(as) == "" {
		f.err = fmt.Errorf(`"as" says nothing: write how the word is read, or leave it out of the list`)
	}
	if f.has("word") == f.has("at") && f.err == nil {
		f.err = fmt.Errorf(`"said" needs either "word", counted through the line, or "at", in characters`)
	}
	if f.err != nil {
		return pagemodel.Saying{}
	}
	for _, l := range lines {
		if l.stanza == stanza && l.line == line {
			start, word := f.wordIn(l)
			return pagemodel.Saying{Line: l.id, At: l.from + start, Word: word, As: as}
		}
	}
	f.err = fmt.Errorf("there is no line %d of a stanza %d in what is read: both are counted from 1", line, stanza)
	return pagemodel.Saying{}
}

// wordIn is the word of a line that is meant, without the signs about it, and the
// byte offset at which it begins.
func (f *fields) wordIn(l readLine) (start int, word string) {
	number, at := f.integer("word"), f.integer("at")
	if f.err != nil {
		return 0, ""
	}
	runes := []rune(l.text)
	words := pagemodel.Words(l.text)
	for i, w := range words {
		before := len([]rune(l.text[:w.Start]))
		here := i+1 == number
		if f.has("at") {
			here = before <= at && at < before+len([]rune(l.text[w.Start:w.End]))
		}
		if word = prosody.LastWord(l.text[w.Start:w.End]); here && word != "" {
			return w.Start + strings.Index(l.text[w.Start:w.End], word), word
		}
	}
	f.err = fmt.Errorf("there is no such word in %q, which has %s of %s", l.text, counted(len(words), "word"), counted(len(runes), "character"))
	return 0, ""
}
