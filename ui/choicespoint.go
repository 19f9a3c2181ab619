package ui

import (
	"slices"

	"headland/pagemodel"
	"headland/typeset/choices"
)

// point tries a choice out on the page; -1 puts all back.
func (l *choiceLeaf) point(i int) {
	if i == l.at {
		return
	}
	l.at = i
	l.tell()
	if i >= 0 {
		l.last = i
	}
	l.try()
	l.showLine()
	l.picture.Refresh()
}

// try shows on the pages what is pointed at.
func (l *choiceLeaf) try() {
	s := l.w.session
	if l.at < 0 {
		s.Drop()
		return
	}
	if err := s.Preview(l.all[l.at].Edit); err != nil {
		s.Drop()
		l.w.desk.try(err)
	}
}

// showLine opens the book where the line is now, or, with nothing tried out,
// where it lay open. The leaf gives way to the line, but never under the hand.
func (l *choiceLeaf) showLine() {
	d, page := l.w.desk, l.was
	now, there := d.of.PageOfLine(l.ref)
	if l.at >= 0 && there {
		page = now
	}
	if pagemodel.SpreadOf(page, d.of.Extent()) != d.spread {
		d.showPage(page)
	}
	if !there || l.byMouse || d.plan.narrow {
		return
	}
	if side := pagemodel.SideOf(now).Facing(); side != l.side {
		l.side = side
		l.arrange()
	}
}

// walk points at the next choice (1) or the one before (-1). From none it is
// the one pointed at last; before the first there is none.
func (l *choiceLeaf) walk(by int) {
	to := min(l.at+by, len(l.all)-1)
	if l.at < 0 {
		to = l.last
	}
	l.goTo(to)
	if to < 0 {
		l.last = 0
	}
}

// goTo points at a choice and brings it into sight.
func (l *choiceLeaf) goTo(to int) {
	l.reveal(to)
	l.point(to)
}

// toHead goes to the first choice of the next head (1), or of this head or the
// one before (-1).
func (l *choiceLeaf) toHead(by int) {
	from := l.at
	if from < 0 {
		from = l.last
		if by > 0 && from == 0 {
			l.goTo(0)
			return
		}
	}
	to := from + by
	for to > 0 && to < len(l.all) && l.all[to].Head == l.all[to-1].Head {
		to += by
	}
	if to < len(l.all) {
		l.goTo(max(0, to))
	}
}

// otherBreak goes from a break in the poem to the one at the same place in this
// edition, or back; false where the choice is no break, or there is no other.
func (l *choiceLeaf) otherBreak() bool {
	if l.at < 0 {
		return false
	}
	to, ok := l.counterpart(l.at)
	if ok {
		l.remember(l.all[to].Head)
		l.goTo(to)
	}
	return ok
}

// turnOrder puts the choices under each head in the next order, and keeps the
// one pointed at. With none pointed at it begins with the first under the head that
// it would have begun with.
func (l *choiceLeaf) turnOrder() {
	at, head := l.nameOf(l.at), l.all[l.last].Head
	l.order = nextMeasure(l.order)
	l.arrangeHeads()
	l.blocks = nil
	l.at = l.named(at)
	if l.last = l.at; l.at < 0 {
		l.last = slices.IndexFunc(l.all, func(c choices.Choice) bool { return c.Head == head })
	}
	l.top = 0
	l.arrange()
	l.reveal(l.last)
	l.tell()
}

// choiceName tells one choice for a line from the others.
type choiceName struct {
	head  choices.Head
	title string
}

// nameOf is the name of a choice; that of none for -1.
func (l *choiceLeaf) nameOf(i int) choiceName {
	if i < 0 {
		return choiceName{}
	}
	return choiceName{l.all[i].Head, l.all[i].Title}
}

// named is the choice that has a name, or -1.
func (l *choiceLeaf) named(name choiceName) int {
	for i := range l.all {
		if l.nameOf(i) == name {
			return i
		}
	}
	return -1
}
