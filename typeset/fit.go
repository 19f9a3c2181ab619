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
	whole := f.compose(l, 0, len(l.Text()))
	x := f.left(l, whole.width)
	out := fitted{line: l, overrun: max(0, whole.width-f.room(x))}
	if len(l.Breaks()) == 0 {
		out.rows = f.turn(nil, l, 0, whole, LineStart)
	} else {
		out.rows = f.broken(l)
	}
	for i := range out.rows {
		out.turned = out.turned || out.rows[i].Turn == Turnover
	}
	out.rows[0].Overrun = out.overrun
	last := &out.rows[len(out.rows)-1]
	last.Last = true
	f.prevEnd = last.X + last.Width
	return out
}

// broken sets each piece that this edition makes of the line.
func (f *fitter) broken(l *pagemodel.Line) []Row {
	var rows []Row
	start, how := 0, LineStart
	for _, end := range append(slices.Clone(l.Breaks()), len(l.Text())) {
		if start < end {
			rows = f.turn(rows, l, start, f.compose(l, start, end), how)
			start, how = skipSpaces(l.Text(), end, len(l.Text())), EditionBreak
		}
	}
	return rows
}

// left is where a line of that width begins.
func (f *fitter) left(l *pagemodel.Line, width Length) Length {
	indent := l.Indent().At(f.size)
	switch {
	case l.Range() == pagemodel.RangeCentre:
		return max(0, (f.measure-width)/2)
	case l.Range() == pagemodel.RangeRight:
		return max(0, f.measure-width-indent)
	case l.Dropped() && f.prevEnd > 0:
		return f.dropped(width, indent)
	}
	return indent - f.hang(l)
}

// dropped begins a line one word space after the end of the line above, pulled
// in just enough to fit (Brossard, Le Correcteur typographe, 1934, 71-72).
func (f *fitter) dropped(width, indent Length) Length {
	x := f.prevEnd + f.size/4
	return max(indent, min(x, f.measure-width))
}

// hangers are the opening marks that may stand outside the left edge.
const hangers = "“‘«‹([{—–\"'"

// hang is how far a line's first mark stands out to the left, where the design
// asks for it.
func (f *fitter) hang(l *pagemodel.Line) Length {
	if !f.design.HangQuotes {
		return 0
	}
	r, n := utf8.DecodeRuneInString(l.Text())
	if n == 0 || !strings.ContainsRune(hangers, r) {
		return 0
	}
	return f.compose(l, 0, n).width
}

// turn sets a piece that begins at start, and turns over what does not fit.
func (f *fitter) turn(rows []Row, l *pagemodel.Line, start int, p piece, how Turn) []Row {
	x := f.left(l, p.width)
	end := p.end
	for {
		room := f.room(x)
		head, next := p, end
		if p.width > room {
			head, next = f.headOf(l, start, p, room)
		}
		rows = append(rows, f.row(l, head, x, start, how))
		if next >= end {
			return rows
		}
		first := &rows[len(rows)-1]
		start, how = next, Turnover
		p = f.compose(l, start, end)
		x = f.tailLeft(l, first, p, start)
	}
}

func (f *fitter) row(l *pagemodel.Line, p piece, x Length, start int, how Turn) Row {
	return Row{
		Poem: f.poem, Line: l.ID(), Role: RoleVerse, Turn: how, Start: start, End: p.end,
		X: x, Width: p.width, Room: f.room(x), Runs: p.runs,
	}
}

