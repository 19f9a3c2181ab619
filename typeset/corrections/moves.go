package corrections

import (
	"fmt"

	"headland/pagemodel"
	"headland/pagemodel/difference"
	"headland/typeset"
)

// movement tells which pages move. What it says of a poem is told once, at the
// first of what changes in it: it comes of all the corrections together.
type movement struct {
	sent, now *typeset.Setting
	all       int                      // how many changes there are
	stays     []pagemodel.PoemID       // in the order as sent: those that neither moved nor went
	at        map[pagemodel.PoemID]int // of the next one that stays, for all as sent
	moved     map[pagemodel.PoemID]bool
	told      map[pagemodel.PoemID]string // what the other changes of the poem say
}

func newMovement(sent, now *typeset.Setting, changes []difference.Change) *movement {
	m := &movement{sent: sent, now: now, all: len(changes), at: map[pagemodel.PoemID]int{}, moved: map[pagemodel.PoemID]bool{}, told: map[pagemodel.PoemID]string{}}
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

// of says what moves with a change, which has that number in the list: of a poem for
// all its changes together, of what is true of all pages whether the book has as
// many as before.
func (m *movement) of(ch *difference.Change, number int) string {
	if ch.Poem == 0 {
		_, matter := difference.MatterOf(ch.Field)
		was, is := m.sent.Extent(), m.now.Extent()
		if was != is && (matter || ch.Section != 0 || ch.Kind == difference.Design) {
			return fmt.Sprintf("with all corrections the book has %d pages instead of %d", is, was)
		}
		return ""
	}
	if told, ok := m.told[ch.Poem]; ok {
		return told
	}
	moves := joined(m.ofPoem(ch.Poem))
	m.told[ch.Poem] = ""
	if moves == "" {
		return ""
	}
	m.told[ch.Poem] = fmt.Sprintf("with all corrections: see %d", number)
	if m.all > 1 {
		moves = "with all corrections: " + moves
	}
	return moves
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
		if m.sent.FolioOf(was) == m.now.FolioOf(is) {
			return nil
		}
		return []string{fmt.Sprintf("the poem goes from page %s to page %s", m.sent.FolioOf(was), m.now.FolioOf(is))}
	}
	i := m.at[id] - 1
	base := m.shift(i - 1)
	begins := ""
	if is-was != base && m.sent.FolioOf(was) != m.now.FolioOf(is) {
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

// later says how far the poems from one on, of those that stay, move, where that is
// not by as many pages as the ones before them, and how many move as far.
func (m *movement) later(i, base int) string {
	if i == len(m.stays) || m.shift(i) == base {
		return ""
	}
	by, n := m.shift(i), 0
	for by != 0 && i+n < len(m.stays) && m.shift(i+n) == by {
		n++
	}
	return poemsMove(n, by)
}

// lineAt is a line by its stanza, counted through the poem, and its number there,
// as sent.
type lineAt struct{ stanza, line int }

// crossing is lines of a poem, one after another, that come to stand on another of
// its pages.
type crossing struct {
	first, last lineAt
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
		said = append(said, c.words(m.now.FolioOf(c.page)))
	}
	if len(crossings) > mostCrossings {
		said = append(said, "and more lines move")
	}
	return joined(said)
}

// crossings are the lines that move otherwise than the poem's first page does, and
// are no longer where they were. Lines that are in the poem no more part none.
func (m *movement) crossings(id pagemodel.PoemID, shift int) []crossing {
	p, _, _ := m.sent.Collection().Poem(id)
	var all []crossing
	follows := false
	for stanza, s := range stanzasOf(p) {
		for i := range s.Lines() {
			ref := pagemodel.LineRef{Poem: id, Line: s.Lines()[i].ID()}
			was, _ := m.sent.PageOfLine(ref)
			is, ok := m.now.PageOfLine(ref)
			if !ok {
				continue
			}
			if is == was || is-was == shift {
				follows = false
				continue
			}
			here := lineAt{stanza + 1, i + 1}
			next := crossing{here, here, is, is > was}
			if n := len(all) - 1; follows && all[n].page == is && all[n].over == next.over {
				all[n].last = here
			} else {
				all = append(all, next)
			}
			follows = true
		}
	}
	return all
}

// stanzasOf are the stanzas of all parts.
func stanzasOf(p *pagemodel.Poem) []pagemodel.Stanza {
	var all []pagemodel.Stanza
	for _, part := range p.Parts() {
		all = append(all, part.Stanzas()...)
	}
	return all
}
