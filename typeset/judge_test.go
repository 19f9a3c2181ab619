package typeset_test

import (
	"headland/pagemodel"
	"headland/typeset"
)

// The judge is a second opinion on where pages end. It knows nothing of how the
// setting finds its page ends: it takes the finished pages of a book, scores them
// by the rules below, and tries every other way to end them. What the setting
// gives must be the best that there is.
//
// The rules' source is L.-E. Brossard, Le Correcteur typographe II (1934), "Mise
// en pages", 149-159, cited by page.

// piece is what a page end can't part: a row of a head, of a part's heading, of a
// paragraph or of the closing place, or one of the poet's lines with its
// turnovers.
type piece struct {
	poem   int // of the book, from 0
	first  bool
	role   typeset.Role
	line   pagemodel.Line // of verse and prose
	rows   int
	gap    int // blank rows between it and the piece above, where both stand on one page
	stanza int // through the poem, from 0; -1 outside the stanzas
	part   int
	at, of int  // its place in the stanza, from 0, and the stanza's length: lines of verse, rows of a paragraph
	ends   bool // the last row of its paragraph
}

// book is what the judge knows of a collection.
type book struct {
	design pagemodel.Design
	poems  []*pagemodel.Poem
	pieces []piece // of all poems, in order
	begins []int   // the first piece of each poem, and the number of pieces
	order  []pagemodel.Entry
}

// sheet is one finished page: which pieces stand on it, and where.
type sheet struct {
	number   int // from 1, a recto
	from, to int // pieces
	grids    []int
	depth    int // the row of the grid on which its last row stands
}

func (s sheet) recto() bool { return s.number%2 == 1 }

// isHead says that a piece stands over lines of its own.
func (p *piece) isHead() bool {
	switch p.role {
	case typeset.RoleTitle, typeset.RoleSubtitle, typeset.RoleDedication, typeset.RoleEpigraph, typeset.RoleHeading:
		return true
	}
	return false
}

// isOpening says that a piece belongs to the head of its poem.
func (p *piece) isOpening() bool { return p.isHead() && p.role != typeset.RoleHeading }

func (p *piece) isVerse() bool { return p.role == typeset.RoleVerse }

// opensPage says that the poet has a page begin with the piece.
func (p *piece) opensPage() bool {
	return p.stanza >= 0 && p.line.OpensPage() && (p.isVerse() || p.at == 0)
}

// within says that a page end between two pieces, one below the other, parts a
// stanza.
func within(above, below *piece) bool {
	return below.stanza >= 0 && above.stanza == below.stanza && above.poem == below.poem && below.at > 0
}

// forbidden says that a page end before piece u parts what must not be parted.
func (b *book) forbidden(u int) bool {
	above, below := &b.pieces[u-1], &b.pieces[u]
	switch {
	case below.opensPage():
		return false
	case above.isHead(), below.role == typeset.RolePlace: // a title stays with its lines, the place with the last
		return true
	case above.stanza >= 0 && above.line.Tied() && (above.isVerse() || above.ends): // kept together by the poet
		return true
	case b.followsStanza(u): // a single line stays with the stanza above, unless the poet says otherwise
		return true
	case !within(above, below):
		return false
	case below.at == 1, below.of-below.at == 1: // no piece under two lines, so no couplet and no tercet parted (156, 158-159)
		return true
	}
	group := b.poems[below.poem].Head().Form.Group()
	return below.isVerse() && (group == 2 || group == 3) && below.at%group != 0 // rhyme pairs (151), tercets (156)
}

// followsStanza says that piece u is a single-line stanza below a longer one of
// the same part, and not tied to the stanza below.
func (b *book) followsStanza(u int) bool {
	above, below := &b.pieces[u-1], &b.pieces[u]
	single := below.isVerse() && below.of == 1 && !below.line.Tied()
	return single && above.isVerse() && above.of > 1 && above.part == below.part && above.poem == below.poem
}

// againstRule says that a page end before piece u parts a quatrain (157), or a
// sestet otherwise than 2+4, 3+3 or 4+2 (158).
func (b *book) againstRule(u int) bool {
	above, below := &b.pieces[u-1], &b.pieces[u]
	if !below.isVerse() || !within(above, below) || below.opensPage() {
		return false
	}
	form := b.poems[below.poem].Head().Form
	sestet := below.at % 6
	switch {
	case below.of == 4:
		return true
	case form == pagemodel.Quatrains && below.of > 4 && below.at%4 != 0:
		return true
	case form == pagemodel.Sestets || below.of == 6:
		return sestet == 1 || sestet == 5
	}
	return false
}

// translated says that a poem faces its translation, or is one.
func (b *book) translated(poem int) bool {
	return b.echoes(poem) || poem+1 < len(b.poems) && b.echoes(poem+1)
}

// echoes says that a poem is a translation: its page ends are those of the poem
// that it faces, and not counted again.
func (b *book) echoes(poem int) bool { return b.poems[poem].Head().Start == pagemodel.FacingPage }

// across says that a poem lies across the spread.
func (b *book) across(poem int) bool { return b.poems[poem].Head().Lie == pagemodel.Across }

// turned says that the leaf is turned at the end of a page. A poem that has one
// side of each spread, or both as one, goes on over the leaf.
func (b *book) turned(s *sheet) bool {
	poem := b.pieces[s.from].poem
	return s.recto() || b.translated(poem) || b.across(poem)
}
