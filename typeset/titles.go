package typeset

import "headland/pagemodel"

// display is how words that are not the poet's lines are shown. Each does what
// the one above it does.
type display uint8

const (
	filled    display = iota // rows of as many words as fit
	bySense                  // what is too long for a row is broken by sense
	withTitle                // in the middle of the measure, where the design has titles there
	asTitle                  // of the size that the design gives titles
)

// titleStyles are the type of each style of title.
var titleStyles = map[pagemodel.TitleStyle]pagemodel.Style{
	pagemodel.TitleItalic: pagemodel.Italic, pagemodel.TitleSmallCaps: pagemodel.SmallCaps,
}

// titleOf is a title's style in the design.
func titleOf(d *pagemodel.Design) headStyle {
	s := titleStyle
	s.style = titleStyles[d.Titles]
	return s
}

// headSize is the size of words in a style. The design's size for titles goes
// down with the verse in a poem that is set smaller.
func (b *blocks) headSize(s headStyle) Length {
	if s.display < asTitle || b.design.TitleSize == 0 {
		return s.size(b.size)
	}
	return b.design.TitleSize * b.size / b.design.Size
}

// words sets words that are no line of the poet's, over as many rows as they
// need. A newline among them ends a row.
func (b *blocks) words(s headStyle, text string) []Row {
	line := pagemodel.NewLine(0, text)
	if s.style != 0 {
		line = line.WithSpans([]pagemodel.Span{{Start: 0, End: len(text), Style: s.style}})
	}
	size, measure := b.size, b.measure
	b.size = b.headSize(s)
	x := s.indent.At(b.size)
	b.measure = b.headMeasure() - x
	rows := b.wordRows(&line, s.display >= bySense)
	if s.display >= withTitle && b.design.TitleCentred {
		b.centre(rows)
	}
	b.size, b.measure = size, measure
	for i := range rows {
		rows[i].X += x
		rows[i].Role, rows[i].Line = s.role, 0
	}
	rows[len(rows)-1].Last = true
	b.missing(rows)
	return rows
}

// centre moves each row to the middle of the measure.
func (b *blocks) centre(rows []Row) {
	for i := range rows {
		x := max(0, (b.measure-rows[i].Width)/2)
		rows[i].Room -= x - rows[i].X
		rows[i].X = x
	}
}

// wordRows sets each of the pieces that newlines make of the words.
func (b *blocks) wordRows(l *pagemodel.Line, sense bool) []Row {
	var rows []Row
	text := l.Text()
	for start := 0; start < len(text); {
		end := start
		for end < len(text) && text[end] != '\n' {
			end++
		}
		begin := skipSpaces(text, start, end)
		if p := b.compose(l, begin, end); p.end > begin {
			rows = append(rows, b.rowsOfWords(l, begin, p, sense)...)
		}
		start = end + 1
	}
	if rows == nil {
		rows = []Row{b.row(l, piece{}, 0, 0, LineStart)}
	}
	return rows
}

// rowsOfWords sets a piece on one row, or on more where it is too long.
func (b *blocks) rowsOfWords(l *pagemodel.Line, start int, p piece, sense bool) []Row {
	if p.width <= b.measure {
		return []Row{b.row(l, p, 0, start, LineStart)}
	}
	t := newTurner(b.compositor, l, start, p)
	if sense {
		if rows := b.senseRows(t); rows != nil {
			return rows
		}
	}
	var rows []Row
	for {
		head, next := t.head(b.measure)
		rows = append(rows, b.row(l, head, 0, t.start, LineStart))
		if next >= p.end {
			return rows
		}
		t.advance(next)
	}
}

// senseRows are the rows of t's piece broken by sense, or nil where it can't be.
func (b *blocks) senseRows(t *turner) []Row {
	var rows []Row
	start := t.from
	for _, end := range append(t.senseBreaks(b.measure), t.whole.end) {
		p := b.compose(t.line, start, end)
		if p.width > b.measure {
			return nil
		}
		rows = append(rows, b.row(t.line, p, 0, start, LineStart))
		start = end
	}
	return rows
}

// drop is how many rows of the grid lie between the baselines of type of two
// sizes, one below the other, so that their strokes keep clear: a quarter of the
// upper and three quarters of the lower, and a tenth off, since type may be set
// a little less than solid (common practice, no source).
func (b *blocks) drop(above, below Length) int {
	need := (above + 3*below) / 4 * 9 / 10
	return max(1, int((need+b.design.Leading-1)/max(1, b.design.Leading)))
}
