package ui

import (
	"fmt"
	"slices"

	"headland/typeset"
	"headland/typeset/choices"
)

// choiceFootWord is one of the sayings at the foot of the leaf. It can be
// pressed.
type choiceFootWord struct {
	kind choiceSpotKind
	run  typeset.Run
	x    int // in device pixels of the leaf
}

// footWords are the sayings at the foot: how many choices are out of sight, and
// the order.
func (l *choiceLeaf) footWords() []choiceFootWord {
	var all []choiceFootWord
	x, gap := l.plan.text, l.plan.units(18)
	add := func(kind choiceSpotKind, words string) {
		run := l.words(words)
		all = append(all, choiceFootWord{kind, run, x})
		x += l.px(run.Width) + gap
	}
	if below := len(l.all) - l.top - len(l.seen()); below > 0 {
		add(onMore, fmt.Sprintf("%d more ↓", below))
	}
	if l.top > 0 {
		add(onPrevious, fmt.Sprintf("%d before ↑", l.top))
	}
	add(onOrder, "in the order of "+l.order.String())
	last := &all[len(all)-1]
	last.x = max(last.x, l.plan.at.Dx()-l.plan.units(leafMargin)-l.px(last.run.Width))
	return all
}

func (l *choiceLeaf) px(length typeset.Length) int {
	return int(length.Points()*l.plan.density + 0.5)
}

// underFoot is what of the words at the foot lies under the hand.
func (l *choiceLeaf) underFoot(x int) choiceSpot {
	near := l.plan.units(8)
	for _, w := range l.footWords() {
		if x >= w.x-near && x < w.x+l.px(w.run.Width)+near {
			return choiceSpot{w.kind, -1}
		}
	}
	return choiceSpot{onPaper, -1}
}

// nextMeasure is the order after another.
func nextMeasure(m choices.Measure) choices.Measure {
	return (m + 1) % (choices.BySyllables + 1)
}

// choiceBrief is how wide the desk is at least, in the toolkit's units, for more
// than the chief keys at its foot.
const choiceBrief = 800

// tell says at the foot of the desk what can be done.
func (l *choiceLeaf) tell() { l.w.desk.tell(l.help()) }

// help says what the choice pointed at is, and the keys.
func (l *choiceLeaf) help() string {
	if l.at < 0 {
		return "↑ ↓ or the hand tries a choice on the page · ← → go from head to head · Ctrl Shift O puts them in another order · Esc lifts the leaf"
	}
	c := &l.all[l.at]
	if d := l.w.desk; d.plan.size.X < d.plan.units(choiceBrief) {
		return sentence(c.Title) + " · Enter takes it · Esc leaves it"
	}
	words := sentence(c.Head.String()) + ", " + c.Title + " · Enter takes it"
	if i, ok := l.counterpart(l.at); ok {
		words += " · Tab: " + l.all[i].Head.String()
	}
	switch {
	case len(l.flap) == 2:
		words += " · Space turns the flap"
	case len(l.flap) == 1 && l.flapWords(l.at) == "":
		words += " · Ctrl Enter lays it on the other side of the flap"
	default:
		words += " · Ctrl Enter lays it on the flap"
	}
	if partGuessed(c) {
		words += " · Ctrl Shift H says how a word goes that is guessed"
	}
	return words + " · Esc leaves all as it was"
}

// partGuessed says that some word of a choice's is only guessed.
func partGuessed(c *choices.Choice) bool {
	return slices.ContainsFunc(c.Parts, func(p choices.Part) bool { return p.Guessed })
}
