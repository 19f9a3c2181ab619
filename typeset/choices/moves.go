package choices

import (
	"fmt"
	"slices"
	"strings"

	"headland/pagemodel"
)

// standing is where a line stands, and what its stanza and poem take.
type standing struct {
	rows   int // of its stanza
	page   int // of the book
	spread pagemodel.Spread
	pages  int // of its poem
}

func (l *look) standing(ref pagemodel.LineRef) standing {
	page, _ := l.PageOfLine(ref)
	return standing{l.stanzaRows(ref), page, pagemodel.SpreadOf(page, l.Extent()), l.poemPages(ref.Poem)}
}

// moves says in words what stands elsewhere after a choice, and how many other
// poems do.
func (f *finder) moves(tried *look) (words string, moved int) {
	all := f.ownMoves(tried)
	for _, poems := range f.othersMoved(tried) {
		if words := poems.words(); words != "" {
			all, moved = append(all, words), moved+poems.count
		}
	}
	all = slices.DeleteFunc(all, func(words string) bool { return words == "" })
	return strings.Join(all, "; "), moved
}

// ownMoves says what changes place in the poem and on its pages: the sizes of its
// stanza and itself, the lines that change page, and how the others go down it. Of
// nothing there is "".
func (f *finder) ownMoves(tried *look) []string {
	before, now := f.before, tried.standing(f.ref)
	var all []string
	if n := now.rows - before.rows; n != 0 {
		all = append(all, "the stanza takes "+moreOrLess(n, "row"))
	}
	if n := now.pages - before.pages; n != 0 {
		all = append(all, "the poem takes "+moreOrLess(n, "page"))
	}
	if now.page != before.page {
		to := "the line moves to page " + tried.FolioOf(now.page)
		if now.spread.Verso != before.spread.Verso {
			to += ", on another spread"
		}
		all = append(all, to)
	}
	spots := tried.spots(f.ref.Poem, f.spots.through())
	all = append(all, f.parted(tried, spots))
	all = append(all, f.crossingWords(tried, spots)...)
	all = append(all, f.shiftWords(tried, spots)...)
	return append(all, f.sharers(tried, spots)...)
}

func moreOrLess(n int, noun string) string {
	if n < 0 {
		return counted(-n, noun) + " less"
	}
	return counted(n, noun) + " more"
}

func counted(n int, noun string) string {
	if n == 1 {
		return "1 " + noun
	}
	return fmt.Sprintf("%d %ss", n, noun)
}

// shift is the poems of one side of the line's poem that begin on other pages.
type shift struct {
	where string // "earlier" or "later"
	count int
	first string // the first by name, in the order of the book
}

func (s *shift) add(p *pagemodel.Poem, inFront bool) {
	if s.count++; s.count == 1 || inFront {
		s.first = "“" + strings.Trim(p.Name(), "“”") + "”"
	}
}

func (s *shift) words() string {
	switch s.count {
	case 0:
		return ""
	case 1:
		return "1 " + s.where + " poem moves: " + s.first
	}
	return fmt.Sprintf("%d %s poems move, first %s", s.count, s.where, s.first)
}

// othersMoved are the other poems that begin on another page, before the line's
// poem and after it. Where the design changed, any poem may; else the pages
// beyond a poem that still begins where it did are as they were, since all that
// the poems before it ask of the rest of the book, and the rest of them, is on
// which page they meet.
func (f *finder) othersMoved(tried *look) [2]shift {
	moved := [2]shift{{where: "earlier"}, {where: "later"}}
	order := f.set.Collection().Entries()
	here, _ := f.set.Collection().IndexOf(f.poem.ID())
	all := tried.Collection().Design() != f.set.Collection().Design()
	for side, step := range [...]int{-1, 1} {
		for i := here + step; i >= 0 && i < order.Len(); i += step {
			p := order.At(i).Poem
			if p == nil {
				continue
			}
			before, _ := f.set.PageOfPoem(p.ID())
			now, _ := tried.PageOfPoem(p.ID())
			if now != before {
				moved[side].add(p, step < 0)
			} else if !all && opensAlone(p) {
				break
			}
		}
	}
	return moved
}

// opensAlone says that a poem is paged apart from the one before it.
func opensAlone(p *pagemodel.Poem) bool {
	start := p.Head().Start
	return start != pagemodel.SharedPage && start != pagemodel.FacingPage
}
