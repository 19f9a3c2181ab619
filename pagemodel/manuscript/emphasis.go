package manuscript

import (
	"strings"
	"unicode"
	"unicode/utf8"
)

// delimiters is a run of * or _. See CommonMark 0.31.2, "Emphasis and strong
// emphasis" and the appendix's "process emphasis", which this follows; a stack
// of openers takes the place of its linked list, since a match drops all that
// stand above it.
type delimiters struct {
	char              byte
	count, was        int // how many are left, and how many there were
	canOpen, canClose bool
}

// literal are the delimiters that nothing matched: characters.
func (d delimiters) literal() string { return strings.Repeat(string(rune(d.char)), d.count) }

// delimiterRun reads a run and closes what it can.
func (p *inlineReader) delimiterRun(c byte) {
	rest := strings.TrimLeft(p.raw[p.at:], string(rune(c)))
	n := len(p.raw) - p.at - len(rest)
	before, after := '\n', '\n'
	if p.at > 0 {
		before, _ = utf8.DecodeLastRuneInString(p.raw[:p.at])
	}
	if rest != "" {
		after, _ = utf8.DecodeRuneInString(rest)
	}
	d := delimiters{char: c, count: n, was: n}
	d.flank(before, after)
	p.push(token{delim: d})
	p.at += n
	p.settle(len(p.tokens) - 1)
}

// flank says, from the characters on either side, whether the run can open and
// close. An _ does neither inside a word.
func (d *delimiters) flank(before, after rune) {
	left := !unicode.IsSpace(after) && (!isSign(after) || unicode.IsSpace(before) || isSign(before))
	right := !unicode.IsSpace(before) && (!isSign(before) || unicode.IsSpace(after) || isSign(after))
	d.canOpen, d.canClose = left, right
	if d.char == '_' {
		d.canOpen = left && (!right || isSign(before))
		d.canClose = right && (!left || isSign(after))
	}
}

func isSign(r rune) bool { return unicode.IsPunct(r) || unicode.IsSymbol(r) }

// settle matches the run at a token with the openers before it.
func (p *inlineReader) settle(i int) {
	d := &p.tokens[i].delim
	if d.canClose {
		for d.count > 0 && p.match(i) {
		}
	}
	if d.canOpen && d.count > 0 {
		p.openers = append(p.openers, i)
	}
}

// match closes one or two delimiters of the nearest opener that fits.
func (p *inlineReader) match(i int) bool {
	d := &p.tokens[i].delim
	bottom := &p.bottoms[d.class()]
	for k := len(p.openers) - 1; k >= *bottom; k-- {
		if o := &p.tokens[p.openers[k]].delim; o.fits(d) {
			p.emphasize(k, i, o, d)
			return true
		}
	}
	*bottom = len(p.openers)
	return false
}

// class numbers the kinds of closer that find the same openers.
func (d *delimiters) class() int {
	n := d.was % 3
	if d.canOpen {
		n += 3
	}
	if d.char == '_' {
		n += 6
	}
	return n
}

// fits is rules 9 and 10: two runs that could each open and close do not match
// if their lengths add up to a multiple of three and are not such themselves.
func (d *delimiters) fits(closer *delimiters) bool {
	if d.char != closer.char {
		return false
	}
	both := d.canClose || closer.canOpen
	return !both || (d.was+closer.was)%3 != 0 || d.was%3 == 0
}

// emphasize gives what stands between the opener k and the token i its style:
// bold where both have two delimiters to give, else italic.
func (p *inlineReader) emphasize(k, i int, o, d *delimiters) {
	n := min(2, o.count, d.count)
	o.count, d.count = o.count-n, d.count-n
	p.tokens[p.openers[k]+1].styles[n-1]++
	p.tokens[i].styles[n-1]--
	if o.count > 0 {
		k++
	}
	p.openers = p.openers[:k]
	for b := range p.bottoms {
		p.bottoms[b] = min(p.bottoms[b], k)
	}
}
