package choices

import (
	"fmt"
	"strings"

	"headland/pagemodel"
)

// mostCrossings is how many groups of lines that change page are told one by one.
const mostCrossings = 2

// crossing is lines of the poem, one below another, that go to another page.
type crossing struct {
	first    spot // as it was
	count    int
	from, to int
}

// crossings are the lines of the poem that stand on another page than they did, but
// for the line itself.
func (f *finder) crossings(now []spot) []crossing {
	var all []crossing
	joined := false // the line before this one crossed too
	for _, s := range now {
		was, ok := f.spots.was(s.ref)
		switch {
		case s.ref.Poem != f.ref.Poem || s.ref == f.ref || !ok:
			continue
		case was.page == s.page:
			joined = false
			continue
		}
		if n := len(all) - 1; joined && all[n].from == was.page && all[n].to == s.page {
			all[n].count++
		} else {
			all = append(all, crossing{was, 1, was.page, s.page})
		}
		joined = true
	}
	return all
}

// crossingWords says which lines change page.
func (f *finder) crossingWords(tried *look, now []spot) []string {
	var said []string
	more := 0
	for i, c := range f.crossings(now) {
		if i < mostCrossings {
			said = append(said, f.crossed(tried, c))
		} else {
			more += c.count
		}
	}
	if more > 0 {
		said = append(said, counted(more, "more line")+" of the poem "+verb(more, "changes", "change")+" page")
	}
	return said
}

func (f *finder) crossed(tried *look, c crossing) string {
	to := " over to page "
	if c.to < c.from {
		to = " back to page "
	}
	to = verb(c.count, "goes", "go") + to + tried.FolioOf(c.to)
	next := f.spots.at[c.first.ref] == f.spots.at[f.ref]+1
	switch {
	case next && c.count == 1:
		return "the next line " + to
	case next:
		return "the next " + counted(c.count, "line") + " " + to
	case c.count == 1:
		return f.nameOf(c.first.ref) + " " + to
	}
	return counted(c.count, "line") + ", the first of them " + f.nameOf(c.first.ref) + ", " + to
}

// parted says which piece of what the line becomes goes to another page than its
// beginning, or "".
func (f *finder) parted(tried *look, now []spot) string {
	var own spot
	for _, s := range now {
		_, old := f.spots.was(s.ref)
		switch {
		case s.ref == f.ref:
			own = s
			if was, _ := f.spots.was(s.ref); s.last != s.page && was.last == was.page {
				return "the line goes on to page " + tried.FolioOf(s.last)
			}
		case s.ref.Poem == f.ref.Poem && !old && own.page > 0 && s.page != own.page:
			return "what is broken off goes over to page " + tried.FolioOf(s.page)
		}
	}
	return ""
}

// nameOf is a line by its number, and by that of its stanza where that is another
// than the line's own.
func (f *finder) nameOf(ref pagemodel.LineRef) string {
	_, at, _ := f.set.Collection().Line(ref)
	return lineName(f.poem, at, f.at)
}

// lineName is what a line is called near another: "line 4", or "stanza 2, line 4".
func lineName(p *pagemodel.Poem, at, here pagemodel.Place) string {
	name := fmt.Sprintf("line %d", at.Line+1)
	if stanza := p.StanzaNumber(at); stanza != p.StanzaNumber(here) {
		name = fmt.Sprintf("stanza %d, %s", stanza, name)
	}
	return name
}

func verb(n int, one, many string) string {
	if n == 1 {
		return one
	}
	return many
}

// sharers says how far other poems move that share a page with the poem and still
// begin on theirs.
func (f *finder) sharers(tried *look, now []spot) []string {
	var said []string
	var last pagemodel.PoemID
	for _, s := range now {
		was, ok := f.spots.was(s.ref)
		if s.ref.Poem == f.ref.Poem || s.ref.Poem == last || !ok {
			continue
		}
		last = s.ref.Poem
		before, _ := f.set.PageOfPoem(last)
		if page, _ := tried.PageOfPoem(last); page != before || was.page == s.page && was.row == s.row {
			continue
		}
		p, _, _ := tried.Collection().Poem(last)
		words := "“" + strings.Trim(p.Name(), "“”") + "” moves on the page"
		if n := linesMoved(f.set, tried, p); n > 0 {
			words += ", and " + counted(n, "line") + " of it to another"
		}
		said = append(said, words)
	}
	return said
}

// linesMoved is how many lines of a poem stand on another page.
func linesMoved(before, now *look, p *pagemodel.Poem) int {
	n := 0
	for _, l := range p.Lines() {
		ref := pagemodel.LineRef{Poem: p.ID(), Line: l.ID()}
		a, _ := before.PageOfLine(ref)
		if b, _ := now.PageOfLine(ref); a != b {
			n++
		}
	}
	return n
}
