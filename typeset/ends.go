package typeset

import "headland/pagemodel"

// Whether a page may end before a unit. All of it is a matter of the poem's own
// lines; on which side of the leaf the page end falls is the book's.

// pageEnd is what a page end before a unit would do.
type pageEnd struct {
	forbidden bool // it parts what must not be parted: only where nothing else fits
	parts     bool // it falls within a stanza
	against   bool // it parts a quatrain or a sestet against the rule
	forced    bool // the poet has a page begin here
	barred    bool // asked about: what if no page ended here?
}

// The least number of lines that a stanza may leave on either page: "no piece
// under 2 lines" (Brossard, Le Correcteur typographe, 1934, 158-159).
const leastPiece = 2

// endBefore judges a page end before unit i, which is not the poem's first.
func endBefore(units []unit, i int, form pagemodel.Form) pageEnd {
	u, above := &units[i], &units[i-1]
	e := pageEnd{parts: u.at > 0 || u.goesOn}
	if u.opens && !u.goesOn {
		e.forced = true // the poet's word is over every rule
		return e
	}
	e.against = !u.prose && againstRule(u.at, u.of, form)
	e.forbidden = u.goesOn || above.keep || above.tied || u.rows[0].Role == RolePlace ||
		u.at > 0 && partsTheUnpartable(u, form) || straysAbove(units, i)
	return e
}

// partsTheUnpartable says that a page end within a stanza parts a pair or a
// tercet, or leaves a single line. "Tercets are never split" (Brossard 156) and
// neither is a pair that rhymes (151); a stanza of two or three lines can't be
// parted without leaving a single line anyway.
func partsTheUnpartable(u *unit, form pagemodel.Form) bool {
	if u.at < leastPiece || u.of-u.at < leastPiece {
		return true
	}
	group := form.Group()
	return !u.prose && (form == pagemodel.Couplets || form == pagemodel.Tercets) && u.at%group != 0
}

// straysAbove says that unit i is a single line that makes a stanza of its own
// and stays with the stanza above it in its part. The poet may say otherwise by tying it to
// the one below. (A press's own account of its verse: "a single-line stanza at
// a break is a judgement: ask the poet".)
func straysAbove(units []unit, i int) bool {
	u, above := &units[i], &units[i-1]
	return u.part == above.part && u.group > 0 && u.of == 1 && !u.prose && !u.tied && above.group > 0 && !above.prose && above.of > 1
}

// againstRule says that a quatrain is parted, which is to be avoided (Brossard
// 157), or a sestet elsewhere than 3+3, 2+4 or 4+2 (158). Where the poet has
// declared the form, another stanza is a row of them, and what is left over.
func againstRule(at, of int, form pagemodel.Form) bool {
	switch {
	case at == 0:
		return false
	case of == 4:
		return true
	case form == pagemodel.Quatrains && of > 4:
		return at%4 != 0
	case form == pagemodel.Sestets || of == 6:
		return at%6 == 1 || at%6 == 5
	}
	return false
}
