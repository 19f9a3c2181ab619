package difference

import (
	"slices"
	"strings"
)

// Words that a line has more than once are told apart by the words beside them.

// lineAbout is the tokens of the poet's line, or of the field, that token i
// stands in.
func (b *body) lineAbout(i int) (from, to int) {
	line := b.sources[i].line
	for from = i; from > 0 && b.sources[from-1].line == line; {
		from--
	}
	for to = i + 1; to < len(b.tokens) && b.sources[to].line == line; {
		to++
	}
	return from, to
}

// recurs says that a line has the words of some tokens once more, points and
// capitals aside.
func (b *body) recurs(i0, i1 int) bool {
	from, to := b.lineAbout(i0)
	for at := from; at+i1-i0 <= to; at++ {
		if at == i0 {
			continue
		}
		same := true
		for k := range i1 - i0 {
			same = same && bare(b.tokens[at+k].text) == bare(b.tokens[i0+k].text)
		}
		if same {
			return true
		}
	}
	return false
}

// bare is a word without its points and capitals; a word of nothing else as it
// is.
func bare(word string) string {
	if letters := strings.Trim(word, ".,;:!?…—–“”‘’\"'()[]"); letters != "" {
		return strings.ToLower(letters)
	}
	return word
}

// beside is the fewest words of the line before tokens and behind them, at least
// so many, with which they stand in it but once.
func (b *body) beside(i0, i1, least int) (before, behind []token) {
	from, to := b.lineAbout(i0)
	for k := least; ; k++ {
		lower, upper := max(from, i0-k), max(i1, min(to, i1+k))
		if lower == from && upper >= to || !b.recurs(lower, upper) {
			return b.tokens[lower:i0], b.tokens[i1:upper]
		}
	}
}

// about is the fewest words, at least so many, on either side of the boundary
// before token i with which it stands in the line but once.
func (b *body) about(i, least int) (before, behind []token) {
	before, behind = b.beside(i-1, i+1, least-1)
	return append(slices.Clone(before), b.tokens[i-1]), append([]token{b.tokens[i]}, behind...)
}

// among says between which words of their line tokens stand, where it has them
// more than once; else it is "".
func (b *body) among(i0, i1 int) string {
	if _, to := b.lineAbout(i0); i1 > to || !b.recurs(i0, i1) {
		return ""
	}
	before, behind := b.beside(i0, i1, 1)
	return betweenWords(before, behind)
}

// betweenWords says where something stands by the words before it and behind it.
func betweenWords(before, behind []token) string {
	switch {
	case len(before) == 0 && len(behind) == 0:
		return ""
	case len(before) == 0:
		return "before " + quotedTokens("", behind, "")
	case len(behind) == 0:
		return "after " + quotedTokens("", before, "")
	}
	return "between " + quotedTokens("", before, "") + " and " + quotedTokens("", behind, "")
}

// then is words with more said of them, if anything is.
func then(words, by, more string) string {
	if more == "" {
		return words
	}
	return words + by + more
}
