package ui

import (
	"image"
	"sort"
	"strings"
	"unicode/utf8"

	"fyne.io/fyne/v2"

	"headland/typeset"
)

// choiceBlock is one choice, set: its rows, and what it does in small words.
type choiceBlock struct {
	grid int // how many rows of verse deep
	says []typeset.Run
}

// setBlocks sets the small words of every choice, unless they are set. The rows
// of verse are set already.
func (l *choiceLeaf) setBlocks() {
	if l.blocks != nil {
		return
	}
	l.blocks = make([]choiceBlock, len(l.all))
	for i := range l.all {
		b := &l.blocks[i]
		for _, r := range l.all[i].Rows {
			b.grid = max(b.grid, r.Grid)
		}
		says := l.all[i].Says
		if words := l.flapWords(i); words != "" {
			says = append([]string{words}, says...)
		}
		b.says = l.rowsOfWords(says)
	}
}

// rowsOfWords sets small words row by row: a saying goes to the next row where
// it has no room, and is parted only where a whole row has none.
func (l *choiceLeaf) rowsOfWords(says []string) []typeset.Run {
	var rows []typeset.Run
	row := ""
	for _, said := range says {
		longer := said
		if row != "" {
			longer = row + " · " + said
		}
		if row != "" && !l.fits(longer) {
			rows = append(rows, l.words(row))
			longer = said
		}
		for utf8.RuneCountInString(longer) > 1 && !l.fits(longer) {
			head, tail := l.part(longer)
			rows, longer = append(rows, l.words(head)), tail
		}
		row = longer
	}
	if row != "" {
		rows = append(rows, l.words(row))
	}
	return rows
}

// part parts words where a row is full: at a space or, where what stands before
// the first has no room, within it.
func (l *choiceLeaf) part(words string) (head, tail string) {
	for at := strings.LastIndex(words, " "); at > 0; at = strings.LastIndex(words[:at], " ") {
		if l.fits(words[:at]) {
			return words[:at], words[at+1:]
		}
	}
	var ends []int // of all characters but the last
	for at := range words {
		if at > 0 {
			ends = append(ends, at)
		}
	}
	n := sort.Search(len(ends), func(i int) bool { return !l.fits(words[:ends[i]]) })
	at := ends[max(0, n-1)]
	return words[:at], words[at:]
}

func (l *choiceLeaf) fits(words string) bool {
	return l.words(words).Width.Points()*l.plan.density <= float64(l.plan.room())
}

// words sets small words.
func (l *choiceLeaf) words(text string) typeset.Run {
	return l.w.desk.k.words(text, l.plan.small, true)
}

// seenChoice is where a choice is seen: from above its first row to below its
// last, in device pixels of the leaf. Where it stands below its head, head is
// the baseline of the head's words.
type seenChoice struct {
	choice   int
	headed   bool
	head     float64
	from, to float64
}

// seen are the choices that are seen, from the top. The head that they are
// under stands at the top always.
func (l *choiceLeaf) seen() []seenChoice { return l.seenFrom(l.top) }

func (l *choiceLeaf) seenFrom(top int) []seenChoice {
	var seen []seenChoice
	y := l.plan.first - l.plan.pitch // the baseline above the first
	for i := top; i < len(l.all); i++ {
		s := seenChoice{choice: i}
		if i == top || l.all[i].Head != l.all[i-1].Head {
			y += l.plan.pitch
			s.headed, s.head = true, y
		}
		b := &l.blocks[i]
		s.from = y + l.plan.pitch*0.3
		y += l.plan.pitch*float64(b.grid) + l.plan.row*float64(len(b.says))
		s.to = y + l.plan.pitch*0.5
		if s.to > l.plan.foot() && len(seen) > 0 {
			break
		}
		seen = append(seen, s)
		y += l.plan.pitch
	}
	return seen
}

// lowest is the first choice that is seen where the last is.
func (l *choiceLeaf) lowest() int {
	for top := range l.all {
		if top+len(l.seenFrom(top)) == len(l.all) {
			return top
		}
	}
	return 0
}

// reveal brings a choice into sight.
func (l *choiceLeaf) reveal(i int) {
	if i < 0 {
		return
	}
	l.top = min(l.top, i)
	for l.top < i && l.top+len(l.seen()) <= i {
		l.top++
	}
	l.picture.Refresh()
}

// under is what lies under a position on the window. Between two choices it is
// the upper one.
func (l *choiceLeaf) under(at fyne.Position) choiceSpot {
	p := image.Pt(int(float64(at.X-l.plan.origin.X)*l.plan.density), int(float64(at.Y-l.plan.origin.Y)*l.plan.density)).Sub(l.plan.at.Min)
	if !p.In(image.Rectangle{Max: l.plan.at.Size()}) {
		return offChoices
	}
	seen, y := l.seen(), float64(p.Y)
	if y >= l.plan.foot() {
		return l.underFoot(p.X)
	}
	spot := choiceSpot{onPaper, -1}
	for _, s := range seen {
		if y >= s.from && y < s.to+l.plan.pitch*0.8 {
			spot = choiceSpot{onChoice, s.choice}
		}
	}
	return spot
}
