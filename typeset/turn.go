package typeset

import (
	"sort"
	"strings"
	"unicode/utf8"

	"headland/pagemodel"
)

// places are where a piece of a line may turn, in order, measured once along
// the whole piece so that the work of turning it does not grow with its length
// times its rows.
type places struct {
	at     []int    // byte offsets of what would begin a row
	ends   []Length // x of the end of what stands before each
	begins []Length // x of each
}

// turner turns one piece of a line over, row by row.
type turner struct {
	*compositor
	line   *pagemodel.Line
	whole  piece // all of it, on one row; with tab stops, as narrow as it can be
	from   int   // where whole begins
	start  int   // where the row being made begins
	startX Length
	left   Length // of the row being made, from the poem's left edge
	spaces places
	dashes *places // made when a word alone is too wide
}

func newTurner(c *compositor, l *pagemodel.Line, start int, whole piece) *turner {
	t := &turner{compositor: c, line: l, whole: whole, from: start, start: start}
	t.spaces = t.measure(spaceTurns(l, start, whole.end))
	return t
}

func (t *turner) measure(at []int) places {
	p := places{at: at, begins: t.whole.xs(at)}
	ends := make([]int, len(at))
	for i, o := range at {
		ends[i] = trimEnd(t.line.Text(), t.from, o)
	}
	p.ends = t.whole.xs(ends)
	return p
}

// head is as much as stays on the row that begins at start, and where the next
// begins: at the poet's word where one was chosen and it fits; else at the last
// space that fits; else, in a word too wide for the row, after a dash or hyphen.
// What has no such place is left as it is and overruns.
func (t *turner) head(room Length) (piece, int) {
	if t.rest() <= room+t.size {
		if all := t.composeRow(t.start, t.whole.end); all.width <= room {
			return all, t.whole.end
		}
	}
	if head, next, ok := t.chosen(room); ok {
		return head, next
	}
	if head, next, ok := t.last(&t.spaces, room); ok {
		return head, next
	}
	if t.dashes == nil {
		p := t.measure(dashTurns(t.line, t.from, t.whole.end))
		t.dashes = &p
	}
	if head, next, ok := t.last(t.dashes, room); ok {
		return head, next
	}
	next := t.nextPlace()
	return t.composeRow(t.start, next), next
}

// composeRow sets a piece of the line on the row being made.
func (t *turner) composeRow(start, end int) piece {
	return t.composeAt(t.line, start, end, t.left)
}

// chosen is the poet's word.
func (t *turner) chosen(room Length) (piece, int, bool) {
	for _, at := range t.line.Turns() {
		if at > t.start && at < t.whole.end {
			head := t.composeRow(t.start, at)
			return head, at, head.width <= room
		}
	}
	return piece{}, 0, false
}

// last is the last of the places at which what stands before it fits. The
// measure along the whole is off by a little kerning at the ends, so the last
// word is on what is really composed.
func (t *turner) last(p *places, room Length) (piece, int, bool) {
	first := sort.SearchInts(p.at, t.start+1)
	over := first + sort.Search(len(p.at)-first, func(i int) bool { return p.ends[first+i]-t.startX > room+t.size })
	for i := over - 1; i >= first; i-- {
		if head := t.composeRow(t.start, p.at[i]); head.width <= room {
			return head, p.at[i], true
		}
	}
	return piece{}, 0, false
}

// nextPlace is the first place after start where a row may end, fitting or
// not.
func (t *turner) nextPlace() int {
	next := t.whole.end
	for _, p := range [...]*places{&t.spaces, t.dashes} {
		if i := sort.SearchInts(p.at, t.start+1); i < len(p.at) {
			next = min(next, p.at[i])
		}
	}
	return next
}

// advance begins the next row at an offset.
func (t *turner) advance(next int) {
	t.start, t.startX = next, t.whole.xAt(next)
}

// rest is the width of all that is still to be set.
func (t *turner) rest() Length { return t.whole.width - t.startX }

// firstWord is the width of the next word.
func (t *turner) firstWord() Length {
	i := sort.SearchInts(t.spaces.at, t.start+1)
	if i == len(t.spaces.at) {
		return t.rest()
	}
	return t.spaces.ends[i] - t.startX
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

// xs are the x of byte offsets, given in order, within the piece: one walk
// along its glyphs.
func (p *piece) xs(offsets []int) []Length {
	xs := make([]Length, len(offsets))
	next := 0
	for r := range p.runs {
		run := &p.runs[r]
		for i := 0; i < len(run.Glyphs) && next < len(offsets); {
			g := run.Glyphs[i]
			after, end, width := run.cluster(i)
			for next < len(offsets) && offsets[next] < run.Start+end {
				within := Length(max(0, offsets[next]-run.Start-g.Cluster))
				xs[next] = run.X + g.X + width*within/Length(max(1, end-g.Cluster))
				next++
			}
			i = after
		}
	}
	for ; next < len(offsets); next++ {
		xs[next] = p.width
	}
	return xs
}
