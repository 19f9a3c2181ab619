package choices

import (
	"slices"

	"headland/pagemodel"
)

// turns are the words at which the line may turn: where the setting would turn
// it, and each word at which the poet's wish would be followed. A word before
// which the row is too long is none: there the line would turn earlier.
func (f *finder) turns() {
	f.turn("at the last word that fits", nil)
	for _, w := range pagemodel.Words(f.line.Text())[1:] {
		f.turn("at "+titled(f.line.Text(), []int{w.Start}), []int{w.Start})
	}
}

func (f *finder) turn(title string, at []int) {
	if f.settledSo(at) {
		return
	}
	e := after(f.whole(), pagemodel.Keep{LineRef: f.ref, Turns: at, Reason: f.line.Reason(), Shown: f.line.Shown()})
	tried, ok := f.try(e)
	if !ok {
		return
	}
	c := Choice{Head: LetTurn, Title: title, Edit: e}
	rows := tried.rows(f.ref)
	for i := range rows {
		if i > 0 {
			c.At = append(c.At, rows[i].Start)
		}
		c.Parts = append(c.Parts, Part{
			Text: f.line.Text()[rows[i].Start:rows[i].End], Overrun: max(0, rows[i].Width-rows[i].Room),
		})
	}
	if len(at) > 0 && (len(c.At) == 0 || c.At[0] != at[0]) {
		return
	}
	f.tell(c, tried, f.ref.Line)
}

// settledSo says that the line was let turn so already, and does: the word that
// is noted with it is the only difference.
func (f *finder) settledSo(at []int) bool {
	state, _ := f.set.StateOf(f.ref)
	return f.line.Kept() && state == pagemodel.Kept && len(f.line.Breaks()) == 0 && slices.Equal(f.line.Turns(), at)
}
