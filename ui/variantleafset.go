package ui

import (
	"fmt"
	"image"

	"fyne.io/fyne/v2"

	"headland/pagemodel"
	"headland/typeset"
)

// versionBlock is a difference, set: what it is in small words, and the rows of
// each version.
type versionBlock struct {
	says []typeset.Run
	rows [2][]typeset.Row
	of   [2][]int // the line that each row is of; -1 in the head
}

// deep is how many rows of verse it has.
func (b *versionBlock) deep() int { return len(b.rows[0]) + len(b.rows[1]) }

// setBlocks sets every difference, unless they are set.
func (l *versionLeaf) setBlocks() {
	if l.blocks != nil {
		return
	}
	diffs := l.compared()
	l.blocks = make([]versionBlock, len(diffs))
	for i := range diffs {
		b := &l.blocks[i]
		b.says = l.rowsOfWords(diffs[i].words())
		for side := range b.rows {
			b.rows[side], b.of[side] = l.set(l.shown[side]).rowsOf(&diffs[i], side)
		}
	}
}

// rowsOfWords sets small words in as many rows as they need.
func (l *versionLeaf) rowsOfWords(words string) []typeset.Run {
	var rows []typeset.Run
	for _, row := range inRows(words, func(w string) bool { return l.px(l.words(w).Width) <= l.plan.room() }) {
		rows = append(rows, l.words(row))
	}
	return rows
}

func (l *versionLeaf) words(text string) typeset.Run {
	return l.w.desk.k.words(text, l.plan.small, true)
}

func (l *versionLeaf) px(length typeset.Length) int {
	return int(length.Points()*l.plan.density + 0.5)
}

// arrange lays the leaf on whole device pixels, over the page that faces the one
// with the difference at hand.
func (l *versionLeaf) arrange() {
	d, was := l.w.desk, l.plan
	set := l.setting(l.onPage)
	page := set.Page(l.pageOf(l.onPage))
	grid := gridOf(set, page, pagemodel.LineRef{})
	if line := l.lineOnPage(); line != 0 {
		grid = gridOf(set, page, pagemodel.LineRef{Poem: l.poem.ID(), Line: line})
	}
	l.plan = newChoicePlan(&d.plan, l.side, fyne.CurrentApp().Driver().AbsolutePositionForObject(d), grid)
	if room := l.plan.units(signRoom + 14); l.plan.text < room {
		l.plan.text = room
		l.plan.setBy(grid)
	}
	if was != l.plan {
		l.blocks = nil
	}
	l.setBlocks()
	unit := func(px int) float32 { return float32(float64(px) / l.plan.density) }
	l.picture.Resize(fyne.NewSize(unit(l.plan.at.Dx()), unit(l.plan.at.Dy())))
	l.picture.Move(l.plan.origin.AddXY(unit(l.plan.at.Min.X), unit(l.plan.at.Min.Y)))
	l.picture.Refresh()
}

// lineOnPage is the first line of the difference at hand on the page beside, or
// 0.
func (l *versionLeaf) lineOnPage() pagemodel.LineID {
	if diff := l.atHand(); diff != nil && len(diff.lines[l.onPage]) > 0 {
		return diff.lines[l.onPage][0].ID()
	}
	return 0
}

// seenDiff is where a difference is seen: from above its small words to below its
// last row, in device pixels of the leaf.
type seenDiff struct {
	diff     int
	from, to float64
}

// namesDepth is the depth of the names of A and B at the leaf's head.
func (l *versionLeaf) namesDepth() float64 { return float64(l.plan.units(62)) }

// seen are the differences that are seen, from the top.
func (l *versionLeaf) seen() []seenDiff {
	var seen []seenDiff
	y := l.namesDepth() + l.plan.pitch*0.5
	for i := l.top; i < len(l.blocks); i++ {
		b := &l.blocks[i]
		s := seenDiff{i, y, y + l.plan.row*float64(len(b.says)) + l.plan.pitch*(float64(b.deep())+0.8)}
		if s.to > l.plan.foot() && len(seen) > 0 {
			break
		}
		seen = append(seen, s)
		y = s.to + l.plan.pitch*0.2
	}
	return seen
}

// reveal brings the difference at hand into sight.
func (l *versionLeaf) reveal() {
	l.top = min(l.top, l.diff)
	for l.top < l.diff && l.top+len(l.seen()) <= l.diff {
		l.top++
	}
	l.picture.Refresh()
}

// leafWord is words on the leaf that can be pressed.
type leafWord struct {
	kind leafSpotKind
	run  typeset.Run
	x, y int // where its baseline begins, in device pixels of the leaf
	wide int
}

// near is where it can be pressed: at least 24 units deep.
func (w *leafWord) near(p *choicePlan) image.Rectangle {
	return image.Rect(w.x-p.units(8), w.y-p.units(17), w.x+w.wide+p.units(8), w.y+p.units(9))
}

// pressed are the words on the leaf that can be pressed: the name of B, how many
// differences are out of sight, and the way to the spreads.
func (l *versionLeaf) pressed() []leafWord {
	var all []leafWord
	add := func(kind leafSpotKind, run typeset.Run, x, y int) {
		all = append(all, leafWord{kind, run, x, y, l.px(run.Width)})
	}
	if len(l.all) > 2 {
		add(onName, l.nameOf(1), l.plan.text, l.nameBase(1))
	}
	x, base := l.plan.text, l.plan.at.Dy()-l.plan.units(13)
	put := func(kind leafSpotKind, words string) {
		add(kind, l.words(words), x, base)
		x += all[len(all)-1].wide + l.plan.units(18)
	}
	if below := len(l.blocks) - l.top - len(l.seen()); below > 0 {
		put(onFurther, fmt.Sprintf("%d more ↓", below))
	}
	if l.top > 0 {
		put(onEarlier, fmt.Sprintf("%d before ↑", l.top))
	}
	spreads := l.words("as spreads (Tab)")
	add(onSpreads, spreads, max(x, l.plan.at.Dx()-l.plan.units(leafMargin)-l.px(spreads.Width)), base)
	return all
}

// nameBase is the baseline of the name of A or of B.
func (l *versionLeaf) nameBase(side int) int { return l.plan.units(25 + 25*float64(side)) }

// onPageWords say of A or of B that the page shows it.
func (l *versionLeaf) onPageWords() typeset.Run { return l.words("on the page") }

// nameOf is the name of A or of B, shortened where it has too little room.
func (l *versionLeaf) nameOf(side int) typeset.Run {
	title := l.title(l.shown[side])
	rows := inRows(title, func(w string) bool {
		return l.px(l.w.desk.k.words(w+" …", leafType, false).Width) <= l.plan.room()-l.px(l.onPageWords().Width)-l.plan.units(12)
	})
	if len(rows) > 1 {
		title = rows[0] + " …"
	}
	return l.w.desk.k.words(title, leafType, false)
}
