package corrections

import (
	"fmt"

	"headland/pagemodel"
	"headland/pagemodel/difference"
	"headland/typeset"
)

// movement tells which pages move. What it says of a poem is told once for all
// that changes in it.
type movement struct {
	sent, now *typeset.Setting
	stays     []pagemodel.PoemID       // in the order as sent: those that neither moved nor went
	at        map[pagemodel.PoemID]int // of the next one that stays, for all as sent
	moved     map[pagemodel.PoemID]bool
	told      map[pagemodel.PoemID]string
}

func newMovement(sent, now *typeset.Setting, changes []difference.Change) *movement {
	m := &movement{sent: sent, now: now, at: map[pagemodel.PoemID]int{}, moved: map[pagemodel.PoemID]bool{}, told: map[pagemodel.PoemID]string{}}
	for i := range changes {
		if changes[i].Kind == difference.MovePoem {
			m.moved[changes[i].Poem] = true
		}
	}
	for _, p := range sent.Collection().Poems() {
		if _, _, ok := now.Collection().Poem(p.ID()); ok && !m.moved[p.ID()] {
			m.stays = append(m.stays, p.ID())
		}
		m.at[p.ID()] = len(m.stays)
	}
	return m
}

// of says what moves with a change: of a poem for all its changes together, of what
// is true of all pages whether the book has as many as before.
func (m *movement) of(ch *difference.Change) string {
	if ch.Poem == 0 {
		_, matter := difference.MatterOf(ch.Field)
		was, is := m.sent.Extent(), m.now.Extent()
		if was != is && (matter || ch.Section != 0 || ch.Kind == difference.Design) {
			return fmt.Sprintf("with all corrections the book has %d pages instead of %d", is, was)
		}
		return ""
	}
	if _, ok := m.told[ch.Poem]; !ok {
		m.told[ch.Poem] = joined(m.ofPoem(ch.Poem))
	}
	return m.told[ch.Poem]
}

func (m *movement) ofPoem(id pagemodel.PoemID) []string {
	was, here := m.sent.PageOfPoem(id)
	is, still := m.now.PageOfPoem(id)
	switch {
	case !still:
		return []string{m.later(m.at[id], m.shift(m.at[id]-1))}
	case !here:
		return []string{"the poem begins on page " + m.now.FolioOf(is)}
	case m.moved[id]:
		return []string{fmt.Sprintf("the poem goes from page %s to page %s", m.sent.FolioOf(was), m.now.FolioOf(is))}
	}
	i := m.at[id] - 1
	base := m.shift(i - 1)
	begins := ""
	if is-was != base {
		begins = fmt.Sprintf("the poem begins on page %s instead of page %s", m.now.FolioOf(is), m.sent.FolioOf(was))
	}
	return []string{begins, m.lines(id, is-was), m.later(i+1, base)}
}

// shift is by how many pages one of the poems that stay begins later.
func (m *movement) shift(i int) int {
	if i < 0 {
		return 0
	}
	was, _ := m.sent.PageOfPoem(m.stays[i])
	is, _ := m.now.PageOfPoem(m.stays[i])
	return is - was
}

// later says how far the poems from one on, of those that stay, move more than base
// pages, and how many do.
func (m *movement) later(i, base int) string {
	if i == len(m.stays) {
		return ""
	}
	by, n := m.shift(i)-base, 0
	for by != 0 && i+n < len(m.stays) && m.shift(i+n) != base {
		n++
	}
	return poemsMove(n, by)
}

// crossing is lines of a poem, one after another, that come to stand on another of
// its pages.
type crossing struct {
	first, last int // counted through the poem as it is now, from 1
	page        int // of the book
	over        bool
}

// mostCrossings is how many crossings are told of one poem.
const mostCrossings = 3

// lines says which lines of a poem stand on another of its pages.
func (m *movement) lines(id pagemodel.PoemID, shift int) string {
	crossings := m.crossings(id, shift)
	var said []string
	for _, c := range crossings[:min(len(crossings), mostCrossings)] {
		said = append(said, linesGo(c.first, c.last, c.over, m.now.FolioOf(c.page)))
	}
	if len(crossings) > mostCrossings {
		said = append(said, "and more lines move")
	}
	return joined(said)
}

func (m *movement) crossings(id pagemodel.PoemID, shift int) []crossing {
	p, _, _ := m.now.Collection().Poem(id)
	var all []crossing
	number := 0
	for _, l := range p.Lines() {
		number++
		ref := pagemodel.LineRef{Poem: id, Line: l.ID()}
		was, ok := m.sent.PageOfLine(ref)
		is, _ := m.now.PageOfLine(ref)
		if !ok || is-was == shift {
			continue
		}
		next := crossing{number, number, is, is-was > shift}
		if n := len(all) - 1; n >= 0 && all[n].last == number-1 && all[n].page == is && all[n].over == next.over {
			all[n].last = number
		} else {
			all = append(all, next)
		}
	}
	return all
}