// headOf is as much of an overlong piece as stays on its row, and where the
// rest begins: at the poet's word where one was chosen and it fits; else at the
// last space that fits; else, in a word with none, after a dash or hyphen. What
// has no such place is left as it is and overruns.
func (f *fitter) headOf(l *pagemodel.Line, start int, p piece, room Length) (piece, int) {
	for _, t := range l.Turns() {
		if t > start && t < p.end {
			if head := f.compose(l, start, t); head.width <= room {
				return head, t
			}
			break
		}
	}
	for _, places := range [...]func(*pagemodel.Line, int, int) []int{spaceTurns, dashTurns} {
		turns := places(l, start, p.end)
		for i := len(turns) - 1; i >= 0; i-- {
			t := turns[i]
			if p.xAt(trimEnd(l.Text(), start, t)) > room+f.size {
				continue
			}
			if head := f.compose(l, start, t); head.width <= room {
				return head, t
			}
		}
		if len(turns) > 0 {
			return f.compose(l, start, turns[0]), turns[0]
		}
	}
	return p, p.end
}

// dashes can't begin a turnover (common practice: UAX 14 would let a line begin
// with an em dash, class B2; verse setters do not).
const dashes = "—–-‐‑―"

// spaceTurns are the words of a piece at which it may turn: none that begins
// with a dash or stands behind a gap, which a turn would swallow.
func spaceTurns(l *pagemodel.Line, start, end int) []int {
	var turns []int
	for _, w := range pagemodel.Words(l.Text()[start:end]) {
		at := start + w.Start
		r, _ := utf8.DecodeRuneInString(l.Text()[at:])
		if at == start || strings.ContainsRune(dashes, r) || hasGap(l, at) {
			continue
		}
		turns = append(turns, at)
	}
	return turns
}

func hasGap(l *pagemodel.Line, at int) bool {
	for _, g := range l.Gaps() {
		if g.At == at {
			return true
		}
	}
	return false
}

// dashTurns are the places after a dash or hyphen within a word.
func dashTurns(l *pagemodel.Line, start, end int) []int {
	var turns []int
	text := l.Text()[start:end]
	for i, r := range text {
		at := i + utf8.RuneLen(r)
		if i == 0 || at >= len(text) || r == '‑' || !strings.ContainsRune(dashes, r) {
			continue
		}
		if next, _ := utf8.DecodeRuneInString(text[at:]); !strings.ContainsRune(dashes, next) && !pagemodel.IsSpace(next) {
			turns = append(turns, start+at)
		}
	}
	return turns
}

// tailLeft is where a turnover begins.
func (f *fitter) tailLeft(l *pagemodel.Line, head *Row, tail piece, start int) Length {
	if f.design.Turnovers == pagemodel.TurnRight {
		return f.tailRight(head, tail)
	}
	need := min(tail.width, f.firstWord(l, tail, start))
	indent := f.deepest + f.size
	if f.room(indent) >= max(need, f.measure/3) {
		return indent
	}
	// In stepped verse one em beyond the deepest step leaves too little: a
	// fixed indent, else ranged right.
	own := l.Indent().At(f.size)
	if fixed := own + 2*f.size; f.room(fixed) >= max(need, f.measure/3) {
		return fixed
	}
	return max(0, f.measure-tail.width)
}

// firstWord is the width of the first word of a piece.
func (f *fitter) firstWord(l *pagemodel.Line, p piece, start int) Length {
	words := pagemodel.Words(l.Text()[start:p.end])
	if len(words) == 0 {
		return p.width
	}
	return p.xAt(start + words[0].End)
}

// tailRight sets the tail towards the right, beginning an em left of where the
// row above ends. Whether the next line is long enough to stand under it is
// seen to afterwards: see [fitter.closeRivers].
func (f *fitter) tailRight(head *Row, tail piece) Length {
	x := min(head.X+head.Width-f.size, f.measure-tail.width)
	return max(x, f.leastTail())
}

// leastTail is the least that a turnover set right is indented: twice the
// poem's own indent, and two ems.
func (f *fitter) leastTail() Length { return max(2*f.deepest, 2*f.size) }

// closeRivers pulls turnovers that are set right back to the left where the
// line below is too short to pass under them, so that no false gap opens (E.
// Mendelson's rule).
func (f *fitter) closeRivers(lines []fitted) {
	if f.design.Turnovers != pagemodel.TurnRight {
		return
	}
	for i := range lines {
		if i+1 == len(lines) || !lines[i].turned {
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
