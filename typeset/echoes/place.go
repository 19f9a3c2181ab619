package echoes

import (
	"cmp"
	"slices"

	"headland/pagemodel"
)

// A place is somewhere in a book: a stretch of a line, by its index in a poem, or
// all of a poem where line is wholePoem. The poem goes by its index too.
type place struct{ poem, line, from, to int }

const wholePoem = -1

// inOrder are places in the order of the book, each once: one that lies in
// another is the same as that. A poem that is marked as a whole takes in none of
// its words.
func inOrder(places []place) []place {
	slices.SortFunc(places, func(a, b place) int {
		return cmp.Or(cmp.Compare(a.poem, b.poem), cmp.Compare(a.line, b.line), cmp.Compare(a.from, b.from), cmp.Compare(b.to, a.to))
	})
	var each []place
	for _, p := range places {
		if n := len(each); n == 0 || each[n-1].poem != p.poem || each[n-1].line != p.line || each[n-1].to < p.to {
			each = append(each, p)
		}
	}
	return each
}

// occurrences are places with their pages.
func (b *book) occurrences(places []place) []Occurrence {
	found := make([]Occurrence, 0, len(places))
	for _, p := range places {
		poem := b.poems[p.poem]
		o := Occurrence{Ref: pagemodel.LineRef{Poem: poem.id}, From: p.from, To: p.to, Number: p.poem + 1}
		if p.line == wholePoem {
			o.Page, _ = b.set.PageOfPoem(poem.id)
		} else {
			o.Ref.Line = poem.lines[p.line].ID()
			o.Page = b.pageOf(p)
		}
		found = append(found, o)
	}
	return found
}

// pageOf is the page of a place's line, which is looked up once.
func (b *book) pageOf(p place) int {
	poem := b.poems[p.poem]
	if b.pages[p.poem] == nil {
		b.pages[p.poem] = make([]int, len(poem.lines))
	}
	page := &b.pages[p.poem][p.line]
	if *page == 0 {
		*page, _ = b.set.PageOfLine(pagemodel.LineRef{Poem: poem.id, Line: poem.lines[p.line].ID()})
	}
	return *page
}
