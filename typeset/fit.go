package typeset

import (
	"slices"
	"strings"
	"unicode/utf8"

	"headland/pagemodel"
)

// fitter fits the lines of one poem to the measure, each into one row or more.
// Its rows have X from the left of the measure, and no place on a page yet.
type fitter struct {
	*compositor
	design  *pagemodel.Design
	poem    pagemodel.PoemID
	measure Length
	deepest Length // the poem's deepest indent
	prevEnd Length // where the line above ended, for a dropped line
}

// fitted is one of the poet's lines, set.
type fitted struct {
	rows    []Row
	overrun Length // by how much the whole line exceeds its room; 0 where it fits
	turned  bool   // some of it is a turnover
	line    *pagemodel.Line
}

// room is how wide a line may be that begins at x.
func (f *fitter) room(x Length) Length { return f.measure - x + f.design.RunOut }

// fit sets one line of verse: as it is where it fits; else broken where this
// edition breaks it; and what is still too long is turned over.
func (f *fitter) fit(l *pagemodel.Line) fitted {
	whole, x := f.begin(l, 0, len(l.Text()))
	out := fitted{line: l, overrun: f.overrun(l, &whole, x)}
	if len(l.Breaks()) == 0 {
		out.rows = f.turn(nil, l, 0, whole, x, LineStart)
	} else {
		out.rows = f.broken(l)
	}
	out.turned = anyTurned(out.rows)
	out.rows[0].Overrun = out.overrun
	out.rows[len(out.rows)-1].Last = true
	return out
}

func anyTurned(rows []Row) bool {
	return slices.ContainsFunc(rows, func(r Row) bool { return r.Turn == Turnover })
}

// overrun is by how much a whole line at x exceeds its room: not at all where
// narrower word spaces make it fit.
func (f *fitter) overrun(l *pagemodel.Line, whole *piece, x Length) Length {
	over := whole.width - f.room(x)
	if over <= 0 {
		return 0
	}
	if _, ok := f.canTighten(l, whole, over); ok {
		return 0
	}
	return over
}

// broken sets each piece that this edition makes of the line.
func (f *fitter) broken(l *pagemodel.Line) []Row {
	var rows []Row
	start, how := 0, LineStart
	for _, end := range append(slices.Clone(l.Breaks()), len(l.Text())) {
		if start < end {
			p, x := f.begin(l, start, end)
			rows = f.turn(rows, l, start, p, x, how)
			start, how = skipSpaces(l.Text(), end, len(l.Text())), EditionBreak
		}
	}
	return rows
}

// left is where a piece of that width begins, which starts at a byte offset of
// the line: 0, or a break of this edition, which is not dropped.
func (f *fitter) left(l *pagemodel.Line, start int, width Length) Length {
	indent := l.Indent().At(f.size)
	switch {
	case l.Range() == pagemodel.RangeCentre:
		return max(0, (f.measure-width)/2)
	case l.Range() == pagemodel.RangeRight:
		return max(0, f.measure-width-indent)
	case l.Dropped() && start == 0 && f.prevEnd > 0:
		return f.dropped(width, indent)
	}
	return indent - f.hang(l, start)
}

// dropped begins a line one word space after the end of the line above, pulled
// in just enough to fit (Brossard, Le Correcteur typographe, 1934, 71-72).
func (f *fitter) dropped(width, indent Length) Length {
	x := f.prevEnd + f.size/4
	return max(indent, min(x, f.measure-width))
}

// hangers are the opening marks that may stand outside the left edge.
const hangers = "“‘«‹([{—–\"'"

// hang is how far the mark at a byte offset, with which a row begins, stands out
// to the left, where the design asks for it.
func (f *fitter) hang(l *pagemodel.Line, start int) Length {
	if !f.design.HangQuotes {
		return 0
	}
	r, n := utf8.DecodeRuneInString(l.Text()[start:])
	if n == 0 || !strings.ContainsRune(hangers, r) {
		return 0
	}
	return f.compose(l, start, start+n).width
}

func (f *fitter) row(l *pagemodel.Line, p piece, x Length, start int, how Turn) Row {
	return Row{
		Poem: f.poem, Line: l.ID(), Role: RoleVerse, Turn: how, Start: start, End: p.end,
		X: x, Width: p.width, Room: f.room(x), Runs: p.runs, ranged: l.Range() != pagemodel.RangeLeft,
	}
}

// turn sets a piece that begins at start and x, and turns over what does not
// fit.
func (f *fitter) turn(rows []Row, l *pagemodel.Line, start int, p piece, x Length, how Turn) []Row {
	if over := p.width - f.room(x); over <= 0 || f.tighten(l, &p, over) {
		return append(rows, f.row(l, p, x, start, how))
	}
	t := newTurner(f.compositor, l, start, f.leastWide(l, start, p))
	for {
		t.left = f.stopsFrom(l, x)
		head, next := t.head(f.room(x))
		rows = append(rows, f.row(l, head, x, t.start, how))
		if next >= p.end {
			return rows
		}
		t.advance(next)
		how, x = Turnover, f.tailLeft(l, &rows[len(rows)-1], t)
	}
}

// tailLeft is where the turnover that t has come to begins, below the row head.
func (f *fitter) tailLeft(l *pagemodel.Line, head *Row, t *turner) Length {
	width := t.rest()
	if f.design.Turnovers == pagemodel.TurnRight {
		// An em left of where the row above ends. Whether the next line is long
		// enough to stand under it is seen to afterwards, by closeRivers.
		x := min(head.X+head.Width-f.size, f.measure-width)
		return max(x, f.leastTail())
	}
	need := max(min(width, t.firstWord()), f.measure/3)
	// In stepped verse one em beyond the deepest step leaves too little: a
	// fixed indent, else ranged right.
	for _, indent := range [...]Length{f.deepest + f.size, l.Indent().At(f.size) + 2*f.size} {
		if f.room(indent) >= need {
			return indent
		}
	}
	return max(0, f.measure-width)
}

// leastTail is the least that a turnover set right is indented: twice the
// poem's own indent, and two ems.
func (f *fitter) leastTail() Length { return max(2*f.deepest, 2*f.size) }

// closeRivers pulls turnovers that are set right back to the left where the
// line below is too short to pass under them, so that no false gap opens (E.
// Mendelson's rule). A turnover with tab stops stays where they count from.
func (f *fitter) closeRivers(lines []fitted) {
	if f.design.Turnovers != pagemodel.TurnRight {
		return
	}
	for i := range lines {
		if i+1 == len(lines) || !lines[i].turned || hasTab(lines[i].line) {
			continue
		}
		below := &lines[i+1].rows[0]
		last := &lines[i].rows[len(lines[i].rows)-1]
		if last.Turn == Turnover && below.X+below.Width < last.X {
			last.X = max(f.leastTail(), min(last.X, below.X+below.Width-f.size))
			last.X = min(last.X, max(0, f.measure-last.Width))
			last.Room = f.room(last.X)
		}
	}
}
