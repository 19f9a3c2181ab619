package typeset

import (
	"slices"
	"unicode/utf8"

	"headland/pagemodel"
)

// galley is a paragraph set on one row, and measured so that the width of any
// row of it can be told without setting that.
type galley struct {
	*compositor
	line    *pagemodel.Line
	whole   piece
	measure Length
	stops   []proseStop
	points  []breakpoint // of the stops
	rough   []bool       // stops of which the whole tells too little: their rows are set to be measured

	fresh, used compositor // see scratch
}

// measureStops finds the stops' places along the whole.
func (g *galley) measureStops() {
	offsets := make([]int, 0, 2*len(g.stops))
	for _, s := range g.stops {
		offsets = append(offsets, s.end, s.next)
	}
	xs, glue := g.whole.xs(offsets), g.whole.glue(offsets)
	g.points, g.rough = make([]breakpoint, len(g.stops)), make([]bool, len(g.stops))
	for i, s := range g.stops {
		g.points[i] = breakpoint{
			end: xs[2*i], next: xs[2*i+1], glue: glue[2*i], nextGlue: glue[2*i+1],
			flagged: s.flagged, forced: s.forced,
		}
	}
	first := 1
	for i := range g.stops[1:] {
		if last := i + 1; last == len(g.stops)-1 || !g.stops[last].inWord() {
			g.setWord(first, last)
			first = last + 1
		}
	}
	if hasTab(g.line) {
		g.distrustAll()
	}
}

// longestWord, in bytes, is the longest whose pieces are all set to be measured:
// that work grows with its square.
const longestWord = 64

// setWord makes good what the edges of rows differ from the same letters within
// the whole: kerning with a space, ligatures that a division parts, hyphens. The
// word may be parted at the stops from first up to last, and ends at last.
func (g *galley) setWord(first, last int) {
	start, end := g.stops[first-1].next, g.stops[last].end
	startX, endX := g.points[first-1].next, g.points[last].end
	rough := last > first && end-start > longestWord
	for i := first; i <= last; i++ {
		s, p := &g.stops[i], &g.points[i]
		if s.divided {
			p.hyphen = g.hyphenWidth(start, s.end)
		}
		if g.rough[i] = rough; rough {
			continue
		}
		p.end = startX + g.widthOf(g.line, start, s.end)
		if i < last {
			p.next = endX - g.widthOf(g.line, s.next, end)
		}
	}
}

// doubt is how far the width of a row as the whole tells it may be off, with
// room to spare: each of the places that it is reckoned from is rounded.
const doubt = 4

// told is the width of the row between two stops as the whole tells it.
func (g *galley) told(from, to int) Length {
	return g.points[to].end + g.points[to].hyphen - g.points[from].next
}

// width is the width of the row between two stops: told, or set where that might
// be wrong about whether the row fits.
func (g *galley) width(from, to int) Length {
	width := g.told(from, to)
	over, glue := width-g.measure, g.points[to].glue-g.points[from].nextGlue
	sure := abs(over) > doubt && abs(over-glue/shrinkParts) > doubt
	if sure && !g.rough[from] && !g.rough[to] {
		return width
	}
	return g.row(g.scratch(), from, to).width
}

// distrust has every row set to be measured, where the width of the row between
// two stops turns out to be told wrongly, as in writing that runs from right to
// left. It is false where that is done already, or need not be.
func (g *galley) distrust(from, to int, width Length) bool {
	if g.rough[from] || g.rough[to] || abs(width-g.told(from, to)) <= doubt {
		return false
	}
	g.distrustAll()
	return true
}

func (g *galley) distrustAll() {
	for i := range g.rough {
		g.rough[i] = true
	}
}

// row sets the row between two stops, with a hyphen if it divides a word. The
// hyphen copies out as a soft one, as those do that are there only because the
// row ends (ISO 32000-1, 14.8.2.2.3; from memory). It stands behind the row's
// last letter, and has no place of its own in the text unless the poet put a
// soft hyphen there.
func (g *galley) row(c *compositor, from, to int) piece {
	start, s := g.stops[from].next, g.stops[to]
	p := c.compose(g.line, start, s.end)
	if !s.divided {
		return p
	}
	hyphen := g.styled(s.end, "-")
	run := c.compose(&hyphen, 0, 1).runs[0]
	width := p.width + g.hyphenWidth(start, s.end)
	run.X, run.Text, run.Start = width-run.Width, string(softHyphen), s.end
	p.runs, p.width, p.end = append(p.runs, run), width, s.next
	return p
}

// hyphenContext, in bytes, is how much of a row bears on the hyphen behind it.
const hyphenContext = 8

// hyphenWidth is what a hyphen adds to a row that ends at a byte offset: its own
// width and its kerning.
func (g *galley) hyphenWidth(start, end int) Length {
	text := g.line.Text()
	start = max(start, end-hyphenContext)
	for !utf8.RuneStart(text[start]) {
		start++
	}
	line := g.styled(end, text[start:end]+"-")
	return g.widthOf(&line, 0, end-start+1) - g.widthOf(&line, 0, end-start)
}

// styled is text in the style of the letter before a byte offset.
func (g *galley) styled(at int, text string) pagemodel.Line {
	_, n := utf8.DecodeLastRuneInString(g.line.Text()[:at])
	style := styleAt(g.line, at-n)
	return pagemodel.NewLine(0, text).WithSpans([]pagemodel.Span{{Start: 0, End: len(text), Style: style}})
}

func (g *galley) widthOf(l *pagemodel.Line, start, end int) Length {
	return g.scratch().compose(l, start, end).width
}

// scratch is a compositor for what is set only to be measured. What it sets is
// good until it is asked for again.
func (g *galley) scratch() *compositor {
	const glyphs, runs = 512, 8 // enough for most rows
	if g.fresh.slab == nil {
		g.fresh = *g.compositor
		g.fresh.slab, g.fresh.runs = make([]Glyph, glyphs), make([]Run, runs)
	}
	g.used = g.fresh
	return &g.used
}

// glue is the width, in all, of the word spaces before each of the byte offsets,
// which are given in order.
func (p *piece) glue(offsets []int) []Length {
	type space struct {
		at    int
		width Length
	}
	var spaces []space
	for r := range p.runs {
		run := &p.runs[r]
		for i := range run.Glyphs {
			if isGlue(run, i) {
				spaces = append(spaces, space{run.Start + run.Glyphs[i].Cluster, run.Glyphs[i].Advance})
			}
		}
	}
	slices.SortFunc(spaces, func(a, b space) int { return a.at - b.at })
	glue, next, sum := make([]Length, len(offsets)), 0, Length(0)
	for i, at := range offsets {
		for ; next < len(spaces) && spaces[next].at < at; next++ {
			sum += spaces[next].width
		}
		glue[i] = sum
	}
	return glue
}

// isGlue says that a glyph is a word space, which a justified row widens or
// narrows: a no-break space is one too, other spaces are as wide as they are.
func isGlue(run *Run, i int) bool {
	g := &run.Glyphs[i]
	r, _ := utf8.DecodeRuneInString(run.Text[g.Cluster:])
	alone := (i == 0 || run.Glyphs[i-1].Cluster != g.Cluster) &&
		(i+1 == len(run.Glyphs) || run.Glyphs[i+1].Cluster != g.Cluster)
	return (r == ' ' || r == '\u00a0') && alone && g.Advance > 0
}
