package difference

// largest is how many pairs of words are compared at once. Where there are more,
// words that occur once part them first; where there are none such, all of it has
// become something else.
const largest = 1 << 17

// between matches the words from i0 to i1 with those from j0 to j1.
func (a *aligner) between(i0, i1, j0, j1 int) {
	for i0 < i1 && j0 < j1 && a.equal(i0, j0) {
		a.with[i0] = j0
		i0, j0 = i0+1, j0+1
	}
	for i0 < i1 && j0 < j1 && a.equal(i1-1, j1-1) {
		i1, j1 = i1-1, j1-1
		a.with[i1] = j1
	}
	switch {
	case i0 == i1 || j0 == j1:
	case (i1-i0)*(j1-j0) > largest:
		a.byRareWords(i0, i1, j0, j1)
	default:
		a.best(i0, i1, j0, j1)
	}
}

// best finds the matches that weigh most: the longest common subsequence, in which
// long words weigh more than short ones, and words that stay in their line or next
// to one another a little more than others.
func (a *aligner) best(i0, i1, j0, j1 int) {
	n, m := i1-i0, j1-j0
	wide := m + 1
	if len(a.table) < (n+1)*wide {
		a.table = make([]int32, (n+1)*wide)
	}
	t := a.table[:(n+1)*wide]
	for j := range wide {
		t[n*wide+j] = 0
	}
	for i := n - 1; i >= 0; i-- {
		t[i*wide+m] = 0
		for j := m - 1; j >= 0; j-- {
			w := max(t[(i+1)*wide+j], t[i*wide+j+1])
			if a.equal(i0+i, j0+j) {
				w = max(w, t[(i+1)*wide+j+1]+a.weight(i0+i, j0+j))
			}
			t[i*wide+j] = w
		}
	}
	a.follow(t, i0, j0, n, m)
}

// follow takes the matches from a table of what the best ones from each pair of
// words on weigh.
func (a *aligner) follow(t []int32, i0, j0, n, m int) {
	wide := m + 1
	for i, j := 0, 0; i < n && j < m; {
		here := t[i*wide+j]
		switch {
		case a.equal(i0+i, j0+j) && here == t[(i+1)*wide+j+1]+a.weight(i0+i, j0+j):
			a.with[i0+i] = j0 + j
			i, j = i+1, j+1
		case here == t[(i+1)*wide+j]:
			i++
		default:
			j++
		}
	}
}

// weight is what it is worth to match two equal words.
func (a *aligner) weight(i, j int) int32 {
	w := int32(16)
	if len(a.was.tokens[i].text) > 3 {
		w += 4
	}
	if a.was.sources[i].line == a.is.sources[j].line {
		w += 2
	}
	if a.was.tokens[i].level == a.is.tokens[j].level {
		w++
	}
	if i > 0 && j > 0 && a.equal(i-1, j-1) {
		w += 3
	}
	return w
}

// byRareWords matches words that both sides have just once, in rising order, and
// then what lies between them.
func (a *aligner) byRareWords(i0, i1, j0, j1 int) {
	there := occurrences(a.was.tokens, i0, i1)
	here := occurrences(a.is.tokens, j0, j1)
	var at, then []int
	for i := i0; i < i1; i++ {
		text := a.was.tokens[i].text
		if there[text].count == 1 && here[text].count == 1 && a.was.tokens[i].void == hasWords {
			at, then = append(at, i), append(then, here[text].at)
		}
	}
	if len(at) == 0 {
		return
	}
	i, j := i0, j0
	for _, k := range rising(then) {
		a.between(i, at[k], j, then[k])
		a.with[at[k]] = then[k]
		i, j = at[k]+1, then[k]+1
	}
	a.between(i, i1, j, j1)
}

type occurrence struct{ count, at int }

func occurrences(tokens []token, from, to int) map[string]occurrence {
	all := make(map[string]occurrence, to-from)
	for i := from; i < to; i++ {
		o := all[tokens[i].text]
		all[tokens[i].text] = occurrence{o.count + 1, i}
	}
	return all
}

// slight is the length of a word, in bytes, that does not part two substitutions
// beside it.
const slight = 3

// joined are the runs with those made one that a reader would mark as one: two
// words that changed places, and substitutions with a short word between them.
func (a *aligner) joined(runs []run) []run {
	var out []run
	for k := 0; k < len(runs); k++ {
		r := runs[k]
		if n := len(out) - 1; n >= 0 && k+1 < len(runs) && r.same && a.oneMark(out[n], r, runs[k+1]) {
			out[n] = run{i0: out[n].i0, i1: runs[k+1].i1, j0: out[n].j0, j1: runs[k+1].j1}
			k++
			continue
		}
		out = append(out, r)
	}
	return out
}

// oneMark says that what stays between two changes is better marked with them.
func (a *aligner) oneMark(before, stays, after run) bool {
	if stays.i1-stays.i0 != 1 || before.same || after.same || !a.inOneLine(before, after) {
		return false
	}
	if before.empty() || after.empty() {
		return a.wordsExchanged(before, after)
	}
	w := a.was.tokens[stays.i0].word
	return w.void == hasWords && len(w.text) <= slight
}

// inOneLine says that no line ends between the first word of one run and the last
// of another.
func (a *aligner) inOneLine(before, after run) bool {
	for i := before.i0 + 1; i < after.i1; i++ {
		if a.was.tokens[i].level != within {
			return false
		}
	}
	for j := before.j0 + 1; j < after.j1; j++ {
		if a.is.tokens[j].level != within {
			return false
		}
	}
	return true
}

// wordsExchanged says that a word was taken out on one side of another and put in
// on the other.
func (a *aligner) wordsExchanged(before, after run) bool {
	out, in := before, after
	if out.i0 == out.i1 {
		out, in = after, before
	}
	return out.i1-out.i0 == 1 && out.j0 == out.j1 && in.j1-in.j0 == 1 && in.i0 == in.i1 &&
		a.was.tokens[out.i0].word == a.is.tokens[in.j0].word
}
