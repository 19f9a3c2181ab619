package sheet

import (
	"fmt"
	"slices"
	"strings"

	"headland/pagemodel"
	"headland/typeset"
	"headland/typeset/aloud"
)

// catchWordCount is how many words make a catchword.
const catchWordCount = 3

// catchword is a text's first words, and a sign that they go on where they do.
func catchword(text string) string {
	words := pagemodel.Words(text)
	if len(words) <= catchWordCount {
		return strings.TrimSpace(text)
	}
	cut := text[words[0].Start:words[catchWordCount-1].End]
	return strings.TrimRight(cut, ",;:—–-") + " …"
}

// opening is the words that a leaf's lines begin with.
func opening(l *Leaf) string {
	for i := range l.Verse {
		if r := l.Verse[i].Role; r == typeset.RoleVerse || r == typeset.RoleProse {
			return textOf(&l.Verse[i])
		}
	}
	return ""
}

// catchwords puts the first words of the next leaf that is read at the foot of each.
func (b *binder) catchwords(p aloud.Plan) {
	for i := range b.leaves {
		next := b.next(p, i)
		if next == len(b.leaves) || b.opens[next] == "" {
			continue
		}
		row := b.toRight(b.row(catchword(b.opens[next]), b.f.Label, true))
		row.Baseline = b.f.Trim.Height - b.f.Foot
		b.leaves[i].Words = append(b.leaves[i].Words, Words{Catchword, row})
	}
}

// next is the leaf that is read after leaf i, past what is left out; behind the last
// where there is none. An item that is left out still leads on to its own leaves.
func (b *binder) next(p aloud.Plan, i int) int {
	item := b.leaves[i].Item
	for i++; i < len(b.leaves); i++ {
		if at := b.leaves[i].Item; at == item || !p.Items[at].Dropped {
			break
		}
	}
	return i
}

// ifTime says of an item that it may be left out.
const ifTime = "if there is time"

// spare says above a leaf's head that its item is read only if there is time, and
// that by the plan there is none.
func (b *binder) spare(l *Leaf, item *aloud.Timed) {
	if !item.Item.Drop {
		return
	}
	words := ifTime
	if item.Dropped {
		words = joined(words, "left out by the plan")
	}
	row := b.row(words, b.f.Label, true)
	row.Baseline = b.f.Head - b.f.Label/4
	l.Words = slices.Insert(l.Words, 0, Words{Spare, row})
}

// turnSign stands before what is turned over: the bracket that printers of verse
// have put there (common practice of older books, from memory).
const turnSign = "["

// turnSigns puts the sign before each turnover.
func (b *binder) turnSigns(l *Leaf) {
	for i := range l.Verse {
		row := &l.Verse[i]
		if row.Turn != typeset.Turnover || row.Role != typeset.RoleVerse {
			continue
		}
		sign := b.row(turnSign, l.Size, false)
		sign.X, sign.Baseline = row.X-sign.Width-l.Size/8, row.Baseline
		l.Words = append(l.Words, Words{TurnSign, sign})
	}
}

// Sizes and places of words said otherwise, in hundredths of the verse's size: they
// stand between a line's ascenders and what hangs from the line above.
const (
	asidePercent = 45
	asideRise    = 82
)

// asides puts words that are said otherwise above their printed ones, those of a
// poem from elsewhere by their place in its text.
func (b *binder) asides(l *Leaf, s *source, said []pagemodel.Saying) {
	ends := map[int]typeset.Length{} // of what stands above a row already
	for _, say := range said {
		at, row := s.sayingAt(l, say)
		if row < 0 {
			continue
		}
		over := &l.Verse[row]
		words := b.row(say.As, l.Size*asidePercent/100, true)
		words.X = max(over.XAt(at), ends[row])
		words.Baseline = over.Baseline - l.Size*asideRise/100
		ends[row] = words.X + words.Width + words.Runs[0].Size/2
		l.Words = append(l.Words, Words{Aside, words})
	}
}

// sayingAt is the row of a leaf that a saying belongs above, and its place in the
// row's line; -1 where it is none of the leaf's.
func (s *source) sayingAt(l *Leaf, say pagemodel.Saying) (at, row int) {
	line, at := say.Line, say.At
	if s.poem == 0 {
		line, at = s.lineAt(say.At)
	}
	for i := range l.Verse {
		if r := &l.Verse[i]; line != 0 && r.Line == line && at >= r.Start && at < r.End {
			return at, i
		}
	}
	return 0, -1
}

// lineAt is the line of a text at a byte offset of it, and the offset in the line.
func (s *source) lineAt(offset int) (pagemodel.LineID, int) {
	for i := len(s.starts) - 1; i >= 0; i-- {
		if s.starts[i] <= offset {
			return s.lines[i].ID(), offset - s.starts[i]
		}
	}
	return 0, 0
}

// row is a row of words from the left edge, at baseline 0.
func (b *binder) row(text string, size typeset.Length, italic bool) typeset.Row {
	run := b.comp.setter.Words(text, typeset.WordStyle{Family: b.comp.family, Size: size, Italic: italic})
	return typeset.Row{X: b.f.Side, Width: run.Width, Runs: []typeset.Run{run}, End: len(text)}
}

// toRight is a row that ends at the right edge.
func (b *binder) toRight(row typeset.Row) typeset.Row {
	row.X = b.f.Side + b.f.measure() - row.Width
	return row
}

// printed adds the page of the book to turn to: that on which the leaf's first line
// stands.
func (b *binder) printed(l *Leaf, s *source) {
	for i := range l.Verse {
		if l.Verse[i].Line == 0 {
			continue
		}
		if folio := s.printedPage(b.book, l.Verse[i].Line); folio != "" {
			row := b.toRight(b.row("page "+folio, b.f.Label, false))
			row.Baseline = b.f.headBase()
			l.Words = append(l.Words, Words{PrintedPage, row})
		}
		return
	}
}

// folios number the leaves at their foot, where the format wants it.
func (b *binder) folios() {
	for i := range b.leaves {
		if !b.f.Folios {
			return
		}
		row := b.row(fmt.Sprint(i+1), b.f.Label, false)
		row.Baseline = b.f.Trim.Height - b.f.Foot
		b.leaves[i].Words = append(b.leaves[i].Words, Words{Folio, row})
	}
}
