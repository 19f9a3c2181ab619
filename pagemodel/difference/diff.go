package difference

import (
	"cmp"
	"slices"

	"headland/pagemodel"
)

// differ finds what differs between two bodies, a poem's lines or a field.
type differ struct {
	target
	fieldName string // "" of lines
	was, is   body
	changes   []Change
	kept      []keptAtom               // in order
	turns     map[pagemodel.LineID]int // index of the change of a line's turns
}

// keptAtom is a word or a white that stayed, and its styles then and now.
type keptAtom struct {
	at      int // the atom
	n       int // bytes
	was, is string
}

// find finds all changes, in the order of the text as it was.
func (d *differ) find() []Change {
	if slices.Equal(d.was.tokens, d.is.tokens) {
		return nil
	}
	done := false // the boundary that the run begins with has been compared
	for _, r := range align(&d.was, &d.is) {
		switch {
		case r.same:
			d.same(r, done)
			done = false
		case r.empty():
			d.oneSided(r)
			done = true
		default:
			if !done {
				d.boundary(r.i0, r.j0)
			}
			d.became(r)
			done = false
		}
	}
	d.restyle()
	slices.SortStableFunc(d.changes, func(a, b Change) int { return cmp.Compare(a.at, b.at) })
	return d.changes
}

// same goes through words that stayed.
func (d *differ) same(r run, done bool) {
	for k := range r.i1 - r.i0 {
		i, j := r.i0+k, r.j0+k
		if k > 0 || !done {
			d.boundary(i, j)
		}
		d.keep(2*i+1, len(d.was.tokens[i].text), d.was.tokens[i].word.styles, d.is.tokens[j].word.styles)
	}
}

// keep notes what a word or white that stayed looked like, unless it was plain and
// is.
func (d *differ) keep(at, n int, was, is string) {
	if was == "" && is == "" && (n > 0 || d.was.tokens[at/2].level > within) {
		return
	}
	d.kept = append(d.kept, keptAtom{at, n, was, is})
}

// oneSided finds where exactly words were taken out or put in. There is one
// boundary more on one side than words; the one that stays is the one most like
// that on the other side.
func (d *differ) oneSided(r run) {
	if r.i0 == r.i1 {
		d.putIn(r)
		return
	}
	if r.i1 == len(d.was.tokens) {
		d.takeOut(r.i0, r.i1, 2*r.i0)
		return
	}
	stays, best := r.i1, -1
	for i := r.i1; i >= r.i0; i-- {
		if l := likeness(&d.was.tokens[i].boundary, &d.is.tokens[r.j0].boundary); l > best {
			stays, best = i, l
		}
	}
	d.boundary(stays, r.j0)
	d.takeOut(r.i0, stays, 2*r.i0)
	d.takeOut(stays, r.i1, 2*stays+1)
}

// takeOut deletes the words of tokens, line by line, from an atom on: their
// boundaries stand before them or behind them.
func (d *differ) takeOut(i0, i1, from int) {
	for i0 < i1 {
		to := i0 + 1
		for to < i1 && d.was.sources[to].line == d.was.sources[i0].line && (d.field == ofLines || d.was.tokens[to].level == within) {
			to++
		}
		words := d.was.tokens[i0:to]
		ch := Change{Kind: Delete, Is: "nothing", about: said(words)}
		if from%2 == 0 {
			ch.Was = quoteBetween(words[0].endSign(), words, "")
		} else if to < len(d.was.tokens) {
			ch.Was = quoteBetween("", words, d.was.tokens[to].endSign())
		} else {
			ch.Was = quote(words)
		}
		ch.Was = then(then(ch.Was, ", ", unseenWords(said(words), "")), " ", d.was.among(i0, to))
		d.words(&ch, i0, to)
		d.replace(ch, from, from+2*(to-i0), nil)
		from += 2 * (to - i0)
		i0 = to
	}
}

// putIn inserts words before and behind the boundary that stays.
func (d *differ) putIn(r run) {
	if r.i0 == len(d.was.tokens) {
		d.insert(r.j0, r.j1, r.i0, 2*r.i0)
		return
	}
	stays, best := r.j1, -1
	for j := r.j1; j >= r.j0; j-- {
		if l := likeness(&d.was.tokens[r.i0].boundary, &d.is.tokens[j].boundary); l > best {
			stays, best = j, l
		}
	}
	d.insert(r.j0, stays, r.i0, 2*r.i0)
	d.boundary(r.i0, stays)
	d.insert(stays, r.j1, r.i0, 2*r.i0+1)
}

// insert puts the words of tokens in before an atom, which is the boundary or the
// word of token i.
func (d *differ) insert(j0, j1, i, at int) {
	if j0 == j1 {
		return
	}
	words := d.is.tokens[j0:j1]
	var with []atom
	for j := j0; j < j1; j++ {
		w := atom{isWord: true, word: d.is.tokens[j].word}
		if at%2 == 0 {
			with = append(with, atom{boundary: d.is.tokens[j].boundary}, w)
		} else {
			with = append(with, w, atom{boundary: d.is.tokens[j+1].boundary})
		}
	}
	ch := Change{Kind: Insert, Was: d.where(i, at), about: said(words)}
	if at%2 == 0 {
		ch.Is = quoteBetween(words[0].endSign(), words, "")
		d.behind(&ch, i)
	} else {
		ch.Is = quoteBetween("", words, d.is.tokens[j1].endSign())
		d.before(&ch, i)
	}
	ch.Is = then(ch.Is, ", ", unseenWords(said(words), ""))
	d.replace(ch, at, at, with)
}

// where says in words between what an insertion goes.
func (d *differ) where(i, at int) string {
	tokens := d.was.tokens
	hasUpper := i > 0 && (at%2 == 0 || tokens[i].level == within)
	hasLower := i < len(tokens) && (at%2 == 1 || tokens[i].level == within)
	var upper, lower []token
	switch {
	case hasUpper && hasLower:
		upper, lower = d.was.about(i, 1)
	case hasUpper:
		before, _ := d.was.beside(i-1, i, 0)
		upper = append(slices.Clone(before), tokens[i-1])
	default:
		_, behind := d.was.beside(i, i+1, 0)
		lower = append([]token{tokens[i]}, behind...)
	}
	return "nothing " + betweenWords(upper, lower)
}

// likeness is how much alike two boundaries are.
func likeness(a, b *boundary) int {
	n := 0
	for _, alike := range [...]bool{ // the weightiest first
		a.level == b.level, (a.level > within) == (b.level > within), a.look == b.look && a.heading == b.heading,
		a.kind == b.kind, a.gap == b.gap, a.lead == b.lead,
	} {
		if n *= 2; alike {
			n++
		}
	}
	return n
}
