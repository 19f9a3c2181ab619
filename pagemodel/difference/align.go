package difference

import (
	"slices"

	"headland/pagemodel"
)

// run is some tokens of what was and some of what is, one of which became the
// other. Of a run that is the same both have as many, word for word.
type run struct {
	i0, i1, j0, j1 int
	same           bool
}

// empty says that one side has no tokens: something was put in or taken out.
func (r run) empty() bool { return r.i0 == r.i1 || r.j0 == r.j1 }

// align parts two bodies into runs. Lines of the same identity and the same words
// hold it in place; between them words are matched, as many as can be.
func align(was, is *body) []run {
	a := aligner{was: was, is: is, with: make([]int, len(was.tokens))}
	for i := range a.with {
		a.with[i] = -1
	}
	i, j := 0, 0
	for _, l := range a.anchors() {
		a.between(i, l.i0, j, l.j0)
		if l.swapped {
			a.swaps = append(a.swaps, l.run)
		} else {
			a.pair(l.i0, l.i1, l.j0)
		}
		i, j = l.i1, l.j1
	}
	a.between(i, len(was.tokens), j, len(is.tokens))
	return a.joined(a.runs())
}

// aligner matches words.
type aligner struct {
	was, is *body
	with    []int // for each token that was, the index of the one that it is now, or -1
	swaps   []run // two lines that changed places
	table   []int32
}

func (a *aligner) equal(i, j int) bool {
	s, t := &a.was.tokens[i], &a.is.tokens[j]
	return s.text == t.text && s.void == t.void
}

func (a *aligner) pair(i0, i1, j0 int) {
	for i := i0; i < i1; i++ {
		a.with[i] = j0 + i - i0
	}
}

// anchor is a line that is there in both with the same words, or two that changed
// places.
type anchor struct {
	run
	swapped bool
}

// anchors are the lines that hold the two bodies together, in order.
func (a *aligner) anchors() []anchor {
	var found []anchor
	for _, next := range a.sameLines() {
		if n := len(found) - 1; n >= 0 && a.exchanged(found[n].run, next) {
			found[n] = anchor{run{found[n].i0, next.i1, next.j0, found[n].j1, false}, true}
			continue
		}
		found = append(found, anchor{run: next})
	}
	order := make([]int, len(found))
	for k, f := range found {
		order[k] = f.j0
	}
	kept := make([]anchor, 0, len(found))
	for _, k := range rising(order) {
		kept = append(kept, found[k])
	}
	return kept
}

// sameLines are the lines that have the same words in both, by their identities;
// and, of the rest, those whose words one line of each has.
func (a *aligner) sameLines() []run {
	was, is := a.was.lines(), a.is.lines()
	now := make(map[pagemodel.LineID]int, len(is))
	for k, l := range is {
		now[a.is.sources[l[0]].line] = k
	}
	to, taken := make([]int, len(was)), make([]bool, len(is))
	for n, l := range was {
		to[n] = -1
		if k, ok := now[a.was.sources[l[0]].line]; ok && is[k][1]-is[k][0] == l[1]-l[0] && a.equalWords(l[0], l[1], is[k][0]) {
			to[n], taken[k] = k, true
		}
	}
	a.byWords(was, is, to, taken)
	var same []run
	for n, k := range to {
		if k >= 0 {
			same = append(same, run{was[n][0], was[n][1], is[k][0], is[k][1], true})
		}
	}
	return same
}

// byWords finds lines that nobody has found by their identities.
func (a *aligner) byWords(was, is [][2]int, to []int, taken []bool) {
	if !slices.Contains(to, -1) {
		return
	}
	there, here := map[string]occurrence{}, map[string]occurrence{}
	for n, l := range was {
		if to[n] < 0 {
			words := said(a.was.tokens[l[0]:l[1]])
			there[words] = occurrence{there[words].count + 1, n}
		}
	}
	for k, l := range is {
		if !taken[k] {
			words := said(a.is.tokens[l[0]:l[1]])
			here[words] = occurrence{here[words].count + 1, k}
		}
	}
	for words, o := range there {
		l := was[o.at]
		if p := here[words]; o.count == 1 && p.count == 1 && is[p.at][1]-is[p.at][0] == l[1]-l[0] && a.equalWords(l[0], l[1], is[p.at][0]) {
			to[o.at] = p.at
		}
	}
}

func (a *aligner) equalWords(i0, i1, j0 int) bool {
	for i := i0; i < i1; i++ {
		if !a.equal(i, j0+i-i0) {
			return false
		}
	}
	return true
}

// exchanged says that two neighbouring lines changed places and nothing else.
func (a *aligner) exchanged(upper, lower run) bool {
	return upper.same && upper.i1 == lower.i0 && lower.j1 == upper.j0 &&
		a.was.tokens[lower.i0].level == a.is.tokens[upper.j0].level && a.alike(upper) && a.alike(lower)
}

// alike says that the words of a line, their styles and spaces are as they were.
func (a *aligner) alike(l run) bool {
	for i := l.i0; i < l.i1; i++ {
		s, t := &a.was.tokens[i], &a.is.tokens[l.j0+i-l.i0]
		if s.word != t.word || i > l.i0 && s.boundary != t.boundary {
			return false
		}
	}
	return true
}

// lines are the first token of each of the poet's lines and the one after its last.
func (b *body) lines() [][2]int {
	var lines [][2]int
	from := 0
	for i := 1; i <= len(b.sources); i++ {
		if i == len(b.sources) || b.sources[i].line != b.sources[from].line {
			lines = append(lines, [2]int{from, i})
			from = i
		}
	}
	return lines
}

// runs are the matches as runs: what lies between two of them has become
// something else.
func (a *aligner) runs() []run {
	var runs []run
	swaps := a.swaps
	i, j := 0, 0
	for {
		next := a.nextMatch(i, swaps)
		stays := run{next, next, len(a.is.tokens), len(a.is.tokens), true}
		switch {
		case len(swaps) > 0 && next == swaps[0].i0:
			stays, swaps = swaps[0], swaps[1:]
		case next < len(a.with):
			stays = a.matched(next)
		}
		for _, r := range [...]run{{i0: i, i1: next, j0: j, j1: stays.j0}, stays} {
			if r.i0 < r.i1 || r.j0 < r.j1 {
				runs = append(runs, r)
			}
		}
		if i, j = stays.i1, stays.j1; next == len(a.with) {
			return runs
		}
	}
}

// nextMatch is the next token from i on that stayed, or that begins lines which
// changed places; or the end.
func (a *aligner) nextMatch(i int, swaps []run) int {
	for i < len(a.with) && a.with[i] < 0 && (len(swaps) == 0 || i < swaps[0].i0) {
		i++
	}
	return i
}

// matched is the run of tokens from i on that stayed next to one another.
func (a *aligner) matched(i int) run {
	to := i + 1
	for to < len(a.with) && a.with[to] == a.with[to-1]+1 {
		to++
	}
	return run{i, to, a.with[i], a.with[to-1] + 1, true}
}
