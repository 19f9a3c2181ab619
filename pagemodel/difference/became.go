package difference

import (
	"slices"
)

// became finds what became of words that turned into others: of each line by
// itself where as many lines ended as end now.
func (d *differ) became(r run) {
	was, is := ends(d.was.tokens, r.i0, r.i1), ends(d.is.tokens, r.j0, r.j1)
	if len(was) != len(is) || d.transposed(r) {
		d.substitute(r)
		return
	}
	i, j := r.i0, r.j0
	for k := range was {
		d.substitute(run{i0: i, i1: was[k], j0: j, j1: is[k]})
		d.boundary(was[k], is[k])
		i, j = was[k], is[k]
	}
	d.substitute(run{i0: i, i1: r.i1, j0: j, j1: r.j1})
}

// ends are the tokens after the first that begin a line.
func ends(tokens []token, from, to int) []int {
	var all []int
	for i := from + 1; i < to; i++ {
		if tokens[i].level > within {
			all = append(all, i)
		}
	}
	return all
}

// transposed says that two words, or two lines, changed places.
func (d *differ) transposed(r run) bool {
	if r.i1-r.i0 != r.j1-r.j0 {
		return false
	}
	n := r.i1 - r.i0
	was, is := d.was.tokens[r.i0:r.i1], d.is.tokens[r.j0:r.j1]
	for k := 1; k < n; k++ {
		line := was[k].level > within && d.was.sources[r.i0+k].line != d.was.sources[r.i0+k-1].line
		if (line || n == 2 && was[k].level == within) && turned(was, is, k) {
			return true
		}
	}
	return false
}

// turned says that the words after the first k come before them now.
func turned(was, is []token, k int) bool {
	word := func(a, b token) bool { return a.word == b.word }
	return is[len(is)-k].level == was[k].level && slices.EqualFunc(was[:k], is[len(is)-k:], word) && slices.EqualFunc(was[k:], is[:len(is)-k], word)
}

// substitute is one change of words into others.
func (d *differ) substitute(r run) {
	was, is := d.was.tokens[r.i0:r.i1], d.is.tokens[r.j0:r.j1]
	with := []atom{{isWord: true, word: is[0].word}}
	for _, t := range is[1:] {
		with = append(with, atom{boundary: t.boundary}, atom{isWord: true, word: t.word})
	}
	ch := Change{Kind: Substitute, Was: quote(was), Is: quote(is), about: said(was) + "→" + said(is)}
	ch.Was = then(then(ch.Was, ", ", unseenWords(said(was), said(is))), " ", d.was.among(r.i0, r.i1))
	ch.Is = then(ch.Is, ", ", unseenWords(said(is), said(was)))
	d.words(&ch, r.i0, r.i1)
	switch {
	case r.i1-r.i0 == 1 && r.j1-r.j0 == 1 && was[0].text == is[0].text && was[0].void == is[0].void:
		d.keep(2*r.i0+1, len(was[0].text), was[0].word.styles, is[0].word.styles)
		return
	case blank(was) && d.field != ofLines:
		ch.Kind, ch.Was = Insert, "nothing"
	case blank(is) && d.field != ofLines:
		ch.Kind, ch.Is = Delete, "nothing"
	case d.transposed(r):
		ch.Kind = Transpose
	case joinedWords(was) == joinedWords(is):
		d.parting(&ch, r)
	}
	d.replace(ch, 2*r.i0+1, 2*r.i1, with)
}

// joinedWords are the characters of words without what parts them.
func joinedWords(tokens []token) string {
	var all []byte
	for i := range tokens {
		all = append(all, tokens[i].text...)
	}
	return string(all)
}

// parting says how the same characters are parted otherwise: within a word as it
// was, or by closing words up.
func (d *differ) parting(ch *Change, r run) {
	was, is := partings(d.was.tokens[r.i0:r.i1]), partings(d.is.tokens[r.j0:r.j1])
	plain := func(of map[int]*boundary, at int) *boundary {
		if b := of[at]; b != nil {
			return b
		}
		return &boundary{}
	}
	found, best := -1, within
	for at := range len(joinedWords(d.was.tokens[r.i0:r.i1])) {
		b, c := plain(was, at), plain(is, at)
		if *b != *c && (found < 0 || max(b.level, c.level) > best) {
			found, best = at, max(b.level, c.level)
		}
	}
	if found < 0 {
		return
	}
	b, c := plain(was, found), plain(is, found)
	ch.Kind = kindOfParting(b, c)
	ch.about = said(d.was.tokens[r.i0:r.i1]) + "→" + said(d.is.tokens[r.j0:r.j1])
	if ch.Kind == Space || ch.Kind == TurnAt {
		ch.Was, ch.Is = ch.Was+" with "+partingWords(b), ch.Is+" with "+partingWords(c)
	}
	if ch.Kind == TurnAt {
		at := " after " + quoted(joinedWords(d.was.tokens[r.i0:r.i1])[:found])
		ch.Was, ch.Is = ch.Was+at, ch.Is+at
	}
	if r.i1-r.i0 == 1 {
		ch.From += found
		ch.To = ch.From
	}
}

func kindOfParting(b, c *boundary) Kind {
	switch {
	case b.level != c.level:
		return kindOfLevel(b.level, c.level)
	case b.turn != c.turn:
		return TurnAt
	}
	return Space
}

func partingWords(b *boundary) string {
	switch {
	case b.turn:
		return "a turn"
	case b.lead == "" && b.gap == "":
		return "nothing between"
	}
	return spaceWords(b)
}

// partings are the boundaries within words joined, by the bytes before them.
func partings(tokens []token) map[int]*boundary {
	all := map[int]*boundary{}
	n := 0
	for i := range tokens {
		if i > 0 {
			all[n] = &tokens[i].boundary
		}
		n += len(tokens[i].text)
	}
	return all
}
