package sheet

import (
	"headland/pagemodel"
	"headland/typeset"
)

// headRows are the rows over a poem's first leaf: what is said and the title.
type headRows struct{ talk, title []typeset.Row }

// depth is how much lower the last of them stands than the first.
func (h headRows) depth() typeset.Length {
	depth := depthOf(h.talk) + depthOf(h.title)
	if len(h.talk) > 0 && len(h.title) > 0 {
		depth += h.apart()
	}
	return depth
}

// apart is from the baseline of what is said last to that of the title.
func (h headRows) apart() typeset.Length { return 2 * h.title[0].Runs[0].Size }

// talkMeasure is the width that words at the head have: the printed page stands to
// their right.
func (b *binder) talkMeasure() typeset.Length { return b.f.measure() - 6*b.f.Label }

// title is the rows of a source's title.
func (b *binder) title(s *source) []typeset.Row {
	t := sourceOfText("", s.title)
	return b.stacked(&t, b.f.Title, b.talkMeasure())
}

// talk is the rows of what is said, to a measure.
func (b *binder) talk(text string, size, measure typeset.Length) []typeset.Row {
	t := sourceOfTalk(text, pagemodel.Italic)
	return b.stacked(&t, size, measure)
}

// stacked are a source's rows one below another, the first at baseline 0, under no
// line's identity.
func (b *binder) stacked(s *source, size, measure typeset.Length) []typeset.Row {
	if len(s.lines) == 0 {
		return nil
	}
	units, _ := b.comp.set(s, size, measure)
	var rows []typeset.Row
	for i := range units {
		for _, row := range units[i].rows {
			row.Poem, row.Line = 0, 0
			row.Baseline = typeset.Length(len(rows)) * leadingOf(size)
			rows = append(rows, row)
		}
	}
	return rows
}

// depthOf is how much lower the last of stacked rows stands than the first.
func depthOf(rows []typeset.Row) typeset.Length {
	if len(rows) == 0 {
		return 0
	}
	return rows[len(rows)-1].Baseline
}

// said adds leaves of what is said, by itself.
func (b *binder) said(at int, text string, title []typeset.Row) {
	rows := b.talk(text, b.f.Title, b.f.measure()*5/6)
	if len(rows) == 0 && len(title) == 0 {
		return
	}
	room := max(1, b.f.rows(b.f.Title, depthOf(title)))
	for first := true; first || len(rows) > 0; first = false {
		l := Leaf{Item: at}
		if first {
			l.Words = b.placed(Title, title, b.f.headBase())
		}
		top := b.f.firstBase(b.f.Title, depthOf(title))
		n := min(room, len(rows))
		l.Words = append(l.Words, b.placed(Talk, raised(rows[:n]), top)...)
		b.leaves = append(b.leaves, l)
		opening := ""
		if n > 0 {
			opening = textOf(&rows[0])
		}
		b.opens = append(b.opens, opening)
		rows = rows[n:]
	}
}

// raised are rows with the first at baseline 0.
func raised(rows []typeset.Row) []typeset.Row {
	up := make([]typeset.Row, len(rows))
	for i, row := range rows {
		row.Baseline -= rows[0].Baseline
		up[i] = row
	}
	return up
}

// placed are rows as words of a kind, the first on a baseline.
func (b *binder) placed(kind Kind, rows []typeset.Row, base typeset.Length) []Words {
	words := make([]Words, len(rows))
	for i, row := range rows {
		row.Baseline += base
		words[i] = Words{kind, row}
	}
	return words
}

// head is the words over a poem's first leaf.
func (b *binder) head(h headRows) []Words {
	words := b.placed(Talk, h.talk, b.f.headBase())
	base := b.f.headBase()
	if len(h.talk) > 0 && len(h.title) > 0 {
		base += depthOf(h.talk) + h.apart()
	}
	return append(words, b.placed(Title, h.title, base)...)
}

// goesOn is the title again, as much of it as one row has room for.
func (b *binder) goesOn(s *source) []Words {
	rows := b.title(s)
	if len(rows) > 1 {
		rows = []typeset.Row{b.row(textOf(&rows[0])+" …", b.f.Title, false)}
	}
	return b.placed(Title, rows, b.f.headBase())
}
