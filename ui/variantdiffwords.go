package ui

import (
	"slices"
	"strings"

	"headland/pagemodel"
)

// sigla are the letters that stand for the two versions laid side by side, as
// editors name the witnesses of a text.
var sigla = [2]string{"A", "B"}

// tell finds what differs and says it; false where nothing does.
func (d *versionDiff) tell(moved map[pagemodel.LineID]bool) bool {
	a, b := d.lines[0], d.lines[1]
	var says []string
	switch {
	case len(a) == 0:
		d.only, d.says = 1, "only in "+sigla[1]
		return true
	case len(b) == 0:
		d.only, d.says = 0, "only in "+sigla[0]
		return true
	}
	if d.markWords() {
		says = append(says, "the words differ")
	}
	if words := cutWords(a, b); words != "" {
		says = append(says, words)
	}
	if len(a) == 1 && len(b) == 1 {
		says = append(says, setOtherwise(a[0].Line, b[0].Line)...)
	}
	if d.parts[0] != d.parts[1] {
		says = append(says, "a stanza begins here in "+sigla[one(d.parts[1])])
	}
	for _, l := range slices.Concat(a, b) {
		if moved[l.ID()] {
			says = append(says, "it stands elsewhere in "+sigla[1])
			break
		}
	}
	d.says = strings.Join(says, ", ")
	return len(says) > 0
}

func one(yes bool) int {
	if yes {
		return 1
	}
	return 0
}

// cutWords say where the same words are parted into lines otherwise.
func cutWords(a, b []versionLine) string {
	switch {
	case len(b) > len(a):
		return "broken in " + sigla[1]
	case len(b) < len(a):
		return "run on in " + sigla[1]
	case len(a) > 1 && !slices.Equal(wordCounts(a), wordCounts(b)):
		return "broken elsewhere"
	}
	return ""
}

func wordCounts(lines []versionLine) []int {
	var counts []int
	for _, l := range lines {
		counts = append(counts, len(pagemodel.Words(l.Text())))
	}
	return counts
}

// setOtherwise says what of a line differs besides its words.
func setOtherwise(a, b pagemodel.Line) []string {
	var says []string
	for _, what := range [...]struct {
		same  bool
		words string
	}{
		{a.Indent() == b.Indent(), "another indent"},
		{slices.Equal(a.Gaps(), b.Gaps()), "other gaps"},
		{a.Range() == b.Range(), "set to another edge"},
		{a.Dropped() == b.Dropped(), "dropped in " + sigla[one(b.Dropped())]},
		{a.Above() == b.Above(), "other white above"},
		{slices.Equal(a.Breaks(), b.Breaks()), "broken otherwise in this edition"},
		{a.Kept() == b.Kept() && slices.Equal(a.Turns(), b.Turns()), "let turn otherwise"},
		{a.Reason() == b.Reason() && a.Shown() == b.Shown(), "another reason"},
		{a.Tied() == b.Tied() && a.OpensPage() == b.OpensPage(), "its page otherwise"},
		{a.Text() != b.Text() || slices.Equal(a.Spans(), b.Spans()), "italic, bold or small capitals otherwise"},
		{a.Text() == b.Text() || !slices.Equal(wordsIn(a), wordsIn(b)), "other spaces"},
	} {
		if !what.same {
			says = append(says, what.words)
		}
	}
	return says
}

func wordsIn(l pagemodel.Line) []string {
	var words []string
	for _, w := range pagemodel.Words(l.Text()) {
		words = append(words, l.Text()[w.Start:w.End])
	}
	return words
}

// place is where a difference is, in words: in A, or in B where A has no such
// lines; "" of the head.
func (d *versionDiff) place() string {
	for _, lines := range d.lines {
		if len(lines) > 0 {
			return "stanza " + number(lines[0].stanza) + ", line " + number(lines[0].number)
		}
	}
	return ""
}

// words are where the difference is and what it is.
func (d *versionDiff) words() string {
	if at := d.place(); at != "" {
		return at + ": " + d.says
	}
	return d.says
}
