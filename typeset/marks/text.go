package marks

import (
	"strings"

	"headland/typeset"
)

// text.go has the marks that stand at words, or between two words of a row.

// atPoint puts curves at a point in a row.
func (p *pencil) atPoint(s stretch, curves ...curve) { p.draw(s.from, s.baseline(), curves...) }

// caret points between two words, at what is missing there.
func (p *pencil) caret(s stretch) {
	p.atPoint(s, line(knot{-0.19, -0.32}, knot{0, 0.05}, knot{0.19, -0.32}))
}

// strike strikes words out: a bar with an upright at both ends, or a slash
// through a single character.
func (p *pencil) strike(where []stretch) {
	for _, s := range where {
		w := p.in(s.to - s.from)
		if len(where) == 1 && s.single() {
			p.draw(s.from, s.baseline(), line(knot{w/2 - 0.15, -0.15}, knot{w/2 + 0.15, 0.75}))
			continue
		}
		p.draw(s.from, s.baseline(), line(knot{0, 0.25}, knot{w, 0.25}),
			line(knot{0, 0.075}, knot{0, 0.425}), line(knot{w, 0.075}, knot{w, 0.425}))
	}
}

// step is the stepped stroke at which a new line is to begin: below the word
// before it, and over the word after it.
func (p *pencil) step(s stretch) {
	p.atPoint(s, line(knot{-0.3, -0.14}, knot{0, -0.14}, knot{0, 0.8}, knot{0.3, 0.8}))
}

// takeOver stands before words that are to go to the row below; its arm runs
// over them and drops behind them.
func (p *pencil) takeOver(s stretch) {
	end := p.in(s.row.X+s.row.Width-s.from) + 0.6
	p.atPoint(s, line(knot{0, -0.18}, knot{0, 0.78}, knot{end, 0.78}, knot{end, 0.46}))
}

// takeBack stands behind words that are to go to the row above.
func (p *pencil) takeBack(s stretch) {
	end := p.in(s.row.X-s.from) - 0.6
	p.atPoint(s, line(knot{0, -0.18}, knot{0, 0.78}, knot{end, 0.78}, knot{end, 0.46}))
}

// indent is an open box from where the line begins to where it is to begin, so many
// ems farther in; or, where that is less, farther out. It is never so flat that it
// can't be told.
func (p *pencil) indent(s stretch, by float64) {
	const edge = -0.12
	if by < 0 {
		by = min(by, -0.5)
	} else {
		by = max(by, 0.5)
	}
	p.draw(s.row.X, s.baseline(), line(knot{edge, 0.82}, knot{by, 0.82}, knot{by, -0.2}, knot{edge, -0.2}))
}

// newIndent is the open box of an indent for a line that is to begin at a point in
// the row. It begins at the point and reaches no farther than the row.
func (p *pencil) newIndent(s stretch, by float64) {
	const edge = 0.08
	by = max(0.5, min(by, p.in(s.row.X+s.row.Width-s.from)))
	p.atPoint(s, line(knot{edge, 0.82}, knot{by, 0.82}, knot{by, -0.2}, knot{edge, -0.2}))
}

// noIndent says of a line that is to begin at a point in the row that it is not to
// be indented as this one is.
func (p *pencil) noIndent(s stretch) {
	p.atPoint(s, line(knot{0, 0.3}, knot{0.62, 0.3}))
}

// bracket stands before the words of a line that is to begin at a point in the row.
func (p *pencil) bracket(s stretch) {
	p.atPoint(s, line(knot{0.1, 0.86}, knot{-0.08, 0.86}, knot{-0.08, -0.28}, knot{0.1, -0.28}))
}

// tab is an upright in a gap, and an arrow from it to where the words are to stand.
func (p *pencil) tab(s stretch) {
	p.atPoint(s, line(knot{0, -0.2}, knot{0, 0.86}, knot{0.62, 0.86}), line(knot{0.44, 1}, knot{0.62, 0.86}, knot{0.44, 0.72}))
}

// cancelIndent is an upright at the place where the line is to begin, and a level
// stroke from it to the text.
func (p *pencil) cancelIndent(s stretch, to typeset.Length) {
	w := p.in(s.row.X-to) - 0.12
	p.draw(to, s.baseline(), line(knot{0, -0.15}, knot{0, 0.75}), line(knot{0, 0.3}, knot{w, 0.3}))
}

// swap is a squared S over the first of two words that are to change places and
// under the second.
func (p *pencil) swap(s stretch, between typeset.Length) {
	b, w := p.in(between-s.from), p.in(s.to-s.from)
	p.draw(s.from, s.baseline(), line(knot{0, 0.55}, knot{0, 0.8}, knot{b, 0.8}, knot{b, -0.26}, knot{w, -0.26}, knot{w, 0.02}))
}

// between is where the first words of a stretch that are to change places with
// the rest end: the middle of that space. The words as they are to be tell it.
func (s *stretch) between(is string) typeset.Length {
	text := textOf(s.row)
	text = text[max(0, s.start-s.row.Start):min(len(text), s.end-s.row.Start)]
	words, wanted := strings.Fields(text), strings.Fields(is)
	at := 0
	for i := 1; i < len(words); i++ {
		at += strings.Index(text[at:], words[i-1]) + len(words[i-1])
		if len(wanted) > 0 && bare(words[i]) == bare(wanted[0]) {
			return gapIn(s.row, s.start+at)
		}
	}
	return (s.from + s.to) / 2
}

// bare is a word without its points and capitals, which may change with its
// place.
func bare(word string) string {
	return strings.ToLower(strings.Trim(word, ".,;:!?…—–“”‘’\"'()[]"))
}

// under draws lines under words: one for italic, two for small capitals.
func (p *pencil) under(where []stretch, lines int) {
	for _, s := range where {
		for i := range lines {
			y := -0.16 - 0.14*float64(i)
			p.draw(s.from, s.baseline(), line(knot{0, y}, knot{p.in(s.to - s.from), y}))
		}
	}
}

// wavy draws a wavy line under words.
func (p *pencil) wavy(where []stretch) {
	for _, s := range where {
		p.draw(s.from, s.baseline(), wave(0, p.in(s.to-s.from), -0.22))
	}
}

// around draws a ring round words.
func (p *pencil) around(where []stretch) {
	for _, s := range where {
		p.ring(s.from-p.ems(0.2), s.baseline()-p.ems(0.84), s.to+p.ems(0.2), s.baseline()+p.ems(0.3))
	}
}

// brackets stand about a row's words, facing them.
func (p *pencil) brackets(s stretch) {
	w := p.in(s.row.Width)
	p.draw(s.row.X, s.baseline(), line(knot{-0.08, 0.78}, knot{-0.26, 0.78}, knot{-0.26, -0.22}, knot{-0.08, -0.22}),
		line(knot{w + 0.08, 0.78}, knot{w + 0.26, 0.78}, knot{w + 0.26, -0.22}, knot{w + 0.08, -0.22}))
}

// upright parts two words that are to stand farther apart or closer.
func (p *pencil) upright(s stretch) { p.atPoint(s, line(knot{0, -0.2}, knot{0, 0.82})) }

// closeUp is an arc over a gap and one under it.
func (p *pencil) closeUp(s stretch) {
	p.atPoint(s,
		line(knot{-0.32, 0.62}).bent(knot{-0.14, 0.82}, knot{0.14, 0.82}, knot{0.32, 0.62}),
		line(knot{-0.32, -0.1}).bent(knot{-0.14, -0.3}, knot{0.14, -0.3}, knot{0.32, -0.1}))
}
