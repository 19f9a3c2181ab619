package typeset

import (
	"unicode/utf8"

	"headland/pagemodel"
)

// compositor sets pieces of lines side by side in the faces of one design. The
// glyphs and runs that it gives are cut from slabs, so that a whole book asks
// for memory some hundred times and not for every line.
type compositor struct {
	shaper *shaper
	faces  *typeCase
	size   Length
	slab   []Glyph
	runs   []Run
	origin origin // of the line that is being set
}

// origin is a text that is shaped already, most likely, and of which a line is the
// bytes from an offset on. The zero origin stands for the line's own text.
type origin struct {
	text string
	at   int
}

// piece is words set on one line: runs from x 0, and where they end.
type piece struct {
	runs  []Run
	width Length // end spaces left out
	end   int    // byte offset of the source text, end spaces left out
}

// compose sets the bytes from start to end of a line's text, less the spaces
// at the end, with its styles and gaps, on a row that begins at the poem's left
// edge.
func (c *compositor) compose(l *pagemodel.Line, start, end int) piece {
	return c.composeAt(l, start, end, 0)
}

// composeAt is compose on a row that begins x from the poem's left edge, which
// tab stops count from.
func (c *compositor) composeAt(l *pagemodel.Line, start, end int, x Length) piece {
	text := l.Text()
	end = trimEnd(text, start, end)
	p := piece{end: end}
	if start >= end {
		return p
	}
	p.runs = c.takeRuns()
	if len(l.Spans()) == 0 && len(l.Gaps()) == 0 {
		p.runs, p.width = c.addPlain(p.runs, 0, text, start, end)
		return p
	}
	for at := start; at < end; {
		next := nextSeam(l, at, end)
		p.width += c.white(l, at, start, x+p.width)
		if len(l.Spans()) == 0 {
			p.runs, p.width = c.addPlain(p.runs, p.width, text, at, next)
		} else {
			p.runs, p.width = c.add(p.runs, p.width, text, at, next, styleAt(l, at))
		}
		at = next
	}
	return p
}

// takeRuns gives room for one run of a slab; more grow on their own.
func (c *compositor) takeRuns() []Run {
	if len(c.runs) == 0 {
		c.runs = make([]Run, 256)
	}
	taken := c.runs[:0:1]
	c.runs = c.runs[1:]
	return taken
}

// add sets one piece of one style behind others that end at x.
func (c *compositor) add(runs []Run, x Length, text string, start, end int, style pagemodel.Style) ([]Run, Length) {
	words := text[start:end]
	face := c.faces.styles[faceStyle(style)]
	caps := plainCase
	if style&pagemodel.SmallCaps != 0 {
		caps = smallCaps
	}
	return c.place(runs, x, c.shaper.shape(face, caps, words), face, words, start)
}

// addPlain sets a piece of a line that has no styles behind others that end at x.
func (c *compositor) addPlain(runs []Run, x Length, text string, start, end int) ([]Run, Length) {
	o, face := c.origin, c.faces.styles[0]
	if o.text == "" {
		o.text = text[:trimEnd(text, 0, len(text))]
	}
	sh := c.shaper.cut(face, plainCase, o.text, o.at+start, o.at+end)
	return c.place(runs, x, sh, face, text[start:end], start)
}

// place puts words that are shaped behind others that end at x.
func (c *compositor) place(runs []Run, x Length, sh *shaped, face *Face, words string, start int) ([]Run, Length) {
	run := sh.run(face, c.size, words, start, c.glyphs(len(sh.glyphs)))
	run.X = x
	return append(runs, run), x + run.Width
}

func (c *compositor) glyphs(n int) []Glyph {
	const slab = 2048
	if n > len(c.slab) {
		c.slab = make([]Glyph, max(n, slab))
	}
	taken := c.slab[:0:n]
	c.slab = c.slab[n:]
	return taken
}

func faceStyle(style pagemodel.Style) int {
	n := 0
	if style&pagemodel.Italic != 0 {
		n |= styleItalic
	}
	if style&pagemodel.Bold != 0 {
		n |= styleBold
	}
	return n
}

// nextSeam is where, after at, the style changes or a gap opens.
func nextSeam(l *pagemodel.Line, at, end int) int {
	for _, s := range l.Spans() {
		for _, edge := range [...]int{s.Start, s.End} {
			if edge > at {
				end = min(end, edge)
			}
		}
	}
	for _, g := range l.Gaps() {
		if g.At > at {
			end = min(end, g.At)
		}
	}
	return end
}

// gapBefore is the gap before a byte offset, the zero Gap where there is none. A
// row that begins there has swallowed it.
func gapBefore(l *pagemodel.Line, at, start int) pagemodel.Gap {
	for _, g := range l.Gaps() {
		if g.At == at && at > start {
			return g
		}
	}
	return pagemodel.Gap{}
}

func styleAt(l *pagemodel.Line, at int) pagemodel.Style {
	var style pagemodel.Style
	for _, s := range l.Spans() {
		if s.Start <= at && at < s.End {
			style |= s.Style
		}
	}
	return style
}

// trimEnd is the end without the spaces before it.
func trimEnd(text string, start, end int) int {
	for end > start {
		r, n := utf8.DecodeLastRuneInString(text[start:end])
		if !pagemodel.IsSpace(r) {
			break
		}
		end -= n
	}
	return end
}

// skipSpaces is the start without the spaces after it.
func skipSpaces(text string, start, end int) int {
	for start < end {
		r, n := utf8.DecodeRuneInString(text[start:end])
		if !pagemodel.IsSpace(r) {
			break
		}
		start += n
	}
	return start
}

// xAt is the x of a byte offset within the piece.
func (p *piece) xAt(offset int) Length {
	r := Row{Runs: p.runs}
	return r.XAt(offset)
}

// WordStyle is how a label is to be set.
type WordStyle struct {
	Family                  string
	Size                    Length
	Bold, Italic, SmallCaps bool
}
