package ui

import (
	"crypto/sha256"
	"image"
	"slices"

	"headland/pagemodel"
	"headland/typeset"
)

// linesPlot shows how long the lines are, all along the book: a stroke for each, as
// high as the line is long, parted where a stanza ends.
type linesPlot struct {
	poems  []*pagemodel.Poem // in the book's order
	at     int               // the poem at hand
	top    int               // the first row of poems in sight
	rows   [][2]int          // of poems, each from one to before another
	places []linesPlace      // of the poems in sight
	room   image.Rectangle
	long   map[[sha256.Size]byte][]float64 // by the poem's key: its lines in ems, -1 for prose
	design pagemodel.Design                // in which they were measured
}

// linesPlace is where a poem is drawn.
type linesPlace struct {
	poem int
	at   image.Rectangle
}

const (
	lineStep    = 5   // from one line to the next, in the toolkit's units
	lineStroke  = 3   // the width of its stroke
	stanzaGap   = 6   // more than that where a stanza ends
	poemGap     = 22  // between two poems
	poemLeast   = 26  // the least width of a poem
	linesRow    = 116 // the depth of a row of poems
	linesHigh   = 84  // of that, the strokes of lines as long as linesMost measures
	linesMost   = 1.4 // measures that a row has room for
	linesNumber = 20  // below the strokes: the poem's number
)

// read takes the poems of the book.
func (l *linesPlot) read(a *aloudView) {
	if a.face != linesFace {
		return
	}
	c := a.w.session.Collection()
	if l.long == nil || l.design != c.Design() {
		l.long, l.design = map[[sha256.Size]byte][]float64{}, c.Design()
	}
	l.poems = nil
	for _, p := range c.Poems() {
		l.poems = append(l.poems, p)
	}
	l.at = max(0, min(l.at, len(l.poems)-1))
	if poem, ok := a.w.desk.poemAtHand(); ok && l.top == 0 && l.at == 0 {
		l.at = max(0, slices.IndexFunc(l.poems, func(p *pagemodel.Poem) bool { return p.ID() == poem.ID() }))
	}
}

// lengths are a poem's lines in ems of the book's type, with their indents.
func (l *linesPlot) lengths(a *aloudView, p *pagemodel.Poem) []float64 {
	if all, ok := l.long[p.Key()]; ok {
		return all
	}
	style := typeset.WordStyle{Family: l.design.Face, Size: l.design.Size}
	var all []float64
	for at, line := range p.Lines() {
		ems := -1.0
		if p.Stanza(at).Kind() == pagemodel.Verse {
			run := a.w.session.Setter().Words(line.Text(), style)
			ems = float64(run.Width)/float64(l.design.Size) + line.Indent().Ems()
		}
		all = append(all, ems)
	}
	l.long[p.Key()] = all
	return all
}

// measure is the book's measure in ems.
func (l *linesPlot) measure() float64 { return float64(l.design.Measure()) / float64(l.design.Size) }

// stanzasOf are how many lines each stanza of a poem has.
func stanzasOf(p *pagemodel.Poem) []int {
	var all []int
	for _, part := range p.Parts() {
		for _, s := range part.Stanzas() {
			all = append(all, len(s.Lines()))
		}
	}
	return all
}

// wide is the width of a poem in device pixels.
func (l *linesPlot) wide(p *aloudPlan, poem *pagemodel.Poem) int {
	lines, stanzas := poem.LineCount(), len(stanzasOf(poem))
	return max(p.units(poemLeast), lines*p.units(lineStep)+max(0, stanzas-1)*p.units(stanzaGap))
}

// arrange parts the poems into rows and lays out those in sight.
func (l *linesPlot) arrange(a *aloudView) {
	p := &a.place
	l.room, l.rows, l.places = a.plotRoom(), nil, nil
	x := 0
	for i, poem := range l.poems {
		w := l.wide(p, poem)
		if i == 0 || x+w > l.room.Dx() {
			l.rows, x = append(l.rows, [2]int{i, i}), 0
		}
		l.rows[len(l.rows)-1][1] = i + 1
		x += w + p.units(poemGap)
	}
	l.top = max(0, min(l.top, len(l.rows)-l.seen(p)))
	for row := l.top; row < len(l.rows) && row < l.top+l.seen(p); row++ {
		x := l.room.Min.X
		y := l.room.Min.Y + (row-l.top)*p.units(linesRow)
		for i := l.rows[row][0]; i < l.rows[row][1]; i++ {
			w := l.wide(p, l.poems[i])
			l.places = append(l.places, linesPlace{i, image.Rect(x, y, x+w, y+p.units(linesHigh+linesNumber))})
			x += w + p.units(poemGap)
		}
	}
}

// seen is how many rows can be seen.
func (l *linesPlot) seen(p *aloudPlan) int { return max(1, l.room.Dy()/p.units(linesRow)) }

// rowOf is the row of a poem.
func (l *linesPlot) rowOf(poem int) int {
	for i, r := range l.rows {
		if poem < r[1] {
			return i
		}
	}
	return 0
}
